"""The choice: essential needs first, then advised, then comfort; pairs whole; the set never by mass.

For each need: in service, no open stop on any day, right amount, in date before overdue, then lightest.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from kitlog.budget.result import State
from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS, Zone
from kitlog.outing.library import Library
from kitlog.outing.needs import Need, Strength
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Asked, ListLine, Missing, PassedOver
from kitlog.packing.chosen_set import SetChoice
from kitlog.packing.fitness import Fitness
from kitlog.packing.load import Load
from kitlog.packing.suited import Suited
from kitlog.packing.water import fill_vessels
from kitlog.packing.why_not import NO_WATER, NONE_OWNED, OPEN_CHOICE, fitted_elsewhere, nearest, why_not


@dataclass(slots=True)
class Choice:
    """What was chosen, what is missing, what was passed over."""

    load: Load
    missing: list[Missing] = field(default_factory=list)
    passed_over: list[PassedOver] = field(default_factory=list)


def choose(
    outing: Outing,
    asked: Iterable[Asked],
    chosen: SetChoice,
    fitness: Mapping[str, Fitness],
    suited: Suited,
    library: Library,
) -> Choice:
    """Make the list of an outing; `fitness` and `suited` are of the same kit."""
    picker = _Picker(outing, chosen, fitness, suited, library)
    picker.take_pinned()
    picker.take_set()
    picker.complete_pairs()
    needs = tuple(asked)
    for one in needs:
        picker.meet(one)
    fill_vessels(picker.choice.load, outing, needs)
    return picker.choice


class _Picker:
    """Walks the needs and takes items onto the list."""

    def __init__(
        self, outing: Outing, chosen: SetChoice, fitness: Mapping[str, Fitness], suited: Suited, library: Library
    ) -> None:
        self._outing = outing
        self._set = chosen
        self._fitness = fitness
        self._suited = suited
        self._partners = _partners(fitness)
        self.choice = Choice(Load(library, suited))

    def take_pinned(self) -> None:
        """What the pilot pinned goes, if it is at hand."""
        for pin in self._outing.pinned:
            item = self._fitness[pin.item].item
            if not item.usable:
                continue
            self.choice.load.take(item, min(pin.n or item.quantity, item.quantity), pinned=True)
            self.choice.load.ride(item.id, pin.zone, pin.zone_on_foot)

    def take_set(self) -> None:
        """The set goes, and what is fitted to it."""
        for item in self._set.chosen.values():
            if item.usable:
                self._take(item, 1)

    def complete_pairs(self) -> None:
        """What is fitted to something pinned goes along with it."""
        for line in tuple(self.choice.load.lines.values()):
            if not line.in_car:
                self._take_partners(line.item)

    def meet(self, asked: Asked) -> None:
        """Meet one need from the list so far, else take the best that is there."""
        need = asked.need
        if not need.wants_item:
            return
        if need.water_ml is not None:
            self._take_vessels(need)
        elif _of_set(need):
            self._take_more_of_set(need)
        else:
            self._take_best(need)
        self._note(asked)

    def _take_best(self, need: Need) -> None:
        for fit in self._ranked(need):
            if self._have(need) >= need.amount and not need.every:
                break
            self._take(fit.item, fit.item.quantity if need.every else self._pieces(fit.item, need))

    def _take_more_of_set(self, need: Need) -> None:
        """A second piece of what is flown (two helmets in one row), never another wing, harness, reserve or helmet."""
        for line in self.choice.load.meeting(need):
            self.choice.load.take(line.item, self._pieces(line.item, need))

    def _have(self, need: Need) -> int:
        return sum(line.n for line in self.choice.load.meeting(need))

    def _pieces(self, item: Item, need: Need) -> int:
        wanted = max(need.most or need.amount, need.amount) - self._have(need)
        line = self.choice.load.lines.get(item.id)
        return min(item.quantity, wanted + (line.n if line else 0))

    def _take_vessels(self, need: Need) -> None:
        wanted = self._outing.water_ml if self._outing.water_ml is not None else need.water_ml or 0
        for fit in sorted(self._ranked(need), key=lambda f: not _holds(f.item, wanted)):
            held = sum(_capacity(line.item) * line.n for line in self.choice.load.meeting(need))
            if held >= wanted and self._have(need):
                break
            self._take(fit.item, 1)

    def _ranked(self, need: Need) -> list[Fitness]:
        """Items that could still go for a need, best first."""
        there = self.choice.load.lines
        free = [
            fit
            for fit in self._suited_to(need)
            if fit.can_go and self._may_go(fit.item) and (fit.item.id not in there or _more_at_hand(there[fit.item.id]))
        ]
        return sorted(free, key=lambda fit: (fit.overdue, _mass_key(fit.item, need)))

    def _suited_to(self, need: Need) -> list[Fitness]:
        return [self._fitness[name] for name in self._suited.to(need)]

    def _may_go(self, item: Item) -> bool:
        """Not left out, and not of a kind that only the set decides, nor fitted to a harness that stays."""
        if item.id in self._outing.left_out or item.kind in SET_KINDS or item.zone is Zone.LEFT_IN_CAR:
            return False
        return not fitted_elsewhere(item, self._set, self._fitness)

    def _take(self, item: Item, n: int) -> None:
        """Take an item, and whole pairs with it."""
        self.choice.load.take(item, n)
        self._take_partners(item)

    def _take_partners(self, item: Item) -> None:
        """Take what is fitted to an item and what it is fitted to, and theirs in turn."""
        for name in self._partners.get(item.id, ()):
            fit = self._fitness[name]
            other = fit.item
            if other.id not in self.choice.load.lines and self._goes_along(fit):
                self.choice.load.take(other, other.quantity, fitted=True)
                self._take_partners(other)

    def _goes_along(self, fit: Fitness) -> bool:
        if fit.item.kind in SET_KINDS:
            return fit.item.usable and self._set.chosen.get(fit.item.kind) == fit.item
        return fit.can_go and fit.item.id not in self._outing.left_out

    def _note(self, asked: Asked) -> None:
        need, load = asked.need, self.choice.load
        lines = load.meeting(need)
        load.serve(need, asked.strength, lines)
        have = sum(line.n for line in lines)
        if need.water_ml and self._outing.water_ml == 0:
            self.choice.missing.append(Missing(asked, missing_state(asked.strength), 0, NO_WATER))
        elif have < need.amount and not (need.either or need.check):
            self.choice.missing.append(self._missing(asked, have))
        self._note_passed_over(need, [line.item.name for line in lines])

    def _missing(self, asked: Asked, have: int) -> Missing:
        others = sorted(((self._why_not(fit), fit.item.id) for fit in self._others(asked.need)), key=nearest)
        reason = others[0][0] if others else NONE_OWNED
        state = missing_state(asked.strength)
        if state is not State.FINE and reason in OPEN_CHOICE:
            state, others = State.NOT_KNOWN, [other for other in others if other[0] == reason]
        return Missing(asked, state, have, reason, tuple(name for _, name in others))

    def _others(self, need: Need) -> list[Fitness]:
        there = self.choice.load.lines
        return [fit for fit in self._suited_to(need) if fit.item.id not in there or there[fit.item.id].in_car]

    def _note_passed_over(self, need: Need, taken: list[str]) -> None:
        for fit in self._others(need):
            self.choice.passed_over.append(PassedOver(fit.item, need.id, self._why_not(fit), taken[0] if taken else ""))

    def _why_not(self, fit: Fitness) -> str:
        return why_not(fit, self._outing, self._set, self._fitness)


def _partners(fitness: Mapping[str, Fitness]) -> dict[str, list[str]]:
    """What is fitted to an item and what it is fitted to, by id, in the order of the kit."""
    partners: dict[str, set[str]] = {}
    for name, fit in fitness.items():
        if fit.item.fitted_to is not None:
            partners.setdefault(name, set()).add(fit.item.fitted_to)
            partners.setdefault(fit.item.fitted_to, set()).add(name)
    place = {name: n for n, name in enumerate(fitness)}
    return {
        name: sorted((other for other in others if other in place), key=place.__getitem__)
        for name, others in partners.items()
    }


def missing_state(strength: Strength) -> State:
    """What a missing need means: essential stop, advised look, comfort nothing."""
    return {Strength.ESSENTIAL: State.STOP, Strength.ADVISED: State.LOOK, Strength.COMFORT: State.FINE}[strength]


def _of_set(need: Need) -> bool:
    return bool(need.kinds) and all(kind in SET_KINDS for kind in need.kinds)


def _capacity(item: Item) -> int:
    return (item.vessel.capacity_ml or 0) if item.vessel else 0


def _holds(item: Item, wanted_ml: int) -> bool:
    return _capacity(item) >= wanted_ml


def _mass_key(item: Item, need: Need) -> float:
    """Lightest first for what the need takes of it; a mass that is not known comes last."""
    if item.mass_g is None:
        return math.inf
    return item.mass_g * min(max(item.quantity, 1), need.amount)


def _more_at_hand(line: ListLine) -> bool:
    """Whether more pieces of what goes along could go."""
    return not line.in_car and line.n < line.item.quantity
