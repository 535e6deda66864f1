"""Half-charged things moved from port to port while hands are there, and whether more such moves could help.

Between ports of unequal strength it can pay to take a thing off before it is full: on the weak port until the strong
one is free, or from the strong one to the weak one for the end of its taper. At each swap of the evening and the
morning it is tried to let what hangs on two unequal ports change places, up to then or from then on, and to charge what
waits for its port on a free one. The best of all that is kept, and again, until nothing is left that leaves more at
leaving (`WORTH_SOC`) or makes something full sooner (`WORTH_H`), in order of priority. A thing is still plugged in
`search.MOST_STAYS` times at most, and nothing moves in the night.

That is one change after the other, not every plan with moves: where ports are unequal and something is not at its best,
the plan says so. Against trying every swap on a coarse grid (two or three things, two unequal ports, 1,500 random
evenings): less full at leaving in 2, full more than a quarter of an hour later in 13; without moves 5 and 47.
"""

from collections.abc import Iterable, Iterator
from itertools import combinations

from kitlog.budget.charging.bench import NEARLY, Bench, Ending, Stay, Stays
from kitlog.budget.charging.fill import filled, freed
from kitlog.budget.charging.places import Places
from kitlog.budget.charging.search import HOUR_ALIKE, MOST_STAYS, Option, capped
from kitlog.budget.charging.tidy import joined

WORTH_SOC, WORTH_H = 0.01, 0.25
"""Gains that are worth a move by hand: charge at leaving, and hours (common practice, no source)."""
MOST_ROUNDS = 8
MOST_RUNS = 800
"""Simulated nights, over all changes of one evening."""


class Moves:
    """Changes of places in one evening; `order`: things by index."""

    def __init__(self, bench: Bench, order: list[int]) -> None:
        self.bench, self.order = bench, order
        self.places, self._begun_at = Places(bench), bench.runs

    def made(self, option: Option) -> Option:
        """The plan with every move that helps, one after the other."""
        for _ in range(MOST_ROUNDS):
            better = self._best(option)
            if better is None:
                break
            option = better
        return option

    def all_at_their_best(self, option: Option) -> bool:
        """Whether each thing is as full, as soon, as it could be alone on its best port from the beginning."""
        return all(self._at_its_best(option.stays, thing) for thing in self.order)

    def could_matter(self) -> bool:
        """Whether ports are unequal for anything."""
        return any(len({self._strength(thing, port) for port in self._ports(thing)}) > 1 for thing in self.order)

    def _ports(self, thing: int) -> list[int]:
        return [port for port in range(len(self.bench.slots)) if self.places.fit(thing, port).fits]

    def _strength(self, thing: int, port: int) -> tuple[float, int | None]:
        """What a thing gets there alone, and with which charger it has to share."""
        slot = self.bench.slots[port]
        limit_w = min(slot.limit_w, self.bench.cells[thing].charge_w[0])
        return limit_w, slot.charger if self.bench.shares(slot.charger) else None

    def _at_its_best(self, stays: Stays, thing: int) -> bool:
        evening = self.bench.evening
        alone = [Stay(thing, port, evening.from_h, evening.leave_h) for port in self._ports(thing)]
        ends = [self.bench.ending((stay,), thing) for stay in alone if stay.from_h < stay.to_h]
        here = self.bench.ending(stays, thing)
        return all(
            capped(end.soc) <= capped(here.soc) + NEARLY and self._hour(here) <= self._hour(end) + HOUR_ALIKE
            for end in ends
        )

    def _hour(self, end: Ending) -> float:
        return self.bench.evening.leave_h if end.full_h is None else end.full_h

    def _best(self, option: Option) -> Option | None:
        best = option
        for stays in self._changes(option):
            if self.bench.runs - self._begun_at > MOST_RUNS:
                break
            if self._better(stays, best.stays):
                best = Option(option.chargers, stays)
        return None if best is option else filled(self.bench, best, self.order)

    def _better(self, new: Stays, old: Stays) -> bool:
        """Fuller, or as full and sooner; a small gain counts only where it asks for no more hands."""
        easy = _hands(new) <= _hands(old)
        worth_soc, worth_h = (NEARLY, HOUR_ALIKE) if easy else (WORTH_SOC, WORTH_H)
        ends = [(self.bench.ending(new, thing), self.bench.ending(old, thing)) for thing in self.order]
        fuller = _gain([capped(mine.soc) - capped(other.soc) for mine, other in ends], NEARLY, worth_soc)
        sooner = _gain([self._hour(other) - self._hour(mine) for mine, other in ends], HOUR_ALIKE, worth_h)
        return fuller > 0 or (fuller == 0 and sooner > 0)

    def _changes(self, option: Option) -> Iterator[Stays]:
        ports = [port for port, slot in enumerate(self.bench.slots) if slot.charger in option.chargers]
        for changed in (*self._exchanged(option.stays, ports), *self._while_idle(option.stays, ports)):
            stays = freed(self.bench, joined(tuple(changed)))
            if self._possible(stays):
                yield stays

    def _exchanged(self, stays: Stays, ports: list[int]) -> Iterator[Stays]:
        for one, other in combinations(ports, 2):
            if not self._alike(one, other):
                for at_h in self.places.moments:
                    yield self._before(stays, {one: other, other: one}, at_h)
                    yield self._after(stays, {one: other, other: one}, at_h)

    def _alike(self, one: int, other: int) -> bool:
        return all(self._strength(thing, one) == self._strength(thing, other) for thing in self.order)

    def _before(self, stays: Stays, to: dict[int, int], at_h: float) -> Stays:
        """Up to a moment, what hangs on two ports changes places."""
        early = [stay._replace(port=to.get(stay.port, stay.port)) for stay in _until(stays, at_h)]
        return self._longer([*early, *_from(stays, at_h)], to)

    def _after(self, stays: Stays, to: dict[int, int], at_h: float) -> Stays:
        """From a moment on."""
        late = [stay._replace(port=to.get(stay.port, stay.port)) for stay in _from(stays, at_h)]
        return self._longer([*_until(stays, at_h), *late], to)

    def _longer(self, stays: list[Stay], ports: Iterable[int]) -> Stays:
        """What hangs on these ports stays as long as it may: it may take longer there."""
        return tuple(self._longest(stays, stay) if stay.port in ports else stay for stay in stays)

    def _while_idle(self, stays: Stays, ports: list[int]) -> Iterator[Stays]:
        """A thing that waits for its port is charged on a free one until then."""
        for thing in self.order:
            for port in ports:
                for low, high in self.places.gaps(stays, thing, port):
                    to_h = high if self._with_hands(high) else self.bench.evening.bed_h
                    if low < to_h and self._with_hands(low):
                        yield (*stays, Stay(thing, port, low, to_h))

    def _with_hands(self, at_h: float) -> bool:
        return at_h <= self.bench.evening.bed_h or at_h >= self.bench.evening.up_h

    def _longest(self, others: list[Stay], stay: Stay) -> Stay:
        """Until its port or the thing is wanted elsewhere."""
        wanted = [o.from_h for o in others if o.from_h > stay.from_h and (o.port == stay.port or o.thing == stay.thing)]
        return stay._replace(to_h=min(wanted, default=self.bench.evening.leave_h))

    def _possible(self, stays: Stays) -> bool:
        """Plugs, cables and how often a thing is plugged in."""
        for stay in stays:
            others = tuple(each for each in stays if each is not stay)
            if sum(each.thing == stay.thing for each in others) >= MOST_STAYS:
                return False
            if not self.places.fit(stay.thing, stay.port).fits:
                return False
            spans = self.places.gaps(others, stay.thing, stay.port)
            if not any(low <= stay.from_h and stay.to_h <= high for low, high in spans):
                return False
        return True


def _until(stays: Stays, at_h: float) -> list[Stay]:
    return [stay._replace(to_h=min(stay.to_h, at_h)) for stay in stays if stay.from_h < at_h]


def _from(stays: Stays, at_h: float) -> list[Stay]:
    return [stay._replace(from_h=max(stay.from_h, at_h)) for stay in stays if stay.to_h > at_h]


def _hands(stays: Stays) -> int:
    """How often somebody must come to the ports."""
    return len({edge for stay in stays for edge in (stay.from_h, stay.to_h)})


def _gain(gains: list[float], alike: float, worth: float) -> float:
    """The first gain that is worth a move, or the first loss before it; 0 if there is neither."""
    return next((gain for gain in gains if gain < -alike or gain > worth), 0.0)
