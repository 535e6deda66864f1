"""The form of one facet, made from its list of fields."""

from typing import Any

from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.kit_page.facet_fields import FACET_FIELDS, FACET_MODELS, FACET_TITLES, FacetField
from kitlog.desktop.kit_page.ways_form import WaysForm
from kitlog.desktop.parts.fields import ChoiceField, LineField, NumberField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.section import Section
from kitlog.kit.facets import Battery
from kitlog.kit.kinds import Kind
from kitlog.outing.library import Library
from kitlog.units.model import Frozen
from kitlog.wording.translate import _
from kitlog.wording.words import word


class FacetForm(QWidget):
    """Figures of one facet.

    Args:
        facet: its name, ``wing``; library: for the starter figures of devices.
    """

    def __init__(self, facet: str, library: Library, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.facet = facet
        self._fields = FACET_FIELDS[facet]
        self._form = Form()
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, look.px(8), 0, 0)
        section = Section(_(FACET_TITLES[facet]))
        section.rows.addSpacing(look.px(4))
        section.rows.addWidget(self._form)
        rows.addWidget(section)
        for spec in self._fields:
            field = _widget(spec)
            field.setAccessibleName(f"{_(FACET_TITLES[facet])}: {_(spec.label)}")
            self._form.add(_(spec.label), field, name=spec.name)
        self.ways = WaysForm(library) if facet == "battery" else None
        if self.ways is not None:
            section.rows.addWidget(self.ways)

    def put(self, model: Frozen | None, kind: Kind) -> None:
        """Show the figures of a facet."""
        for spec in self._fields:
            _put(self._form.fields[spec.name], spec, None if model is None else getattr(model, spec.name))
        if self.ways is not None:
            self.ways.put(model.ways if isinstance(model, Battery) else (), kind)

    def model(self) -> Frozen | None:
        """The facet, None if no figure was given.

        Raises:
            pydantic.ValidationError: the figures contradict each other.
        """
        given = {spec.name: _read(self._form.fields[spec.name], spec) for spec in self._fields}
        filled: dict[str, Any] = {name: value for name, value in given.items() if value not in (None, "")}
        if self.ways is not None and self.ways.ways():
            filled["ways"] = self.ways.ways()
        return FACET_MODELS[self.facet](**filled) if filled else None


def _widget(spec: FacetField) -> QWidget:
    if spec.choices:
        return ChoiceField([(None, word("not known")), *((value, word(value)) for value in spec.choices)])
    if spec.text:
        return LineField()
    return NumberField(spec.unit, decimals=spec.decimals, most=spec.most, least=spec.least)


def _put(field: QWidget, spec: FacetField, value: object) -> None:
    if isinstance(field, ChoiceField):
        field.choose(None if value is None else str(value))
    elif isinstance(field, LineField):
        field.setText("" if value is None else str(value))
    elif isinstance(field, NumberField):
        field.put(None if value is None else float(str(value)) / spec.factor)


def _read(field: QWidget, spec: FacetField) -> object:
    if isinstance(field, ChoiceField):
        return field.chosen()
    if isinstance(field, LineField):
        return field.text().strip()
    if isinstance(field, NumberField):
        number = field.number()
        if number is None:
            return None
        return round(number * spec.factor) if spec.whole else number * spec.factor
    return None
