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
from kitlog.budget.power.day import Day
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
    assert first["chance"]["before"]["within_95_pct"] == list(gains[0].before.within)
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


SPARE = {"bank": {"id": "spare", "cell_Wh": 30}, "mass_g": 100}


@pytest.mark.parametrize(
    ("spares", "facts"),
    [
        ([{"bank": {"id": "bank", "cell_Wh": 30}}], {"id": "bank", "part": "bank"}),
        ([{"bank": {"id": "phone", "cell_Wh": 30}}], {"id": "phone", "part": "device"}),
        ([SPARE, SPARE], {"id": "spare", "part": "bank"}),
    ],
)
def test_a_spare_bank_that_is_there_already_is_refused(spares, facts):
    """Dropped silently, it would look as if it did not help."""
    with pytest.raises(InputFault) as refused:
        answer_changes(worked(), asked(spare_banks=spares))
    assert refused.value.code == "id.repeated"
    assert refused.value.facts == {**facts, "field": "query.spare_banks"}


def test_a_device_that_stays_off_is_named():
    """Phone of 4 Wh at 1 W: off from 4 h on, charged on the walk from a bank of 4.5 Wh, on again for the last hour. The
    radio of 1 Wh at 1 W, plugged in all day, takes the bank's 4.5 Wh before that: the phone stays off."""
    phases = [{"id": name, "hours": h, "ambient_C": 25} for name, h in (("flight", 5), ("walk", 1), ("ride", 1))]
    plain = {"charge_max_W": 5, "charge_eff": 1, "knee": 1}
    phone = {"id": "phone", "cell_Wh": 4, "draw_W": {"flight": 1, "ride": 1}, **plain}
    radio = {"id": "radio", "cell_Wh": 1, "draw_W": {"flight": 1, "ride": 1}, **plain}
    bank = {"id": "bank", "cell_Wh": 4.5, "eff": 1, "ports": 2}
    plugs = [{"phase": "walk", "device": "phone", "bank": "bank"}]
    day = Day.model_validate({"phases": phases, "devices": [phone, radio], "banks": [bank], "plugs": plugs})
    found = next(one for one in answer_changes(day, asked()) if one["ids"] == ["radio", "bank"])
    (harm,) = (one for one in found["harms"] if one["id"] == "phone")
    assert (harm["what"], harm["case"], harm["at_h"], harm["sooner_h"]) == ("off_at_end", "likely", None, None)
    assert harm["longer_h"] == pytest.approx(1)
    phone_after = found["devices"]["phone"]
    assert phone_after["gain_h"] == pytest.approx(-harm["longer_h"])
    assert phone_after["likely"]["on_at_end"] is False
    assert phone_after["likely"]["off_h"] == pytest.approx(3)
    assert phone_after["likely"]["hours_more_at_W"] == 1


def test_unknown_keys_are_refused():
    with pytest.raises(ValidationError):
        asked(spare_bank=[])
