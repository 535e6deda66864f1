"""Tonight's charging, and what lies unused, on a terminal."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime

from kitlog.outing.outing import Outing
from kitlog.packing.evening_plan import EveningPlan, other_starts
from kitlog.packing.storage_due import StorageLine
from kitlog.wording.charge_text import (
    clock_of,
    end_text,
    hangs_text,
    help_text,
    missing_remedies,
    note_text,
    on_hand_text,
    other_starts_text,
    piece_text,
    place_text,
    plan_tried_texts,
    step_text,
    summary_text,
    times_text,
)
from kitlog.wording.columns import WIDTH, table, wrapped
from kitlog.wording.figures import day_text, percent_text
from kitlog.wording.translate import N_, _
from kitlog.wording.words import STANCE, first_upper

Names = Mapping[str, str]


def charge_lines(plan: EveningPlan, names: Names, now: datetime, outing: Outing) -> Iterator[str]:
    """The plan: what comes of it, each thing, the hand steps by the clock, what to know, what would help."""
    yield _("Charging before “{outing}”, evening of {day}").format(outing=outing.name, day=day_text(plan.day))
    assumed = _(" (assumed)") if plan.assumed else ""
    yield f"{times_text(plan.times)}{assumed}; {place_text(plan.times)}"
    yield ""
    yield from wrapped(summary_text(plan), WIDTH)
    if otherwise := other_starts_text(other_starts(plan, outing), names):
        yield from wrapped(otherwise, WIDTH)
    yield from _things(plan, now)
    yield from _listed(_("By the clock"), [(clock_of(step.at_h), step_text(step)) for step in plan.steps])
    yield from _told(_("To know"), [note_text(note, names) for note in plan.notes])
    helps = [*missing_remedies(plan, names), *(help_text(one) for one in plan.helps or ())]
    yield from _told(_("What would help"), helps)
    if plan.bottleneck is not None:
        yield from wrapped(_("Short is the charger: {charger}.").format(charger=piece_text(plan.bottleneck)), WIDTH)
    for text in plan_tried_texts(plan):
        yield from wrapped(text, WIDTH)
    yield ""
    yield from wrapped(_(STANCE), WIDTH)


def _things(plan: EveningPlan, now: datetime) -> Iterator[str]:
    rows = [
        (
            piece_text(line.thing),
            end_text(line),
            "; ".join(filter(None, (on_hand_text(line.on_hand, now), hangs_text(line)))),
        )
        for line in plan.lines
    ]
    rows += [(item.name, _("not known"), _("not planned")) for item in plan.not_planned]
    if rows:
        yield ""
        yield from table(rows, (False, False, False))


def _listed(title: str, rows: Sequence[tuple[str, str]]) -> Iterator[str]:
    if rows:
        yield ""
        yield title
        yield from table(rows, (False, False), indent=2)


def _told(title: str, texts: Sequence[str]) -> Iterator[str]:
    if texts:
        yield ""
        yield title
        for text in texts:
            first, *rest = wrapped(first_upper(text), WIDTH - 4)
            yield f"  - {first}"
            yield from (f"    {line}" for line in rest)


def on_hand_lines(charges: Sequence[tuple[str, float]]) -> Iterator[str]:
    """What was noted."""
    for name, pct in charges:
        yield _("noted: {item}, {charge} on hand").format(item=name, charge=percent_text(pct))


def storage_lines(lines: Sequence[StorageLine], now: datetime, *, season_over: bool) -> Iterator[str]:
    """What lies unused, and what to do with it."""
    title = _("Out of season, on {day}") if season_over else _("Unused for six weeks, on {day}")
    yield title.format(day=day_text(now.date()))
    yield ""
    if not lines:
        yield _("Nothing with a battery has lain so long.")
    rows = [(line.item.name, storage_act_text(line), storage_why_text(line, now)) for line in lines]
    if rows:
        yield from table(rows, (False, False, False))
    for source in dict.fromkeys(line.source for line in lines if line.source):
        yield ""
        yield from wrapped(_("Source: {source}").format(source=_(source)), WIDTH)
    yield ""
    yield from wrapped(_(STANCE), WIDTH)


def storage_act_text(line: StorageLine) -> str:
    """What to do with a thing that lies."""
    return _(_ACTS[line.act]).format(charge="" if line.to_pct is None else percent_text(line.to_pct))


_ACTS = {
    "charge": N_("charge to {charge}"),
    "use_down": N_("use down to {charge}"),
    "leave": N_("leave as it is"),
    "not_known": N_("look at its charge"),
    "dispose": N_("to a collection point"),
}


def storage_why_text(line: StorageLine, now: datetime) -> str:
    """Why, since when, and what is on hand."""
    parts = [_(_WHYS[line.why])]
    if line.last_used is not None:
        parts.append(_("last on a flight {day}").format(day=day_text(line.last_used)))
    if line.on_hand.known:
        parts.append(on_hand_text(line.on_hand, now))
    elif line.on_hand.seen_pct is not None and line.on_hand.seen_at is not None:
        day = day_text(line.on_hand.seen_at.astimezone(now.tzinfo).date())
        parts.append(_("{charge} on {when}").format(charge=percent_text(line.on_hand.seen_pct), when=day))
    return "; ".join(parts)


_WHYS = {
    "season_over": N_("the season is over"),
    "unused": N_("unused for six weeks"),
    "in_band": N_("within 40 to 60 %"),
    "charge_not_known": N_("charge on hand not known"),
    "use_not_known": N_("in no flight of the log"),
    "swollen": N_("seen swollen"),
}
