"""The rules by model: what each asks of all items of the model; edited and deleted for all of them at once."""

from typing import ClassVar

from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.line import Hairline
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.kit.model_rules import model_of
from kitlog.kit.service import ModelRule, ServiceRule
from kitlog.paint.type_scale import Role
from kitlog.wording.rule_lines import figures_text, model_text, names_text
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import N_, _, ngettext
from kitlog.wording.words import first_upper

ABOUT = N_("Each item of the model follows by a rule of its own, until that is edited by itself.")


class ModelRulesDialog(Dialog):
    """Every rule by model."""

    is_form: ClassVar[bool] = False

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(_("Rules by model"), "", parent, wide=620)
        self._desk = desk
        self.body.addWidget(Paragraph(_(ABOUT), Role.SECOND, "muted"))
        self._rows = QVBoxLayout()
        self._rows.setSpacing(look.px(8))
        self.body.addLayout(self._rows)
        self._list()

    def _list(self) -> None:
        clear(self._rows)
        models = self._desk.bench.model_rules()
        for model in sorted(models, key=lambda one: (model_text(one).casefold(), rule_text(one.rule))):
            self._add(model)
        if not models:
            self._rows.addWidget(Paragraph(_("No rule is by model yet: choose that where a rule is added or edited.")))

    def _add(self, model: ModelRule) -> None:
        name = f"{model_text(model)}: {rule_text(model.rule)}"
        self._rows.addWidget(Paragraph(name, Role.NAME, "ink"))
        self._rows.addWidget(Paragraph(first_upper(figures_text(model)), Role.SMALL))
        self._rows.addWidget(Paragraph(self._followed_text(model), Role.SMALL))
        acts = WrapRow(gap=20)
        for text, act, possible in (
            (_("Edit…"), self._edit, bool(self._followers(model))),
            (_("Delete, items keep theirs"), self._delete, True),
            (_("Delete, with theirs"), self._delete_all, bool(self._followers(model))),
        ):
            button = Button(text, Rank.ACT)
            button.setAccessibleName(f"{text} {name}")
            button.setEnabled(possible)
            button.clicked.connect(lambda _on=False, act=act: act(model))
            acts.add(button)
        self._rows.addWidget(acts)
        self._rows.addWidget(Hairline())

    def _followers(self, model: ModelRule) -> list[ServiceRule]:
        return [rule for rule in self._desk.bench.rules() if rule.of_model == model.id]

    def _followed_text(self, model: ModelRule) -> str:
        names = {item.id: item.name for item in self._desk.bench.items()}
        followed = [names[rule.item_id] for rule in self._followers(model)]
        if not followed:
            return _("No item follows it; one of that model is offered it.")
        text = ngettext("{n} item follows it: {names}", "{n} items follow it: {names}", len(followed))
        return text.format(n=len(followed), names=names_text(followed))

    def _edit(self, model: ModelRule) -> None:
        from kitlog.desktop.service_page.rule_editor import RuleEditor

        bench = self._desk.bench
        of_it = {item.id: item for item in bench.items() if model_of(item) == model_of(model)}
        rules = self._followers(model)
        rule = next((one for one in rules if one.item_id in of_it), None)
        if rule is None:
            self.say_wrong(_("No item of that model follows it any more; delete it, or add it to an item first."))
        elif RuleEditor(self._desk, of_it[rule.item_id], rule, None, self).exec():
            self._list()

    def _delete(self, model: ModelRule) -> None:
        if self.attempt(lambda: self._desk.bench.delete_model_rule(model.id)):
            self._list()

    def _delete_all(self, model: ModelRule) -> None:
        if self.attempt(lambda: self._desk.bench.delete_model_rule(model.id, with_rules=True)):
            self._list()
