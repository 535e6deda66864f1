"""Fields of a form by their kind: filled, read, and listened to."""

from collections.abc import Callable
from datetime import date, datetime

from PySide6.QtWidgets import QWidget

from kitlog.desktop.kit_page.facet_fields import FacetField
from kitlog.desktop.parts.fields import ChoiceField, DateField, LineField, NumberField
from kitlog.desktop.parts.moment_field import MomentField
from kitlog.desktop.parts.word_field import WordField
from kitlog.wording.translate import _
from kitlog.wording.words import word


def field_for(spec: FacetField) -> QWidget:
    """The field that a figure is entered in."""
    if spec.choices:
        return ChoiceField([(None, word("not known")), *((value, word(value)) for value in spec.choices)])
    if spec.words:
        return WordField(spec.words, _(spec.hint) if spec.hint else "")
    if spec.form == "text":
        return LineField()
    if spec.form == "day":
        return DateField()
    if spec.form == "moment":
        return MomentField()
    return NumberField(spec.unit, decimals=spec.decimals, most=spec.most, least=spec.least)


def put_value(field: QWidget, spec: FacetField, value: object) -> None:
    """Show a value of the model."""
    match field:
        case ChoiceField():
            field.choose(None if value is None else str(value))
        case LineField() | WordField():
            field.setText("" if value is None else str(value))
        case DateField():
            field.put(value if isinstance(value, date) else None)
        case MomentField():
            field.put(value if isinstance(value, datetime) else None)
        case NumberField():
            field.put(None if value is None else float(str(value)) / spec.factor)


def read_value(field: QWidget, spec: FacetField) -> object:
    """The value of the model that stands in a field; None or "" where there is none."""
    match field:
        case ChoiceField():
            return field.chosen()
        case LineField() | WordField():
            return field.text().strip()
        case DateField():
            return field.day()
        case MomentField():
            return field.moment()
        case NumberField():
            number = field.number()
            if number is None:
                return None
            return round(number * spec.factor) if spec.whole else number * spec.factor
    return None


def on_change(field: QWidget, do: Callable[[], object]) -> None:
    """Do something whenever a field is changed."""
    match field:
        case WordField():
            field.editTextChanged.connect(lambda _text: do())
        case ChoiceField():
            field.currentIndexChanged.connect(lambda _index: do())
        case LineField():
            field.textChanged.connect(lambda _text: do())
        case DateField():
            field.dateChanged.connect(lambda _day: do())
        case MomentField():
            field.dateTimeChanged.connect(lambda _moment: do())
        case NumberField():
            field.valueChanged.connect(lambda _value: do())
