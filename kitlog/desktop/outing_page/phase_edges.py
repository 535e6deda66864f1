"""The edges between the phases of the power picture: which one is under a pointer, and what it says where it is put."""

from dataclasses import dataclass

from kitlog.paint.power_picture import PowerPicture

SNAP_H = 5 / 60
"""Durations go in steps of five minutes."""


@dataclass(frozen=True, slots=True)
class EdgeHold:
    """The end of a phase while it is moved.

    Attributes:
        number: of the phase, from 0.
        offset: how far beside the edge it was taken, as a share of the width.
        edge: where the edge stood.
        total_h: hours of the whole width then; the bands are as wide as the high case is long.
        likely_h: what the phase lasted in the likely case then.
    """

    number: int
    offset: float
    edge: float
    total_h: float
    likely_h: float

    def likely_at(self, place: float) -> float:
        """Likely duration with which the edge follows the pointer to a share of the width, in steps of five minutes.

        With d hours more, the edge lies at (edge x total + d) / (total + d) of the width. The last edge is the end of
        the picture and cannot follow: there a pixel is as many hours as it was when the edge was taken.
        """
        place -= self.offset
        to_come = 1.0 - place
        if self.edge >= 1.0:
            more_h = (place - 1.0) * self.total_h
        elif to_come <= 0.0:
            more_h = float("inf")
        else:
            more_h = (place - self.edge) * self.total_h / to_come
        return snapped(min(self.likely_h + more_h, 240.0))


def snapped(hours: float) -> float:
    """The nearest whole five minutes, none below zero."""
    return max(0.0, round(hours / SNAP_H) * SNAP_H)


def stepped(hours: float, steps: int) -> float:
    """So many steps of five minutes more or less; the first one goes to a whole step."""
    whole = hours / SNAP_H
    near = round(whole)
    if abs(whole - near) > 1e-6 and steps:
        near = int(whole) + (1 if steps > 0 else 0)
        steps -= 1 if steps > 0 else -1
    return max(0.0, (near + steps) * SNAP_H)


def edge_near(picture: PowerPicture, place: float, reach: float) -> int | None:
    """The phase whose end lies nearest to a share of the width, at most `reach` away; None where none does.

    Of several edges at one place, as after a phase of no hours, it is the last.
    """
    if not sum(phase.high_h for phase in picture.phases):
        return None
    near = [(abs(edge - place), -number) for number, edge in enumerate(picture.edges[1:]) if abs(edge - place) <= reach]
    return -min(near)[1] if near else None


def hold(picture: PowerPicture, number: int, place: float) -> EdgeHold:
    """Take the end of a phase at a share of the width."""
    edge = picture.edges[number + 1]
    total_h = sum(phase.high_h for phase in picture.phases)
    return EdgeHold(number, place - edge, edge, total_h, picture.phases[number].likely_h)
