"""Plugs that the day is played through without, as findings: a device that was to hang on a bank and does not."""

from collections.abc import Iterable

from kitlog.budget.result import Finding, Remedy, Sure
from kitlog.kit.item import Item
from kitlog.packing.assessment import Assessment
from kitlog.packing.caution_case import look_at
from kitlog.packing.plug_effect import NOT_ON_LIST, IdlePlug, idle_plugs

Idle = tuple[str, str, tuple[str, ...]]
"""A bank, why it takes no part, and the phases in which the device was to hang on it."""


def idle_plug_findings(judged: Assessment, kit: Iterable[Item]) -> list[Finding]:
    """One for each device of the day that the plan hangs on a bank that takes no part in it.

    Args:
        judged: of the outing, with its list and its simulated day.
        kit: all items.
    """
    planned = judged.power.planned
    devices = {device.id for device in planned.devices} if planned else set()
    lasting = {phase.name for phase in judged.outing.phases if phase.high_h > 0}
    found: dict[str, list[IdlePlug]] = {}
    for idle in idle_plugs(judged.outing.plugs or (), judged, {item.id: item for item in kit}):
        if idle.plug.device in devices and idle.plug.phase in lasting:
            found.setdefault(idle.plug.device, []).append(idle)
    return [_finding(device, plugs) for device, plugs in found.items()]


def _finding(device: str, plugs: Iterable[IdlePlug]) -> Finding:
    banks: dict[tuple[str, str], dict[str, None]] = {}
    for idle in plugs:
        banks.setdefault((idle.thing, idle.reason), {})[idle.plug.phase] = None
    at_home = next((bank for bank, reason in banks if reason == NOT_ON_LIST), None)
    take = () if at_home is None else (Remedy("take_along", (at_home,)),)
    return look_at(
        code="power.plug_idle",
        subject=device,
        items=(device, *dict.fromkeys(bank for bank, _reason in banks)),
        facts={"idle": tuple((bank, reason, tuple(phases)) for (bank, reason), phases in banks.items())},
        remedies=(*take, Remedy("plan_plugs", (device,))),
        sure=Sure.ON_RECORD,
        source="outing",
    )
