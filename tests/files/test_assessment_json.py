import json

from scenario import DEMO, NAMES, O1, O2, O3, changed, judged

from kitlog.files.assessment_json import assessment_json
from kitlog.files.outing_export import outing_json
from kitlog.files.outing_json import read_outing
from kitlog.packing.naming import with_ids


def test_plain_finite_json() -> None:
    for outing in (O1, O2, O3):
        tree = assessment_json(judged(outing), NAMES)
        assert json.loads(json.dumps(tree, allow_nan=False)) == tree


def test_names_for_people_and_ids_for_programs() -> None:
    tree = assessment_json(judged(O3), NAMES)
    for finding in tree["findings"]:
        assert [NAMES[item] for item in finding["item_ids"]] == finding["items"]
    assert tree["set"] == {"wing": "Wing A", "harness": "Harness A", "reserve": "Reserve A", "helmet": "Helmet B"}
    assert "Ballast bag" in tree["stays_home"]


def test_a_mass_that_is_not_known_is_none() -> None:
    tree = assessment_json(judged(changed(O1, first_day="2026-04-01", last_day="2026-04-01")), NAMES)
    assert tree["mass"]["pilot_g"] is None  # the body mass was taken on 1 May
    assert tree["mass"]["take_off_g"] is None
    assert tree["mass"]["unknown"] == ["pilot"]


def test_own_lines_are_told() -> None:
    tree = assessment_json(judged(changed(O1, own_lines=[{"text": "Flask", "mass_g": 300}])), NAMES)
    assert tree["own_lines"] == [{"text": "Flask", "mass_g": 300, "zone": "worn", "zone_on_foot": None}]


def test_an_exported_outing_is_the_same_outing() -> None:
    for outing in (O1, O2, O3):
        data = json.dumps(outing_json(outing, DEMO.items)).encode()
        assert with_ids(read_outing(data, "o.json"), DEMO.items) == outing.model_copy(update={"id": "outing"})


def test_items_that_share_a_name_keep_their_ids() -> None:
    twin = DEMO.items[0].model_copy(update={"id": "twin"})
    tree = outing_json(O1, (*DEMO.items, twin))
    assert tree["set"]["wing"] == O1.set.wing
    named_as_an_id = DEMO.items[0].model_copy(update={"name": DEMO.items[1].id})
    assert outing_json(O1, (named_as_an_id, *DEMO.items[1:]))["set"]["wing"] == O1.set.wing
