"""The lines of a printed sheet as blocks: words, headings, boxes to tick, lines to write on."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from kitlog.paint.lettering import LEFT, RIGHT
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.sheet_block import Block, Paint
from kitlog.paint.sheet_setting import Setting
from kitlog.paint.strokes import pen
from kitlog.paint.type_scale import Role

ROW, WRITING, RULE = 22.0, 28.0, 8.0
"""Heights of a line with a box, of a line to write on, and from the letters of a heading to what is under its rule."""


@dataclass(frozen=True, slots=True)
class Style:
    """How words look: role, and whether they are in the second colour."""

    role: Role
    muted: bool = False

    def colour(self, setting: Setting) -> QColor:
        """The colour of the letters."""
        return setting.tokens.muted if self.muted else setting.tokens.ink


NAME, BODY, STRONG = Style(Role.NAME), Style(Role.BODY), Style(Role.GROUP)
SMALL, QUIET, SAID = Style(Role.SMALL), Style(Role.SMALL, muted=True), Style(Role.CHIP)


def kept(blocks: Iterable[Block]) -> tuple[Block, ...]:
    """The same blocks, held together."""
    held = list(blocks)
    return tuple(replace(block, keep=number < len(held) - 1) for number, block in enumerate(held))


def over(block: Block, paint: Paint) -> Block:
    """A block with something painted before it in the same place."""
    return replace(block, paint=all_of((paint, block.paint)))


def beside(left: tuple[Block, ...], right: tuple[Block, ...], offset: float) -> Block:
    """Two stacks of blocks side by side, the right one `offset` from the left edge."""
    one, other = stack(left), stack(right)

    def paint(painter: QPainter, x: float, y: float) -> None:
        one.paint(painter, x, y)
        other.paint(painter, x + offset, y)

    return Block(max(one.height, other.height), paint)


def stack(blocks: Iterable[Block]) -> Block:
    """Blocks under each other as one."""
    stacked = tuple(blocks)

    def paint(painter: QPainter, x: float, y: float) -> None:
        for block in stacked:
            block.paint(painter, x, y)
            y += block.height

    return Block(sum(block.height for block in stacked), paint)


def all_of(paints: Iterable[Paint]) -> Paint:
    """Several things painted in the same place, one after the other."""
    listed = tuple(paints)

    def paint(painter: QPainter, x: float, y: float) -> None:
        for one in listed:
            one(painter, x, y)

    return paint


def lower(paint: Paint, down: float) -> Paint:
    """The same, further down."""
    return lambda painter, x, y: paint(painter, x, y + down)


def space(height: float) -> Block:
    """Nothing, `height` high."""
    return Block(height, lambda _painter, _x, _y: None)


def write(setting: Setting, words: str, style: Style, left: float, height: float) -> Paint:
    """Paints one line of words, `left` from the edge and in the middle of `height`."""

    def paint(painter: QPainter, x: float, y: float) -> None:
        room = QRectF(x + left, y, setting.text.width(words, style.role) + setting.px(2), height)
        setting.text.draw(painter, room, words, style.role, style.colour(setting), LEFT)

    return paint


def write_right(setting: Setting, words: str, style: Style, right: float, height: float) -> Paint:
    """The same, ending `right` from the left edge."""

    def paint(painter: QPainter, x: float, y: float) -> None:
        width = setting.text.width(words, style.role)
        room = QRectF(x + right - width - setting.px(2), y, width + setting.px(2), height)
        setting.text.draw(painter, room, words, style.role, style.colour(setting), RIGHT)

    return paint


def lines(setting: Setting, words: str, style: Style, width: float, left: float = 0.0) -> list[Block]:
    """Words broken into lines, `left` from the edge; none for no words."""
    high = setting.text.line(style.role)
    broken = setting.broken(words, style.role, width - left) if words else []
    return [Block(high, write(setting, line, style, left, high)) for line in broken]


def heading(setting: Setting, words: tuple[str, str], width: float, *, small: bool = False) -> tuple[Block, ...]:
    """A heading with a rule under it, its remark at the right or, where there is no room, under it."""
    (title, remark), style = words, STRONG if small else Style(Role.SECTION)
    blocks = lines(setting, title, style, width)
    room = width - setting.text.width(title, style.role) - setting.px(16)
    if len(blocks) == 1 and remark and setting.text.width(remark, QUIET.role) <= room:
        right = write_right(setting, remark, QUIET, width, blocks[0].height + setting.px(2))
        blocks = [over(Block(blocks[0].height, right), blocks[0].paint)]
    else:
        blocks += lines(setting, remark, QUIET, width)
    rule = Block(setting.px(RULE), _rule(setting, width, setting.px(1.0 if small else 1.6), setting.px(3)))
    return tuple(replace(block, keep=True) for block in (*blocks, rule))


def _rule(setting: Setting, width: float, thick: float, down: float) -> Paint:
    def paint(painter: QPainter, x: float, y: float) -> None:
        painter.setPen(pen(setting.tokens.ink, thick))
        painter.drawLine(QLineF(x, y + down, x + width, y + down))

    return paint


def hairline(setting: Setting, left: float, width: float) -> Paint:
    """Paints a thin line under what was painted just above."""

    def paint(painter: QPainter, x: float, y: float) -> None:
        painter.setPen(pen(setting.tokens.outline, setting.px(0.6)))
        painter.drawLine(QLineF(x + left, y + setting.px(2), x + width, y + setting.px(2)))

    return paint


def shape(setting: Setting, state: str, left: float, height: float) -> Paint:
    """Paints the shape of a state."""

    def paint(painter: QPainter, x: float, y: float) -> None:
        side = setting.px(11)
        draw_state(painter, QRectF(x + left, y + (height - side) / 2, side, side), Mark(state), setting.tokens)

    return paint


def box(setting: Setting, height: float) -> Paint:
    """Paints an empty box to tick."""

    def paint(painter: QPainter, x: float, y: float) -> None:
        painter.setPen(pen(setting.tokens.ink, setting.px(1.1)))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        side, round_px = setting.box, setting.px(2)
        painter.drawRoundedRect(QRectF(x, y + (height - side) / 2, side, side), round_px, round_px)

    return paint


def writing(setting: Setting, start: float, end: float, height: float) -> Paint:
    """Paints a line to write on at the foot of `height`, from `start` to `end` beside the left edge."""

    def paint(painter: QPainter, x: float, y: float) -> None:
        painter.setPen(pen(setting.tokens.ink, setting.px(0.8)))
        foot = y + height - setting.px(4)
        painter.drawLine(QLineF(x + start, foot, x + end, foot))

    return paint


def picture(height: float, setting: Setting, width: float, paint: Callable[[QPainter, QRectF], None]) -> Block:
    """A picture over the whole width; its painter carries the font of the body."""

    def put(painter: QPainter, x: float, y: float) -> None:
        painter.save()
        painter.setFont(setting.base)
        paint(painter, QRectF(x, y, width, height))
        painter.restore()

    return Block(height, put)
