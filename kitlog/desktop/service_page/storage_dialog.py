"""What lies unused: each thing with its charge on hand, the charge to which it is brought, why, and by what source."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import NumberField, TickField
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.packing.storage_due import StorageLine, at_home
from kitlog.paint.type_scale import Role
from kitlog.wording.charge_lines import storage_act_text, storage_why_text
from kitlog.wording.translate import _
from kitlog.wording.words import STANCE, first_upper


class StorageRow(QWidget):
    """One thing; what is typed is a reading of now.

    Attributes:
        typed: a charge in per cent was typed, the same as before too; None: not known. unread: it is none, a sentence.
    """

    typed = Signal(object)
    unread = Signal(str)

    def __init__(self, line: StorageLine) -> None:
        super().__init__()
        px = look.px
        self.act, self.why = Text("", Role.NAME), Paragraph("", Role.SMALL)
        self.on_hand = NumberField("%", most=100)
        self.on_hand.setFixedWidth(px(112))
        self.on_hand.setKeyboardTracking(False)
        self.on_hand.setAccessibleName(_("Charge on hand of {item}").format(item=line.item.name))
        self._touched, self._shown_pct = False, 0.0
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, px(4), 0, px(4))
        rows.setSpacing(px(2))
        row = QHBoxLayout()
        row.setSpacing(px(12))
        row.addWidget(Text(line.item.name, Role.BODY), 1)
        row.addWidget(self.act)
        row.addWidget(self.on_hand)
        rows.addLayout(row)
        rows.addWidget(self.why)
        self.on_hand.lineEdit().textEdited.connect(self._touch)
        self.on_hand.editingFinished.connect(self._entered)

    def show_line(self, line: StorageLine, why: str) -> None:
        """Show what to do with it now."""
        self.act.say(first_upper(storage_act_text(line)), "muted" if line.act == "leave" else "ink")
        self.why.setText(first_upper(why))
        self.on_hand.setAccessibleDescription(f"{self.act.text()}. {self.why.text()}")
        self.on_hand.put(line.on_hand.seen_pct)
        self._shown_pct, self._touched = self.on_hand.value(), False

    def _touch(self) -> None:
        self._touched = True

    def _entered(self) -> None:
        if self.on_hand.is_wrong():
            self.unread.emit(self.on_hand.wrong_text())
            return
        if self._touched or self.on_hand.value() != self._shown_pct:
            self._touched, self._shown_pct = False, self.on_hand.value()
            self.typed.emit(self.on_hand.number())


class StorageDialog(Dialog):
    """All that lies unused, or after the season all that has a cell; each charge typed is one step to undo."""

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(_("Storage charge"), "", parent, wide=560)
        self._desk = desk
        self.season_over = TickField(_("The season is over: all of it will lie"))
        self.rows: dict[str, StorageRow] = {}
        self._rows, self._sources = QVBoxLayout(), Paragraph("", Role.SMALL)
        self._rows.setSpacing(look.px(4))
        self.body.addWidget(self.season_over)
        self.body.addLayout(self._rows)
        self.body.addWidget(self._sources)
        self.body.addWidget(Paragraph(_(STANCE), Role.SMALL))
        self.season_over.toggled.connect(lambda _on: self._lay_out())
        # Return ends a figure here; it does not leave
        self.main.setDefault(False)
        self.main.setAutoDefault(False)
        self._lay_out()

    def lines(self) -> tuple[StorageLine, ...]:
        """What is shown: without what goes along on the outing worked on, unless the season is over."""
        season_over = self.season_over.isChecked()
        lines = self._desk.bench.storage_due(season_over=season_over)
        return lines if season_over else at_home(lines, self._desk.judged())

    def _lay_out(self) -> None:
        clear(self._rows)
        lines = self.lines()
        self.rows = {line.item.id: self._row(line) for line in lines}
        for row in self.rows.values():
            self._rows.addWidget(row)
        if not lines:
            self._rows.addWidget(
                Paragraph(_("Nothing with a battery that stays at home has lain unused for six weeks."), Role.SECOND)
            )
        self._show(lines)

    def _row(self, line: StorageLine) -> StorageRow:
        row = StorageRow(line)
        row.typed.connect(lambda pct: self._note(line.item.id, pct))
        row.unread.connect(self.say_wrong)
        return row

    def _note(self, item_id: str, pct: float | None) -> None:
        if self.attempt(lambda: self._desk.bench.note_on_hand({item_id: pct})):
            self.say_wrong("")
            self._show(self.lines())

    def _show(self, lines: tuple[StorageLine, ...]) -> None:
        now = self._desk.bench.now()
        for line in lines:
            self.rows[line.item.id].show_line(line, storage_why_text(line, now))
        sources = dict.fromkeys(line.source for line in lines if line.source)
        self._sources.setText("\n".join(_("Source: {source}").format(source=_(source)) for source in sources))
