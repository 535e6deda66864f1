"""Hours by item as bars, with a stroke where a limit by hours lies."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.kit.due import due_states
from kitlog.paint.lettering import RIGHT
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import with_unit
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import _
from kitlog.workbench.workbench import Workbench

ROW = 26


@dataclass(frozen=True, slots=True)
class HourBar:
    """One item: its hours so far, and the next limit: at how many hours, and what is due then."""

    name: str
    hours: float
    limit_h: float | None = None
    limit: str = ""


def hour_bars(bench: Workbench) -> list[HourBar]:
    """All items with hours, the most used first; opening balances count where they are known."""
    today, book = bench.now().date(), bench.book()
    bars = []
    for item in bench.items():
        hours = bench.usage(item.id, today).airtime_h + (item.opening_h or 0.0)
        if hours > 0:
            limits = [
                (due.hours_left, rule_text(due.rule))
                for due in due_states(item, book, today)
                if due.hours_left is not None
            ]
            left, rule = min(limits, default=(None, ""))
            bars.append(HourBar(item.name, hours, None if left is None else hours + left, rule))
    return sorted(bars, key=lambda bar: -bar.hours)


class HourBars(QWidget):
    """The bars."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bars: Sequence[HourBar] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(_("Hours by item"))

    def show_bars(self, bars: Sequence[HourBar]) -> None:
        """Show other bars."""
        self._bars = bars
        self.setAccessibleDescription(", ".join(_told(bars)))
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """26 a row."""
        return QSize(look.px(240), look.px(ROW) * len(self._bars))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint names, bars, strokes and hours."""
        px = look.px
        most = max([1.0, *(max(bar.hours, bar.limit_h or 0) for bar in self._bars)])
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            for number, bar in enumerate(self._bars):
                row = QRectF(0, number * px(ROW), self.width(), px(ROW))
                self._paint_row(painter, row, bar, most)

    def _paint_row(self, painter: QPainter, row: QRectF, bar: HourBar, most: float) -> None:
        t, px, words = look.tokens(), look.px, look.lettering()
        name = QRectF(row.left(), row.top(), px(108), row.height())
        words.draw(painter, name, bar.name, Role.SECOND, t.ink)
        track = QRectF(px(112), row.center().y() - px(5), row.width() - px(112) - px(72), px(10))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(t.sunk)
        painter.drawRoundedRect(track, px(3), px(3))
        painter.setBrush(t.accent)
        painter.drawRoundedRect(
            QRectF(track.left(), track.top(), track.width() * bar.hours / most, track.height()), px(3), px(3)
        )
        if bar.limit_h is not None and bar.limit_h >= 0:
            x = track.left() + track.width() * min(1.0, bar.limit_h / most)
            painter.fillRect(QRectF(x - 1, track.top() - px(3), 2, track.height() + px(6)), t.look)
            wide = words.width(bar.limit, Role.CHIP)
            over = x + px(6) + wide > track.right()
            room = QRectF(x - px(6) - wide if over else x + px(6), row.top(), wide + 1, row.height())
            if not over or room.left() > track.left() + track.width() * bar.hours / most:
                words.draw(painter, room, bar.limit, Role.CHIP, t.look)
        words.draw(painter, row, with_unit(bar.hours, "h", 1), Role.GROUP, t.ink, RIGHT)


def _told(bars: Iterable[HourBar]) -> list[str]:
    told = []
    for bar in bars:
        limit = (
            ""
            if bar.limit_h is None
            else _(", {rule} at {hours}").format(rule=bar.limit, hours=with_unit(bar.limit_h, "h", 1))
        )
        told.append(f"{bar.name} {with_unit(bar.hours, 'h', 1)}{limit}")
    return told
