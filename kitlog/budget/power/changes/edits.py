"""Changes to a day: each takes a day and gives another one. What is not there to be changed is left as it is."""

from collections.abc import Callable, Collection, Mapping
from typing import TypeVar

from kitlog.budget.power.day import Bank, Cell, Day, Device, Draw, Plug

C = TypeVar("C", bound=Cell)


def bank_instead(day: Day, old: str, bank: Bank) -> Day:
    """Another bank in the place of `old`, which stays at home; all its plugs move over."""
    return day.model_copy(
        update={
            "banks": tuple(bank if one.id == old else one for one in day.banks),
            "plugs": tuple(_moved(plug, old, bank.id) for plug in day.plugs),
        }
    )


def _moved(plug: Plug, old: str, new: str) -> Plug:
    return plug.model_copy(update={"bank": new}) if plug.bank == old else plug


def bank_added(day: Day, bank: Bank) -> Day:
    """One more bank, with nothing on it yet."""
    return day.model_copy(update={"banks": (*day.banks, bank)})


def plugged(day: Day, device: str, bank: str, phases: Collection[str]) -> Day:
    """A device on a bank from the start of some phases; where it already hangs on a bank, that plug stays."""
    taken = {plug.phase for plug in day.plugs if plug.device == device}
    new = (
        Plug(phase=phase.id, device=device, bank=bank)
        for phase in day.phases
        if phase.id in phases and phase.id not in taken
    )
    return day.model_copy(update={"plugs": (*day.plugs, *new)})


def plugged_below(day: Day, device: str, below: float) -> Day:
    """Plugs of a device made only once its charge has fallen to `below` (0..1), where they were from the start."""
    return day.model_copy(
        update={
            "plugs": tuple(
                plug.model_copy(update={"connect_below": below})
                if plug.device == device and plug.connect_below is None
                else plug
                for plug in day.plugs
            )
        }
    )


def used_otherwise(day: Day, device: str, draw_w: Mapping[str, Draw]) -> Day:
    """A device in other ways of use in some phases (phase id -> W or modes): the screen dark, flight mode, low heat."""
    return _with_device(day, device, lambda one: {"draw_W": {**one.draw_W, **draw_w}})


def left_off(day: Day, device: str) -> Day:
    """A device switched off all day and on no bank; it still rides along."""
    off = _with_device(day, device, lambda _one: {"draw_W": {}})
    return off.model_copy(update={"plugs": tuple(plug for plug in day.plugs if plug.device != device)})


def warmer(day: Day, name: str, offset_c: float) -> Day:
    """A device or bank where it is `offset_c` (K) warmer than the air; one with a fixed temperature keeps it."""
    return _with_cells(day, name, {"temp_offset_C": offset_c})


def started_full(day: Day, name: str) -> Day:
    """A device or bank fully charged at the start."""
    return _with_cells(day, name, {"start": 1.0})


def _with_device(day: Day, name: str, change: Callable[[Device], dict[str, object]]) -> Day:
    devices = tuple(one.model_copy(update=change(one)) if one.id == name else one for one in day.devices)
    return day.model_copy(update={"devices": devices})


def _with_cells(day: Day, name: str, update: Mapping[str, object]) -> Day:
    return day.model_copy(
        update={"devices": _with_cell(day.devices, name, update), "banks": _with_cell(day.banks, name, update)}
    )


def _with_cell(cells: tuple[C, ...], name: str, update: Mapping[str, object]) -> tuple[C, ...]:
    return tuple(one.model_copy(update=dict(update)) if one.id == name else one for one in cells)
