"""Inverse questions take at most 600 runs of the single day, counted where they are made."""

import json
from pathlib import Path

import pytest

from kitlog.budget.power import longest_phase, lowest_start, simulate, smallest_bank
from kitlog.budget.power.lightest_bank import MOST_CHOICES
from kitlog.budget.power_ask.ask import answer

CASES = {
    case["id"]: case
    for case in json.loads((Path(__file__).parents[1] / "cases/power-open.json").read_text(encoding="utf-8"))["cases"]
}
MOST = 600
TARGETS = [{"device": "phone", "min_soc": 0.25}]
THRESHOLDS = [{"phase": f"p{n}", "device": "phone", "bank": "bank", "connect_below": n / 60} for n in range(60)]
MANY = {
    "phases": [{"id": f"p{n}", "hours": 0.2, "ambient_C": 20 - n / 2} for n in range(60)],
    "devices": [{"id": "phone", "cell_Wh": 10, "charge_max_W": 9, "draw_W": {f"p{n}": 1.5 for n in range(60)}}],
    "banks": [{"id": "bank", "cell_Wh": 20, "min_out_W": 1, "auto_off_s": 100}],
    "plugs": THRESHOLDS,
}
"""A day of sixty thresholds: as many places at which its course may change."""


@pytest.fixture
def runs(monkeypatch):
    counted = []
    for module in (longest_phase, lowest_start, smallest_bank, simulate):
        run_day = module.run_day

        def counting(*arguments, run_day=run_day):
            counted.append(1)
            return run_day(*arguments)

        monkeypatch.setattr(module, "run_day", counting)
    return counted


def ask(day, **query):
    return answer(json.dumps({"day": day, "query": query}))["answer"]


def test_the_longest_phase_takes_one(runs):
    case = CASES["O9"]
    ask(case["day"], **case["query"])
    assert len(runs) == 1


@pytest.mark.parametrize("case", ["O10", "O11"])
def test_the_open_cases(runs, case):
    ask(CASES[case]["day"], **CASES[case]["query"])
    assert 100 < len(runs) <= MOST


def test_the_smallest_bank_on_a_day_of_many_thresholds(runs):
    ask(MANY, bank="bank", max_Wh=100, targets=TARGETS)
    assert 1 <= len(runs) <= MOST


def test_the_lowest_start_on_a_day_of_many_thresholds(runs):
    ask(MANY, device="phone", targets=[{"device": "phone"}])
    assert 1 <= len(runs) <= MOST


def test_the_lightest_bank_takes_one_for_each_choice_and_one_without(runs):
    choices = [{"bank": {"id": f"b{n}", "cell_Wh": n}, "mass_g": n} for n in range(MOST_CHOICES)]
    ask(MANY, place="bank", choices=choices, targets=TARGETS)
    assert len(runs) == MOST_CHOICES + 1 <= MOST


def test_changes_take_no_more_than_sixty(runs):
    spare = [{"bank": {"id": f"b{n}", "cell_Wh": n, "ports": 2}, "mass_g": n} for n in range(40)]
    high = {phase["id"]: 0.3 for phase in MANY["phases"]}
    assert len(ask(MANY, spare_banks=spare, high_hours=high)) > 20
    assert len(runs) <= 60
