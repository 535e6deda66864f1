"""The charge on hand: what the pilot last saw, as long as it can still be so."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from kitlog.kit.item import Item

LASTS = timedelta(hours=24)
"""A charge seen longer ago than this is not known any more (common practice, no source)."""

RECKONED_PCT = 0.0
"""Charge from which a thing is reckoned whose charge on hand is not known: the plan is then never too short."""


@dataclass(frozen=True, slots=True)
class OnHand:
    """The charge of an item now.

    Attributes:
        seen_pct, seen_at: what was last seen, and when; None = nothing on record.
        known: whether that still counts.
    """

    seen_pct: float | None
    seen_at: datetime | None
    known: bool

    @property
    def reckoned_pct(self) -> float:
        """The charge to reckon from."""
        return self.seen_pct if self.known and self.seen_pct is not None else RECKONED_PCT


def on_hand(item: Item, now: datetime, lasts: timedelta = LASTS) -> OnHand:
    """The charge on hand of an item; a charge without a time is not known."""
    battery = item.battery
    if battery is None or battery.on_hand_pct is None or battery.on_hand_at is None:
        return OnHand(battery.on_hand_pct if battery else None, None, known=False)
    return OnHand(battery.on_hand_pct, battery.on_hand_at, known=now - battery.on_hand_at <= lasts)
