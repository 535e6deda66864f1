"""The leaf of the headings: each with what it stands for, changeable."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QFrame, QGridLayout, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.import_page.column_row import NOT_READ, ColumnRow, Means
from kitlog.desktop.import_page.field_choice import FieldList
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.line import Hairline
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.files.table.table_column import TableColumn
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _, ngettext

AT_ONCE = 4
"""Headings that are put up between two events, so that a wide table does not hold the window."""
MOST = 300
"""Headings that are put up at all."""


def paper_scroll(inside: QWidget) -> QScrollArea:
    """A leaf that scrolls."""
    area = QScrollArea()
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setWidget(inside)
    return area


class HeadingsLeaf(QWidget):
    """All headings of the table.

    Args:
        means: is called with a column and what it shall stand for.
        other_row: is called if another row holds the headings.
    """

    def __init__(self, means: Means, other_row: Callable[[], object], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._means = means
        self._fields = FieldList(self)
        self.rows: list[ColumnRow] = []
        self._waiting: list[TableColumn] = []
        self._inside = QWidget()
        self._grid = QGridLayout(self._inside)
        self._grid.setContentsMargins(0, 0, look.px(12), 0)
        self._grid.setHorizontalSpacing(look.px(16))
        self._grid.setVerticalSpacing(look.px(5))
        self._grid.setColumnStretch(1, 1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addLayout(self._head(other_row))
        whole.addWidget(paper_scroll(self._inside), 1)
        self._timer = QTimer(self)
        self._timer.setInterval(0)
        self._timer.timeout.connect(self._add_some)

    def show_columns(self, columns: Sequence[TableColumn]) -> None:
        """Show these headings; where they are the same ones, only what changed."""
        shown = [row.column for row in self.rows] + self._waiting
        if [(one.index, one.heading) for one in shown] == [(one.index, one.heading) for one in columns[:MOST]]:
            for row, column in zip(self.rows, columns, strict=False):
                row.show_column(column)
            self._waiting = list(columns[len(self.rows) : MOST])
        else:
            self._begin(columns)
        self._add_some()

    def row_of(self, index: int) -> ColumnRow:
        """The row of a column."""
        return next(row for row in self.rows if row.column.index == index)

    def _head(self, other_row: Callable[[], object]) -> QHBoxLayout:
        head = QHBoxLayout()
        head.addWidget(
            Paragraph(
                _("What each heading stands for. Type a part of a word: Return takes the first field of the list."),
                Role.SECOND,
            ),
            1,
        )
        self.other = Button(_("Another row holds the headings"), Rank.ACT)
        self.other.clicked.connect(lambda _on=False: other_row())
        head.addWidget(self.other)
        return head

    def _begin(self, columns: Sequence[TableColumn]) -> None:
        clear(self._grid)
        self.rows, self._waiting = [], list(columns[:MOST])
        titles = (_("Heading"), _("First cells"), _("Stands for"), _("Unit"), _("Found by"))
        for place, title in enumerate(titles):
            self._grid.addWidget(Text(title, Role.SMALL, "muted"), 0, place)
        for place, wide in enumerate((116, 88, 168, 96, 148)):
            self._grid.setColumnMinimumWidth(place, look.px(wide))

    def _add_some(self) -> None:
        some, self._waiting = self._waiting[:AT_ONCE], self._waiting[AT_ONCE:]
        for column in some:
            made, at = ColumnRow(column, self._fields, self._means), 2 * len(self.rows) + 1
            self._grid.addWidget(Hairline(), at, 0, 1, 5)
            made.place(self._grid, at + 1)
            self.rows.append(made)
        self._grid.setRowStretch(2 * len(self.rows) + 1, 0)
        self._grid.setRowStretch(2 * MOST + 4, 1)
        if self._waiting:
            self._timer.start()
        else:
            self._timer.stop()


def headings_text(columns: Sequence[TableColumn]) -> tuple[str, bool]:
    """How many headings are read, and whether some are not understood."""
    lost = sum(column.how in NOT_READ for column in columns)
    if lost:
        return ngettext("{n} not understood", "{n} not understood", lost).format(n=lost), True
    n = len(columns)
    return ngettext("{n} heading read", "all {n} headings read", n).format(n=n), False
