"""One way of use: its name, what its draw is described with, and at once what that comes to."""

from datetime import date
from typing import Any

from pydantic import ValidationError
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.kit_page.draw_fields import GIVEN, SAID, SETS, DrawFields
from kitlog.desktop.kit_page.field_values import on_change
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.fields import ChoiceField, LineField
from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.fault import Fault, InputFault
from kitlog.kit.facets import WayGiven, WayOfUse
from kitlog.kit.item import Item
from kitlog.packing.capacity import energy_wh
from kitlog.packing.draws import known_draw, way_draw
from kitlog.paint.type_scale import Role
from kitlog.units.refused import refused
from kitlog.wording.draw_text import SURE_SHORT, draw_text, not_known_text, sure_text, watts_text
from kitlog.wording.faults import fault_text
from kitlog.wording.translate import _

NAMELESS = "?"
"""For the draw of a way that has no name yet; it is not kept so."""

STARTER, MEASURED, GUESS = "starter", "measured", "guess"


class WayRow(QWidget):
    """The fields of one way of use.

    Args:
        way: what is known; None for a new one. today: the day of a new measurement.

    Attributes:
        changed: anything was changed.
    """

    changed = Signal()

    def __init__(self, way: WayOfUse | None, today: date, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.was, self._today = way, today
        self._shown: dict[str, Any] = {}
        self.name = LineField(way.name if way else "", _("tracking, screen off …"))
        self.given = ChoiceField([(given, _(words)) for given, words in GIVEN.items()])
        self.basis = ChoiceField(_bases(way))
        self.source = LineField(way.source if way else "", _("where it comes from"))
        self.drop = Button(_("Remove"), Rank.ACT)
        self.draws = DrawFields(self._edited)
        self.result = Paragraph("", Role.SMALL, "muted")
        self._assemble()
        self._put(way)
        self._shown = self._values()
        for field in (self.name, self.basis, self.source):
            on_change(field, self._edited)
        self.given.currentIndexChanged.connect(lambda _index: self._switched())

    def way(self) -> WayOfUse | None:
        """The way as it stands; None for a row in which nothing was entered.

        Raises:
            pydantic.ValidationError: it has no name, or only half of a description.
        """
        values = self._values()
        if self.was is not None and values == self._shown:
            return self.was
        return self._made(values) if values["name"] or self._has_figures(values) else None

    def _has_figures(self, values: dict[str, Any]) -> bool:
        return any(values[name] is not None for name in SETS[self._chosen()] if name != "measured_on")

    def _made(self, values: dict[str, Any]) -> WayOfUse:
        """The way with other values; what it was described with before goes where that has changed."""
        same = self.was is not None and self.was.described == self._chosen()
        kept = {name: getattr(self.was, name) for name in WayOfUse.model_fields} if same else {}
        return WayOfUse(**(kept | values))

    def called(self) -> str:
        """The name as it stands."""
        return self.name.text().strip()

    def is_starter(self) -> bool:
        """Whether it is a starter figure still."""
        return bool(self._values()["basis"] == STARTER)

    def number(self, number: int) -> None:
        """Name the fields for screen readers, which way of use they belong to."""
        way = _("Way of use {n}").format(n=number)
        for field, what in (
            (self.name, _("name")),
            (self.given, _("described with")),
            (self.basis, _("how sure")),
            (self.source, _("source")),
        ):
            field.setAccessibleName(f"{way}: {what}")
        self.draws.name_fields(way)
        self.drop.setAccessibleName(_("Remove {name}").format(name=self.called() or way))

    def show_draw(self, item: Item) -> None:
        """Show what the draw comes to in a device with that battery, or why it comes to nothing."""
        text, tone = self._draw(item)
        self.result.say(text, tone)
        self.result.setVisible(bool(text))
        self.result.setAccessibleName(text)
        self.result.updateGeometry()

    def _draw(self, item: Item) -> tuple[str, str]:
        values = self._values()
        if not self._has_figures(values):
            return _half_text(self._chosen()), "muted"
        try:
            way = self._made(values | {"name": self.called() or NAMELESS})
            draw = way_draw(way, item)
        except ValidationError as error:
            missing = refused(error).code in {"way.half_described", "way.not_described"}
            return (_half_text(self._chosen()), "muted") if missing else (_refused_text(error), "stop")
        except Fault as fault:
            return fault_text(fault).line, "stop"
        if draw is None:
            return not_known_text(has_energy=bool(energy_wh(item))), "look"
        return draw_text(draw, way) + self._before(way, item), "ink" if way.basis == MEASURED else "muted"

    def _before(self, way: WayOfUse, item: Item) -> str:
        """What a measurement takes the place of; the source of a starter figure."""
        was = self.was
        if way.basis == STARTER and way.source:
            return f". {way.source}"
        if was is None or was.basis == MEASURED or way.basis != MEASURED:
            return ""
        draw = known_draw(was, item)
        if draw is None:
            return ""
        return _(" (before: {draw}, {sure})").format(draw=watts_text(draw.likely_w), sure=sure_text(was.basis))

    def _chosen(self) -> WayGiven:
        given = self.given.chosen()
        return next(one for one in SETS if one == given)

    def _values(self) -> dict[str, Any]:
        given = self._chosen()
        basis = MEASURED if given == "drop" else self.basis.chosen()
        source = self.source.text().strip()
        if self.was is not None and self.was.basis == STARTER != basis and source == self.was.source:
            source = ""
        return {
            "name": self.called(),
            "basis": basis,
            "source": source,
            **self.draws.values(given),
        }

    def _put(self, way: WayOfUse | None) -> None:
        self.given.choose((way.described if way else "") or "watts")
        self.basis.choose(way.basis if way else GUESS)
        self.draws.put(way)
        self._show_chosen()

    def _edited(self) -> None:
        """A starter figure that is changed is none any more."""
        if not self._shown:
            return
        figures = self.draws.values(self._chosen())
        if self.basis.chosen() == STARTER and any(self._shown.get(name) != value for name, value in figures.items()):
            self.basis.choose(GUESS)
        self._show_chosen()
        self.changed.emit()

    def _switched(self) -> None:
        """Another description was chosen; a new measurement is of today until told otherwise."""
        if self._chosen() == "drop" and (self.was is None or self.was.described != "drop"):
            self.draws.day.put(self._today)
        self._edited()

    def _show_chosen(self) -> None:
        given = self._chosen()
        self.draws.choose(given)
        self.basis.setVisible(given != "drop")
        self.source.setVisible(self._values()["basis"] != STARTER)

    def _assemble(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, look.px(6))
        column.setSpacing(look.px(4))
        head, middle, foot = QHBoxLayout(), WrapRow(), QHBoxLayout()
        for row, cells in (
            (head, ((self.name, 1), (self.given, 0), (self.drop, 0))),
            (foot, ((self.result, 3), (self.source, 2))),
        ):
            row.setSpacing(look.px(8))
            for cell, stretch in cells:
                row.addWidget(cell, stretch)
        middle.add(self.draws, wide=True)
        middle.add(self.basis, pushed=True)
        column.addLayout(head)
        column.addWidget(middle)
        column.addLayout(foot)


def _bases(way: WayOfUse | None) -> list[tuple[object, str]]:
    """How sure a figure can be; a starter figure cannot be made by hand."""
    known = way.basis if way else GUESS
    bases = [base for base in SURE_SHORT if base != STARTER or known == STARTER]
    return [(base, _(SURE_SHORT.get(base, base))) for base in dict.fromkeys((*bases, known))]


def _refused_text(error: ValidationError) -> str:
    """What is refused, with the field called as it is in the form."""
    fault = refused(error)
    field = str(fault.facts.get("field", ""))
    named = {**fault.facts, "field": _(SAID[field])} if field in SAID else fault.facts
    return fault_text(InputFault(fault.code, **named)).line


def _half_text(given: WayGiven) -> str:
    return {
        "watts": _("not known: give the likely draw"),
        "current": _("not known: give the current and its volts"),
        "hours": _("not known: give the hours"),
        "drop": _("not known: give the charge at both ends, and the hours between"),
    }[given]
