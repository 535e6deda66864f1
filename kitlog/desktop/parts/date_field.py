"""A day that may be empty: typed whole or moved by arrow keys; what cannot be read stays as typed and is marked."""

from datetime import date, timedelta

from PySide6.QtCore import QDate, QEvent, QObject, QPointF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QInputMethodEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QValidator,
    QWheelEvent,
)
from PySide6.QtWidgets import QAbstractSpinBox, QCalendarWidget, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.chevron import draw_chevron
from kitlog.desktop.parts.day_reading import day_shown, day_typed
from kitlog.paint.type_scale import Role
from kitlog.units.days import FIRST_DAY, LAST_DAY, add_months
from kitlog.wording.day_typed_text import unread_day_text
from kitlog.wording.translate import _

WIDEST_DAYS = ("28 May 2028", "28 Nov 2028")
SIGN = 28
"""Room for the sign that it opens, in px of the design."""
SECTIONS = 3
SIDEWAYS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}


class OpensSign(QWidget):
    """The sign at the end of the field that opens the calendar."""

    pressed = Signal()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Open the calendar."""
        self.pressed.emit()
        event.accept()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the sign."""
        colour = look.tokens().ink if self.isEnabled() else look.tokens().muted
        with QPainter(self) as painter:
            draw_chevron(painter, QPointF(self.width() - look.px(16), self.height() / 2), colour)


class DateField(QAbstractSpinBox):
    """A day, or none.

    A whole day can be typed over. Untouched, the up and down keys move the part under the cursor, left and right go
    from day to month to year, Del empties it; typing then edits the text as in any line.
    """

    EMPTY = QDate(FIRST_DAY.year - 1, 12, 31)
    dateChanged = Signal(object)  # noqa: N815  # as Qt's own fields of days have it

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._day: date | None = None
        self._kept: date | None = None
        self._clicked_in = False
        self._sign = OpensSign(self)
        self._sign.pressed.connect(self.open_calendar)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSpecialValueText(_("no date"))
        self.setFont(look.font(Role.BODY))
        self._tip = _("Type a day; arrow keys change it, Del empties it")
        self.setToolTip(self._tip)
        self.lineEdit().setTextMargins(look.px(9), 0, look.px(SIGN), 0)
        self.lineEdit().textChanged.connect(lambda _text: self._take())
        self.lineEdit().installEventFilter(self)
        self._show()

    def day(self) -> date | None:
        """The day, None if there is none; that before it while what is typed cannot be read."""
        return self._day

    def put(self, day: date | None) -> None:
        """Show a day or none; what was typed is gone."""
        was, self._day, self._kept = self._day, day, day
        self._show()
        if day != was:
            self.dateChanged.emit(day)

    def is_wrong(self) -> bool:
        """Whether something stands there that is no day."""
        return not self._read(self.lineEdit().text())[0]

    def wrong_text(self) -> str:
        """What is wrong with what stands there, and how a day is written; empty if it can be read."""
        typed = self.lineEdit().text()
        return unread_day_text(self.accessibleName(), typed.strip()) if self.is_wrong() else ""

    def open_calendar(self) -> None:
        """Choose the day on a calendar."""
        if not self.isEnabled():
            return
        over = QWidget(self, Qt.WindowType.Popup)
        over.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        calendar = QCalendarWidget(over)
        calendar.setDateRange(_qt_day(FIRST_DAY), _qt_day(LAST_DAY))
        calendar.setSelectedDate(_qt_day(self._day or _today()))

        def choose(chosen: QDate) -> None:
            self.put(_python_day(chosen))
            over.close()

        for signal in (calendar.clicked, calendar.activated):
            signal.connect(choose)
        rows = QVBoxLayout(over)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(calendar)
        over.move(self.mapToGlobal(self.rect().bottomLeft()))
        over.show()
        calendar.setFocus()

    def validate(self, text: str, pos: int) -> tuple[QValidator.State, str, int]:
        """Everything can be typed; only what can be read whole counts."""
        state = QValidator.State.Acceptable if self._read(text)[0] else QValidator.State.Intermediate
        return state, text, pos

    def fixup(self, text: str) -> str:
        """What cannot be read is not mended."""
        return text

    def stepEnabled(self) -> QAbstractSpinBox.StepEnabledFlag:
        """Both ways."""
        return QAbstractSpinBox.StepEnabledFlag.StepUpEnabled | QAbstractSpinBox.StepEnabledFlag.StepDownEnabled

    def stepBy(self, steps: int) -> None:
        """Move the day, month or year under the cursor; from none, begin at today."""
        if self.is_wrong():
            return
        section = self._section()
        self.put(_today() if self._day is None else _stepped(self._day, section, steps))
        self._select(section)

    def sizeHint(self) -> QSize:
        """As wide as its widest day and the sign."""
        widest = max(look.lettering().width(day, Role.BODY) for day in WIDEST_DAYS)
        return QSize(round(widest + look.px(9 + SIGN + 28)), look.px(32))

    def minimumSizeHint(self) -> QSize:
        """A day is never cut."""
        return self.sizeHint()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrow keys and Del act on a day that stands there untouched; all else edits the text."""
        key, untouched = event.key(), self._is_untouched()
        with_alt = bool(event.modifiers() & Qt.KeyboardModifier.AltModifier)
        if key == Qt.Key.Key_F4 or (key == Qt.Key.Key_Down and with_alt):
            self.open_calendar()
        elif key == Qt.Key.Key_Delete and untouched:
            self.put(None)
        elif key in SIDEWAYS and untouched and self._day and not event.modifiers():
            self._go(SIDEWAYS[Qt.Key(key)])
        else:
            self._edit(event)

    def inputMethodEvent(self, event: QInputMethodEvent) -> None:
        """Composed letters replace the words for no date too."""
        self._select_words()
        super().inputMethodEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Whoever comes in, by Tab or a click, types over all of it."""
        super().focusInEvent(event)
        self._clicked_in = event.reason() == Qt.FocusReason.MouseFocusReason
        self.lineEdit().selectAll()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Write out what can be read."""
        super().focusOutEvent(event)
        self._settle()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The click that brings the focus leaves all selected."""
        released = event.type() == QEvent.Type.MouseButtonRelease
        if watched is self.lineEdit() and released and self._clicked_in:
            self._clicked_in = False
            if not self.lineEdit().hasSelectedText():
                self.lineEdit().selectAll()
        return super().eventFilter(watched, event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The sign stays at the end."""
        super().resizeEvent(event)
        self._sign.setGeometry(self.width() - look.px(SIGN), 0, look.px(SIGN), self.height())
        self._sign.raise_()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel scrolls the form."""
        event.ignore()

    def _edit(self, event: QKeyEvent) -> None:
        if event.text().isprintable() and event.text():
            self._select_words()
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self._settle()
        super().keyPressEvent(event)

    def _read(self, text: str) -> tuple[bool, date | None]:
        """Whether a text can be read, and the day; an empty one is no day."""
        bare = text.strip()
        if not bare or bare.casefold() == self.specialValueText().casefold():
            return True, None
        if self._day is not None and bare == day_shown(self._day, self.locale()):
            return True, self._day
        day = day_typed(bare, self.locale())
        return day is not None, day

    def _take(self) -> None:
        """Take what was typed if it can be read, and mark it if not."""
        can_be_read, day = self._read(self.lineEdit().text())
        holds = day if can_be_read else self._kept
        if holds != self._day:
            self._day = holds
            self.dateChanged.emit(holds)
        self._mark()

    def _show(self) -> None:
        self.lineEdit().setText(self._shown())
        self._mark()

    def _shown(self) -> str:
        return self.specialValueText() if self._day is None else day_shown(self._day, self.locale())

    def _settle(self) -> None:
        if not self.is_wrong():
            self.put(self._day)

    def _is_untouched(self) -> bool:
        return self.lineEdit().text() == self._shown()

    def _section(self) -> int:
        """0 = day, 1 = month, 2 = year: where the selection begins, or the cursor stands."""
        line = self.lineEdit()
        at = line.selectionStart() if line.hasSelectedText() else line.cursorPosition()
        return min(line.text()[:at].count(" "), SECTIONS - 1) if self._is_untouched() else 0

    def _select(self, section: int) -> None:
        words = self.lineEdit().text().split(" ")
        self.lineEdit().setSelection(len(" ".join([*words[:section], ""])), len(words[section]))

    def _go(self, step: int) -> None:
        self._select(max(0, min(self._section() + step, SECTIONS - 1)))

    def _select_words(self) -> None:
        if self._day is None and self._is_untouched():
            self.lineEdit().selectAll()

    def _mark(self) -> None:
        """Mark it while it cannot be read, and say why; take the mark away again."""
        said = self.wrong_text()
        if self.property("wrong") is None and not said:
            return
        self.setToolTip(said or self._tip)
        self.setAccessibleDescription(said)
        if bool(self.property("wrong")) != bool(said):
            self.setProperty("wrong", bool(said))
            self.style().unpolish(self)
            self.style().polish(self)


def _today() -> date:
    return _python_day(QDate.currentDate())


def _qt_day(day: date) -> QDate:
    return QDate(day.year, day.month, day.day)


def _python_day(day: QDate) -> date:
    return date(day.year(), day.month(), day.day())


def _stepped(day: date, section: int, steps: int) -> date:
    """A day later by days, months or years, within the days that there are."""
    moved = day + timedelta(steps) if section == 0 else add_months(day, steps * (1 if section == 1 else 12))
    return max(FIRST_DAY, min(moved, LAST_DAY))
