"""One day from start to end: phases in order, and within them from event to event."""

from kitlog.budget.power.move import move, settle
from kitlog.budget.power.next_event import NOTHING, next_event
from kitlog.budget.power.plan import Plan
from kitlog.budget.power.recorder import Recorder
from kitlog.budget.power.state import BankState, DeviceState
from kitlog.budget.power.story import Run
from kitlog.budget.power.switching import plug_in, settle_flow, start_phase, stop_banks


def run_day(plan: Plan, recorder: Recorder | None = None) -> Run:
    """Run a plan; with a recorder, every piece of every course is kept for samples and pictures."""
    run = Run(
        plan,
        [DeviceState(index, device) for index, device in enumerate(plan.devices)],
        [BankState(index, bank) for index, bank in enumerate(plan.banks)],
        last_phase=last_phase(plan.hours),
    )
    for run.phase, hours in enumerate(plan.hours):
        if hours > 0.0:  # a phase without duration is skipped whole: no wake, no restart, no cold
            start_phase(run)
            _run_phase(run, hours, recorder)
        run.phase_end_soc.append([device.soc for device in run.devices])
    for device in run.devices:
        if not device.on:
            device.off_h += run.now_h - device.off_since
    return run


def last_phase(hours: list[float]) -> int:
    """Index of the last phase that has a duration; of the last one if none has."""
    return max((index for index, duration_h in enumerate(hours) if duration_h > 0.0), default=len(hours) - 1)


def _run_phase(run: Run, hours: float, recorder: Recorder | None) -> None:
    start_h, elapsed_h = run.now_h, 0.0
    while True:
        plug_in(run, late=True)
        settle_flow(run)
        event = next_event(run.devices, run.banks, run.now_h, hours - elapsed_h)
        if recorder is not None:
            recorder.record(run, event.in_h)
        move(run.devices, run.banks, event.in_h)
        if event.kind == NOTHING:
            break
        elapsed_h += event.in_h
        run.now_h = start_h + elapsed_h
        settle(event, run.now_h)
        stop_banks(run)
    run.now_h = start_h + hours
    for device in run.devices:
        device.last_bank = -1 if device.bank is None else device.bank.index
