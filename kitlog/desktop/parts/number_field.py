"""A number that may be unknown: what cannot be read stays as typed and is marked, and the figure before it holds."""

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import QEvent, QLocale, QObject, QPoint, Qt
from PySide6.QtGui import (
    QFocusEvent,
    QHideEvent,
    QInputMethodEvent,
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QValidator,
    QWheelEvent,
)
from PySide6.QtWidgets import QApplication, QDoubleSpinBox, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.figure_reading import bare_text, figure_of, grams_of
from kitlog.paint.type_scale import Role
from kitlog.wording.figure_text import unread_figure_text
from kitlog.wording.translate import _

ENTER = frozenset({Qt.Key.Key_Return, Qt.Key.Key_Enter})
REMOVE = frozenset({Qt.Key.Key_Backspace, Qt.Key.Key_Delete})


class NumberField(QDoubleSpinBox):
    """A number with its unit; emptied, it is not known.

    Args:
        suffix: the unit.
        decimals: digits after the point.
        most: greatest number allowed; the least is `least`.
        unknown: words for an empty field.
    """

    def __init__(
        self,
        suffix: str = "",
        *,
        decimals: int = 0,
        least: float = 0,
        most: float = 1_000_000,
        unknown: str = "",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._held, self._kept = "", 0.0
        self._step = 10.0**-decimals
        self._least, self._unit = least, suffix
        self._clicked_in, self._pressed = False, QPoint()
        self.setLocale(QLocale.c())
        self.setDecimals(decimals)
        self.setRange(least - self._step, most)
        self.setSpecialValueText(unknown or _("not known"))
        self.setSuffix(f"\u00a0{suffix}" if suffix else "")
        self.setFont(look.font(Role.BODY))
        self.lineEdit().setTextMargins(look.px(9), 0, look.px(9), 0)
        self.setValue(self.minimum())
        self.lineEdit().textChanged.connect(lambda _text: self._mark())
        self.lineEdit().installEventFilter(self)

    def number(self) -> float | None:
        """The number, None while it is not known; that before it while what is typed cannot be read."""
        value = self._kept if self.is_wrong() else self.value()
        return None if value <= self.minimum() + self._step / 2 else value

    def whole(self) -> int | None:
        """The number as a whole one."""
        number = self.number()
        return None if number is None else round(number)

    def put(self, number: float | None) -> None:
        """Show a number, or that it is not known."""
        self.setValue(self.minimum() if number is None else number)

    def setValue(self, value: float) -> None:
        """Show a number; what was typed is gone."""
        super().setValue(value)
        self._kept = self.value()
        self._mark()

    def is_wrong(self) -> bool:
        """Whether something stands there that is no number from the least to the most."""
        return bool(self._held) or self._read(self.lineEdit().text()) is None

    def wrong_text(self) -> str:
        """What is wrong with what stands there, and what may; empty if it can be read."""
        if not self.is_wrong():
            return ""
        typed = self._typed(self._held or self.lineEdit().text())
        return unread_figure_text(
            self.accessibleName(), typed, self._least, self.maximum(), self._unit, self.decimals()
        )

    def validate(self, text: str, pos: int) -> tuple[QValidator.State, str, int]:
        """Everything can be typed; only what can be read whole counts."""
        is_read = self._read(text) is not None
        return (QValidator.State.Acceptable if is_read else QValidator.State.Intermediate, text, pos)

    def valueFromText(self, text: str) -> float:
        """An empty field is the value that means not known."""
        read = self._read(text)
        return self.value() if read is None else read

    def fixup(self, text: str) -> str:
        """What cannot be read is not mended."""
        return text

    def textFromValue(self, value: float) -> str:
        """The number without noughts that say nothing."""
        text = super().textFromValue(value)
        return text.rstrip("0").rstrip(".") if "." in text else text

    def interpretText(self) -> None:
        """Take what is typed, if it can be read."""
        with self._holding():
            super().interpretText()

    def stepBy(self, steps: int) -> None:
        """Arrow keys step a number, and nothing that cannot be read."""
        if not self.is_wrong():
            super().stepBy(steps)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Typing replaces the words for not known; Return takes what can be read."""
        if self._writes(event):
            self._select_words()
        if event.key() in ENTER:
            with self._holding():
                super().keyPressEvent(event)
            if self.is_wrong():
                self.lineEdit().selectAll()
        else:
            super().keyPressEvent(event)

    def inputMethodEvent(self, event: QInputMethodEvent) -> None:
        """Composed letters replace the words for not known too."""
        if event.commitString() or event.preeditString():
            self._select_words()
        super().inputMethodEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """A click into the field selects all, as Tab does."""
        super().focusInEvent(event)
        self._clicked_in = event.reason() == Qt.FocusReason.MouseFocusReason
        if self._clicked_in:
            self.lineEdit().selectAll()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take what is typed, if it can be read."""
        with self._holding():
            super().focusOutEvent(event)

    def hideEvent(self, event: QHideEvent) -> None:
        """Take what is typed, if it can be read."""
        with self._holding():
            super().hideEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel scrolls the form; it never changes a figure by accident."""
        event.ignore()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The click that brings the focus leaves all selected, unless a part was marked with it."""
        if watched is self.lineEdit() and isinstance(event, QMouseEvent):
            if event.type() == QEvent.Type.MouseButtonPress:
                self._pressed = event.position().toPoint()
            elif event.type() == QEvent.Type.MouseButtonRelease and event.button() == Qt.MouseButton.LeftButton:
                return self._released(event)
        return super().eventFilter(watched, event)

    def _released(self, event: QMouseEvent) -> bool:
        moved = (event.position().toPoint() - self._pressed).manhattanLength()
        selects = self._clicked_in and moved < QApplication.startDragDistance()
        self._clicked_in = False
        if selects:
            self.lineEdit().selectAll()
        return selects

    @contextmanager
    def _holding(self) -> Iterator[None]:
        """Qt puts the old figure in the place of what it cannot read: put back what was typed."""
        typed = self.lineEdit().text()
        if self._held or self._read(typed) is not None:
            yield
            if not self.is_wrong():
                self._kept = self.value()
            return
        self._held = typed
        super().setValue(self._kept)
        yield
        self._held = ""
        self.lineEdit().setText(typed)

    def _read(self, text: str) -> float | None:
        """The value of a text, the least one for not known; None if it cannot be read."""
        typed, words = self._typed(text), self.specialValueText().casefold()
        bare = bare_text(typed, self._unit)
        if not bare or typed.casefold() == words:
            return self.minimum()
        grams = grams_of(typed) if self._unit == "g" else None
        value = figure_of(bare, self.decimals()) if grams is None else grams
        return value if value is not None and self._least <= value <= self.maximum() else None

    def _typed(self, text: str) -> str:
        """The text without the unit that Qt puts behind whatever is typed."""
        return text.removesuffix(self.suffix()).strip()

    def _writes(self, event: QKeyEvent) -> bool:
        printable = bool(event.text()) and event.text().isprintable()
        return printable or event.key() in REMOVE or event.matches(QKeySequence.StandardKey.Paste)

    def _select_words(self) -> None:
        """Select the words for not known, where they stand and were not typed."""
        line = self.lineEdit()
        unknown = self.value() == self.minimum() and not line.isModified()
        if unknown and line.text() == self.specialValueText():
            line.selectAll()

    def _mark(self) -> None:
        """Mark it while it cannot be read, and say why; take the mark away again."""
        said = self.wrong_text()
        if bool(self.property("wrong")) == bool(said) and self.toolTip() == said:
            return
        if bool(said) or self.property("wrong"):
            self.setToolTip(said)
            self.setAccessibleDescription(said)
        self.setProperty("wrong", bool(said))
        self.style().unpolish(self)
        self.style().polish(self)
