"""Plugs that are legal but come too late: planned at a charge at which the device has switched itself off already."""

from collections.abc import Iterator
from dataclasses import dataclass

from kitlog.budget.power.cold import cell_temp_c, floor_soc
from kitlog.budget.power.day import Day, Modes


@dataclass(frozen=True, slots=True)
class LatePlug:
    """A plug whose `connect_below` is not above floor_soc, the charge at which the device goes off in that phase."""

    phase: str
    device: str
    bank: str
    floor_soc: float


def late_plugs(day: Day) -> Iterator[LatePlug]:
    """Those of a checked day; a device without a cell or without a load has nothing to run down."""
    phases = {phase.id: phase for phase in day.phases}
    devices = {device.id: device for device in day.devices}
    for plug in day.plugs:
        device, phase = devices[plug.device], phases[plug.phase]
        draw = device.draw_W.get(plug.phase, 0.0)
        load_w = draw.mean_w if isinstance(draw, Modes) else draw
        if plug.connect_below is None or not load_w or not device.label_wh:
            continue
        floor = floor_soc(device.temp_table or day.temp_table, cell_temp_c(device, phase.ambient_C), device.cutoff)
        if plug.connect_below <= floor:
            yield LatePlug(plug.phase, plug.device, plug.bank, floor)
