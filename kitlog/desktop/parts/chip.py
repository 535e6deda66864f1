"""State chips: word and shape on a tint; with or without something behind them."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.pressable import Pressable
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role

HIGH, SHAPE, PAD, GAP = 24, 12, 8, 6


def chip_width(word: str) -> float:
    """Width of a chip in pixels."""
    return look.lettering().width(word, Role.CHIP) + look.px(2 * PAD + SHAPE + GAP + 2)


def draw_chip(painter: QPainter, box: QRectF, word: str, mark: Mark, t: Tokens) -> None:
    """Draw a chip at the left of `box`, in the middle of its height."""
    px = look.px
    chip = QRectF(box.left(), box.center().y() - px(HIGH) / 2, min(chip_width(word), box.width()), px(HIGH))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    outlined = mark in {Mark.NOT_KNOWN, Mark.NONE}
    painter.setPen(QPen(t.outline, 1) if outlined else Qt.PenStyle.NoPen)
    painter.setBrush(t.chip(mark))
    painter.drawRoundedRect(chip.adjusted(0.5, 0.5, -0.5, -0.5), px(HIGH) / 2, px(HIGH) / 2)
    draw_mark_and_word(painter, chip.adjusted(px(PAD), 0, -px(4), 0), word, mark, t)


def draw_mark_and_word(painter: QPainter, box: QRectF, word: str, mark: Mark, t: Tokens) -> QRectF:
    """Draw shape and word without a ground, from the left of `box`; returns the room of the word."""
    px = look.px
    draw_state(painter, QRectF(box.left(), box.center().y() - px(SHAPE) / 2, px(SHAPE), px(SHAPE)), mark, t)
    return look.lettering().draw(painter, box.adjusted(px(SHAPE + GAP), 0, 0, 0), word, Role.CHIP, t.state(mark))


class StateMark(QWidget):
    """Shape and word of a state, on a tint (`on_tint`) or bare; nothing to press."""

    def __init__(
        self, word: str = "", mark: Mark = Mark.NONE, *, on_tint: bool = True, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._word, self._mark, self._on_tint = word, mark, on_tint
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(word)

    def show_state(self, word: str, mark: Mark) -> None:
        """Show another state."""
        self._word, self._mark = word, mark
        self.setAccessibleName(word)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """As wide as shape and word."""
        if not self._word:
            return QSize(0, look.px(HIGH))
        bare = look.lettering().width(self._word, Role.CHIP) + look.px(SHAPE + GAP + 2)
        return QSize(round(chip_width(self._word) if self._on_tint else bare) + 1, look.px(HIGH))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the state."""
        if not self._word:
            return
        draw = draw_chip if self._on_tint else draw_mark_and_word
        with QPainter(self) as painter:
            draw(painter, QRectF(self.rect()), self._word, self._mark, look.tokens())


class ChipButton(Pressable):
    """A chip that opens something; its word is underlined under the pointer."""

    ring_radius = 12.0

    def __init__(self, word: str, mark: Mark, parent: QWidget | None = None) -> None:
        super().__init__(word, parent)
        self.mark = mark
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        """As wide as shape and word."""
        return QSize(round(chip_width(self.words)) + 1, look.px(HIGH))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the chip."""
        t, px = look.tokens(), look.px
        with QPainter(self) as painter:
            draw_chip(painter, QRectF(self.rect()), self.words, self.mark, t)
            if self.underMouse():
                painter.setPen(QPen(t.state(self.mark), 1))
                left = px(PAD + SHAPE + GAP)
                wide = round(look.lettering().width(self.words, Role.CHIP))
                painter.drawLine(left, px(18), left + wide, px(18))


class FilterChip(Pressable):
    """A filter that is on or off: word and number in brackets."""

    ring_radius = 12.0

    def __init__(self, word: str, parent: QWidget | None = None) -> None:
        super().__init__(word, parent)
        self._count = 0
        self.setCheckable(True)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def count(self, number: int) -> None:
        """Show how many it would leave; hidden at none, unless it is on."""
        self._count = number
        self.setVisible(number > 0 or self.isChecked())
        self.setAccessibleName(f"{self.words} ({number})")
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """As wide as word and number."""
        words = look.lettering()
        wide = words.width(self.words, Role.SMALL_NAME) + words.width(self._number, Role.SMALL)
        return QSize(round(wide) + look.px(28), look.px(HIGH))

    @property
    def _number(self) -> str:
        return f"({self._count})"

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint outline, word and number."""
        t, px, box = look.tokens(), look.px, QRectF(self.rect())
        on = self.isChecked()
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            edge = t.accent if on else t.ink if self.underMouse() else t.outline
            painter.setPen(QPen(edge, 1))
            painter.setBrush(t.selection if on else t.surface)
            painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), box.height() / 2, box.height() / 2)
            row = box.adjusted(px(11), 0, -px(4), 0)
            room = look.lettering().draw(painter, row, self.words, Role.SMALL_NAME, t.accent if on else t.ink)
            row.setLeft(room.right() + px(5))
            look.lettering().draw(painter, row, self._number, Role.SMALL, t.muted)
