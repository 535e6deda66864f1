"""Every code that the source can raise or find has its sentence, and every sentence can be said."""

import ast
import re
from string import Formatter

import pytest
from source_walk import ROOT, calls, marked, modules, strings, text

from kitlog.fault import InputFault, SystemFault
from kitlog.wording import findings, reasons, remedies
from kitlog.wording.fault_sentences import INPUT
from kitlog.wording.faults import MADE, SENTENCES, fault_text
from kitlog.wording.import_text import REMARKS
from kitlog.wording.system_sentences import SYSTEM

PACKING = modules("packing")
OUTSIDE = [path for path in modules() if "wording" not in path.parts]

FINDING = re.compile(r"(need|check|pin|pair|service|weight|power|water|people)\.[a-z_]+")

FAULT = re.compile(
    r"(number|day|time|text|field|list|json|csv|id|draw|temp_table|cell|charge_band|plug|request|sample"
    r"|data_file|backup|resources|icon|undo|window)\.[a-z_]+"
)
"""Families of codes that name nothing but faults."""

ALWAYS = MADE | {"value", "file", "path", "field", "row", "reason"}
"""Facts that whoever passes a fault on may add, or that the sentence makes itself."""


def placeholders(sentence: str) -> set[str]:
    return {name for _, name, _, _ in Formatter().parse(sentence) if name}


class TestFindings:
    def test_each_code_has_a_sentence_and_no_sentence_is_dead(self) -> None:
        assert {said for said in strings(PACKING) if FINDING.fullmatch(said)} == findings.CODES

    def test_each_remedy_has_a_sentence_and_no_sentence_is_dead(self) -> None:
        assert {text(call.args[0]) for call in calls(PACKING, "Remedy")} == remedies.CODES

    def test_each_reason_has_words(self) -> None:
        given = {text(kw.value) for call in calls(PACKING, "Missing") for kw in call.keywords if kw.arg == "reason"}
        listed = {
            element.value
            for path in PACKING
            if path.name == "why_not.py"
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
            if isinstance(node, ast.Tuple)
            for element in node.elts
            if isinstance(element, ast.Constant) and isinstance(element.value, str)
        }
        assert len(listed) > 10
        assert (given | listed) - {None} <= reasons.REASONS


class TestRemarks:
    def test_each_remark_about_a_table_has_a_sentence_and_no_sentence_is_dead(self) -> None:
        tables = modules("files/table")
        made = {text(call.args[0]) for call in calls(tables, "Remark", "_some", "_tell")} | {
            text(call.args[1]) for call in calls(tables, "_tell") if len(call.args) > 1
        }
        conditional = {said for said in strings(tables) if said in {"table.kind_other", "table.word_unknown"}}
        doubled = {said for said in strings(tables) if said.startswith("table.heading_")}
        found = {code for code in made | conditional | doubled if code and code.startswith("table.")}
        met = {said for said in strings(modules("workbench")) if re.fullmatch(r"service\.(un)?[cs][a-z]+d", said)}
        assert found | met == REMARKS


class TestRecordings:
    def test_each_reason_has_a_sentence_and_no_sentence_is_dead(self) -> None:
        floors = modules("kit/recordings") + modules("files/recordings")
        given = {said for said in strings(floors) if re.fullmatch(r"recording\.[a-z_]+", said)}
        assert given == {code for code in SENTENCES if code.startswith("recording.")}


class TestFaults:
    def test_each_code_that_is_raised_has_a_sentence(self) -> None:
        raised = {
            code
            for call in calls(OUTSIDE, "InputFault", "SystemFault", "Fault", "PydanticCustomError")
            if call.args and (code := text(call.args[0])) is not None
        }
        assert len(raised) > 60
        assert raised <= SENTENCES.keys()

    def test_each_code_that_stands_in_a_table_has_a_sentence(self) -> None:
        written = {said for said in strings(OUTSIDE) if FAULT.fullmatch(said)}
        assert len(written) > 90
        assert written <= SENTENCES.keys()

    def test_no_code_is_both_input_and_system(self) -> None:
        assert not INPUT.keys() & SYSTEM.keys()

    @pytest.mark.parametrize("code", sorted(SENTENCES))
    def test_each_sentence_can_be_said(self, code: str) -> None:
        fault_type = InputFault if code in INPUT else SystemFault
        names = placeholders("".join(SENTENCES[code]))
        with_facts = fault_text(fault_type(code, **{name: f"<{name}>" for name in names - MADE}))
        for name in names - MADE:
            assert f"<{name}>" in with_facts.what + with_facts.remedy
        bare = fault_text(fault_type(code))
        for told in (with_facts, bare):
            assert told.what
            assert told.remedy
            assert "{" not in told.line
            assert "  " not in told.what

    def test_sentences_ask_for_facts_that_are_given(self) -> None:
        """Where a fault is raised with named facts, each blank of its sentence is one of them."""
        given: dict[str, set[str]] = {}
        open_ended: set[str] = set()
        for call in calls(OUTSIDE, "InputFault", "SystemFault"):
            code = text(call.args[0]) if call.args else None
            if code is not None:
                given.setdefault(code, set()).update(kw.arg for kw in call.keywords if kw.arg)
                if any(kw.arg is None for kw in call.keywords):
                    open_ended.add(code)
        lacking = {
            code: names
            for code, facts in given.items()
            if code not in open_ended and (names := placeholders("".join(SENTENCES[code])) - facts - ALWAYS)
        }
        assert lacking == {}

    def test_an_unknown_code_is_shown_as_it_is(self) -> None:
        told = fault_text(InputFault("nobody.knows", file="kit.csv"))
        assert told.line.startswith("kit.csv: nobody.knows. ")


class TestWhere:
    def test_file_row_and_field_come_first(self) -> None:
        told = fault_text(InputFault("csv.empty_cell", file="kit.csv", row=7, field="name"))
        assert told.where == "kit.csv, row 7, name"

    @pytest.mark.parametrize(
        ("facts", "said"),
        [
            ({"at_least": 0}, "(at least 0)"),
            ({"at_least": 0, "at_most": 9}, "(at least 0, at most 9)"),
            ({"relation": "above", "limit": 3}, "(above 3)"),
        ],
    )
    def test_limits(self, facts: dict[str, object], said: str) -> None:
        assert said in fault_text(InputFault("number.out_of_range", value="x", **facts)).what


class TestStance:
    FORBIDDEN = re.compile(r"\b(safe|safely|airworthy|airworthiness|ok|okay)\b", re.IGNORECASE)

    def test_nothing_is_ever_called_safe(self) -> None:
        said = marked(modules()) | set(FROM_RESOURCES)
        assert len(said) > 500
        assert {one for one in said if self.FORBIDDEN.search(one)} == set()


def _resource_texts() -> list[str]:
    import tomllib

    found: list[str] = []

    def walk(node: object) -> None:
        if isinstance(node, dict):
            for key, value in node.items():
                if key in {"label", "why", "text", "spread", "source"} and isinstance(value, str):
                    found.append(value)
                walk(value)
        elif isinstance(node, list):
            for value in node:
                walk(value)

    for path in (ROOT / "resources" / "library").rglob("*.toml"):
        walk(tomllib.loads(path.read_text(encoding="utf-8")))
    return found


FROM_RESOURCES = _resource_texts()


class TestWholePath:
    """From what a person typed to what is said."""

    @pytest.mark.parametrize(
        ("fields", "said"),
        [
            ({"first_day": "2200-01-01"}, "first_day: “2200-01-01” lies outside 1970 to 2100. Check the year."),
            ({"first_day": "soon"}, "first_day: “soon” is no day of the calendar. "),
            ({"water_ml": -1}, "water_ml: “-1” is out of range (at least 0). "),
            ({"wind": 3}, "wind: there is no such field. "),
            ({"name": ""}, "name: it is empty. "),
            ({"conditions": {"windy": True}}, "is not in the list: "),
            ({"last_day": "2026-05-01"}, "the last day, 2026-05-01, is not on or soon after the first, 2026-05-09. "),
            ({"time_zone": "Mars/Olympus"}, "“Mars/Olympus” is no time zone. "),
        ],
    )
    def test_an_outing_file(self, fields: dict[str, object], said: str) -> None:
        import json

        from kitlog.files.outing_json import read_outing

        plan = {"name": "day", "flight_types": ["ridge"], "first_day": "2026-05-09", **fields}
        with pytest.raises(InputFault) as refused:
            read_outing(json.dumps(plan).encode(), "day.json")
        line = fault_text(refused.value).line
        assert line.startswith("day.json")
        assert said in line
