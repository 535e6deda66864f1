"""Fields that cannot be wrong: days that may be empty, choices, ticks."""

from collections.abc import Iterable
from datetime import date

from PySide6.QtCore import QDate, QEvent, QPointF, QRectF, QSignalBlocker, QSize, Qt
from PySide6.QtGui import QColor, QHelpEvent, QKeyEvent, QPainter, QPaintEvent, QPen, QPolygonF, QWheelEvent
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QCheckBox,
    QComboBox,
    QDateEdit,
    QLineEdit,
    QStyle,
    QStyleOptionComboBox,
    QToolTip,
    QWidget,
)

from kitlog.desktop import look
from kitlog.desktop.parts.number_field import NumberField
from kitlog.desktop.parts.ring import draw_ring
from kitlog.desktop.parts.tick_box import draw_tick_box
from kitlog.paint.type_scale import Role
from kitlog.units.days import FIRST_DAY, LAST_DAY
from kitlog.wording.translate import _

__all__ = ["NARROWEST", "ChoiceField", "DateField", "LineField", "NumberField", "TickField", "draw_chevron"]


def draw_chevron(painter: QPainter, centre: QPointF, colour: QColor) -> None:
    """The sign of something that opens downwards."""
    reach = look.px(4)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(colour, 1.6, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin))
    points = (QPointF(-reach, -reach / 2), QPointF(0, reach / 2), QPointF(reach, -reach / 2))
    painter.drawPolyline(QPolygonF([centre + point for point in points]))


class LineField(QLineEdit):
    """One line of text."""

    def __init__(self, text: str = "", hint: str = "", parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self.setPlaceholderText(hint)
        self.setMaxLength(200)
        self.setFont(look.font(Role.BODY))


WIDEST_DAYS = ("28 May 2028", "28 Nov 2028")


class DateField(QDateEdit):
    """A day, or none: Del empties it, typing starts at today."""

    EMPTY = QDate(FIRST_DAY.year - 1, 12, 31)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setDisplayFormat("d MMM yyyy")
        self.setDateRange(self.EMPTY, QDate(LAST_DAY.year, LAST_DAY.month, LAST_DAY.day))
        self.setSpecialValueText(_("no date"))
        self.setCalendarPopup(True)
        self.setFont(look.font(Role.BODY))
        self.setToolTip(_("Arrow keys change it, Del empties it"))
        self.lineEdit().setTextMargins(look.px(9), 0, 0, 0)  # the sign has room of its own beside the line
        self.put(None)

    def day(self) -> date | None:
        """The day, None if there is none."""
        shown = self.date()
        return None if shown == self.EMPTY else date(shown.year(), shown.month(), shown.day())

    def put(self, day: date | None) -> None:
        """Show a day or none."""
        self.setDate(self.EMPTY if day is None else QDate(day.year, day.month, day.day))

    def sizeHint(self) -> QSize:
        """As wide as its widest day and the sign."""
        widest = max(look.lettering().width(day, Role.BODY) for day in WIDEST_DAYS)
        return QSize(round(widest + look.px(9 + 28 + 16)), look.px(32))

    def minimumSizeHint(self) -> QSize:
        """A day is never cut."""
        return self.sizeHint()

    def focusNextPrevChild(self, forward: bool) -> bool:  # noqa: FBT001  # Qt's signature
        """Tab leaves the field; left and right move within it."""
        return QAbstractSpinBox.focusNextPrevChild(self, forward)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Del empties; from empty, a digit or arrow begins at today."""
        if event.key() in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace}:
            self.put(None)
            return
        begins = event.text().isdigit() or event.key() in {Qt.Key.Key_Up, Qt.Key.Key_Down}
        if self.day() is None and begins:
            self.setDate(QDate.currentDate())
            self.setSelectedSection(QDateEdit.Section.DaySection)
        super().keyPressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel scrolls the form."""
        event.ignore()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the field and the sign that it opens."""
        super().paintEvent(event)
        with QPainter(self) as painter:
            draw_chevron(painter, QPointF(self.width() - look.px(16), self.height() / 2), look.tokens().ink)


NARROWEST = 96
"""A choice keeps this width at least, in px of the design."""


class ChoiceField(QComboBox):
    """One of a list of values, each with its word."""

    def __init__(self, choices: Iterable[tuple[object, str]] = (), parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFont(look.font(Role.BODY))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.offer(choices)

    def offer(self, choices: Iterable[tuple[object, str]]) -> None:
        """Offer other choices; the one chosen stays if it is still there."""
        kept = self.chosen()
        with QSignalBlocker(self):
            self.clear()
            self._values = []
            for value, word in choices:
                self._values.append(value)
                self.addItem(word)
            if kept in self._values:
                self.setCurrentIndex(self._values.index(kept))

    def chosen(self) -> object:
        """The value chosen, None if there is none."""
        values = getattr(self, "_values", [])
        return values[self.currentIndex()] if 0 <= self.currentIndex() < len(values) else None

    def choose(self, value: object) -> None:
        """Choose a value that is offered."""
        if value in self._values:
            self.setCurrentIndex(self._values.index(value))

    def sizeHint(self) -> QSize:
        """As wide as its widest word and the sign."""
        hint = super().sizeHint()
        return QSize(hint.width() + look.px(8), look.px(32))

    def minimumSizeHint(self) -> QSize:
        """One long word must not push other things out of a form: it gives way, and is cut with an ellipsis."""
        hint = self.sizeHint()
        return QSize(min(hint.width(), look.px(NARROWEST)), hint.height())

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel scrolls the page."""
        event.ignore()

    def event(self, event: QEvent) -> bool:
        """A word that is cut is told whole under the pointer."""
        if isinstance(event, QHelpEvent) and not self.toolTip() and self.shown_text() != self.currentText():
            QToolTip.showText(event.globalPos(), self.currentText(), self)
            return True
        return super().event(event)

    def shown_text(self) -> str:
        """As much of the chosen word as there is room for."""
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        style = self.style()
        part = QStyle.SubControl.SC_ComboBoxEditField
        room = style.subControlRect(QStyle.ComplexControl.CC_ComboBox, option, part, self).width()
        return self.fontMetrics().elidedText(self.currentText(), Qt.TextElideMode.ElideRight, room)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the field and the sign that it opens."""
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        option.currentText = self.shown_text()
        t = look.tokens()
        with QPainter(self) as painter:
            self.style().drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option, painter, self)
            self.style().drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option, painter, self)
            colour = t.ink if self.isEnabled() else t.muted
            draw_chevron(painter, QPointF(self.width() - look.px(16), self.height() / 2), colour)


class TickField(QCheckBox):
    """Yes or no with a word, drawn with the tick of the repack."""

    def __init__(self, words: str, parent: QWidget | None = None) -> None:
        super().__init__(words.replace("&", "&&"), parent)
        self.words = words
        self.setAccessibleName(words)
        self.setFont(look.font(Role.BODY))

    def sizeHint(self) -> QSize:
        """The box and its words."""
        wide = look.lettering().width(self.words, Role.BODY)
        return QSize(round(wide) + look.px(36), look.px(28))

    def hitButton(self, pos: object) -> bool:  # noqa: ARG002  # Qt's signature
        """All of it can be pressed."""
        return True

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint box and words."""
        t, px = look.tokens(), look.px
        side = px(20)
        box = QRectF(px(4), (self.height() - side) / 2, side, side)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            draw_tick_box(painter, box, t, ticked=self.isChecked(), enabled=self.isEnabled())
            row = QRectF(self.rect()).adjusted(px(32), 0, 0, 0)
            colour = t.ink if self.isEnabled() else t.muted
            look.lettering().draw(painter, row, self.words, Role.BODY, colour)
            if self.hasFocus():
                draw_ring(painter, box.adjusted(-4, -4, 4, 4), px(6))
