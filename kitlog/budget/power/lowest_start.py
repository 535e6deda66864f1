"""How full must a device be at the start?"""

from kitlog.budget.power.check_query import check_query
from kitlog.budget.power.checks import check_day
from kitlog.budget.power.day import Day
from kitlog.budget.power.plan import plan_day
from kitlog.budget.power.question import LowestStart
from kitlog.budget.power.run import run_day
from kitlog.budget.power.targets import judge, targets_by_index
from kitlog.budget.power.walk_down import Trial, WalkDown


def lowest_start(day: Day, query: LowestStart) -> float | None:
    """The least state of charge of the device at the start, 0..1, from which every start up to 1 meets the targets.

    At most 600 runs of the day on a grid of 1/200 and at every `connect_below`, with halving where the course of the
    day changes (`walk_down`, which says why halving alone would be wrong).

    Returns:
        0 if any start will do; None if not even 1 will.

    Raises:
        InputFault: the day or the question contradicts itself (`checks`).
    """
    check_day(day)
    check_query(query, day)
    plan = plan_day(day)
    device = plan.devices[[each.id for each in day.devices].index(query.device)]
    targets = targets_by_index(query.targets, day)

    def trial(start: float) -> Trial:
        device.start = start
        return judge(run_day(plan), targets)

    thresholds = [plug.connect_below for plug in day.plugs if plug.connect_below is not None]
    return WalkDown(trial, 1.0, thresholds).least()
