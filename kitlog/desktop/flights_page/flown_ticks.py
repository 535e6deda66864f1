"""What was flown: one of the sets that could be, or ticked item by item."""

from collections.abc import Mapping, Sequence
from itertools import pairwise

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.fields import ChoiceField, TickField
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import Paragraph
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.packing.flown_set import FLOWN_KINDS, GONE, NOTHING, ChosenBy, FlownSet
from kitlog.paint.type_scale import Role
from kitlog.wording.recording_report import set_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import first_upper


class FlownTicks(QWidget):
    """A choice of sets over a tick for each item.

    Attributes:
        changed: something else was flown.
    """

    changed = Signal()

    def __init__(self, items: Sequence[Item], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._items = {item.id: item for item in items}
        self.booked = NOTHING
        self.choice = ChoiceField()
        self.choice.setAccessibleName(_("What was flown"))
        self.choice.activated.connect(lambda _index: self._chosen())
        self.ticks: dict[str, TickField] = {}
        self.said = Paragraph("", Role.SMALL)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(look.px(4))
        rows.addWidget(self.choice)
        self._grid = QGridLayout()
        self._grid.setVerticalSpacing(0)
        rows.addLayout(self._grid)
        rows.addWidget(self.said)

    def put(self, booked: FlownSet, choices: Sequence[FlownSet]) -> None:
        """Show what was flown, and what else could have been."""
        offered = [choice for choice in choices if choice.flown]
        mine = next((choice for choice in offered if choice == booked), None)
        self.booked = booked
        own = [] if mine is not None else [(booked, _("own choice") if booked.flown else _("choose what was flown"))]
        self.choice.offer([*own, *((choice, first_upper(set_text(choice))) for choice in offered)])
        self.choice.choose(booked)
        self.choice.setVisible(bool(offered))
        self._show_ticks()

    def _show_ticks(self) -> None:
        ids = [item.id for item in _could_fly(self._items) if item.state not in GONE or item.id in self.booked.flown]
        if list(self.ticks) != ids:
            clear(self._grid)
            self.ticks = {}
            for number, item_id in enumerate(ids):
                tick = TickField(self._items[item_id].name)
                tick.setMinimumHeight(look.px(28))
                tick.clicked.connect(lambda _on=False: self._ticked())
                self.ticks[item_id] = tick
                self._grid.addWidget(tick, number, 0)
            for before, after in pairwise([self.choice, *self.ticks.values()]):
                QWidget.setTabOrder(before, after)
        for item_id, tick in self.ticks.items():
            tick.setChecked(item_id in self.booked.flown)
        self._say()

    def _say(self) -> None:
        said = self._words()
        self.said.setText(said)
        self.said.setVisible(bool(said))

    def _words(self) -> str:
        count = len(self.booked.carried)
        if not self.ticks:
            return _("Nothing in the kit could get these hours yet.")
        if not self.booked.flown:
            return _("No item gets these hours: a service date then looks further away than it is.")
        if not count:
            return ""
        text = ngettext(
            "{n} more item of that day's list is remembered as carried.",
            "{n} more items of that day's list are remembered as carried.",
            count,
        )
        return text.format(n=count)

    def _chosen(self) -> None:
        chosen = self.choice.chosen()
        if isinstance(chosen, FlownSet):
            self.booked = chosen
            self._show_ticks()
            self.changed.emit()

    def _ticked(self) -> None:
        """An own choice; what is no longer flown of an outing's list was carried."""
        flown = tuple(item_id for item_id, tick in self.ticks.items() if tick.isChecked())
        listed = (*self.booked.flown, *self.booked.carried) if self.booked.carried else ()
        carried = tuple(dict.fromkeys(item_id for item_id in listed if item_id not in flown))
        self.booked = FlownSet(ChosenBy.NAMED, flown, carried)
        self._say()
        self.changed.emit()


def _could_fly(items: Mapping[str, Item]) -> list[Item]:
    order = tuple(Kind)
    fit = [item for item in items.values() if item.kind in FLOWN_KINDS]
    return sorted(fit, key=lambda item: (order.index(item.kind), item.name.casefold()))
