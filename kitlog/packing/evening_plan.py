"""Tonight's charging with names: what hangs where until when, what ends not full, what would help.

With twelve things `planned` may take up to a second (several where a charger's total is shared) and `with_help` longer:
it plans the evening anew for each change that it tries. Both are pure and may run on any thread.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from itertools import groupby

from kitlog.budget.charging.evening import FULL
from kitlog.budget.charging.remedies import bottleneck, remedies
from kitlog.budget.charging.result import EveningResult, ThingResult
from kitlog.budget.charging.result import Remedy as Helped
from kitlog.budget.charging.tonight import charge_tonight
from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.outing.outing import Evening, Outing, StartCharge
from kitlog.packing.assessment import Assessment
from kitlog.packing.evening_asked import AskedEvening, Note, Piece, asked_evening
from kitlog.packing.on_hand import OnHand

_BY_THING = frozenset({"swollen", "health", "age_months", "too_cold_C", "too_warm_C", "cold_rate_W"})
"""Cautions of the calculation that have a figure for each thing; others are said once for all."""

NO_CHARGER = "no_charger"
"""Why nothing is charged where no charger has ports on record."""


TELLING_PCT = 1.0
"""Charges at the start that differ by less are the same for a pilot: displays show whole points."""


@dataclass(frozen=True, slots=True)
class Hang:
    """A thing on a port, from when to when (h on the evening's axis); port 0: the charger has only one."""

    charger: Piece
    port: int
    from_h: float
    to_h: float
    overnight: bool


@dataclass(frozen=True, slots=True)
class ChargeLine:
    """How one thing ends.

    Attributes:
        on_hand: what it is reckoned from; end_pct: charge at leaving.
        full_h: when it is full; None: not before leaving.
        missing_wh: in the cell, to full; 0 if full.
        left_out: why it is not charged at all: ``no_charger``, or as in
            `kitlog.budget.charging.result.NOT_TONIGHT`; empty: it may be.
        hangs: where and when, by time.
    """

    thing: Piece
    on_hand: OnHand
    end_pct: float
    full_h: float | None
    missing_wh: float
    left_out: str
    hangs: tuple[Hang, ...]

    @property
    def full(self) -> bool:
        """Whether it is full at leaving; what is left out is not."""
        return not self.left_out and self.missing_wh == 0.0

    @property
    def full_already(self) -> bool:
        """Whether it is full before anything is done."""
        return self.on_hand.reckoned_pct >= 100 * FULL


@dataclass(frozen=True, slots=True)
class HandStep:
    """One thing to do by hand: take off what hangs on a port, put on another; None: nothing."""

    at_h: float
    charger: Piece
    port: int
    take_off: Piece | None
    put_on: Piece | None
    overnight: bool


@dataclass(frozen=True, slots=True)
class EveningHelp:
    """A change that leaves things fuller, computed by planning anew; fields as in the calculation's own remedy."""

    kind: str
    charger: Piece | None
    from_h: float | None
    full: int
    gained_wh: float
    first_gain: Piece | None
    all_full: bool
    all_chargeable_full: bool
    connectors: tuple[str, ...] = ()
    power_w: float | None = None
    sockets: int = 0


@dataclass(frozen=True, slots=True)
class EveningPlan:
    """The plan of one evening.

    Attributes:
        day, times, assumed: when it begins, its hours, and whether they are the usual ones, for want of others.
        lines: by priority; not_planned: what cannot be planned, never full.
        all_full: every thing that goes along is known to be full at leaving; full_by_h: then, by when.
        all_chargeable_full: every thing that can be charged tonight is.
        helps: best first; None = not computed yet; bottleneck: the charger of which more would help most.
        complete: no plan is better; else the best of those tried.
        moves_compared: half-charged things moved between ports could not make it better; False: not all was tried.
        by_turns: what got what the others left, one after the other: there are too many things to compare plans.
    """

    day: date
    times: Evening
    assumed: bool
    lines: tuple[ChargeLine, ...]
    not_planned: tuple[Item, ...]
    steps: tuple[HandStep, ...]
    notes: tuple[Note, ...]
    helps: tuple[EveningHelp, ...] | None
    bottleneck: Piece | None
    all_full: bool
    all_chargeable_full: bool
    full_by_h: float | None
    complete: bool
    moves_compared: bool = True
    by_turns: tuple[Piece, ...] = ()

    @property
    def has_charger(self) -> bool:
        """Whether a charger with ports is on record: without one nothing was planned, and no charge follows from it."""
        return not (self.has(NO_CHARGER) or self.has("charger_not_described"))

    def has(self, code: str) -> bool:
        """Whether a note of that code stands."""
        return any(note.code == code for note in self.notes)


def evening_plan(assessment: Assessment, kit: Iterable[Item], library: Library) -> EveningPlan:
    """Ask and plan the evening before an outing, with what would help."""
    asked = asked_evening(assessment, kit, library)
    return with_help(asked, planned(asked))


def planned(asked: AskedEvening) -> EveningPlan:
    """The plan of an evening without what would help; what the calculation calls by id is called by its pieces."""
    result = charge_tonight(asked.evening)
    lines = tuple(_line(thing, result, asked) for thing in result.things)
    all_full = bool(lines) and not asked.not_planned and all(line.full for line in lines)
    return EveningPlan(
        day=asked.day,
        times=asked.times,
        assumed=asked.assumed,
        lines=lines,
        not_planned=asked.not_planned,
        steps=tuple(
            HandStep(
                step.at_h,
                asked.chargers[step.charger],
                _port(step.charger, step.port, asked),
                None if step.take_off is None else asked.things[step.take_off],
                None if step.put_on is None else asked.things[step.put_on],
                step.overnight,
            )
            for step in result.steps
        ),
        notes=(*asked.notes, *_notes(result, asked.things)),
        helps=None,
        bottleneck=None,
        all_full=all_full,
        all_chargeable_full=result.all_chargeable_full,
        full_by_h=max((line.full_h or 0.0 for line in lines), default=None) if all_full else None,
        complete=result.complete,
        moves_compared=result.moves_compared,
        by_turns=tuple(asked.things[name] for name in result.by_turns),
    )


def with_help(asked: AskedEvening, plan: EveningPlan) -> EveningPlan:
    """The plan of the same evening with the changes that would leave things fuller."""
    found = remedies(asked.evening) if asked.chargers and not plan.all_full else ()
    short = bottleneck(found)
    return replace(
        plan,
        helps=tuple(_help(remedy, asked) for remedy in found),
        bottleneck=None if short is None else asked.chargers[short],
    )


def _line(thing: ThingResult, result: EveningResult, asked: AskedEvening) -> ChargeLine:
    piece = asked.things[thing.thing]
    stays = sorted((stay for stay in result.stays if stay.thing == thing.thing), key=lambda stay: stay.from_h)
    return ChargeLine(
        thing=piece,
        on_hand=asked.on_hand[piece.item.id],
        end_pct=100 * thing.soc_at_leaving,
        full_h=thing.full_h,
        missing_wh=thing.missing_wh,
        left_out=NO_CHARGER if thing.left_out == "no_port" and not asked.chargers else thing.left_out or "",
        hangs=tuple(
            Hang(
                asked.chargers[stay.charger],
                _port(stay.charger, stay.port, asked),
                stay.from_h,
                stay.to_h,
                stay.overnight,
            )
            for stay in stays
        ),
    )


def _port(charger: str, port: str, asked: AskedEvening) -> int:
    ports = next(len(one.ports) for one in asked.evening.chargers if one.id == charger)
    return int(port) if ports > 1 else 0


def _help(remedy: Helped, asked: AskedEvening) -> EveningHelp:
    return EveningHelp(
        remedy.kind,
        None if remedy.charger is None else asked.chargers[remedy.charger],
        remedy.from_h,
        remedy.full,
        remedy.gained_wh,
        None if remedy.first_gain is None else asked.things[remedy.first_gain],
        remedy.all_full,
        remedy.all_chargeable_full,
        remedy.connectors,
        remedy.power_w,
        remedy.sockets,
    )


def _notes(result: EveningResult, things: Mapping[str, Piece]) -> tuple[Note, ...]:
    """The cautions of the calculation by item; those without a figure of their own once for all their things."""
    notes = [
        Note(
            caution.code,
            () if caution.thing is None else (things[caution.thing].item.id,),
            caution.value,
            caution.limit,
            caution.source,
        )
        for caution in sorted(result.cautions, key=lambda caution: caution.code)
    ]
    joined: list[Note] = []
    for code, group in groupby(notes, key=lambda note: note.code):
        alike = list(dict.fromkeys(group))
        if code in _BY_THING:
            joined += alike
        else:
            ids = tuple(dict.fromkeys(name for note in alike for name in note.items))
            joined.append(replace(alike[0], items=ids, value=None))
    return tuple(joined)


def start_charges(plan: EveningPlan, outing: Outing) -> tuple[StartCharge, ...]:
    """The charges with which an outing begins if the evening goes as planned.

    A full thing needs none; one reckoned as empty, because its charge on hand was not known, begins anywhere between
    its planned charge and full, most cautiously taken at the planned one. What was not planned keeps what was set.
    """
    planned_ids = {line.thing.item.id for line in plan.lines}
    kept = [start for start in outing.starts if start.item not in planned_ids]
    worst: dict[str, ChargeLine] = {}
    for line in plan.lines:
        held = worst.get(line.thing.item.id)
        if held is None or line.end_pct < held.end_pct:
            worst[line.thing.item.id] = line
    return (*kept, *(_start(name, line) for name, line in worst.items() if line.missing_wh > 0))


@dataclass(frozen=True, slots=True)
class OtherStart:
    """A thing, by id, with which charge the outing begins, and with which one it would by the plan; full is 100 %."""

    item: str
    begins_pct: float
    planned_pct: float


def other_starts(plan: EveningPlan, outing: Outing) -> tuple[OtherStart, ...]:
    """Where the outing does not begin with the charge that the plan ends with now; what is swollen begins with none.

    Charges at the start were taken from a plan of before, or typed, or begin full because none was entered.
    """
    things = dict.fromkeys(line.thing.item.id for line in plan.lines if line.left_out != "swollen")
    if not plan.has_charger:
        return ()
    stored, now = (
        {start.item: start.likely_pct for start in starts} for starts in (outing.starts, start_charges(plan, outing))
    )
    pairs = (OtherStart(name, stored.get(name, 100.0), now.get(name, 100.0)) for name in things)
    return tuple(one for one in pairs if abs(one.begins_pct - one.planned_pct) >= TELLING_PCT)


def _start(name: str, line: ChargeLine) -> StartCharge:
    pct = int(10 * line.end_pct) / 10
    return StartCharge(item=name, low_pct=pct, likely_pct=pct, high_pct=pct if line.on_hand.known else 100.0)
