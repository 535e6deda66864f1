"""How a device draws: its ways of use, and starter figures to begin with."""

from collections.abc import Sequence

from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.fields import ChoiceField, LineField, NumberField
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.kit.facets import WayOfUse
from kitlog.kit.kinds import Kind
from kitlog.outing.library import Library, StarterUse
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _
from kitlog.wording.words import word

BASES = ("measured", "maker", "starter", "guess")


class WaysForm(QWidget):
    """Rows of name, draw and how sure it is; the shares of the time stay as they are."""

    def __init__(self, library: Library, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._library = library
        self._kind = Kind.OTHER
        self._rows: list[tuple[WayOfUse, LineField, NumberField, ChoiceField]] = []
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, look.px(8), 0, 0)
        rows.setSpacing(look.px(6))
        rows.addWidget(Text(_("Ways of use"), Role.NAME))
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(look.px(8))
        self._grid.setVerticalSpacing(look.px(6))
        self._grid.setColumnStretch(0, 1)
        rows.addLayout(self._grid)
        acts = QHBoxLayout()
        self._starters = ChoiceField()
        self._starters.setAccessibleName(_("Starter figures"))
        self._starters.activated.connect(self._take_starter)
        add = Button(_("Add a way"), Rank.ACT)
        add.clicked.connect(lambda: self._put([*self.ways(), WayOfUse(name=_("on"), power_w=0.0)]))
        acts.addWidget(self._starters)
        acts.addWidget(add)
        acts.addStretch()
        rows.addLayout(acts)
        rows.addWidget(
            Paragraph(_("Starter figures are never measured ones: measure yours, then change them."), Role.SMALL)
        )

    def put(self, ways: Sequence[WayOfUse], kind: Kind) -> None:
        """Show the ways of a device of a kind."""
        self._kind = kind
        devices = list(dict.fromkeys(use.device for use in self._library.starter_uses if use.kind is kind))
        self._starters.offer([(None, _("Starter figures…")), *((name, word(name)) for name in devices)])
        self._starters.setVisible(bool(devices))
        self._put(ways)

    def ways(self) -> tuple[WayOfUse, ...]:
        """The ways as they stand; a row without a name is left out."""
        return tuple(
            way.model_copy(
                update={"name": name.text().strip(), "power_w": power.number() or 0.0, "basis": basis.chosen()}
            )
            for way, name, power, basis in self._rows
            if name.text().strip()
        )

    def _put(self, ways: Sequence[WayOfUse]) -> None:
        clear(self._grid)
        self._rows = []
        for number, way in enumerate(ways):
            name, power = LineField(way.name), NumberField("W", decimals=3, most=1000, unknown="0 W")
            basis = ChoiceField([(value, word(value)) for value in dict.fromkeys((*BASES, way.basis))])
            drop = Button(_("Remove"), Rank.ACT)
            power.put(way.power_w)
            basis.choose(way.basis)
            _name_cells(number + 1, name, power, basis)
            drop.setAccessibleName(_("Remove {name}").format(name=way.name))
            drop.clicked.connect(lambda _on=False, at=number: self._remove(at))
            cells: tuple[QWidget, ...] = (name, power, basis, drop)
            for column, cell in enumerate(cells):
                self._grid.addWidget(cell, number, column)
            self._rows.append((way, name, power, basis))

    def _remove(self, number: int) -> None:
        ways = list(self.ways())
        del ways[number : number + 1]
        self._put(ways)

    def _take_starter(self) -> None:
        device = self._starters.chosen()
        if device is not None:
            uses = [use for use in self._library.starter_uses if use.kind is self._kind and use.device == device]
            self._put([_way(use) for use in uses])
            self._starters.setCurrentIndex(0)


def _name_cells(number: int, name: QWidget, power: QWidget, basis: QWidget) -> None:
    for cell, what in ((name, _("name")), (power, _("draw")), (basis, _("how sure"))):
        cell.setAccessibleName(_("Way of use {n}: {what}").format(n=number, what=what))


def _way(use: StarterUse) -> WayOfUse:
    return WayOfUse(name=use.name, power_w=use.likely_w, basis="starter", shares=use.shares)
