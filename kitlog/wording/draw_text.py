"""A draw in words: watts, their range, and how sure they are."""

from kitlog.budget.power.describe import DrawRange
from kitlog.kit.facets import WayOfUse
from kitlog.wording.figures import number_text, with_unit
from kitlog.wording.translate import N_, _

SURE = {
    "measured": N_("measured"),
    "maker": N_("maker’s figure"),
    "starter": N_("starter figure, not measured"),
    "guess": N_("a guess, not measured"),
}
"""How sure a draw is, by the basis of its way of use."""

SURE_SHORT = {
    "measured": N_("measured"),
    "maker": N_("maker’s figure"),
    "starter": N_("starter figure"),
    "guess": N_("guess"),
}
"""The same where there is little room, to choose from."""

SMALL_W = 0.1
"""Under this a draw is shown in thousandths of a watt."""


def watts_text(watts: float) -> str:
    """A power in W, to two decimals; small ones to three."""
    return with_unit(watts, "W", _decimals(watts))


def draw_text(draw: DrawRange, way: WayOfUse) -> str:
    """Likely draw, the range where there is one, what it was worked back from, how sure it is."""
    parts = [watts_text(draw.likely_w), range_text(draw), given_text(way), sure_text(way.basis)]
    return ", ".join(part for part in parts if part)


def range_text(draw: DrawRange) -> str:
    """Lowest and highest draw in W, empty where they are the same."""
    low, high = (number_text(watts, _decimals(draw.likely_w)) for watts in (draw.low_w, draw.high_w))
    return f"{low}–{high}" if low != high else ""


def sure_text(basis: str) -> str:
    """How sure a basis is; one that is not of the four stays as it is."""
    return _(SURE[basis]) if basis in SURE else basis


def given_text(way: WayOfUse) -> str:
    """What the pilot gave, where that is not watts: "from 100 to 63 % in 4.5 h"."""
    match way.described:
        case "drop":
            return _("from {start} to {end} in {hours}").format(
                start=short_text(way.from_pct or 0), end=short_text(way.to_pct or 0, "%"), hours=_hours(way.over_h)
            )
        case "hours":
            return _("lasts {hours}").format(hours=_hours(way.lasts_h))
        case "current":
            current, volts = short_text(way.current_ma or 0, "mA"), short_text(way.at_v or 0, "V")
            return _("{current} at {volts}").format(current=current, volts=volts)
    return ""


def not_known_text(*, has_energy: bool) -> str:
    """Why hours or a drop of charge give no draw."""
    if has_energy:
        return _("not known: the battery has no health left")
    return _("not known: the battery’s energy is missing")


def short_text(number: float, unit: str = "") -> str:
    """A number with as many decimals as it has, two at most, and its unit."""
    decimals = next((n for n in (0, 1) if round(number, n) == round(number, 2)), 2)
    return with_unit(number, unit, decimals) if unit else number_text(number, decimals)


def _hours(hours: float | None) -> str:
    return short_text(hours or 0, "h")


def _decimals(watts: float) -> int:
    return 3 if 0 < watts < SMALL_W else 2
