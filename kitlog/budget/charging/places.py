"""Where one more thing could go among those already placed.

A stay begins and ends in hands: in the evening up to bedtime, or in the morning from getting up. One that begins by
bedtime and ends after getting up keeps its port through the night.
"""

from bisect import bisect_left
from collections.abc import Callable, Iterator
from functools import cached_property

from kitlog.budget.charging.bench import NEARLY, Bench, Stay, Stays
from kitlog.budget.charging.evening import FULL
from kitlog.budget.charging.gaps import Fit, Span, crowded, fit, next_swap_h, swaps_between, without


class Places:
    """Candidate stays of one evening."""

    def __init__(self, bench: Bench) -> None:
        self.bench = bench
        evening = bench.evening
        self._fits = [[fit(slot, thing.connector, evening.cables) for slot in bench.slots] for thing in evening.things]

    def fit(self, thing: int, port: int) -> Fit:
        """Plug and cable."""
        return self._fits[thing][port]

    def more(
        self, placed: Stays, thing: int, open_chargers: frozenset[int], spares_others: Callable[[Stays], bool]
    ) -> Iterator[Stays]:
        """Everything placed and one more stay of this thing; like ports with like stays are tried once.

        A stay that takes from others, as `spares_others` judges, is tried shorter.
        """
        for port, gap in self._free(placed, thing, open_chargers):
            for stay in self._in_gap(placed, thing, port, gap):
                stays = _and(placed, stay)
                if spares_others(stays):
                    yield stays
                else:
                    yield from self._shorter(placed, stay, spares_others)

    def early(self, placed: Stays, thing: int, open_chargers: frozenset[int], until_h: float | None) -> Iterator[Stays]:
        """Everything placed and one more stay of this thing that begins as soon as it may.

        until_h: it may also begin at any later swap, as long as it is full by then; None: it may not.
        """
        for port, gap in self._free(placed, thing, open_chargers):
            starts = self._begins(gap)
            for start_h in self._first(starts) if until_h is None else starts:
                begun = [_and(placed, stay) for stay in self._begun(placed, Stay(thing, port, start_h, gap[1]))]
                yield from begun
                if until_h is not None and not any(self._full_by(stays, thing, until_h) for stays in begun):
                    break

    def _full_by(self, stays: Stays, thing: int, until_h: float) -> bool:
        full_h = self.bench.ending(stays, thing).full_h
        return full_h is not None and full_h <= until_h

    def _begins(self, gap: Span) -> list[float]:
        """The beginning of a gap, and all swaps in it."""
        evening = self.bench.evening
        asleep = evening.bed_h < gap[0] < evening.up_h
        return sorted({
            *([] if asleep else [gap[0]]),
            *(moment for moment in (*self.moments, evening.up_h) if gap[0] <= moment < gap[1]),
        })  # fmt: skip

    def _free(self, placed: Stays, thing: int, open_chargers: frozenset[int]) -> Iterator[tuple[int, Span]]:
        """Ports with the time in which they are free; like ports with like stays once."""
        seen = set()
        for port, slot in enumerate(self.bench.slots):
            if slot.charger not in open_chargers or not self.fit(thing, port).fits:
                continue
            likeness = (slot._replace(name=""), tuple(stay[0::2] + stay[3:] for stay in placed if stay.port == port))
            if likeness not in seen:
                seen.add(likeness)
                yield from ((port, gap) for gap in self.gaps(placed, thing, port))

    def _first(self, starts: list[float]) -> list[float]:
        """The first in the evening and the first in the morning."""
        morning = [start_h for start_h in starts if start_h >= self.bench.evening.up_h]
        return sorted({*starts[:1], *sorted(morning)[:1]})

    def _begun(self, placed: Stays, stay: Stay) -> Iterator[Stay]:
        """Off by bedtime if it is full then, else through the night, else as far as the gap goes."""
        evening = self.bench.evening
        if stay.from_h >= evening.up_h:
            yield from self._until_full(placed, stay)
            return
        if stay.from_h < evening.bed_h:
            yield from self._until_full(placed, stay._replace(to_h=min(stay.to_h, evening.bed_h)))
        if stay.to_h >= evening.up_h:
            for cut in self._until_full(placed, stay):
                if cut.to_h > evening.bed_h:
                    yield cut._replace(to_h=max(cut.to_h, evening.up_h))

    def gaps(self, placed: Stays, thing: int, port: int) -> list[Span]:
        """When the port, the thing and a cable are free."""
        evening = self.bench.evening
        spans = [(evening.from_h, evening.leave_h)]
        for stay in placed:
            if stay.port == port or stay.thing == thing:
                spans = without(spans, (stay.from_h, stay.to_h))
        pair, limit = self.fit(thing, port)[1:]
        if limit is not None:
            alike = tuple(stay for stay in placed if self.fit(stay.thing, stay.port).pair == pair)
            for span in crowded(alike, limit):
                spans = without(spans, span)
        return spans

    def _in_gap(self, placed: Stays, thing: int, port: int, gap: Span) -> Iterator[Stay]:
        evening = self.bench.evening
        low, high = gap
        for start_h in self._starts(placed, port, gap):
            end_h = min(high, evening.bed_h)
            if start_h < end_h:
                yield from self._until_full(placed, Stay(thing, port, start_h, end_h))
            if high >= evening.up_h and evening.up_h > start_h:
                yield from self._through_the_night(placed, Stay(thing, port, start_h, high))
        if high > max(low, evening.up_h):
            yield from self._until_full(placed, Stay(thing, port, max(low, evening.up_h), high))

    def _until_full(self, placed: Stays, stay: Stay) -> Iterator[Stay]:
        """The stay cut at the first swap after the thing is full; where the total is shared, also the whole of it.

        For what comes later may slow it down without harm if it has the time.
        """
        cut = self._cut(placed, stay)
        yield cut
        if cut != stay and self.bench.shares(self.bench.slots[stay.port].charger):
            yield stay

    def _starts(self, placed: Stays, port: int, gap: Span) -> list[float]:
        """In the evening: at once, or where the total is shared, when one of the others is full."""
        evening, charger = self.bench.evening, self.bench.slots[port].charger
        if gap[0] > evening.bed_h:
            return []
        starts = {gap[0]}
        if self.bench.shares(charger):
            others = {stay.thing for stay in placed if self.bench.slots[stay.port].charger == charger}
            for other in others:
                full_h = self.bench.ending(placed, other).full_h
                if full_h is not None and gap[0] < full_h <= min(gap[1], evening.bed_h):
                    starts.add(next_swap_h(evening, full_h))
        return sorted(starts)

    def _cut(self, placed: Stays, stay: Stay) -> Stay:
        full_h = self.bench.ending(_and(placed, stay), stay.thing).full_h
        if full_h is None or full_h <= stay.from_h:
            return stay
        return stay._replace(to_h=min(stay.to_h, next_swap_h(self.bench.evening, full_h)))

    def _through_the_night(self, placed: Stays, stay: Stay) -> Iterator[Stay]:
        """As late as it may be to become full by getting up, or by the end of the gap; else as early as can be."""
        evening = self.bench.evening
        moments = swaps_between(evening, stay.from_h, stay.to_h)
        for end_h in sorted({evening.up_h, stay.to_h}):
            late = self._latest(placed, stay._replace(to_h=end_h), moments)
            for cut in self._until_full(placed, late):
                yield cut._replace(to_h=max(cut.to_h, evening.up_h))
        if self.bench.shares(self.bench.slots[stay.port].charger):
            yield stay

    def _shorter(self, placed: Stays, stay: Stay, spares_others: Callable[[Stays], bool]) -> Iterator[Stays]:
        """Put on later, or taken off sooner: by bisection, the longest that takes nothing from others."""
        moments = [moment for moment in self.moments if stay.from_h < moment < stay.to_h]
        later = [_and(placed, stay._replace(from_h=moment)) for moment in reversed(moments)]
        sooner = [_and(placed, stay._replace(to_h=moment)) for moment in moments]
        for ever_longer in (later, sooner):
            count = bisect_left(ever_longer, x=True, key=lambda stays: not spares_others(stays))
            if count:
                yield ever_longer[count - 1]

    @cached_property
    def moments(self) -> tuple[float, ...]:
        """All moments at which hands may swap."""
        evening = self.bench.evening
        step_h, count = evening.swap_step_min / 60.0, 0
        morning = []
        while (at_h := evening.up_h + count * step_h) < evening.leave_h:
            morning.append(at_h)
            count += 1
        return (*swaps_between(evening, evening.from_h, evening.bed_h), *morning)

    def _latest(self, placed: Stays, stay: Stay, moments: list[float]) -> Stay:
        """By bisection: starting later never makes it fuller."""
        if not self._fills(placed, stay):
            return stay
        low, high = 0, len(moments) - 1
        if self._fills(placed, stay._replace(from_h=moments[high])):
            return stay._replace(from_h=moments[high])
        while high - low > 1:
            middle = (low + high) // 2
            if self._fills(placed, stay._replace(from_h=moments[middle])):
                low = middle
            else:
                high = middle
        return stay._replace(from_h=moments[low])

    def _fills(self, placed: Stays, stay: Stay) -> bool:
        return self.bench.ending(_and(placed, stay), stay.thing).soc >= FULL - NEARLY


def _and(placed: Stays, stay: Stay) -> Stays:
    return tuple(sorted((*placed, stay)))
