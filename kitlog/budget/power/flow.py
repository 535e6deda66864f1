"""Who gets how much from a bank, and how every state of charge moves from there until the next event."""

from math import inf

from kitlog.budget.power.state import TINY, BankState, DeviceState

LEAST_FADE = 1e-12
"""1/h: a charging power that falls more slowly than this is constant for every day there is."""


def set_demand(device: DeviceState) -> None:
    """What a plugged device asks of a bank that is on, and the state of charge at which that changes its form."""
    plug, load_w, charge_w = device.plug, device.load_w, device.charge_w
    assert plug is not None  # noqa: S101  # only members of a bank are asked
    device.tapers = False
    device.target = inf
    if charge_w <= 0.0 or device.soc >= plug.full_at or plug.cap_w <= load_w:
        device.demand_w = min(load_w, plug.cap_w)
        return
    turn = _turn(device, plug.cap_w - load_w)
    if device.soc < turn:
        device.demand_w = min(load_w + charge_w, plug.cap_w)
        device.target = min(turn, plug.full_at)
        return
    device.demand_w = load_w + accepted_w(device)
    device.tapers = device.fade > LEAST_FADE
    if plug.full_at < 1.0:
        device.target = plug.full_at


def _turn(device: DeviceState, spare_w: float) -> float:
    """State of charge from which the demand falls: the knee, or later where a cap hides the knee."""
    knee = device.plan.knee
    if spare_w >= device.charge_w:
        return knee
    return max(knee, 1.0 - spare_w * (1.0 - knee) / device.charge_w)


def accepted_w(device: DeviceState) -> float:
    """Power that the cell takes above the knee, W."""
    knee = device.plan.knee
    return device.charge_w * (1.0 - device.soc) / (1.0 - knee) if knee < 1.0 else 0.0


def share_out(bank: BankState) -> None:
    """Decide who gets its demand and who the common level, after anything changed on this bank."""
    bank.reshare = False
    bank.judge_output = True
    for device in bank.members:
        set_demand(device)
        device.limited = device.starved = False
    left_w, asking = bank.plan.total_limit_w, len(bank.members)
    if sum(device.demand_w for device in bank.members) <= left_w + TINY:
        return
    for device in sorted(bank.members, key=_demand_w):
        if device.demand_w > left_w / asking + TINY:
            _limit(device, left_w / asking)
        else:
            left_w -= device.demand_w
            asking -= 1


def _demand_w(device: DeviceState) -> float:
    return device.demand_w


def _limit(device: DeviceState, level_w: float) -> None:
    device.limited = True
    device.starved = level_w < needed_w(device) - TINY


def needed_w(device: DeviceState) -> float:
    """The level from which a plugged device no longer lacks anything for its load."""
    plug = device.plug
    return device.load_w if plug is None else min(device.load_w, plug.cap_w)


def set_drain(device: DeviceState) -> None:
    """The course of a device that no bank feeds."""
    device.tapers = device.limited = device.starved = False
    device.target = inf
    device.grant_w = 0.0
    device.rate = -device.load_w * device.loss
    device.terms = ()


def set_flow(bank: BankState) -> None:
    """The course of a bank that is on and of all that hangs on it, from the shares decided before."""
    steady_w = 0.0
    fading: list[tuple[float, float]] = []
    limited: list[DeviceState] = []
    for device in bank.members:
        if device.limited:
            limited.append(device)
        elif device.tapers:
            fading.append((_set_tapering(device), device.fade))
            steady_w += device.load_w
        else:
            _set_steady(device)
            steady_w += device.demand_w
    if limited:
        _set_limited(bank, limited, steady_w, fading)
        steady_w, fading = bank.plan.total_limit_w, []
    _set_bank(bank, steady_w, fading)


def _set_tapering(device: DeviceState) -> float:
    charging_w = accepted_w(device)
    device.grant_w = device.demand_w = device.load_w + charging_w
    device.rate = 0.0
    device.terms = ((1.0 - device.soc, device.fade),)
    return charging_w


def _set_steady(device: DeviceState) -> None:
    net_w = device.demand_w - device.load_w
    device.grant_w = device.demand_w
    device.rate = net_w * (device.gain if net_w > 0.0 else device.loss)
    device.terms = ()


def _set_limited(
    bank: BankState, limited: list[DeviceState], steady_w: float, fading: list[tuple[float, float]]
) -> None:
    """The level rises as the tapering neighbours take less: w(t) = w0 + sum of a/m (1 - exp(-fade t))."""
    number = len(limited)
    freed_w = sum(charging_w for charging_w, _ in fading) / number
    level_w = (bank.plan.total_limit_w - steady_w) / number - freed_w
    bank.level_w = level_w
    bank.level_terms = [(charging_w / number, fade) for charging_w, fade in fading]
    for device in limited:
        worth = device.loss if device.starved else device.gain
        device.grant_w = level_w
        device.rate = worth * (level_w + freed_w - device.load_w)
        device.terms = [(-worth * share_w / fade, fade) for share_w, fade in bank.level_terms]
        if device.tapers:
            device.demand_w = device.load_w + accepted_w(device)


def _set_bank(bank: BankState, steady_w: float, fading: list[tuple[float, float]]) -> None:
    plan = bank.plan
    bank.out_w = steady_w + sum(charging_w for charging_w, _ in fading)
    bank.out_terms = [(-charging_w, fade) for charging_w, fade in fading]
    bank.drawn_rate = steady_w
    bank.drawn_terms = [(charging_w / fade, fade) for charging_w, fade in fading]
    if plan.energy_wh:
        per_port_wh = 1.0 / (plan.eff * plan.energy_wh)
        bank.rate = -(steady_w * per_port_wh + plan.quiescent_w / plan.energy_wh)
        bank.terms = [(-drawn_wh * per_port_wh, fade) for drawn_wh, fade in bank.drawn_terms]
