"""What lies for weeks, and to which charge it is brought before."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from kitlog.budget.charging.storage import LEAVE, UNUSED_DAYS, Stored, Storing, for_storage
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.packing.assessment import Assessment
from kitlog.packing.capacity import has_cell
from kitlog.packing.charging import CHARGED
from kitlog.packing.on_hand import OnHand, on_hand

SEEN_LASTS = timedelta(days=UNUSED_DAYS)
"""A charge seen within the same six weeks still counts for a thing that has not been used since."""


@dataclass(frozen=True, slots=True)
class StorageLine:
    """What to do with one item.

    Attributes:
        act, why, source, from_pct, to_pct: as in `kitlog.budget.charging.storage.StorageStep`, charges in per cent.
        last_used: the day of the last flight on which it was; None = none in the log.
        on_hand: the charge last seen.
    """

    item: Item
    act: str
    why: str
    from_pct: float | None
    to_pct: float | None
    source: str
    last_used: date | None
    on_hand: OnHand


def storage_due(
    items: Iterable[Item], flights: Iterable[Flight], now: datetime, *, season_over: bool = False
) -> tuple[StorageLine, ...]:
    """Everything with a cell of its own that has not been on a flight for six weeks, or all of it out of season.

    What is in use is left out; what is in no flight of the log is not known. A beacon's cell is not charged.
    """
    cells = [item for item in items if item.usable and _has_cell(item)]
    used = last_used(flights)
    seen = {item.id: _seen(item, used.get(item.id), now) for item in cells}
    steps = for_storage(
        Storing(
            things=tuple(_stored(item, seen[item.id], used.get(item.id), now.date()) for item in cells),
            season_over=season_over,
        )
    )
    lines = [
        StorageLine(
            item=item,
            act=step.act,
            why=step.why,
            from_pct=None if step.from_soc is None else 100 * step.from_soc,
            to_pct=None if step.to_soc is None else 100 * step.to_soc,
            source=step.source or "",
            last_used=used.get(item.id),
            on_hand=seen[item.id],
        )
        for item, step in zip(cells, steps, strict=True)
    ]
    return tuple(line for line in lines if line.why != "in_use")


def at_home(lines: Iterable[StorageLine], assessment: Assessment | None) -> tuple[StorageLine, ...]:
    """Those that do not go along on an outing: what goes is charged for it."""
    along = set() if assessment is None else {line.item.id for line in assessment.lines if not line.in_car}
    return tuple(line for line in lines if line.item.id not in along)


def to_do(lines: Iterable[StorageLine]) -> tuple[StorageLine, ...]:
    """Those with which something is to be done."""
    return tuple(line for line in lines if line.act != LEAVE)


def last_used(flights: Iterable[Flight]) -> Mapping[str, date]:
    """The last day on which each item was flown or carried."""
    last: dict[str, date] = {}
    for flight in flights:
        for name in (*flight.flown, *flight.carried):
            last[name] = max(flight.last_day, last.get(name, flight.last_day))
    return last


def _has_cell(item: Item) -> bool:
    return item.kind is not Kind.BEACON and (has_cell(item) or item.kind in CHARGED)


def _seen(item: Item, used: date | None, now: datetime) -> OnHand:
    """The charge on hand; one that was seen before the last flight is not known any more."""
    seen = on_hand(item, now, SEEN_LASTS)
    before = used is not None and seen.seen_at is not None and seen.seen_at.astimezone(now.tzinfo).date() < used
    return OnHand(seen.seen_pct, seen.seen_at, known=seen.known and not before)


def _stored(item: Item, seen: OnHand, used: date | None, today: date) -> Stored:
    return Stored(
        id=item.id,
        start=seen.seen_pct / 100 if seen.known and seen.seen_pct is not None else None,
        unused_days=None if used is None else max(0, (today - used).days),
        swollen=item.battery is not None and item.battery.swollen_on is not None,
    )
