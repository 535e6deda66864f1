"""The least figure from which every larger one will do, found by walking down from the largest.

Sufficiency need not be monotone: a phone that starts at 55 % is plugged in and lasts, one that starts at 90 % is not
plugged and does not. Halving 0..1 would then find a figure in some gap, and call what lies above it enough.
"""

from collections.abc import Callable, Iterable

Trial = tuple[bool, object]
"""Whether it will do, and the story of the day: which plugs, switches and bank states came in which phase."""

STEPS = 200
MOST_RUNS = 600
_LAST_RUNS = 60
"""Kept back to halve the step in which it first fails."""
_MOST_BREAKPOINTS = 100
_HALVINGS = 24


class WalkDown:
    """Walk down in steps of 1/200 of the largest figure and at the breakpoints given; halve where the story changes.

    While the story of the day stays the same, the end changes gradually. Where two neighbouring figures tell different
    stories, the place of the change is found by halving, and both sides of it are tried. At most 600 runs; when no more
    are left than the remaining steps and the last halving need, steps that hold at both ends are no longer looked into.
    What fails only within one step, with the same story at both ends, is not seen.
    """

    def __init__(self, trial: Callable[[float], Trial], largest: float, breakpoints: Iterable[float] = ()) -> None:
        self.runs = 0
        self._trial = trial
        self._largest = largest
        steps = {largest * step / STEPS for step in range(STEPS)}
        inner = sorted({x for x in breakpoints if 0.0 <= x < largest})[:_MOST_BREAKPOINTS]
        self._marks = sorted(steps.union(inner), reverse=True)
        self._looking_until = 0

    def least(self) -> float | None:
        """The least figure that will do, as will all above it; 0 if all will; None if not even the largest."""
        high, story = self._largest, self._try(self._largest)
        if not story[0]:
            return None
        for passed, low in enumerate(self._marks):
            self._looking_until = MOST_RUNS - _LAST_RUNS - (len(self._marks) - passed)
            found = self._try(low)
            failing = self._search(high, story, low, found, _HALVINGS)
            if failing is not None:
                return failing
            high, story = low, found
        return 0.0

    def _try(self, figure: float) -> Trial:
        self.runs += 1
        return self._trial(figure)

    def _search(self, high: float, above: Trial, low: float, below: Trial, halvings: int) -> float | None:
        """The least figure of the step that will do with all above it; None if the whole step will do."""
        if below[0] and (above[1] == below[1] or self.runs > self._looking_until):
            return None
        if not halvings:
            return None if below[0] else high
        middle = 0.5 * (low + high)
        found = self._try(middle)
        upper = self._search(high, above, middle, found, halvings - 1)
        if upper is not None:
            return upper
        return self._search(middle, found, low, below, halvings - 1)
