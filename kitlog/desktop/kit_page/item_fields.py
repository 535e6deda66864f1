"""The fields of an item that every kind has, as sections of the editor."""

from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.kit_page.loan_fields import LoanFields
from kitlog.desktop.parts.fields import ChoiceField, DateField, LineField, NumberField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.note_field import NoteField
from kitlog.desktop.parts.section import Section
from kitlog.kit.item import MAX_PIECE_G, MAX_QUANTITY, Item
from kitlog.kit.kinds import ItemState, Kind, MassSource, Zone
from kitlog.outing.library import Library
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper, word


def kind_choices(library: Library) -> list[tuple[object, str]]:
    """All kinds by their labels."""
    return sorted(((kind, first_upper(word(library.facts(kind).label))) for kind in Kind), key=lambda pair: pair[1])


class MainFields(QWidget):
    """Name, kind, pieces, mass, zones.

    Attributes:
        changed: something was changed; kind_changed: another kind was chosen.
    """

    changed = Signal()
    kind_changed = Signal()

    def __init__(self, library: Library, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._library = library
        self.name = LineField(hint=_("Wing, down jacket, power bank …"))
        self.kind = ChoiceField(kind_choices(library))
        self.quantity = NumberField(decimals=0, most=MAX_QUANTITY, unknown="1")
        self.mass = NumberField("g", most=MAX_PIECE_G)
        self.source = ChoiceField([(source, word(source.value)) for source in MassSource])
        self.source.setAccessibleName(_("How the mass was taken"))
        self.zone, self.foot = ChoiceField(), ChoiceField()
        form = Form()
        form.add(_("Name"), self.name)
        form.add(_("Kind"), self.kind)
        form.add(_("Pieces"), self.quantity)
        form.add(_("Mass of one piece"), self.mass, self.source)
        self.question = form.add_note(tone="look")
        form.add(_("In the air"), self.zone)
        form.add(_("On foot"), self.foot)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(form)
        self._listen()

    def put(self, item: Item) -> None:
        """Show an item."""
        self.kind.choose(item.kind)
        self._offer_zones()
        self.name.setText(item.name)
        self.quantity.put(item.quantity)
        self.mass.put(item.mass_g)
        self.source.choose(item.mass_source)
        self.zone.choose(item.zone)
        self.foot.choose(item.zone_on_foot)

    def values(self) -> dict[str, Any]:
        """What was entered, by the names of the model."""
        quantity = self.quantity.whole()
        return {
            "name": self.name.text(),
            "kind": self.kind.chosen(),
            "quantity": 1 if quantity is None else quantity,
            "mass_g": self.mass.whole(),
            "mass_source": self.source.chosen(),
            "zone": self.zone.chosen(),
            "zone_on_foot": self.foot.chosen(),
        }

    def chosen_kind(self) -> Kind:
        """The kind that is chosen."""
        kind = self.kind.chosen()
        return kind if isinstance(kind, Kind) else Kind.OTHER

    def ask(self, question: str) -> None:
        """Ask about the mass, or take the question away."""
        self.question.setText(question)
        self.question.setVisible(bool(question))

    def _offer_zones(self) -> None:
        facts = self._library.facts(self.chosen_kind())
        for field, usual in ((self.zone, facts.zone), (self.foot, facts.zone_on_foot)):
            word_for_usual = _("usual: {zone}").format(zone=word(usual.value))
            field.offer([(None, word_for_usual), *((zone, word(zone.value)) for zone in Zone)])

    def _kind_changed(self) -> None:
        self._offer_zones()
        self.kind_changed.emit()
        self.changed.emit()

    def _listen(self) -> None:
        self.kind.currentIndexChanged.connect(lambda _index: self._kind_changed())
        self.name.textChanged.connect(lambda _text: self.changed.emit())
        for field in (self.mass, self.quantity):
            field.valueChanged.connect(lambda _value: self.changed.emit())


class MoreFields(QWidget):
    """Pair, state, loan, maker, days, before the log, notes."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.lines = {name: LineField() for name in ("maker", "model", "serial", "colour")}
        self.serves = LineField(hint=_("empty: guessed from kind and name"))
        self.days = {name: DateField() for name in ("made_on", "bought_on", "first_used_on")}
        self.fitted_to = ChoiceField()
        self.state = ChoiceField([(state, word(state.value)) for state in ItemState])
        self.loan = LoanFields(self.state)
        self.hours = NumberField("h", decimals=1, most=100_000)
        self.launches = NumberField(most=1_000_000)
        self.ground = NumberField("h", decimals=1, most=100_000)
        self.value = NumberField(decimals=2, most=1e9)
        self.volume = NumberField("l", decimals=1, most=1000)
        self.notes = NoteField(72)
        self.notes.setAccessibleName(_("Notes"))
        self._assemble()

    def put(self, item: Item, hosts: list[Item]) -> None:
        """Show an item; `hosts` are what it could be fitted to."""
        self.fitted_to.offer([(None, _("nothing")), *((host.id, host.name) for host in hosts if host.id != item.id)])
        self.fitted_to.choose(item.fitted_to)
        self.state.choose(item.state)
        for name, line in self.lines.items():
            line.setText(getattr(item, name))
        for name, field in self.days.items():
            field.put(getattr(item, name))
        self.serves.setText(", ".join(item.serves))
        self.hours.put(item.opening_h)
        self.launches.put(item.opening_launches)
        self.ground.put(item.opening_ground_h)
        self.loan.put(item)
        self.value.put(item.value)
        self.volume.put(None if item.volume_ml is None else item.volume_ml / 1000)
        self.notes.setPlainText(item.notes)

    def values(self) -> dict[str, Any]:
        """What was entered, by the names of the model."""
        volume_l = self.volume.number()
        return {
            "fitted_to": self.fitted_to.chosen(),
            "state": self.state.chosen(),
            **{name: line.text() for name, line in self.lines.items()},
            **{name: field.day() for name, field in self.days.items()},
            "serves": tuple(part.strip() for part in self.serves.text().split(",") if part.strip()),
            "opening_h": self.hours.number(),
            "opening_launches": self.launches.whole(),
            "opening_ground_h": self.ground.number(),
            **self.loan.values(),
            "value": self.value.number(),
            "volume_ml": None if volume_l is None else round(volume_l * 1000),
            "notes": self.notes.toPlainText(),
        }

    def _assemble(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, look.px(8), 0, 0)
        rows.setSpacing(look.px(16))
        groups: list[tuple[str, list[tuple[str, QWidget]]]] = [
            (
                _("Pair and state"),
                [(_("Fitted to"), self.fitted_to), (_("State"), self.state), (_("Serves"), self.serves)],
            ),
            (
                _("Maker"),
                [
                    (_("Maker"), self.lines["maker"]),
                    (_("Model"), self.lines["model"]),
                    (_("Serial number"), self.lines["serial"]),
                    (_("Colour"), self.lines["colour"]),
                    (_("Made on"), self.days["made_on"]),
                    (_("Bought on"), self.days["bought_on"]),
                    (_("First used on"), self.days["first_used_on"]),
                    (_("Value of all pieces"), self.value),
                    (_("Packed volume"), self.volume),
                ],
            ),
            (
                _("Before the log begins"),
                [(_("Airtime"), self.hours), (_("Launches"), self.launches), (_("Ground handling"), self.ground)],
            ),
        ]
        for title, fields in groups:
            section, form = Section(title), Form()
            for label, field in fields:
                form.add(label, field)
            section.rows.addSpacing(look.px(4))
            section.rows.addWidget(form)
            rows.addWidget(section)
        rows.insertWidget(1, self.loan)
        notes = Section(_("Notes"))
        notes.rows.addWidget(self.notes)
        rows.addWidget(notes)
