"""The import of a table: read away from the window, asked about, looked at, and written in one step."""

from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.background import Background
from kitlog.desktop.desk import MANY, Desk
from kitlog.desktop.import_page.counts_row import CountsRow
from kitlog.desktop.import_page.decisions import Decisions, Key
from kitlog.desktop.import_page.leaves import Calls, Leaf, Leaves
from kitlog.desktop.import_page.look_at_table import Look, Request
from kitlog.desktop.import_page.question_book import Asked, questions_of
from kitlog.desktop.import_page.questions_leaf import Answering
from kitlog.desktop.import_page.sheet_choice import SheetRow, Sheets, sheets_of
from kitlog.desktop.import_page.table_head import TableHead
from kitlog.desktop.import_page.table_input import TableInput
from kitlog.desktop.import_page.waiting import AFTER_S, Waiting
from kitlog.desktop.parts.dialog import Dialog
from kitlog.files.table.kit_items import Existing
from kitlog.files.table.targets import Meaning
from kitlog.kit.item import Item
from kitlog.wording.translate import _, ngettext
from kitlog.workbench.kit_preview import KitPreview

WIDE, HIGH = 980, 700
"""Width and height where there is room, in px of the design."""


@dataclass(frozen=True, slots=True)
class Shown:
    """What was shown last, to come back to: a table, what was decided about it, and what that brought."""

    table: TableInput
    service: Path | None
    decisions: Decisions = field(default_factory=Decisions)
    questions: dict[Key, Asked] = field(default_factory=dict)
    look: Look = field(default_factory=Look)


class ImportDialog(Dialog):
    """The preview of an import.

    Args:
        desk: the desk; table: what was chosen, dropped or pasted.

    Attributes:
        written: the items that were written, once it has been left by Import.
    """

    def __init__(self, desk: Desk, table: TableInput, parent: QWidget | None) -> None:
        super().__init__(_("Read a table"), _("Import"), parent, wide=WIDE)
        self._desk, self.table = desk, table
        self._source = desk.bench.kit_source()
        self.service: Path | None = table.service()
        self.decisions, self.look, self.sheets = Decisions(), Look(), Sheets()
        self.questions: dict[Key, Asked] = {}
        self._key = ""
        self._last = Shown(table, self.service)
        self.written: tuple[Item, ...] = ()
        self.background = Background(self)
        self._build()
        self.background.done.connect(self._shown)
        self.background.going.connect(self._going)
        self.background.broke.connect(self._broke)
        self.waiting.stopped.connect(self._stop)
        self._ask()

    @property
    def preview(self) -> KitPreview | None:
        """What is shown, None while something else was asked for."""
        return None if self.background.busy else self.look.preview

    def read(self) -> None:
        """Read the table from the beginning; decisions stay."""
        self._ask(again=True)

    def changed(self) -> bool:
        """Whether the pilot has decided anything, which leaving would lose."""
        return self.decisions != Decisions()

    def accept(self) -> None:
        """Write what is shown, if nothing is open."""
        preview = self.preview
        if preview is None or not self.main.isEnabled():
            return
        if self._write(preview):
            self.written = preview.items
            self.background.let_go()
            super().accept()

    def _write(self, preview: KitPreview) -> bool:
        """Write; where that takes a while it is said, and the window is alive meanwhile."""
        write = partial(self._desk.bench.import_kit, preview)
        if len(preview.items) < MANY:
            return self.attempt(write)
        self.want(_("The items are being written."))
        try:
            return self.attempt(lambda: self._desk.write_apart(write))
        finally:
            self.want("")

    def discard(self) -> None:
        """Leave it: a reading that goes on is for nobody."""
        self.background.let_go()
        super().discard()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return on a list or an answer never writes: Import has to be pressed itself."""
        if event.key() not in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            super().keyPressEvent(event)

    def sizeHint(self) -> QSize:
        """Large, but never larger than most of the screen."""
        room = self.screen().availableGeometry()
        return QSize(min(look.px(WIDE), round(room.width() * 0.94)), min(look.px(HIGH), round(room.height() * 0.92)))

    def _ask(self, *, again: bool = False) -> None:
        """Look again with what is decided now, at the file too if `again`; until then nothing can be written."""
        self.main.setEnabled(False)
        self.say_wrong("")
        decided = self.decisions
        self.background.ask(
            Request(
                self.table,
                self._source,
                decided.choices(),
                self.service,
                None if again else self.look.grid,
                no_headings=decided.no_headings,
                key=self._key if self.look.grid is None else "",
            )
        )

    def _going(self, seconds: float, share: float) -> None:
        self.waiting.tell(seconds, share, _("Reading {file}").format(file=self.table.name))
        if seconds >= AFTER_S:
            self.want(_("The table is being read."))

    def _stop(self) -> None:
        """Wait no more: back to what was shown and to what was decided then; a first look is left."""
        last = self._last
        if last.look.grid is None and last.look.fault is None:
            self.discard()
            return
        self.background.stop()
        self.table, self.service, self.decisions, self.questions = (
            last.table,
            last.service,
            last.decisions,
            last.questions,
        )
        self._shown(last.look)

    def _broke(self) -> None:
        self.look = Look()
        self.waiting.hide()
        self.want(_("kitlog failed at this table; please report it."))

    def _shown(self, seen: object) -> None:
        """Show what a look brought."""
        if not isinstance(seen, Look):
            return
        is_first = self.look.grid is None or self.leaves.shown > Leaf.NOTES
        self.look = seen
        if not seen.holds:
            self.decisions = Decisions()
        self.sheets = sheets_of(self.sheets, seen, self.table.sheet)
        self.sheet_row.show_sheets(self.sheets)
        self.waiting.hide()
        self.counts.show_preview(seen.preview)
        self.head.show_service(self.service, can_have=seen.preview is not None)
        if seen.preview is not None:
            self._show_preview(seen, seen.preview, is_first=is_first)
        else:
            self._show_fault(seen)
        self._last = Shown(self.table, self.service, self.decisions.copy(), self.questions, replace(seen, holds=True))

    def _show_preview(self, seen: Look, preview: KitPreview, *, is_first: bool) -> None:
        self._key = preview.key
        if seen.unanswered is not None:
            self.questions = questions_of({}, seen.unanswered, Decisions())
        self.questions = questions_of(self.questions, preview, self.decisions)
        self.leaves.show_preview(seen, preview, self.questions, self.decisions)
        if is_first:
            chooses = self._chooses_sheet()
            self.leaves.open_first(preview, headings=self.decisions.no_headings, focus=not chooses)
        self.want(self._wanted(preview))

    def _chooses_sheet(self) -> bool:
        """The keyboard is on the field of the sheets, also while another window is in front."""
        return self.focusWidget() is self.sheet_row.field

    def _wanted(self, preview: KitPreview) -> str:
        """Why it cannot be written yet, empty if it can."""
        n = self.leaves.asked.open_count()
        if n:
            return ngettext("{n} question is open.", "{n} questions are open.", n).format(n=n)
        if preview.refusal() is not None:
            return _("Cells cannot be taken.")
        return "" if preview.items or preview.rules or preview.records else _("There is nothing to import.")

    def _show_fault(self, seen: Look) -> None:
        fault = seen.fault
        if fault is not None and fault.code == "table.no_headings" and seen.grid is not None:
            self.leaves.ask_for_headings(seen.grid, found=False, focus=not self._chooses_sheet())
            self.want(_("Choose the row of the headings, or that there are none."))
        elif fault is not None:
            self.leaves.show_fault(fault)
            self.want(_("The table cannot be read."))

    def _means(self, column: int, meaning: Meaning) -> None:
        self.decisions.mean(column, meaning)
        self._ask()

    def _answered(self, key: Key, answer: str) -> None:
        self.decisions.answers[key] = answer
        self._ask()

    def _existing(self, existing: Existing) -> None:
        self.decisions.existing = existing
        self._ask()

    def _leave_out(self, leave_out: bool) -> None:  # noqa: FBT001  # Qt's signal
        self.decisions.leave_out = leave_out
        self._ask()

    def _begin_at(self, row: int | None) -> None:
        self.decisions.begin_at(row)
        self.questions = {}
        self._ask()

    def _choose_sheet(self, name: str) -> None:
        """Read another sheet; what was decided stays only if its headings turn out to be the same."""
        if name == (self.table.sheet or self.sheets.read):
            return
        self.table = replace(self.table, sheet=name)
        self.decisions = self.decisions.of_columns()
        self.look, self.questions = Look(), {}
        self.counts.show_preview(None)
        self.leaves.open(Leaf.NOTHING)
        self._ask()

    def _other_row(self) -> None:
        if self.look.grid is not None:
            self.leaves.ask_for_headings(self.look.grid, found=True)

    def _without_service(self) -> None:
        self.service = None
        self._ask()

    def _choose_service(self) -> None:
        folder = str(self.table.path.parent) if self.table.path else ""
        chosen, _kind = QFileDialog.getOpenFileName(self, _("Service file"), folder, _("CSV files (*.csv)"))
        if chosen:
            self.service = Path(chosen)
            self._ask()

    def _build(self) -> None:
        answering = Answering(self._answered, self._existing, self._leave_out, self._without_service)
        self.head = TableHead(self.table, self.read, self._choose_service)
        self.sheet_row = SheetRow(self.table.name, self._choose_sheet)
        self.counts, self.waiting = CountsRow(), Waiting()
        self.leaves = Leaves(self._desk.bench.library, Calls(answering, self._means, self._begin_at, self._other_row))
        self._stand_beside_title(self.head)
        for widget in (self.sheet_row, self.counts, self.waiting):
            self.body.addWidget(widget)
        self.body.addWidget(self.leaves, 1)

    def _stand_beside_title(self, widget: QWidget) -> None:
        """Room is scarce on a small screen: the file is named in the line of the title."""
        whole = self.layout()
        item = whole.itemAt(0) if whole is not None else None
        line = item.layout() if item is not None else None
        if isinstance(line, QHBoxLayout):
            line.addWidget(widget, 1)
