"""What stops me on a day: a date, and everything on record that is a stop, a look or not known then."""

from collections.abc import Callable
from datetime import date

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.budget.result import State
from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.chip import StateMark
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import DateField, TickField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import Paragraph
from kitlog.packing.what_stops import StopLine
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.season_text import FORESEEN, stop_sentence, stop_title
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import STANCE, counts_text, word

MOST_ROWS = 60
"""So many rows are shown; the worst stand first, and how many more there are is said."""

STATE_PX = 92


class StopRow(QWidget):
    """One thing: its state, what it is about, why, and to record it where a record would answer it."""

    def __init__(self, line: StopLine, record: Callable[[StopLine], object]) -> None:
        super().__init__()
        px = look.px
        row = QHBoxLayout(self)
        row.setContentsMargins(0, px(4), 0, px(4))
        row.setSpacing(px(12))
        state = StateMark(word(line.state.value), Mark(line.state.value))
        state.setFixedWidth(px(STATE_PX))
        words = QVBoxLayout()
        words.setSpacing(0)
        title, why = stop_title(line), stop_sentence(line)
        words.addWidget(Paragraph(title, Role.NAME, "ink"))
        words.addWidget(Paragraph(why, Role.SECOND))
        row.addWidget(state, 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)
        self.setAccessibleName(f"{title}, {word(line.state.value)}: {why}")
        if line.due is not None:
            act = Button(_("Record…"), Rank.ACT)
            act.setAccessibleName(_("Record a service: {what}").format(what=title))
            act.clicked.connect(lambda _on=False: record(line))
            row.addWidget(act, 0, Qt.AlignmentFlag.AlignTop)


class StopsDialog(Dialog):
    """The question is a day; the answer follows it at once."""

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(_("What stops me?"), "", parent, wide=640)
        self._desk = desk
        self.day, self.law = DateField(), TickField(_("Law, school or event asks for service"))
        self.day.put(desk.bench.now().date())
        self.said, self.note = Paragraph("", Role.NAME, "ink"), Paragraph("", Role.SMALL)
        self.day.setMinimumWidth(look.px(168))
        self.rows: list[StopRow] = []
        self._rows = QVBoxLayout()
        self._rows.setSpacing(0)
        form = Form(label_px=64)
        form.add(_("On"), self.day, self.law)
        self.body.addWidget(form)
        for widget in (self.said, self.note):
            self.body.addWidget(widget)
        self.body.addLayout(self._rows)
        self.body.addWidget(Paragraph(_(STANCE), Role.SMALL))
        # Return ends a date here; it does not leave
        self.main.setDefault(False)
        self.main.setAutoDefault(False)
        self.day.dateChanged.connect(lambda _day: self._ask_again())
        self.law.toggled.connect(lambda _on: self._show())
        self._ask_again()

    def lines(self) -> tuple[StopLine, ...]:
        """What stands in the way on the day chosen; nothing while there is none."""
        on = self.day.day()
        return () if on is None else self._desk.bench.what_stops(on, by_law=self.law.isChecked())

    def _ask_again(self) -> None:
        """Another day: what an outing that is planned for it says of the law counts."""
        on = self.day.day()
        planned = [outing for outing in self._desk.bench.outings() if on is not None and on in outing.days]
        self.law.blockSignals(True)  # noqa: FBT003  # Qt's signature
        self.law.setChecked(any(outing.demanded for outing in planned))
        self.law.blockSignals(False)  # noqa: FBT003  # Qt's signature
        self._show()

    def _show(self) -> None:
        on = self.day.day()
        lines = self.lines()
        clear(self._rows)
        self.rows = [StopRow(line, self._record) for line in lines[:MOST_ROWS]]
        for row in self.rows:
            self._rows.addWidget(row)
        more = len(lines) - len(self.rows)
        if more > 0:
            self._rows.addWidget(Paragraph(ngettext("and {n} more", "and {n} more", more).format(n=more)))
        self.said.setText(_answer(lines, on))
        self.note.setText(self._note(on))
        self.note.setVisible(bool(self.note.text()))

    def _note(self, on: date | None) -> str:
        """What is planned on the day, and that hours until then are foreseen."""
        if on is None:
            return ""
        planned = [outing.name for outing in self._desk.bench.outings() if on in outing.days]
        said = [_("Planned: {outings}.").format(outings=", ".join(planned))] if planned else []
        if on > self._desk.bench.now().date():
            said.append(_(FORESEEN))
        return " ".join(said)

    def _record(self, line: StopLine) -> None:
        from kitlog.desktop.service_page.record_dialog import RecordDialog

        rule_id = "" if line.due is None else line.due.rule_id
        RecordDialog(self._desk, line.item.id, rule_id, self).exec()
        self._show()


def _answer(lines: tuple[StopLine, ...], on: date | None) -> str:
    if on is None:
        return _("Enter a day.")
    if not lines:
        return _("Nothing on record is a stop, a look or not known on that day.")
    states = [line.state for line in lines]
    return counts_text(*(states.count(state) for state in (State.STOP, State.LOOK, State.NOT_KNOWN)))
