"""The drawing of a repack: each zone's mass, and how much of it is stowed."""

from collections.abc import Iterable

from kitlog.desktop.repack_page.progress import Progress, missing_mark
from kitlog.desktop.repack_page.rows import zone_word
from kitlog.kit.kinds import Kind, Zone
from kitlog.outing.ticks import Step
from kitlog.packing.stowing import Stowed, stowed
from kitlog.paint.mark import Mark
from kitlog.paint.zone_picture import ZoneFill, ZoneFlag, ZoneLine, ZonePicture
from kitlog.wording.figures import kg_text, mass_text
from kitlog.wording.sheet_words import line_name
from kitlog.wording.translate import _

DRAWN = (
    Zone.WORN,
    Zone.COCKPIT,
    Zone.FRONT_CONTAINER,
    Zone.SIDE_POCKET,
    Zone.UNDER_SEAT,
    Zone.BACK_POCKET,
    Zone.RUCKSACK,
)
"""Zones of the drawing; one in which nothing lies is an outline without words."""

NAMED = 3
"""So many things that are still out are named; more are counted."""


def zone_picture(progress: Progress) -> ZonePicture:
    """The drawing."""
    groups = {group.zone: group for group in stowed(progress.assessment)}
    return ZonePicture(
        title=_("Where it rides"),
        stowed=_("stowed"),
        to_stow=_("still to stow"),
        zones=tuple(_fill(groups[zone], progress) for zone in DRAWN if zone in groups),
        carabiner=_flag(progress),
        lines=tuple(_lines(groups, progress)),
    )


def zone_sentences(picture: ZonePicture) -> str:
    """The drawing as text."""
    zones = (f"{fill.title}: {fill.note}" for fill in picture.zones)
    lines = (f"{line.title}: {line.text}" for line in picture.lines)
    return "; ".join([*zones, *lines])


def _fill(group: Stowed, progress: Progress) -> ZoneFill:
    zone = group.zone
    done = _done_g(group, progress)
    out = [line.item.name for line in group.lines if not _is_in(line.item.id, progress)]
    return ZoneFill(
        zone.value,
        zone_word(zone),
        _note(group, done),
        group.mass_g,
        done,
        detail=_still_out(out) if zone is Zone.RUCKSACK else "",
        mass=mass_text(group.mass_g),
        mark=_mark(group, progress),
    )


def _is_in(key: str, progress: Progress) -> bool:
    return progress.is_done(Step.STOW, key) and not progress.is_missing(key)


def _done_g(group: Stowed, progress: Progress) -> int:
    lines = sum(line.mass_g or 0 for line in group.lines if _is_in(line.item.id, progress))
    return lines + sum(own.mass_g or 0 for own in group.own if _is_in(own.text, progress))


def _note(group: Stowed, done_g: int) -> str:
    mass = mass_text(group.mass_g)
    if group.unknown:
        mass = _("{mass} and {n} not known").format(mass=mass, n=group.unknown)
    if done_g == 0:
        return _("{mass}, none stowed").format(mass=mass)
    if done_g == group.mass_g and not group.unknown:
        return _("{mass}, all stowed").format(mass=mass)
    return _("{mass}, {done} stowed").format(mass=mass, done=mass_text(done_g))


def _still_out(names: list[str]) -> str:
    if not names:
        return ""
    more = len(names) - NAMED
    listed = ", ".join(names[:NAMED])
    return (
        _("{items} and {n} more still out").format(items=listed, n=more)
        if more > 0
        else _("{items} still out").format(items=listed)
    )


def _mark(group: Stowed, progress: Progress) -> Mark:
    """The worst of what is wrong in a zone: missing lines, and stops of what lies there."""
    marks = [missing_mark(line) for line in group.lines if progress.is_missing(line.item.id)]
    ids = {line.item.id for line in group.lines}
    stops = (s.finding for s in progress.open_stops() if s.finding is not None and s.finding.topic.value == "kit")
    if any(ids.intersection(finding.items) for finding in stops):
        marks.append(Mark.STOP)
    return next((mark for mark in (Mark.STOP, Mark.LOOK) if mark in marks), Mark.NONE)


def _flag(progress: Progress) -> ZoneFlag | None:
    """What is wrong with the carabiners."""
    for line in progress.assessment.lines:
        if line.item.kind is not Kind.CARABINER:
            continue
        if progress.is_missing(line.item.id):
            return ZoneFlag(missing_mark(line), _("missing"))
        for finding in progress.assessment.findings:
            if line.item.id in finding.items and finding.code.startswith("service.") and not finding.override:
                word = _("overdue") if finding.code == "service.overdue" else _(finding.state.value)
                return ZoneFlag(Mark(finding.state.value), word)
    return None


def _lines(groups: dict[Zone, Stowed], progress: Progress) -> Iterable[ZoneLine]:
    mass = progress.assessment.mass
    yield ZoneLine(_("On the back to launch"), kg_text(mass.pack_g), _("all but what is worn"), is_figure=True)
    yield ZoneLine(zone_word(Zone.IN_HAND), _named(groups.get(Zone.IN_HAND)))
    car = groups.get(Zone.LEFT_IN_CAR)
    said = _named(car)
    if car is not None:
        said = _("{items}, {mass}, not counted").format(items=said, mass=mass_text(car.mass_g))
    yield ZoneLine(zone_word(Zone.LEFT_IN_CAR), said)


def _named(group: Stowed | None) -> str:
    if group is None:
        return _("nothing")
    return ", ".join([*(line_name(line) for line in group.lines), *(own.text for own in group.own)])
