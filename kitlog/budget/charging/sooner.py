"""Full sooner, in order of priority, among plans that leave equally much at leaving: a margin for a plug that slips.

For each thing in turn the earliest hour is sought at which it can be full while everything still ends with the charge
that the search has found possible. Candidates begin at any swap of the evening or the morning; whether one of them
leaves room for the rest is tried by placing the rest, first each as soon as can be, then by the search itself.

What is not tried: what the search does not try either (with ports of unequal strength, a thing that goes on from one to
the other before it is full: `moved` tries that afterwards), nor a thing taken off and put on again where one stay would
fill it. Where a charger's total is shared, hours are compared from candidate to candidate. Once `MOST_WORK` or
`MOST_RUNS` is used up the best plan found so far is kept, and it is not complete. Against trying every swap on a coarse
grid (up to three things, two ports): never later in 1,000 random evenings with equal ports and 300 that share a total;
with unequal ports later in 6 of 300.
"""

from collections.abc import Iterator
from itertools import groupby

from kitlog.budget.charging.bench import NEARLY, Bench, Stays
from kitlog.budget.charging.evening import FULL
from kitlog.budget.charging.places import Places
from kitlog.budget.charging.search import HOUR_ALIKE, MOST_STAYS, Found, Option, Search, capped

MOST_WORK = 3000
"""Plans extended by one thing, times ports, over all trials of one evening."""
RUNS_EACH = 100
"""Simulated nights within one step of placing the rest by the search."""
MOST_RUNS = 700
"""Simulated nights, over all trials of one evening."""
MOST_KEPT = 24
"""Plans kept side by side for one hour."""

Timed = tuple[float, Option]


class Sooner:
    """One evening; `order`: things by index; `best`: a plan that reaches `levels`, capped charges in that order."""

    def __init__(self, bench: Bench, order: list[int], levels: list[float], best: Option, *, piecemeal: bool) -> None:
        self.bench, self.order, self.levels, self.best = bench, order, levels, best
        self.piecemeal = piecemeal
        self.places = Places(bench)
        self.work, self.begun_at = 0, bench.runs
        self.complete = True
        self.due_h: list[float] = []

    def run(self, options: list[Option]) -> Found:
        """From nothing placed to all placed."""
        for index, thing in enumerate(self.order):
            options = self._placed(options, index, thing)
            self.due_h.append(self._full_h(self.best.stays, thing))
        return Found([self.best, *reversed(options)], self.levels, self.complete)

    def _placed(self, options: list[Option], index: int, thing: int) -> list[Option]:
        """The plans so far with this thing, all of them as soon as it can be; the best plan is always among them."""
        timed = self._candidates(options, index, thing)
        groups = [list(group) for _, group in groupby(timed, key=lambda each: round(each[0] / HOUR_ALIKE))]
        self._improve(groups, index, thing)
        known_h = self._full_h(self.best.stays, thing) + HOUR_ALIKE
        first = tuple(stay for stay in self.best.stays if stay.thing in self.order[: index + 1])
        kept = [option for hour, option in timed if known_h - self._slack_h(option) <= hour <= known_h]
        self.complete &= len(kept) < MOST_KEPT or index == len(self.order) - 1
        return [Option(self.best.chargers, first), *kept[: MOST_KEPT - 1]]

    def _slack_h(self, option: Option) -> float:
        """Where others may slow a thing down, one that would be full earlier alone is a candidate too."""
        shared = any(self.bench.shares(charger) for charger in option.chargers)
        return self.bench.evening.leave_h if shared else 2 * HOUR_ALIKE

    def _improve(self, groups: list[list[Timed]], index: int, thing: int) -> None:
        """A better best plan, if one of the hours before its own leaves room for the rest: halving, then all."""
        tried: set[int] = set()
        low, high = 0, self._known(groups, thing)
        while low < high:
            middle = 0 if not tried else (low + high) // 2
            tried.add(middle)
            if self._leaves_room(groups, middle, index):
                high = self._known(groups, thing)
            else:
                low = middle + 1
        for place in range(high):
            if place not in tried and place < self._known(groups, thing) and self._leaves_room(groups, place, index):
                return

    def _known(self, groups: list[list[Timed]], thing: int) -> int:
        """How many hours are before that of the best plan."""
        known_h = self._full_h(self.best.stays, thing) - HOUR_ALIKE
        return sum(group[0][0] < known_h for group in groups)

    def _leaves_room(self, groups: list[list[Timed]], place: int, index: int) -> bool:
        if self._tired():
            return False
        hour = groups[place][0][0] + HOUR_ALIKE
        options = [option for group in groups[: place + 1] for at_h, option in group]
        options = [o for o in options if self._full_h(o.stays, self.order[index]) >= hour - self._slack_h(o)]
        due_h = [*self.due_h, hour]
        found = self._each_soonest(options, due_h) or self._searched(options, due_h)
        if found is not None:
            self.best = found
        return found is not None

    def _tired(self) -> bool:
        """Whether enough has been tried; then the plan is not complete."""
        tired = self.work * len(self.bench.slots) > MOST_WORK or self.bench.runs - self.begun_at > MOST_RUNS
        self.complete &= not tired
        return tired

    def _each_soonest(self, options: list[Option], due_h: list[float]) -> Option | None:
        """The rest one after the other, each as soon as can be."""
        for option in options[:2]:
            here: Option | None = option
            for index in range(len(due_h), len(self.order)):
                here = here and self._soonest(here, index, due_h)
            if here is not None:
                return here
        return None

    def _soonest(self, option: Option, index: int, due_h: list[float]) -> Option | None:
        thing, level = self.order[index], self.levels[index]
        if self._level(option.stays, thing) >= level - NEARLY:
            return option
        found = self._early([option], thing, due_h, None)
        return found[0][1] if found and level >= FULL - NEARLY else None

    def _searched(self, options: list[Option], due_h: list[float]) -> Option | None:
        search = Search(self.bench, self.order, piecemeal=self.piecemeal, runs_each=RUNS_EACH)
        found = search.rest(options, self.levels, due_h)
        self.work += search.work
        self.complete &= search.complete or bool(found)
        return found[0] if found else None

    def _candidates(self, options: list[Option], index: int, thing: int) -> list[Timed]:
        """By hour. What ends short has no hour: for it the search's own places."""
        if all(self._level(option.stays, thing) >= self.levels[index] - NEARLY for option in options):
            return [(self._full_h(option.stays, thing), option) for option in options]
        if self._tired():
            return []
        if self.levels[index] >= FULL - NEARLY:
            return self._early(options, thing, self.due_h, self._full_h(self.best.stays, thing))
        search = Search(self.bench, self.order[: index + 1], piecemeal=self.piecemeal, runs_each=RUNS_EACH)
        placed = search.rest(options, self.levels, self.due_h)
        self.work += search.work
        self.complete &= search.complete
        return [(self.bench.evening.leave_h, option) for option in placed]

    def _early(self, options: list[Option], thing: int, due_h: list[float], until_h: float | None) -> list[Timed]:
        """In one stay, or where none is enough in two or three."""
        newest = options
        for _ in range(MOST_STAYS):
            newest = [more for option in newest for more in self._one_more(option, thing, due_h, until_h)]
            full = [option for option in newest if self._level(option.stays, thing) >= FULL - NEARLY]
            if full:
                break
            newest = sorted(newest, key=lambda option: -self._level(option.stays, thing))[:MOST_KEPT]
        timed = [(self._full_h(option.stays, thing), option) for option in full]
        return sorted(timed, key=lambda each: (each[0], len(each[1].stays)))

    def _one_more(self, option: Option, thing: int, due_h: list[float], until_h: float | None) -> Iterator[Option]:
        if self._tired():
            return
        self.work += 1
        for stays in self.places.early(option.stays, thing, option.chargers, until_h):
            if self._on_time(stays, due_h):
                yield Option(option.chargers, stays)

    def _on_time(self, stays: Stays, due_h: list[float]) -> bool:
        return all(
            self._full_h(stays, thing) <= hour + HOUR_ALIKE and self._level(stays, thing) >= level - NEARLY
            for thing, hour, level in zip(self.order, due_h, self.levels, strict=False)
        )

    def _level(self, stays: Stays, thing: int) -> float:
        return capped(self.bench.ending(stays, thing).soc)

    def _full_h(self, stays: Stays, thing: int) -> float:
        full_h = self.bench.ending(stays, thing).full_h
        return self.bench.evening.leave_h if full_h is None else full_h
