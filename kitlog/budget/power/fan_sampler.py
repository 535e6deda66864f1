"""Looks at a day while it runs, at equal shares of each phase, and keeps nothing else."""

from bisect import bisect_right
from itertools import chain
from math import inf

from kitlog.budget.power.curve import value
from kitlog.budget.power.plan import Plan
from kitlog.budget.power.recorder import Recorder
from kitlog.budget.power.state import ON, BankState, DeviceState
from kitlog.budget.power.story import Run


class FanSampler(Recorder):
    """Takes the place of a recorder: charges at the points of a `fan.Fan`, lane by lane and point by point.

    Lanes are the devices with a cell, then the banks that can run empty, in the order of the day. After each day `row`
    gives its charges, and the next day may be run.
    """

    def __init__(self, plan: Plan, steps: int) -> None:
        super().__init__(len(plan.devices), len(plan.banks))
        self.device_lanes = [index for index, device in enumerate(plan.devices) if device.energy_wh]
        self.bank_lanes = [index for index, bank in enumerate(plan.banks) if bank.energy_wh < inf]
        self._steps = steps
        self._lanes: list[list[float]] = [[] for _ in (*self.device_lanes, *self.bank_lanes)]
        lanes = iter(self._lanes)
        self._device_lanes = [(index, next(lanes)) for index in self.device_lanes]
        self._bank_lanes = [(index, next(lanes)) for index in self.bank_lanes]
        self._devices: list[tuple[DeviceState, list[float]]] = []
        self._banks: list[tuple[BankState, list[float]]] = []
        self._phase = -1
        self._start_h = 0.0
        self._ahead_h: list[float] = []
        self._passed = 0

    def record(self, run: Run, for_h: float) -> None:
        """Note the charges at the points that lie between now and the next event."""
        if run.phase != self._phase:
            self._enter(run)
        from_h = run.now_h - self._start_h
        until_h = from_h + for_h
        ahead_h = self._ahead_h
        passed = bisect_right(ahead_h, until_h, self._passed)
        if passed > self._passed:
            self._note([at_h - from_h for at_h in ahead_h[self._passed : passed]])
            self._passed = passed

    def row(self, run: Run) -> list[float]:
        """The charges of the day that has ended; the sampler is ready for the next."""
        self._fill(run, len(run.plan.hours))
        row = list(chain.from_iterable(self._lanes))
        for lane in self._lanes:
            lane.clear()
        self._phase = -1
        return row

    def _enter(self, run: Run) -> None:
        self._fill(run, run.phase)
        self._phase = run.phase
        self._start_h = run.now_h
        step_h = run.plan.hours[run.phase] / self._steps
        self._ahead_h = [k * step_h for k in range(1, self._steps)]
        self._passed = 0

    def _fill(self, run: Run, phases: int) -> None:
        """The end of the phase before, as it is; a phase without duration holds it throughout."""
        if self._phase < 0:
            devices, banks = run.devices, run.banks
            self._devices = [(devices[index], lane) for index, lane in self._device_lanes]
            self._banks = [(banks[index], lane) for index, lane in self._bank_lanes]
        missing = 1 + self._steps * phases - (len(self._lanes[0]) if self._lanes else 0)
        for device, lane in self._devices:
            lane.extend([device.soc] * missing)
        for bank, lane in self._banks:
            lane.extend([bank.soc] * missing)

    def _note(self, in_h: list[float]) -> None:
        for device, lane in self._devices:
            soc, rate = device.soc, device.rate
            if device.terms:
                lane.extend([value(soc, rate, device.terms, at_h) for at_h in in_h])
            else:
                lane.extend([soc + rate * at_h for at_h in in_h] if rate else [soc] * len(in_h))
        for bank, lane in self._banks:
            if bank.state == ON:
                soc, rate, terms = bank.soc, bank.rate, bank.terms
                lane.extend([value(soc, rate, terms, at_h) for at_h in in_h])
            else:
                lane.extend([bank.soc] * len(in_h))
