"""The power plan of one device or bank: charge at the start, shares of use phase by phase, and its plugs."""

from collections.abc import Iterable
from datetime import datetime

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QScrollBar, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.phase_column import PhaseColumn
from kitlog.desktop.outing_page.plan_words import hm_text
from kitlog.desktop.outing_page.plug_fields import Banks
from kitlog.desktop.outing_page.share_acts import ShareActs
from kitlog.desktop.outing_page.start_fields import StartFields
from kitlog.desktop.outing_page.wide_area import WideArea
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.line import Hairline
from kitlog.desktop.parts.text import CutText, Paragraph, Text
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.kit.facets import WayOfUse
from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, PlugPlan
from kitlog.packing.capacity import energy_wh, is_bank
from kitlog.packing.draws import known_draw
from kitlog.packing.on_hand import on_hand
from kitlog.packing.plug_checks import REFUSED, PlugCheck
from kitlog.packing.plug_effect import IdlePlug
from kitlog.packing.power_plan import with_start
from kitlog.paint.type_scale import Role
from kitlog.wording.charge_text import seen_text as when_text
from kitlog.wording.figures import number_text
from kitlog.wording.power_plan_text import (
    Names,
    hanging_text,
    idle_plug_text,
    plug_trouble_text,
    seen_text,
    take_text,
    thing_text,
    way_draw_lines,
    way_text,
)
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper

NAMES_PX, PHASE_PX = 228, 114


class DevicePlan(QWidget):
    """The fields of one item; a charge that is seen while it is open is told, and changes no field.

    Attributes:
        changed: anything was changed; plugged: a plug was.
        seen: the charge it was last seen with; take: begins the day with that.
        start: charge at the start; columns: by phase, none for a bank; acts: what fills them.
        wrong, plug_wrong: what cannot be so of the shares, and of the plugs; cautions: what is worth a look.
        sideways: scrolls the table where it is wider than its room; it stands under the page.
    """

    changed = Signal()
    plugged = Signal()

    def __init__(
        self,
        item: Item,
        outing: Outing,
        library: Library,
        banks: Banks,
        plugs: Iterable[PlugPlan],
        now: datetime,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.item, self._banks = item, banks
        self._hand = on_hand(item, now)
        self._idle: tuple[IdlePlug, ...] = ()
        self._looks: tuple[str, ...] = ()
        self.seen, self.take = Text("", Role.SMALL, "muted"), Button("", Rank.ACT)
        own = {plug.phase: plug for plug in reversed([*plugs]) if plug.device == item.id}
        self.start = StartFields(item, next((one for one in outing.starts if one.item == item.id), None))
        ways = item.battery.ways if item.battery and not is_bank(item) else ()
        self.columns = [
            PhaseColumn(item, phase, outing, library, banks, own.get(phase.name)) for phase in outing.phases if ways
        ]
        self.acts = ShareActs(item, self.columns)
        self.hanging = Paragraph("")
        self.wrong, self.plug_wrong = (Paragraph("", Role.SMALL, "stop") for _line in range(2))
        self.cautions = Paragraph("", Role.SMALL, "look")
        self.sideways = QScrollBar(Qt.Orientation.Horizontal, self)
        self.sideways.hide()
        self._assemble()
        self._opened = self._state()
        self.show_reading(item, now)
        self.take.clicked.connect(lambda _on=False: self._begin_as_seen())
        self.start.changed.connect(self._show_take)
        self.start.changed.connect(self.changed)
        for column in self.columns:
            column.changed.connect(self.changed)
            column.plug.changed.connect(self.plugged)

    @property
    def stops(self) -> list[QWidget]:
        """What Tab goes through: the charge at the start, what fills the shares, then down each phase."""
        stops: list[QWidget] = [self.take, *self.start.fields]
        if self.columns:
            stops += self.acts.stops
        for column in self.columns:
            plug = column.plug
            stops += [*column.fields.values(), *((plug.bank, plug.below, plug.to) if self._banks else ())]
        return stops

    def show_reading(self, item: Item, now: datetime) -> None:
        """Say with which charge it was last seen, and offer to begin with that while it still counts."""
        self._hand = on_hand(item, now)
        at = "" if self._hand.seen_at is None else when_text(self._hand, now)
        self.seen.say(seen_text(self._hand.seen_pct, at) if self._hand.seen_pct is not None and at else "")
        self._show_take()

    def planned_in(self, outing: Outing) -> Outing:
        """The outing with shares and start as they stand here; plugs are of all devices together."""
        for column in self.columns:
            outing = column.planned_in(outing)
        start = self.start.start()
        known = next((one for one in outing.starts if one.item == self.item.id), None)
        return outing if start == known else with_start(outing, self.item.id, start)

    def plugs(self) -> list[PlugPlan]:
        """The plugs as they stand."""
        return [plug for column in self.columns if (plug := column.plug.plug()) is not None]

    def put_plugs(self, plugs: Iterable[PlugPlan]) -> None:
        """Show other plugs."""
        own = {plug.phase: plug for plug in plugs if plug.device == self.item.id}
        for column in self.columns:
            column.plug.put(own.get(column.phase.name))

    def faults(self) -> list[str]:
        """What cannot be so here, said at each field; plugs alone, not against each other."""
        shares = [fault for column in self.columns if (fault := column.fault())]
        plugs = [fault for column in self.columns if (fault := column.plug.fault())]
        self._say_shares(shares)
        _say(self.plug_wrong, plugs)
        return [fault for fault in (self.start.fault(), *shares, *plugs) if fault]

    def _say_shares(self, faults: Iterable[str]) -> None:
        """Say whether the shares add up; the line is always there, so that nothing moves while one types."""
        text = " ".join(faults)
        self.wrong.say(text or _("The shares of each phase add up to 100 %."), "stop" if text else "muted")
        self.wrong.setAccessibleName(text)
        self.wrong.updateGeometry()

    def show_plugs(self, checks: Iterable[PlugCheck], names: Names) -> list[str]:
        """Say at its fields what is wrong with its plugs; what cannot be so is given back."""
        own = [check for check in checks if check.plug.device == self.item.id]
        for column in self.columns:
            here = [check for check in own if check.plug.phase == column.phase.name]
            text = " ".join(plug_trouble_text(check, names) for check in here)
            column.plug.mark(frozenset(check.trouble for check in here), text)
        self._looks = tuple(plug_trouble_text(check, names) for check in own if check.trouble not in REFUSED)
        self._say_looks(names)
        refused = [plug_trouble_text(check, names) for check in own if check.trouble in REFUSED]
        if refused:
            _say(self.plug_wrong, refused)
        return refused

    def show_idle(self, idle: Iterable[IdlePlug], names: Names) -> None:
        """Say which of its plugs, or of those on it, are without effect, and why."""
        self._idle = tuple(one for one in idle if self.item.id in {one.plug.device, one.plug.bank})
        self._say_looks(names)

    def show_hanging(self, plugs: Iterable[PlugPlan], names: Names) -> None:
        """Say of a bank what hangs on it."""
        self.hanging.say(hanging_text([plug for plug in plugs if plug.bank == self.item.id], names))
        self.hanging.updateGeometry()

    def is_changed(self) -> bool:
        """Whether anything was changed that still stands so."""
        return self._state() != self._opened

    def summary(self) -> str:
        """In a few words, what is not as usual."""
        own = any(column.planned for column in self.columns)
        idle = {one.plug for one in self._idle}
        plugged = any(plug not in idle for plug in self.plugs())
        is_open = any(column.is_open for column in self.columns)
        return thing_text(own=own, likely_pct=self.start.fields[1].pct(), plugged=plugged, is_open=is_open)

    def _say_looks(self, names: Names) -> None:
        _say(self.cautions, [*(idle_plug_text(one, names) for one in self._idle), *self._looks])

    def _show_take(self) -> None:
        """Offer the charge last seen where it still counts and the day begins with another one."""
        pct = self._hand.seen_pct if self._hand.known else None
        begins = {field.pct() for field in self.start.fields}
        if pct is not None:
            self.take.say(take_text(pct))
            self.take.setAccessibleName(f"{self.take.words}: {self.item.name}")
        self.take.setVisible(pct is not None and begins != {pct})

    def _begin_as_seen(self) -> None:
        pct = self._hand.reckoned_pct
        self.start.fields[1].setFocus(Qt.FocusReason.OtherFocusReason)
        self.start.put(pct, pct, pct)

    def _state(self) -> object:
        return tuple(field.text() for field in self.start.fields), tuple(column.state() for column in self.columns)

    def _assemble(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(look.px(8))
        head = WrapRow(gap=12)
        head.add(CutText(self.item.name, Role.GROUP))
        head.add(self.seen)
        head.add(self.take, pushed=True)
        rows.addWidget(head)
        rows.addWidget(self.start)
        rows.addWidget(Hairline())
        if self.columns:
            rows.addWidget(self.acts)
            rows.addWidget(self.wrong)
            rows.addWidget(WideArea(self._table(), self.sideways))
        elif is_bank(self.item):
            rows.addWidget(self.hanging)
        else:
            rows.addWidget(Paragraph(_("It has no way of use, or the plan no phases: describe the item in Kit.")))
        for line in (self.plug_wrong, self.cautions):
            rows.addWidget(line)
            line.hide()
        rows.addStretch()

    def _table(self) -> QWidget:
        table = QWidget()
        grid = QGridLayout(table)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(look.px(8))
        grid.setVerticalSpacing(look.px(6))
        grid.setColumnMinimumWidth(0, look.px(NAMES_PX))
        heads = self._heads()
        for row, head in enumerate(heads):
            grid.addWidget(head, row, 0)
        for number, column in enumerate(self.columns, start=1):
            grid.setColumnMinimumWidth(number, look.px(PHASE_PX))
            for row, cell in enumerate(_cells(column, plugs=bool(self._banks))):
                grid.addWidget(cell, row, number, Qt.AlignmentFlag.AlignVCenter)
        grid.setColumnStretch(len(self.columns) + 1, 1)
        return table

    def _draw_lines(self, way: WayOfUse) -> list[str]:
        return way_draw_lines(way, known_draw(way, self.item), has_energy=bool(energy_wh(self.item)))

    def _heads(self) -> list[QWidget]:
        """What stands before the rows; sum and mean draw are above the shares, in sight while one types."""
        battery = self.item.battery
        known = {way.name: way for way in battery.ways} if battery else {}
        heads: list[QWidget] = [
            QWidget(),
            _lines(
                Text(_("Mean draw"), Role.BODY),
                Text(_("range, W"), Role.SMALL, "muted"),
                Text(_("how sure"), Role.SMALL, "muted"),
            ),
            Text(_("Shares of the time, %, together"), Role.SECOND, "muted"),
        ]
        for name in self.columns[0].fields:
            way = known.get(name)
            said = [_("draws nothing")] if way is None else self._draw_lines(way)
            heads.append(_lines(CutText(way_text(name), Role.BODY), *(CutText(s, Role.SMALL, "muted") for s in said)))
        if self._banks:
            heads += [Text(_("Hangs on"), Role.BODY), Text(_("put on below, charged to, %"), Role.SECOND, "muted")]
        return heads


def _cells(column: PhaseColumn, *, plugs: bool) -> list[QWidget]:
    phase = column.phase
    air = "?" if phase.air_c is None else number_text(phase.air_c)
    caption = CutText(f"{hm_text(phase.likely_h)} h, {air} °C", Role.SMALL, "muted")
    cells: list[QWidget] = [
        _lines(CutText(first_upper(phase.name), Role.NAME), caption),
        _lines(column.mean, column.range, column.sure),
        column.total,
        *column.fields.values(),
    ]
    return [*cells, column.plug.bank, column.plug.limits] if plugs else cells


def _lines(*lines: QWidget) -> QWidget:
    all_lines = QWidget()
    rows = QVBoxLayout(all_lines)
    rows.setContentsMargins(0, 0, 0, 0)
    rows.setSpacing(0)
    for line in lines:
        rows.addWidget(line)
    return all_lines


def _say(line: Paragraph, sentences: Iterable[str]) -> None:
    text = "\n".join(dict.fromkeys(sentences))
    line.say(text)
    line.setVisible(bool(text))
    line.setAccessibleName(text)
    line.updateGeometry()
