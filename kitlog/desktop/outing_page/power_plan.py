"""The power plan of an outing: what each device does in each phase, where it hangs, and what it begins with."""

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QHBoxLayout, QWidget

from kitlog.budget.result import State, Topic
from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.outing_page.thing_pages import ThingPages
from kitlog.desktop.outing_page.tile_words import tile_words
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.text import Paragraph
from kitlog.fault import Fault
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.outing.outing import Outing, PlugPlan
from kitlog.packing.assessment import Assessment
from kitlog.packing.capacity import energy_wh, is_bank
from kitlog.packing.plug_checks import plug_checks
from kitlog.packing.plug_effect import idle_plugs, why_absent
from kitlog.packing.power_day import ALWAYS_POWERED, default_plugs
from kitlog.paint.type_scale import Role
from kitlog.wording.faults import fault_text
from kitlog.wording.power_plan_text import absent_text, own_plugs_text, usual_plugs_text
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper
from kitlog.workbench.change import Change

ASSESS_AFTER_MS = 200
"""Typing comes first: the draft is assessed when it pauses."""

WIDE_PX = 1080


class PowerPlan(Dialog):
    """Devices and banks at the left, the plan of the one chosen at the right.

    Attributes:
        pages: one a device or bank.
        plugs_said: whether the plugs are usual, and which those are; usual_plugs: takes the pilot's own plugs back.
        assessed: the last draft that could be assessed, None while something cannot be so.
    """

    def __init__(self, desk: Desk, outing: Outing, parent: QWidget) -> None:
        super().__init__(_("Power plan"), _("Save"), parent, wide=WIDE_PX)
        self._desk, self._outing = desk, outing
        self._names = desk.names()
        self._before = _assessed_before(desk, outing)
        self._along = [line.item for line in self._before.lines if not line.in_car]
        self._usual = default_plugs(outing, self._along)
        self._own_plugs = outing.plugs is not None
        self._replugged = not _sound(outing)
        plugs = self._usual if outing.plugs is None else outing.plugs
        things = [item for item in self._along if _is_powered(item)]
        self.pages = ThingPages(things, outing, desk.bench.library, self._banks(plugs), plugs, desk.bench.now())
        self.assessed: Assessment | None = None
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(ASSESS_AFTER_MS)
        self._later.timeout.connect(self.look)
        self._fill()
        self.pages.turned.connect(self._faults)
        self.pages.changed.connect(self._later.start)
        self.pages.plugged.connect(self._replug)
        desk.changed.connect(self._reread)
        self.look()
        self.pages.list.setFocus()

    def draft(self) -> Outing:
        """The outing as it stands in the fields; only asked where there is no fault."""
        outing = self.pages.planned_in(self._outing)
        if not self._replugged:
            return outing
        return outing.model_copy(update={"plugs": self._all_plugs() if self._own_plugs else None})

    def accept(self) -> None:
        """Save what stands in the fields; what cannot be so is said and nothing is written."""
        self.look()
        if self.main.isEnabled() and self.attempt(lambda: self._desk.bench.save_outing(self.draft())):
            super().accept()

    def done(self, result: int) -> None:
        """Leave it; what is still to be assessed is no matter any more."""
        self._later.stop()
        super().done(result)

    def changed(self) -> bool:
        """Whether anything of the plan was changed; which device is looked at is none of it."""
        return self.pages.is_changed() or self._own_plugs != (self._outing.plugs is not None)

    def look(self) -> None:
        """Check and assess the draft, and show what it comes to."""
        faults = self._faults()
        self.assessed = None if faults else self._assess()
        plugs = self.pages.plugs()
        idle = () if self.assessed is None else tuple(idle_plugs(plugs, self.assessed, self._kit()))
        self.pages.show_idle(idle, self._names)
        own = own_plugs_text(len(plugs), len(idle))
        self.plugs_said.say(own if self._own_plugs else usual_plugs_text(self._usual, self._names))
        self.usual_plugs.setVisible(self._own_plugs)
        self.want(_why_not(faults, is_assessed=self.assessed is not None))
        self._show()

    def take_usual_plugs(self) -> None:
        """Reckon with the usual plugs again."""
        self.pages.put_plugs(self._usual)
        self._own_plugs, self._replugged = False, self._outing.plugs is not None
        self.look()

    def _faults(self) -> list[str]:
        """Names of the devices of which something cannot be so; the sentences stand at the fields."""
        wrong = self.pages.faults()
        checks = plug_checks(self.pages.plugs(without=frozenset(wrong)), self._along)
        return self.pages.show_checks(checks, self._names, wrong)

    def _assess(self) -> Assessment | None:
        try:
            assessed = self._desk.bench.assess(self.draft())
        except Fault as fault:
            text = fault_text(fault)
            self.say_wrong(first_upper(f"{text.what}. {text.remedy}"))
            return None
        self.say_wrong("")
        return assessed

    def _show(self) -> None:
        if self.assessed is None:
            self.live.say(_("not known while something cannot be so"), "muted")
            return
        words = tile_words(Topic.POWER, self.assessed, self._names)
        said = ", ".join(part for part in (f"{words.state}: {words.figure}", *words.lines) if part)
        self.live.say(first_upper(said), "stop" if words.state == _(State.STOP.value) else "ink")
        self.live.setAccessibleName(_("Power: {said}").format(said=said))

    def _reread(self, _change: Change) -> None:
        """Something was written elsewhere: show charges that were seen since, and assess anew."""
        if self.isVisible():
            self.pages.show_readings(self._kit(), self._desk.bench.now())
            self._later.start()

    def _kit(self) -> dict[str, Item]:
        return {item.id: item for item in self._desk.bench.items()}

    def _replug(self) -> None:
        self._own_plugs = self._replugged = True
        self._later.start()

    def _all_plugs(self) -> tuple[PlugPlan, ...]:
        """The plugs of all pages, and those of what does not go along, in the order they were in; new ones after."""
        shown = {thing.id for thing in self.pages.things}
        phases = {phase.name for phase in self._outing.phases}
        before = self._outing.plugs or ()
        kept = [plug for plug in before if plug.device not in shown]
        place = {(plug.phase, plug.device): at for at, plug in reversed([*enumerate(before)])}
        found = {(plug.phase, plug.device): plug for plug in reversed([*kept, *self.pages.plugs()])}
        there = [plug for plug in reversed(found.values()) if plug.phase in phases]
        return tuple(sorted(there, key=lambda plug: place.get((plug.phase, plug.device), len(place))))

    def _banks(self, plugs: tuple[PlugPlan, ...]) -> tuple[tuple[object, str], ...]:
        """Banks to choose from: those that go along, and those that the plan names all the same."""
        along = [(item.id, item.name) for item in self._along if is_bank(item)]
        known = {bank for bank, _name in along}
        named, kit = dict.fromkeys(plug.bank for plug in plugs if plug.bank not in known), self._kit()
        why = {bank: why_absent(bank, self._before, kit) for bank in named}
        return (*along, *((bank, absent_text(self._names.get(bank, bank), reason)) for bank, reason in why.items()))

    def _fill(self) -> None:
        self.live = Paragraph("", Role.GROUP, "ink")
        self.live.setObjectName("live")
        self.foot_row.insertWidget(0, self.live, 3, Qt.AlignmentFlag.AlignVCenter)
        self.usual_plugs = Button(_("Usual plugs again"), Rank.ACT)
        self.usual_plugs.clicked.connect(self.take_usual_plugs)
        self.plugs_said = Paragraph("", Role.SECOND, "muted")
        beside, plugs = QHBoxLayout(), QHBoxLayout()
        beside.setSpacing(look.px(20))
        beside.addWidget(self.pages.list)
        beside.addWidget(self.pages, 1)
        plugs.setSpacing(look.px(12))
        plugs.addWidget(self.plugs_said, 1)
        plugs.addWidget(self.usual_plugs)
        self.body.addLayout(beside, 1)
        self.under.addLayout(plugs)  # in the body it would make all of that scroll, beside the page that does
        self.pages.list.setCurrentRow(0)
        if not self.pages.things:
            self.body.addWidget(Paragraph(_("Nothing on the list runs on a battery.")))


def _why_not(faults: list[str], *, is_assessed: bool) -> str:
    if faults:
        return _("Something cannot be so: {where}.").format(where=", ".join(faults))
    return "" if is_assessed else _("Something above cannot be so.")


def _assessed_before(desk: Desk, outing: Outing) -> Assessment:
    """The outing as it is stored; where the plan of the power contradicts itself, without it."""
    try:
        return desk.bench.assess(outing)
    except Fault:
        return desk.bench.assess(outing.model_copy(update={"uses": (), "plugs": ()}))


def _sound(outing: Outing) -> bool:
    """Whether each plug is of a phase that there is, and each device in a phase on one alone."""
    phases = {phase.name for phase in outing.phases}
    plugged = [(plug.phase, plug.device) for plug in outing.plugs or ()]
    return len(set(plugged)) == len(plugged) and all(phase in phases for phase, _device in plugged)


def _is_powered(item: Item) -> bool:
    has_ways = item.battery is not None and bool(item.battery.ways)
    is_cell = item.battery is not None and energy_wh(item) is not None and item.kind is not Kind.CABLE
    return is_bank(item) or has_ways or is_cell or item.kind in ALWAYS_POWERED
