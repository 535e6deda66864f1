"""Words that the repack on the terminal and the sheet share: headings, lines of the list, what lasts, masses."""

from collections.abc import Iterator

from kitlog.budget.result import Finding, Remedy, State
from kitlog.budget.weight import PILOT, position_pct
from kitlog.kit.kinds import Kind
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, OwnLine
from kitlog.packing.assessment import Assessment, Counts, ListLine, Question
from kitlog.packing.capacity import is_swollen
from kitlog.packing.charging import Charge, Lasting
from kitlog.packing.stowing import Stowed
from kitlog.wording.figures import (
    days_text,
    hours_text,
    kg_text,
    litres_text,
    mass_text,
    percent_text,
    with_unit,
)
from kitlog.wording.findings import Names, say
from kitlog.wording.lines import question_text
from kitlog.wording.remedies import remedy_text
from kitlog.wording.translate import N_, _, ngettext
from kitlog.wording.words import counts_text, first_upper, word

SHARPENS_FROM_G = 5
"""A weighing that narrows the sum by less than this is not named, in g."""

HEADS = {
    "findings": (N_("Findings, worst first"), ""),
    "questions": (N_("Open questions"), N_("answers hold for 6 hours")),
    "list": (N_("Packing list"), N_("by the zone in which it is stowed")),
    "charging": (N_("Full before leaving"), N_("at the end of the day: likely / high")),
    "launch": (N_("At launch"), N_("read before, in this order; any delay: again")),
    "mass": (N_("Take-off mass"), N_("everything that leaves the ground")),
    "power": (N_("Charge over the day"), ""),
    "people": (N_("People"), ""),
    "cautions": (N_("What this sheet is"), ""),
}
"""The parts of a sheet: heading, and the remark beside it."""


def head(part: str) -> tuple[str, str]:
    """Heading and remark of a part of the sheet."""
    title, remark = HEADS[part]
    return _(title), _(remark)


def days_of(assessment: Assessment) -> str:
    """The day or days of the outing."""
    return days_text(assessment.outing.first_day, assessment.outing.last_day)


def counts_line(counts: Counts) -> str:
    """The counts, and how many questions are open."""
    text = counts_text(counts.stop, counts.look, counts.not_known)
    if not counts.open_questions:
        return text
    n = counts.open_questions
    return f"{text}, " + ngettext("{n} question open", "{n} questions open", n).format(n=n)


def what_and_where(assessment: Assessment, library: Library) -> str:
    """Flight types, site and what the pilot ticked on one line."""
    outing = assessment.outing
    types = [library.flight_type(name) for name in outing.flight_types]
    parts = [first_upper(", ".join(_(t.label) for t in types if t))]
    if outing.site.name:
        heights = [
            text.format(height=with_unit(height, "m"))
            for text, height in (
                (_("launch {height}"), outing.site.launch_m),
                (_("landing {height}"), outing.site.landing_m),
            )
            if height is not None
        ]
        parts.append(f"{outing.site.name} ({', '.join(heights)})" if heights else outing.site.name)
    ticked = ticked_text(outing)
    parts += [_("ticked: {conditions}").format(conditions=ticked)] if ticked else []
    return ", ".join(parts)


def ticked_text(outing: Outing) -> str:
    """The conditions that the pilot ticked yes, empty without any."""
    return ", ".join(_(condition.value) for condition, holds in outing.conditions.items() if holds)


def told_findings(assessment: Assessment) -> tuple[Finding, ...]:
    """The findings that are listed: worst first, and what is fine is left out."""
    return tuple(finding for finding in assessment.findings if finding.state is not State.FINE)


def line_name(line: ListLine) -> str:
    """Name of a line with its pieces and its water."""
    name = line.item.name if line.n == 1 else f"{line.item.name}, {line.n}"
    return (
        name
        if not line.content_ml
        else _("{name}, water {volume}").format(name=name, volume=litres_text(line.content_ml))
    )


def own_why(_own: OwnLine) -> str:
    """The reason of a line of the pilot's own."""
    return _("your own line")


def group_sum(group: Stowed) -> str:
    """Lines and mass of one zone; what is not known in it is said."""
    lines = ngettext("{n} line", "{n} lines", group.count).format(n=group.count)
    mass = mass_text(group.mass_g)
    if group.unknown:
        mass = _("{mass} and {n} not known").format(mass=mass, n=group.unknown)
    return f"{lines}, {mass}"


def stop_of(line: ListLine, assessment: Assessment, names: Names) -> str:
    """The stops that a line carries, in words, with the reasons that close them; empty if there is none."""
    stops = [f for f in assessment.findings if f.state is State.STOP and line.item.id in f.items]
    return "; ".join(_joined(say(stop, names).sentence, closed_text(stop)) for stop in stops)


def question_line(question: Question, library: Library) -> str:
    """A question to the pilot, with all it asks after."""
    text = next((check.text for check in library.checks if check.id == question.id), "")
    short = first_upper(question_text(question))
    return f"{short}: {_(text)}" if text else short


def zone_title(group: Stowed) -> str:
    """Name of a zone as a heading."""
    return first_upper(word(group.zone.value))


def lasting_text(lasting: Lasting) -> str:
    """How long a full device or bank lasts in one case."""
    if not lasting.reckoned:
        return _("not known")
    if lasting.first_off_h is not None:
        return _("off after {after}").format(after=hours_text(lasting.first_off_h))
    return _("{charge} left").format(charge=percent_text(lasting.end_pct))


def charge_text(charge: Charge) -> str:
    """How long a thing lasts, likely and on a high day; of a swollen one, that it is not charged."""
    if is_swollen(charge.item):
        return _("swollen: do not take it, do not charge it")
    if not (charge.likely.reckoned or charge.high.reckoned):
        return _("not known") if charge.unknown else _("draws nothing in this plan")
    return f"{lasting_text(charge.likely)} / {lasting_text(charge.high)}"


def mass_rows(assessment: Assessment, names: Names) -> Iterator[tuple[str, str, str]]:
    """What leaves the ground: name, figure, remark."""
    mass, wing = assessment.mass, assessment.chosen.get(Kind.WING)
    facet = wing.wing if wing else None
    tolerance = f"±{kg_text(mass.tolerance_g)}"
    yield _("Take-off"), kg_text(mass.take_off_g), _joined(tolerance, _position(position_pct(mass.take_off_g, facet)))
    without = mass.without(wing.mass_g if wing else None)
    if without is not None:
        yield _("without the wing"), kg_text(without), ""
    yield _("Landing"), kg_text(mass.landing_g), _position(position_pct(mass.landing_g, facet))
    yield _("Pilot"), kg_text(mass.pilot_g), ""
    yield _("On the back on foot"), kg_text(mass.pack_g), ""
    if mass.unknown:
        yield _("Known so far"), kg_text(mass.known_g), _unknown(assessment, names)


def _joined(*parts: str) -> str:
    return ", ".join(part for part in parts if part)


def _position(position: float | None) -> str:
    return "" if position is None else _("at {position} of the range").format(position=percent_text(position, 1))


def _unknown(assessment: Assessment, names: Names) -> str:
    listed = ", ".join(_("body mass") if load == PILOT else names.get(load, load) for load in assessment.mass.unknown)
    return _("mass not known: {names}").format(names=listed)


def sharpen_text(assessment: Assessment, names: Names) -> str:
    """The one weighing that narrows the sum most, empty where none does by much."""
    sharpen = assessment.mass.sharpen
    if sharpen is None or sharpen.by_g < SHARPENS_FROM_G:
        return ""
    if sharpen.id == PILOT:
        return remedy_text(Remedy("weigh_body", (), {"by_g": sharpen.by_g}), names)
    return remedy_text(Remedy("weigh", (sharpen.id,), {"by_g": sharpen.by_g}), names)


def closed_text(finding: Finding) -> str:
    """The written reason that closes a stop, empty if there is none."""
    return _("closed by you with a reason: {reason}").format(reason=finding.override) if finding.override else ""
