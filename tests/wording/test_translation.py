"""With a catalogue that marks every text it gives out, no unmarked English is left, and every text it is asked for is one
that a translator was shown: marked in the source, or a text of the library."""

import gettext
import re
import tomllib
from enum import StrEnum

import pytest
from hypothesis import HealthCheck, given, settings
from scenario import EVENING, KIT, O1, O2, O3, changed, judged, with_item
from small_kit import NEW, item, outing, plus
from source_walk import ROOT, marked, modules
from strategies import plans

from kitlog.budget.result import State, Sure, Topic
from kitlog.fault import InputFault, SystemFault
from kitlog.kit.due import DueState
from kitlog.kit.kinds import ItemState, Kind, Layer, MassSource, PhaseWay, Place, Zone
from kitlog.kit.service import Grounds
from kitlog.outing.conditions import Condition, Demand
from kitlog.outing.needs import Strength
from kitlog.outing.outing import Outing, Role
from kitlog.outing.ticks import Step, TickMark
from kitlog.packing.assessment import Assessment
from kitlog.packing.kit import History, Kit
from kitlog.wording import translate
from kitlog.wording.fault_sentences import INPUT
from kitlog.wording.faults import fault_text
from kitlog.wording.findings import margin_text, say, tile_figure
from kitlog.wording.lines import needs_by_id, passed_over_text, question_text, why_text
from kitlog.wording.remedies import remedy_text
from kitlog.wording.system_sentences import SYSTEM
from kitlog.wording.words import counts_text, word

CLOSED_LISTS = (
    State,
    Topic,
    Sure,
    DueState,
    Strength,
    MassSource,
    ItemState,
    Zone,
    Step,
    TickMark,
    Grounds,
    Demand,
    Condition,
    Role,
    PhaseWay,
    Kind,
    Layer,
    Place,
)
"""Lists whose values a person reads."""

UNITS = re.compile(r"\b(kg|g|d|h|min|l|ml|Wh|W|C|m)\b")
OPEN, SHUT = "⟦", "⟧"


class Marking(gettext.NullTranslations):
    """Gives every text back between marks, and remembers which were asked for."""

    def __init__(self) -> None:
        super().__init__()
        self.asked: set[str] = set()

    def gettext(self, message: str) -> str:
        self.asked.add(message)
        return f"{OPEN}{message}{SHUT}"

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        self.asked |= {msgid1, msgid2}
        return f"{OPEN}{msgid1 if n == 1 else msgid2}{SHUT}"


@pytest.fixture
def marking(monkeypatch: pytest.MonkeyPatch) -> Marking:
    catalogue = Marking()
    monkeypatch.setattr(translate, "_catalogue", catalogue)
    return catalogue


def unmarked(said: str, names: dict[str, str]) -> str:
    """What stands outside the marks, without figures, units and the pilot's own names."""
    depth, rest = 0, ""
    for char in said:
        depth += (char == OPEN) - (char == SHUT)
        rest += char if depth == 0 and char not in OPEN + SHUT else " "
    for name in sorted(names.values(), key=len, reverse=True):
        rest = rest.replace(name, " ")
    return re.sub(r"[^A-Za-z]+", " ", UNITS.sub(" ", rest)).strip()


def all_said(assessment: Assessment, names: dict[str, str]) -> list[str]:
    """Everything an assessment has to say."""
    said: list[str] = []
    for finding in assessment.findings:
        told = say(finding, names)
        said += [told.title, told.figure, told.sentence, tile_figure(finding), margin_text(finding)]
        said += [remedy_text(remedy, names) for remedy in finding.remedies]
        said += [word(finding.state.value), word(finding.topic.value), word(finding.sure.value)]
    needs = needs_by_id(assessment)
    said += [why_text(line, needs, names) for line in assessment.lines]
    said += [passed_over_text(passed, needs) for passed in assessment.passed_over]
    said += [question_text(question) for question in assessment.questions]
    counts = assessment.counts
    return [*said, counts_text(counts.stop, counts.look, counts.not_known)]


def library_texts() -> set[str]:
    found: set[str] = set()

    def walk(node: object) -> None:
        if isinstance(node, dict):
            found.update(value for value in node.values() if isinstance(value, str))
            for value in node.values():
                walk(value)
        elif isinstance(node, list):
            for value in node:
                walk(value)

    for path in (ROOT / "resources" / "library").rglob("*.toml"):
        walk(tomllib.loads(path.read_text(encoding="utf-8")))
    return found


SHOWN_TO_TRANSLATORS = marked(modules()) | library_texts()


def lapsed(plan: Outing) -> Outing:
    return changed(plan, pinned=[], left_out=[], set={}, conditions={})


PLANS: dict[str, tuple[Outing, Kit, History]] = {
    "O1": (O1, KIT, History()),
    "O2": (O2, KIT, History()),
    "O3": (O3, KIT, History()),
    "O1 unchosen": (lapsed(O1), KIT, History()),
    "O2 unchosen": (lapsed(O2), KIT, History()),
    "nothing": (lapsed(O1), Kit(), NEW),
    "away": (O1, with_item("Phone", with_item("Wing A", KIT, state="away"), quantity=0), NEW),
    "no figures": (O1, with_item("Wing A", with_item("Harness A", KIT, harness={}), wing={}), NEW),
    "no mass": (O1, with_item("Boots", KIT, mass_g=None), NEW),
    "too little water": (changed(O1, water_ml=700), KIT, NEW),
    "too much water": (changed(O1, water_ml=7_000), KIT, NEW),
    "no water": (changed(O1, water_ml=0), KIT, NEW),
    "answered": (changed(O1, answers=[{"check": "am.retrieve", "value": "no", "at": EVENING}]), KIT, NEW),
    "tandem": (outing(flight_types=["tandem", "hike and fly"]), plus(item("ballast", "ballast")), NEW),
}


@pytest.fixture(params=sorted(PLANS))
def assessment(request: pytest.FixtureRequest) -> tuple[Assessment, dict[str, str]]:
    plan, kit, history = PLANS[request.param]
    return judged(plan, kit, history), {one.id: one.name for one in kit.items}


class TestAssessments:
    def test_no_unmarked_english_is_left(self, assessment: tuple[Assessment, dict[str, str]], marking: Marking) -> None:
        judgement, names = assessment
        people = {person.name: person.name for person in judgement.outing.people}
        left = {said: rest for said in all_said(judgement, names) if (rest := unmarked(said, names | people))}
        assert left == {}

    def test_translators_were_shown_every_text(
        self, assessment: tuple[Assessment, dict[str, str]], marking: Marking
    ) -> None:
        judgement, names = assessment
        all_said(judgement, names)
        own = {phase.name for phase in judgement.outing.phases} | set(names.values()) | {"tree", "blow", "impact"}
        assert len(marking.asked) > 20
        assert marking.asked - SHOWN_TO_TRANSLATORS - own == set()


class TestFaults:
    @pytest.mark.parametrize("code", sorted(INPUT | SYSTEM))
    def test_no_unmarked_english_is_left(self, code: str, marking: Marking) -> None:
        fault = (InputFault if code in INPUT else SystemFault)(code, row=3, at_least=1, more=2)
        told = fault_text(fault)
        assert [unmarked(said, {}) for said in (told.where, told.what, told.remedy, *told.more)] == [""] * (
            3 + len(told.more)
        )
        assert marking.asked <= SHOWN_TO_TRANSLATORS

    def test_an_unknown_code_shows_itself_and_what_to_do(self, marking: Marking) -> None:
        told = fault_text(InputFault("nobody.knows"))
        assert unmarked(told.remedy, {}) == ""
        assert marking.asked - {"nobody.knows"} <= SHOWN_TO_TRANSLATORS


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(plans(8))
def test_whatever_is_found_can_be_said(plan: tuple[Outing, Kit, History]) -> None:
    planned, kit, history = plan
    try:
        judgement = judged(planned, kit, history)
    except InputFault as fault:
        assert fault_text(fault).what  # noqa: PT017  # a refusal is said too
        return
    names = {one.id: one.name for one in kit.items}
    for said in all_said(judgement, names):
        assert "{" not in said
        assert "None" not in said
        assert "  " not in said


def test_english_is_the_source(assessment: tuple[Assessment, dict[str, str]]) -> None:
    judgement, names = assessment
    assert all(OPEN not in said for said in all_said(judgement, names))


@pytest.mark.parametrize("closed_list", CLOSED_LISTS, ids=lambda one: one.__name__)
def test_every_value_of_a_closed_list_is_a_word(closed_list: type[StrEnum]) -> None:
    assert {member.value for member in closed_list} <= SHOWN_TO_TRANSLATORS


def test_the_texts_of_the_library_are_many() -> None:
    assert len(library_texts()) > 300
