"""One calculation from JSON; it needs no data file."""

from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from kitlog.budget import weight_ask
from kitlog.budget.power import ask as power_ask
from kitlog.fault import InputFault

T = TypeVar("T")

_ANSWER: Mapping[str, Callable[[str], dict[str, Any]]] = {"power": power_ask.answer, "weight": weight_ask.answer}
_SCHEMA: Mapping[str, Callable[[], dict[str, Any]]] = {"power": power_ask.schema, "weight": weight_ask.schema}

BUDGETS = tuple(_ANSWER)


def calculate(budget: str, text: str) -> dict[str, Any]:
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
