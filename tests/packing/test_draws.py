"""What an item draws in a phase, and when it is off."""

from typing import Any

import pytest
from scenario import LIBRARY
from small_kit import item, outing

from kitlog.fault import InputFault
from kitlog.kit.item import Item
from kitlog.packing.draws import NOTHING, left_open, phase_draw, way_shares

LAMP = item(
    "lamp", "light", battery={"wh": 3, "ways": [{"name": "low", "power_w": 0.2}, {"name": "high", "power_w": 2}]}
)


def day(*uses: tuple[str, float]) -> Any:
    flight = {"name": "flight", "way": "flight", "likely_h": 4}
    shares = [{"item": "lamp", "phase": "flight", "way": way, "share": share} for way, share in uses]
    return outing(phases=[flight], uses=shares)


def test_shares_of_nothing_are_off() -> None:
    plan = day(("low", 0.0), ("high", 0.0))
    assert phase_draw(LAMP, plan.phases[0], plan, LIBRARY) == NOTHING


def test_shares_that_do_not_add_up_are_refused() -> None:
    plan = day(("low", 0.5), ("high", 0.2))
    with pytest.raises(InputFault) as refused:
        phase_draw(LAMP, plan.phases[0], plan, LIBRARY)
    assert (refused.value.code, refused.value.facts["item"]) == ("draw.shares", "lamp")


def test_a_way_that_the_item_has_not_is_not_known() -> None:
    plan = day(("strobe", 1.0))
    assert way_shares(LAMP, plan.phases[0], plan, LIBRARY) is None
    assert phase_draw(LAMP, plan.phases[0], plan, LIBRARY) is None


def test_the_rest_of_its_own_shares_is_off() -> None:
    ways = [{"name": "low", "power_w": 0.2, "shares": [{"during": "flight", "share": 0.25}]}]
    lamp, plan = item("lamp", "light", battery={"wh": 3, "ways": ways}), day()
    shares = way_shares(lamp, plan.phases[0], plan, LIBRARY)
    assert shares is not None
    assert shares[1] == pytest.approx(0.75)
    draw = phase_draw(lamp, plan.phases[0], plan, LIBRARY)
    assert draw is not None
    assert draw.likely_w == pytest.approx(0.05)


def test_an_outing_names_the_time_in_which_it_is_off() -> None:
    plan = day(("high", 0.25), ("off", 0.75))
    shares = way_shares(LAMP, plan.phases[0], plan, LIBRARY)
    assert shares == ([(LAMP.battery.ways[1], 0.25)], 0.75)
    draw = phase_draw(LAMP, plan.phases[0], plan, LIBRARY)
    assert draw is not None
    assert draw.likely_w == pytest.approx(0.5)  # by hand: 2 W x 0.25
    off = day(("off", 1.0))
    assert phase_draw(LAMP, off.phases[0], off, LIBRARY) == NOTHING


def test_time_off_is_not_filled_up_silently() -> None:
    plan = day(("high", 0.25), ("off", 0.5))
    with pytest.raises(InputFault) as refused:
        phase_draw(LAMP, plan.phases[0], plan, LIBRARY)
    assert refused.value.code == "draw.shares"


def test_a_way_of_its_own_called_off_is_meant_before_the_time_off() -> None:
    ways = [{"name": "off", "power_w": 0.01}, {"name": "low", "power_w": 0.2}]
    lamp, plan = item("lamp", "light", battery={"wh": 3, "ways": ways}), day(("off", 1.0))
    draw = phase_draw(lamp, plan.phases[0], plan, LIBRARY)
    assert draw is not None
    assert draw.likely_w == pytest.approx(0.01)


class TestLeftOpen:
    """A phase in which no way of use has a share is not one in which nothing is drawn."""

    FLIGHT, WALK, TRAVEL = ({"name": name, "way": name, "likely_h": 2} for name in ("flight", "walk out", "travel"))

    def phone(self, *shares: tuple[str, float]) -> Item:
        given = [{"during": during, "share": share} for during, share in shares]
        tracking = {"name": "tracking", "from_pct": 100, "to_pct": 63, "over_h": 4.5, "basis": "measured"}
        ways = [{**tracking, "shares": given}, {"name": "lit", "power_w": 3}]
        return item("phone", "phone", battery={"wh": 17, "ways": ways})

    def test_a_flight_without_a_share_is_not_known(self) -> None:
        phone, plan = self.phone(("walk out", 1.0)), outing(phases=[self.FLIGHT, self.WALK])
        assert phase_draw(phone, plan.phases[0], plan, LIBRARY) is None
        assert phase_draw(phone, plan.phases[1], plan, LIBRARY) is not None
        assert [left_open(phone, phase, plan, LIBRARY) for phase in plan.phases] == [True, False]

    def test_off_is_chosen_by_a_share_of_nothing(self) -> None:
        phone, plan = self.phone(("walk out", 1.0), ("flight", 0.0)), outing(phases=[self.FLIGHT])
        assert phase_draw(phone, plan.phases[0], plan, LIBRARY) == NOTHING

    def test_off_is_chosen_in_the_outing(self) -> None:
        off = [{"item": "phone", "phase": "flight", "way": "off", "share": 1.0}]
        phone, plan = self.phone(("walk out", 1.0)), outing(phases=[self.FLIGHT], uses=off)
        assert phase_draw(phone, plan.phases[0], plan, LIBRARY) == NOTHING

    def test_where_its_kind_is_not_in_use_it_is_off(self) -> None:
        phone, plan = self.phone(("walk out", 1.0)), outing(phases=[self.TRAVEL])
        assert phase_draw(phone, plan.phases[0], plan, LIBRARY) == NOTHING

    def test_without_any_share_it_does_as_usual(self) -> None:
        phone, plan = self.phone(), outing(phases=[self.FLIGHT])
        draw = phase_draw(phone, plan.phases[0], plan, LIBRARY)
        assert draw is not None
        assert draw.likely_w == pytest.approx(17 * 0.37 / 4.5)  # by hand, of the drop

    @pytest.mark.parametrize(("kind", "known"), [("other", False), ("beacon", True)])
    def test_a_kind_without_usual_phases_is_asked_about_the_flight(self, kind: str, known: bool) -> None:
        heater = item("heater", kind, battery={"wh": 10, "ways": [{"name": "on", "power_w": 2}]})
        plan = outing(phases=[self.FLIGHT, self.WALK])
        assert (phase_draw(heater, plan.phases[0], plan, LIBRARY) is not None) is known
        assert phase_draw(heater, plan.phases[1], plan, LIBRARY) == NOTHING
