"""The words beside the rucksack: its own, then what is carried, in hand, and left behind."""

from dataclasses import dataclass

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role
from kitlog.paint.zone_layout import NOTE_LINE, ZoneLayout
from kitlog.paint.zone_outlines import ON_FOOT
from kitlog.paint.zone_picture import ZoneLine

TITLE_ROW = 20.0


@dataclass(frozen=True, slots=True)
class Row:
    """One row: its room, its words and how they are set."""

    room: QRectF
    words: str
    role: Role


def rows(layout: ZoneLayout) -> list[Row]:
    """All rows from the top; a text stands beside its title where there is room, else below."""
    placed: list[Row] = []
    top = layout.words.top()
    for line in _lines(layout):
        placed += _rows_of(layout, line, top)
        top = placed[-1].room.bottom() + layout.text.px(8)
    return placed


def bottom(layout: ZoneLayout) -> float:
    """Where the words end."""
    return max((row.room.bottom() for row in rows(layout)), default=layout.words.top())


def paint(painter: QPainter, layout: ZoneLayout, tokens: Tokens, *, is_selected: bool) -> None:
    """Draw all rows; the rucksack's name in accent if it is selected, with its state if it has one."""
    own = layout.picture.fill(ON_FOOT)
    for number, row in enumerate(rows(layout)):
        is_own = number == 0 and own is not None
        colour = tokens.muted if row.role is Role.SMALL else tokens.ink
        done = layout.text.draw(
            painter, row.room, row.words, row.role, tokens.accent if is_own and is_selected else colour
        )
        if is_own and own is not None and own.mark in {Mark.LOOK, Mark.STOP}:
            side = layout.text.px(11)
            box = QRectF(done.left() - side - layout.text.px(5), done.center().y() - side / 2, side, side)
            draw_state(painter, box, own.mark, tokens)


def _lines(layout: ZoneLayout) -> list[ZoneLine]:
    own = layout.picture.fill(ON_FOOT)
    first = [] if own is None else [ZoneLine(own.title, own.note, own.detail)]
    return [*first, *layout.picture.lines]


def _rows_of(layout: ZoneLayout, line: ZoneLine, top: float) -> list[Row]:
    px, words = layout.text.px, layout.words
    title = QRectF(words.left(), top, words.width(), px(TITLE_ROW))
    placed = [Row(title, line.title, Role.LABEL)]
    role = Role.LABEL if line.is_figure else Role.SMALL
    beside = title.adjusted(layout.text.width(line.title, Role.LABEL) + px(12), 0, 0, 0)
    fits = layout.text.width(line.text, role) <= beside.width()
    if line.text and fits:
        placed.append(Row(beside, line.text, role))
    below = [part for part in (line.text if not fits else "", line.note) if part]
    for part in below:
        for piece in layout.text.wrap(part, Role.SMALL, words.width(), 2):
            row = QRectF(words.left(), placed[-1].room.bottom(), words.width(), px(NOTE_LINE))
            placed.append(Row(row, piece, Role.SMALL))
    return placed
