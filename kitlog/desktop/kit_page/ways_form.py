"""How a device draws: its ways of use, starter figures to begin with, and the shares of the time."""

from collections.abc import Callable, Collection, Sequence
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.budget.power.describe_presets import RADIO_5_5_90, RADIO_5_25_70, SharePreset
from kitlog.desktop import look
from kitlog.desktop.kit_page.shares_table import Shares, SharesTable
from kitlog.desktop.kit_page.way_row import STARTER, WayRow
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.fields import ChoiceField
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.fault import Fault
from kitlog.kit.facets import Share, WayOfUse
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, PhaseWay
from kitlog.outing.library import Library, StarterUse
from kitlog.paint.type_scale import Role
from kitlog.wording.faults import fault_text
from kitlog.wording.translate import _
from kitlog.wording.words import word

PRESETS: dict[Kind, tuple[SharePreset, ...]] = {Kind.RADIO: (RADIO_5_5_90, RADIO_5_25_70)}
"""Shares that are commonly planned with, by the kind of device."""


class WaysForm(QWidget):
    """A block for each way of use, and a table of their shares.

    Attributes:
        changed: anything was changed; grown: a way came or went.
        wrong: what cannot be so of the shares, under their table.
    """

    changed = Signal()
    grown = Signal()

    def __init__(self, library: Library, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._library, self._kind = library, Kind.OTHER
        self._cell = Item(id="cell", name="cell")
        self.today: Callable[[], date] = date.today
        self.rows: list[WayRow] = []
        self._lacking: SharePreset | None = None
        inside = QWidget()
        self._column = QVBoxLayout(inside)
        self.table = SharesTable()
        self.wrong = Paragraph("", Role.SECOND, "stop")
        self.starters, self.presets = ChoiceField(), ChoiceField()
        self.add = Button(_("Add a way"), Rank.ACT)
        self._assemble(inside)
        self.starters.activated.connect(lambda _index: self.take_starter())
        self.presets.activated.connect(lambda _index: self.take_preset())
        self.add.clicked.connect(self._add_new)
        self.table.edited.connect(self._look_at_shares)
        self.table.edited.connect(self.changed)

    def put(self, ways: Sequence[WayOfUse], kind: Kind) -> None:
        """Show the ways of a device of a kind."""
        self._kind = kind
        devices = list(dict.fromkeys(use.device for use in self._library.starter_uses if use.kind is kind))
        self.starters.offer([(None, _("Starter figures…")), *((name, word(name)) for name in devices)])
        self.starters.setVisible(bool(devices))
        presets = PRESETS.get(kind, ())
        self.presets.offer([(None, _("Usual shares…")), *((preset, preset.name) for preset in presets)])
        self.presets.setVisible(bool(presets))
        self._set([(self._row(way), way.shares) for way in ways])

    def ways(self) -> tuple[WayOfUse, ...]:
        """The ways as they stand; a row in which nothing was entered is left out.

        Raises:
            pydantic.ValidationError: a way has no name or half a description; InputFault: the shares cannot be so.
        """
        self.table.check()
        return tuple(
            way if way.shares == shares else way.model_copy(update={"shares": shares})
            for row, shares in zip(self.rows, self.table.shares(), strict=True)
            if (way := row.way()) is not None
        )

    def is_empty(self) -> bool:
        """Whether there is no way of use in which anything was entered."""
        return not any(row.was is not None or row.name.text().strip() for row in self.rows)

    def show_draws(self, item: Item) -> None:
        """Show what each way comes to in an item with that battery."""
        self._cell = item
        for row in self.rows:
            row.show_draw(item)

    def take_starter(self) -> None:
        """Starter figures of the chosen device; what is the pilot's own stays, and keeps its draw.

        A way of the same name takes the starter's shares, in the ways of moving of which the pilot's own tell nothing.
        """
        device = self.starters.chosen()
        if device is None:
            return
        self.starters.setCurrentIndex(0)
        uses = [use for use in self._library.starter_uses if (use.kind, use.device) == (self._kind, device)]
        own = [(row, shares) for row, shares in self._known() if not row.is_starter()]
        names = {row.called() for row, _shares in own}
        told = {share.during for _row, shares in own for share in shares}
        offered = {use.name: _outside(use.shares, told) for use in uses}
        kept = [(row, (*shares, *offered.get(row.called(), ()))) for row, shares in own]
        new = [(self._row(_way(use)), offered[use.name]) for use in uses if use.name not in names]
        self._set([*kept, *new])

    def take_preset(self) -> None:
        """The shares of a preset for the first way of each of its names, in the phases usual for the kind."""
        preset = self.presets.chosen()
        self.presets.setCurrentIndex(0)
        if not isinstance(preset, SharePreset):
            return
        holders = {self._first_called(name): share for name, share in preset.shares.items()}
        lacking = None in holders
        self.note.setText(_lacking_text(preset) if lacking else _source_text(preset))
        self._lacking = preset if lacking else None
        if not lacking:
            used_in = self._library.facts(self._kind).used_in
            self._set([(row, _with(shares, used_in, holders.get(row))) for row, shares in self._known()])

    def _unsay_lacking(self) -> None:
        """Once the ways are there that a preset wanted, ask for it to be chosen again."""
        preset = self._lacking
        if preset is not None and all(self._first_called(name) for name in preset.shares):
            self._lacking = None
            self.note.setText(_("The ways for {preset} are there: choose it again.").format(preset=preset.name))

    def _first_called(self, name: str) -> WayRow | None:
        return next((row for row in self.rows if row.called().casefold().startswith(name)), None)

    def _add_new(self) -> None:
        row = self._row(None)
        self._set([*self._known(), (row, ())])
        row.name.setFocus()

    def _remove(self, row: WayRow) -> None:
        at = self.rows.index(row)
        self._set([known for known in self._known() if known[0] is not row])
        (self.rows[min(at, len(self.rows) - 1)].name if self.rows else self.add).setFocus()

    def _known(self) -> list[tuple[WayRow, Shares]]:
        return list(zip(self.rows, self.table.shares(), strict=True))

    def _row(self, way: WayOfUse | None) -> WayRow:
        row = WayRow(way, self.today())
        row.changed.connect(lambda: self._edited(row))
        row.drop.clicked.connect(lambda: self._remove(row))
        return row

    def _look_at_shares(self) -> None:
        """Say at once what cannot be so."""
        said = ""
        try:
            self.table.check()
        except Fault as fault:
            said = fault_text(fault).line
        self.wrong.setText(said)
        self.wrong.setAccessibleName(said)
        self.wrong.setVisible(bool(said))

    def _edited(self, row: WayRow) -> None:
        row.show_draw(self._cell)
        self.table.name_row(self.rows.index(row), row.called())
        self._unsay_lacking()
        self.changed.emit()

    def _set(self, known: Sequence[tuple[WayRow, Shares]]) -> None:
        """Show these ways, and let go of the rows that are none of them."""
        rows = [row for row, _shares in known]
        for row in self.rows:
            if row not in rows:
                row.setParent(None)
                row.deleteLater()
        for number, row in enumerate(rows, 1):
            self._column.addWidget(row)
            row.number(number)
            row.show_draw(self._cell)
        self.rows = rows
        self._unsay_lacking()
        self.table.put([(row.called(), shares) for row, shares in known])
        for widget in (self.table, self.table_head):
            widget.setVisible(bool(rows))
        self._look_at_shares()
        self.grown.emit()
        self.changed.emit()

    def _assemble(self, inside: QWidget) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, look.px(8), 0, 0)
        column.setSpacing(look.px(6))
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(look.px(6))
        self.starters.setAccessibleName(_("Starter figures"))
        self.presets.setAccessibleName(_("Usual shares"))
        self.note = Paragraph(
            _("Starter figures are never measured ones: measure yours, then change them."), Role.SMALL
        )
        self.table_head = Text(
            _("Shares of the time in %: 0 is off all the time, an empty column is not said"), Role.SECOND, "muted"
        )
        acts = QHBoxLayout()
        acts.setSpacing(look.px(8))
        for widget in (self.starters, self.presets, self.add):
            acts.addWidget(widget)
        acts.addStretch()
        column.addWidget(Text(_("Ways of use"), Role.NAME))
        column.addWidget(inside)
        column.addWidget(self.table_head)
        column.addWidget(self.table)
        column.addWidget(self.wrong)
        self.wrong.hide()
        column.addLayout(acts)
        column.addWidget(self.note)


def _way(use: StarterUse) -> WayOfUse:
    return WayOfUse(
        name=use.name,
        power_w=use.likely_w,
        low_w=use.low_w,
        high_w=use.high_w,
        basis=STARTER,
        source=use.source,
        shares=use.shares,
    )


def _outside(shares: Shares, told: Collection[PhaseWay]) -> Shares:
    """The shares in ways of moving of which the pilot's own ways tell nothing."""
    return tuple(share for share in shares if share.during not in told)


def _with(shares: Shares, during: Sequence[PhaseWay], share: float | None) -> Shares:
    """The shares of a way with another one in some ways of moving; None takes it out of them."""
    kept = _outside(shares, during)
    return kept if share is None else (*kept, *(Share(during=way, share=share) for way in during))


def _lacking_text(preset: SharePreset) -> str:
    names = ", ".join(f"“{name} …”" for name in preset.shares)
    return _("{preset} wants ways of use whose names begin with {names}.").format(preset=preset.name, names=names)


def _source_text(preset: SharePreset) -> str:
    return _("{preset}: {source}.").format(preset=preset.name, source=preset.source)
