"""The edges between the phases of the power picture: which one is under a pointer, and what it says where it is put."""

from dataclasses import dataclass, replace

from kitlog.paint.power_picture import PowerPicture

SNAP_H = 5 / 60
"""Durations go in steps of five minutes."""

LONGEST_H = 240.0
"""No phase is dragged to more than ten days."""


@dataclass(frozen=True, slots=True)
class EdgeHold:
    """The end of a phase while it is moved.

    A pixel stays as many hours as it was when the edge was taken, however far it goes.

    Attributes:
        number: of the phase, from 0.
        place: where it was taken, as a share of the width.
        total_h: hours of the whole width then; the bands are as wide as the high case is long.
        likely_h: what the phase lasted in the likely case then.
    """

    number: int
    place: float
    total_h: float
    likely_h: float

    def likely_at(self, place: float) -> float:
        """Likely duration with which the edge follows the pointer to a share of the width, in steps of five minutes."""
        return snapped(min(self.likely_h + (place - self.place) * self.total_h, LONGEST_H))


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
    if not picture.lasts_h:
        return None
    near = [(abs(edge - place), -number) for number, edge in enumerate(picture.edges[1:]) if abs(edge - place) <= reach]
    return -min(near)[1] if near else None


def hold(picture: PowerPicture, number: int, place: float) -> EdgeHold:
    """Take the end of a phase at a share of the width."""
    return EdgeHold(number, place, picture.lasts_h, picture.phases[number].likely_h)


@dataclass(frozen=True, slots=True)
class Scale:
    """That of a picture when one of its edges began to move: hours of the whole width, px at the right of the bands."""

    span_h: float
    ends_px: float

    def lay(self, picture: PowerPicture, number: int) -> PowerPicture:
        """A picture on this scale; the axis is longer only where the moved end lies past it."""
        end_h = sum(phase.high_h for phase in picture.phases[: number + 1])
        return replace(picture, span_h=max(self.span_h, end_h), ends_px=self.ends_px)
