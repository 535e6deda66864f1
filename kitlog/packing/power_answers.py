"""All answers about the power of one plan together, as the command line gives them; the window asks one by one."""

from collections.abc import Callable
from dataclasses import dataclass

from kitlog.budget.power.changes.odds import FEW_DAYS
from kitlog.budget.power.forecast import Forecast
from kitlog.packing.assessment import Assessment
from kitlog.packing.power_limits import KEEP_PCT, BothCases, PowerLimits, power_limits, retrieve_limit
from kitlog.packing.power_mending import Mending, PowerAsked, power_mending
from kitlog.packing.power_question import DAYS, SEED, day_forecasts

DAYS_PER_CHANGE = 20
"""For each change a twentieth of the days is drawn, but 500 if there are so many: as the window does."""

_FORECAST_SHARE = 0.6
"""About so much of the work are the days drawn as planned."""


@dataclass(frozen=True, slots=True)
class PowerAnswers:
    """What was asked, and the answers.

    Attributes:
        keep_pct: charge that the phone keeps through the retrieve.
        forecast: of `days` days with `seed`; None: nothing was simulated.
    """

    assessment: Assessment
    keep_pct: float
    days: int
    seed: int
    forecast: Forecast | None
    mending: Mending
    retrieve: BothCases
    limits: PowerLimits


def power_answers(
    asked: PowerAsked,
    *,
    keep_pct: float = KEEP_PCT,
    days: int = DAYS,
    seed: int = SEED,
    tell: Callable[[float], object] = lambda _share: None,
) -> PowerAnswers:
    """Ask everything; `tell` hears the share that is done.

    Raises:
        InputFault: the day contradicts itself; number codes for `keep_pct` (0..100) and `days` and `seed`.
    """
    assessment = asked.assessment
    retrieve = retrieve_limit(assessment, keep_pct)
    *_before, limits = power_limits(assessment, asked.items, asked.library)
    return PowerAnswers(
        assessment=assessment,
        keep_pct=keep_pct,
        days=days,
        seed=seed,
        forecast=_forecast(asked, days, seed, tell),
        mending=_mending(asked, days, seed, tell),
        retrieve=retrieve,
        limits=limits,
    )


def _forecast(asked: PowerAsked, days: int, seed: int, tell: Callable[[float], object]) -> Forecast | None:
    every = max(1, days // 50)
    found = None
    for found in day_forecasts(asked.assessment, asked.library, days=days, seed=seed, first=every, every=every) or ():
        tell(_FORECAST_SHARE * found.days / found.of)
    return found


def _mending(asked: PowerAsked, days: int, seed: int, tell: Callable[[float], object]) -> Mending:
    found = Mending(None)
    for found in power_mending(asked, days=max(days // DAYS_PER_CHANGE, min(days, FEW_DAYS)), seed=seed):
        if found.mends:
            tell(_FORECAST_SHARE + (1 - _FORECAST_SHARE) * found.drawn / len(found.mends))
    return found
