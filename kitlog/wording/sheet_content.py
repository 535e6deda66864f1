"""What stands on the sheet of one outing, as words in their order; paper and phone differ in looks alone."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from kitlog.budget.result import Finding
from kitlog.kit.kinds import Zone
from kitlog.outing.library import Library
from kitlog.outing.outing import OwnLine, Person
from kitlog.packing.assessment import Assessment, ListLine, Question
from kitlog.packing.charging import charges
from kitlog.packing.launch_list import launch_list
from kitlog.packing.stowing import Stowed, stowed
from kitlog.wording.figures import clock_text, day_text, mass_text, moment_text
from kitlog.wording.findings import Names, say
from kitlog.wording.lines import needs_by_id, why_text
from kitlog.wording.remedies import remedy_text
from kitlog.wording.sheet_words import (
    charge_text,
    closed_text,
    counts_line,
    days_of,
    group_sum,
    line_name,
    mass_rows,
    own_why,
    question_line,
    sharpen_text,
    stop_of,
    told_findings,
    what_and_where,
    zone_title,
)
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper, word


@dataclass(frozen=True, slots=True)
class ToldFinding:
    """A finding: its state (a value of `State`), title, figure, sentence, reason that closes it, remedies.

    Figure and reason may be empty.
    """

    state: str
    title: str
    figure: str
    sentence: str
    closed: str
    remedies: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class AskedQuestion:
    """A question to the pilot; `answer` is empty while it is open, `timed` says that its hour is asked too."""

    words: str
    answer: str
    timed: bool


@dataclass(frozen=True, slots=True)
class PackedLine:
    """A line of the list; `stop` has the words of the stops that it carries, `mass` those of its mass."""

    name: str
    why: str
    stop: str
    mass: str


@dataclass(frozen=True, slots=True)
class PackedZone:
    """A zone in which things are stowed, and its sum."""

    title: str
    remark: str
    lines: tuple[PackedLine, ...]


@dataclass(frozen=True, slots=True)
class LaunchLine:
    """A check at launch; `critical` ones need an answer of their own."""

    words: str
    critical: bool


@dataclass(frozen=True, slots=True)
class Known:
    """A person of the outing: name, phone (may be empty), what for, when told."""

    name: str
    phone: str
    role: str
    told: str


@dataclass(frozen=True, slots=True)
class SheetContent:
    """All words of a sheet.

    Attributes:
        title: what it is and for which day; name: the outing's; what: flight types and site.
        counts: findings by state, and open questions; valid: for which day it holds and when it was made.
        made: when it was made.
        charging: names and how long they last; masses: name, figure, remark; sharpen: the weighing that narrows most.
    """

    title: str
    name: str
    what: str
    counts: str
    valid: str
    made: str
    findings: tuple[ToldFinding, ...]
    questions: tuple[AskedQuestion, ...]
    zones: tuple[PackedZone, ...]
    charging: tuple[tuple[str, str], ...]
    launch: tuple[LaunchLine, ...]
    masses: tuple[tuple[str, str, str], ...]
    sharpen: str
    people: tuple[Known, ...]


def sheet_content(assessment: Assessment, names: Names, library: Library, made_at: datetime) -> SheetContent:
    """The words of a sheet.

    Args:
        assessment: of the outing.
        names: names of all items of the kit by id.
        library: for check lists and flight types.
        made_at: when the sheet is made, aware.
    """
    days, day, clock = days_of(assessment), day_text(made_at.date()), clock_text(made_at)
    return SheetContent(
        title=_("Sheet for {days}").format(days=days),
        name=assessment.outing.name,
        what=what_and_where(assessment, library),
        counts=first_upper(counts_line(assessment.counts)),
        valid=first_upper(_("valid for {days}; made {day}, {clock}").format(days=days, day=day, clock=clock)),
        made=_("made {day}, {clock}").format(day=day, clock=clock),
        findings=tuple(told(finding, names) for finding in told_findings(assessment)),
        questions=tuple(_asked(question, library) for question in assessment.questions),
        zones=tuple(_zone(group, assessment, names) for group in stowed(assessment)),
        charging=tuple(_charging(assessment)),
        launch=tuple(LaunchLine(_(one.check.text), one.critical) for one in launch_list(assessment, library)),
        masses=tuple(mass_rows(assessment, names)),
        sharpen=sharpen_text(assessment, names),
        people=tuple(map(_known, assessment.outing.people)),
    )


def told(finding: Finding, names: Names) -> ToldFinding:
    """A finding as the sheet says it."""
    said = say(finding, names)
    return ToldFinding(
        state=finding.state.value,
        title=first_upper(said.title),
        figure=said.figure,
        sentence=said.sentence,
        closed=closed_text(finding),
        remedies=tuple(remedy_text(remedy, names) for remedy in finding.remedies),
    )


def _asked(question: Question, library: Library) -> AskedQuestion:
    answer = ""
    if question.answered and question.at is not None:
        answer = _("{value}, at {clock}").format(value=question.value, clock=moment_text(question.at))
    return AskedQuestion(question_line(question, library), answer, question.kind == "day")


def _zone(group: Stowed, assessment: Assessment, names: Names) -> PackedZone:
    remark = group_sum(group)
    if group.zone is Zone.LEFT_IN_CAR:
        remark = _("{sum}; counted nowhere").format(sum=remark)
    lines = [*(_line(line, assessment, names) for line in group.lines), *map(_own, group.own)]
    return PackedZone(zone_title(group), remark, tuple(lines))


def _line(line: ListLine, assessment: Assessment, names: Names) -> PackedLine:
    why, stop = why_text(line, needs_by_id(assessment), names), stop_of(line, assessment, names)
    return PackedLine(line_name(line), why, stop, mass_text(line.mass_g))


def _own(own: OwnLine) -> PackedLine:
    return PackedLine(own.text, own_why(own), "", mass_text(own.mass_g))


def _charging(assessment: Assessment) -> Iterator[tuple[str, str]]:
    for charge in charges(assessment):
        name = charge.item.name if charge.n == 1 else f"{charge.item.name}, {charge.n}"
        yield name, charge_text(charge)


def _known(person: Person) -> Known:
    when = _("not told yet")
    if person.told_at is not None:
        day, clock = day_text(person.told_at.astimezone().date()), moment_text(person.told_at)
        when = _("told {day}, {clock}").format(day=day, clock=clock)
    return Known(person.name, person.phone, word(person.role.value), when)
