"""Airtime of an item in each of the last twelve months, as bars."""

from collections.abc import Iterable, Sequence
from datetime import date

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.desktop.words import month_text
from kitlog.kit.flights import Flight
from kitlog.paint.lettering import RIGHT
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import MONTHS, with_unit
from kitlog.wording.translate import _

MONTHS_SHOWN = 12


def month_hours(flights: Iterable[Flight], today: date) -> list[float]:
    """Airtime in h of each of the last twelve months, this one last; typed totals are spread over no months."""
    last = today.year * 12 + today.month - 1
    hours = [0.0] * MONTHS_SHOWN
    for flight in flights:
        place = MONTHS_SHOWN - 1 - (last - (flight.on.year * 12 + flight.on.month - 1))
        if flight.until is None and 0 <= place < MONTHS_SHOWN:
            hours[place] += flight.airtime_min / 60
    return hours


class MonthBars(QWidget):
    """Twelve bars, the present month at the right."""

    def __init__(self, hours: Sequence[float], today: date, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._hours, self._today = hours, today
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(_("Airtime by month"))
        first = date(today.year - 1, today.month, 1)
        parts = [f"{_(MONTHS[(first.month + n) % 12])} {with_unit(h, 'h', 1)}" for n, h in enumerate(hours) if h]
        self.setAccessibleDescription(", ".join(parts) or _("no airtime in twelve months"))

    def sizeHint(self) -> QSize:
        """52 high."""
        return QSize(look.px(160), look.px(54))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint bars, ground line, first and last month."""
        t, px = look.tokens(), look.px
        foot, step = self.height() - px(17), self.width() / MONTHS_SHOWN
        most = max(*self._hours, 0.1)
        start = date(self._today.year - (self._today.month < 12), self._today.month % 12 + 1, 1)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(t.accent)
            for number, hours in enumerate(self._hours):
                high = max(px(1) if hours else 0, hours / most * (foot - px(2)))
                painter.drawRoundedRect(QRectF(number * step + px(2), foot - high, step - px(4), high), px(2), px(2))
            painter.fillRect(QRectF(0, foot, self.width(), 1), t.strong_line)
            row = QRectF(0, foot + 1, self.width(), px(16))
            look.lettering().draw(painter, row, month_text(start), Role.SMALL, t.muted)
            look.lettering().draw(painter, row, _(MONTHS[self._today.month - 1]), Role.SMALL, t.muted, RIGHT)
