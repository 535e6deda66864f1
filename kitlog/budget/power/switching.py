"""What goes on and off, and in which order when several things fall together.

Start of a phase: temperature, loads, plugs; banks wake; banks without a device go off; banks emptied by cold; restarts.
Inside: late plugs and wakes; shares; switch-offs, and shares again; run to the next event; a bank is empty, else it has
waited long enough. A late plug thus comes before a switch-off.
"""

from math import inf

from kitlog.budget.power.flow import set_drain, set_flow, share_out
from kitlog.budget.power.next_event import LEAST_DEFICIT_W
from kitlog.budget.power.state import AUTO_OFF, EMPTY, OFF, ON, TINY, BankState, DeviceState
from kitlog.budget.power.story import PLUGGED, SWITCHED_OFF, SWITCHED_ON, Run


def start_phase(run: Run) -> None:
    """All that happens at the first instant of a phase that has a duration, before anything flows."""
    for device in run.devices:
        _enter_phase(device, run.phase)
    for bank in run.banks:
        bank.floor = bank.plan.floor[run.phase]
        bank.members.clear()
    for plug in run.plan.plugs[run.phase]:
        run.devices[plug.device].waiting = plug
    plug_in(run, late=False)
    for bank in run.banks:
        if not bank.members and bank.state != OFF:
            _set_state(run, bank, OFF)
        _empty_if_drained(run, bank)
    if run.now_h > 0.0:
        _restart(run)


def _enter_phase(device: DeviceState, phase: int) -> None:
    plan = device.plan
    device.phase_load_w = plan.load_w[phase]
    device.load_w = device.phase_load_w if device.on else 0.0
    device.floor = plan.floor[phase]
    device.charge_w = plan.charge_w[phase]
    device.fade = device.gain * device.charge_w / (1.0 - plan.knee) if plan.knee < 1.0 else 0.0
    device.plug = device.waiting = device.bank = None


def plug_in(run: Run, *, late: bool) -> None:
    """Put on its bank every waiting device that is low enough by now.

    A bank wakes when a device is new on it: plugged late, or not on this same bank at the end of the phase before.
    """
    for device in run.devices:
        plug = device.waiting
        if plug is None or (device.loss and device.soc > plug.below + TINY):
            continue
        bank = run.banks[plug.bank]
        device.plug, device.waiting, device.bank = plug, None, bank
        bank.members.append(device)
        bank.reshare = True
        run.note(PLUGGED, device.index, bank.index)
        if late or device.last_bank != bank.index:
            bank.low_since = None
            _set_state(run, bank, ON)
            if late:
                _empty_if_drained(run, bank)


def _set_state(run: Run, bank: BankState, state: str) -> None:
    if state != ON:
        bank.low_since = None
    if state != bank.state:
        bank.state = state
        run.note(state, bank.index)


def _empty_if_drained(run: Run, bank: BankState) -> bool:
    plan = bank.plan
    if bank.state != ON or plan.energy_wh == inf or (plan.energy_wh and bank.soc > bank.floor + TINY):
        return False
    if bank.empty_at is None:
        bank.empty_at = run.now_h
    _set_state(run, bank, EMPTY)
    return True


def stop_banks(run: Run) -> None:
    """Empty at once when nothing usable is left; else off when the output was too low for too long."""
    for bank in run.banks:
        if bank.state != ON or _empty_if_drained(run, bank) or bank.low_since is None:
            continue
        if run.now_h >= bank.low_since + bank.plan.auto_off_h - TINY:
            if bank.auto_off_at is None:
                bank.auto_off_at = run.now_h
            _set_state(run, bank, AUTO_OFF)


def _restart(run: Run) -> None:
    for device in run.devices:
        margin = device.plan.restart_margin
        enough = margin is not None and device.soc - device.floor >= margin - TINY
        if not device.on and (enough or not device.loss):
            device.on = True
            device.load_w = device.phase_load_w
            device.off_h += run.now_h - device.off_since
            run.note(SWITCHED_ON, device.index)


def settle_flow(run: Run) -> None:
    """Share out what the banks give, switch off who cannot go on, and share out anew until all can."""
    _set_courses(run)
    while failing := [device for device in run.devices if _fails(device)]:
        for device in failing:
            _switch_off(run, device)
        _set_courses(run)
    for bank in run.banks:
        if bank.state == ON:
            _judge_output(bank, run.now_h)


def _set_courses(run: Run) -> None:
    for bank in run.banks:
        if bank.state == ON:
            if bank.reshare:
                share_out(bank)
            set_flow(bank)
    for device in run.devices:
        if device.bank is None or device.bank.state != ON:
            set_drain(device)


def _fails(device: DeviceState) -> bool:
    """Lacks power for its load, and has nothing usable of its own."""
    lacking = device.load_w - device.grant_w > LEAST_DEFICIT_W
    return lacking and (device.soc <= device.floor + TINY or not device.loss)


def _switch_off(run: Run, device: DeviceState) -> None:
    device.on = False
    device.load_w = 0.0
    device.off_since = run.now_h
    if device.first_off_h is None:
        device.first_off_h = run.now_h
    if device.bank is not None:
        device.bank.reshare = True
    run.note(SWITCHED_OFF, device.index)


def _judge_output(bank: BankState, now_h: float) -> None:
    """Start the clock of the automatic switch-off, or put it back. Only a new share can bring the output up again."""
    if bank.out_w < bank.plan.min_out_w - LEAST_DEFICIT_W:
        if bank.low_since is None:
            bank.low_since = now_h
    elif bank.judge_output:
        bank.low_since = None
    bank.judge_output = False
