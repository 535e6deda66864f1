"""Which row holds the headings: the first rows of the table, one to be chosen."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.import_page.word_rows import WordRows, word_table
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.files.csv_rows import column_letters
from kitlog.files.table.cells import Grid, text_of
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

ROWS, COLUMNS = 30, 9


class HeadingChoice(QWidget):
    """The first rows of the grid.

    Args:
        choose: is called with the index of a row in the grid, None where no row holds headings.
        back: leads back to the headings that were found.
    """

    def __init__(
        self, choose: Callable[[int | None], object], back: Callable[[], object], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._choose = choose
        self.model = WordRows(())
        self.title = Text(_("Which row holds the headings?"), Role.SECTION)
        self.said = Paragraph("", Role.SECOND)
        self.table = word_table(_("The first rows of the table"), self.model, ())
        self.take = Button(_("This row holds the headings"))
        self.none = Button(_("There are no headings"))
        self.none.clicked.connect(lambda _on=False: choose(None))
        self.back = Button(_("Back"), Rank.ACT)
        self.take.clicked.connect(self._taken)
        self.table.doubleClicked.connect(lambda _index: self._taken())
        self.back.clicked.connect(lambda _on=False: back())
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        for widget in (self.title, self.said):
            rows.addWidget(widget)
        rows.addWidget(self.table, 1)
        foot = QHBoxLayout()
        foot.addWidget(self.take)
        foot.addSpacing(look.px(8))
        foot.addWidget(self.none)
        foot.addSpacing(look.px(12))
        foot.addWidget(self.back)
        foot.addStretch()
        rows.addLayout(foot)

    def show_grid(self, grid: Grid, *, found: bool) -> None:
        """Show the first rows; where none was `found` there is no way back."""
        first = grid.rows[:ROWS]
        wide = min(COLUMNS, max((len(row.cells) for row in first), default=1))
        heads = [_("Row"), *(column_letters(number) for number in range(1, wide + 1))]
        self.model.put([(str(row.spot.row), *(text_of(cell) for cell in row.cells[:wide])) for row in first], heads)
        self.table.setColumnWidth(0, look.px(56))
        for place in range(1, wide):
            self.table.setColumnWidth(place, look.px(116))
        self.table.select(0)
        self.back.setVisible(found)
        self.said.setText(
            _("Rows above it are left out; the answers so far are asked again.")
            if found
            else _(
                "No row of headings was found. Choose the one that names the columns, or say below that there is none."
            )
        )

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return takes the row."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and self.table.hasFocus():
            self._taken()
        else:
            super().keyPressEvent(event)

    def _taken(self) -> None:
        row = self.table.currentIndex().row()
        if row >= 0:
            self._choose(row)
