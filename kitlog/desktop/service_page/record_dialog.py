"""Recording that a service was done; one record may satisfy several rules."""

from PySide6.QtWidgets import QPlainTextEdit, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField, DateField, LineField, NumberField, TickField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.section import Section, clear
from kitlog.desktop.parts.text import Paragraph
from kitlog.kit.service import Result, ServiceRecord, ServiceRule
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import number_text
from kitlog.wording.record_text import result_choices
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import _


class RecordDialog(Dialog):
    """What was done to which item, when, by whom, with what result."""

    def __init__(self, desk: Desk, item_id: str, rule_id: str, parent: QWidget) -> None:
        super().__init__(_("Record a service"), _("Record"), parent)
        self._desk = desk
        with_rules = {rule.item_id for rule in desk.bench.rules()}
        items = sorted((i for i in desk.bench.items() if i.id in with_rules), key=lambda i: i.name.casefold())
        self.item = ChoiceField([(item.id, item.name) for item in items])
        self.item.choose(item_id)
        self.ticks: dict[str, TickField] = {}
        self.day = DateField()
        self.day.put(desk.bench.now().date())
        self.who, self.outcome = LineField(hint=_("myself, a workshop …")), ChoiceField(result_choices())
        self.hours, self.launches = NumberField("h", decimals=1, most=1e6), NumberField(most=1e7)
        self.cost = NumberField(decimals=2, most=1e9, unknown=_("not given"))
        self.remarks = QPlainTextEdit()
        self.remarks.setTabChangesFocus(True)
        self.remarks.setFont(look.font(Role.BODY))
        self.remarks.setFixedHeight(look.px(64))
        self._rules = QVBoxLayout()
        self._assemble()
        self.item.currentIndexChanged.connect(lambda _index: self._show_rules(""))
        self._show_rules(rule_id)

    def accept(self) -> None:
        """Write the record."""
        if self.attempt(lambda: self._desk.bench.add_record(self._record())):
            super().accept()

    def _record(self) -> ServiceRecord:
        bench = self._desk.bench
        return ServiceRecord(
            id=bench.new_id(),
            item_id=str(self.item.chosen()),
            rules=tuple(rule for rule, tick in self.ticks.items() if tick.isChecked()),
            done_on=self.day.day() or bench.now().date(),
            hours=self.hours.number(),
            launches=self.launches.whole(),
            who=self.who.text(),
            result=Result(str(self.outcome.chosen())) if self.outcome.chosen() else None,
            cost=self.cost.number(),
            remarks=self.remarks.toPlainText(),
        )

    def _assemble(self) -> None:
        form = Form()
        form.add(_("Item"), self.item)
        self.body.addWidget(form)
        done = Section(_("What was done"))
        done.rows.addLayout(self._rules)
        self.body.addWidget(done)
        more = Form()
        more.add(_("Done on"), self.day)
        more.add(_("By whom"), self.who)
        more.add(_("Result"), self.outcome)
        more.add(_("Airtime that day"), self.hours)
        more.add(_("Launches that day"), self.launches)
        self._log = more.add_note()
        more.add(_("Cost"), self.cost)
        more.add(_("Remarks"), self.remarks)
        self.body.addWidget(more)

    def _show_rules(self, ticked: str) -> None:
        clear(self._rules)
        rules = [rule for rule in self._desk.bench.rules() if rule.item_id == self.item.chosen()]
        self.ticks = {rule.id: self._tick(rule, ticked=rule.id == ticked or len(rules) == 1) for rule in rules}
        for tick in self.ticks.values():
            self._rules.addWidget(tick)
        if not rules:
            self._rules.addWidget(Paragraph(_("This item has no rule.")))
        item = self._desk.bench.item(str(self.item.chosen()))
        if item is not None and item.opening_h is not None:
            used = self._desk.bench.usage(item.id, self._desk.bench.now().date()).airtime_h + item.opening_h
            self._log.setText(_("Left open, the log is taken: {hours} h so far.").format(hours=number_text(used, 1)))
            self._log.setVisible(True)
        self._look()

    def _tick(self, rule: ServiceRule, *, ticked: bool) -> TickField:
        tick = TickField(rule_text(rule.rule))
        tick.setChecked(ticked)
        tick.toggled.connect(lambda _on: self._look())
        return tick

    def _look(self) -> None:
        some = any(tick.isChecked() for tick in self.ticks.values())
        self.want("" if some else _("Tick what was done."))
