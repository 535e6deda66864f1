"""The repack of one outing as plain text: what to settle, what to pack, what it weighs, what to charge."""

from collections.abc import Iterator

from kitlog.budget.result import Finding, State
from kitlog.kit.kinds import Zone
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment, Missing, Question
from kitlog.packing.charging import charges
from kitlog.packing.stowing import Stowed, stowed
from kitlog.wording.columns import WIDTH, Column, row, table, wrapped
from kitlog.wording.figures import mass_text, moment_text
from kitlog.wording.findings import Names, say
from kitlog.wording.lines import needs_by_id, why_text
from kitlog.wording.reasons import reason_text
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
from kitlog.wording.words import ALARMS_NOBODY, STANCE, first_upper, word

SHAPES = {State.STOP: "■", State.LOOK: "◆", State.NOT_KNOWN: "○", State.FINE: "●"}
"""A state is always a word and a shape; a terminal has no colour of ours."""

_STATE, _SAYING = 14, 2
_LIST = (Column(28), Column(9, right=True), Column(WIDTH - 2 - 28 - 9 - 4))


def repack_text(assessment: Assessment, names: Names, library: Library) -> str:
    """All of it, at most 80 columns wide.

    Args:
        assessment: of one outing.
        names: names of all items of the kit by id.
        library: for the labels of flight types.
    """
    return "\n".join(_lines(assessment, names, library)) + "\n"


def _lines(assessment: Assessment, names: Names, library: Library) -> Iterator[str]:
    yield from wrapped(f"{assessment.outing.name}, {days_of(assessment)}", WIDTH)
    yield from wrapped(what_and_where(assessment, library), WIDTH)
    yield ""
    yield from wrapped(first_upper(counts_line(assessment.counts)), WIDTH)
    yield from _findings(assessment, names)
    yield from _questions(assessment.questions, library)
    yield from _list(assessment, names)
    yield from _missing(assessment.missing)
    yield from _stays_home(assessment, names)
    yield from _mass(assessment, names)
    yield from _charges(assessment)
    yield ""
    yield from wrapped(_(STANCE), WIDTH)
    yield from wrapped(_(ALARMS_NOBODY), WIDTH)


def _heading(text: str, remark: str = "") -> Iterator[str]:
    yield ""
    yield from wrapped(f"{text} ({remark})" if remark else text, WIDTH)
    yield "-" * WIDTH


def _findings(assessment: Assessment, names: Names) -> Iterator[str]:
    told = told_findings(assessment)
    if told:
        yield from _heading(_("Findings, worst first"))
    for finding in told:
        yield from _finding(finding, names)


def _finding(finding: Finding, names: Names) -> Iterator[str]:
    said, columns = say(finding, names), (Column(_STATE - _SAYING), Column(WIDTH - _STATE))
    figure = f": {said.figure}" if said.figure else ""
    yield from row((f"{SHAPES[finding.state]} {word(finding.state.value)}", first_upper(said.title) + figure), columns)
    yield from row(("", said.sentence), columns)
    if finding.override:
        yield from row(("", closed_text(finding)), columns)
    for remedy in finding.remedies:
        yield from row(("", f"> {remedy_text(remedy, names)}"), columns)


def _questions(questions: tuple[Question, ...], library: Library) -> Iterator[str]:
    if questions:
        yield from _heading(_("Questions to you"))
    for question in questions:
        yield from row((question_line(question, library), _answer(question)), (Column(56), Column(WIDTH - 58)))


def _answer(question: Question) -> str:
    if question.at is None:
        return f"{SHAPES[State.NOT_KNOWN]} {_('open')}"
    said = _("{value}, at {clock}").format(value=question.value, clock=moment_text(question.at))
    return _("{said}: older than 6 hours, look again").format(said=said) if question.expired else said


def _list(assessment: Assessment, names: Names) -> Iterator[str]:
    yield from _heading(_("Packing list"), _("by the zone in which it is stowed"))
    groups = stowed(assessment)
    for group in groups:
        yield from _zone(group, assessment, names)
    if not groups:
        yield from wrapped(_("Nothing yet: no item of the kit meets a need of this outing."), WIDTH)


def _zone(group: Stowed, assessment: Assessment, names: Names) -> Iterator[str]:
    needs, remark = needs_by_id(assessment), group_sum(group)
    if group.zone is Zone.LEFT_IN_CAR:
        remark = _("{sum}; counted nowhere").format(sum=remark)
    yield ""
    yield from row((zone_title(group), remark), (Column(28), Column(WIDTH - 30)))
    for line in group.lines:
        stop = stop_of(line, assessment, names)
        why = f"{SHAPES[State.STOP]} {stop}" if stop else why_text(line, needs, names)
        yield from row((line_name(line), mass_text(line.mass_g), why), _LIST, indent=2)
    for own in group.own:
        yield from row((own.text, mass_text(own.mass_g), own_why(own)), _LIST, indent=2)


def _missing(missing: tuple[Missing, ...]) -> Iterator[str]:
    if missing:
        yield from _heading(_("Missing"))
        yield from table([_missing_row(one) for one in missing], (False, False, False))


def _missing_row(one: Missing) -> tuple[str, str, str]:
    need = one.asked.need
    reason = reason_text(one.reason)
    return first_upper(_(need.label)), word(one.asked.strength.value), f"{reason}. {_(need.why)}"


def _stays_home(assessment: Assessment, names: Names) -> Iterator[str]:
    if assessment.stays_home:
        yield from _heading(_("Stays at home"))
        yield from wrapped(", ".join(names.get(item, item) for item in assessment.stays_home), WIDTH)


def _mass(assessment: Assessment, names: Names) -> Iterator[str]:
    yield from _heading(_("Take-off mass"), _("everything that leaves the ground"))
    yield from table(list(mass_rows(assessment, names)), (False, True, False))
    if assessment.mass.by_zone:
        yield ""
        yield _("By zone in the air")
        zones = [
            (word(zone.value), mass_text(assessment.mass.by_zone[zone]))
            for zone in Zone
            if zone in assessment.mass.by_zone
        ]
        yield from table(zones, (False, True), indent=2)
    sharpen = sharpen_text(assessment, names)
    if sharpen:
        yield from wrapped(f"> {sharpen}", WIDTH)


def _charges(assessment: Assessment) -> Iterator[str]:
    found = charges(assessment)
    if not found:
        return
    yield from _heading(_("Full before leaving"), _("at the end of the day: likely / high"))
    rows = [(c.item.name if c.n == 1 else f"{c.item.name}, {c.n}", charge_text(c)) for c in found]
    yield from table(rows, (False, False))
