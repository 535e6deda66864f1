"""An outing with a change to its power taken: plugs, ways of use, charges at the start, what goes and what stays."""

from collections.abc import Callable, Collection, Iterable, Mapping

from kitlog.budget.result import Remedy
from kitlog.kit.facets import Battery
from kitlog.kit.item import Item
from kitlog.kit.kinds import Place
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, PlugPlan, Use
from kitlog.packing.assessment import Assessment
from kitlog.packing.other_uses import other_ways
from kitlog.packing.own_banks import carried
from kitlog.packing.plan_edits import swapped, taken_along
from kitlog.packing.power_day import default_plugs
from kitlog.packing.spare_cables import cable_need
from kitlog.packing.to_hand import with_uses


def replanned(judged: Assessment, remedy: Remedy, items: Mapping[str, Item], library: Library) -> Outing | None:
    """The outing with a computed change of its power in the plan; None for one that changes no plan.

    The plugs that stand for a plan without any become the plan's own.
    """
    change = _Change(judged, remedy, items, library)
    ways: dict[str, Callable[[], Outing]] = {
        "bank_instead": change.bank_instead,
        "add_bank": change.bank_added,
        "plug_too": change.plugged,
        "plug_below": change.plugged_below,
        "use_less": change.used_otherwise,
        "flight_mode": change.used_otherwise,
        "start_full": change.started_full,
        "leave_off": change.left_off,
    }
    return ways[remedy.code]() if remedy.code in ways else None


def warmer_item(remedy: Remedy, items: Mapping[str, Item]) -> Item | None:
    """The item in the warmer place that a remedy names; None for a remedy that names none."""
    item, place = items.get(remedy.items[0]) if remedy.items else None, remedy.facts.get("place")
    if item is None or remedy.code != "carry_warmer" or place is None:
        return None
    there = {"place": Place(str(place)), "offset_k": None}
    return item.model_copy(update={"battery": (item.battery or Battery()).model_copy(update=there)})


class _Change:
    def __init__(self, judged: Assessment, remedy: Remedy, items: Mapping[str, Item], library: Library) -> None:
        self._judged, self._outing = judged, judged.outing
        self._first, self._second = (*remedy.items, "", "")[:2]
        self._facts = remedy.facts
        self._items, self._library = items, library

    @property
    def _plugs(self) -> tuple[PlugPlan, ...]:
        """Those of the plan, or the usual ones as far as they have an effect."""
        plugs = self._outing.plugs
        if plugs is not None:
            return plugs
        usual = default_plugs(self._outing, carried(self._judged))
        return tuple(plug for plug in usual if (plug.phase, plug.device, plug.bank) in self._live)

    @property
    def _live(self) -> frozenset[tuple[str, str, str]]:
        day = self._judged.power.planned
        return frozenset((plug.phase, plug.device, plug.bank) for plug in (day.plugs if day else ()))

    @property
    def _phases(self) -> tuple[str, ...]:
        phases = self._facts.get("phases", ())
        return tuple(str(phase) for phase in phases) if isinstance(phases, Iterable) else ()

    def _kept(self, new_bank: str = "", phases: Collection[str] = ()) -> tuple[PlugPlan, ...]:
        """The plugs, without those that had no effect and would get one.

        They are on a bank that now comes along, or in the way of a new plug.
        """
        return tuple(
            plug
            for plug in self._plugs
            if (plug.phase, plug.device, plug.bank) in self._live
            or not (plug.bank == new_bank or (plug.device == self._first and plug.phase in phases))
        )

    def bank_instead(self) -> Outing:
        """Another bank on the same plugs."""
        moved = (
            plug.model_copy(update={"bank": self._second}) if plug.bank == self._first else plug
            for plug in self._kept(self._second)
        )
        plan = swapped(self._outing, self._first, self._second)
        return plan.model_copy(update={"plugs": tuple(moved)})

    def bank_added(self) -> Outing:
        """One more bank, and the device on it."""
        return taken_along(
            self._with_plugs(self._kept(self._second, self._phases)), self._items[self._second], self._library
        )

    def plugged(self) -> Outing:
        """On a bank that goes along."""
        return self._with_plugs(self._kept(phases=self._phases))

    def _with_plugs(self, kept: tuple[PlugPlan, ...]) -> Outing:
        """Plugged in the phases of the remedy; a cable that is needed comes along."""
        new = (PlugPlan(phase=phase, device=self._first, bank=self._second) for phase in self._phases)
        plan = self._outing.model_copy(update={"plugs": (*kept, *new)})
        device, bank = self._items[self._first], self._items[self._second]
        cable = cable_need(device, bank, self._judged, self._items.values()).cable
        return plan if cable is None else taken_along(plan, cable, self._library)

    def plugged_below(self) -> Outing:
        below_pct = 100 * float(str(self._facts["below"]))
        changed = (
            plug.model_copy(update={"connect_below_pct": below_pct})
            if plug.device == self._first and plug.connect_below_pct is None
            else plug
            for plug in self._plugs
        )
        return self._outing.model_copy(update={"plugs": tuple(changed)})

    def used_otherwise(self) -> Outing:
        """In the other way of use; as it was if the device no longer has it."""
        wanted = (self._facts.get("use"), self._facts.get("instead"))
        ways = other_ways(self._items[self._first], self._outing, self._library)
        way = next((way for way in ways if (way.way, way.instead) == wanted), None)
        return self._outing if way is None else with_uses(self._outing, way)

    def started_full(self) -> Outing:
        kept = tuple(start for start in self._outing.starts if start.item != self._first)
        return self._outing.model_copy(update={"starts": kept})

    def left_off(self) -> Outing:
        """Shares of nothing in each phase: off; and on no bank."""
        battery = self._items[self._first].battery
        ways = battery.ways if battery else ()
        off = (
            Use(item=self._first, phase=phase.name, way=way.name, share=0.0)
            for phase in self._outing.phases
            for way in ways[:1]
        )
        uses = (*(use for use in self._outing.uses if use.item != self._first), *off)
        plugs = tuple(plug for plug in self._plugs if plug.device != self._first)
        return self._outing.model_copy(update={"uses": uses, "plugs": plugs})
