"""The lightest bank that does, and what the others lack."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kitlog.budget.power.day import Day
from kitlog.budget.power.lightest_bank import LightestBank, lightest_bank
from kitlog.budget.power.question import SmallestBank
from kitlog.budget.power.smallest_bank import smallest_bank
from kitlog.fault import InputFault

NIGHT = Day.model_validate(
    {
        "phases": [{"id": "night", "hours": 6, "ambient_C": 25}],
        "devices": [
            {"id": "lamp", "cell_Wh": 0, "draw_W": {"night": 2}},
            {"id": "phone", "cell_Wh": 10, "draw_W": {"night": 1}},
        ],
        "banks": [{"id": "any", "cell_Wh": 1}],
        "plugs": [{"phase": "night", "device": "lamp", "bank": "any"}],
    }
)


def ask(banks, targets=("lamp",), day=NIGHT, min_soc=0.0):
    """Choices by name: (Wh, g, further figures of the bank). Efficiency .8, so 12 Wh at the port ask for 15 in the cell."""
    choices = [
        {"bank": {"id": name, "cell_Wh": wh, "eff": 0.8, **how}, "mass_g": mass_g}
        for name, (wh, mass_g, how) in banks.items()
    ]
    asked = [{"device": device, "min_soc": min_soc} for device in targets]
    return lightest_bank(day, LightestBank.model_validate({"place": "any", "choices": choices, "targets": asked}))


def test_the_lightest_that_does_and_all_that_were_tried():
    found = ask({"big": (37, 230, {}), "small": (10, 90, {}), "middle": (18.5, 140, {})})
    assert found.lightest.bank == "middle"
    assert [trial.bank for trial in found.tried] == [None, "small", "middle", "big"]
    assert [trial.meets for trial in found.tried] == [False, False, True, True]
    assert [trial.margins["lamp"].first_off_h for trial in found.tried] == [0, pytest.approx(4), None, None]
    assert [trial.in_hand_wh for trial in found.tried] == [None, 0, pytest.approx(2.8), pytest.approx(17.6)]


def test_of_two_equally_heavy_the_one_with_more_left():
    assert ask({"a": (20, 200, {}), "b": (25, 200, {})}).lightest.bank == "b"


def test_none_is_the_lightest_if_none_is_needed():
    found = ask({"small": (10, 90, {})}, ("phone",), min_soc=0.3)
    assert (found.lightest.bank, found.lightest.mass_g) == (None, 0)
    assert found.lightest.margins["phone"].soc_over == pytest.approx(0.1)
    assert found.lightest.margins["phone"].hours_more == pytest.approx(4)


def test_nothing_does():
    found = ask({"small": (10, 90, {})}, ("lamp", "phone"), min_soc=0.0)
    assert found.lightest is None
    assert found.tried[1].margins["phone"].met
    assert not found.tried[1].margins["lamp"].met


def test_too_few_ports_and_a_bank_that_falls_asleep_are_no_choice():
    found = ask({"bare": (50, 100, {"ports": 0}), "sleepy": (50, 110, {"min_out_W": 3}), "good": (50, 300, {})})
    assert found.lightest.bank == "good"
    assert [trial.too_few_ports for trial in found.tried] == [False, True, False, False]
    assert not found.tried[2].meets


def test_a_charge_to_be_left_at_the_end():
    assert ask({"big": (37, 230, {})}, ("phone",), min_soc=0.5).lightest is None


@settings(deadline=None, max_examples=30)
@given(st.lists(st.floats(1, 60), min_size=1, max_size=5, unique=True))
def test_it_agrees_with_the_smallest_bank(sizes_wh):
    """Masses that grow with the energy: the first at or above the smallest that will do."""
    day = NIGHT.model_copy(update={"banks": (NIGHT.banks[0].model_copy(update={"eff": 0.8}),)})
    query = SmallestBank.model_validate({"bank": "any", "max_Wh": 100, "targets": [{"device": "lamp"}]})
    least_wh = smallest_bank(day, query)
    found = ask({f"{wh}": (wh, round(100 * wh), {}) for wh in sizes_wh})
    enough = sorted(wh for wh in sizes_wh if wh >= least_wh)
    assert (found.lightest and found.lightest.bank) == (f"{enough[0]}" if enough else None)


def test_refused():
    with pytest.raises(InputFault) as refused:
        lightest_bank(
            NIGHT, LightestBank.model_validate({"place": "x", "choices": [], "targets": [{"device": "lamp"}]})
        )
    assert refused.value.code == "id.unknown"
    with pytest.raises(InputFault) as refused:
        ask({"small": (10, 90, {})}, ("lamp",), min_soc=0.5)
    assert refused.value.code == "query.no_cell"
    two = NIGHT.model_copy(update={"banks": (*NIGHT.banks, NIGHT.banks[0].model_copy(update={"id": "other"}))})
    with pytest.raises(InputFault) as refused:
        ask({"other": (10, 90, {})}, day=two)
    assert refused.value.code == "id.repeated"
