"""Lines, choices and ticks; with the fields of days and numbers, all that a form is made of."""

from collections.abc import Iterable

from PySide6.QtCore import QEvent, QPointF, QRectF, QSignalBlocker, QSize, Qt
from PySide6.QtGui import QHelpEvent, QPainter, QPaintEvent, QWheelEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QLineEdit,
    QStyle,
    QStyleOptionComboBox,
    QToolTip,
    QWidget,
)

from kitlog.desktop import look
from kitlog.desktop.parts.chevron import draw_chevron
from kitlog.desktop.parts.date_field import DateField
from kitlog.desktop.parts.number_field import NumberField
from kitlog.desktop.parts.ring import draw_ring
from kitlog.desktop.parts.tick_box import draw_tick_box
from kitlog.paint.type_scale import Role

__all__ = ["NARROWEST", "ChoiceField", "DateField", "LineField", "NumberField", "TickField", "draw_chevron"]


class LineField(QLineEdit):
    """One line of text."""

    def __init__(self, text: str = "", hint: str = "", parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self.setPlaceholderText(hint)
        self.setMaxLength(200)
        self.setFont(look.font(Role.BODY))


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
