"""A figure in per cent, or none: typed as 5, 5 % or 2,5; what cannot be read is marked, never guessed."""

import re

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.hour_fields import MarkedField
from kitlog.wording.draw_text import short_text

_PERCENT = re.compile(r"(\d{1,3}(?:[.,]\d{1,6})?)\s*%?")
MOST_PCT = 100.0
WIDE_PX = 54


def percent_of(text: str) -> float | None:
    """Per cent as typed: ``5``, ``5 %``, ``2,5``; None if it is none, or over 100."""
    found = _PERCENT.fullmatch(text.strip())
    pct = float(found[1].replace(",", ".")) if found else None
    return None if pct is None or pct > MOST_PCT else pct


class PercentField(MarkedField):
    """One figure from 0 to 100.

    Attributes:
        stepped: Up (-1) or Down (1) was pressed.
    """

    stepped = Signal(int)

    def __init__(self, name: str, hint: str = "", parent: QWidget | None = None) -> None:
        super().__init__("", hint, parent)
        self._given: tuple[str, float | None] = ("", None)
        self.setAccessibleName(name)
        self.setFixedWidth(look.px(WIDE_PX))

    def put(self, pct: float | None) -> None:
        """Show a figure or none."""
        text = "" if pct is None else short_text(pct)
        self._given = (text, pct)
        self.setText(text)

    def pct(self) -> float | None:
        """The figure, None for an empty field or one that cannot be read; untouched, it is exactly what it was."""
        text, pct = self._given
        return pct if self.text() == text else percent_of(self.text())

    def is_wrong(self) -> bool:
        """Whether something stands there that is no figure from 0 to 100."""
        return bool(self.text().strip()) and self.pct() is None

    def mark(self, fault: str) -> None:
        """Mark it, and say to a screen reader why; empty takes the mark away."""
        self.mark_wrong(wrong=bool(fault))
        self.setAccessibleDescription(fault)
        self.setToolTip(fault)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Up and Down go to the field above and below."""
        steps = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
        step = steps.get(Qt.Key(event.key()))
        if step is None:
            super().keyPressEvent(event)
        else:
            self.stepped.emit(step)
