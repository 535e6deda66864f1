"""The row of masses by zone: one row where it fits, else a grid; the sum stands apart at the right."""

from PySide6.QtCore import QLineF, QRectF
from PySide6.QtGui import QPainter

from kitlog.paint.heading import Heading
from kitlog.paint.lettering import RIGHT, Lettering
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role
from kitlog.paint.weight_picture import ZoneSums

ABOVE, ROW, LEAST_GAP, MOST_GAP = 10.0, 40.0, 16.0, 40.0

Cell = tuple[str, str]


def height(zones: ZoneSums, width: float, text: Lettering) -> float:
    """Height in pixels at `width`."""
    return text.px(ABOVE + 2) + _heading(zones).height(width, text) + text.px(ROW) * len(_rows(zones, width, text))


def paint(painter: QPainter, rect: QRectF, zones: ZoneSums, text: Lettering, tokens: Tokens) -> None:
    """Paint from the top of `rect`."""
    px, heading = text.px, _heading(zones)
    painter.setPen(pen(tokens.hairline, px(1)))
    painter.drawLine(QLineF(rect.left(), rect.top() + px(2), rect.right(), rect.top() + px(2)))
    heading.draw(painter, rect.adjusted(0, px(ABOVE), 0, 0), text, tokens)
    top = rect.top() + px(ABOVE + 2) + heading.height(rect.width(), text)
    for number, cells in enumerate(_rows(zones, rect.width(), text)):
        room = QRectF(rect.left(), top + number * px(ROW), rect.width(), px(ROW))
        _row(painter, room, _placed(zones, cells, room, text), (text, tokens))


def _heading(zones: ZoneSums) -> Heading:
    return Heading(zones.title, zones.caption, Role.CHIP, Role.SMALL, is_caption_right=True)


def _row(
    painter: QPainter, row: QRectF, cells: list[tuple[QRectF, Cell, bool]], style: tuple[Lettering, Tokens]
) -> None:
    text, tokens = style
    for room, (name, figure), is_total in cells:
        below = room.translated(0, text.px(18))
        if is_total:
            text.draw(painter, room, name, Role.CHIP, tokens.ink, RIGHT)
            text.draw(painter, below, figure, Role.GROUP, tokens.ink, RIGHT)
            edge = room.left() - text.px(LEAST_GAP / 2)
            painter.setPen(pen(tokens.strong_line, text.px(1)))
            painter.drawLine(QLineF(edge, row.top(), edge, row.top() + text.px(36)))
        else:
            text.draw(painter, room, name, Role.SMALL, tokens.muted)
            text.draw(painter, below, figure, Role.NAME, tokens.ink)


def _placed(zones: ZoneSums, cells: list[Cell], row: QRectF, text: Lettering) -> list[tuple[QRectF, Cell, bool]]:
    widths = _widths(zones, row.width(), text)
    spare = row.width() - sum(widths[cell] for cell in cells)
    is_one_row = len(cells) == len(zones.cells) + 1
    gap = min(spare / max(1, len(cells) - 1), text.px(MOST_GAP)) if is_one_row else text.px(LEAST_GAP)
    placed, left = [], row.left()
    for cell in cells:
        is_total = cell is zones.total
        left = row.right() - widths[cell] if is_total else left
        placed.append((QRectF(left, row.top(), widths[cell] + 0.5, text.px(18)), cell, is_total))
        left += widths[cell] + gap
    return placed


def _widths(zones: ZoneSums, width: float, text: Lettering) -> dict[Cell, float]:
    """Width of each cell: its own in one row, the widest in a grid."""
    cells = (*zones.cells, zones.total)
    own = {cell: max(text.width(cell[0], Role.CHIP), text.width(cell[1], Role.GROUP)) for cell in cells}
    if sum(own[cell] for cell in cells) + (len(cells) - 1) * text.px(LEAST_GAP) <= width:
        return own
    return dict.fromkeys(cells, min(max(own.values()), width))


def _rows(zones: ZoneSums, width: float, text: Lettering) -> list[list[Cell]]:
    cells, widths = (*zones.cells, zones.total), _widths(zones, width, text)
    rows: list[list[Cell]] = [[]]
    for cell in cells:
        used = sum(widths[done] for done in rows[-1]) + len(rows[-1]) * text.px(LEAST_GAP)
        if rows[-1] and used + widths[cell] > width + 0.5:
            rows.append([])
        rows[-1].append(cell)
    return rows
