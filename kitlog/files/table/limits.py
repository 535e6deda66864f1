"""The most that the model can hold in a column, so that a reading beyond it is none."""

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from functools import cache
from math import inf
from typing import Any, get_args

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from kitlog.files.csv_columns import KIT
from kitlog.files.table.targets import Target, Way
from kitlog.kit.facets import WayOfUse, Wing
from kitlog.kit.item import Item

Exact = Decimal | Fraction

_ELSEWHERE: dict[str, tuple[type[BaseModel], str]] = {
    "draw_w": (WayOfUse, "power_w"),
    "mass_all": (Wing, "max_g"),
    "wing_range": (Wing, "max_g"),
    "reserve_range": (Wing, "max_g"),
}
"""Targets whose limit is that of another field: all pieces of a row together weigh no more than a load may."""


LIKELY_MAH = (20, 100_000)
"""Least and greatest capacity in mAh that one of two readings may have: the smallest cells of devices worn in an ear
hold some 25 mAh, and banks for aeroplanes at most 27,000 (100 Wh at 3.7 V). Common practice, no source."""


def is_likely(amount: Exact, unit: str) -> bool:
    """Whether one of two readings of an amount may be meant, in the unit that a target is held in."""
    least, greatest = LIKELY_MAH
    return unit != "mAh" or least <= amount <= greatest


@cache
def most(target: Target) -> float:
    """The greatest value that the model takes for a target, in the target's unit; infinite if there is no limit."""
    if target.name in _ELSEWHERE:
        model, name = _ELSEWHERE[target.name]
        return _limit(model.model_fields[name])
    if target.way is Way.ELECTRIC or target.name not in KIT.by_heading:
        return inf
    at: type[BaseModel] = Item
    *facets, name = KIT.by_heading[target.name].path
    for facet in facets:
        at = next(kind for kind in get_args(at.model_fields[facet].annotation) if issubclass(kind, BaseModel))
    return _limit(at.model_fields[name])


def _limit(of: FieldInfo) -> float:
    return min(_limits(of), default=inf)


def _limits(of: Any) -> Iterator[float]:
    """The limits that a field's information, or the types in its annotation, state."""
    if isinstance(of, FieldInfo):
        for rule in of.metadata:
            for name in ("le", "lt"):
                if (limit := getattr(rule, name, None)) is not None:
                    yield limit
        yield from _limits(of.annotation)
    for part in get_args(of):
        yield from _limits(part)
