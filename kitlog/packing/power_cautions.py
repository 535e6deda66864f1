"""Cautions about power: what the energies alone do not show. Cold, age, reserve, cables and ports.

Each is a *look*, or *not known*: none of them decides over a day. A place whose air temperature is not given is not
judged here; the finding of the device says that it was assumed.
"""

from collections.abc import Collection, Iterable

from kitlog.budget.power.cold import cell_temp_c
from kitlog.budget.power.day import Cell, Day, Device, Phase, Plug
from kitlog.budget.power.result import DayResult, DeviceResult
from kitlog.budget.result import Finding, Remedy, Sure
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.packing.cable_cautions import cable_cautions
from kitlog.packing.caution_case import CautionCase, draws, look_at

DISCHARGE_C = (-20.0, 60.0)
"""Discharge temperatures of several cell specifications; one model allows no less than -10 deg C."""

LEAST_HEALTH_PCT = 80.0
"""Health under which a battery is called worn: what EU 2023/1670 asks of phones and tablets after 800 cycles."""

KEEP_PCT = 10.0
"""Energy to keep in hand where the mean of a radio's bursts or the rule for cold reads too high: both were found to do
so by up to 8 % against published cell models (`kitlog.budget.power.simulate.RESERVE_SHARE`)."""


def power_cautions(case: CautionCase) -> list[Finding]:
    """All cautions of a day: charging in the cold, range of temperatures, health, reserve, cables."""
    return [
        *charge_cautions(case),
        *range_cautions(case),
        *health_cautions(case.items),
        *reserve_cautions(case),
        *cable_cautions(case),
    ]


def charge_cautions(case: CautionCase) -> list[Finding]:
    """Plugs planned where the device's cell takes no charge: too cold (under 0 deg C) or too hot; one a device."""
    devices = {device.id: device for device in case.day.devices}
    found: dict[str, Finding] = {}
    for phase, plugs in case.phases():
        for plug in plugs:
            device = devices[plug.device]
            temp_c = cell_temp_c(device, phase.ambient_C)
            if device.charge_max_W > 0 and phase.id not in case.air_assumed and plug.device not in found:
                found.update(_refuses_charge(device, plug, temp_c))
    return list(found.values())


def _refuses_charge(device: Device, plug: Plug, temp_c: float) -> dict[str, Finding]:
    if device.charge_min_C <= temp_c <= device.charge_max_C:
        return {}
    cold = temp_c < device.charge_min_C
    limit_c = device.charge_min_C if cold else device.charge_max_C
    return {
        device.id: look_at(
            code="power.charge_cold" if cold else "power.charge_hot",
            subject=device.id,
            items=(device.id, plug.bank),
            facts={"limit_c": limit_c},
            remedies=(Remedy("carry_warmer", (device.id,)),) if cold else (),
            figure=temp_c,
            unit="°C",
            margin=temp_c - limit_c if cold else limit_c - temp_c,
            phase=plug.phase,
        )
    }


def range_cautions(case: CautionCase) -> list[Finding]:
    """Devices in use and banks with something on them, outside the temperatures for discharging; one each."""
    found: dict[str, Finding] = {}
    for phase, plugs in case.phases():
        giving = {plug.bank for plug in plugs}
        cells = [
            *(device for device in case.day.devices if draws(device, phase.id)),
            *(bank for bank in case.day.banks if bank.id in giving),
        ]
        for cell in cells:
            temp_c = cell_temp_c(cell, phase.ambient_C)
            low_c, high_c = DISCHARGE_C
            if phase.id not in case.air_assumed and not low_c <= temp_c <= high_c and cell.id not in found:
                found[cell.id] = _out_of_range(cell, phase, temp_c)
    return list(found.values())


def _out_of_range(cell: Cell, phase: Phase, temp_c: float) -> Finding:
    low_c, high_c = DISCHARGE_C
    return look_at(
        code="power.cell_range",
        subject=cell.id,
        items=(cell.id,),
        facts={"low_c": low_c, "high_c": high_c},
        remedies=(Remedy("carry_warmer", (cell.id,)),) if temp_c < low_c else (),
        figure=temp_c,
        unit="°C",
        margin=temp_c - low_c if temp_c < low_c else high_c - temp_c,
        phase=phase.id,
        source="cell specifications",
    )


def health_cautions(items: Iterable[Item]) -> list[Finding]:
    """Batteries with less health on record than `LEAST_HEALTH_PCT`; one that is not on record says nothing here."""
    return [
        look_at(
            code="power.worn",
            subject=item.id,
            items=(item.id,),
            facts={"least_pct": LEAST_HEALTH_PCT},
            remedies=(Remedy("replace_battery", (item.id,)),),
            figure=health_pct,
            unit="%",
            margin=health_pct - LEAST_HEALTH_PCT,
            sure=Sure.ON_RECORD,
            source="EU 2023/1670",
        )
        for item in items
        if item.battery and (health_pct := item.battery.health_pct) is not None and health_pct < LEAST_HEALTH_PCT
    ]


def reserve_cautions(case: CautionCase, keep_pct: float = KEEP_PCT) -> list[Finding]:
    """Devices that last, but end with less than `keep_pct` of their energy usable: a radio, or a cell below 0 deg C."""
    kinds = {item.id: item.kind for item in case.items}
    kept = ((device, case.result.devices[device.id]) for device in case.day.devices)
    return [
        _no_reserve(device, left_pct, keep_pct, cause)
        for device, result in kept
        if (cause := _why_reserve(device, kinds.get(device.id), case))
        and result.first_off_h is None
        and (left_pct := _left_pct(device, result)) is not None
        and left_pct < keep_pct
    ]


def _left_pct(device: Device, result: DeviceResult) -> float | None:
    energy_wh = (device.label_wh or 0.0) * device.health
    return 100 * result.margin_wh / energy_wh if energy_wh else None


def _no_reserve(device: Device, left_pct: float, keep_pct: float, cause: str) -> Finding:
    return look_at(
        code="power.no_reserve",
        subject=device.id,
        items=(device.id,),
        facts={"keep_pct": keep_pct, "cause": cause},
        remedies=(Remedy("draw_less", (device.id,)),),
        figure=left_pct,
        unit="%",
        margin=left_pct - keep_pct,
    )


def _why_reserve(device: Device, kind: Kind | None, case: CautionCase) -> str:
    used = [phase for phase, _ in case.phases() if draws(device, phase.id)]
    if kind is Kind.RADIO and used:
        return "radio"
    cold = (cell_temp_c(device, phase.ambient_C) < 0 for phase, _ in case.phases() if phase.id not in case.air_assumed)
    return "cold" if used and any(cold) else ""


def cautions_of(
    day: Day | None, result: DayResult | None, items: Iterable[Item], air_assumed: Collection[str]
) -> list[Finding]:
    """All cautions; where nothing was simulated, those of health alone."""
    if day is None or result is None:
        return health_cautions(items)
    return power_cautions(CautionCase(day, result, tuple(items), frozenset(air_assumed)))
