"""The step to the next event: every charge along its course, and what the event is about put where it belongs."""

from math import expm1, inf

from kitlog.budget.power.flow import needed_w, set_demand
from kitlog.budget.power.next_event import DRAINED, FED, FLOOR, LOW, SATED, SHIFT, NextEvent
from kitlog.budget.power.state import ON, TINY, BankState, DeviceState


def move(devices: list[DeviceState], banks: list[BankState], by_h: float) -> None:
    """Carry every charge along its course."""
    for device in devices:
        if device.rate or device.terms:
            device.soc = _moved(device, by_h)
    for bank in banks:
        if bank.state == ON:
            bank.soc = _moved(bank, by_h)
            bank.delivered_wh += bank.drawn_rate * by_h
            for amount, fade in bank.drawn_terms:
                bank.delivered_wh -= amount * expm1(-fade * by_h)


def _moved(cell: DeviceState | BankState, by_h: float) -> float:
    soc = cell.soc + cell.rate * by_h
    for amount, fade in cell.terms:
        soc -= amount * expm1(-fade * by_h)
    return min(1.0, max(0.0, soc))


def settle(event: NextEvent, now_h: float) -> None:
    """Put exactly where it belongs what the event is about, and note what has changed in the flow."""
    if event.device is not None:
        _settle_device(event.kind, event.device)
    elif event.bank is not None:
        _settle_bank(event.kind, event.bank, now_h)


def _settle_bank(kind: str, bank: BankState, now_h: float) -> None:
    if kind == DRAINED:
        bank.soc = bank.floor
    elif kind == LOW:
        bank.low_since = now_h
    else:
        bank.low_since = -inf  # it has waited long enough, whatever the rounding of the clock


def _settle_device(kind: str, device: DeviceState) -> None:
    if kind == SHIFT:
        device.soc = device.target
        _reshape(device)
    elif kind == SATED:
        device.limited = False
    elif kind == FED:
        device.starved = False
        _reshape(device)
        device.limited = device.demand_w > needed_w(device) + TINY
    elif kind == FLOOR:
        device.soc = device.floor
    elif device.waiting is not None:
        device.soc = device.waiting.below


def _reshape(device: DeviceState) -> None:
    """The demand takes its next form; if it drops (charging ends), what it leaves is shared out anew."""
    before_w = device.demand_w
    set_demand(device)
    if device.bank is not None and device.demand_w < before_w - TINY:
        device.bank.reshare = True
