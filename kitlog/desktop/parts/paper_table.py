"""Tables on the sheet: hairlines between rows, the current row in a ring, heads that say what they sort by."""

from collections.abc import Sequence
from itertools import groupby

from PySide6.QtCore import QItemSelection, QItemSelectionModel, QItemSelectionRange, QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFocusEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QAbstractItemView, QFrame, QHeaderView, QTableView, QWidget

from kitlog.desktop import look
from kitlog.paint.lettering import LEFT, RIGHT
from kitlog.paint.type_scale import Role

MARGIN = 8
"""Room at both ends of a row, in px of the design."""


class PaperHeader(QHeaderView):
    """The heads: muted, the sorted one in ink with a sign for the direction."""

    def __init__(self, right: frozenset[int], parent: QWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self._right = right
        self.setSectionsClickable(True)
        self.setHighlightSections(False)
        self.setSortIndicatorShown(False)
        self.setFixedHeight(look.px(28))
        self.setMinimumSectionSize(look.px(24))
        self.sorted_by, self.falling = -1, False

    def sort_sign(self, column: int, *, falling: bool) -> None:
        """Say what the rows are sorted by."""
        self.sorted_by, self.falling = column, falling
        self.viewport().update()

    def paintSection(self, painter: QPainter, rect: QRect, section: int) -> None:
        """Paint one head."""
        t = look.tokens()
        is_sorted = section == self.sorted_by
        word = str(self.model().headerData(section, Qt.Orientation.Horizontal) or "")
        role, colour = (Role.CHIP, t.ink) if is_sorted else (Role.SMALL, t.muted)
        align = RIGHT if section in self._right else LEFT
        box = cell_box(rect, right=align is RIGHT)
        painter.save()
        room = look.lettering().draw(painter, box, word, role, colour, align)
        if is_sorted:
            _draw_direction(painter, self, room, right=align is RIGHT)
        painter.restore()


def _draw_direction(painter: QPainter, header: PaperHeader, room: QRectF, *, right: bool) -> None:
    px, down = look.px, 1 if header.falling else -1
    x = room.left() - px(8) if right else room.right() + px(9)
    y = room.center().y()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(look.tokens().ink, 1.5))
    points = [QPointF(x - px(4), y - down * px(2)), QPointF(x, y + down * px(2)), QPointF(x + px(4), y - down * px(2))]
    painter.drawPolyline(QPolygonF(points))


class PaperTable(QTableView):
    """A table of whole rows.

    Args:
        name: its name for screen readers.
        right: numbers of the columns whose heads stand at the right.
        high: height of a row in px of the design.
    """

    def __init__(
        self, name: str, right: frozenset[int] = frozenset(), high: int = 32, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setShowGrid(False)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setCornerButtonEnabled(False)
        self.head = PaperHeader(right, self)
        self.setHorizontalHeader(self.head)
        side = self.verticalHeader()
        side.hide()
        side.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        side.setMinimumSectionSize(look.px(24))
        side.setDefaultSectionSize(look.px(high))
        self.setMouseTracking(True)

    def selected_rows(self) -> list[int]:
        """Numbers of the selected rows, from the top."""
        selection = self.selectionModel().selection()  # its own list of rows takes 0.15 s for 10 000
        runs = [selection.at(number) for number in range(selection.count())]
        return sorted({row for run in runs for row in range(run.top(), run.bottom() + 1)})

    def select(self, row: int) -> None:
        """Make a row the current one and bring it into view, whatever keys are held down."""
        index = self.model().index(row, 0)
        flag = QItemSelectionModel.SelectionFlag
        self.selectionModel().setCurrentIndex(index, flag.ClearAndSelect | flag.Rows)
        self.scrollTo(index)

    def select_also(self, rows: Sequence[int]) -> None:
        """Select rows besides those that are, in one step: thousands told one by one would stop the window."""
        also, model = QItemSelection(), self.model()
        for _run, group in groupby(enumerate(sorted(rows)), lambda pair: pair[1] - pair[0]):
            run = [row for _number, row in group]
            also.append(QItemSelectionRange(model.index(run[0], 0), model.index(run[-1], 0)))
        flag = QItemSelectionModel.SelectionFlag
        self.selectionModel().select(also, flag.Select | flag.Rows)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the rows, then the ring of the current one over them."""
        super().paintEvent(event)
        t = look.tokens()
        with QPainter(self.viewport()) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            rows = self.selected_rows()
            for row in self._in_view(rows):
                box = self.row_rect(row)
                current = row == self.currentIndex().row()
                if current or len(rows) <= 1:
                    pen = QPen(t.accent, 2 if self.hasFocus() else 1.5)
                    painter.setPen(pen)
                    painter.setBrush(Qt.BrushStyle.NoBrush)
                    painter.drawRoundedRect(box.adjusted(1, 0, -1, -1), look.px(6), look.px(6))

    def row_rect(self, row: int) -> QRectF:
        """Where a row lies in the viewport."""
        top, high = self.rowViewportPosition(row), self.rowHeight(row)
        return QRectF(0, top, self.viewport().width(), high)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The first row becomes current when nothing was."""
        super().focusInEvent(event)
        if not self.currentIndex().isValid() and self.model().rowCount():
            self.select(0)
        self.viewport().update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The ring gets thinner."""
        super().focusOutEvent(event)
        self.viewport().update()

    def minimumSizeHint(self) -> QSize:
        """Head and two rows."""
        return QSize(look.px(240), look.px(96))

    def _in_view(self, rows: Sequence[int]) -> list[int]:
        high = self.viewport().height()
        return [
            row
            for row in rows
            if self.rowViewportPosition(row) < high and self.rowViewportPosition(row) > -self.rowHeight(row)
        ]


def cell_box(rect: QRect, *, right: bool = False) -> QRectF:
    """The room of the words of a cell; the first one stands further in, and so does the end of a figure."""
    left = look.px(MARGIN if rect.left() <= 0 else MARGIN / 2)
    return QRectF(rect).adjusted(left, 0, -look.px(MARGIN if right else MARGIN / 2), 0)


def draw_row_ground(painter: QPainter, rect: QRect, *, selected: bool, over: bool) -> None:
    """Draw the ground of a cell and the hairline under it."""
    t = look.tokens()
    if selected:
        painter.fillRect(rect, t.selection)
    elif over:
        painter.fillRect(rect, t.sunk)
    painter.fillRect(rect.left(), rect.bottom(), rect.width(), 1, t.hairline)
