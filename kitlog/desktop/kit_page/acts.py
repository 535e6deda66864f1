"""What can be done on the page Kit: the handlers of its actions."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog

from kitlog.desktop.kit_page.filtering import Show
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.desktop.import_page.table_input import TableInput
    from kitlog.desktop.kit_page.page import KitPage


class KitActs:
    """The acts of a page Kit."""

    def __init__(self, page: "KitPage") -> None:
        self._page = page
        self._desk = page.desk
        self._bench = page.desk.bench

    def add_item(self) -> None:
        """Add an item."""
        from kitlog.desktop.kit_page.item_editor import ItemEditor

        self._edited(ItemEditor(self._desk, None, self._page))

    def edit_item(self) -> None:
        """Edit the selected item; several are edited together."""
        from kitlog.desktop.kit_page.item_editor import ItemEditor

        items = self._items()
        if len(items) == 1:
            self._edited(ItemEditor(self._desk, items[0], self._page))
        elif items:
            self.bulk_edit()

    def duplicate_item(self) -> None:
        """A second item like the selected one, selected in its place."""
        ids, made = self._page.selected_ids(), []
        if len(ids) == 1 and self._desk.perform(lambda: made.append(self._bench.duplicate_item(ids[0]))):
            self._page.select_ids(made)

    def bulk_edit(self) -> None:
        """State and zones of all selected items at once."""
        from kitlog.desktop.kit_page.bulk_editor import BulkEditor

        items = self._items()
        if items:
            BulkEditor(self._desk, items, self._page).exec()

    def retire_items(self) -> None:
        """Retire the selected items; their history stays."""
        ids = self._page.selected_ids()
        self._desk.perform(lambda: self._bench.set_state(ids, ItemState.RETIRED))

    def delete_items(self) -> None:
        """Delete the selected items; undo brings them back, and what has a history is refused in words."""
        ids = self._page.selected_ids()
        self._desk.perform(lambda: self._bench.delete_items(ids))

    def show_guessed(self) -> None:
        """Show only guessed masses, or all again."""
        self._page.show_only(Show.GUESSED)

    def show_due(self) -> None:
        """Show only what is due soon or overdue, or all again."""
        self._page.show_only(Show.DUE)

    def show_no_record(self) -> None:
        """Show only what has no record, or all again."""
        self._page.show_only(Show.NO_RECORD)

    def clear_filter(self) -> None:
        """Show everything again."""
        self._page.bar.clear()

    def find(self) -> None:
        """Go to the filter."""
        self._page.bar.words.setFocus()
        self._page.bar.words.selectAll()

    def select_all(self) -> None:
        """Select every row that is shown."""
        self._page.table.selectAll()
        self._page.table.setFocus()

    def import_table(self) -> None:
        """Read items from a table; nothing is written before it was looked at."""
        from kitlog.desktop.import_page.table_input import of_file

        kinds = ";;".join((_("Tables (*.csv *.txt *.tsv *.xlsx *.ods)"), _("All files (*)")))
        chosen, _kind = QFileDialog.getOpenFileName(self._page, _("Read a table"), "", kinds)
        if chosen:
            self.look_at(of_file(Path(chosen)))

    def paste_table(self) -> None:
        """Read items from the table in the clipboard."""
        from kitlog.desktop.import_page.table_input import pasted

        self._desk.perform(lambda: self.look_at(pasted(QGuiApplication.clipboard().mimeData())))

    def look_at(self, table: "TableInput") -> None:
        """Show what a table would bring."""
        from kitlog.desktop.import_page.ready import make_ready

        make_ready()
        from kitlog.desktop.import_page.dialog import ImportDialog

        dialog = ImportDialog(self._desk, table, self._page)
        if dialog.exec():
            self._page.bar.clear()
            self._page.select_ids([item.id for item in dialog.written])
            self._page.table.setFocus()

    def export_csv(self) -> None:
        """Write the kit to a CSV file."""
        proposed = str(self._bench.path.with_name("kit.csv"))
        chosen, _kind = QFileDialog.getSaveFileName(self._page, _("Export items"), proposed, _("CSV files (*.csv)"))
        if chosen:
            from kitlog.desktop.kit_page.export import export_kit

            if self._desk.perform(lambda: export_kit(self._bench, Path(chosen))):
                self._tell_what_is_left(Path(chosen))

    def _tell_what_is_left(self, to: Path) -> None:
        from kitlog.desktop.kit_page.export_report import ExportReport

        report = ExportReport(self._bench, to, self._page)
        if report.lines:
            report.exec()

    def print_inventory(self) -> None:
        """Serial numbers, values and photos for an insurance claim: of all, or of what is selected."""
        from kitlog.desktop.book_dialog import InventoryDialog

        InventoryDialog(self._desk, self._items(), self._page).exec()

    def print_book(self) -> None:
        """The service book of the selected item."""
        from kitlog.desktop.book_dialog import BookDialog

        ids = self._page.selected_ids()
        BookDialog(self._desk, ids[0] if ids else "", self._page).exec()

    def _items(self) -> list[Item]:
        found = (self._bench.item(item_id) for item_id in self._page.selected_ids())
        return [item for item in found if item is not None]

    def _edited(self, editor: "object") -> None:
        from kitlog.desktop.kit_page.item_editor import ItemEditor

        if isinstance(editor, ItemEditor) and editor.exec():
            self._page.select_ids((editor.item_id,))
            self._page.table.setFocus()
