"""Looking for the maker's safety notices: one look, entered for every item of a model."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from PySide6.QtWidgets import QWidget

from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField, DateField, LineField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.note_field import NoteField
from kitlog.desktop.parts.text import Paragraph
from kitlog.kit.due import due_states
from kitlog.kit.item import Item
from kitlog.kit.model_rules import GONE, Model, model_of
from kitlog.kit.service import ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook
from kitlog.paint.type_scale import Role
from kitlog.wording.due_sentence import due_sentence
from kitlog.wording.figures import day_text
from kitlog.wording.rule_lines import names_text
from kitlog.wording.translate import N_, _
from kitlog.workbench.rule_commands import NOTICES

ABOUT = N_("kitlog looks nowhere by itself: look on the maker’s page, and enter what there was.")


@dataclass(frozen=True, slots=True)
class Looked:
    """One model, or one item without a model.

    Attributes:
        items: all that have the rule; rule: that of the first of them.
        last: the newest record of that, None for none.
    """

    items: tuple[Item, ...]
    rule: ServiceRule
    last: ServiceRecord | None

    @property
    def name(self) -> str:
        """Maker and model, else the name of the item."""
        first = self.items[0]
        model = " ".join(part for part in (first.maker, first.model) if part) if first.model else ""
        return model or first.name


def by_model(items: Iterable[Item], book: ServiceBook) -> tuple[Looked, ...]:
    """The models that are looked after; those never looked for first, then the longest ago."""
    rules = {rule.item_id: rule for rule in book.rules if rule.rule == NOTICES and rule.applies}
    found: dict[Model | str, list[Item]] = {}
    for item in items:
        if item.id in rules and item.state not in GONE:
            found.setdefault(model_of(item) or item.id, []).append(item)
    looked = [_looked(tuple(group), rules[group[0].id], book) for group in found.values()]
    return tuple(sorted(looked, key=lambda one: (one.last.done_on if one.last else date.min, one.name.casefold())))


def _looked(items: tuple[Item, ...], rule: ServiceRule, book: ServiceBook) -> Looked:
    return Looked(items, rule, next(reversed(book.records_of(rule.id)), None))


class NoticesDialog(Dialog):
    """Which model, when, by whom, and what there was."""

    def __init__(self, desk: Desk, item_id: str, parent: QWidget) -> None:
        super().__init__(_("Maker’s safety notices"), _("Record"), parent, wide=520)
        self._desk = desk
        today: date = desk.bench.now().date()
        self.looked = by_model(desk.bench.items(), desk.bench.book())
        self.model = ChoiceField([(number, one.name) for number, one in enumerate(self.looked)])
        chosen = next((n for n, one in enumerate(self.looked) if item_id in {i.id for i in one.items}), 0)
        self.model.choose(chosen)
        self.state = Paragraph("", Role.SMALL)
        self.day = DateField()
        self.day.put(today)
        self.who = LineField(hint=_("you, or who looked"))
        self.found = NoteField(64)
        self.found.setPlaceholderText(_("where you looked; what there was, or that there was none"))
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
                "item_id": one.items[0].id if one else "-",
                "rules": (one.rule.id,) if one else (),
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
        names = _("For: {names}").format(names=names_text([item.name for item in one.items]))
        when = _("last looked {day}").format(day=day_text(one.last.done_on)) if one.last else _("never looked")
        self.state.setText(f"{names}; {when}; {self._due_text(one)}")
        self.want("")

    def _due_text(self, one: Looked) -> str:
        bench = self._desk.bench
        dues = due_states(one.items[0], bench.book(), bench.now().date())
        return next(due_sentence(due) for due in dues if due.rule_id == one.rule.id)
