"""Conditions of a day: yes, no or open."""

from enum import StrEnum


class Condition(StrEnum):
    """What the day asks of the kit beyond the flight type."""

    COLD = "cold"
    HOT = "hot"
    WATER = "water"
    ALONE = "alone"
    WALK = "walk"
    NO_PICKUP = "no pickup"
    NO_SIGNAL = "no signal"
    AIRSPACE = "airspace"
    BORDER = "border"
    LATE = "late"
    DUST = "dust"
    FIRE = "fire"
    SNOW = "snow"
    FOREST = "forest"
    PASSENGER = "passenger"
    HIGH = "high"
    TOW = "tow"
    OVERNIGHT = "overnight"
    EVENT = "event"
    BY_AIR = "by air"

    @classmethod
    def _missing_(cls, value: object) -> "Condition | None":
        """Also ``no_signal`` and ``nosignal``; ``by air`` is a journey by airliner to the site."""
        text = str(value).lower().replace("_", "").replace(" ", "")
        return next((c for c in cls if c.value.replace(" ", "") == text), None)


OPEN_COUNTS_AS_YES = frozenset({Condition.WATER, Condition.NO_SIGNAL, Condition.FOREST, Condition.AIRSPACE})
"""Left open, these count as yes: forgetting them costs more than carrying for them."""

TICKED = OPEN_COUNTS_AS_YES | {
    Condition.BORDER,
    Condition.DUST,
    Condition.FIRE,
    Condition.SNOW,
    Condition.TOW,
    Condition.BY_AIR,
}
"""What only the pilot can say; border, dust, fire, snow, tow and by air are *no* until ticked."""


class Answer3(StrEnum):
    """Yes, no or open."""

    YES = "yes"
    NO = "no"
    OPEN = "open"


class Demand(StrEnum):
    """Who demands that service by law is closed."""

    LAW = "law"
    SCHOOL = "school"
    EVENT = "event"
