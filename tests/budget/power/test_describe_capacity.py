"""Energy from what is printed on a battery; the loss of a bank's converter comes off once."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.budget.power.day import Day
from kitlog.budget.power.describe_capacity import (
    Meaning,
    bank_from_both,
    bank_from_cell,
    bank_from_mah,
    cell_from_mah,
    cell_from_wh,
)
from kitlog.budget.power.simulate import simulate
from kitlog.fault import InputFault

TABLE = """
5000 18.00 18.50 19.25
10000 36.00 37.00 38.50
20000 72.00 74.00 77.00
26800 96.48 99.16 103.18
27000 97.20 99.90 103.95
"""
"""mAh, and Wh at 3.6, 3.7 and 3.85 V. 38.5 and 96.48 Wh are printed on products; the rest by hand."""


@pytest.mark.parametrize("row", TABLE.split("\n")[1:-1])
def test_mah_without_volts_are_a_range(row):
    mah, *wh = map(float, row.split())
    cell = cell_from_mah(mah)
    assert (cell.low_wh, cell.likely_wh, cell.high_wh) == pytest.approx(wh)
    assert cell_from_mah(mah, 3.7) == cell_from_wh(cell.likely_wh)


@pytest.mark.parametrize(("eff", "mah_out"), [(1.0, 7400), (0.8, 5920), (0.9, 6660)])
def test_mah_of_the_cell_lose_on_the_way_to_the_port(eff, mah_out):
    """10,000 mAh at 3.7 V: 7,400 mAh at 5 V before losses, 5,920 with .80 (moruipower.com), 6,660 with .90
    (powerbankmobilebattery.com)."""
    bank = bank_from_mah(10_000, Meaning.CELL, 3.7, eff)
    assert bank.port_wh * 1000 / 5 == pytest.approx(mah_out)


def test_rated_mah_at_the_port_have_lost_already():
    """6,500 mAh at 5 V are 32.5 Wh at the port, whatever the efficiency is thought to be."""
    for eff in (0.8, 0.85, 0.93):
        bank = bank_from_mah(6500, Meaning.PORT_5V, eff=eff)
        assert bank.port_wh == pytest.approx(32.5)
        assert bank.cell.likely_wh == pytest.approx(32.5 / eff)


def test_both_printed_give_the_efficiency():
    """10,000 mAh at 3.7 V in the cell and 6,500 mAh rated: .878 (gearbest article)."""
    bank = bank_from_both(cell_from_mah(10_000, 3.7), 6500)
    assert bank.eff == pytest.approx(0.878, abs=0.0005)
    assert bank.port_wh == pytest.approx(32.5)


@given(st.floats(1000, 50_000), st.sampled_from(Meaning), st.floats(0.5, 1), st.floats(1, 20))
def test_a_lamp_on_the_bank_burns_as_long_as_the_port_energy_says(mah, meaning, eff, watts):
    bank = bank_from_mah(mah, meaning, 3.7, eff)
    day = Day.model_validate(
        {
            "phases": [{"id": "night", "hours": 500, "ambient_C": 25}],
            "devices": [{"id": "lamp", "cell_Wh": 0, "draw_W": {"night": watts}}],
            "banks": [{"id": "bank", "cell_Wh": bank.cell.likely_wh, "eff": bank.eff}],
            "plugs": [{"phase": "night", "device": "lamp", "bank": "bank"}],
        }
    )
    assert simulate(day).devices["lamp"].first_off_h == pytest.approx(bank.port_wh / watts)


def test_usable_energy_as_worked_by_hand():
    """37 Wh x health .9 x cold .8 x .85 x (1 - .1 kept) = 20.38 Wh."""
    assert bank_from_cell(cell_from_wh(37), 0.85).port_wh * 0.9 * 0.8 * 0.9 == pytest.approx(20.38, abs=0.005)


def test_more_out_than_in_is_refused():
    with pytest.raises(InputFault) as refused:
        bank_from_both(cell_from_mah(10_000, 3.7), 10_000)
    assert refused.value.code == "cell.gives_more"
    assert refused.value.facts == {"port_wh": 50.0, "cell_wh": 37.0}


@pytest.mark.parametrize(
    "ask",
    [
        lambda: cell_from_wh(0),
        lambda: cell_from_wh(20_000),
        lambda: cell_from_mah(-1),
        lambda: cell_from_mah(1000, 0),
        lambda: cell_from_mah(1000, 230),
        lambda: bank_from_mah(1000, Meaning.PORT_5V, eff=0),
        lambda: bank_from_cell(cell_from_wh(37), 1.1),
    ],
)
def test_refused(ask):
    with pytest.raises(InputFault) as refused:
        ask()
    assert refused.value.code == "number.out_of_range"
