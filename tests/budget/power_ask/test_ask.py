"""JSON in, JSON out, and the schema that tells what goes in."""

import json
from pathlib import Path

import pytest

from kitlog.budget.power.day import Bank, Cell, Device, Plug
from kitlog.budget.power_ask.ask import answer, schema
from kitlog.budget.power_ask.described import DescribedDay, DescribedDevice
from kitlog.budget.power_ask.request import QUESTIONS

CASES = json.loads((Path(__file__).parents[1] / "cases/power-open.json").read_text(encoding="utf-8"))["cases"]


def test_the_schema_names_every_key_of_a_day_and_refuses_others():
    found = schema()
    assert json.loads(json.dumps(found)) == found
    for model in (DescribedDay, DescribedDevice, Bank, Plug):
        described = found["$defs"][model.__name__]
        assert set(described["properties"]) == set(model.model_fields)
        assert described["additionalProperties"] is False
    assert set(found["properties"]) == {"day", "sample_h", "query", "evening", "storage"}
    assert {model.__name__ for model in QUESTIONS.values()} <= set(found["$defs"])


@pytest.mark.parametrize(
    ("key", "default"),
    [
        ("health", 1), ("start", 1), ("cutoff", 0), ("eff", 0.85), ("ports", 1), ("charge_max_W", 0),
        ("charge_eff", 0.9), ("knee", 0.8), ("charge_min_C", 0), ("charge_max_C", 45), ("temp_offset_C", 0),
        ("restart_margin", 0.05), ("quiescent_W", 0), ("min_out_W", 0), ("auto_off_s", 30), ("low_current_mode", False),
    ],
)  # fmt: skip
def test_defaults(key, default):
    """As the rules list them (section 10)."""
    found = [model.model_fields[key].default for model in (Cell, Device, Bank) if key in model.model_fields]
    assert found
    assert all(each == default for each in found)


def test_a_question_is_answered_with_one_number():
    case = next(case for case in CASES if case["id"] == "O11")
    found = answer(json.dumps({"day": case["day"], "query": case["query"]}))
    assert list(found) == ["answer"]
    assert isinstance(found["answer"], float)


def test_an_answer_may_be_none():
    case = next(case for case in CASES if case["id"] == "O11")
    query = {"device": "phone", "targets": [{"device": "phone", "min_soc": 1.0}]}
    assert answer(json.dumps({"day": case["day"], "query": query})) == {"answer": None}


def test_the_same_question_gets_the_same_answer():
    case = next(case for case in CASES if case["id"] == "O8")
    text = json.dumps({"day": case["day"], "query": case["query"] | {"n": 500}})
    assert answer(text) == answer(text)
