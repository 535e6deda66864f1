"""The run before a season: one thing at a time, looked at today, opened, or left for later."""

from datetime import date

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.due_marks import MARKS
from kitlog.desktop.parts.button import Button
from kitlog.desktop.parts.chip import StateMark
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import DateField, LineField, TickField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.kit.season_start import SeasonAsk, SeasonLine
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.due_sentence import due_sentence
from kitlog.wording.rules import rule_text
from kitlog.wording.season_text import LOOK_MOVES_NOTHING, WHY, custody_text, looked_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import STANCE, word


class AskRow(QWidget):
    """A rule of the thing: done by this look or not, why it is asked about, what is on record.

    Attributes:
        tick: whether it was done; never ticked beforehand.
    """

    def __init__(self, ask: SeasonAsk) -> None:
        super().__init__()
        px = look.px
        self.rule_id = ask.due.rule_id
        self.tick = TickField(_("Done today: {rule}").format(rule=rule_text(ask.due.rule)))
        said = f"{_(WHY[ask.why])}; {due_sentence(ask.due)}"
        self.tick.setAccessibleDescription(said)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, px(2), 0, px(2))
        rows.setSpacing(0)
        head = QHBoxLayout()
        head.addWidget(self.tick, 1)
        if MARKS[ask.due.state] is not Mark.NONE:
            head.addWidget(StateMark(word(ask.due.state.value), MARKS[ask.due.state]))
        rows.addLayout(head)
        below = QHBoxLayout()
        below.setContentsMargins(px(32), 0, 0, 0)
        below.addWidget(Paragraph(said, Role.SMALL))
        rows.addLayout(below)


class SeasonDialog(Dialog):
    """A queue of things; each answer is one step to undo, and what is left for later comes again the next time."""

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(_("Before the season"), _("Looked at today"), parent, wide=600)
        self._desk = desk
        self._asked_at_first, self._looked_at, self._passed = 0, 0, set[str]()
        self._lines: tuple[SeasonLine, ...] = ()
        self.since, self.progress = DateField(), Text("", Role.SECOND, "muted")
        self.name, self.known = Paragraph("", Role.SECTION, "ink"), Paragraph("", Role.SECOND)
        self.asks: list[AskRow] = []
        self._ask_rows = QVBoxLayout()
        self._ask_rows.setSpacing(look.px(4))
        self.note = LineField(hint=_("what you saw, if anything"))
        self.in_full = Button(_("Record it in full…"))
        self.charge = Button(_("Charge on hand…"))
        self.wrong_with_it = Button(_("Something is wrong…"))
        self.later = Button(_("Later"))
        self._put_in()
        self.leave.say(_("Close"))
        # Return ends a date or a remark here; only on the button itself it answers
        self.main.setDefault(False)
        self.main.setAutoDefault(False)
        self.since.setMinimumWidth(look.px(168))
        self.since.dateChanged.connect(lambda _day: self._begin())
        self.in_full.clicked.connect(self._open_record)
        self.charge.clicked.connect(self._open_charge)
        self.wrong_with_it.clicked.connect(self._open_event)
        self.later.clicked.connect(self._leave_for_later)
        QShortcut(QKeySequence(Qt.Key.Key_PageDown), self, self._leave_for_later)
        self._begin(desk.bench.season_start().since)

    def line(self) -> SeasonLine | None:
        """The thing that is asked about; None when all have been."""
        return next((line for line in self._lines if line.item.id not in self._passed), None)

    def changed(self) -> bool:
        """Whether something was said of the thing that is asked about; what was recorded before is on record."""
        return bool(self.note.text().strip()) or any(ask.tick.isChecked() for ask in self.asks)

    def _read(self) -> None:
        """What is still to be looked at, after something was written or another day was chosen."""
        since = self.since.day()
        self._lines = self._desk.bench.season_start(since).lines if since is not None else ()

    def accept(self) -> None:
        """Record the look and what was done by it, and go on to the next thing."""
        line = self.line()
        if line is None:
            self.discard()
            return
        done = [ask.rule_id for ask in self.asks if ask.tick.isChecked()]
        said = self.note.text().strip() or _("looked over before the season")
        if self.attempt(lambda: self._desk.bench.looked_at(line.item.id, done, said)):
            self.say_wrong("")
            self._looked_at += 1
            self._passed.add(line.item.id)
            self._read()
            self._show()
            self._focus_first()

    def _focus_first(self) -> None:
        """The answer has the focus, for most things are in order; or what it still wants."""
        first = self.main if self.main.isEnabled() or not self.asks else self.asks[0].tick
        first.setFocus(Qt.FocusReason.TabFocusReason)

    def _leave_for_later(self) -> None:
        line = self.line()
        if line is not None:
            self._passed.add(line.item.id)
            self._show()
            self._focus_first()

    def _begin(self, since: date | None = None) -> None:
        """From the first thing on."""
        if since is not None:
            self.since.blockSignals(True)  # noqa: FBT003  # Qt's signature
            self.since.put(since)
            self.since.blockSignals(False)  # noqa: FBT003  # Qt's signature
        self._passed, self._looked_at = set(), 0
        self._read()
        self._asked_at_first = len(self._lines)
        self._show()

    def _show(self) -> None:
        line = self.line()
        clear(self._ask_rows)
        self.note.clear()
        self.asks = [AskRow(ask) for ask in line.asks] if line is not None else []
        for ask in self.asks:
            self._ask_rows.addWidget(ask)
            ask.tick.toggled.connect(lambda _on: self._want_answer())
        for widget in (self.note, self.in_full, self.wrong_with_it, self.later, self.known):
            widget.setVisible(line is not None)
        self.charge.setVisible(line is not None and line.lies)
        self.leave.setVisible(line is not None)
        self.main.say(_("Close") if line is None else _("Looked at today"))
        self._tell(line)
        self._want_answer()

    def _tell(self, line: SeasonLine | None) -> None:
        number = min(len(self._passed) + 1, self._asked_at_first)
        self.progress.setText(
            "" if line is None else _("{number} of {all}").format(number=number, all=self._asked_at_first)
        )
        if line is None:
            self.name.setText(self._end())
            return
        made = " ".join(part for part in (line.item.name, line.item.maker, line.item.model) if part)
        self.name.setText(made)
        self.known.setText("; ".join(part for part in (looked_text(line), custody_text(line.item)) if part))

    def _end(self) -> str:
        if self.since.day() is None:
            return _("Enter since when a look counts.")
        if not self._asked_at_first:
            return _("Nothing is left to look at before the season, as far as the records tell.")
        later = len(self._passed) - self._looked_at
        said = ngettext("{n} thing looked at", "{n} things looked at", self._looked_at).format(n=self._looked_at)
        left = ngettext("{n} left for later", "{n} left for later", later).format(n=later)
        return _("That was all: {looked}, {left}.").format(looked=said, left=left)

    def _want_answer(self) -> None:
        """A thing that was looked at since is in the run for its rules alone: a look without them says nothing new."""
        line = self.line()
        wants = line is not None and not line.not_looked and not any(ask.tick.isChecked() for ask in self.asks)
        self.want(_("Tick what was done, or later.") if wants else "")

    def _open_record(self) -> None:
        from kitlog.desktop.service_page.record_dialog import RecordDialog

        line = self.line()
        if line is not None:
            RecordDialog(self._desk, line.item.id, line.asks[0].due.rule_id if line.asks else "", self).exec()
            self._read()
            self._show()

    def _open_charge(self) -> None:
        from kitlog.desktop.service_page.storage_dialog import StorageDialog

        StorageDialog(self._desk, self).exec()
        self._read()
        self._show()

    def _open_event(self) -> None:
        from kitlog.desktop.service_page.event_dialog import EventDialog

        line = self.line()
        if line is not None:
            EventDialog(self._desk, line.item.id, self).exec()
            self._read()
            self._show()

    def _put_in(self) -> None:
        head = QHBoxLayout()
        form = Form(label_px=120)
        form.add(_("A look counts since"), self.since)
        head.addWidget(form)
        head.addStretch()
        head.addWidget(self.progress)
        self.body.addLayout(head)
        self.note.setAccessibleName(_("What you saw"))
        for widget in (self.name, self.known):
            self.body.addWidget(widget)
        self.body.addLayout(self._ask_rows)
        self.body.addWidget(self.note)
        acts = QHBoxLayout()
        acts.setSpacing(look.px(8))
        for button in (self.in_full, self.charge, self.wrong_with_it):
            acts.addWidget(button)
        acts.addStretch()
        self.body.addLayout(acts)
        self.body.addWidget(Paragraph(f"{_(LOOK_MOVES_NOTHING)} {_(STANCE)}", Role.SMALL))
        self.later.setToolTip(_("Page Down"))
        self.foot_row.insertWidget(self.foot_row.indexOf(self.leave) + 1, self.later)
