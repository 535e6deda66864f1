"""How large must a power bank be?"""

from kitlog.budget.power.check_query import check_query
from kitlog.budget.power.checks import check_day
from kitlog.budget.power.day import Day
from kitlog.budget.power.plan import bank_energy_wh, plan_day
from kitlog.budget.power.question import SmallestBank
from kitlog.budget.power.run import run_day
from kitlog.budget.power.targets import judge, targets_by_index
from kitlog.budget.power.walk_down import Trial, WalkDown


def smallest_bank(day: Day, query: SmallestBank) -> float | None:
    """The least label energy of the bank, Wh, with which every target is met, as with all larger ones up to `max_Wh`.

    All other figures of the bank stay. At most 600 runs of the day on a grid of
    `max_Wh` / 200, with halving where the course of the day changes (`walk_down`).

    Returns:
        0 if no bank is needed; None if not even the largest will do.

    Raises:
        InputFault: the day or the question contradicts itself (`checks`).
    """
    check_day(day)
    check_query(query, day)
    plan = plan_day(day)
    bank = plan.banks[[each.id for each in day.banks].index(query.bank)]
    targets = targets_by_index(query.targets, day)

    def trial(label_wh: float) -> Trial:
        bank.energy_wh = bank_energy_wh(label_wh, bank.health)
        return judge(run_day(plan), targets)

    return WalkDown(trial, query.max_Wh).least()
