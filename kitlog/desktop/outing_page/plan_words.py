"""What the plan says of an outing: phases, when one is home, people, the kit for the day."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, Phase, Role
from kitlog.packing.assessment import Assessment
from kitlog.wording.figures import clock_text, kg_text, moment_text, nights_text, number_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import first_upper

CASES: tuple[Callable[[Phase], float], ...] = (
    lambda phase: phase.low_h,
    lambda phase: phase.likely_h,
    lambda phase: phase.high_h,
)
"""Low, likely and high duration of a phase, in h."""

NAMED = 2
"""So many things that stay at home are named; more are counted."""


@dataclass(frozen=True, slots=True)
class PhaseRow:
    """A row of the table of phases: its name, three durations, the air's temperature."""

    name: str
    hours: tuple[str, ...]
    air: str


def hm_text(hours: float) -> str:
    """A duration as h:mm without its unit, for tables."""
    minutes = round(abs(hours) * 60)
    return f"{minutes // 60}:{minutes % 60:02d}"


def types_text(outing: Outing, library: Library) -> str:
    """The flight types by their labels."""
    found = ((name, library.flight_type(name)) for name in outing.flight_types)
    return first_upper(", ".join(_(kind.label) if kind else name for name, kind in found))


def launch_text(outing: Outing) -> str:
    """Height of the launch, and when the day starts."""
    parts = []
    if outing.site.launch_m is not None:
        parts.append(_("{height} m").format(height=number_text(outing.site.launch_m)))
    if outing.starts_at is not None:
        parts.append(_("the day starts {time}").format(time=f"{outing.starts_at:%H:%M}"))
    return "; ".join(parts) or _("height and start not known")


def ticked_text(outing: Outing) -> str:
    """The conditions that the pilot ticked, yes and no."""
    yes, no = (
        ", ".join(_(condition.value) for condition, holds in outing.conditions.items() if holds is answer)
        for answer in (True, False)
    )
    said = (
        _("yes: {conditions}").format(conditions=yes) if yes else "",
        _("no: {conditions}").format(conditions=no) if no else "",
    )
    return "; ".join(part for part in said if part)


def phase_rows(outing: Outing) -> list[PhaseRow]:
    """The phases in their order."""
    return [
        PhaseRow(first_upper(phase.name), tuple(hm_text(case(phase)) for case in CASES), _air(phase.air_c))
        for phase in outing.phases
    ]


def home_texts(outing: Outing) -> tuple[str, ...] | None:
    """When one is home in the low, likely and high case; None without phases.

    Without a start the whole duration is given instead of a time of day; a later day has its number of nights.
    """
    if not outing.phases:
        return None
    hours = tuple(sum(case(phase) for phase in outing.phases) for case in CASES)
    if outing.starts_at is None:
        return tuple(hm_text(one) for one in hours)
    begin = datetime.combine(outing.first_day, outing.starts_at)
    return tuple(_on_clock(begin, one) for one in hours)


def people_text(outing: Outing) -> str:
    """Who is who of the outing."""
    if not outing.people:
        return _("Nobody named yet: somebody should hold the flight note.")
    contacts = [person.name for person in outing.people if person.role is Role.CONTACT]
    others = [f"{p.name} ({_(p.role.value)})" for p in outing.people if p.role is not Role.CONTACT]
    head = _("Contact: {names}").format(names=", ".join(contacts)) if contacts else _("No contact named")
    return "; ".join([head, *others]) + "."


def told_text(outing: Outing) -> str:
    """When the contacts were told the route and the times; the first of them counts."""
    told = sorted(p.told_at for p in outing.people if p.role is Role.CONTACT and p.told_at is not None)
    if told:
        return _("told {time}").format(time=moment_text(told[0]))
    return _("not told yet") if any(p.role is Role.CONTACT for p in outing.people) else ""


def kit_text(assessment: Assessment, names: dict[str, str]) -> str:
    """How many lines go, how heavy, and what stays at home."""
    lines = [line for line in assessment.lines if not line.in_car]
    mass = kg_text(sum(line.mass_g or 0 for line in lines))
    unknown = sum(line.mass_g is None for line in lines)
    said = ngettext("{n} line, {mass}", "{n} lines, {mass}", len(lines)).format(n=len(lines), mass=mass)
    if unknown:
        said += _(" and {n} without mass").format(n=unknown)
    return f"{said}. {_stays_text(assessment.stays_home, names)}"


def _stays_text(stays: Sequence[str], names: dict[str, str]) -> str:
    if not stays:
        return _("Nothing stays at home.")
    if len(stays) <= NAMED:
        items = _(" and ").join(names.get(item, item) for item in stays)
        return ngettext("{items} stays at home.", "{items} stay at home.", len(stays)).format(items=items)
    return ngettext("{n} item stays at home.", "{n} items stay at home.", len(stays)).format(n=len(stays))


def _air(air_c: float | None) -> str:
    return "?" if air_c is None else number_text(air_c)


def _on_clock(begin: datetime, hours: float) -> str:
    at = begin + timedelta(hours=hours)
    return clock_text(at) + nights_text((at.date() - begin.date()).days)
