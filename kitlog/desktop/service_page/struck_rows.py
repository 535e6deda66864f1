"""Rows of things that something happened to: a tick each, and under it what that opens."""

from collections.abc import Callable, Iterable, Mapping

from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.fields import TickField
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import Paragraph
from kitlog.kit.incidents import FollowUp
from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.paint.type_scale import Role
from kitlog.wording.incident_text import not_opened, opened, opened_text, origin_text
from kitlog.wording.words import first_upper


class StruckRows(QWidget):
    """The things offered, in their order.

    Args:
        changed: called after a tick was set or taken away.
    """

    def __init__(self, changed: Callable[[], object], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._changed = changed
        self.ticks: dict[str, TickField] = {}
        self._notes: dict[str, Paragraph] = {}
        self._rows = QVBoxLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(look.px(2))

    def put(self, items: Iterable[Item], ticked: Iterable[str]) -> None:
        """Offer other things."""
        clear(self._rows)
        self.ticks, self._notes = {}, {}
        on = frozenset(ticked)
        for item in items:
            self.add(item, ticked=item.id in on)

    def add(self, item: Item, *, ticked: bool) -> None:
        """Offer one thing more; one that is there is ticked."""
        if item.id in self.ticks:
            self.ticks[item.id].setChecked(ticked or self.ticks[item.id].isChecked())
            return
        tick = TickField(item.name)
        tick.setChecked(ticked)
        tick.toggled.connect(lambda _on: self._changed())
        note = Paragraph("", Role.SMALL)
        note.setContentsMargins(look.px(32), 0, 0, look.px(6))
        note.hide()
        self.ticks[item.id], self._notes[item.id] = tick, note
        self._rows.addWidget(tick)
        self._rows.addWidget(note)

    def ticked(self) -> tuple[str, ...]:
        """Ids of what is ticked, in the order shown."""
        return tuple(item_id for item_id, tick in self.ticks.items() if tick.isChecked())

    def tell(self, found: Iterable[FollowUp], library: Library, asked: Mapping[str, str]) -> None:
        """Say under each ticked thing what would be opened; under another what is `asked` of it, by its id."""
        said = {**asked, **{one.item_id: what_opens(one, library) for one in found}}
        for item_id, note in self._notes.items():
            text = said.get(item_id, "")
            note.setText(text)
            note.setVisible(bool(text))
            self.ticks[item_id].setAccessibleDescription(text)


def what_opens(one: FollowUp, library: Library) -> str:
    """What a follow-up opens, a line a rule, with where a rule comes from that was not on record."""
    lines = []
    for rule in opened(one, library):
        origin = origin_text(rule, one.event)
        lines.append(first_upper(f"{opened_text(rule)} ({origin})" if origin else opened_text(rule)))
    lines += [first_upper(text) for text in not_opened(one)]
    return "\n".join(lines)
