"""State and zones of several items at once: one step to undo."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtWidgets import QWidget

from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.text import Paragraph
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, Zone
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import word


class BulkEditor(Dialog):
    """What is left as it is stays as it is."""

    def __init__(self, desk: Desk, items: Sequence[Item], parent: QWidget) -> None:
        title = ngettext("State and zone of {n} item", "State and zone of {n} items", len(items)).format(n=len(items))
        super().__init__(title, _("Set"), parent, wide=440)
        self._desk, self._items = desk, items
        as_is: tuple[object, str] = (None, _("leave as it is"))
        zones: list[tuple[object, str]] = [as_is, *((zone, word(zone.value)) for zone in Zone)]
        self.state = ChoiceField([as_is, *((state, word(state.value)) for state in ItemState)])
        self.zone, self.foot = ChoiceField(zones), ChoiceField(zones)
        form = Form()
        form.add(_("State"), self.state)
        form.add(_("In the air"), self.zone)
        form.add(_("On foot"), self.foot)
        self.body.addWidget(form)
        self.body.addWidget(Paragraph(", ".join(item.name for item in items)))

    def accept(self) -> None:
        """Set what was chosen."""
        if self.attempt(self._save):
            super().accept()

    def _save(self) -> None:
        given: dict[str, Any] = {
            "state": self.state.chosen(),
            "zone": self.zone.chosen(),
            "zone_on_foot": self.foot.chosen(),
        }
        update = {name: value for name, value in given.items() if value is not None}
        bench, ids = self._desk.bench, [item.id for item in self._items]
        if list(update) == ["state"]:
            bench.set_state(ids, update["state"])
        elif update and "state" not in update:
            bench.set_zone(ids, update.get("zone"), update.get("zone_on_foot"))
        elif update:
            bench.edit_items([item.model_copy(update=update) for item in self._items])
