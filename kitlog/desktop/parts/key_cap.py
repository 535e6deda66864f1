"""Key caps: the keys of a list, and what they do."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.text import Text
from kitlog.paint.lettering import CENTRE
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role

SIDE = 20


def cap_width(key: str) -> float:
    """Width of a key cap in pixels."""
    return max(look.px(24), look.lettering().width(key, Role.SMALL_NAME) + look.px(12))


def draw_cap(painter: QPainter, box: QRectF, key: str, t: Tokens) -> None:
    """Draw a key cap that fills `box`."""
    painter.setPen(QPen(t.strong_line, 1))
    painter.setBrush(t.surface)
    painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), look.px(4), look.px(4))
    look.lettering().draw(painter, box, key, Role.SMALL_NAME, t.ink, CENTRE)


class KeyCap(QWidget):
    """One key."""

    def __init__(self, key: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._key = key
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(key)

    def sizeHint(self) -> QSize:
        """As wide as its sign."""
        return QSize(round(cap_width(self._key)), look.px(SIDE))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the cap."""
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            draw_cap(painter, QRectF(self.rect()), self._key, look.tokens())


class KeyRow(QWidget):
    """Keys with what they do: ``(("Space",), "tick")``, ``(("↑", "↓"), "move")``."""

    def __init__(self, keys: tuple[tuple[tuple[str, ...], str], ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.px(4))
        for number, (caps, word) in enumerate(keys):
            if number:
                row.addSpacing(look.px(8))
            for cap in caps:
                row.addWidget(KeyCap(cap))
            row.addWidget(Text(word, Role.SMALL, "muted"))
