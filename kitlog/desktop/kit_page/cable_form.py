"""The two ends of a cable, kept as one text: ``USB-C to micro-USB``."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.kit_page.facet_fields import CONNECTORS
from kitlog.desktop.kit_page.facet_part import FacetPart
from kitlog.desktop.kit_page.field_values import on_change
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.section import Section
from kitlog.desktop.parts.word_field import WordField
from kitlog.kit.facets import Battery
from kitlog.kit.kinds import Kind
from kitlog.packing.cables import connectors, ends
from kitlog.units.model import Frozen
from kitlog.wording.translate import _

BETWEEN = " to "


class CableForm(FacetPart):
    """What a cable joins. Ends that stand in its name already are offered as hints."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._battery: Battery | None = None
        self.one, self.other = WordField(CONNECTORS), WordField(CONNECTORS)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, look.px(8), 0, 0)
        section, form = Section(_("Cable")), Form()
        form.add(_("One end"), self.one)
        form.add(_("Other end"), self.other)
        section.rows.addSpacing(look.px(4))
        section.rows.addWidget(form)
        rows.addWidget(section)
        for field in (self.one, self.other):
            on_change(field, self.changed.emit)

    def put(self, model: Frozen | None, kind: Kind) -> None:  # noqa: ARG002  # a cable is a cable
        """Show the ends; a text that names no two of them stands in the first."""
        self._battery = model if isinstance(model, Battery) else None
        text = "" if self._battery is None else self._battery.connector
        known = ends(text)
        one, _between, other = text.partition(BETWEEN)
        if known is not None and not other:
            one, other = known
        self.one.setText(one.strip())
        self.other.setText(other.strip())
        self._shown = self._text()

    def hint(self, name: str) -> None:
        """Say which ends the name tells already."""
        told = connectors(name) if ends(name) is not None else ()
        for field, known in zip((self.one, self.other), told or ("", ""), strict=True):
            field.hint(_("{connector}, as the name says").format(connector=known) if known else "")

    def model(self) -> Frozen | None:
        """The ends as one text; what else the battery of a cable holds stays as it is."""
        text = self._text()
        was = self._battery
        if was is None:
            return Battery(connector=text) if text else None
        left = was if text == self._shown else was.model_copy(update={"connector": text})
        return None if left == Battery() else left

    def is_empty(self) -> bool:
        """Whether nothing was given."""
        return self.model() is None

    def _text(self) -> str:
        return BETWEEN.join(part for part in (self.one.text(), self.other.text()) if part)
