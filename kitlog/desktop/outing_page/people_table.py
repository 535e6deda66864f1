"""The people of an outing: name, role, whether they were told."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.hour_fields import MarkedField
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.fields import ChoiceField, TickField
from kitlog.outing.outing import Person, Role
from kitlog.wording.figures import moment_text
from kitlog.wording.translate import _


@dataclass(frozen=True)
class PersonRow:
    """The fields of one person, and the person they were made from."""

    box: QWidget
    name: MarkedField
    role: ChoiceField
    told: TickField
    remove: Button
    person: Person | None


class PeopleTable(QWidget):
    """Rows of people.

    Attributes:
        changed: something was typed, added or removed.
        rows: in their order.
    """

    changed = Signal()

    def __init__(self, people: tuple[Person, ...], now: datetime, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._now = now
        self.rows: list[PersonRow] = []
        self._lines = QVBoxLayout(self)
        self._lines.setContentsMargins(0, 0, 0, 0)
        self._lines.setSpacing(look.px(6))
        self.add_act = Button(_("Add a person"), Rank.ACT)
        self.add_act.clicked.connect(self.add)
        foot = QHBoxLayout()
        foot.addWidget(self.add_act)
        foot.addStretch()
        self._lines.addLayout(foot)
        for person in people:
            self._put(person)

    def values(self) -> list[dict[str, Any]]:
        """What was entered, by the names of the model; rows without a name are left out."""
        return [
            {
                "name": row.name.text().strip(),
                "role": row.role.chosen(),
                "told_at": self._told_at(row),
                "phone": row.person.phone if row.person else "",
            }
            for row in self.rows
            if row.name.text().strip()
        ]

    def add(self) -> None:
        """One more person, a contact if there is none yet."""
        self._put(None)
        there = {row.role.chosen() for row in self.rows[:-1]}
        self.rows[-1].role.choose(Role.FELLOW_PILOT if Role.CONTACT in there else Role.CONTACT)
        self.rows[-1].name.setFocus()
        self.changed.emit()

    def remove(self, row: PersonRow) -> None:
        """Take a person out."""
        at = self.rows.index(row)
        self.rows.remove(row)
        row.box.hide()
        row.box.deleteLater()
        left = self.rows[min(at, len(self.rows) - 1)].remove if self.rows else self.add_act
        left.setFocus(Qt.FocusReason.OtherFocusReason)
        self.changed.emit()

    def _told_at(self, row: PersonRow) -> datetime | None:
        if not row.told.isChecked():
            return None
        return row.person.told_at if row.person and row.person.told_at else self._now

    def _put(self, person: Person | None) -> None:
        told = person.told_at if person else None
        word = _("told {time}").format(time=moment_text(told)) if told else _("told now")
        name = person.name if person else _("new person")
        row = PersonRow(
            box=QWidget(),
            name=MarkedField(person.name if person else "", hint=_("Name")),
            role=ChoiceField([(role, _(role.value)) for role in Role]),
            told=TickField(word),
            remove=Button("×", Rank.ACT),
            person=person,
        )
        if person is not None:
            row.role.choose(person.role)
        row.told.setChecked(told is not None)
        row.name.setAccessibleName(_("Name of {person}").format(person=name))
        row.role.setAccessibleName(_("Role of {person}").format(person=name))
        row.told.setAccessibleName(f"{name}: {word}")
        row.remove.setAccessibleName(_("Remove {person}").format(person=name))
        row.remove.setToolTip(_("Remove"))
        self.rows.append(row)
        self._lay(row)
        self._listen(row)

    def _lay(self, row: PersonRow) -> None:
        line = QHBoxLayout(row.box)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(look.px(8))
        line.addWidget(row.name, 1)
        for widget in (row.role, row.told, row.remove):
            line.addWidget(widget)
        self._lines.insertWidget(len(self.rows) - 1, row.box)

    def _listen(self, row: PersonRow) -> None:
        row.name.textChanged.connect(lambda _text: self.changed.emit())
        row.role.currentIndexChanged.connect(lambda _index: self.changed.emit())
        row.told.toggled.connect(lambda _on: self.changed.emit())
        row.remove.clicked.connect(lambda _on=False: self.remove(row))
