"""The column of what things cost: figures beside the sign or the code of a currency."""

import re
from collections.abc import Callable, Sequence

from kitlog.files.table.amounts import Meant, Part, judged
from kitlog.files.table.cells import Cell, Figure, text_of
from kitlog.files.table.column_reading import ColumnReading
from kitlog.files.table.doubt import Answers
from kitlog.files.table.limits import most
from kitlog.files.table.marked import Plain, read_marked
from kitlog.files.table.numbers import MARK, PLAIN, figure_value, plain_value, read_number, written
from kitlog.files.table.phrases import phrase, tidy
from kitlog.files.table.reading import NOTHING, UNREAD, Read
from kitlog.files.table.remark import Remark
from kitlog.files.table.targets import Target

_CURRENCIES = {
    word: code
    for code, words in {
        "EUR": "€ eur euro euros",
        "CHF": "chf fr fr. sfr sfr. frs frs. franken francs",
        "USD": "$ us$ $us usd dollar dollars",
        "GBP": "£ gbp £gb",
    }.items()
    for word in words.split()
}
"""Signs and codes (ISO 4217) of the currencies that are understood, with the words of the trade."""

_WORDS = "|".join(re.escape(word) for word in sorted(_CURRENCIES, key=len, reverse=True))
_BEFORE = re.compile(rf"({_WORDS}) ?(?=[0-9.,+])")
_AFTER = re.compile(rf"(?<=[0-9.,\-–—]) ?({_WORDS})$")
_NO_CENTS = re.compile(r"([.,])(?:-{1,2}|–|—)$")
_PLAIN = re.compile(PLAIN + r" ?(€|EUR|CHF|USD|GBP)?")


def read_money(target: Target, cells: Sequence[Cell], answers: Answers, *, own: bool) -> ColumnReading:
    """What things cost, without the currency; several currencies in one column are said in a remark."""
    limit = most(target)
    seen: dict[str, None] = {}

    def careful(cell: Cell) -> Read:
        if isinstance(cell, Figure):
            return _figure(cell, seen)
        return _text(cell, limit, seen, own=own) if isinstance(cell, str) else UNREAD

    reading = read_marked(cells, _quick(seen), careful, text_of, answers)
    if len(seen) < 2:
        return reading
    remark = Remark("table.mixed_currencies", {"currencies": tuple(seen)})
    return ColumnReading(reading.values, reading.guesses, reading.doubts, (*reading.remarks, remark))


def _quick(seen: dict[str, None]) -> Callable[[Cell], Plain | None]:
    def read(cell: Cell) -> Plain | None:
        match = _PLAIN.fullmatch(cell) if isinstance(cell, str) else None
        if match is None:
            return None
        whole, mark, rest, currency = match.groups()
        value = plain_value(whole, rest)
        if value is not None and currency:
            seen[_CURRENCIES[currency.casefold()]] = None
        return None if value is None else (value, MARK[mark], False)

    return read


def _figure(cell: Figure, seen: dict[str, None]) -> Read:
    value = figure_value(cell.value)
    unit = tidy(cell.unit)
    if value is None or cell.percent or (unit and unit not in _CURRENCIES):
        return UNREAD
    if unit:
        seen[_CURRENCIES[unit]] = None
    return Read(float(value))


def _text(cell: str, limit: float, seen: dict[str, None], *, own: bool) -> Read:
    said = phrase(cell)
    if said is None or said.nothing:
        return NOTHING if said else UNREAD
    core, currencies = _without_currency(said.core)
    number = None if len(currencies) > 1 or said.each or said.measured else read_number(core, own=own)
    if number is None:
        return UNREAD
    seen.update(dict.fromkeys(currencies))
    return judged([number], [""], lambda parts: _meant(parts, limit), rough=said.rough)


def _without_currency(core: str) -> tuple[str, list[str]]:
    """The number alone ("120,-" as 120,00), and the currencies that stood beside it."""
    before = _BEFORE.match(core)
    core = core[before.end() :] if before else core
    after = _AFTER.search(core)
    core = core[: after.start()] if after else core
    found = [_CURRENCIES[match.group(1)] for match in (before, after) if match]
    return _NO_CENTS.sub(r"\g<1>00", core.strip()), found


def _meant(parts: Sequence[Part], limit: float) -> Meant:
    value = parts[0].value
    return Meant(float(value), written(value), value <= limit)
