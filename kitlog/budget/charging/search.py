"""The search: things in order of priority, all best places of each kept side by side for those that come after.

Best goes by the charge at leaving (above `FULL` all is alike), lexicographically: nothing of a higher priority ever
loses anything for something lower. Among plans that are alike in that, `sooner` seeks the one that is full soonest. For
each thing in turn, every kept plan is extended by every candidate of `places`; the plans in which the thing ends
fullest are kept, all of them, because where it lies decides what is left for the rest. Only if they become too many are
some dropped: for each choice of what keeps its port overnight, those that take most of the ports' waking hours. The
plan then says that it is not complete.

What is not tried, so that a person can follow the plan: a thing leaves a port before it is full only for bedtime, for
leaving, or for one of a higher priority; and it has at most three stays (evening, night, morning). So it does not give
a strong port to another half-way through its taper to go on at a weak one: `moved` tries that afterwards. Against
trying every swap on a coarse grid (up to three things, two ports): never behind in 2,420 random evenings with equal
ports and 2,918 with unequal ones, where it has been elsewhere.
"""

from collections import Counter
from dataclasses import dataclass, replace
from itertools import combinations
from operator import itemgetter

from kitlog.budget.charging.bench import NEARLY, Bench, Stay, Stays
from kitlog.budget.charging.evening import FULL
from kitlog.budget.charging.places import Places

HOUR_ALIKE = 1e-6
"""Hours closer than this are the same."""
MOST_KEPT = 60
MOST_RUNS = 1500
"""Simulated nights after which only a few plans are followed up."""
FEW_KEPT = 4
MOST_RUNS_EACH = 500
"""Simulated nights within one step of the search; the frugal plans come first."""
MOST_STAYS = 3
"""Stays of one thing: evening, night, morning."""


@dataclass(frozen=True, slots=True)
class Option:
    """A plan so far: which chargers are in the wall, and all stays."""

    chargers: frozenset[int]
    stays: Stays


@dataclass(frozen=True, slots=True)
class Found:
    """The plans that are alike in what counts; levels: capped charges in order; complete: none was dropped.

    piecemeal: they were found with things in pieces.
    """

    options: list[Option]
    levels: list[float]
    complete: bool
    piecemeal: bool = False


def capped(soc: float) -> float:
    """Above full all is alike."""
    return min(soc, FULL)


def search(bench: Bench, order: list[int]) -> Found:
    """The best plans: first with things in one piece where one is enough; if that leaves anything short, in pieces too.

    complete: all is full, or no plan was dropped on the way.
    """
    whole = Search(bench, order, piecemeal=False).run()
    if all(level >= FULL - NEARLY for level in whole.levels):
        return replace(whole, complete=True)
    pieces = Search(bench, order, piecemeal=True).run()
    better = ahead(pieces.levels, whole.levels)
    return replace(pieces if better else whole, complete=pieces.complete)


def ahead(levels: list[float], others: list[float]) -> bool:
    """Whether the first thing that differs is fuller."""
    pairs = zip(levels, others, strict=True)
    return next((mine > theirs for mine, theirs in pairs if abs(mine - theirs) > NEARLY), False)


def in_the_wall(bench: Bench) -> list[Option]:
    """Nothing placed yet: every choice of as many chargers as there are sockets."""
    chargers = range(len(bench.evening.chargers))
    sockets = bench.evening.sockets
    count = len(chargers) if sockets is None else min(sockets, len(chargers))
    return [Option(frozenset(some), ()) for some in combinations(chargers, count)]


class Search:
    """One search.

    order: things by index, the first must be full first.
    piecemeal: a thing may charge in pieces even where one stay would fill it.
    runs_each: simulated nights within one step, after which no more plans are extended.
    """

    def __init__(self, bench: Bench, order: list[int], *, piecemeal: bool, runs_each: int = MOST_RUNS_EACH) -> None:
        self.bench, self.order, self.piecemeal, self.runs_each = bench, order, piecemeal, runs_each
        self.begun_at = bench.runs
        self.places = Places(bench)
        self.levels: list[float] = []
        self.due_h: list[float] = []
        self.complete = True
        self.work = 0

    def run(self) -> Found:
        """All things placed."""
        options = in_the_wall(self.bench)
        for thing in self.order:
            options = self._placed(options, thing)
        return Found(options, self.levels, self.complete, self.piecemeal)

    def rest(self, options: list[Option], levels: list[float], due_h: list[float]) -> list[Option]:
        """From plans in which the first things are placed: those that reach these levels; none if that cannot be.

        due_h: when the first things must be full, whatever comes after them.
        """
        self.levels, self.due_h = levels[: len(due_h)], due_h
        for thing, level in zip(self.order[len(due_h) :], levels[len(due_h) :], strict=False):
            options = self._placed(options, thing)
            if self.levels[-1] < level - NEARLY:
                return []
        return options

    def _placed(self, options: list[Option], thing: int) -> list[Option]:
        """Options with no, one, two or three stays of a thing; those in which it ends fullest."""
        pool, newest = list(options), options
        for _ in range(MOST_STAYS):
            newest = self._fewer(self._extended(newest, thing))
            pool += newest
            if not self.piecemeal and any(self._level(option.stays, thing) >= FULL - NEARLY for option in pool):
                break
        socs = [self._level(option.stays, thing) for option in pool]
        bar = max(socs)
        self.levels.append(bar)
        return self._fewer([option for option, soc in zip(pool, socs, strict=True) if soc >= bar - NEARLY])

    def _level(self, stays: Stays, thing: int) -> float:
        return capped(self.bench.ending(stays, thing).soc)

    def _extended(self, options: list[Option], thing: int) -> list[Option]:
        extended: list[Option] = []
        begun_at = self.bench.runs
        for option in options:
            if self.bench.runs - begun_at > self.runs_each:
                self.complete = False
                break
            self.work += 1
            if self._level(option.stays, thing) < FULL - NEARLY:
                every = self.places.more(option.stays, thing, option.chargers, self._spares_others)
                extended += [Option(option.chargers, stays) for stays in every]
        return extended

    def _spares_others(self, stays: Stays) -> bool:
        leave_h = self.bench.evening.leave_h
        return all(
            self._level(stays, thing) >= level - NEARLY for thing, level in zip(self.order, self.levels, strict=False)
        ) and all(
            (self.bench.ending(stays, thing).full_h or leave_h) <= due_h + HOUR_ALIKE
            for thing, due_h in zip(self.order, self.due_h, strict=False)
        )

    def _fewer(self, options: list[Option]) -> list[Option]:
        alike = {self._likeness(option): option for option in reversed(options)}
        most = MOST_KEPT if self.bench.runs - self.begun_at < MOST_RUNS else FEW_KEPT
        self.complete &= len(alike) <= most
        return self._varied(sorted(alike.values(), key=self._cost))[:most]

    def _varied(self, options: list[Option]) -> list[Option]:
        """First the most frugal for each choice of what keeps its port overnight, then the next of each, and so on."""
        seen: Counter[object] = Counter()
        ranks = []
        for option in options:
            nights = frozenset(stay.thing for stay in option.stays if self._overnight(stay))
            ranks.append(seen[option.chargers, nights])
            seen[option.chargers, nights] += 1
        return [option for _, option in sorted(zip(ranks, options, strict=True), key=itemgetter(0))]

    def _overnight(self, stay: Stay) -> bool:
        return stay.from_h <= self.bench.evening.bed_h and stay.to_h >= self.bench.evening.up_h

    def _likeness(self, option: Option) -> tuple[object, ...]:
        """Ports that differ in their names only may change places."""
        by_port: dict[int, list[tuple[float, ...]]] = {}
        for stay in option.stays:
            by_port.setdefault(stay.port, []).append((stay.thing, stay.from_h, stay.to_h))
        slots = self.bench.slots
        alike = sorted((repr(slots[port]._replace(name="")), tuple(stays)) for port, stays in by_port.items())
        return (option.chargers, tuple(alike))

    def _cost(self, option: Option) -> tuple[float, int, Stays]:
        """Hours of hands that are taken, then how often they are needed."""
        evening = self.bench.evening
        taken_h = sum(
            max(0.0, min(stay.to_h, evening.bed_h) - stay.from_h) + max(0.0, stay.to_h - max(stay.from_h, evening.up_h))
            for stay in option.stays
        )
        return (taken_h, len(option.stays), option.stays)
