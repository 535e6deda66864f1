"""The form of one facet, made from its list of fields."""

from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.kit_page.facet_fields import FACET_FIELDS, FACET_MODELS, FACET_TITLES, FacetField
from kitlog.desktop.kit_page.facet_part import FacetPart
from kitlog.desktop.kit_page.field_values import field_for, on_change, put_value, read_value
from kitlog.desktop.kit_page.ports_form import PortsForm
from kitlog.desktop.kit_page.ways_form import WaysForm
from kitlog.desktop.parts.fields import ChoiceField, NumberField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.moment_field import MomentField
from kitlog.desktop.parts.section import Section
from kitlog.desktop.parts.text import Paragraph
from kitlog.kit.facets import Battery, Charger
from kitlog.kit.kinds import Kind
from kitlog.outing.library import Library
from kitlog.units.model import Frozen
from kitlog.wording.translate import _

CAPACITY_FIELD = ("battery", "v")
"""Under this field stands what the capacity figures come to."""


class FacetForm(FacetPart):
    """Figures of one facet.

    Args:
        facet: its name, ``wing``; library: for the starter figures of devices.

    Attributes:
        answered: what the mAh mean was chosen: ``cell`` or ``port``.
        fields: by name.
        capacity: a line about the energy, of a battery alone.
        ways: the ways of use of a battery; ports: those of a charger.
    """

    answered = Signal(object)

    def __init__(self, facet: str, library: Library, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.facet = facet
        self.specs = FACET_FIELDS[facet]
        self._form, self._shown = Form(), dict[str, tuple[object, object]]()
        self._model: Frozen | None = None
        self.fields: dict[str, QWidget] = self._form.fields
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, look.px(8), 0, 0)
        self.section = Section(_(FACET_TITLES[facet]))
        self.section.rows.addSpacing(look.px(4))
        self.section.rows.addWidget(self._form)
        rows.addWidget(self.section)
        self.capacity: Paragraph | None = None
        self.meaning: ChoiceField | None = None
        for spec in self.specs:
            self._add(spec)
        self.ways = WaysForm(library) if facet == "battery" else None
        self.ports = PortsForm() if facet == "charger" else None
        self._add_lists()

    def put(self, model: Frozen | None, kind: Kind) -> None:
        """Show the figures of a facet."""
        self._model = model
        for spec in self.specs:
            value = None if model is None else getattr(model, spec.name)
            put_value(self.fields[spec.name], spec, value)
            self._shown[spec.name] = (read_value(self.fields[spec.name], spec), value)
        if self.ways is not None:
            self.ways.put(model.ways if isinstance(model, Battery) else (), kind)
        if self.ports is not None:
            self.ports.put(model.ports if isinstance(model, Charger) else ())

    def model(self) -> Frozen | None:
        """The facet, None if no figure was given.

        Raises:
            pydantic.ValidationError: the figures contradict each other; InputFault: the shares cannot be so.
        """
        filled = self.figures()
        if self.ways is not None and (ways := self.ways.ways()):
            filled["ways"] = ways
        if self.ports is not None and (ports := self.ports.ports()):
            filled["ports"] = ports
        return FACET_MODELS[self.facet](**filled) if filled else None

    def figures(self) -> dict[str, Any]:
        """The fields that are filled, by the names of the model; what was not touched is as exact as it was."""
        read = {spec.name: self._value(spec) for spec in self.specs}
        return {name: value for name, value in read.items() if value not in (None, "")}

    def is_empty(self) -> bool:
        """Whether nothing was given."""
        lists = (self.ways, self.ports)
        return not self.figures() and all(part is None or part.is_empty() for part in lists)

    def ask_meaning(self, at_port: str, *, asked: bool) -> None:
        """Ask what the mAh mean, or take the question away; one that was answered begins anew.

        Args:
            at_port: the answer that they are not those of the cell, in words.
            asked: whether it is to be asked.
        """
        if self.meaning is None:
            return
        self.meaning.setItemText(self.meaning.count() - 1, at_port)
        if asked != self.meaning.isVisibleTo(self):
            self.meaning.setCurrentIndex(0)
            self._asking.setVisible(asked)
            self.meaning.setVisible(asked)

    def _asked(self) -> ChoiceField:
        choices = [
            (None, _("choose what the mAh mean…")),
            ("cell", _("of the cell (3.7 V)")),
            ("port", _("at the 5 V port")),
        ]
        field = ChoiceField(choices)
        field.setAccessibleName(_("What the mAh mean"))
        self._asking = self._form.add(_("mAh are those"), field)
        self._asking.hide()
        field.hide()
        field.activated.connect(lambda _index: self.answered.emit(field.chosen()))
        return field

    def _value(self, spec: FacetField) -> object:
        now = read_value(self.fields[spec.name], spec)
        shown, value = self._shown.get(spec.name, (None, None))
        return value if now == shown else now

    def _add(self, spec: FacetField) -> None:
        field = field_for(spec)
        field.setAccessibleName(f"{_(FACET_TITLES[self.facet])}: {_(spec.label)}")
        self._form.add(_(spec.label), field, name=spec.name)
        if spec.name == "on_hand_pct" and isinstance(field, NumberField):
            on_change(field, self._seen_anew)
            field.lineEdit().textEdited.connect(lambda _text: self._seen_anew())
        on_change(field, self.changed.emit)
        if (self.facet, spec.name) == CAPACITY_FIELD:
            self.meaning = self._asked()
            self.capacity = self._form.add_note()

    def _seen_anew(self) -> None:
        """A charge on hand that was typed, the same as before too, is one that is seen now, until told otherwise."""
        at = self.fields.get("on_hand_at")
        if isinstance(at, MomentField):
            at.put(None)

    def _add_lists(self) -> None:
        for part in (self.ways, self.ports):
            if part is not None:
                self.section.rows.addWidget(part)
                part.changed.connect(self.changed)
                part.grown.connect(self.grown)
