"""The power plan of one device or bank: charge at the start, shares of use phase by phase, and its plugs."""

from collections.abc import Iterable

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.phase_column import PhaseColumn
from kitlog.desktop.outing_page.plan_words import hm_text
from kitlog.desktop.outing_page.plug_fields import Banks
from kitlog.desktop.outing_page.share_acts import ShareActs
from kitlog.desktop.outing_page.start_fields import StartFields
from kitlog.desktop.outing_page.wide_area import WideArea
from kitlog.desktop.parts.line import Hairline
from kitlog.desktop.parts.text import CutText, Paragraph, Text
from kitlog.kit.facets import WayOfUse
from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, PlugPlan
from kitlog.packing.capacity import energy_wh, is_bank
from kitlog.packing.draws import known_draw
from kitlog.packing.plug_checks import REFUSED, PlugCheck
from kitlog.packing.power_plan import with_start
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import moment_text, number_text
from kitlog.wording.power_plan_text import (
    Names,
    hanging_text,
    plug_trouble_text,
    seen_text,
    thing_text,
    way_draw_lines,
    way_text,
)
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper

NAMES_PX, PHASE_PX = 228, 114


class DevicePlan(QWidget):
    """The fields of one item.

    Attributes:
        changed: anything was changed; plugged: a plug was.
        start: charge at the start; columns: by phase, none for a bank; acts: what fills them.
        wrong, plug_wrong: what cannot be so of the shares, and of the plugs; cautions: what is worth a look.
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
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.item, self._banks = item, banks
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
        self._assemble()
        self._opened = self._state()
        self.start.changed.connect(self.changed)
        for column in self.columns:
            column.changed.connect(self.changed)
            column.plug.changed.connect(self.plugged)

    @property
    def stops(self) -> list[QWidget]:
        """What Tab goes through: the charge at the start, what fills the shares, then down each phase."""
        stops: list[QWidget] = [*self.start.fields]
        if self.columns:
            stops += self.acts.stops
        for column in self.columns:
            plug = column.plug
            stops += [*column.fields.values(), *((plug.bank, plug.below, plug.to) if self._banks else ())]
        return stops

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
        _say(self.cautions, [plug_trouble_text(check, names) for check in own if check.trouble not in REFUSED])
        refused = [plug_trouble_text(check, names) for check in own if check.trouble in REFUSED]
        if refused:
            _say(self.plug_wrong, refused)
        return refused

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
        return thing_text(own=own, likely_pct=self.start.fields[1].pct(), plugged=bool(self.plugs()))

    def _state(self) -> object:
        return tuple(field.text() for field in self.start.fields), tuple(column.state() for column in self.columns)

    def _assemble(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(look.px(8))
        head = QHBoxLayout()
        head.setSpacing(look.px(12))
        head.addWidget(Text(self.item.name, Role.GROUP))
        head.addWidget(CutText(_seen(self.item), Role.SMALL, "muted"), 1)
        rows.addLayout(head)
        rows.addWidget(self.start)
        rows.addWidget(Hairline())
        if self.columns:
            rows.addWidget(self.acts)
            rows.addWidget(self.wrong)
            rows.addWidget(WideArea(self._table()))
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


def _seen(item: Item) -> str:
    battery = item.battery
    if battery is None or battery.on_hand_pct is None or battery.on_hand_at is None:
        return ""
    return seen_text(battery.on_hand_pct, moment_text(battery.on_hand_at))
