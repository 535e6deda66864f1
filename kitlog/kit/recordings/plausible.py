"""Spikes: fixes that nobody can have reached from the ones before and left for the ones after.

Fixes are strung into chains, each run of them on the latest chain from whose end it can be reached. A chain stays if it
holds a run of `LASTING_S`, or a tenth of the time, or is the longest of all; a receiver that finds itself elsewhere for
good stays there, and what is left are spikes.
"""

from collections.abc import Callable, Iterator, Sequence
from itertools import compress

LASTING_S = 30
_OPEN_CHAINS = 8

PLACE_M, PLACE_M_S = 50.0, 100.0
"""A jump further than 50 m and 100 m/s more is a spike: no paraglider and no car does that (common practice,
no source)."""
HEIGHT_M, HEIGHT_M_S = 15.0, 25.0
"""The same for heights: a steep spiral sinks at about 20 m/s (from memory)."""


def reached_places(t: Sequence[int], x: Sequence[float], y: Sequence[float]) -> list[int] | None:
    """Which fixes are no spikes of place, None for all of them."""

    def far(a: int, b: int) -> bool:
        return abs(x[b] - x[a]) + abs(y[b] - y[a]) > PLACE_M + PLACE_M_S * (t[b] - t[a])

    pairs = zip(t, t[1:], x, x[1:], y, y[1:], strict=False)
    jumps = [
        i
        for i, (t0, t1, x0, x1, y0, y1) in enumerate(pairs, 1)
        if abs(x1 - x0) + abs(y1 - y0) > PLACE_M + PLACE_M_S * (t1 - t0)
    ]
    return _chained(t, jumps, far)


def reached_heights(t: Sequence[int], h: Sequence[float]) -> list[int] | None:
    """Which fixes are no spikes of height, None for all of them."""

    def far(a: int, b: int) -> bool:
        return abs(h[b] - h[a]) > HEIGHT_M + HEIGHT_M_S * (t[b] - t[a])

    pairs = zip(t, t[1:], h, h[1:], strict=False)
    jumps = [i for i, (t0, t1, h0, h1) in enumerate(pairs, 1) if abs(h1 - h0) > HEIGHT_M + HEIGHT_M_S * (t1 - t0)]
    return _chained(t, jumps, far)


def _chained(t: Sequence[int], jumps: list[int], far: Callable[[int, int], bool]) -> list[int] | None:
    if not jumps:
        return None
    chains: list[list[tuple[int, int]]] = []
    for run in _runs(len(t), jumps):
        back = range(len(chains) - 1, max(-1, len(chains) - 1 - _OPEN_CHAINS), -1)
        which = next((k for k in back if not far(chains[k][-1][1] - 1, run[0])), None)
        chain = [] if which is None else chains.pop(which)
        chain.append(run)
        chains.append(chain)
    return _lasting(t, chains)


def _runs(count: int, jumps: list[int]) -> Iterator[tuple[int, int]]:
    yield from zip([0, *jumps], [*jumps, count], strict=True)


def _lasting(t: Sequence[int], chains: list[list[tuple[int, int]]]) -> list[int]:
    """The fixes of the chains that stay."""
    lasts = [[t[end - 1] - t[start] for start, end in chain] for chain in chains]
    whole = sum(map(sum, lasts))
    longest = max(range(len(chains)), key=lambda k: (sum(lasts[k]), len(chains[k])))
    stay = [k == longest or max(runs) >= LASTING_S or 10 * sum(runs) > whole for k, runs in enumerate(lasts)]
    return sorted(i for chain in compress(chains, stay) for start, end in chain for i in range(start, end))
