"""A line of text with words to choose from: what is offered is a help, any other text is kept."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QWheelEvent
from PySide6.QtWidgets import QComboBox, QLineEdit, QStyle, QStyleOptionComboBox, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.fields import NARROWEST, draw_chevron
from kitlog.paint.type_scale import Role


class WordField(QComboBox):
    """Text that may be one of the offered words."""

    def __init__(self, words: Sequence[str], hint: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setEditable(True)
        self.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.setFont(look.font(Role.BODY))
        self.addItems(list(words))
        self._line = QLineEdit()
        self.setLineEdit(self._line)
        self._line.setFont(look.font(Role.BODY))
        self._line.setMaxLength(200)
        self.hint(hint)
        self.setText("")

    def text(self) -> str:
        """What stands there."""
        return self.currentText().strip()

    def setText(self, text: str) -> None:
        """Show a text, offered or not."""
        self.setCurrentIndex(self.findText(text))
        self.setEditText(text)

    def hint(self, text: str) -> None:
        """Say in the empty field what may stand there."""
        self._line.setPlaceholderText(text)

    def setAccessibleName(self, name: str) -> None:
        """The line inside is what a screen reader is on."""
        super().setAccessibleName(name)
        self._line.setAccessibleName(name)

    def sizeHint(self) -> QSize:
        """As wide as its widest word and the sign."""
        hint = super().sizeHint()
        return QSize(hint.width() + look.px(8), look.px(32))

    def minimumSizeHint(self) -> QSize:
        """It gives way like any other choice."""
        hint = self.sizeHint()
        return QSize(min(hint.width(), look.px(NARROWEST)), hint.height())

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel scrolls the page."""
        event.ignore()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the field and the sign that it opens."""
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        t = look.tokens()
        with QPainter(self) as painter:
            self.style().drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option, painter, self)
            colour = t.ink if self.isEnabled() else t.muted
            draw_chevron(painter, QPointF(self.width() - look.px(16), self.height() / 2), colour)
