"""Rules offered for an item: those of its model, then starters; never applied by themselves."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField, TickField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.service_page.rule_scope import RuleScope
from kitlog.kit.item import Item
from kitlog.kit.service import ModelRule
from kitlog.outing.library import StarterRule
from kitlog.paint.type_scale import Role
from kitlog.wording.rule_limits import WHILE_OPEN, limits_of
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import N_, _
from kitlog.wording.words import first_upper

CAUTION = N_(
    "Starters are common intervals with their sources. The maker’s manual of this very model and national rules "
    "override them: look there, then change the figures."
)


class StartersDialog(Dialog):
    """Choose an item, tick what is offered for it or for its model, or make an own rule."""

    def __init__(self, desk: Desk, item: Item | None, parent: QWidget) -> None:
        super().__init__(_("Add a service rule"), _("Take these"), parent, wide=560)
        self._desk = desk
        items = sorted(desk.bench.items(), key=lambda i: i.name.casefold())
        self.item = ChoiceField([(i.id, i.name) for i in items])
        if item is not None:
            self.item.choose(item.id)
        self.scope = RuleScope(desk, item)
        self.ticks: dict[str, TickField] = {}
        self._rows = QVBoxLayout()
        self._rows.setSpacing(look.px(2))
        form = Form()
        form.add(_("Item"), self.item)
        self.body.addWidget(form)
        self.body.addWidget(self.scope)
        self.models = Button(_("Rules by model…"), Rank.ACT)
        self.models.clicked.connect(self._show_models)
        self.body.addWidget(self.models, 0, Qt.AlignmentFlag.AlignLeft)
        self.body.addWidget(Paragraph(_(CAUTION), Role.SECOND, "look"))
        self.body.addLayout(self._rows)
        self.own = Button(_("Own rule…"))
        self.own.clicked.connect(lambda: self._edit(None))
        self.foot_row.insertWidget(0, self.own)
        self.item.currentIndexChanged.connect(lambda _index: self._offer())
        self.scope.changed.connect(self._look)
        self._offer()

    def accept(self) -> None:
        """Take what is ticked; a starter that is nothing but a printed date asks for it."""
        ticked = [name for name, tick in self.ticks.items() if tick.isChecked()]
        typed = [starter for starter in self._starters() if starter.name in ticked and _wants_date(starter)]
        plain = [name for name in ticked if name not in {starter.name for starter in typed}]
        item_id = str(self.item.chosen())
        for_model = self.scope.for_model
        if plain and not self.attempt(lambda: self._desk.bench.take_starters(item_id, plain, for_model=for_model)):
            return
        for starter in typed:
            self._edit(starter)
        super().accept()

    def _starters(self) -> tuple[StarterRule, ...]:
        return self._desk.bench.starters_for(str(self.item.chosen()))

    def _offer(self) -> None:
        clear(self._rows)
        self.ticks = {}
        bench, item_id = self._desk.bench, str(self.item.chosen())
        self.scope.show_item(bench.item(item_id))
        self.models.setVisible(bool(bench.model_rules()))
        for model in bench.model_rules_for(item_id):
            self._add(model.rule, _model_facts(model))
        for starter in self._starters():
            self._add(starter.name, _facts(starter))
        if not self.ticks:
            self._rows.addWidget(Paragraph(_("No further starter for this item; an own rule is always possible.")))
        self._look()

    def _add(self, name: str, facts: str) -> None:
        tick = TickField(first_upper(rule_text(name)))
        tick.setAccessibleDescription(facts)
        tick.toggled.connect(lambda _on: self._look())
        self.ticks[name] = tick
        self._rows.addWidget(tick)
        note = Paragraph(facts, Role.SMALL)
        note.setContentsMargins(look.px(32), 0, 0, look.px(8))
        self._rows.addWidget(note)

    def _show_models(self) -> None:
        from kitlog.desktop.service_page.model_rules_dialog import ModelRulesDialog

        ModelRulesDialog(self._desk, self).exec()
        self._offer()

    def _look(self) -> None:
        some = any(tick.isChecked() for tick in self.ticks.values())
        self.want("" if some else _("Tick what applies."))
        self.own.setEnabled(self.item.chosen() is not None)

    def _edit(self, starter: StarterRule | None) -> None:
        from kitlog.desktop.service_page.rule_editor import RuleEditor

        item = self._desk.bench.item(str(self.item.chosen()))
        if item is None:
            return
        editor = RuleEditor(self._desk, item, None, starter, self, for_model=self.scope.for_model)
        if editor.exec() and starter is None:
            super().accept()


def _wants_date(starter: StarterRule) -> bool:
    limits = (starter.months, starter.recommended_months, starter.hours, starter.launches)
    return not starter.events and all(limit is None for limit in limits)


def _model_facts(model: ModelRule) -> str:
    """A rule of the model, before any starter."""
    return _("The rule of its model. {facts}").format(facts=". ".join(map(first_upper, _parts(model))))


def _parts(rule: StarterRule | ModelRule) -> list[str]:
    limits = ", ".join(limits_of(rule)) or _("a date or figure that you type")
    parts = (limits, _("open: {what}").format(what=_(WHILE_OPEN[rule.grounds])), _(rule.source) if rule.source else "")
    return [part for part in parts if part]


def _facts(starter: StarterRule) -> str:
    parts = _parts(starter)
    if starter.spread:
        parts.append(_("seen elsewhere: {spread}").format(spread=_(starter.spread)))
    return ". ".join(first_upper(part) for part in parts)
