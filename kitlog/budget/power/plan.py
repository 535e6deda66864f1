"""A checked day as plain numbers, ready to be run many times. Questions change a plan's figures between two runs."""

from dataclasses import dataclass
from math import inf

from kitlog.budget.power.cold import cell_temp_c, floor_soc
from kitlog.budget.power.day import Bank, Cell, Day, Device, Modes, Plug

LEAST_WH = 1e-9
"""Less energy than this counts as no cell at all."""


@dataclass(slots=True)
class DevicePlan:
    """A device; lists go by phase. charge_w is 0 in a phase too cold or too warm for charging."""

    energy_wh: float
    start: float
    charge_eff: float
    knee: float
    restart_margin: float | None
    load_w: list[float]
    floor: list[float]
    charge_w: list[float]
    temp_c: list[float]


@dataclass(slots=True)
class BankPlan:
    """A bank; energy_wh is infinite for a supply without end."""

    energy_wh: float
    health: float
    start: float
    eff: float
    total_limit_w: float
    quiescent_w: float
    min_out_w: float
    auto_off_h: float
    floor: list[float]


@dataclass(slots=True)
class PlugPlan:
    """A plug of one phase: device and bank by index; cap_w is the lesser of input and port limit."""

    device: int
    bank: int
    below: float
    full_at: float
    cap_w: float


@dataclass(slots=True)
class Plan:
    """The day in numbers; names by index."""

    hours: list[float]
    devices: list[DevicePlan]
    banks: list[BankPlan]
    plugs: list[list[PlugPlan]]


def plan_day(day: Day) -> Plan:
    """The plan of a day that `checks.check_day` has passed."""
    device_at = {device.id: index for index, device in enumerate(day.devices)}
    bank_at = {bank.id: index for index, bank in enumerate(day.banks)}
    return Plan(
        hours=[phase.hours for phase in day.phases],
        devices=[_plan_device(device, day) for device in day.devices],
        banks=[_plan_bank(bank, day) for bank in day.banks],
        plugs=[
            [_plan_plug(plug, day, device_at, bank_at) for plug in day.plugs if plug.phase == phase.id]
            for phase in day.phases
        ],
    )


def _plan_device(device: Device, day: Day) -> DevicePlan:
    energy_wh = (device.label_wh or 0.0) * device.health
    has_cell = energy_wh >= LEAST_WH
    temps_c = [cell_temp_c(device, phase.ambient_C) for phase in day.phases]
    return DevicePlan(
        energy_wh=energy_wh if has_cell else 0.0,
        start=device.start,
        charge_eff=device.charge_eff,
        knee=device.knee,
        restart_margin=device.restart_margin,
        load_w=[_load_w(device, phase.id) for phase in day.phases],
        floor=_floors(device, day),
        charge_w=[
            device.charge_max_W if has_cell and device.charge_min_C <= temp_c <= device.charge_max_C else 0.0
            for temp_c in temps_c
        ],
        temp_c=temps_c,
    )


def _load_w(device: Device, phase: str) -> float:
    draw = device.draw_W.get(phase, 0.0)
    return draw.mean_w if isinstance(draw, Modes) else draw


def _floors(cell: Cell, day: Day) -> list[float]:
    table = cell.temp_table or day.temp_table
    return [floor_soc(table, cell_temp_c(cell, phase.ambient_C), cell.cutoff) for phase in day.phases]


def _plan_bank(bank: Bank, day: Day) -> BankPlan:
    label_wh = bank.label_wh
    return BankPlan(
        energy_wh=inf if label_wh is None else bank_energy_wh(label_wh, bank.health),
        health=bank.health,
        start=bank.start,
        eff=bank.eff,
        total_limit_w=_limit_w(bank.total_limit_W),
        quiescent_w=bank.quiescent_W,
        min_out_w=0.0 if bank.low_current_mode else bank.min_out_W,
        auto_off_h=bank.auto_off_s / 3600.0,
        floor=_floors(bank, day),
    )


def bank_energy_wh(label_wh: float, health: float) -> float:
    """Energy that age has left in a bank, Wh; next to nothing is nothing."""
    energy_wh = label_wh * health
    return energy_wh if energy_wh >= LEAST_WH else 0.0


def _limit_w(limit_w: float | None) -> float:
    return inf if limit_w is None else limit_w


def _plan_plug(plug: Plug, day: Day, device_at: dict[str, int], bank_at: dict[str, int]) -> PlugPlan:
    device = device_at[plug.device]
    bank = bank_at[plug.bank]
    return PlugPlan(
        device=device,
        bank=bank,
        below=inf if plug.connect_below is None else plug.connect_below,
        full_at=plug.charge_to,
        cap_w=min(_limit_w(day.devices[device].input_limit_W), _limit_w(day.banks[bank].port_limit_W)),
    )
