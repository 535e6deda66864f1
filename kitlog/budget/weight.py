"""Weight: what leaves the ground, against wing, harness and reserve.

Take-off mass = body + worn + carried + wing + water and food as they are at launch. Certified limits hold at take-off
and at landing, are inclusive and are compared unrounded (EN 926-2 range; inclusive is common practice, no source).
Tolerances add as squares (independent errors); the plain sum is the worst case.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from kitlog.kit.facets import Harness, Reserve, Wing
from kitlog.kit.kinds import Zone

PILOT = "pilot"
"""The id of the pilot's own load."""


@dataclass(frozen=True, slots=True)
class Load:
    """Something that leaves the ground.

    Attributes:
        id: item id, ``pilot``, or a name; mass_g None = not known.
        tolerance_g: of this mass as taken; weighed_g: of the same mass on the scale that suits it.
        zone: where it rides in the air, None = a body.
        gone_g: what of it is gone at the landing (water drunk, food eaten, ballast dropped).
        on_foot: where it rides on foot, None = where it rides in the air.
    """

    id: str
    mass_g: int | None
    tolerance_g: float = 0.0
    weighed_g: float = 0.0
    zone: Zone | None = None
    gone_g: int = 0
    on_foot: Zone | None = None


@dataclass(frozen=True, slots=True)
class Sharpening:
    """The one weighing that narrows the sum most: whose, and by how many g of tolerance."""

    id: str
    by_g: float


@dataclass(frozen=True, slots=True)
class MassBalance:
    """Sums of the loads, in g; a sum is None where one mass in it is not known (then the known one is its least value).

    Attributes:
        known_g, known_landing_g: what is known of the take-off and of the landing mass.
        by_zone: known mass by zone in the air, without bodies.
        tolerance_g: root of the sum of squares; tolerance_sum_g: plain sum.
        unknown: ids of loads without mass.
        pack_g: what is known of what is carried but not worn on foot.
    """

    pilot_g: int | None
    take_off_g: int | None
    landing_g: int | None
    known_g: int
    known_landing_g: int
    tolerance_g: float
    tolerance_sum_g: float
    by_zone: dict[Zone, int]
    unknown: tuple[str, ...]
    sharpen: Sharpening | None
    pack_g: int

    def without(self, mass_g: int | None) -> int | None:
        """Take-off mass less a mass in g, None where either is not known."""
        return None if self.take_off_g is None or mass_g is None else self.take_off_g - mass_g


def weigh(loads: Iterable[Load]) -> MassBalance:
    """Add up what leaves the ground. Pass nothing that is left in the car."""
    every = tuple(loads)
    unknown = tuple(load.id for load in every if load.mass_g is None)
    known = sum(load.mass_g or 0 for load in every)
    gone = sum(load.gone_g for load in every)
    return MassBalance(
        pilot_g=mass_of(every, PILOT),
        take_off_g=None if unknown else known,
        landing_g=None if unknown else known - gone,
        known_g=known,
        known_landing_g=known - gone,
        tolerance_g=math.sqrt(sum(load.tolerance_g**2 for load in every)),
        tolerance_sum_g=sum(load.tolerance_g for load in every),
        by_zone=_by_zone(every),
        unknown=unknown,
        sharpen=_sharpest(every),
        pack_g=sum(load.mass_g or 0 for load in every if not _on_body(load)),
    )


def mass_of(loads: Iterable[Load], id_: str) -> int | None:
    """The mass of one load in g, None where it is not known or there is no such load."""
    return next((load.mass_g for load in loads if load.id == id_), None)


def _on_body(load: Load) -> bool:
    return load.zone is None or (load.on_foot or load.zone) is Zone.WORN


def _by_zone(loads: tuple[Load, ...]) -> dict[Zone, int]:
    sums: dict[Zone, int] = {}
    for load in loads:
        if load.zone is not None:
            sums[load.zone] = sums.get(load.zone, 0) + (load.mass_g or 0)
    return sums


def _sharpest(loads: tuple[Load, ...]) -> Sharpening | None:
    squares = sum(load.tolerance_g**2 for load in loads)
    best: Sharpening | None = None
    for load in loads:
        if load.mass_g is None or load.weighed_g >= load.tolerance_g:
            continue
        by_g = math.sqrt(squares) - math.sqrt(squares - load.tolerance_g**2 + load.weighed_g**2)
        if best is None or by_g > best.by_g:
            best = Sharpening(load.id, by_g)
    return best


class Fit(StrEnum):
    """Where a mass stands against a limit."""

    INSIDE = "inside"
    REACHES_OVER = "inside, tolerance reaches over"
    REACHES_IN = "outside, tolerance reaches in"
    OUTSIDE = "outside"
    NOT_KNOWN = "not known"


def fit(mass_g: float | None, low_g: float | None, high_g: float | None, tolerance_g: float) -> Fit:
    """Where a mass stands between two limits (inclusive); a limit of None is not known and then nothing is."""
    if mass_g is None or low_g is None or high_g is None:
        return Fit.NOT_KNOWN
    if low_g <= mass_g <= high_g:
        inside = low_g <= mass_g - tolerance_g and mass_g + tolerance_g <= high_g
        return Fit.INSIDE if inside else Fit.REACHES_OVER
    reaches = mass_g - tolerance_g <= high_g and mass_g + tolerance_g >= low_g
    return Fit.REACHES_IN if reaches else Fit.OUTSIDE


def least_fit(known_g: float, high_g: float | None, tolerance_g: float) -> Fit:
    """Where a mass stands of which only the least value is known: over its limit already, or not known."""
    if high_g is None or known_g <= high_g:
        return Fit.NOT_KNOWN
    return Fit.OUTSIDE if known_g - tolerance_g > high_g else Fit.REACHES_IN


def under(mass_g: float | None, high_g: float | None, tolerance_g: float) -> Fit:
    """Where a mass stands against a greatest load alone (inclusive)."""
    return fit(mass_g, -math.inf, high_g, tolerance_g)


def position_pct(mass_g: float | None, wing: Wing | None) -> float | None:
    """Position in the certified range in per cent, 0 at the least and 100 at the greatest mass; not cut off."""
    if mass_g is None or wing is None or wing.min_g is None or wing.max_g is None or wing.max_g == wing.min_g:
        return None
    return 100 * (mass_g - wing.min_g) / (wing.max_g - wing.min_g)


def harness_fit(hanging_g: float | None, harness: Harness | None, tolerance_g: float) -> Fit:
    """Whether what hangs in the harness is within its greatest load.

    `hanging_g` is the take-off mass less the wing, the harness itself counted: makers differ, this is the cautious
    side.
    """
    return under(hanging_g, harness.max_g if harness else None, tolerance_g)


@dataclass(frozen=True, slots=True)
class ReserveFit:
    """Load on the reserve against its printed maximum and minimum, with the wing and without, in g.

    Published sources disagree on whether the wing counts (it does not hang under the reserve; makers' size guides
    count it), so both stand.
    """

    with_wing_g: int | None
    without_wing_g: int | None
    with_wing: Fit
    without_wing: Fit
    below_min: bool


def reserve_fit(
    take_off_g: int | None, without_wing_g: int | None, reserve: Reserve | None, tolerance_g: float
) -> ReserveFit:
    """Compare both loads with the printed limits; a minimum that is not printed does not count."""
    high = reserve.max_g if reserve else None
    low = reserve.min_g if reserve else None
    return ReserveFit(
        with_wing_g=take_off_g,
        without_wing_g=without_wing_g,
        with_wing=under(take_off_g, high, tolerance_g),
        without_wing=under(without_wing_g, high, tolerance_g),
        below_min=low is not None and without_wing_g is not None and without_wing_g < low,
    )
