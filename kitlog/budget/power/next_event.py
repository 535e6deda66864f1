"""The next event of a phase, exactly. Nothing here walks in small steps."""

from dataclasses import dataclass
from math import inf, log

from kitlog.budget.power.curve import first_zero
from kitlog.budget.power.flow import needed_w
from kitlog.budget.power.state import ON, TINY, BankState, DeviceState

LEAST_DEFICIT_W = 1e-9
"""A device that lacks no more than this is fully carried; a bank that gives no more than this too little stays on."""

NOTHING = "nothing"
SHIFT, FED, SATED, FLOOR, BELOW = "shift", "fed", "sated", "floor", "below"
DRAINED, LOW, WAITED = "drained", "low", "waited"


@dataclass(slots=True)
class NextEvent:
    """The earliest thing found so far, in_h from now."""

    in_h: float
    kind: str = NOTHING
    device: DeviceState | None = None
    bank: BankState | None = None

    def offer(self, in_h: float, kind: str, device: DeviceState | None, bank: BankState | None) -> None:
        """Keep it if it comes earlier."""
        if in_h < self.in_h:
            self.in_h, self.kind, self.device, self.bank = in_h, kind, device, bank


def next_event(devices: list[DeviceState], banks: list[BankState], now_h: float, remaining_h: float) -> NextEvent:
    """The first thing that changes the flow within the phase; kind NOTHING if the phase just ends."""
    found = NextEvent(remaining_h)
    for device in devices:
        if device.limited:
            _limited_events(device, found)
        elif device.rate < 0.0:
            _drain_events(device, found)
        elif device.target < inf:
            _charge_events(device, found)
    for bank in banks:
        if bank.state == ON:
            _bank_events(bank, now_h, found)
    if found.in_h >= remaining_h - TINY:
        return NextEvent(remaining_h)
    return found


def _drain_events(device: DeviceState, found: NextEvent) -> None:
    """Straight down: to the charge at which it is to be plugged, and to the floor."""
    waiting = device.waiting
    if waiting is not None and device.soc > waiting.below + TINY:
        found.offer((device.soc - waiting.below) / -device.rate, BELOW, device, None)
    if device.soc > device.floor + TINY and device.load_w - device.grant_w > LEAST_DEFICIT_W:
        found.offer((device.soc - device.floor) / -device.rate, FLOOR, device, None)


def _charge_events(device: DeviceState, found: NextEvent) -> None:
    """Straight up to the knee or to where charging ends; or along its own exponential to where charging ends."""
    if device.tapers:
        in_h = log((1.0 - device.soc) / (1.0 - device.target)) / device.fade
    elif device.rate > 0.0:
        in_h = (device.target - device.soc) / device.rate
    else:
        return
    found.offer(in_h, SHIFT, device, device.bank)


def _limited_events(device: DeviceState, found: NextEvent) -> None:
    """Under the total limit: the level rises, the device's own demand stays or falls."""
    bank = device.bank
    assert bank is not None  # noqa: S101  # only members of a bank are limited
    if device.starved:
        rising = [(-share_w, fade) for share_w, fade in bank.level_terms]
        lacks_w = needed_w(device) - bank.level_w
        found.offer(first_zero(lacks_w, 0.0, rising, found.in_h), FED, device, bank)
        if device.soc > device.floor + TINY and device.load_w - device.grant_w > LEAST_DEFICIT_W:
            above = device.soc - device.floor
            found.offer(first_zero(above, device.rate, device.terms, found.in_h), FLOOR, device, bank)
        return
    if device.target < inf:
        left = [(-amount, fade) for amount, fade in device.terms]
        found.offer(first_zero(device.target - device.soc, -device.rate, left, found.in_h), SHIFT, device, bank)
    _sated_event(device, bank, found)


def _sated_event(device: DeviceState, bank: BankState, found: NextEvent) -> None:
    """When level and demand meet: demand - level is again of the form of `curve`, with the same exponents."""
    gap_w = device.demand_w - bank.level_w
    if not device.tapers:
        closing = [(-share_w, fade) for share_w, fade in bank.level_terms]
        found.offer(first_zero(gap_w, 0.0, closing, found.in_h), SATED, device, bank)
        return
    slope_w = device.charge_w / (1.0 - device.plan.knee)
    closing = [
        (-slope_w * amount - share_w, fade)
        for (amount, fade), (share_w, _) in zip(device.terms, bank.level_terms, strict=True)
    ]
    found.offer(first_zero(gap_w, -slope_w * device.rate, closing, found.in_h), SATED, device, bank)


def _bank_events(bank: BankState, now_h: float, found: NextEvent) -> None:
    if bank.plan.energy_wh < inf:
        above = bank.soc - bank.floor
        found.offer(first_zero(above, bank.rate, bank.terms, found.in_h), DRAINED, None, bank)
    if bank.low_since is not None:
        found.offer(max(0.0, bank.low_since + bank.plan.auto_off_h - now_h), WAITED, None, bank)
    elif bank.out_terms and bank.plan.min_out_w > 0.0:
        spare_w = bank.out_w - (bank.plan.min_out_w - LEAST_DEFICIT_W)
        found.offer(first_zero(spare_w, 0.0, bank.out_terms, found.in_h), LOW, None, bank)
