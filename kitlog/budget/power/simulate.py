"""A day in, its course and its end out."""

from collections.abc import Sequence
from math import inf

from kitlog.budget.power.check_query import check_samples
from kitlog.budget.power.checks import check_day
from kitlog.budget.power.day import Day
from kitlog.budget.power.plan import Plan, plan_day
from kitlog.budget.power.recorder import Recorder, soc_at
from kitlog.budget.power.result import BankResult, DayResult, DeviceResult, LatePlug
from kitlog.budget.power.run import run_day
from kitlog.budget.power.state import TINY
from kitlog.budget.power.story import Run
from kitlog.budget.power.trace import bank_course, device_course

RESERVE_SHARE = 0.10
"""Share of a cell's energy to keep in hand on a cold day: covers the errors of the rule for cold that were found
against published cell models (`cold`), and those of the mean power of a radio that transmits in bursts (up to 8 %)."""


def simulate(day: Day, sample_h: Sequence[float] = ()) -> DayResult:
    """Run a day, exactly, from event to event.

    Phases are half open: what would happen at the very end of one happens at the start of the next that has a duration.
    So an event exactly at the last instant of the last phase is not reached: a device whose charge would be gone just
    then lasts.

    Args:
        day: what is carried, charged and done.
        sample_h: times, h from the start, at which states of charge are wanted.

    Raises:
        InputFault: the day contradicts itself (`checks`), or a sample lies after its end.
    """
    check_day(day)
    check_samples(day, sample_h)
    plan = plan_day(day)
    recorder = Recorder(len(plan.devices), len(plan.banks))
    run = run_day(plan, recorder)
    return DayResult(
        devices={device.id: _device_result(run, recorder, index, sample_h) for index, device in enumerate(day.devices)},
        banks={bank.id: _bank_result(run, index) for index, bank in enumerate(day.banks)},
        device_courses={
            device.id: device_course(run, day, recorder, index) for index, device in enumerate(day.devices)
        },
        bank_courses={bank.id: bank_course(run, day, recorder, index) for index, bank in enumerate(day.banks)},
        late_plugs=_late_plugs(day, plan),
    )


def _device_result(run: Run, recorder: Recorder, index: int, sample_h: Sequence[float]) -> DeviceResult:
    device = run.devices[index]
    plan = device.plan
    if not device.loss:
        return DeviceResult(
            device.first_off_h, device.off_h, device.on, None, None, 0.0, None, None, None, reserve_wh=0.0
        )
    floor, load_w = plan.floor[run.last_phase], plan.load_w[run.last_phase]
    most_wh = (1.0 - floor) * plan.energy_wh
    margin_wh = max(0.0, device.soc - floor) * plan.energy_wh if device.on else 0.0
    return DeviceResult(
        first_off_h=device.first_off_h,
        off_h=device.off_h,
        on_at_end=device.on,
        soc_end=device.soc,
        phase_end_soc=tuple(socs[index] for socs in run.phase_end_soc),
        margin_wh=margin_wh,
        margin_pct=100.0 * margin_wh / most_wh if most_wh else 0.0,
        hours_more=margin_wh / load_w if load_w else None,
        samples_soc=tuple(soc_at(recorder.devices[index], at_h, plan.start) for at_h in sample_h),
        reserve_wh=RESERVE_SHARE * plan.energy_wh if _gets_cold(run, index) else 0.0,
    )


def _gets_cold(run: Run, index: int) -> bool:
    temps_c = run.devices[index].plan.temp_c
    return any(temp_c < 0.0 and hours > 0.0 for temp_c, hours in zip(temps_c, run.plan.hours, strict=True))


def _bank_result(run: Run, index: int) -> BankResult:
    bank = run.banks[index]
    plan = bank.plan
    endless = plan.energy_wh == inf
    usable = max(0.0, bank.soc - plan.floor[run.last_phase])
    return BankResult(
        auto_off_h=bank.auto_off_at,
        empty_h=bank.empty_at,
        state_end=bank.state,
        delivered_wh=bank.delivered_wh,
        soc_end=None if endless else bank.soc,
        in_hand_wh=None if endless else plan.eff * usable * plan.energy_wh,
    )


def _late_plugs(day: Day, plan: Plan) -> tuple[LatePlug, ...]:
    """Plugs planned for a charge at or under the floor of their phase."""
    late = []
    for phase, plugs in enumerate(plan.plugs):
        for plug in plugs:
            device = plan.devices[plug.device]
            if device.energy_wh and plug.below <= device.floor[phase] + TINY:
                late.append(
                    LatePlug(
                        day.phases[phase].id,
                        day.devices[plug.device].id,
                        day.banks[plug.bank].id,
                        plug.below,
                        device.floor[phase],
                    )
                )
    return tuple(late)
