"""For whom a rule is: one item, or every item of its model; with what that does to the rules of the others."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.fields import ChoiceField, TickField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.text import Paragraph
from kitlog.kit.item import Item
from kitlog.kit.model_rules import Reach, items_like, model_of
from kitlog.paint.type_scale import Role
from kitlog.wording.rule_lines import reach_lines
from kitlog.wording.translate import _, ngettext


class RuleScope(QWidget):
    """The choice, and under it what it does.

    Attributes:
        changed: emitted when another answer is chosen.
    """

    changed = Signal()

    def __init__(self, desk: Desk, item: Item | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._item = desk, item
        self.choice = ChoiceField()
        self.also = TickField(_("Those with figures of their own too"))
        self.note = Paragraph("", Role.SMALL)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(look.px(4))
        form = Form()
        form.add(_("For"), self.choice)
        for widget in (form, self.note, self.also):
            rows.addWidget(widget)
        self.choice.currentIndexChanged.connect(lambda _index: self.changed.emit())
        self.show_item(item)

    @property
    def for_model(self) -> bool:
        """Whether every item of the model is meant."""
        return bool(self.choice.chosen())

    @property
    def all_items(self) -> bool:
        """Whether those with figures of their own are meant too."""
        return self.for_model and self.also.isVisibleTo(self) and self.also.isChecked()

    def show_item(self, item: Item | None) -> None:
        """Offer the answers for an item; without a model there is but one, and the reason is told."""
        self._item = item
        model = model_of(item) if item is not None else None
        self.choice.offer([(False, _("this item alone")), *([(True, self._model_text())] if model is not None else [])])
        self.choice.setEnabled(model is not None)
        self.show_reach(None)

    def choose(self, *, for_model: bool) -> None:
        """Choose an answer, if it is offered."""
        self.choice.choose(for_model)

    def show_reach(self, reach: Reach | None, own: str = "") -> None:
        """Tell what saving does.

        Args:
            reach: what it does to the rules of the items; None where the rule is for this item alone.
            own: what is told where it is.
        """
        told = own or self._why_alone() if reach is None else self._reach_text(reach)
        self.note.setText(told)
        self.note.setVisible(bool(told))
        self.also.setVisible(reach is not None and bool(reach.own))
        self.also.setAccessibleDescription(told)

    def _reach_text(self, reach: Reach) -> str:
        names = {item.id: item.name for item in self._desk.bench.items()}
        return "\n".join(reach_lines(*([names[rule.item_id] for rule in rules] for rules in reach.told)))

    def _model_text(self) -> str:
        item = self._item
        if item is None:
            return ""
        name = " ".join(part for part in (item.maker, item.model) if part)
        count = len(items_like(item, self._desk.bench.items()))
        return ngettext("every {model} ({n} item)", "every {model} ({n} items)", count).format(model=name, n=count)

    def _why_alone(self) -> str:
        item = self._item
        if item is None or model_of(item) is not None:
            return ""
        return _("Enter maker and model of the item in Kit, and a rule can be for all of that model.")
