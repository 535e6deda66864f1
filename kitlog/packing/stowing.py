"""The list as it is stowed: in which zone each line lies when the bag is packed, before anything flies."""

from collections.abc import Iterable
from dataclasses import dataclass

from kitlog.kit.kinds import Zone
from kitlog.outing.outing import OwnLine
from kitlog.packing.assessment import Assessment, ListLine

_SPREAD_AT_LAUNCH = frozenset({Zone.OVERHEAD, Zone.HARNESS})
"""Zones of what is in use in the air: packed, it lies where it rides on foot; all else keeps its pocket."""


@dataclass(frozen=True, slots=True)
class Stowed:
    """What lies in one zone.

    Attributes:
        lines: of the list; own: lines of the pilot's own.
        mass_g: known mass in g, water included; unknown: how many lines have no mass.
    """

    zone: Zone
    lines: tuple[ListLine, ...]
    own: tuple[OwnLine, ...]

    @property
    def count(self) -> int:
        """Number of lines."""
        return len(self.lines) + len(self.own)

    @property
    def mass_g(self) -> int:
        """Known mass in g."""
        return sum(mass or 0 for mass in self._masses())

    @property
    def unknown(self) -> int:
        """Lines whose mass is not known."""
        return sum(mass is None for mass in self._masses())

    def _masses(self) -> Iterable[int | None]:
        yield from (line.mass_g for line in self.lines)
        yield from (own.mass_g for own in self.own)


def stowed_in(zone: Zone, on_foot: Zone | None) -> Zone:
    """Where a thing lies in the packed bag, from where it rides in the air and on foot."""
    return on_foot or zone if zone in _SPREAD_AT_LAUNCH else zone


def stowed(assessment: Assessment) -> tuple[Stowed, ...]:
    """The list by zone, empty zones left out; what stays in the car comes last."""
    groups = [
        Stowed(
            zone,
            tuple(line for line in assessment.lines if stowed_in(line.zone, line.zone_on_foot) is zone),
            tuple(own for own in assessment.outing.own_lines if stowed_in(own.zone, own.zone_on_foot) is zone),
        )
        for zone in Zone
    ]
    return tuple(group for group in groups if group.count)
