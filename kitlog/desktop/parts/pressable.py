"""What is pressed and paints itself: the base of buttons, chips, tiles, tabs and steps."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QPushButton, QWidget
from shiboken6 import isValid

from kitlog.desktop.parts.ring import FocusRing

MODIFIED = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier
"""With one of these a key belongs to an action of the window."""


class Pressable(QPushButton):
    """A push button without a look of its own.

    Attributes:
        words: what stands on it.
        ring_radius: corner radius of the focus ring outside; None = the subclass draws its focus itself.
    """

    ring_radius: float | None = 6.0

    def __init__(self, words: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ring: FocusRing | None = None
        self.words = words
        self.say(words)
        self.setFlat(True)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setAutoDefault(False)

    def say(self, words: str) -> None:
        """Show other words; an ampersand in them is a sign, not a key."""
        self.words = words
        self.setText(words.replace("&", "&&"))
        self.setAccessibleName(words)
        self.updateGeometry()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return presses it, as Space does."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and not event.modifiers() & MODIFIED:
            self.click()
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the ring, unless the pointer brought the focus."""
        super().focusInEvent(event)
        if self.ring_radius is not None and event.reason() is not Qt.FocusReason.MouseFocusReason:
            self._ring = FocusRing(self, self.ring_radius)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take the ring away."""
        super().focusOutEvent(event)
        if self._ring is not None and isValid(self._ring):
            self._ring.hide()
            self._ring.deleteLater()
        self._ring = None
