"""The page Kit."""

from collections.abc import Callable, Sequence
from typing import ClassVar

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.fold import Fold
from kitlog.desktop.import_page.drop import TableDrop
from kitlog.desktop.kit_page.acts import KitActs
from kitlog.desktop.kit_page.columns import COLUMNS
from kitlog.desktop.kit_page.filter_bar import FilterBar, list_text, totals_text
from kitlog.desktop.kit_page.filtering import Haystack, Show
from kitlog.desktop.kit_page.model import KitModel
from kitlog.desktop.kit_page.row_paint import KitCells
from kitlog.desktop.page import Page
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.empty import EmptyState, NothingFound
from kitlog.desktop.parts.paper_table import PaperTable
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.desktop.parts.two_sides import TwoSides
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _
from kitlog.workbench.reads import KitRow

DETAILS_AFTER_MS = 30
"""Details follow the selection a little later, so that arrow keys run freely."""


class KitPage(Page):
    """Table left, details right."""

    acts_class: ClassVar[type] = KitActs
    concerns: ClassVar[frozenset[str]] = frozenset({"item", "rule", "record", "event", "flight", "outing"})

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.acts: KitActs = KitActs(self)
        self._haystack = self._ahead = Haystack()
        self._sort, self._falling = 0, False
        self._totals: tuple[Sequence[KitRow], tuple[str, str]] | None = None
        self._details: QWidget | None = None
        self.bar = FilterBar(desk.bench.library)
        self.model = KitModel(desk.bench.library)
        right = frozenset(number for number, column in enumerate(COLUMNS) if column.right)
        self.table = PaperTable(_("Kit"), right)
        self.table.setModel(self.model)
        self.table.setItemDelegate(KitCells(self.table, self.model))
        self.nothing = NothingFound(_("No item matches"))
        self.total, self.total_more = Text("", Role.GROUP), Paragraph("", Role.SECOND, "muted")
        self.inventory = Button(_("Inventory…"), Rank.ACT)
        self.drop = TableDrop(self, self.acts.look_at, desk.faulted.emit)
        self.bar.words.setAcceptDrops(False)  # a file dropped there is no word to filter by
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(DETAILS_AFTER_MS)
        self._assemble()
        self._connect()

    def reload(self) -> None:
        """Read the kit anew; filter, order and selection stay."""
        rows = self.desk.bench.kit_rows()
        if rows is not self._haystack.rows:
            self._haystack = self._ahead if self._ahead.rows is rows else Haystack(rows, self.desk.bench.library)
        self.bar.know(self._haystack)
        self._stack.setCurrentIndex(1 if self._haystack.rows else 0)
        self.sift()

    def sift(self) -> None:
        """Show the rows that the filter leaves."""
        kept = self.selected_ids()
        self._haystack.put_in_order((self._sort, self._falling), self._key)
        rows = self._haystack.sift(self.bar.wanted())
        self.model.put(rows)
        self.table.head.sort_sign(self._sort, falling=self._falling)
        self._found.setCurrentIndex(0 if rows else 1)
        self._say_totals()
        self.select_ids(kept)

    def _read_ahead(self) -> Callable[[], object]:
        """What reads the kit on another thread as it is to be shown, so that the window only has to put it up."""
        wanted, order, library = self.bar.wanted(), (self._sort, self._falling), self.desk.bench.library

        def read() -> None:
            haystack = Haystack(self.desk.bench.kit_rows(), library)
            haystack.put_in_order(order, self._key)
            rows = haystack.sift(wanted)
            self._ahead, self._totals = haystack, (rows, totals_text(rows))

        return read

    def _say_totals(self) -> None:
        rows = self.model.rows
        if self._totals is None or self._totals[0] is not rows:
            self._totals = rows, totals_text(rows)
        head, more = self._totals[1]
        listed = list_text(self.desk.assessed_already(), self.desk.bench.now().date())
        self.total.setText(head)
        self.total_more.setText("   ·   ".join(part for part in (listed, more) if part))

    def _assessed(self) -> None:
        """What depends on the outing follows when it has been assessed."""
        self._say_totals()
        self._later.start()

    def selected_ids(self) -> tuple[str, ...]:
        """Ids of the selected items, from the top."""
        return tuple(self.model.rows[number].item.id for number in self.table.selected_rows())

    def select_ids(self, ids: Sequence[str]) -> None:
        """Select items that are shown, else the first one."""
        if not self.model.rows:
            self._selection_changed()
            return
        found = self.model.rows_of(ids)
        self.table.select(found[0] if found else 0)
        self.table.select_also(found[1:])

    def lay_out(self, fold: Fold) -> None:
        """Columns that have no room go into the details; in one column the details replace the table."""
        for number, column in enumerate(COLUMNS):
            self.table.setColumnHidden(number, fold.middle and column.in_details)
        self.inventory.setVisible(not fold.middle)  # the menu has it
        side = look.px(fold.side_px)
        self._left_rows.setContentsMargins(side, look.px(fold.head_px(15)), look.px(12), look.px(8))
        self._sides.lay_out(narrow=fold.narrow, right_px=320 if fold.middle else 376)

    def first(self) -> QWidget:
        """The table, or the first act of the empty state."""
        return self.table if self._haystack.rows else self.empty.buttons[0]

    def selected(self) -> dict[str, int]:
        """How many items are selected."""
        return {"items": len(self.table.selected_rows())}

    def show_this(self, what: str) -> None:
        """Select an item by its id."""
        self.bar.clear()
        self.select_ids((what,))

    def leave(self) -> None:
        """Details are not shown any more."""
        self._later.stop()

    def show_only(self, show: Show) -> None:
        """Turn a filter on or off."""
        self.bar.chips[show].toggle()

    def _key(self, row: KitRow) -> tuple[object, str]:
        return COLUMNS[self._sort].key(row, self.desk.bench.library), row.item.name.casefold()

    def _sort_by(self, column: int) -> None:
        self._falling = not self._falling if column == self._sort else False
        self._sort = column
        self.sift()

    def _selection_changed(self) -> None:
        self._later.start()
        self.desk.selected.emit()

    def _show_details(self) -> None:
        from kitlog.desktop.kit_page.details import Details

        if self.desk.writes:
            self._later.start()
            return
        if self._details is None:
            self._details = Details(self.desk, self.acts.edit_item, self.acts.bulk_edit, self.acts.print_book)
            self._right_rows.addWidget(self._details)
        rows = [self.model.rows[number] for number in self.table.selected_rows()]
        if isinstance(self._details, Details):
            self._details.show_rows(rows)

    def _connect(self) -> None:
        self.bar.changed.connect(self.sift)
        self.bar.words.lines_pasted.connect(self.acts.paste_table)
        self.bar.add.clicked.connect(self.acts.add_item)
        self.inventory.clicked.connect(self.acts.print_inventory)
        self.nothing.cleared.connect(self.bar.clear)
        self.table.head.sectionClicked.connect(self._sort_by)
        self.table.doubleClicked.connect(lambda _index: self.acts.edit_item())
        self.table.selectionModel().selectionChanged.connect(lambda _on, _off: self._selection_changed())
        self._later.timeout.connect(self._show_details)
        self.desk.assessed.connect(self._assessed)
        self.desk.ahead.append(self._read_ahead)

    def _assemble(self) -> None:
        px = look.px
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        self._stack = QStackedWidget()
        whole.addWidget(self._stack)
        self.empty = self._empty()
        self._stack.addWidget(self.empty)
        left, right = QWidget(), QWidget()
        self._sides = TwoSides(left, right, _("Details"), _("Back to the table"))
        self._stack.addWidget(self._sides)
        self._left_rows = QVBoxLayout(left)
        self._left_rows.setSpacing(px(4))
        self._right_rows = QVBoxLayout(right)
        self._right_rows.setContentsMargins(0, 0, 0, 0)
        self._found = QStackedWidget()
        self._found.addWidget(self.table)
        self._found.addWidget(self.nothing)
        self._left_rows.addWidget(self.bar)
        self._left_rows.addWidget(self._found, 1)
        self._left_rows.addLayout(self._foot())
        for number, column in enumerate(COLUMNS):
            self.table.setColumnWidth(number, px(column.wide))
        self.table.head.setSectionResizeMode(0, self.table.head.ResizeMode.Stretch)

    def _foot(self) -> QHBoxLayout:
        foot = QHBoxLayout()
        foot.setContentsMargins(look.px(8), look.px(6), look.px(10), look.px(16))
        foot.setSpacing(look.px(16))
        foot.addWidget(self.total)
        foot.addWidget(self.total_more, 1)
        foot.addWidget(self.inventory)
        foot.addWidget(self._sides.open_act)
        return foot

    def _empty(self) -> EmptyState:
        empty = EmptyState(
            _("No kit yet"),
            _(
                "Start with the wing, the harness and the reserve: three items are enough\n"
                "for a weight check and the first service dates."
            ),
            _("Any table can also be dropped here, or pasted: .xlsx, .ods, CSV."),
        )
        empty.act(_("Add an item"), Rank.MAIN).clicked.connect(self.acts.add_item)
        empty.act(_("Read a table…")).clicked.connect(self.acts.import_table)
        empty.offer_demo(self.desk.open_demo)
        return empty
