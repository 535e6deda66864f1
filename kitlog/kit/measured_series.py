"""What was measured over the years, one series for each thing, unit, gauge and place; and limits as they were typed."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from kitlog.kit.measured_text import WHAT, unit_of, what_of
from kitlog.kit.measurement import Measured, Measurement
from kitlog.kit.service import ServiceRecord, ServiceRule
from kitlog.units.number import parse_number

_LIMIT = re.compile(
    rf"\b(?P<what>{WHAT})\s+(?P<sense>at least|at most|>=|<=|≥|≤)\s*(?P<value>[0-9]+(?:[.,][0-9]+)?)\s*"
    r"(?P<unit>[^\s,;()0-9][^\s,;()]*)(?:\s*\((?P<gauge>[^)]+)\))?",
    re.IGNORECASE,
)
_AT_LEAST = frozenset({"at least", ">=", "≥"})


@dataclass(frozen=True, slots=True)
class MeasuredLimit:
    """A limit that the pilot typed in the source of a rule; it holds for one gauge, where one is named.

    Attributes:
        at_least: whether less is beyond it, else more is.
    """

    what: Measured
    value: float
    unit: str
    at_least: bool
    gauge: str = ""


@dataclass(frozen=True, slots=True)
class MeasuredSeries:
    """The same thing by the same gauge, in the same unit, at the same place; by day.

    Attributes:
        first: the measurement that says what all have in common.
        points: day and value, by day; several of one day from the least to the greatest.
        limits: those typed for it.
    """

    first: Measurement
    points: tuple[tuple[date, float], ...]
    limits: tuple[MeasuredLimit, ...] = ()


def limits_typed(text: str) -> tuple[MeasuredLimit, ...]:
    """The limits in a text: ``porosity at least 10 s (gauge A)``; nothing is taken from anywhere else."""
    found = []
    for match in _LIMIT.finditer(text):
        what = what_of(match["what"])
        unit = unit_of(what, match["unit"].rstrip("."))
        if unit is not None:
            value = parse_number(match["value"].replace(",", "."))
            gauge = (match["gauge"] or "").strip()
            found.append(MeasuredLimit(what, value, unit, match["sense"].casefold() in _AT_LEAST, gauge))
    return tuple(found)


def measured_series(records: Iterable[ServiceRecord], rules: Iterable[ServiceRule] = ()) -> tuple[MeasuredSeries, ...]:
    """The series of one item, in the order of what is measured; struck records count for nothing.

    A limit is laid to the series of its gauge. One without a gauge is laid only where all values of that unit are of
    one gauge: what it was meant for is not known otherwise.

    Args:
        records: of one item.
        rules: of the same item; limits are read in their sources.
    """
    points: dict[tuple[Measured, str, str, str], list[tuple[date, float]]] = {}
    firsts: dict[tuple[Measured, str, str, str], Measurement] = {}
    for record in records:
        for one in record.measurements if record.struck_at is None else ():
            points.setdefault(one.series, []).append((record.done_on, one.value))
            firsts.setdefault(one.series, one)
    limits = tuple(dict.fromkeys(limit for rule in rules for limit in limits_typed(rule.source)))
    order = sorted(points, key=lambda key: (list(Measured).index(key[0]), key[1:]))
    return tuple(
        MeasuredSeries(firsts[key], tuple(sorted(points[key])), tuple(_limits_of(key, limits, points))) for key in order
    )


def _limits_of(
    key: tuple[Measured, str, str, str],
    limits: tuple[MeasuredLimit, ...],
    known: Iterable[tuple[Measured, str, str, str]],
) -> list[MeasuredLimit]:
    what, unit, gauge, _place = key
    gauges = {other[2] for other in known if other[:2] == (what, unit)}
    fit = [limit for limit in limits if (limit.what, limit.unit) == (what, unit)]
    return [limit for limit in fit if (limit.gauge.casefold() == gauge if limit.gauge else len(gauges) == 1)]
