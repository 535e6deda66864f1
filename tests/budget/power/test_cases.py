"""The eleven open cases: seven days and four questions.

Expected figures: two independent solutions of the same rules (steps of half a second, and closed forms) that agree within
each case's tolerances; and, where a case has `hand`, figures worked out by hand.
"""

import json
from pathlib import Path

import pytest

from kitlog.budget.power_ask.ask import answer

CASES = json.loads((Path(__file__).parents[1] / "cases/power-open.json").read_text(encoding="utf-8"))["cases"]
DAYS = [case for case in CASES if case["kind"] == "simulate"]
QUESTIONS = [case for case in CASES if case["kind"] != "simulate"]

TOLERANCE_OF = {
    "first_off_h": "time_h", "off_h": "time_h", "auto_off_h": "time_h", "empty_h": "time_h",
    "soc_end": "soc", "phase_end_soc": "soc", "samples_soc": "soc",
    "margin_Wh": "Wh", "delivered_Wh": "Wh", "in_hand_Wh": "Wh", "margin_pct": "pct", "hours_more": "hours_more",
}  # fmt: skip


def asked(case):
    beside = {"query": case["query"]} if "query" in case else {"sample_h": case["sample_h"]}
    return answer(json.dumps({"day": case["day"], **beside}))


def near(value, key, tolerances):
    """Times, charges and energies within their tolerances; states and what is None exactly."""
    if key not in TOLERANCE_OF or value is None:
        return value
    return pytest.approx(value, rel=0, abs=tolerances[TOLERANCE_OF[key]])


@pytest.mark.parametrize("case", DAYS, ids=lambda case: case["id"])
def test_days(case):
    found = asked(case)
    assert json.loads(json.dumps(found)) == found
    for part in ("devices", "banks"):
        assert found[part].keys() == case["expect"][part].keys()
        for name, expected in case["expect"][part].items():
            assert found[part][name].keys() == expected.keys()
            for key, value in expected.items():
                assert found[part][name][key] == near(value, key, case["tol"]), (name, key)


@pytest.mark.parametrize("case", [case for case in DAYS if "hand" in case], ids=lambda case: case["id"])
def test_days_by_hand(case):
    found = asked(case)
    for path, value in case["hand"].items():
        part, name, key = path.split(".")
        assert found[part][name][key] == pytest.approx(value, rel=1e-10), path


@pytest.mark.parametrize("case", QUESTIONS, ids=lambda case: case["id"])
def test_questions(case):
    found = asked(case)["answer"]
    if isinstance(found, dict):
        assert found.keys() == case["expect"].keys()
        for device, probability in case["expect"].items():
            assert found[device] == pytest.approx(probability, rel=0, abs=case["tol"][device])
    else:
        assert found == pytest.approx(case["expect"], rel=0, abs=case["tol"])
