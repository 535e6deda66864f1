"""The electric figures of one row: Wh, mAh and V beside each other, and currents that need volts."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from decimal import Decimal

from kitlog.files.table.doubt import EMPTY, Question
from kitlog.kit.facets import contradict
from kitlog.units.energy import energy_wh, is_port

Electric = tuple[float | None, float | None, float | None]
"""Wh, mAh and V of one row; None = not known."""


@dataclass(frozen=True, slots=True)
class Milliamps:
    """A current in mA where a power is wanted: it becomes one with the volts of the row."""

    ma: float


def draw_from_ma(value_ma: float, volts: float) -> float:
    """The power in W of a current in mA at a voltage in V: I x U / 1000."""
    return float(Decimal(str(value_ma)) * Decimal(str(volts)) / 1000)


def doubt_of(
    wh: float | None, mah: float | None, v: float | None, *, answered: Collection[Question] = ()
) -> Question | None:
    """What is open about a row's figures; None = nothing.

    Volts of a port beside mAh are asked about first, unless Wh bear them out; then a contradiction. What is in
    `answered` is not asked again.
    """
    if mah is None or v is None:
        return None
    agree = wh is not None and not contradict(wh, mah, v)
    if is_port(v) and not agree and Question.MAH_AT not in answered:
        return Question.MAH_AT
    return Question.ENERGY if wh is not None and not agree and Question.ENERGY not in answered else None


def settled(wh: float | None, mah: float | None, v: float | None, question: Question | None, answer: str) -> Electric:
    """The figures of a row after an answer.

    ``cell``: the mAh are the cell's, whose volts nobody gave, so the V go (and with them the energy, unless Wh are
    given). ``5v``: all stay. ``wh``: mAh and V go. ``mah``: Wh go. ``empty``: all that is doubtful goes.
    """
    if question is Question.MAH_AT:
        return {"cell": (wh, mah, None), EMPTY: (wh, None, None)}.get(answer, (wh, mah, v))
    if question is Question.ENERGY:
        ends: Mapping[str, Electric] = {"wh": (wh, None, None), "mah": (None, mah, v), EMPTY: (None, None, None)}
        return ends.get(answer, (wh, mah, v))
    return wh, mah, v


def readings_of(wh: float | None, mah: float | None, v: float | None, question: Question | None) -> Mapping[str, str]:
    """What each answer would make of the row, in figures."""
    if mah is None or v is None:
        return {}
    product = f"{mah:g} mAh × {v:g} V = {round(energy_wh(mah, v), 2):g} Wh"
    if question is Question.MAH_AT:
        return {"cell": f"{mah:g} mAh, ? V" + (f", {wh:g} Wh" if wh is not None else ""), "5v": product}
    return {"wh": f"{wh:g} Wh", "mah": product} if question is Question.ENERGY and wh is not None else {}
