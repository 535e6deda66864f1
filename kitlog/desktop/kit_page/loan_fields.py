"""Whose an item is, who has it, and by when it goes or comes back; the state follows what is typed."""

from typing import Any

from kitlog.desktop import look
from kitlog.desktop.parts.fields import ChoiceField, DateField, LineField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.section import Section
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState
from kitlog.wording.translate import _

_SETTLED = frozenset({ItemState.IN_SERVICE, ItemState.BORROWED, ItemState.LENT})
"""States that a name may change; what is away, lost or retired stays so."""


class LoanFields(Section):
    """Belongs to, lent to, back by.

    Args:
        state: the field of the item's state: naming somebody makes it *borrowed* or *lent*, as can be seen there.
    """

    def __init__(self, state: ChoiceField) -> None:
        super().__init__(_("Borrowed or lent"))
        self._state = state
        self._puts = False
        self.belongs_to = LineField(hint=_("empty: your own"))
        self.lent_to = LineField(hint=_("empty: to nobody"))
        self.back_by = DateField()
        form = Form()
        form.add(_("Belongs to"), self.belongs_to)
        form.add(_("Lent to"), self.lent_to)
        form.add(_("Back by"), self.back_by)
        self.note = form.add_note()
        self.rows.addSpacing(look.px(4))
        self.rows.addWidget(form)
        for line in (self.belongs_to, self.lent_to):
            line.textChanged.connect(lambda _text: self._named())
        self.back_by.dateChanged.connect(lambda _day: self._say())
        state.currentIndexChanged.connect(lambda _index: self._say())

    def put(self, item: Item) -> None:
        """Show an item, whose state is shown already."""
        self._puts = True
        self.belongs_to.setText(item.belongs_to)
        self.lent_to.setText(item.lent_to)
        self.back_by.put(item.back_by)
        self._puts = False
        self._say()

    def values(self) -> dict[str, Any]:
        """What was entered, by the names of the model."""
        return {
            "belongs_to": self.belongs_to.text(),
            "lent_to": self.lent_to.text(),
            "back_by": self.back_by.day(),
        }

    def _named(self) -> None:
        """Somebody was named, or nobody any more: the state follows."""
        if not self._puts and self._state.chosen() in _SETTLED:
            self._state.choose(self._meant())
        self._say()

    def _meant(self) -> ItemState:
        if self.lent_to.text().strip():
            return ItemState.LENT
        return ItemState.BORROWED if self.belongs_to.text().strip() else ItemState.IN_SERVICE

    def _say(self) -> None:
        """What follows from it, and what does not fit."""
        said = self._words()
        self.note.setText(said)
        self.note.setVisible(bool(said))

    def _words(self) -> str:
        state, meant = self._state.chosen(), self._meant()
        if meant is not ItemState.IN_SERVICE and state is ItemState.IN_SERVICE:
            return _("Its state above says that it is in service: at hand, and your own.")
        if state is ItemState.LENT:
            return _("Lent, it is not packed. The day stands in the service list and the calendar file.")
        if state is ItemState.BORROWED:
            return _(
                "Borrowed, it is packed like your own. The day stands in the service list and in the calendar file."
            )
        return _("The day is looked at while it is lent or borrowed.") if self.back_by.day() else ""
