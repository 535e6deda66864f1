"""The fields that a draw is described with, one set for each of the four ways to describe it."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QWidget

from kitlog.desktop import look
from kitlog.desktop.kit_page.field_values import on_change
from kitlog.desktop.parts.fields import DateField, NumberField
from kitlog.desktop.parts.text import Text
from kitlog.kit.facets import WayGiven, WayOfUse
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import N_, _

GIVEN: dict[WayGiven, str] = {
    "watts": N_("watts"),
    "current": N_("a current"),
    "hours": N_("how long it lasts"),
    "drop": N_("a drop of charge"),
}
"""What a draw can be described with, in the words of the choice."""

_WORDS: dict[str, str] = {
    "power_w": "",
    "low_w": N_("from"),
    "high_w": N_("to"),
    "current_ma": "",
    "at_v": N_("at"),
    "lasts_h": N_("lasts"),
    "from_pct": N_("from"),
    "to_pct": N_("to"),
    "over_h": N_("in"),
    "measured_on": N_("on"),
}
"""Before each field."""

SAID = {
    "power_w": N_("likely draw"),
    "low_w": N_("lowest draw"),
    "high_w": N_("highest draw"),
    "current_ma": N_("current"),
    "at_v": N_("at volts"),
    "lasts_h": N_("lasts, from full to off"),
    "from_pct": N_("charge at first"),
    "to_pct": N_("charge at the end"),
    "over_h": N_("hours between"),
    "measured_on": N_("day of the measurement"),
}
"""For screen readers."""

SETS: dict[WayGiven, tuple[str, ...]] = {
    "watts": ("power_w", "low_w", "high_w"),
    "current": ("current_ma", "at_v"),
    "hours": ("lasts_h",),
    "drop": ("from_pct", "to_pct", "over_h", "measured_on"),
}
"""The model's fields by what is described."""

NUMBER_PX = (64, 104)
"""Least and most width of a number, in px of the design."""


DAY_PX = 152
"""Least width of a day, in px of the design: "25 Nov 2026" with the sign that it opens."""


class DrawFields(QStackedWidget):
    """Only the fields of what is chosen are seen; the others keep what was typed in them."""

    def __init__(self, changed: Callable[[], object], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.day = DateField()
        self.day.setMinimumWidth(look.px(DAY_PX))
        self.fields: dict[str, NumberField | DateField] = {
            "power_w": _number("W", 3, 1000),
            "low_w": _number("W", 3, 1000),
            "high_w": _number("W", 3, 1000),
            "current_ma": _number("mA", 1, 1_000_000),
            "at_v": _number("V", 2, 100),
            "lasts_h": _number("h", 2, 10_000),
            "from_pct": _number("%", 1, 100),
            "to_pct": _number("%", 1, 100),
            "over_h": _number("h", 2, 10_000),
            "measured_on": self.day,
        }
        for names in SETS.values():
            self.addWidget(self._page(names))
        for field in self.fields.values():
            on_change(field, changed)

    def choose(self, given: WayGiven) -> None:
        """Show the fields of one description."""
        self.setCurrentIndex(list(SETS).index(given))
        self.updateGeometry()

    def sizeHint(self) -> QSize:
        """As wide as the fields that are seen."""
        shown = self.currentWidget()
        return QSize() if shown is None else shown.sizeHint()

    def minimumSizeHint(self) -> QSize:
        """No narrower than the fields that are seen can be."""
        shown = self.currentWidget()
        return QSize() if shown is None else shown.minimumSizeHint()

    def put(self, way: WayOfUse | None) -> None:
        """Show all that is known of a draw."""
        for name, field in self.fields.items():
            field.put(None if way is None else getattr(way, name))

    def values(self, given: WayGiven) -> dict[str, Any]:
        """What stands in the fields of one description, by the names of the model."""
        return {name: _read(self.fields[name]) for name in SETS[given]}

    def name_fields(self, way: str) -> None:
        """Name every field for screen readers after the way of use it belongs to."""
        for name, field in self.fields.items():
            field.setAccessibleName(f"{way}: {_(SAID[name])}")

    def _page(self, names: tuple[str, ...]) -> QWidget:
        page = QWidget()
        row = QHBoxLayout(page)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.px(6))
        for name in names:
            if _WORDS[name]:
                row.addWidget(Text(_(_WORDS[name]), Role.SECOND, "muted"))
            row.addWidget(self.fields[name])
        if names == SETS["hours"]:
            row.addWidget(Text(_("like this, from full to off"), Role.SECOND, "muted"))
        row.addStretch()
        return page


def _number(unit: str, decimals: int, most: float) -> NumberField:
    field = NumberField(unit, decimals=decimals, most=most, unknown="–")
    field.setMinimumWidth(look.px(NUMBER_PX[0]))
    field.setMaximumWidth(look.px(NUMBER_PX[1]))
    return field


def _read(field: NumberField | DateField) -> object:
    return field.day() if isinstance(field, DateField) else field.number()
