"""Recording that a service was done, with what was measured and its papers; one record may satisfy several rules."""

from datetime import date

from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.papers_field import PapersField
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField, DateField, LineField, NumberField, TickField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.note_field import NoteField
from kitlog.desktop.parts.section import Section, clear
from kitlog.desktop.parts.tab_order import tab_after
from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.service_page.measured_rows import MeasuredRows
from kitlog.fault import InputFault
from kitlog.kit.model_rules import items_like
from kitlog.kit.record_proposal import RecordProposal, record_proposal
from kitlog.kit.record_questions import ASKED
from kitlog.kit.service import Result, ServiceRecord, ServiceRule
from kitlog.wording.faults import fault_text
from kitlog.wording.figures import number_text
from kitlog.wording.record_text import result_choices
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import first_upper
from kitlog.workbench.rule_commands import NOTICES


class RecordDialog(Dialog):
    """What was done to which item, when, by whom, with what result.

    A new record begins with today, passed, and who did it the last time: Enter records that.

    Args:
        desk: what it works on.
        item_id: the item that is chosen.
        rule_id: the rule that is ticked.
        parent: over which it stands.
        change: a record in whose place the new one is put; it stays on record, struck through.
    """

    def __init__(
        self, desk: Desk, item_id: str, rule_id: str, parent: QWidget, *, change: ServiceRecord | None = None
    ) -> None:
        title = _("Record a service") if change is None else _("Correct a record")
        super().__init__(title, _("Record") if change is None else _("Save"), parent, wide=720)
        self._desk, self._change, self._at_once = desk, change, bool(rule_id) and change is None
        with_rules = {rule.item_id for rule in desk.bench.rules()}
        items = sorted((i for i in desk.bench.items() if i.id in with_rules), key=lambda i: i.name.casefold())
        self.item = ChoiceField([(item.id, item.name) for item in items])
        self.item.choose(item_id if change is None else change.item_id)
        self.item.setEnabled(change is None)
        self.ticks: dict[str, TickField] = {}
        self.alike = TickField("")
        self.day = DateField()
        self.who, self.outcome = LineField(hint=_("myself, a workshop …")), ChoiceField(result_choices())
        self.hours = NumberField("h", decimals=1, most=1e6, unknown=_("hours by the log"))
        self.launches = NumberField(most=1e7, unknown=_("launches by the log"))
        self.cost, self.currency = NumberField(decimals=2, most=1e9, unknown=_("not given")), LineField(hint=_("EUR …"))
        self.next_due, self.next_within = DateField(), NumberField("h", decimals=1, most=1e5, unknown=_("no hours set"))
        self.remarks = NoteField(64)
        self.measured = MeasuredRows()
        self.papers = PapersField(desk, change.papers if change else ())
        self._rules = QVBoxLayout()
        self._assemble()
        self._put()
        self.item.currentIndexChanged.connect(lambda _index: self._show_rules(()))
        self.day.dateChanged.connect(lambda _day: self._show_log())
        self._show_rules(change.rules if change else (rule_id,))
        if change is None:
            self.who.setText(self._proposed().who)
            self.currency.setText(self._proposed().currency)

    def accept(self) -> None:
        """Write the record; what is unlikely is asked first."""
        asked: list[InputFault] = []
        if not self.attempt(lambda: self._write(asked)):
            return
        if asked:
            self.say_wrong("")
            self._ask(asked[0])
        else:
            super().accept()

    def changed(self) -> bool:
        """Papers count too."""
        return super().changed() or self.papers.papers != (self._change.papers if self._change else ())

    def record(self) -> ServiceRecord:
        """The record as it stands in the form.

        Raises:
            pydantic.ValidationError: something cannot be so.
        """
        bench = self._desk.bench
        return ServiceRecord(
            id=bench.new_id(),
            item_id=str(self.item.chosen()),
            rules=self._ticked(),
            done_on=self._done_on(),
            hours=self.hours.number(),
            launches=self.launches.whole(),
            who=self.who.text(),
            result=Result(str(self.outcome.chosen())) if self.outcome.chosen() else None,
            cost=self.cost.number(),
            currency=self.currency.text(),
            remarks=self.remarks.toPlainText(),
            next_due_on=self.next_due.day(),
            next_within_h=self.next_within.number(),
            measurements=self.measured.measurements(),
            papers=self.papers.papers,
        )

    def _write(self, asked: list[InputFault]) -> None:
        try:
            self._enter(sure=False)
        except InputFault as fault:
            if fault.code not in ASKED:
                raise
            asked.append(fault)

    def _enter(self, *, sure: bool) -> None:
        bench = self._desk.bench
        if self.alike.isVisibleTo(self) and self.alike.isChecked():
            bench.record_for_model(self.record())
        elif self._change is None:
            bench.add_record(self.record(), sure=sure)
        else:
            bench.change_record(self._change.id, self.record(), sure=sure)

    def _ask(self, fault: InputFault) -> None:
        self.question.ask(
            first_upper(fault_text(fault).what),
            _("Nothing is written yet."),
            (_("It is so, record it"), self._enter_surely),
            (_("Look again"), self.hours.setFocus),
        )

    def _enter_surely(self) -> None:
        if self.attempt(lambda: self._enter(sure=True)):
            super().accept()

    def _focus_first(self) -> None:
        """Enter records what is proposed; without a rule chosen the first field comes first."""
        if self._at_once and self.main.isEnabled():
            self.main.setFocus()
        else:
            super()._focus_first()

    def _assemble(self) -> None:
        form = Form()
        form.add(_("Item"), self.item)
        self.body.addWidget(form)
        done = Section(_("What was done"))
        done.rows.addLayout(self._rules)
        self.alike.setChecked(True)
        done.rows.addWidget(self.alike)
        self.body.addWidget(done)
        more = Form()
        more.add(_("Done on"), self.day)
        more.add(_("By whom"), self.who)
        more.add(_("Result"), self.outcome)
        self.hours.setAccessibleName(_("Airtime that day"))
        self.launches.setAccessibleName(_("Launches that day"))
        more.add(_("Airtime, launches"), self.hours, self.launches)
        self._log = more.add_note()
        self.currency.setAccessibleName(_("Currency"))
        self.currency.setFixedWidth(look.px(96))
        more.add(_("Cost"), self.cost, self.currency)
        self.next_within.setAccessibleName(_("Next within hours"))
        more.add(_("Next due"), self.next_due, self.next_within)
        more.add_note(_("As the inspector set it; it stands over the interval of the rule."))
        more.add(_("Remarks"), self.remarks)
        self.body.addWidget(more)
        for title, part in ((_("Measured values"), self.measured), (_("Papers and photos"), self.papers)):
            section = Section(title)
            section.rows.addWidget(part)
            self.body.addWidget(section)
        if self._change is not None:
            self.body.addWidget(Paragraph(_("The record as it was stays in the book, struck through.")))

    def _put(self) -> None:
        """Proposals for a new record, or what stands in the one that is corrected."""
        old = self._change
        if old is None:
            self.day.put(self._desk.bench.now().date())
            self.outcome.choose(Result.PASSED.value)
            return
        self.day.put(old.done_on)
        self.who.setText(old.who)
        self.outcome.choose(old.result.value if old.result else "")
        self.hours.put(old.hours)
        self.launches.put(old.launches)
        self.cost.put(old.cost)
        self.currency.setText(old.currency)
        self.next_due.put(old.next_due_on)
        self.next_within.put(old.next_within_h)
        self.remarks.setPlainText(old.remarks)
        self.measured.put(old.measurements)

    def _show_rules(self, ticked: tuple[str, ...]) -> None:
        clear(self._rules)
        rules = [rule for rule in self._desk.bench.rules() if rule.item_id == self.item.chosen()]
        self.ticks = {rule.id: self._tick(rule, ticked=rule.id in ticked or len(rules) == 1) for rule in rules}
        for tick in self.ticks.values():
            self._rules.addWidget(tick)
        tab_after(self.item, self.ticks.values())
        if not rules:
            self._rules.addWidget(Paragraph(_("This item has no rule.")))
        self.measured.propose(self._proposed().measured)
        self._show_log()
        self._look()

    def _show_log(self) -> None:
        """What the log and the opening balance hold until that day: taken where nothing is entered."""
        item = self._desk.bench.item(str(self.item.chosen()))
        if item is None:
            return
        use = self._desk.bench.usage(item.id, self._done_on())
        hours = number_text(use.airtime_h + (item.opening_h or 0.0), 1)
        known = item.opening_h is not None
        said = _("The log holds {hours} h and {n} launches until that day.")
        least = _("The log holds at least {hours} h and {n} launches until that day.")
        text = said if known else least
        self._log.setText(text.format(hours=hours, n=number_text(use.launches + (item.opening_launches or 0))))
        self._log.setVisible(True)

    def _tick(self, rule: ServiceRule, *, ticked: bool) -> TickField:
        tick = TickField(rule_text(rule.rule))
        tick.setChecked(ticked)
        tick.toggled.connect(lambda _on: self._look())
        return tick

    def _ticked(self) -> tuple[str, ...]:
        return tuple(rule for rule, tick in self.ticks.items() if tick.isChecked())

    def _done_on(self) -> date:
        return self.day.day() or self._desk.bench.now().date()

    def _proposed(self) -> RecordProposal:
        return record_proposal(self._desk.bench.records(), str(self.item.chosen()), self._ticked())

    def _look(self) -> None:
        some = any(tick.isChecked() for tick in self.ticks.values())
        self.want("" if some else _("Tick what was done."))
        self._offer_model()

    def _offer_model(self) -> None:
        """A look for the maker's notices serves every item of the model."""
        item = self._desk.bench.item(str(self.item.chosen()))
        notices = {rule.id: rule.item_id for rule in self._desk.bench.rules() if rule.rule == NOTICES}
        only = self._change is None and bool(self._ticked()) and notices.keys() >= set(self._ticked())
        same = items_like(item, self._desk.bench.items()) if item is not None and only else ()
        alike = [one for one in same if one.id in notices.values()]
        text = ngettext("For {n} item of this model", "For all {n} items of this model", len(alike))
        self.alike.words = text.format(n=len(alike))
        self.alike.setText(self.alike.words)
        self.alike.setAccessibleName(self.alike.words)
        self.alike.setVisible(len(alike) > 1)
