"""Recordings of the same flight by two instruments: they overlap in time."""

from collections.abc import Sequence
from datetime import datetime
from enum import StrEnum

Span = tuple[datetime, datetime]
"""Take-off and landing, aware."""

CLOCKS_S = 60
"""An overlap up to this may come from two clocks."""


class Overlap(StrEnum):
    """How two flights lie in time."""

    APART = "apart"
    SAME = "same"
    PARTLY = "partly"


def overlap(one: Span, other: Span) -> Overlap:
    """Whether two flights are one.

    SAME if half of the shorter lies in the other (common practice, no source): a second instrument. PARTLY if less
    than that, but more than `CLOCKS_S`: to be asked about. Nobody flies twice at a time.
    """
    both_s = (min(one[1], other[1]) - max(one[0], other[0])).total_seconds()
    shorter_s = min((end - start).total_seconds() for start, end in (one, other))
    if both_s > 0 and both_s >= shorter_s / 2:
        return Overlap.SAME
    return Overlap.PARTLY if both_s > CLOCKS_S else Overlap.APART


def first_of_each_flight(spans: Sequence[Span]) -> tuple[int, ...]:
    """For each flight the index of the first that is the same flight, its own index if none before is.

    In the order given: what comes first stays, whatever is the same as it, or as one of its like, is a second
    recording.
    """
    firsts = list(range(len(spans)))
    flying: list[int] = []
    for i in sorted(range(len(spans)), key=lambda i: spans[i]):
        flying = [j for j in flying if spans[j][1] > spans[i][0]]
        same = {_first(firsts, j) for j in flying if overlap(spans[j], spans[i]) is Overlap.SAME}
        for j in same | {i}:
            firsts[j] = min(same | {i})
        flying.append(i)
    return tuple(_first(firsts, i) for i in range(len(spans)))


def _first(firsts: Sequence[int], i: int) -> int:
    while firsts[i] != i:
        i = firsts[i]
    return i
