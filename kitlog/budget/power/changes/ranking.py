"""The order of changes whose chance has been drawn."""

from kitlog.budget.power.changes.odds import OddsGain
from kitlog.budget.power.changes.weigh import Weighed


def rank_by_chance(weighed: Weighed, gain: OddsGain | None) -> tuple[float, ...]:
    """Least is best: what makes all last in every case, then in the likely one, then what gives nothing up.

    Then what harms least, then what surely makes the day last oftener, by how much. Ties stay as `weigh` has them.
    """
    return (
        not (weighed.all_last and weighed.all_last_high is not False),
        not weighed.all_last,
        bool(weighed.candidate.gives_up),
        len(weighed.harms),
        -(gain.surely if gain is not None else 0.0),
    )
