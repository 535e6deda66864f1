"""What a measurement takes the place of."""

from typing import Any

from kitlog.budget.power.describe import Basis, DrawRange
from kitlog.kit.facets import Battery, WayOfUse
from kitlog.kit.item import Item
from kitlog.packing.measured_draws import Replaced, measured_instead

STARTER = WayOfUse(name="tracking", power_w=0.9, low_w=0.5, high_w=1.6, basis="starter")
DROP: dict[str, Any] = {"from_pct": 100, "to_pct": 63, "over_h": 4.5, "basis": "measured"}


def phone(*ways: WayOfUse) -> Item:
    return Item(id="p", name="Phone", battery=Battery(wh=17.3, ways=ways))


def test_a_drop_takes_the_place_of_a_starter_figure() -> None:
    found = measured_instead(phone(STARTER), phone(WayOfUse(name="tracking", **DROP)))
    assert found == Replaced("tracking", DrawRange(0.5, 0.9, 1.6, Basis.GUESSED), "starter")


def test_nothing_is_replaced_by_another_guess_a_new_way_or_a_second_measurement() -> None:
    measured = WayOfUse(name="tracking", **DROP)
    for before, after in (
        ((STARTER,), (STARTER,)),
        ((STARTER,), (WayOfUse(name="tracking", power_w=1),)),
        ((), (measured,)),
        ((measured,), (measured.model_copy(update={"to_pct": 60}),)),
        ((WayOfUse(name="call", power_w=2),), (measured,)),
    ):
        assert measured_instead(phone(*before), phone(*after)) is None
    assert measured_instead(Item(id="x", name="X"), Item(id="x", name="X")) is None
