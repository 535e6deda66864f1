"""How long can the last phase be?"""

from math import inf

from kitlog.budget.power.check_query import check_query
from kitlog.budget.power.checks import check_day
from kitlog.budget.power.curve import first_zero, value
from kitlog.budget.power.day import Day
from kitlog.budget.power.plan import plan_day
from kitlog.budget.power.question import LongestPhase
from kitlog.budget.power.recorder import Piece, Recorder
from kitlog.budget.power.run import run_day
from kitlog.budget.power.state import TINY
from kitlog.budget.power.story import SWITCHED_OFF, SWITCHED_ON, Run


def longest_phase(day: Day, query: LongestPhase) -> float | None:
    """The longest duration, h, up to which the device is on and at `min_soc` or more for every shorter one too.

    One run is enough, and exact: what happens in the last phase does not depend on when it will end. So the phase is
    run to the horizon, and the answer is the first instant at which the device goes off or falls under `min_soc`.

    Returns:
        0 if it fails at the start of the phase; None if it does not fail up to the horizon.

    Raises:
        InputFault: the day or the question contradicts itself (`checks`).
    """
    check_day(day)
    check_query(query, day)
    plan = plan_day(day)
    phase = [each.id for each in day.phases].index(query.phase)
    device = [each.id for each in day.devices].index(query.device)
    plan.hours[phase] = query.horizon_h
    recorder = Recorder(len(plan.devices), len(plan.banks))
    run = run_day(plan, recorder)
    start_h = sum(plan.hours[:phase])
    pieces = [piece for piece in recorder.devices[device] if piece[0] >= start_h - TINY]
    low_h = _first_below(pieces, query.min_soc) if plan.devices[device].energy_wh else inf
    fails_h = min(low_h, _last_off(run, device))
    return None if fails_h == inf else max(0.0, fails_h - start_h)


def _last_off(run: Run, device: int) -> float:
    """When the device went off for good; infinity if it is on at the end. Off in a phase is off to its end."""
    off_h = inf
    for what, who, _, at_h, _ in run.log:
        if who == device and what == SWITCHED_OFF:
            off_h = at_h
        elif who == device and what == SWITCHED_ON:
            off_h = inf
    return off_h


def _first_below(pieces: list[Piece], least: float) -> float:
    """When the charge first falls under `least`; each piece rises or falls throughout."""
    for from_h, for_h, soc, rate, terms in pieces:
        if soc < least - TINY:
            return from_h
        if value(soc, rate, terms, for_h) < least - TINY:
            return from_h + min(for_h, first_zero(soc - least, rate, terms, for_h))
    return inf
