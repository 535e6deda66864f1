"""Fields for durations and times of day: typed as 1:30, 1.5 or 90 min; what cannot be read is marked, never guessed."""

import re
from datetime import time

from PySide6.QtWidgets import QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.plan_words import hm_text
from kitlog.desktop.parts.fields import LineField

_CLOCK = re.compile(r"(\d{1,3}):([0-5]\d)(?:\s*h)?")
_HOURS = re.compile(r"(\d{1,3}(?:[.,]\d{1,4})?)\s*h?")
_MINUTES = re.compile(r"(\d{1,5})\s*min")
_TIME = re.compile(r"([01]?\d|2[0-3])[:.]([0-5]\d)")


def hours_of(text: str) -> float | None:
    """Hours from a duration as typed: ``1:30``, ``1.5``, ``1,5 h``, ``90 min``; None if it is none of these."""
    bare = text.strip().lower()
    if found := _CLOCK.fullmatch(bare):
        return int(found[1]) + int(found[2]) / 60
    if found := _MINUTES.fullmatch(bare):
        return int(found[1]) / 60
    if found := _HOURS.fullmatch(bare):
        return float(found[1].replace(",", "."))
    return None


def time_of(text: str) -> time | None:
    """A time of day as typed, 24 h: ``9:30``, ``09.30``; None if it is none."""
    found = _TIME.fullmatch(text.strip())
    return time(int(found[1]), int(found[2])) if found else None


class MarkedField(LineField):
    """A line that is marked while it cannot be read."""

    def mark_wrong(self, *, wrong: bool) -> None:
        """Mark it, or take the mark away."""
        if bool(self.property("wrong")) != wrong:
            self.setProperty("wrong", wrong)
            self.style().unpolish(self)
            self.style().polish(self)


class HoursField(MarkedField):
    """A duration in h:mm."""

    def __init__(self, hours: float, name: str, parent: QWidget | None = None) -> None:
        super().__init__(hm_text(hours), parent=parent)
        self._given = (hm_text(hours), hours)
        self.setAccessibleName(name)
        self.setFixedWidth(look.px(66))
        self.textChanged.connect(lambda _text: self.mark_wrong(wrong=self.hours() is None))

    def hours(self) -> float | None:
        """The duration in h, None while it cannot be read; untouched, it is exactly what it was."""
        text, hours = self._given
        return hours if self.text() == text else hours_of(self.text())


class TimeField(MarkedField):
    """A time of day, or none."""

    def __init__(self, at: time | None, parent: QWidget | None = None) -> None:
        super().__init__("" if at is None else f"{at:%H:%M}", hint="10:00", parent=parent)
        self.setFixedWidth(look.px(86))
        self.textChanged.connect(lambda _text: self.mark_wrong(wrong=self.is_wrong()))

    def time(self) -> time | None:
        """The time of day, None for an empty field or one that cannot be read."""
        return time_of(self.text())

    def is_wrong(self) -> bool:
        """Whether something stands there that is no time of day."""
        return bool(self.text().strip()) and self.time() is None
