"""A workbook's number formats: what a cell shows beside its number, and how much of a day.

Number format codes as in ECMA-376 part 1, 18.8.31: up to four sections parted by semicolons, each with an optional
condition; digits 0 # ?, a trailing comma for thousands that are not shown, %, literal text in quotes or behind a
backslash, and the letters of dates and times.
"""

import operator
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache

from kitlog.files.table.cells import Shows
from kitlog.files.table.shown_unit import unit_in

_TOKEN = re.compile(
    r'"(?P<quoted>[^"]*)"?|\\(?P<escaped>.)|(?P<skipped>[_*].)|\[(?P<bracket>[^\]]*)\]|(?P<general>General)'
    r"|(?P<half>AM/PM|A/P)|(?P<exponent>E[+-])|(?P<date>y+|m+|d+|h+|s+)|(?P<digit>[0#?])|(?P<end>;)|(?P<other>.)",
    re.IGNORECASE | re.DOTALL,
)
_CONDITION = re.compile(r"(<=|>=|<>|<|>|=)\s*(-?\d+(?:\.\d+)?)")
_ELAPSED = re.compile(r"h+|m+|s+", re.IGNORECASE)
_COMPARE: dict[str, Callable[[Decimal, Decimal], bool]] = {
    "<": operator.lt, "<=": operator.le, ">": operator.gt, ">=": operator.ge, "=": operator.eq, "<>": operator.ne,
}  # fmt: skip

_Token = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Section:
    """How one section of a format shows a number.

    Attributes:
        shows: how much of a day; None = no day. time: a time of day or a duration.
        unit, prefix, suffix: letters that count as a unit; all text before and behind the number.
        thousands: how often the number is divided by 1,000 before it is shown.
        percent, quoted_percent: a % that multiplies by 100, and one that is mere text.
        whole, decimals: least digits before and behind the point. condition: when the section holds.
    """

    shows: Shows | None = None
    time: bool = False
    unit: str = ""
    prefix: str = ""
    suffix: str = ""
    thousands: int = 0
    percent: bool = False
    quoted_percent: bool = False
    whole: int = 1
    decimals: int = 0
    condition: Callable[[Decimal], bool] | None = None


@lru_cache(maxsize=512)
def sections(code: str) -> tuple[Section, ...]:
    """The sections of a format code."""
    parts: list[list[_Token]] = [[]]
    for match in _TOKEN.finditer(code):
        kind = match.lastgroup or "other"
        if kind == "end":
            parts.append([])
        else:
            parts[-1].append((kind, match.group(kind)))
    return tuple(_section(part) for part in parts[:4])


def section_for(value: Decimal, code: str) -> Section:
    """The section of a format that shows a value."""
    found = sections(code)
    conditions = [section for section in found if section.condition]
    if conditions:
        fitting = (section for section in conditions if section.condition and section.condition(value))
        return next(fitting, next((section for section in found if not section.condition), found[-1]))
    if value < 0 and len(found) > 1:
        return found[1]
    return found[2] if not value and len(found) > 2 else found[0]


def _section(tokens: Sequence[_Token]) -> Section:
    condition = next((made for kind, text in tokens if kind == "bracket" and (made := _condition(text))), None)
    if _is_date(tokens):
        return _date_section(tokens, condition)
    return _number_section(tokens, condition)


def _condition(text: str) -> Callable[[Decimal], bool] | None:
    match = _CONDITION.fullmatch(text.strip())
    if not match:
        return None
    compare, limit = _COMPARE[match.group(1)], Decimal(match.group(2))
    return lambda value: compare(value, limit)


def _is_date(tokens: Sequence[_Token]) -> bool:
    """Whether the letters of a date come first; behind digits they are text that a writer forgot to quote."""
    for kind, text in tokens:
        if kind in ("digit", "general"):
            return False
        if kind == "date" or (kind == "bracket" and _ELAPSED.fullmatch(text)):
            return True
    return False


def _date_section(tokens: Sequence[_Token], condition: Callable[[Decimal], bool] | None) -> Section:
    letters = [text.lower() for kind, text in tokens if kind == "date"]
    if any(kind == "bracket" and _ELAPSED.fullmatch(text) for kind, text in tokens):
        return Section(time=True, condition=condition)
    kinds = {_date_part(letters, at) for at in range(len(letters))}
    if not kinds & {"y", "month", "d"}:
        return Section(time=True, condition=condition)
    shows = Shows.DAY if "d" in kinds else Shows.MONTH if "month" in kinds else Shows.YEAR
    return Section(shows=shows, condition=condition)


def _date_part(letters: Sequence[str], at: int) -> str:
    """What a run of letters stands for; m is minutes behind hours and before seconds."""
    letter = letters[at][0]
    if letter != "m" or len(letters[at]) > 2:
        return "month" if letter == "m" else letter
    before = letters[at - 1][0] if at else ""
    after = letters[at + 1][0] if at + 1 < len(letters) else ""
    return "minutes" if before == "h" or after == "s" else "month"


def _number_section(tokens: Sequence[_Token], condition: Callable[[Decimal], bool] | None) -> Section:
    places = [at for at, (kind, _) in enumerate(tokens) if kind in ("digit", "general")]
    first, last = (places[0], places[-1]) if places else (len(tokens), len(tokens))
    suffix, commas = _behind(tokens[last + 1 :])
    prefix = _literal(tokens[:first])
    whole, decimals = _least_digits(tokens)
    return Section(
        unit=unit_in(suffix) or unit_in(prefix), prefix=prefix, suffix=suffix, thousands=commas,
        percent=("other", "%") in tokens, quoted_percent="%" in _quoted(tokens) and ("other", "%") not in tokens,
        whole=whole, decimals=decimals, condition=condition,
    )  # fmt: skip


def _behind(tokens: Sequence[_Token]) -> tuple[str, int]:
    """The text behind the digits, and the commas between them and it."""
    commas = next((at for at, token in enumerate(tokens) if token != ("other", ",")), len(tokens))
    return _literal(tokens[commas:]), commas


def _literal(tokens: Sequence[_Token]) -> str:
    """What tokens show that are no digits."""
    return "".join(_shown(kind, text) for kind, text in tokens)


def _shown(kind: str, text: str) -> str:
    if kind == "bracket":
        return text[1:].partition("-")[0] if text.startswith("$") else ""
    if kind == "skipped":
        return " "
    return "" if text == "@" and kind == "other" else text


def _quoted(tokens: Sequence[_Token]) -> str:
    return "".join(text for kind, text in tokens if kind in ("quoted", "escaped"))


def _least_digits(tokens: Sequence[_Token]) -> tuple[int, int]:
    """Zeros before and behind the point: digits that are always shown."""
    if any(kind in ("general", "exponent") for kind, _ in tokens):
        return 1, 0
    digits = "".join(text for kind, text in tokens if kind == "digit" or (kind, text) == ("other", "."))
    whole, _, decimals = digits.partition(".")
    return max(whole.count("0"), 1), decimals.count("0")
