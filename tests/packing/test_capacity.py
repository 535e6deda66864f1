"""Energy in a cell and at the ports; a label that gives more out than in."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.fault import InputFault
from kitlog.kit.facets import Bank, Battery
from kitlog.kit.item import Item
from kitlog.packing.capacity import energy_wh, port_efficiency, refuse_more_out_than_in


def bank(battery: Battery | None = None, **fields: float) -> Item:
    return Item(id="b", name="Bank", kind="power bank", battery=battery, bank=Bank(**fields))


def test_rated_at_the_port_has_the_loss_inside_once() -> None:
    """By hand: 6,290 mAh x 5 V = 31.45 Wh at the port, over 85 % = 37 Wh in the cell."""
    item = bank(rated_mah=6_290)
    assert (energy_wh(item) or 0) * port_efficiency(item) == pytest.approx(31.45)
    assert energy_wh(item) == pytest.approx(37.0)


def test_both_printed_give_the_efficiency() -> None:
    assert port_efficiency(bank(Battery(wh=37), rated_mah=6_000)) == pytest.approx(30 / 37)


@given(st.floats(1, 500), st.floats(0, 200_000))
def test_a_stored_contradiction_is_reckoned_as_usual_and_never_refused(cell_wh: float, rated_mah: float) -> None:
    item = bank(Battery(wh=cell_wh), rated_mah=rated_mah)
    assert energy_wh(item) == cell_wh
    assert 0 < port_efficiency(item) <= 1


def test_more_out_than_in_is_refused_where_it_is_entered() -> None:
    with pytest.raises(InputFault) as caught:
        refuse_more_out_than_in(bank(Battery(wh=37), rated_mah=10_000))
    assert caught.value.code == "cell.gives_more"
