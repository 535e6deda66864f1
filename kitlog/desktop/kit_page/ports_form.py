"""The ports of a charger: a row for each, added and taken away by keyboard."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.kit_page.facet_fields import CONNECTORS
from kitlog.desktop.kit_page.field_values import on_change
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.fields import NumberField, TickField
from kitlog.desktop.parts.text import Text
from kitlog.desktop.parts.word_field import WordField
from kitlog.kit.facets import ChargerPort
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

MOST_W = 1000


@dataclass(frozen=True, slots=True)
class _Row:
    """The fields of one port, what they showed at first, and the port they showed."""

    whole: QWidget
    power: NumberField
    connector: WordField
    fixed: TickField
    drop: Button
    was: ChargerPort
    shown: ChargerPort

    def read(self) -> ChargerPort:
        """The port as it stands; one that was not touched is as exact as it was."""
        now = _read(self.power, self.connector, self.fixed)
        return self.was if now == self.shown else now


class PortsForm(QWidget):
    """Rows of power, connector and whether a cable hangs fixed on it.

    Attributes:
        changed: a figure was changed; grown: a row came or went.
    """

    changed = Signal()
    grown = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows: list[_Row] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(0, look.px(8), 0, 0)
        column.setSpacing(look.px(6))
        column.addWidget(Text(_("Ports"), Role.NAME))
        inside = QWidget()
        self._column = QVBoxLayout(inside)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(look.px(6))
        column.addWidget(inside)
        self.add = Button(_("Add a port"), Rank.ACT)
        self.add.clicked.connect(lambda: self._grow(ChargerPort()))
        acts = QHBoxLayout()
        acts.addWidget(self.add)
        acts.addStretch()
        column.addLayout(acts)

    def put(self, ports: Sequence[ChargerPort]) -> None:
        """Show the ports of a charger."""
        while self.rows:
            self._take_out(self.rows[-1])
        for port in ports:
            self._append(port)

    def ports(self) -> tuple[ChargerPort, ...]:
        """The ports as they stand; a row of which nothing is known is a port all the same."""
        return tuple(row.read() for row in self.rows)

    def is_empty(self) -> bool:
        """Whether there is no port."""
        return not self.rows

    def _grow(self, port: ChargerPort) -> None:
        row = self._append(port)
        self.grown.emit()
        self.changed.emit()
        row.power.setFocus()

    def _append(self, port: ChargerPort) -> _Row:
        whole, power = QWidget(), NumberField("W", decimals=1, most=MOST_W)
        connector, fixed = WordField(CONNECTORS, _("connector")), TickField(_("with a fixed cable"))
        drop = Button(_("Remove"), Rank.ACT)
        line = QHBoxLayout(whole)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(look.px(8))
        for cell, stretch in ((power, 0), (connector, 1), (fixed, 0), (drop, 0)):
            line.addWidget(cell, stretch)
        power.put(port.power_w)
        connector.setText(port.connector)
        fixed.setChecked(port.fixed_cable)
        row = _Row(whole, power, connector, fixed, drop, port, _read(power, connector, fixed))
        self.rows.append(row)
        self._column.addWidget(whole)
        drop.clicked.connect(lambda: self._remove(row))
        for field in (power, connector):
            on_change(field, self.changed.emit)
        fixed.toggled.connect(lambda _on: self.changed.emit())
        self._name_rows()
        return row

    def _remove(self, row: _Row) -> None:
        at = self.rows.index(row)
        self._take_out(row)
        self._name_rows()
        self.grown.emit()
        self.changed.emit()
        (self.rows[min(at, len(self.rows) - 1)].drop if self.rows else self.add).setFocus()

    def _take_out(self, row: _Row) -> None:
        self.rows.remove(row)
        row.whole.setParent(None)
        row.whole.deleteLater()

    def _name_rows(self) -> None:
        for number, row in enumerate(self.rows, 1):
            row.power.setAccessibleName(_("Port {n}: most power").format(n=number))
            row.connector.setAccessibleName(_("Port {n}: connector").format(n=number))
            row.fixed.setAccessibleName(_("Port {n}: with a fixed cable").format(n=number))
            row.drop.setAccessibleName(_("Remove port {n}").format(n=number))


def _read(power: NumberField, connector: WordField, fixed: TickField) -> ChargerPort:
    return ChargerPort(power_w=power.number(), connector=connector.text(), fixed_cable=fixed.isChecked())
