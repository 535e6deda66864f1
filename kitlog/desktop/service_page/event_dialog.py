"""Logging what happened to an item: a blow, water, a tree; rules that answer to it are open from that day."""

from PySide6.QtWidgets import QPlainTextEdit, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField, DateField
from kitlog.desktop.parts.form import Form
from kitlog.kit.service import Event
from kitlog.paint.type_scale import Role
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import _
from kitlog.wording.words import word


class EventDialog(Dialog):
    """Which item, what, when."""

    def __init__(self, desk: Desk, item_id: str, parent: QWidget) -> None:
        super().__init__(_("Log an event"), _("Log"), parent)
        self._desk = desk
        items = sorted(desk.bench.items(), key=lambda item: item.name.casefold())
        self.item = ChoiceField([(item.id, item.name) for item in items])
        self.item.choose(item_id)
        self.kind = ChoiceField()
        self.kind.setEditable(True)
        self.day = DateField()
        self.day.put(desk.bench.now().date())
        self.note = QPlainTextEdit()
        self.note.setTabChangesFocus(True)
        self.note.setFont(look.font(Role.BODY))
        self.note.setFixedHeight(look.px(64))
        form = Form()
        form.add(_("Item"), self.item)
        form.add(_("What happened"), self.kind)
        self.opens = form.add_note(tone="look")
        form.add(_("On"), self.day)
        form.add(_("Note"), self.note)
        self.body.addWidget(form)
        self.item.currentIndexChanged.connect(lambda _index: self._offer())
        self.kind.currentTextChanged.connect(lambda _text: self._look())
        self._offer()

    def accept(self) -> None:
        """Write the event."""
        if self.attempt(lambda: self._desk.bench.log_event(self._event())):
            super().accept()

    def _event(self) -> Event:
        bench = self._desk.bench
        return Event(
            id=bench.new_id(),
            item_id=str(self.item.chosen()),
            on=self.day.day() or bench.now().date(),
            kind=self._kind(),
            note=self.note.toPlainText(),
        )

    def _kind(self) -> str:
        text = self.kind.currentText().strip()
        by_word = {word(event): event for event in self._known()}
        return by_word.get(text, text)

    def _known(self) -> list[str]:
        """Events that a rule of the item, or a starter for its kind, answers to."""
        bench, item_id = self._desk.bench, str(self.item.chosen())
        item = bench.item(item_id)
        own = [event for rule in bench.rules() if rule.item_id == item_id for event in rule.events]
        starters = bench.library.starter_rules
        offered = [e for starter in starters if item is not None and item.kind in starter.kinds for e in starter.events]
        return list(dict.fromkeys((*own, *offered)))

    def _offer(self) -> None:
        self.kind.offer([(event, word(event)) for event in self._known()])
        self._look()

    def _look(self) -> None:
        kind = self._kind()
        rules = [rule for rule in self._desk.bench.rules() if rule.item_id == self.item.chosen()]
        opened = [rule_text(rule.rule) for rule in rules if kind.casefold() in {e.casefold() for e in rule.events}]
        self.opens.setText(_("Opens: {rules}").format(rules=", ".join(opened)) if opened else "")
        self.opens.setVisible(bool(opened))
        self.want("" if kind else _("Say what happened."))
