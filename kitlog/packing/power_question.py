"""What is asked of an outing's day beyond its three cases: the chance, from what is uncertain in plan and kit."""

from collections.abc import Sequence

from kitlog.budget.power.forecast import EVERY_DAYS, FIRST_DAYS, Estimates, forecasts
from kitlog.budget.power.forecast_question import ForecastQuery
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Assessment, PowerDay
from kitlog.packing.serving import serving

CALLS = "call for help"
DAYS = 10_000
SEED = 1
"""The same seed gives the same days: asked twice, a question has one answer."""


def day_forecasts(
    assessment: Assessment,
    library: Library,
    *,
    days: int = DAYS,
    seed: int = SEED,
    first: int = FIRST_DAYS,
    every: int = EVERY_DAYS,
) -> Estimates | None:
    """Estimates of an outing's chances, the first after 500 days, the final one last; None: nothing was simulated.

    `first` and `every` say after how many days there is one (`forecasts`).

    Raises:
        InputFault: at once: the day contradicts itself.
    """
    day = assessment.power.planned
    if day is None:
        return None
    items = [line.item for line in assessment.lines if line.item.id not in assessment.grounded]
    query = forecast_query(assessment.outing, assessment.power, items, library, days=days, seed=seed)
    return forecasts(day, query, first, every)


def forecast_query(
    outing: Outing, power: PowerDay, items: Sequence[Item], library: Library, *, days: int = DAYS, seed: int = SEED
) -> ForecastQuery:
    """Durations of the plan, draws of the kit and charges at the start, each low, likely and high.

    Raises:
        ValueError: nothing was simulated.
    """
    if power.planned is None:
        raise ValueError(power.reason)
    there = {cell.id for cell in (*power.planned.devices, *power.planned.banks)}
    return ForecastQuery(
        n=days,
        seed=seed,
        hours={phase.name: (phase.low_h, phase.likely_h, phase.high_h) for phase in outing.phases},
        draws={
            device: {phase: draw.triple for phase, draw in by_phase.items()} for device, by_phase in power.draws.items()
        },
        start={
            start.item: (start.low_pct / 100, start.likely_pct / 100, start.high_pct / 100)
            for start in outing.starts
            if start.item in there
        },
        callers=callers(power, items, library),
    )


def callers(power: PowerDay, items: Sequence[Item], library: Library) -> tuple[str, ...]:
    """Simulated devices that can call for help, phones first."""
    there = {device.id for device in power.planned.devices} if power.planned else set()
    found = [item for item in items if item.id in there and CALLS in serving(item, library).names]
    return tuple(item.id for item in sorted(found, key=lambda item: item.kind is not Kind.PHONE))
