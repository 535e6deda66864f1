"""A title with its caption: beside each other where there is room, else the caption wrapped below."""

from dataclasses import dataclass

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from kitlog.paint.lettering import LEFT, RIGHT, Lettering
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role

MOST_LINES = 3


@dataclass(frozen=True, slots=True)
class Heading:
    """Title and caption, and how they stand.

    Attributes:
        title: in ink.
        caption: muted.
        role: of the title.
        caption_role: of the caption.
        is_caption_right: whether the caption stands at the right end of the row.
    """

    title: str
    caption: str
    role: Role = Role.SECTION
    caption_role: Role = Role.SECOND
    is_caption_right: bool = False

    def height(self, width: float, text: Lettering) -> float:
        """Height in pixels at `width`; nothing for no words."""
        if not (self.title or self.caption):
            return 0.0
        return text.line(self.role) + len(self._below(width, text)) * text.line(self.caption_role)

    def draw(self, painter: QPainter, rect: QRectF, text: Lettering, tokens: Tokens) -> None:
        """Draw from the top of `rect`."""
        row = QRectF(rect.left(), rect.top(), rect.width(), text.line(self.role))
        done = text.draw(painter, row, self.title, self.role, tokens.ink)
        below = self._below(rect.width(), text)
        if not below:
            beside = row.adjusted(done.width() + self._gap(text), text.px(0.5), 0, text.px(0.5))
            align = RIGHT if self.is_caption_right else LEFT
            text.draw(painter, beside, self.caption, self.caption_role, tokens.muted, align)
        line = text.line(self.caption_role)
        for number, words in enumerate(below):
            room = QRectF(rect.left(), row.bottom() + number * line, rect.width(), line)
            text.draw(painter, room, words, self.caption_role, tokens.muted)

    def _gap(self, text: Lettering) -> float:
        return text.px(12) if self.title else 0.0

    def _below(self, width: float, text: Lettering) -> list[str]:
        """Lines of the caption that stand below the title; none if it stands beside."""
        beside = text.width(self.title, self.role) + self._gap(text) + text.width(self.caption, self.caption_role)
        return [] if beside <= width else text.wrap(self.caption, self.caption_role, width, MOST_LINES)
