"""Buttons: the main one of a page, plain ones, and acts that are text alone."""

from enum import Enum

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.pressable import Pressable
from kitlog.paint.lettering import CENTRE, LEFT
from kitlog.paint.tokens import Tokens, blend
from kitlog.paint.type_scale import Role

UNDER_THE_POINTER, PRESSED = 0.08, 0.14
"""How much ink lies over a button's ground."""


class Rank(Enum):
    """How much a button stands out."""

    MAIN = "main"
    PLAIN = "plain"
    ACT = "act"


class Button(Pressable):
    """A button; `large` is 40 instead of 32 high, `quiet` an act in small muted letters."""

    def __init__(
        self,
        text: str,
        rank: Rank = Rank.PLAIN,
        *,
        large: bool = False,
        quiet: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(text, parent)
        self.rank = rank
        self._high = 40 if large else 24 if rank is Rank.ACT else 32
        self._quiet, self._gives_way = quiet, False
        self._role = Role.SMALL if quiet else Role.NAME
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        if rank is Rank.ACT:
            self.setCursor(Qt.CursorShape.PointingHandCursor)

    def sizeHint(self) -> QSize:
        """As wide as its text and its margins."""
        margins = 0 if self.rank is Rank.ACT else 36 if self._high > 32 else 32
        wide = look.lettering().width(self.words, self._role) + look.px(margins) + 2
        return QSize(max(round(wide), look.px(24)), look.px(self._high))

    def minimumSizeHint(self) -> QSize:
        """No narrower than its text, unless it gives way."""
        hint = self.sizeHint()
        return QSize(look.px(48), hint.height()) if self._gives_way else hint

    def give_way(self) -> "Button":
        """Let the text be cut where the room ends; the tool tip has it whole."""
        self._gives_way = True
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        self.setToolTip(self.words)
        return self

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint ground, outline and text."""
        t, box = look.tokens(), QRectF(self.rect())
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            if self.rank is Rank.ACT:
                self._paint_act(painter, box, t)
            else:
                self._paint_body(painter, box, t)

    def _paint_body(self, painter: QPainter, box: QRectF, t: Tokens) -> None:
        main = self.rank is Rank.MAIN
        ground, text, edge = (t.accent, t.on_accent, None) if main else (t.surface, t.ink, t.outline)
        if not self.isEnabled():
            ground, text, edge = t.sunk, t.muted, t.hairline
        painter.setBrush(self._under(ground, t))
        painter.setPen(QPen(edge, 1) if edge is not None else Qt.PenStyle.NoPen)
        inset = 0.5 if edge is not None else 0.0
        radius = look.px(6)
        painter.drawRoundedRect(box.adjusted(inset, inset, -inset, -inset), radius, radius)
        look.lettering().draw(painter, box, self.words, self._role, text, CENTRE)

    def _paint_act(self, painter: QPainter, box: QRectF, t: Tokens) -> None:
        colour = t.accent if self.isEnabled() and not self._quiet else t.muted
        align = LEFT if self.property("leading") else CENTRE
        room = look.lettering().draw(painter, box, self.words, self._role, colour, align)
        if self.underMouse() and self.isEnabled():
            painter.setPen(QPen(colour, 1))
            foot = room.bottom() - look.px(2)
            painter.drawLine(room.bottomLeft().toPoint().x(), round(foot), round(room.right()), round(foot))

    def _under(self, ground: QColor, t: Tokens) -> QColor:
        if not self.isEnabled():
            return ground
        if self.isDown():
            return blend(t.ink, PRESSED, ground)
        return blend(t.ink, UNDER_THE_POINTER, ground) if self.underMouse() else ground
