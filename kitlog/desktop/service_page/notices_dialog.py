"""Looking for the maker's safety notices: one look, entered for every item of a model."""

from dataclasses import dataclass
from datetime import date

from PySide6.QtWidgets import QPlainTextEdit, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField, DateField, LineField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.text import Paragraph
from kitlog.kit.item import Item
from kitlog.kit.model_rules import Model, model_of
from kitlog.kit.service import ServiceRecord
from kitlog.paint.type_scale import Role
from kitlog.wording.due_sentence import due_sentence
from kitlog.wording.figures import day_text
from kitlog.wording.rule_lines import names_text
from kitlog.wording.translate import N_, _
from kitlog.workbench.reads import DueLine
from kitlog.workbench.rule_commands import NOTICES

ABOUT = N_("kitlog looks nowhere by itself: look on the maker’s page, and enter what there was.")


@dataclass(frozen=True, slots=True)
class Looked:
    """One model, or one item without a model: its items, the rule of the first, and what is on record."""

    items: tuple[Item, ...]
    line: DueLine

    @property
    def name(self) -> str:
        """Maker and model, else the name of the item."""
        first = self.items[0]
        model = " ".join(part for part in (first.maker, first.model) if part) if first.model else ""
        return model or first.name


def by_model(lines: tuple[DueLine, ...]) -> tuple[Looked, ...]:
    """The models that are looked after, the one that is due first in front."""
    found: dict[Model | str, list[DueLine]] = {}
    for line in lines:
        if line.rule.rule == NOTICES and line.rule.applies:
            found.setdefault(model_of(line.item) or line.item.id, []).append(line)
    return tuple(Looked(tuple(line.item for line in group), group[0]) for group in found.values())


class NoticesDialog(Dialog):
    """Which model, when, by whom, and what there was."""

    def __init__(self, desk: Desk, item_id: str, parent: QWidget) -> None:
        super().__init__(_("Maker’s safety notices"), _("Record"), parent, wide=520)
        self._desk = desk
        today: date = desk.bench.now().date()
        self.looked = by_model(desk.bench.due(today))
        self.model = ChoiceField([(number, one.name) for number, one in enumerate(self.looked)])
        chosen = next((n for n, one in enumerate(self.looked) if item_id in {i.id for i in one.items}), 0)
        self.model.choose(chosen)
        self.state = Paragraph("", Role.SMALL)
        self.day = DateField()
        self.day.put(today)
        self.who = LineField(hint=_("you, or who looked"))
        self.found = QPlainTextEdit()
        self.found.setPlaceholderText(_("where you looked; what there was, or that there was none"))
        self.found.setFixedHeight(look.px(64))
        self.found.setTabChangesFocus(True)
        self._assemble()
        self.model.currentIndexChanged.connect(lambda _index: self._look())
        self._look()

    def accept(self) -> None:
        """Enter it for every item of the model."""
        if self.attempt(lambda: self._desk.bench.record_for_model(self.draft())):
            super().accept()

    def draft(self) -> ServiceRecord:
        """The look as it stands in the form, as one of the first item."""
        one = self._chosen()
        return ServiceRecord.model_validate(
            {
                "id": self._desk.bench.new_id(),
                "item_id": one.line.item.id if one else "-",
                "rules": (one.line.rule.id,) if one else (),
                "done_on": self.day.day() or self._desk.bench.now().date(),
                "who": self.who.text(),
                "remarks": self.found.toPlainText(),
            }
        )

    def _chosen(self) -> Looked | None:
        number = self.model.chosen()
        return self.looked[number] if isinstance(number, int) else None

    def _assemble(self) -> None:
        self.body.addWidget(Paragraph(_(ABOUT), Role.SECOND, "muted"))
        form = Form()
        form.add(_("Model"), self.model)
        form.add_wide(self.state)
        form.add(_("Looked on"), self.day)
        form.add(_("Who"), self.who)
        form.add(_("Found"), self.found)
        self.body.addWidget(form)

    def _look(self) -> None:
        one = self._chosen()
        if one is None:
            self.want(_("No item has that rule yet: add it, best for all of a model."))
            self.state.setText("")
            return
        last = one.line.due.last
        parts = [_("For: {names}").format(names=names_text([item.name for item in one.items]))]
        parts.append(_("last looked {day}").format(day=day_text(last.done_on)) if last else _("never looked"))
        parts.append(due_sentence(one.line.due))
        self.state.setText("; ".join(part for part in parts if part))
        self.want("")
