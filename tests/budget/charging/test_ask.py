"""JSON in, JSON out, and what is refused, each with a sentence."""

import json
import sys
from pathlib import Path

import pytest

from kitlog.budget.power_ask.ask import answer, schema
from kitlog.fault import InputFault
from kitlog.wording.fault_sentences import INPUT

sys.path.insert(0, str(Path(__file__).parent))  # importmode=importlib finds no neighbours
from evenings import raw_evening, raw_thing

EVENING = raw_evening([raw_thing(), raw_thing("radio")], 10)


def asked(evening):
    return answer(json.dumps({"evening": evening}))


def test_an_evening():
    told = asked(EVENING)
    assert set(told) == {
        "chargers", "stays", "steps", "things", "cautions", "all_full", "all_chargeable_full", "complete", "moves_compared",
        "by_turns", "remedies", "bottleneck",
    }  # fmt: skip
    assert told["things"][0]["missing_Wh"] == 0.0
    assert told["steps"][0] == {
        "at_h": 19.0, "charger": "wall", "port": "p0", "take_off": None, "put_on": told["stays"][0]["thing"], "overnight": False,
    }  # fmt: skip
    assert json.loads(json.dumps(told, allow_nan=False)) == told


def test_remedies_stand_beside_a_short_night():
    told = asked(EVENING | {"bed_h": 20.0, "up_h": 20.0, "leave_h": 20.0})
    assert told["bottleneck"] == "wall"
    assert "gained_Wh" in told["remedies"][0]


def test_storage():
    told = answer('{"storage": {"season_over": true, "things": [{"id": "bank", "start": 0.9}]}}')
    assert told["things"][0]["act"] == "use_down"


def test_the_schema_knows_both():
    assert {"evening", "storage"} <= set(schema()["properties"])


def thing(**keys):
    return {"things": [raw_thing(**keys)]}


@pytest.mark.parametrize(
    ("change", "code", "facts"),
    [
        (thing(cell_Wh=-1), "number.out_of_range", {"id": "phone", "field": "cell_Wh"}),
        (thing(start=1.2), "number.out_of_range", {"id": "phone", "field": "start"}),
        (thing(start="0.4"), "field.wrong_type", {"id": "phone", "field": "start"}),
        (thing(wh=3), "field.unknown", {"id": "phone", "field": "wh"}),
        (thing(cell_Wh=None), "cell.missing", {"id": "phone"}),
        (thing(cell_mAh=4000, nominal_V=3.8), "cell.two_figures", {"id": "phone"}),
        (thing(cell_Wh=None, cell_mAh=4000), "cell.half", {"id": "phone", "field": "nominal_V"}),
        (thing(charge_min_C=50), "charge_band.reversed", {"id": "phone"}),
        ({"things": [raw_thing(), raw_thing()]}, "id.repeated", {"id": "phone", "part": "device"}),
        ({"things": [raw_thing(f"t{n}") for n in range(41)]}, "list.length", {"field": "evening.things"}),
        ({"priority": ["lamp"]}, "id.unknown", {"id": "lamp", "field": "priority"}),
        ({"priority": ["phone", "phone"]}, "id.repeated", {"id": "phone", "part": "priority"}),
        ({"chargers": EVENING["chargers"] * 2}, "id.repeated", {"id": "wall", "part": "charger"}),
        ({"chargers": [{"id": "wall", "ports": []}]}, "list.length", {"id": "wall"}),
        ({"chargers": [{"id": "w", "ports": [{"id": "p"}, {"id": "p"}]}]}, "id.repeated", {"id": "p", "part": "port", "within": "w"}),
        ({"chargers": [{"id": "w", "ports": [{"id": "p", "limit_W": -1}]}]}, "number.out_of_range", {"id": "p", "within": "w", "field": "limit_W"}),
        ({"chargers": [{"id": "w", "ports": [{"id": f"{n}"} for n in range(9)]}]}, "evening.too_many_ports", {"value": 9}),
        ({"bed_h": 18.0}, "evening.hours_reversed", {"field": "bed_h", "other": "from_h"}),
        ({"up_h": 6.5}, "evening.hours_reversed", {"field": "up_h", "other": "bed_h"}),
        ({"leave_h": 29.0}, "evening.hours_reversed", {"field": "leave_h", "other": "up_h"}),
        ({"sockets": -1}, "number.out_of_range", {"field": "evening.sockets"}),
    ],
)  # fmt: skip
def test_refused(change, code, facts):
    with pytest.raises(InputFault) as caught:
        asked(EVENING | change)
    assert caught.value.code == code
    assert facts.items() <= caught.value.facts.items()
    assert code in INPUT


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("{}", "request.nothing_asked"),
        (json.dumps({"evening": EVENING, "storage": {"things": []}}), "request.two_things_asked"),
        (json.dumps({"evening": EVENING | {"from_h": float("nan")}}), "number.not_finite"),
        ("[]", "json.not_object"),
    ],
)
def test_no_evening(text, code):
    with pytest.raises(InputFault) as caught:
        answer(text)
    assert caught.value.code == code
    assert code in INPUT
