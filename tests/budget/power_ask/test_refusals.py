"""Faulty days and questions: each is refused before anything is computed, with the faulty id and what is wrong."""

import copy
import json

import pytest

from kitlog.budget.power.day import Day
from kitlog.budget.power.simulate import simulate
from kitlog.budget.power_ask.ask import answer
from kitlog.fault import InputFault

REQUEST = {
    "day": {
        "phases": [{"id": "flight", "hours": 4, "ambient_C": -4}, {"id": "ride", "hours": 2, "ambient_C": 18}],
        "devices": [
            {"id": "phone", "cell_Wh": 15, "draw_W": {"flight": 2, "ride": {"modes": [{"W": 1, "share": 1}]}}},
            {"id": "vario", "cell_mAh": 3000, "nominal_V": 3.7, "draw_W": {"flight": 1}},
            {"id": "lamp", "cell_Wh": 0},
        ],
        "banks": [{"id": "bank", "cell_Wh": 37, "ports": 1}, {"id": "car", "cell_Wh": None}],
        "plugs": [{"phase": "flight", "device": "phone", "bank": "bank"}],
        "temp_table": [[-20, 0.6], [25, 1]],
    },
    "sample_h": [],
}
PLUG = {"phase": "flight", "device": "vario", "bank": "car"}


def refused(request):
    text = request if isinstance(request, str) else json.dumps(request)
    with pytest.raises(InputFault) as caught:
        answer(text)
    return caught.value


def changed(path, value):
    request = copy.deepcopy(REQUEST)
    *way, last = path
    here = request
    for part in way:
        here = here[part]
    if isinstance(here, list) and last == len(here):
        here.append(value)
    else:
        here[last] = value
    return request


def test_the_sound_request_is_answered():
    assert set(answer(json.dumps(REQUEST))) == {"devices", "banks"}


PHASE, PHONE, VARIO, BANK, PLUG_AT = (
    ("day", "phases", 0), ("day", "devices", 0), ("day", "devices", 1), ("day", "banks", 0), ("day", "plugs", 0),
)  # fmt: skip


@pytest.mark.parametrize(
    ("path", "value", "owner", "relation", "limit"),
    [
        ((*PHASE, "hours"), -1, "flight", "at_least", 0),
        ((*PHASE, "ambient_C"), -1e12, "flight", "at_least", -1e9),
        ((*PHONE, "draw_W", "flight"), -0.1, "phone", "at_least", 0),
        ((*PHONE, "draw_W", "ride", "modes", 0, "W"), -1, "phone", "at_least", 0),
        ((*PHONE, "draw_W", "ride", "modes", 0, "share"), 1.2, "phone", "at_most", 1),
        ((*PHONE, "cell_Wh"), -3, "phone", "at_least", 0),
        ((*PHONE, "health"), 1.1, "phone", "at_most", 1),
        ((*PHONE, "start"), -0.1, "phone", "at_least", 0),
        ((*PHONE, "cutoff"), 1, "phone", "below", 1),
        ((*PHONE, "charge_max_W"), -1, "phone", "at_least", 0),
        ((*PHONE, "input_limit_W"), -1, "phone", "at_least", 0),
        ((*PHONE, "charge_eff"), 2, "phone", "at_most", 1),
        ((*PHONE, "knee"), 1.01, "phone", "at_most", 1),
        ((*PHONE, "restart_margin"), -0.01, "phone", "at_least", 0),
        ((*PHONE, "temp_table"), [[-20, 0], [25, 1]], "phone", "above", 0),
        ((*PHONE, "temp_table"), [[-20, 0.6], [25, 1.01]], "phone", "at_most", 1),
        ((*BANK, "eff"), 0, "bank", "at_least", 0.01),
        ((*BANK, "eff"), 1.2, "bank", "at_most", 1),
        ((*BANK, "ports"), -1, "bank", "at_least", 0),
        ((*BANK, "port_limit_W"), -1, "bank", "at_least", 0),
        ((*BANK, "total_limit_W"), -1, "bank", "at_least", 0),
        ((*BANK, "quiescent_W"), -1, "bank", "at_least", 0),
        ((*BANK, "min_out_W"), -1, "bank", "at_least", 0),
        ((*BANK, "auto_off_s"), -1, "bank", "at_least", 0),
        ((*BANK, "cutoff"), 1.0, "bank", "below", 1),
        ((*PLUG_AT, "connect_below"), 50, "phone", "at_most", 1),
        ((*PLUG_AT, "charge_to"), -1, "phone", "at_least", 0),
        (("day", "temp_table"), [[-20, 0], [25, 1]], None, "above", 0),
        (("sample_h",), [-1], None, "at_least", 0),
    ],
)
def test_figures_out_of_their_range(path, value, owner, relation, limit):
    fault = refused(changed(path, value))
    assert fault.code == "number.out_of_range"
    assert (fault.facts["id"], fault.facts["relation"], fault.facts["limit"]) == (owner, relation, limit)
    assert next(part for part in reversed(path) if isinstance(part, str)) in fault.facts["field"]


@pytest.mark.parametrize(
    ("path", "value", "code", "facts"),
    [
        (("day", "phases", 2), {"id": "flight", "hours": 1, "ambient_C": 0}, "id.repeated", {"id": "flight", "part": "phase"}),
        (("day", "devices", 3), {"id": "phone", "cell_Wh": 1}, "id.repeated", {"id": "phone", "part": "device"}),
        (("day", "banks", 2), {"id": "car", "cell_Wh": 1}, "id.repeated", {"id": "car", "part": "bank"}),
        (("day", "plugs", 1), PLUG | {"bank": "bnak"}, "id.unknown", {"id": "bnak", "part": "bank", "field": "plugs", "owner": "vario"}),
        (("day", "plugs", 1), PLUG | {"device": "fone"}, "id.unknown", {"id": "fone", "part": "device", "field": "plugs", "owner": None}),
        (("day", "plugs", 1), PLUG | {"phase": "fligt"}, "id.unknown", {"id": "fligt", "part": "phase", "field": "plugs", "owner": "vario"}),
        ((*PHONE, "draw_W", "fligt"), 1, "id.unknown", {"id": "fligt", "part": "phase", "field": "draw_W", "owner": "phone"}),
        ((*PHONE, "draw_W", "ride"), {"modes": [{"W": 1, "share": 0.9}]}, "draw.shares", {"id": "phone", "phase": "ride", "total": 0.9}),
        ((*PHONE, "draw_W", "ride"), {"modes": []}, "draw.shares", {"id": "phone", "phase": "ride", "total": 0}),
        ((*PHONE, "temp_table"), [[0, 0.8], [0, 0.9]], "temp_table.not_rising", {"id": "phone", "field": "temp_table", "value": 0.0}),
        ((*BANK, "temp_table"), [[0, 0.8], [-5, 0.7]], "temp_table.not_rising", {"id": "bank", "field": "temp_table", "value": -5.0}),
        (("day", "temp_table"), [[0, 0.8], [-5, 0.7]], "temp_table.not_rising", {"id": None, "field": "temp_table", "value": -5.0}),
        ((*PHONE, "cell_Wh"), None, "cell.missing", {"id": "phone", "part": "device"}),
        (("day", "banks", 2), {"id": "spare"}, "cell.missing", {"id": "spare", "part": "bank"}),
        ((*VARIO, "cell_Wh"), 11, "cell.two_figures", {"id": "vario", "part": "device"}),
        ((*VARIO, "nominal_V"), None, "cell.half", {"id": "vario", "part": "device", "field": "nominal_V"}),
        ((*BANK, "nominal_V"), 3.7, "cell.half", {"id": "bank", "part": "bank", "field": "cell_mAh"}),
        ((*PHONE, "charge_min_C"), 50, "charge_band.reversed", {"id": "phone", "low": 50, "high": 45}),
        (("day", "plugs", 1), PLUG | {"bank": "bank"}, "plug.ports", {"id": "bank", "phase": "flight", "plugs": 2, "ports": 1}),
        (("day", "plugs", 1), PLUG | {"device": "phone"}, "plug.twice", {"id": "phone", "phase": "flight"}),
        (("sample_h",), [6.1], "sample.after_end", {"value": 6.1, "limit": 6.0}),
    ],
)  # fmt: skip
def test_days_that_contradict_themselves(path, value, code, facts):
    fault = refused(changed(path, value))
    assert (fault.code, dict(fault.facts)) == (code, facts)


@pytest.mark.parametrize(
    ("path", "value", "code", "facts"),
    [
        ((*PHONE, "colour"), "red", "field.unknown", {"id": "phone", "field": "colour", "value": "red"}),
        ((*PHONE, "cell_wh"), 15, "field.unknown", {"id": "phone", "field": "cell_wh", "value": 15}),
        (("day", "name"), "x", "field.unknown", {"id": None, "field": "day.name", "value": "x"}),
        (("day", "devices", 3), {"cell_Wh": 1}, "field.missing", {"id": None, "field": "day.devices.3.id", "value": "object"}),
        (("day", "plugs", 1), {"device": "vario", "bank": "car"}, "field.missing", {"id": "vario", "field": "phase", "value": "object"}),
        ((*PHONE, "cell_Wh"), "15", "field.wrong_type", {"id": "phone", "field": "cell_Wh", "value": "15", "wanted": "number"}),
        ((*PHONE, "cell_Wh"), True, "field.wrong_type", {"id": "phone", "field": "cell_Wh", "value": True, "wanted": "number"}),
        ((*PHONE, "draw_W"), 3, "field.wrong_type", {"id": "phone", "field": "draw_W", "value": 3, "wanted": "object"}),
        ((*PHONE, "draw_W", "ride"), [3], "field.wrong_type", {"id": "phone", "field": "draw_W.ride", "value": "list", "wanted": "number"}),
        ((*BANK, "ports"), 1.5, "field.wrong_type", {"id": "bank", "field": "ports", "value": 1.5, "wanted": "whole_number"}),
        ((*BANK, "low_current_mode"), 1, "field.wrong_type", {"id": "bank", "field": "low_current_mode", "value": 1, "wanted": "true_or_false"}),
        (("day", "phases"), {}, "field.wrong_type", {"id": None, "field": "day.phases", "value": "object", "wanted": "list"}),
        (("day", "phases"), [], "list.length", {"id": None, "field": "day.phases", "value": "list", "relation": "at_least", "limit": 1}),
        ((*PHONE, "temp_table"), [], "list.length", {"id": "phone", "field": "temp_table", "value": "list", "relation": "at_least", "limit": 1}),
        ((*PHONE, "temp_table"), [[0, 1, 2]], "list.length", {"id": "phone", "field": "temp_table.0", "value": "list", "relation": "at_most", "limit": 2}),
        ((*PHONE, "id"), "", "id.unusable", {"id": "", "field": "id", "value": "", "relation": "at_least", "limit": 1}),
        ((*PHONE, "id"), "pho\nne", "id.unusable", {"id": "pho?ne", "field": "id", "value": "pho?ne"}),
        ((*PHONE, "draw_W", "ride", "modes", 0, "watts"), 1, "field.unknown", {"id": "phone", "field": "draw_W.ride.modes.0.watts", "value": 1}),
    ],
)  # fmt: skip
def test_forms_that_cannot_be_read(path, value, code, facts):
    fault = refused(changed(path, value))
    assert (fault.code, dict(fault.facts)) == (code, facts)


@pytest.mark.parametrize("figure", ["NaN", "Infinity", "-Infinity", "1e400", "9" * 400, "1" + "0" * 5000])
def test_no_number_at_all(figure):
    fault = refused(json.dumps(REQUEST).replace('"cell_Wh": 15', f'"cell_Wh": {figure}'))
    assert fault.code == "number.not_finite"
    assert (fault.facts["id"], fault.facts["field"]) == ("phone", "cell_Wh")


def test_a_whole_number_with_too_many_digits_is_out_of_range_at_most():
    fault = refused(json.dumps(REQUEST).replace('"cell_Wh": 15', '"cell_Wh": ' + "9" * 30))
    assert fault.code == "number.out_of_range"


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "json.syntax"),
        ('{"day": }', "json.syntax"),
        ("[]", "json.not_object"),
        ("3", "json.not_object"),
        ("[" * 100_000, "json.too_deep"),
        ('{"day": ' * 100_000, "json.too_deep"),
        (json.dumps(REQUEST).replace('"ports": 1', '"ports": 1, "ports": 2'), "json.key_twice"),
        (json.dumps(REQUEST).replace("vario", "va\\ud800rio"), "json.lone_surrogate"),
        (json.dumps(REQUEST).replace('"ports"', '"po\\udfffrts"'), "json.lone_surrogate"),
        (json.dumps(REQUEST | {"sample_h": None}), "request.nothing_asked"),
        (json.dumps({"day": REQUEST["day"]}), "request.nothing_asked"),
        (json.dumps(REQUEST | {"query": {"n": 5}}), "request.two_things_asked"),
        (json.dumps({"sample_h": []}), "field.missing"),
    ],
)
def test_texts_that_are_no_request(text, code):
    fault = refused(text)
    assert fault.code == code
    "".join(str(fact) for fact in fault.facts.values()).encode()  # every fact can be printed


def test_a_syntax_error_names_its_place():
    assert dict(refused('{"day":\n  {,}}').facts) == {"line": 2, "column": 4}


def test_a_key_that_stands_twice_is_named():
    assert refused('{"day": {"phases": [], "phases": []}}').facts == {"field": "phases"}


@pytest.mark.parametrize(
    ("query", "code", "facts"),
    [
        ({}, "query.unclear", {"id": None, "field": "query"}),
        ([], "query.unclear", {"id": None, "field": "query"}),
        ({"min_soc": 0.2}, "query.unclear", {"id": None, "field": "query"}),
        (
            {"phase": "ride", "device": "phone", "bank": "bank"},
            "query.two_questions",
            {"field": "query", "key": "bank"},
        ),
        ({"phase": "ride"}, "field.missing", {"field": "query.device"}),
        ({"phase": "bus", "device": "phone"}, "id.unknown", {"id": "bus", "part": "phase", "field": "query.phase"}),
        ({"phase": "ride", "device": "fone"}, "id.unknown", {"id": "fone", "part": "device", "field": "query.device"}),
        ({"phase": "flight", "device": "phone"}, "query.phase_not_last", {"id": "flight", "last": "ride"}),
        ({"phase": "ride", "device": "lamp", "min_soc": 0.2}, "query.no_cell", {"id": "lamp"}),
        (
            {"phase": "ride", "device": "phone", "horizon_h": 0},
            "number.out_of_range",
            {"relation": "above", "limit": 0},
        ),
        ({"bank": "bnak", "max_Wh": 5, "targets": [{"device": "phone"}]}, "id.unknown", {"id": "bnak", "part": "bank"}),
        (
            {"bank": "bank", "max_Wh": 5, "targets": [{"device": "x"}]},
            "id.unknown",
            {"id": "x", "field": "query.targets"},
        ),
        ({"bank": "bank", "max_Wh": 5, "targets": []}, "list.length", {"field": "query.targets"}),
        ({"bank": "bank", "targets": [{"device": "phone"}]}, "field.missing", {"field": "query.max_Wh"}),
        (
            {"device": "lamp", "targets": [{"device": "phone"}]},
            "query.no_cell",
            {"id": "lamp", "field": "query.device"},
        ),
        ({"device": "fone", "targets": [{"device": "phone"}]}, "id.unknown", {"id": "fone"}),
        ({"device": "phone", "targets": [{"device": "phone", "min_soc": 2}]}, "number.out_of_range", {"id": "phone"}),
        ({"n": 0}, "number.out_of_range", {"field": "query.n"}),
        ({"n": 10, "hours": {"bus": [1, 2, 3]}}, "id.unknown", {"id": "bus", "field": "query.hours"}),
        ({"n": 10, "hours": {"ride": [3, 2, 1]}}, "query.not_in_order", {"id": "ride", "value": [3, 2, 1]}),
        ({"n": 10, "hours": {"ride": [1, 2]}}, "list.length", {"field": "query.hours.ride", "limit": 3}),
        ({"n": 10, "hours": {"ride": [-1, 2, 3]}}, "number.out_of_range", {"field": "query.hours.ride.0"}),
        ({"n": 10, "draws": {"fone": {}}}, "id.unknown", {"id": "fone", "part": "device", "field": "query.draws"}),
        ({"n": 10, "draws": {"phone": {"bus": [1, 2, 3]}}}, "id.unknown", {"id": "bus", "field": "query.draws.phone"}),
        ({"n": 10, "start": {"x": [0, 0, 1]}}, "id.unknown", {"id": "x", "field": "query.start"}),
        ({"n": 10, "start": {"phone": [0, 1, 2]}}, "number.out_of_range", {"field": "query.start.phone.2"}),
        ({"n": 10, "min_soc": {"x": 0.2}}, "id.unknown", {"id": "x", "field": "query.min_soc"}),
        ({"n": 10, "min_soc": {"lamp": 0.2}}, "query.no_cell", {"id": "lamp", "field": "query.min_soc"}),
        ({"n": 10, "min_soc": 1.2}, "number.out_of_range", {"field": "query.min_soc"}),
    ],
)
def test_questions_that_make_no_sense(query, code, facts):
    fault = refused({"day": REQUEST["day"], "query": query})
    assert fault.code == code
    assert {key: fault.facts[key] for key in facts} == facts


def test_a_day_built_by_the_program_is_checked_too():
    day = Day.model_validate(REQUEST["day"] | {"plugs": [PLUG | {"bank": "bnak"}]})
    with pytest.raises(InputFault, match=r"id\.unknown"):
        simulate(day)


def test_legal_but_odd_days_are_not_refused():
    """A plug under the floor, modes that add up to 1 within a rounding, a charge band of one point, a dumped model."""
    day = copy.deepcopy(REQUEST["day"])
    day["plugs"][0]["connect_below"] = 0.01
    day["devices"][0]["draw_W"]["ride"] = {"modes": [{"W": 1, "share": 1 / 3}] * 2 + [{"W": 1, "share": 0.3333336}]}
    day["devices"][0] |= {"charge_min_C": 20, "charge_max_C": 20}
    dumped = Day.model_validate(day).model_dump(mode="json")
    assert Day.model_validate(dumped) == Day.model_validate(day)
    assert answer(json.dumps({"day": dumped, "sample_h": []})) == answer(json.dumps({"day": day, "sample_h": []}))
