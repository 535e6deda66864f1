"""What figures of the power budget rest on that was neither measured nor told, and how sure they are for it."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from kitlog.budget.charging.evening import FULL
from kitlog.budget.power.describe import Basis
from kitlog.budget.result import Sure
from kitlog.kit.item import Item
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import PowerDay
from kitlog.packing.on_hand import on_hand

SURE_OF = {
    Basis.GUESSED: Sure.GUESS,
    Basis.STATED: Sure.MAKER,
    Basis.WORKED_BACK: Sure.ESTIMATE,
    Basis.MEASURED: Sure.MEASURED,
}


@dataclass(frozen=True, slots=True)
class Grounds:
    """What the figures of some devices rest on.

    Attributes:
        not_measured: phases whose draw is not measured.
        fixed: phases without a range of hours.
        begin_full: ids of devices and of banks they are plugged into whose charge at the start is not entered, and so
            taken as full.
        air_assumed: whether the plan gives no air temperature for a stretch that is played through.
        sure: as the weakest of these: hours and starts that were not told make an estimate at best, the air a guess.
    """

    not_measured: tuple[str, ...]
    fixed: tuple[str, ...]
    begin_full: tuple[str, ...]
    air_assumed: bool
    sure: Sure

    @property
    def start_assumed(self) -> bool:
        """Whether some charge at the start is taken as full."""
        return bool(self.begin_full)


def grounds(devices: Iterable[str], outing: Outing, power: PowerDay) -> Grounds:
    """What the figures of devices, by id, rest on."""
    names = tuple(devices)
    phases = [phase for phase in outing.phases if phase.high_h > 0]
    draws = [(phase, draw) for name in names for phase, draw in power.draws.get(name, {}).items()]
    unmeasured = {phase for phase, draw in draws if SURE_OF[draw.basis] is not Sure.MEASURED}
    fixed = tuple(phase.name for phase in phases if phase.low_h == phase.high_h)
    begin_full = _begin_full(names, outing, power)
    air_assumed = any(phase.air_c is None for phase in phases)
    told = Sure.GUESS if air_assumed or not draws else Sure.MEASURED
    estimated = Sure.ESTIMATE if begin_full or fixed else Sure.MEASURED
    return Grounds(
        not_measured=tuple(phase.name for phase in phases if phase.name in unmeasured),
        fixed=fixed,
        begin_full=begin_full,
        air_assumed=air_assumed,
        sure=max((*(SURE_OF[draw.basis] for _, draw in draws), told, estimated), key=[*Sure].index),
    )


def _begin_full(devices: Iterable[str], outing: Outing, power: PowerDay) -> tuple[str, ...]:
    """Devices with a cell and the banks they hang on, without a charge at the start; in the order of `devices`."""
    entered = {start.item for start in outing.starts}
    plugs = power.planned.plugs if power.planned else ()
    cells = {device.id: device.label_wh for device in power.planned.devices} if power.planned else {}
    found: list[str] = []
    for device in devices:
        own = [device] if cells.get(device, 1.0) else []
        found += [*own, *(plug.bank for plug in plugs if plug.device == device)]
    return tuple(dict.fromkeys(name for name in found if name not in entered))


def seen_lower(names: Iterable[str], items: Iterable[Item], now: datetime) -> tuple[tuple[str, float], ...]:
    """Of things taken as full those that were last seen, within a day, with less: id and charge in %."""
    by_id = {item.id: item for item in items}
    seen = {name: on_hand(by_id[name], now) for name in names if name in by_id}
    return tuple((name, one.reckoned_pct) for name, one in seen.items() if one.known and one.reckoned_pct < 100 * FULL)
