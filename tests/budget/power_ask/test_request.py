"""The keys tell the question: one of them, not none and not two."""

import json
from typing import get_args

import pytest
from pydantic import ValidationError

from kitlog.budget.power_ask.ask import answer, schema
from kitlog.budget.power_ask.request import QUESTIONS, Query, kind_of_query
from kitlog.fault import InputFault

DAY = {
    "phases": [{"id": "day", "hours": 8, "ambient_C": 25}],
    "devices": [{"id": "phone", "cell_Wh": 10, "start": 0.7, "draw_W": {"day": 1}, "charge_max_W": 5}],
    "banks": [{"id": "bank", "cell_Wh": 10}],
}
TARGETS = [{"device": "phone"}]
ASKED = {
    "?longest_phase": {"phase": "day", "device": "phone"},
    "?smallest_bank": {"bank": "bank", "max_Wh": 20, "targets": TARGETS},
    "?lowest_start": {"device": "phone", "targets": TARGETS},
    "?lightest_bank": {"place": "bank", "choices": [], "targets": TARGETS},
    "?chance": {"n": 10, "min_soc": 0.1},
    "?forecast": {"n": 10, "callers": ["phone"]},
    "?changes": {"targets": TARGETS, "plug_below": 0.5},
}


@pytest.mark.parametrize(("kind", "query"), ASKED.items())
def test_each_question_is_told_by_its_keys(kind, query):
    assert kind_of_query(query) == kind
    assert list(answer(json.dumps({"day": DAY, "query": query}))) == ["answer"]


def test_every_question_stands_in_the_union():
    (union, _) = get_args(Query)
    assert {model for tagged in get_args(union) for model in get_args(tagged)[:1]} == set(QUESTIONS.values())


def _fits(model, query):
    try:
        model.model_validate(query)
    except ValidationError:
        return False
    either = model.model_json_schema().get("anyOf", [{"required": []}])
    return any(set(one["required"]) <= query.keys() for one in either)


@pytest.mark.parametrize("query", [*ASKED.values(), {"fan_steps": None}, {"hours": {}}, {"chance": {}}])
def test_the_schema_leaves_one_question_for_each(query):
    """As JSON Schema reads `oneOf`: exactly one of them may fit."""
    assert [model for model in QUESTIONS.values() if _fits(model, query)] == [QUESTIONS[kind_of_query(query)]]


@pytest.mark.parametrize(
    ("query", "key", "others"),
    [
        ({"phase": "day", "device": "phone", "bank": "bank"}, "bank", ["phase", "device"]),
        ({"n": 10, "phase": "day"}, "phase", ["n"]),
        ({"n": 10, "plug_below": 0.5}, "plug_below", ["n"]),
        ({"device": "phone", "targets": TARGETS, "min_soc": 0.2}, "min_soc", ["device", "targets"]),
        ({"callers": [], "targets": TARGETS}, "targets", ["callers"]),
        ({"place": "bank", "bank": "bank"}, "bank", ["place"]),
    ],
)
def test_two_questions_are_refused_with_the_key_that_does_not_fit(query, key, others):
    with pytest.raises(InputFault) as caught:
        answer(json.dumps({"day": DAY, "query": query}))
    assert (caught.value.code, caught.value.facts["key"]) == ("query.two_questions", key)
    assert caught.value.facts["others"] == others


@pytest.mark.parametrize("query", [{}, {"min_soc": 0.2}, {"seed": 3}, {"colour": 1}, 3])
def test_no_question_is_refused(query):
    with pytest.raises(InputFault) as caught:
        answer(json.dumps({"day": DAY, "query": query}))
    assert caught.value.code == "query.unclear"


def test_a_misspelt_key_beside_a_question_is_named():
    with pytest.raises(InputFault) as caught:
        answer(json.dumps({"day": DAY, "query": {"n": 10, "caller": ["phone"]}}))
    assert (caught.value.code, caught.value.facts["field"]) == ("field.unknown", "query.caller")


@pytest.mark.parametrize(
    ("more", "first", "other"),
    [({"evening": None}, None, None), ({"storage": {"things": []}}, "day", "sample_h")],
)
def test_a_day_and_the_night_are_two_questions(more, first, other):
    text = json.dumps({"day": DAY, "sample_h": [], **more})
    if first is None:
        assert set(answer(text)) == {"devices", "banks"}
        return
    with pytest.raises(InputFault) as caught:
        answer(text)
    assert (caught.value.code, dict(caught.value.facts)) == (
        "request.two_things_asked",
        {"first": first, "other": other},
    )


@pytest.mark.parametrize("name", ["SmallestBank", "LowestStart"])
def test_the_grid_is_stated_where_the_question_is_described(name):
    described = " ".join(schema()["$defs"][name]["description"].split())
    assert "grid of 200 steps" in described
    assert "at most 600 runs" in described


def test_the_lightest_says_its_runs():
    assert "One run of the single day for each" in schema()["$defs"]["LightestBank"]["description"]
