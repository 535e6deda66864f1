"""The answer of one calculation as lines, short and in words; what is not known is said."""

from collections.abc import Iterator, Mapping, Sequence
from functools import singledispatch

from kitlog.budget.power_ask import answers
from kitlog.wording.columns import table
from kitlog.wording.figures import number_text
from kitlog.wording.night_text import evening_lines, storage_lines
from kitlog.wording.power_chance_text import chance_lines, forecast_lines
from kitlog.wording.power_changes_text import changes_lines
from kitlog.wording.power_day_text import day_lines
from kitlog.wording.power_limits_text import (
    lightest_bank_lines,
    longest_phase_lines,
    lowest_start_lines,
    smallest_bank_lines,
)
from kitlog.wording.translate import _


@singledispatch
def budget_lines(found: object) -> Iterator[str]:
    """What was found: an answer of the power budget, or figures by name, which carry their units as in the JSON."""
    raise TypeError(found)


budget_lines.register(answers.DayCourse, day_lines)
budget_lines.register(answers.LongestPhaseFound, longest_phase_lines)
budget_lines.register(answers.SmallestBankFound, smallest_bank_lines)
budget_lines.register(answers.LowestStartFound, lowest_start_lines)
budget_lines.register(answers.LightestBankFound, lightest_bank_lines)
budget_lines.register(answers.ChanceFound, chance_lines)
budget_lines.register(answers.ForecastFound, forecast_lines)
budget_lines.register(answers.ChangesFound, changes_lines)
budget_lines.register(answers.EveningFound, evening_lines)
budget_lines.register(answers.StorageFound, storage_lines)


@budget_lines.register(Mapping)
def _named(answer: Mapping[str, object]) -> Iterator[str]:
    plain = {name: value for name, value in answer.items() if not isinstance(value, Mapping)}
    yield from _figures(plain, 0)
    for name, value in answer.items():
        if isinstance(value, Mapping):
            yield name
            yield from _part(value, 2)


def _part(part: Mapping[str, object], indent: int) -> Iterator[str]:
    yield from _figures({name: value for name, value in part.items() if not isinstance(value, Mapping)}, indent)
    for name, value in part.items():
        if isinstance(value, Mapping):
            yield " " * indent + name
            yield from _part(value, indent + 2)


def _figures(figures: Mapping[str, object], indent: int) -> Iterator[str]:
    if figures:
        yield from table([(name, _shown(value)) for name, value in figures.items()], (False, False), indent)


def _shown(value: object) -> str:
    if value is None:
        return _("none or not known")
    if isinstance(value, bool):
        return _("yes") if value else _("no")
    if isinstance(value, float):
        return number_text(value, 3)
    if isinstance(value, int):
        return number_text(value)
    if isinstance(value, Sequence) and not isinstance(value, str):
        return ", ".join(map(_shown, value)) or _("none")
    return str(value)
