"""What a device draws, from what a pilot knows of it: a current, how long it lasts, or a measurement of his own.

Every answer is a range with what it rests on, so that a guess stays a guess and a measurement can take its place. All
powers are at the cell. What goes in is refused outside the bounds of `describe_bounds`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import IntEnum

from kitlog.budget.power.checks import SHARES_TOLERANCE
from kitlog.budget.power.cold import floor_soc
from kitlog.budget.power.day import LARGEST, TEMP_TABLE
from kitlog.budget.power.describe_bounds import MOST_H, MOST_MA, MOST_V, MOST_WH, above_zero, within
from kitlog.fault import InputFault

LABEL_C = 25.0
"""Temperature, deg C, for which energies on labels are meant, and stated run times are taken to be."""

GAUGE_STEP_PCT = 1.0
"""A gauge shows whole points: each end of a drop is known to half of one, the drop to one."""

GAUGE_BEND_PCT = 3.1
"""How far, in points, energy left and charge left lie apart mid-way at a tenth of the hourly rate (worst of the cell
models Chen2020, OKane2022, Ecker2015, Ai2020, Marquis2019): a gauge that counts charge is off by as much."""

WORST_ERROR = 0.5
"""A measurement that may be off by half or more says nothing. A choice of this program."""

GOOD_ERROR = 0.1
"""Under this, a measurement may well take the place of a starter figure."""


class Basis(IntEnum):
    """What a draw rests on, from guess to measurement; a mean rests on the weakest of its parts."""

    GUESSED = 0
    STATED = 1
    WORKED_BACK = 2
    MEASURED = 3


@dataclass(frozen=True, slots=True)
class DrawRange:
    """Power at the cell, W: low, likely and high, and what they rest on."""

    low_w: float
    likely_w: float
    high_w: float
    basis: Basis

    @property
    def triple(self) -> tuple[float, float, float]:
        """Low, likely, high, as `question.Chance` takes them."""
        return self.low_w, self.likely_w, self.high_w

    @property
    def error(self) -> float:
        """The larger of the two errors, as a share of the likely draw; 0 without a draw."""
        widest = max(self.likely_w - self.low_w, self.high_w - self.likely_w)
        return widest / self.likely_w if self.likely_w else 0.0


def guessed_draw(low_w: float, likely_w: float, high_w: float) -> DrawRange:
    """A starter figure with its range.

    Raises:
        InputFault: number codes; query.not_in_order.
    """
    for field, value in (("low_W", low_w), ("likely_W", likely_w), ("high_W", high_w)):
        within(value, field, 0, LARGEST)
    if not low_w <= likely_w <= high_w:
        raise InputFault("query.not_in_order", id=None, field="draw_W", value=[low_w, likely_w, high_w])
    return DrawRange(low_w, likely_w, high_w, Basis.GUESSED)


def draw_from_current(current_ma: float, at_v: float) -> DrawRange:
    """Power from a current: mA x V / 1000.

    The volts are those of the cell if the current is what leaves the cell, those of the port if it was measured there.
    Makers seldom give a range; low and high are the same as likely.

    Raises:
        InputFault: number codes; 0..1,000,000 mA, above 0 to 100 V.
    """
    watts = within(current_ma, "mA", 0, MOST_MA) * above_zero(at_v, "V", MOST_V) / 1000.0
    return DrawRange(watts, watts, watts, Basis.STATED)


def draw_from_runtime(
    lasts_h: float, cell_wh: float, *, health: float = 1.0, cutoff: float = 0.0, rounding_h: float | None = None
) -> DrawRange:
    """Worked back from "lasts 9 h like this", full to switched off at 25 deg C: usable energy / hours.

    Usable is `cell_wh` x health x (1 - cutoff): what is under the cut-off is never used.

    Args:
        lasts_h: the stated hours.
        cell_wh: energy on the label.
        health: share of it that age has left.
        cutoff: share of the energy left when the device switches itself off.
        rounding_h: step to which they are rounded, so that "9" means 8.5 to 9.5; None: the coarsest of 1, 1/2, 1/4,
            1/10 and 1/20 h that they are a multiple of, and no more than the hours.

    Raises:
        InputFault: number codes; hours and Wh above 0 to 10,000, health above 0 to 1, cutoff from 0 to under 1, and
            half a step less than the hours.
    """
    above_zero(lasts_h, "lasts_h", MOST_H)
    step_h = _stated_step_h(lasts_h) if rounding_h is None else within(rounding_h, "rounding_h", 0, lasts_h)
    usable_wh = _energy_wh(cell_wh, health) * (1.0 - floor_soc(TEMP_TABLE, LABEL_C, _cutoff(cutoff)))
    low_w, likely_w, high_w = (usable_wh / hours for hours in (lasts_h + step_h / 2, lasts_h, lasts_h - step_h / 2))
    return DrawRange(low_w, likely_w, high_w, Basis.WORKED_BACK)


def draw_from_drop(
    from_pct: float,
    to_pct: float,
    hours: float,
    cell_wh: float,
    *,
    health: float = 1.0,
    gauge_step_pct: float = GAUGE_STEP_PCT,
    bend_pct: float = 0.0,
) -> DrawRange:
    """A pilot's own measurement, unplugged: "from 100 to 63 % in 4.5 h": W = Wh x health x drop / 100 / hours.

    The range holds the rounding of the gauge, one step over the whole drop (half at each end), and `bend_pct`
    (`GAUGE_BEND_PCT` where the drop spans part of the scale). That of the capacity and its health is not in it. The
    error is under 10 % from `good_drop_pct` on.

    Raises:
        InputFault: number codes; draw.charge_rose: from_pct, to_pct; draw.drop_too_small: those, least_pct, good_pct.
    """
    drop_pct = within(from_pct, "from_pct", 0, 100) - within(to_pct, "to_pct", 0, 100)
    error_pct = above_zero(gauge_step_pct, "gauge_step_pct", 100) + within(bend_pct, "bend_pct", 0, 100)
    per_pct_w = _energy_wh(cell_wh, health) / 100.0 / above_zero(hours, "hours", MOST_H)
    if drop_pct < 0:
        raise InputFault("draw.charge_rose", from_pct=from_pct, to_pct=to_pct)
    if drop_pct * WORST_ERROR <= error_pct:
        raise InputFault(
            "draw.drop_too_small",
            from_pct=from_pct,
            to_pct=to_pct,
            least_pct=_said(error_pct / WORST_ERROR),
            good_pct=_said(good_drop_pct(error_pct)),
        )
    low_w, likely_w, high_w = (per_pct_w * pct for pct in (drop_pct - error_pct, drop_pct, drop_pct + error_pct))
    return DrawRange(low_w, likely_w, high_w, Basis.MEASURED)


def good_drop_pct(error_pct: float = GAUGE_STEP_PCT) -> float:
    """Points of charge: a drop larger than this is known to under 10 %."""
    return error_pct / GOOD_ERROR


def mean_draw(ways: Sequence[tuple[DrawRange, float]], *, device: str, phase: str) -> DrawRange:
    """The mean over ways of use, each with its share of the time; the shares add up to 1.

    Low and high are those of all ways at once: wider than likely, never too narrow. Bursts cost more than their mean,
    5 % of the run time for a radio at 25 deg C and up to 8 % at 0 (cell models, transmitting at the hourly rate): keep
    a reserve. Device and phase are named in the refusal.

    Raises:
        InputFault: number.out_of_range, number.not_finite; draw.shares: id, phase, total.
    """
    total = sum(within(share, "share", 0, 1) for _, share in ways)
    if abs(total - 1.0) > SHARES_TOLERANCE:
        raise InputFault("draw.shares", id=device, phase=phase, total=total)
    low_w, likely_w, high_w = (sum(draw.triple[at] * share for draw, share in ways) for at in range(3))
    return DrawRange(low_w, likely_w, high_w, min(draw.basis for draw, share in ways if share > 0.0))


def mean_by_name(draws: Mapping[str, DrawRange], shares: Mapping[str, float], *, device: str, phase: str) -> DrawRange:
    """The mean with the shares of a preset (`describe_presets`): one draw for each name in it.

    Raises:
        InputFault: as `mean_draw`; field.missing: id, field (the way without a draw), value.
    """
    for name in shares:
        if name not in draws:
            raise InputFault("field.missing", id=device, field=name, value=None)
    return mean_draw([(draws[name], share) for name, share in shares.items()], device=device, phase=phase)


def _said(points: float) -> float:
    """To a tenth of a point; whole points without a decimal."""
    tenths = round(points, 1)
    return int(tenths) if tenths.is_integer() else tenths


def _energy_wh(cell_wh: float, health: float) -> float:
    return above_zero(cell_wh, "cell_Wh", MOST_WH) * above_zero(health, "health", 1)


def _cutoff(cutoff: float) -> float:
    within(cutoff, "cutoff", 0)
    if cutoff >= 1.0:
        raise InputFault("number.out_of_range", id=None, field="cutoff", value=cutoff, relation="below", limit=1)
    return cutoff


def _stated_step_h(lasts_h: float) -> float:
    steps = (1.0, 0.5, 0.25, 0.1)
    stated_h = next((step for step in steps if abs(lasts_h / step - round(lasts_h / step)) < 1e-9), 0.05)
    return min(stated_h, lasts_h)  # a few minutes are stated in minutes
