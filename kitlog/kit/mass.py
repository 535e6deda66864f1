"""How sure a mass is: tolerances by source, and masses that are plausible for a kind.

Tolerances: common practice, no source, but for the makers' 3 % and 10 % (a hiking writer calls makers' figures very
unreliable). One standard deviation is about half a tolerance.
"""

from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, MassSource

PERSON_SCALE_G = 500
BODY_G = 1_000
BODY_OLD_G = 2_500
BODY_FRESH_DAYS = 60
WATER_BY_MARK_G = 50

_SOFT = frozenset({Kind.GARMENT, Kind.GLOVES, Kind.FOOTWEAR})


def tolerance_g(mass_g: float, source: MassSource, kind: Kind) -> float:
    """Tolerance in g of one weighing of `mass_g` grams, not rounded.

    One line is one weighing: pass quantity x mass, once.
    """
    match source:
        case MassSource.KITCHEN_SCALE:
            return max(5.0, 0.005 * mass_g)
        case MassSource.LUGGAGE_SCALE:
            return 50.0 if mass_g <= 10_000 else 100.0
        case MassSource.PERSON_SCALE:
            return float(PERSON_SCALE_G)
        case MassSource.MAKERS_FIGURE:
            return 0.10 * mass_g if kind in _SOFT else max(20.0, 0.03 * mass_g)
        case MassSource.GUESS:
            return 0.25 * mass_g


def body_tolerance_g(age_days: int) -> int:
    """Tolerance in g of a body mass taken `age_days` before the outing: 1,000 to 60 days, 2,500 after."""
    return BODY_G if age_days <= BODY_FRESH_DAYS else BODY_OLD_G


def line_tolerance_g(item: Item, pieces: int) -> float | None:
    """Tolerance in g of `pieces` of an item weighed together; None where its mass is not known."""
    if item.mass_g is None:
        return None
    return tolerance_g(item.mass_g * pieces, item.mass_source, item.kind)


KITCHEN_SCALE_MOST_G = 5_000


def suited_scale(mass_g: float) -> MassSource:
    """The scale that would weigh a mass best: a kitchen scale to 5 kg, a luggage scale above."""
    return MassSource.KITCHEN_SCALE if mass_g <= KITCHEN_SCALE_MOST_G else MassSource.LUGGAGE_SCALE
