"""The devices and banks of a power plan: a list at the left, and a page for each, made when it is first looked at."""

from collections.abc import Mapping, Sequence
from datetime import datetime

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QStackedWidget, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.device_plan import DevicePlan
from kitlog.desktop.outing_page.plug_fields import Banks
from kitlog.desktop.outing_page.wide_area import TallArea
from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, PlugPlan
from kitlog.packing.draws import left_open
from kitlog.packing.plug_checks import REFUSED, PlugCheck
from kitlog.packing.plug_effect import IdlePlug
from kitlog.packing.power_plan import adds_up
from kitlog.wording.power_plan_text import Names, thing_text
from kitlog.wording.translate import _

LIST_PX, ROW_PX, ROW_SIDES_PX = 188, 44, 32
ANY_PX = 10_000


class ThingPages(QStackedWidget):
    """The pages.

    Args:
        things: devices and banks that go along.
        plugs: those that are shown, usual or the pilot's own.
        now: by which a charge on hand counts or does not.

    Attributes:
        turned: another page is looked at; changed: anything on a page was changed; plugged: a plug was.
        list: of the things, to stand beside the pages.
        made: the pages made so far, by item; things that were not looked at are as they were.
    """

    turned = Signal()
    changed = Signal()
    plugged = Signal()

    def __init__(
        self,
        things: Sequence[Item],
        outing: Outing,
        library: Library,
        banks: Banks,
        plugs: tuple[PlugPlan, ...],
        now: datetime,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.things = things
        self._outing, self._library, self._banks, self._plugs, self._now = outing, library, banks, plugs, now
        self._idle: tuple[IdlePlug, ...] = ()
        self._wrong: set[str] = set()
        self.made: dict[str, DevicePlan] = {}
        self._areas: dict[str, QWidget] = {}
        self.list = QListWidget()
        self.list.setAccessibleName(_("Devices and banks"))
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setFixedWidth(look.px(LIST_PX))
        self.list.setWordWrap(True)
        for thing in things:
            row = QListWidgetItem(thing.name)
            row.setToolTip(thing.name)
            self.list.addItem(row)
        self.list.currentRowChanged.connect(self._turn_to)

    def page(self, thing: Item) -> DevicePlan:
        """The page of a thing, made if there is none yet."""
        if thing.id not in self.made:
            page = DevicePlan(thing, self._outing, self._library, self._banks, self._plugs, self._now)
            page.changed.connect(lambda: self._edited(page))
            page.plugged.connect(self.plugged)
            self.made[thing.id], self._areas[thing.id] = page, _over_its_bar(page)
            self.addWidget(self._areas[thing.id])
            before: QWidget = self.list
            for stop in page.stops:
                self.setTabOrder(before, stop)
                before = stop
            page.faults()
        return self.made[thing.id]

    def choose(self, item_id: str) -> None:
        """Show the page of one thing."""
        at = next((at for at, thing in enumerate(self.things) if thing.id == item_id), None)
        if at is not None:
            self.list.setCurrentRow(at)

    def planned_in(self, outing: Outing) -> Outing:
        """The outing with shares and charges at the start as they stand."""
        for page in self.made.values():
            outing = page.planned_in(outing)
        return outing

    def plugs(self, *, without: frozenset[str] = frozenset()) -> list[PlugPlan]:
        """The plugs as they stand, thing by thing."""
        return [plug for thing in self.things if thing.id not in without for plug in self._plugs_of(thing)]

    def put_plugs(self, plugs: tuple[PlugPlan, ...]) -> None:
        """Show other plugs."""
        self._plugs = plugs
        for page in self.made.values():
            page.put_plugs(plugs)

    def faults(self) -> dict[str, list[str]]:
        """What cannot be so on each page; a thing whose shares were wrong from the start is given its page."""
        for thing in self.things:
            if thing.id not in self.made and not adds_up(thing, self._outing):
                self.page(thing)
        return {name: found for name, page in self.made.items() if (found := page.faults())}

    def show_checks(self, checks: Sequence[PlugCheck], names: Names, faults: dict[str, list[str]]) -> list[str]:
        """Say on each page what cannot be so, and in the list where; the names of those things are given back."""
        refused = {check.plug.device for check in checks if check.trouble in REFUSED}
        for thing in self.things:
            if thing.id in refused:
                self.page(thing)
        self._wrong, plugs = set(faults), self.plugs()
        for at, thing in enumerate(self.things):
            page = self.made.get(thing.id)
            if page is not None:
                self._wrong |= {thing.id} if page.show_plugs(checks, names) else set()
                page.show_hanging(plugs, names)
                page.show_idle(self._idle, names)
            self._show_row(at)
        return [thing.name for thing in self.things if thing.id in self._wrong]

    def show_idle(self, idle: tuple[IdlePlug, ...], names: Names) -> None:
        """Say on each page which plugs are without effect; the list names no bank for them."""
        self._idle = idle
        for page in self.made.values():
            page.show_idle(idle, names)
        for at in range(len(self.things)):
            self._show_row(at)

    def show_readings(self, items: Mapping[str, Item], now: datetime) -> None:
        """Say the charges with which things were seen since it was opened; no field changes."""
        self._now = now
        self.things = [items.get(thing.id, thing) for thing in self.things]
        for thing in self.things:
            if thing.id in self.made:
                self.made[thing.id].show_reading(thing, now)

    def is_changed(self) -> bool:
        """Whether anything was changed that still stands so."""
        return any(page.is_changed() for page in self.made.values())

    def _plugs_of(self, thing: Item) -> list[PlugPlan]:
        page = self.made.get(thing.id)
        return [plug for plug in self._plugs if plug.device == thing.id] if page is None else page.plugs()

    def _turn_to(self, at: int) -> None:
        if 0 <= at < len(self.things):
            thing = self.things[at]
            self.page(thing)
            self.setCurrentWidget(self._areas[thing.id])
            self.turned.emit()

    def _edited(self, page: DevicePlan) -> None:
        """Sums and mean draws follow at once."""
        page.faults()
        self.changed.emit()

    def _show_row(self, at: int) -> None:
        row, t, thing = self.list.item(at), look.tokens(), self.things[at]
        is_wrong = thing.id in self._wrong
        said = _("! cannot be so") if is_wrong else self._summary(thing)
        row.setText(f"{thing.name}\n{said}")
        row.setSizeHint(QSize(look.px(64), self._row_px(row.text())))
        row.setForeground(t.stop if is_wrong else t.ink)

    def _row_px(self, text: str) -> int:
        """Height of a row: long names and summaries go on in a further line."""
        room = QRect(0, 0, look.px(LIST_PX - ROW_SIDES_PX), ANY_PX)
        lines = self.list.fontMetrics().boundingRect(room, Qt.TextFlag.TextWordWrap, text)
        return max(look.px(ROW_PX), lines.height() + look.px(8))

    def _summary(self, thing: Item) -> str:
        page = self.made.get(thing.id)
        if page is not None:
            return page.summary()
        start = next((one.likely_pct for one in self._outing.starts if one.item == thing.id), None)
        own = any(use.item == thing.id for use in self._outing.uses)
        idle = {one.plug for one in self._idle}
        plugged = any(plug not in idle for plug in self._plugs_of(thing))
        is_open = any(left_open(thing, phase, self._outing, self._library) for phase in self._outing.phases)
        return thing_text(own=own, likely_pct=start, plugged=plugged, is_open=is_open)


def _over_its_bar(page: DevicePlan) -> QWidget:
    """The page in its room, and the bar that scrolls its table sideways under it, always in sight."""
    room = QWidget()
    rows = QVBoxLayout(room)
    rows.setContentsMargins(0, 0, 0, 0)
    rows.setSpacing(0)
    rows.addWidget(TallArea(page), 1)
    rows.addWidget(page.sideways)
    return room
