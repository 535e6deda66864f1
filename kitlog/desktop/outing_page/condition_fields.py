"""Conditions as yes, no or open, who demands what, the set, water: the last part of the plan's form."""

from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.fields import ChoiceField, NumberField, TickField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.section import Section
from kitlog.desktop.parts.text import Text
from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS, Kind
from kitlog.outing.conditions import OPEN_COUNTS_AS_YES, TICKED, Condition, Demand
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import N_, _
from kitlog.wording.words import first_upper

DEMANDS = {Demand.LAW: N_("by law"), Demand.SCHOOL: N_("by the school"), Demand.EVENT: N_("by the event")}
PLAIN = {Condition.BY_AIR: N_("journey by airliner")}
"""Conditions whose own word could be taken for something else on a page about flying."""

HINTS = {Condition.BY_AIR: N_("What the rules for baggage say of batteries is then found for what goes along")}

ACROSS = 2


class ConditionFields(QWidget):
    """One choice a condition.

    Attributes:
        changed: something was chosen; choices: by condition.
    """

    changed = Signal()

    def __init__(self, ticked: dict[Condition, bool], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(look.px(12))
        grid.setVerticalSpacing(look.px(6))
        self.choices: dict[Condition, ChoiceField] = {}
        for number, condition in enumerate(Condition):
            choice = ChoiceField([(None, open_word(condition)), (True, _("yes")), (False, _("no"))])
            choice.choose(ticked.get(condition))
            choice.setAccessibleName(plain_word(condition))
            choice.setToolTip(_(HINTS[condition]) if condition in HINTS else "")
            choice.setAccessibleDescription(choice.toolTip())
            choice.currentIndexChanged.connect(lambda _index: self.changed.emit())
            row, column = number // ACROSS, 2 * (number % ACROSS)
            label = Text(plain_word(condition), Role.SECOND, "muted")
            label.setBuddy(choice)
            grid.addWidget(label, row, column, Qt.AlignmentFlag.AlignVCenter)
            grid.addWidget(choice, row, column + 1)
            self.choices[condition] = choice
        grid.setColumnStretch(1, 1)
        grid.setColumnStretch(3, 1)

    def values(self) -> dict[str, bool]:
        """What was ticked yes or no; what is left open is left out."""
        chosen = ((condition, choice.chosen()) for condition, choice in self.choices.items())
        return {condition.value: holds for condition, holds in chosen if isinstance(holds, bool)}


def plain_word(condition: Condition) -> str:
    """A condition in the plain words of the form."""
    return first_upper(_(PLAIN.get(condition, condition.value)))


def open_word(condition: Condition) -> str:
    """What an unticked condition means."""
    if condition in OPEN_COUNTS_AS_YES:
        return _("open, counts as yes")
    return _("no, not ticked") if condition in TICKED else _("from the plan")


class SetFields(QWidget):
    """Wing, harness, reserve, helmet, water, and who demands closed service.

    Attributes:
        changed: something was chosen.
    """

    changed = Signal()

    def __init__(
        self, outing: Outing, items: tuple[Item, ...], library: Library, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        form = Form(112)
        self.set: dict[Kind, ChoiceField] = {}
        for kind in SET_KINDS:
            chosen = getattr(outing.set, kind.value)
            field = ChoiceField(_offered(kind, chosen, items))
            field.choose(chosen)
            field.currentIndexChanged.connect(lambda _index: self.changed.emit())
            form.add(first_upper(_(library.facts(kind).label)), field)
            self.set[kind] = field
        self.water = NumberField("l", decimals=2, most=100, unknown=_("as the needs ask"))
        self.water.put(None if outing.water_ml is None else outing.water_ml / 1000)
        self.water.valueChanged.connect(lambda _value: self.changed.emit())
        form.add(_("Water at launch"), self.water)
        self.demands = {demand: TickField(_(text)) for demand, text in DEMANDS.items()}
        ticks = QWidget()
        row = QHBoxLayout(ticks)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.px(16))
        for demand, tick in self.demands.items():
            tick.setChecked(demand in outing.demanded)
            tick.toggled.connect(lambda _on: self.changed.emit())
            row.addWidget(tick)
        row.addStretch()
        form.add(_("Service closed"), ticks)
        rows.addWidget(form)

    def values(self) -> dict[str, Any]:
        """What was entered, by the names of the model."""
        litres = self.water.number()
        return {
            "set": {kind.value: field.chosen() for kind, field in self.set.items()},
            "water_ml": None if litres is None else round(litres * 1000),
            "demanded": tuple(demand for demand, tick in self.demands.items() if tick.isChecked()),
        }


def _offered(kind: Kind, chosen: str | None, items: tuple[Item, ...]) -> list[tuple[object, str]]:
    able = [item for item in items if item.kind is kind and (item.usable or item.id == chosen)]
    able.sort(key=lambda item: item.name.casefold())
    return [(None, _("as last time, else asked")), *((item.id, item.name) for item in able)]


def titled(title: str, widget: QWidget) -> Section:
    """A section with one widget in it."""
    section = Section(title)
    section.rows.addSpacing(look.px(4))
    section.rows.addWidget(widget)
    return section
