"""Things on ports over the night, run by the single-day simulation of the power budget: no second formula here."""

from dataclasses import replace
from itertools import pairwise
from math import inf
from typing import NamedTuple

from kitlog.budget.charging.evening import FULL, Evening, Port
from kitlog.budget.power.curve import first_zero
from kitlog.budget.power.day import Day
from kitlog.budget.power.plan import BankPlan, DevicePlan, Plan, PlugPlan, plan_day
from kitlog.budget.power.recorder import Piece, Recorder
from kitlog.budget.power.run import run_day

NEARLY = 1e-9
"""Charges closer than this are the same."""


class Stay(NamedTuple):
    """A thing on a port, both by index, from when to when (h)."""

    thing: int
    port: int
    from_h: float
    to_h: float


class Slot(NamedTuple):
    """A port of the evening: its charger by index, its own limit, its plug."""

    charger: int
    name: str
    limit_w: float
    connector: str | None
    fixed_cable: bool


class Ending(NamedTuple):
    """Charge at the end, and when the thing became full (None: never)."""

    soc: float
    full_h: float | None


Stays = tuple[Stay, ...]


class Bench:
    """Runs plans of one evening and remembers what it has run. Indices are those of the evening's lists."""

    def __init__(self, evening: Evening, day: Day) -> None:
        self.evening = evening
        self.cells: list[DevicePlan] = plan_day(day).devices
        self.totals_w = [inf if charger.total_W is None else charger.total_W for charger in evening.chargers]
        # a limit that nothing reaches is none: ports that differ in it only are alike
        most_w = max((cell.charge_w[0] for cell in self.cells), default=0.0)
        self.slots = [
            Slot(index, port.id, min(_limit_w(port), self.totals_w[index], most_w), port.connector, port.fixed_cable)
            for index, charger in enumerate(evening.chargers)
            for port in charger.ports
        ]
        self._shared = [self._has_a_total(charger) for charger in range(len(self.totals_w))]
        self.runs = 0
        self._known: dict[Stays, dict[int, Ending]] = {}

    def shares(self, charger: int) -> bool:
        """Whether the total of a charger can keep a port from giving what it could."""
        return self._shared[charger]

    @property
    def shares_any(self) -> bool:
        """Whether any charger does."""
        return any(self._shared)

    def _has_a_total(self, charger: int) -> bool:
        return self.totals_w[charger] < sum(slot.limit_w for slot in self.slots if slot.charger == charger)

    def ending(self, stays: Stays, thing: int) -> Ending:
        """How one thing ends."""
        together = self._together(stays, thing)
        if not together:
            soc = self.cells[thing].start
            return Ending(soc, self.evening.from_h if soc >= FULL - NEARLY else None)
        known = self._known.get(together)
        if known is None:
            known = self._known[together] = self._run(together)
        return known[thing]

    def _together(self, stays: Stays, thing: int) -> Stays:
        """All stays that bear on a thing: its own, and those it meets on chargers with a total to share."""
        if not self.shares_any:
            return tuple(sorted(stay for stay in stays if stay.thing == thing))
        things, chargers, grew = {thing}, set[int](), True
        while grew:
            grew = False
            for stay in stays:
                charger = self.slots[stay.port].charger
                if stay.thing in things and charger not in chargers and self.shares(charger):
                    chargers.add(charger)
                    grew = True
                elif charger in chargers and stay.thing not in things:
                    things.add(stay.thing)
                    grew = True
        return tuple(sorted(stay for stay in stays if stay.thing in things))

    def _run(self, stays: Stays) -> dict[int, Ending]:
        self.runs += 1
        edges, who = _edges(stays), _who(stays)
        recorder, socs = self._recorded(stays, edges, who)
        return {
            thing: Ending(socs[index], self._full_h(recorder.devices[index], self.cells[thing].start, edges[0]))
            for index, thing in enumerate(who)
        }

    def _recorded(self, stays: Stays, edges: list[float], who: list[int]) -> tuple[Recorder, list[float]]:
        plan = self._plan(stays, edges, who)
        recorder = Recorder(len(plan.devices), len(plan.banks))
        run = run_day(plan, recorder)
        return recorder, [device.soc for device in run.devices]

    def _plan(self, stays: Stays, edges: list[float], who: list[int]) -> Plan:
        hours = [later - sooner for sooner, later in pairwise(edges)]
        chargers = sorted({self.slots[stay.port].charger for stay in stays})
        return Plan(
            hours=hours,
            devices=[_stretched(self.cells[thing], len(hours)) for thing in who],
            banks=[_supply(self.totals_w[charger], len(hours)) for charger in chargers],
            plugs=[
                [self._plug(stay, who, chargers) for stay in stays if stay.from_h <= edge < stay.to_h]
                for edge in edges[:-1]
            ],
        )

    def _plug(self, stay: Stay, who: list[int], chargers: list[int]) -> PlugPlan:
        slot = self.slots[stay.port]
        return PlugPlan(who.index(stay.thing), chargers.index(slot.charger), inf, 1.0, slot.limit_w)

    def _full_h(self, pieces: list[Piece], start: float, begin_h: float) -> float | None:
        if start >= FULL - NEARLY:
            return self.evening.from_h
        for from_h, for_h, soc, rate, terms in pieces:
            in_h = first_zero(FULL - soc, -rate, [(-amount, fade) for amount, fade in terms], for_h)
            if in_h <= for_h:
                return begin_h + from_h + in_h
        return None


def _limit_w(port: Port) -> float:
    return inf if port.limit_W is None else port.limit_W


def _edges(stays: Stays) -> list[float]:
    return sorted({stay.from_h for stay in stays} | {stay.to_h for stay in stays})


def _who(stays: Stays) -> list[int]:
    return sorted({stay.thing for stay in stays})


def _stretched(cell: DevicePlan, phases: int) -> DevicePlan:
    """The same cell for a night in several pieces."""
    return replace(
        cell,
        load_w=[0.0] * phases,
        floor=[0.0] * phases,
        charge_w=cell.charge_w * phases,
        temp_c=cell.temp_c * phases,
    )


def _supply(total_w: float, phases: int) -> BankPlan:
    """A charger in the wall: without end, at its ports no more than its total."""
    return BankPlan(
        energy_wh=inf,
        health=1.0,
        start=1.0,
        eff=1.0,
        total_limit_w=total_w,
        quiescent_w=0.0,
        min_out_w=0.0,
        auto_off_h=inf,
        floor=[0.0] * phases,
    )
