"""Changes in JSON: what is asked, what is refused, what comes out."""

import json
import sys
from pathlib import Path

import pytest
from pydantic import ValidationError

from kitlog.budget.power.changes.ask import answer_changes, changes_json
from kitlog.budget.power.changes.given import ChangesQuery
from kitlog.budget.power.changes.odds import odds
from kitlog.budget.power.changes.weigh import plan, remedies
from kitlog.budget.power.question import Chance
from kitlog.fault import InputFault

sys.path.insert(0, str(Path(__file__).parent))  # importmode=importlib finds no neighbours
from worked import EVERY, HOURS, worked

LOW_HEAT = {"device": "gloves", "name": "low", "draw_W": {"flight": 16.2 / 7}}


def asked(**fields):
    return ChangesQuery.model_validate(fields)


def test_the_worked_day_goes_in_and_out_as_json():
    high = dict(zip(EVERY, map(float, HOURS["high"]), strict=True))
    query = asked(other_uses=[LOW_HEAT], may_be_off=["gloves"], high_hours=high)
    found = json.loads(json.dumps(answer_changes(worked(), query), allow_nan=False))
    by_change = {(one["change"], one["ids"][0]): one for one in found}
    gloves = by_change["use_less", "gloves"]
    assert (gloves["all_last"], gloves["all_last_high"], gloves["mass_g"]) == (True, False, 0)
    assert gloves["short_less_h"] == pytest.approx(0.661, abs=0.001)
    assert gloves["devices"]["radio"]["high"]["first_off_h"] == pytest.approx(10.873, abs=0.001)
    assert by_change["leave_off", "gloves"]["gives_up"] == ["gloves"]


def test_the_chance_stands_beside_the_change_it_was_asked_for():
    day = worked()
    weighed = remedies(plan(day), asked(other_uses=[LOW_HEAT], may_be_off=["gloves"]))
    query = Chance.model_validate({"hours": {"flight": [2.5, 4.5, 6]}, "seed": 3})
    gains = odds(day, [weighed[0].candidate], query, [], days=50)
    first, second = changes_json(weighed, gains)
    assert first["chance"]["gain"] == gains[0].gain > 0
    assert "chance" not in second


@pytest.mark.parametrize(
    ("fields", "field"),
    [
        ({"high_hours": {"fligth": 6}}, "query.high_hours"),
        ({"plug_phases": ["fligth"]}, "query.plug_phases"),
        ({"also_plugged": {"phon": ["flight"]}}, "query.also_plugged"),
        ({"also_plugged": {"phone": ["fligth"]}}, "query.also_plugged"),
        ({"other_uses": [{**LOW_HEAT, "device": "glove"}]}, "query.other_uses"),
        ({"other_uses": [{**LOW_HEAT, "draw_W": {"fligth": 1}}]}, "query.other_uses.draw_W"),
        ({"warmer_places": [{"id": "fone", "place": "p", "temp_offset_C": 12}]}, "query.warmer_places"),
        ({"may_be_off": ["glove"]}, "query.may_be_off"),
        ({"cable_g": {"fone": 20}}, "query.cable_g"),
        ({"mass_g": {"gloves": 20}}, "query.mass_g"),
        ({"targets": [{"device": "fone"}]}, "targets"),
    ],
)
def test_a_name_that_nothing_has_is_refused(fields, field):
    with pytest.raises(InputFault) as refused:
        answer_changes(worked(), asked(**fields))
    assert (refused.value.code, refused.value.facts["field"]) == ("id.unknown", field)


def test_unknown_keys_are_refused():
    with pytest.raises(ValidationError):
        asked(spare_bank=[])
