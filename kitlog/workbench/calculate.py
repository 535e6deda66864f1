"""One calculation from JSON; it needs no data file."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, TypeVar

from kitlog.budget import weight_ask
from kitlog.budget.power_ask import ask as power_ask
from kitlog.budget.power_ask.answer_json import answer_json
from kitlog.fault import InputFault

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Calculated:
    """What was found, for words, and the same with the keys of the JSON."""

    found: object
    as_json: Mapping[str, Any]


def _power(text: str) -> Calculated:
    found = power_ask.ask(text)
    return Calculated(found, answer_json(found))


def _weight(text: str) -> Calculated:
    found = weight_ask.answer(text)
    return Calculated(found, found)


_ANSWER: Mapping[str, Callable[[str], Calculated]] = {"power": _power, "weight": _weight}
_SCHEMA: Mapping[str, Callable[[], dict[str, Any]]] = {"power": power_ask.schema, "weight": weight_ask.schema}

BUDGETS = tuple(_ANSWER)


def calculate(budget: str, text: str) -> Calculated:
    """What a budget answers to a JSON object.

    Raises:
        InputFault: ``budget.unknown`` with ``name`` and the ``known`` ones; else what the budget refuses.
    """
    return _of(budget, _ANSWER)(text)


def schema(budget: str) -> dict[str, Any]:
    """JSON Schema of what a budget reads.

    Raises:
        InputFault: ``budget.unknown`` with ``name`` and the ``known`` ones.
    """
    return _of(budget, _SCHEMA)()


def _of(budget: str, table: Mapping[str, T]) -> T:
    if budget not in table:
        raise InputFault("budget.unknown", name=budget, known=BUDGETS)
    return table[budget]
