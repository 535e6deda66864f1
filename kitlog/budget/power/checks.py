"""What one field alone cannot show: refused before anything is computed.

Codes and facts. Every fact named is always there; `id` is None when no named thing is at fault.

The form (`kitlog.budget.power_ask.reading`, `refusal`). field is the way from the id (or from the top) to what is
wrong, with dots; value is what was found: a number, a text of at most 80 signs, true, false, None, or the word object
or list:
    json.syntax: line, column.            json.too_deep, json.not_object: no facts.
    json.key_twice: field.                json.lone_surrogate: value (half a character: cannot be stored or printed).
    field.unknown, field.missing: id, field, value.
    field.wrong_type: id, field, value, wanted (number, whole_number, true_or_false, text, list, object, other).
    number.not_finite: id, field, value.  NaN, infinity, or more digits than a number can hold.
    number.out_of_range: id, field, value, relation (above, at_least, below, at_most), limit.
        Negative hours, draw or power; a fraction outside 0..1; cutoff 1; eff under .01; usable share outside (0, 1].
    list.length: id, field, value, relation, limit.  No phase, an empty temp_table, a triple of two.
    id.unusable: id, field, value.        Empty, longer than 200, or with control characters.
    query.unclear: id, field, value.      The keys of `query` fit no question.

The day (`check_day`); part is phase, device or bank:
    id.repeated: id, part.                Of a spare bank besides: field.
    id.unknown: id, part (what it should have been), field (where it stands), owner (id of the thing that names it).
    draw.shares: id, phase, total.        The shares of the modes do not add up to 1 within 1e-6.
    temp_table.not_rising: id (None: the day's own table), field, value (the temperature that does not rise).
    cell.missing: id, part.               Neither cell_Wh nor cell_mAh with nominal_V (nor, of a bank, rated_mAh).
    cell.two_figures: id, part.           More than one of cell_Wh, cell_mAh and rated_mAh: which one counts?
    cell.half: id, part, field.           One of cell_mAh and nominal_V without the other; field: the missing one.
    charge_band.reversed: id, low, high.  charge_min_C above charge_max_C.
    plug.ports: id (bank), phase, plugs, ports.  More plugs than ports in one phase.
    plug.twice: id (device), phase.       One device on two plugs in one phase.

The request (`kitlog.budget.power_ask.reading`) and the question (`check_query`):
    request.nothing_asked: no facts.      Neither sample_h nor query beside the day, nor evening, nor storage.
    request.two_things_asked: first, other.  Two of them, or a day beside evening or storage.
    query.two_questions: field, key, others.  A key of `query` that belongs to another question than the others.
    sample.after_end: value, limit (hours of the day).
    query.phase_not_last: id (phase), last.  The longest phase can only be asked of the last one.
    query.no_cell: id (device), field.    A charge is asked of a device without a cell.
    query.not_in_order: id, field, value. Low, likely and high do not rise.
    id.unknown: as above; owner None, field within `query`.

What a pilot knows of a device (`describe`, `describe_capacity`); besides, number codes with id None:
    draw.drop_too_small: from_pct, to_pct, least_pct, good_pct.  The gauge's rounding is half of the drop or more.
    cell.gives_more: port_wh, cell_wh.    More comes out of a bank than its cells hold.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import NoReturn

from kitlog.budget.power.day import Bank, Cell, Day, Device, Modes, TempTable
from kitlog.fault import InputFault

SHARES_TOLERANCE = 1e-6


def check_day(day: Day) -> None:
    """Refuse a day that contradicts itself.

    Raises:
        InputFault: id, draw, temp_table, cell, charge_band and plug codes of this module's docstring.
    """
    _check_repeats("phase", (phase.id for phase in day.phases))
    _check_repeats("device", (device.id for device in day.devices))
    _check_repeats("bank", (bank.id for bank in day.banks))
    _check_table(day.temp_table, None)
    phases = {phase.id for phase in day.phases}
    for device in day.devices:
        check_cell(device, "device")
        _check_device(device, phases)
    for bank in day.banks:
        check_cell(bank, "bank")
    _check_plugs(day, phases)


def refuse_unknown(name: str, part: str, field: str, owner: str | None = None) -> NoReturn:
    """An id that nothing in the day has."""
    raise InputFault("id.unknown", id=name, part=part, field=field, owner=owner)


def _check_repeats(part: str, names: Iterable[str]) -> None:
    for name, count in Counter(names).items():
        if count > 1:
            raise InputFault("id.repeated", id=name, part=part)


def _check_table(table: TempTable | None, owner: str | None) -> None:
    points: Sequence[tuple[float, float]] = table or ()
    for (before_c, _), (after_c, _) in pairwise(points):
        if after_c <= before_c:
            raise InputFault("temp_table.not_rising", id=owner, field="temp_table", value=after_c)


def check_cell(cell: Cell, part: str) -> None:
    """Refuse a device or bank (`part`) without a capacity, or with more than one.

    Raises:
        InputFault: cell and temp_table codes of this module's docstring.
    """
    if (cell.cell_mAh is None) != (cell.nominal_V is None):
        missing = "cell_mAh" if cell.cell_mAh is None else "nominal_V"
        raise InputFault("cell.half", id=cell.id, part=part, field=missing)
    rated_mah = cell.rated_mAh if isinstance(cell, Bank) else None
    if sum(figure is not None for figure in (cell.cell_Wh, cell.cell_mAh, rated_mah)) > 1:
        raise InputFault("cell.two_figures", id=cell.id, part=part)
    # a bank's null is a supply without end, but only when it is written: forgotten is not endless
    endless = isinstance(cell, Bank) and "cell_Wh" in cell.model_fields_set
    if cell.label_wh is None and not endless:
        raise InputFault("cell.missing", id=cell.id, part=part)
    _check_table(cell.temp_table, cell.id)


def _check_device(device: Device, phases: set[str]) -> None:
    for phase, draw in device.draw_W.items():
        if phase not in phases:
            refuse_unknown(phase, "phase", "draw_W", device.id)
        if isinstance(draw, Modes):
            total = sum(mode.share for mode in draw.modes)
            if abs(total - 1.0) > SHARES_TOLERANCE:
                raise InputFault("draw.shares", id=device.id, phase=phase, total=total)
    if device.charge_min_C > device.charge_max_C:
        raise InputFault("charge_band.reversed", id=device.id, low=device.charge_min_C, high=device.charge_max_C)


def _check_plugs(day: Day, phases: set[str]) -> None:
    devices = {device.id for device in day.devices}
    ports = {bank.id: bank.ports for bank in day.banks}
    for plug in day.plugs:
        if plug.phase not in phases:
            refuse_unknown(plug.phase, "phase", "plugs", plug.device)
        if plug.device not in devices:
            refuse_unknown(plug.device, "device", "plugs")
        if plug.bank not in ports:
            refuse_unknown(plug.bank, "bank", "plugs", plug.device)
    for (phase, device), count in Counter((plug.phase, plug.device) for plug in day.plugs).items():
        if count > 1:
            raise InputFault("plug.twice", id=device, phase=phase)
    for (phase, bank), count in Counter((plug.phase, plug.bank) for plug in day.plugs).items():
        if count > ports[bank]:
            raise InputFault("plug.ports", id=bank, phase=phase, plugs=count, ports=ports[bank])
