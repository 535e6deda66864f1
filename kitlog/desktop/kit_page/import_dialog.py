"""What a CSV file would bring: items, or every problem by row and column. Nothing is written before Import."""

from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QTreeWidget, QTreeWidgetItem, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.kit_page.details import implausible_text
from kitlog.desktop.parts.button import Button
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.fault import Fault, InputFault
from kitlog.files.csv_problems import TableFault
from kitlog.paint.type_scale import Role
from kitlog.wording.faults import fault_text
from kitlog.wording.figures import mass_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import first_upper, word
from kitlog.workbench.exchange import KitPreview

MOST_SHOWN = 200


class ImportDialog(Dialog):
    """The preview of an import.

    Args:
        desk: the desk; file: a kit.csv.
    """

    def __init__(self, desk: Desk, file: Path, parent: QWidget | None) -> None:
        super().__init__(_("Read a CSV file"), _("Import"), parent, wide=760)
        self._desk, self._file = desk, file
        self._service: Path | None = _beside(file)
        self.preview: KitPreview | None = None
        self.head = Text("", Role.SECTION)
        self.note = Paragraph("")
        self.list = QTreeWidget()
        self.list.setRootIsDecorated(False)
        self.list.setMinimumHeight(look.px(260))
        self.list.setSelectionMode(QTreeWidget.SelectionMode.SingleSelection)
        self.service_act = Button("")
        self.service_act.clicked.connect(self._choose_service)
        row = QHBoxLayout()
        row.addWidget(self.service_act)
        row.addStretch()
        self.whole = Paragraph("", Role.SMALL)
        self.whole.setMinimumHeight(look.px(32))
        self.list.currentItemChanged.connect(lambda row, _before: self.whole.setText(_last(row)))
        for widget in (self.head, self.note, self.list, self.whole):
            self.body.addWidget(widget)
        self.body.addLayout(row)
        self.look()

    def look(self) -> None:
        """Read the files and show what they would bring."""
        self.preview = None
        name = self._service.name if self._service else _("Service file…")
        self.service_act.say(_("Service: {file}").format(file=name) if self._service else name)
        try:
            self.preview = self._desk.bench.preview_kit(*self._read())
        except TableFault as fault:
            self._show_problems(fault)
        except Fault as fault:
            said = fault_text(fault)
            self._say(first_upper(said.what), said.remedy, _("Mend the file first."))
        else:
            self._show_preview(self.preview)

    def accept(self) -> None:
        """Write what was shown."""
        preview = self.preview
        if preview is not None and self.attempt(lambda: self._desk.bench.import_kit(preview)):
            super().accept()

    def _read(self) -> tuple[bytes, str, bytes | None, str]:
        service = None if self._service is None else _bytes(self._service)
        return _bytes(self._file), self._file.name, service, self._service.name if self._service else ""

    def _say(self, head: str, note: str, wanted: str) -> None:
        self.head.setText(head)
        self.note.setText(note)
        self.want(wanted)

    def _show_preview(self, preview: KitPreview) -> None:
        parts = [
            ngettext("{n} item", "{n} items", len(preview.items)).format(n=len(preview.items)),
            ngettext("{n} rule", "{n} rules", len(preview.rules)).format(n=len(preview.rules)) if preview.rules else "",
            ngettext("{n} record", "{n} records", len(preview.records)).format(n=len(preview.records))
            if preview.records
            else "",
        ]
        asked = [implausible_text(item, band, self._desk) for item, band in preview.implausible[:3]]
        twins = [_("Rows {rows} are the same.").format(rows=", ".join(map(str, rows))) for rows in preview.twins[:3]]
        self._say(", ".join(part for part in parts if part), " ".join([*asked, *twins]), "")
        self._columns(_("What would be added"), ((_("Row"), 64), (_("Name"), 280), (_("Kind"), 160), (_("Mass"), 96)))
        rows, library = preview.rows or {}, self._desk.bench.library
        for item in preview.items[:MOST_SHOWN]:
            kind = word(library.facts(item.kind).label)
            self._add((str(rows.get(item.id, "")), item.name, kind, mass_text(item.mass_g)))
        self.want("" if preview.items else _("There is nothing to import."))

    def _show_problems(self, fault: TableFault) -> None:
        said = fault_text(fault)
        self._say(first_upper(said.what), said.remedy, _("Mend the file first."))
        self._columns(
            _("Problems of the file"), ((_("File"), 120), (_("Row"), 56), (_("Column"), 120), (_("Problem"), 360))
        )
        for problem in fault.problems:
            text = fault_text(InputFault(problem.code, **problem.facts))
            self._add(
                (problem.file, str(problem.row or ""), problem.column, f"{first_upper(text.what)}. {text.remedy}")
            )
        if fault.more:
            self._add(("", "", "", ngettext("and {n} more", "and {n} more", fault.more).format(n=fault.more)))

    def _columns(self, name: str, columns: tuple[tuple[str, int], ...]) -> None:
        self.list.clear()
        self.list.setAccessibleName(name)
        self.list.setHeaderLabels([title for title, _wide in columns])
        for number, (_title, wide) in enumerate(columns):
            self.list.setColumnWidth(number, look.px(wide))

    def _add(self, cells: tuple[str, ...]) -> None:
        row = QTreeWidgetItem(list(cells))
        row.setToolTip(len(cells) - 1, cells[-1])
        self.list.addTopLevelItem(row)
        if self.list.currentItem() is None:
            self.list.setCurrentItem(row)

    def _choose_service(self) -> None:
        chosen, _kind = QFileDialog.getOpenFileName(
            self, _("Service file"), str(self._file.parent), _("CSV files (*.csv)")
        )
        if chosen:
            self._service = Path(chosen)
            self.look()


def _last(row: QTreeWidgetItem | None) -> str:
    """The last cell of a row in full: it may be longer than its column."""
    return "" if row is None else row.text(row.columnCount() - 1)


def _beside(file: Path) -> Path | None:
    """A service file that lies beside a kit file under the usual names."""
    names = (f"{file.stem}-service{file.suffix}", "service.csv")
    return next((file.with_name(name) for name in names if file.with_name(name).is_file()), None)


def _bytes(file: Path) -> bytes:
    try:
        return file.read_bytes()
    except OSError as error:
        raise InputFault("file.cannot_read", file=str(file), reason=error.strerror or str(error)) from error
