"""The hours of one case laid on bands that both cases share.

The bands are as wide as the phases last in the high case; within a band each case's own hours are stretched to fit, so
that both curves meet the same phase boundaries.
"""

from bisect import bisect_right
from dataclasses import dataclass
from itertools import accumulate, pairwise

Curve = tuple[tuple[float, float], ...]
"""Points (hours from the start, share of the charge), hours never falling."""


def band_edges(high_h: tuple[float, ...], span_h: float = 0.0) -> tuple[float, ...]:
    """Edges of the bands as shares of the width, by the hours of the high case.

    The width stands for `span_h`; for 0 it stands for all hours, with equal bands if those are zero.
    """
    lasting = high_h if span_h > 0 or sum(high_h) > 0 else tuple(1.0 for _ in high_h)
    total = span_h or sum(lasting)
    return (0.0, *(done / total for done in accumulate(lasting)))


@dataclass(frozen=True, slots=True)
class CaseClock:
    """Where the hours of one case lie on the shared bands.

    Attributes:
        edges: n + 1 edges of the bands as shares of the width, from 0, as a rule to 1.
        lasts_h: n durations of this case in hours, none below zero.
    """

    edges: tuple[float, ...]
    lasts_h: tuple[float, ...]

    @property
    def starts_h(self) -> tuple[float, ...]:
        """N + 1 hours from the start at which this case reaches the edges."""
        return (0.0, *accumulate(self.lasts_h))

    def band_at(self, share: float) -> int:
        """Number of the band under `share` of the width; the last one at its very end."""
        return max(0, min(bisect_right(self.edges, share) - 1, len(self.lasts_h) - 1))

    def hours_at(self, share: float) -> float:
        """Hours from the start at `share` of the width."""
        if not self.lasts_h:
            return 0.0
        band = self.band_at(share)
        width = self.edges[band + 1] - self.edges[band]
        into = (share - self.edges[band]) / width if width > 0 else 1.0
        return self.starts_h[band] + min(max(into, 0.0), 1.0) * self.lasts_h[band]

    def share_at(self, hours: float) -> float:
        """Share of the width at which this case has reached `hours` from the start."""
        starts = self.starts_h
        for band, lasts in enumerate(self.lasts_h):
            if lasts > 0 and hours <= starts[band + 1]:
                into = max(0.0, hours - starts[band]) / lasts
                return self.edges[band] + into * (self.edges[band + 1] - self.edges[band])
        return self.edges[-1] if self.lasts_h else 1.0

    def laid(self, curve: Curve) -> list[tuple[float, float]]:
        """`curve` as points (share of the width, share of the charge); ends where the curve ends."""
        points: list[tuple[float, float]] = []
        for band, (start, end) in enumerate(pairwise(self.starts_h)):
            if curve and curve[0][0] <= end and curve[-1][0] >= start:
                points += self._laid_in(band, _stretch(curve, start, end))
        return points

    def _laid_in(self, band: int, piece: Curve) -> list[tuple[float, float]]:
        left, right = self.edges[band], self.edges[band + 1]
        start, end = self.starts_h[band : band + 2]
        if end <= start:  # passed in no time: the charge stands still across the band
            return [(left, piece[-1][1]), (right, piece[-1][1])]
        return [(left + (hours - start) / (end - start) * (right - left), charge) for hours, charge in piece]


def value_at(curve: Curve, hours: float) -> float | None:
    """Share of the charge at `hours`, linear between the points; None outside the curve."""
    if not curve or not curve[0][0] <= hours <= curve[-1][0]:
        return None
    after = bisect_right([t for t, _ in curve], hours)
    if after == len(curve):
        return curve[-1][1]
    (t0, v0), (t1, v1) = curve[after - 1], curve[after]
    return v0 + (v1 - v0) * (hours - t0) / (t1 - t0)


def _stretch(curve: Curve, start: float, end: float) -> Curve:
    """The part of `curve` from `start` to `end`, with points of its own at both unless it ends before."""
    piece = [point for point in curve if start <= point[0] <= end]
    first, last = value_at(curve, start), value_at(curve, end)
    if first is not None and (not piece or piece[0][0] > start):
        piece.insert(0, (start, first))
    if last is not None and piece[-1][0] < end:
        piece.append((end, last))
    return tuple(piece)
