"""Electric figures of a row: one text into its parts, contradictions asked about, mA turned into W."""

from collections.abc import Mapping

from kitlog.files.table.column_reading import CellDoubt
from kitlog.files.table.doubt import EMPTY, Question
from kitlog.files.table.electric import Electric, Milliamps, doubt_of, draw_from_ma, readings_of, settled
from kitlog.files.table.read_columns import Sheet
from kitlog.kit.kinds import Kind
from kitlog.units.energy import energy_wh, is_port

_PARTS = ("battery_wh", "battery_mah", "battery_v")
_RATED = "bank_rated_mah"


def settle_powers(sheet: Sheet) -> None:
    """Leave in the sheet Wh, mAh and V that agree, and draws in W."""
    if "battery" in sheet.values:
        _part(sheet)
    if not sheet.own and "battery_mah" in sheet.values:
        for at in _doubtful(sheet):
            _agree(sheet, at)
    for at, value in enumerate(sheet.values.get("draw_w", ())):
        if isinstance(value, Milliamps):
            _watts(sheet, at, "draw_w", value)
    for at, value in enumerate(sheet.values.get("charge_max_w", ())):
        if isinstance(value, Milliamps):
            sheet.unread(at, "charge_max_w")  # a charger's volts are not those of the cell


def settle_ports(sheet: Sheet) -> None:
    """Capacities of power banks that are meant at 5 V go where a bank keeps them: the loss in it is inside already.

    Those of anything else become Wh. Volts of a port are left beside mAh only where the pilot said so; the kinds must
    be settled before.
    """
    lacking = [part for part in ("kind", *_PARTS[1:]) if part not in sheet.values]
    if sheet.own or lacking:
        return
    unknown = [None] * len(sheet.rows)
    for at, (kind, wh) in enumerate(zip(sheet.values["kind"], sheet.values.get(_PARTS[0], unknown), strict=True)):
        mah, volts = (_figure(sheet, at, part) for part in _PARTS[1:])
        if wh is not None or mah is None or volts is None or not is_port(volts):
            continue
        is_bank = kind is Kind.POWER_BANK
        target = _RATED if is_bank else _PARTS[0]
        if sheet.values.setdefault(target, [None] * len(sheet.rows))[at] is None:
            sheet.columns.setdefault(target, sheet.columns[_PARTS[1]])
            sheet.values[target][at] = mah if is_bank else energy_wh(mah, volts)
            sheet.values[_PARTS[1]][at] = sheet.values[_PARTS[2]][at] = None


def _part(sheet: Sheet) -> None:
    """The text of a battery beside columns of its own: they go first, and a text that says otherwise is doubtful."""
    column = sheet.columns["battery"]
    own = {part for part in _PARTS if part in sheet.values}
    for part in _PARTS:
        sheet.values.setdefault(part, [None] * len(sheet.rows))
        sheet.columns.setdefault(part, column)
    for at, parts in enumerate(sheet.values["battery"]):
        for part, value in parts.items() if isinstance(parts, Mapping) else ():
            if part in own and sheet.values[part][at] not in (None, value):
                sheet.unread(at, "battery")
            else:
                sheet.values[part][at] = value
    del sheet.values["battery"]


def _figure(sheet: Sheet, at: int, part: str) -> float | None:
    return _number(sheet.values[part][at]) if part in sheet.values else None


def _doubtful(sheet: Sheet) -> list[int]:
    """The rows whose mAh are doubtful beside their Wh and V; figures that many rows share are looked at once."""
    unknown = [None] * len(sheet.rows)
    rows = list(zip(*(sheet.values.get(part, unknown) for part in _PARTS), strict=True))
    doubtful = {figures for figures in set(rows) if _is_doubtful(*map(_number, figures))}
    return [at for at, figures in enumerate(rows) if figures in doubtful] if doubtful else []


def _is_doubtful(wh: float | None, mah: float | None, v: float | None) -> bool:
    return mah is not None and doubt_of(wh, mah, v) is not None


def _number(value: object) -> float | None:
    return value if isinstance(value, int | float) else None


def _agree(sheet: Sheet, at: int) -> None:
    """Ask what is open about a row's figures; what stays open is left not known."""
    figures: Electric = (_figure(sheet, at, _PARTS[0]), _figure(sheet, at, _PARTS[1]), _figure(sheet, at, _PARTS[2]))
    answered: list[Question] = []
    while question := doubt_of(*figures, answered=answered):
        asked = _asked_of(question)
        answer = sheet.settled.of(sheet.columns[asked].index).to(question)
        if answer in ("", EMPTY):
            readings = readings_of(*figures, question)
            cell = CellDoubt(at, question, readings, emptied=answer == EMPTY)
            sheet.doubt(at, asked, cell, _PARTS[1:] if question is Question.MAH_AT else _PARTS)
        figures = settled(*figures, question, answer or EMPTY)
        answered.append(question)
    for part, value in zip(_PARTS, figures, strict=True):
        if part in sheet.values:
            sheet.values[part][at] = value


def _asked_of(question: Question) -> str:
    """The column whose cell is named: the volts of a 5 V doubt, the Wh of a contradiction."""
    return _PARTS[2] if question is Question.MAH_AT else _PARTS[0]


def _watts(sheet: Sheet, at: int, target: str, current: Milliamps) -> None:
    volts = _figure(sheet, at, "battery_v")
    if volts is None:
        sheet.unread(at, target)
    else:
        sheet.values[target][at] = draw_from_ma(current.ma, volts)
