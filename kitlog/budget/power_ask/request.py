"""What can be asked: a day with times to look at or a query, tonight's charging, or what to do with stored cells.

The keys of `query` tell the question.
"""

from collections.abc import Iterable, Mapping
from typing import Annotated

from pydantic import ConfigDict, Discriminator, Field, Tag
from pydantic.config import JsonDict

from kitlog.budget.charging.evening import Evening
from kitlog.budget.charging.storage import Storing
from kitlog.budget.power.changes.given import ChangesQuery
from kitlog.budget.power.changes.odds import FEW_DAYS
from kitlog.budget.power.day import Amount, Given
from kitlog.budget.power.forecast_question import ForecastQuery
from kitlog.budget.power.lightest_bank import LightestBank
from kitlog.budget.power.question import Chance, LongestPhase, LowestStart, SmallestBank
from kitlog.budget.power_ask.described import DescribedDay


def _any_of(keys: Iterable[str]) -> JsonDict:
    return {"anyOf": [{"required": [key]} for key in keys]}


class ChanceQuery(Chance):
    """How often does each device last? At least one of n, hours, draws and start; min_soc besides.

    n days are drawn, each uncertain figure from its triangle (low, likely, high). The answer: device -> probability.
    """

    model_config = ConfigDict(json_schema_extra=_any_of(("n", "hours", "draws", "start")))


class ForecastAsked(ForecastQuery):
    """The chances with their errors, when devices go off, who can still call at the end, and the fan of charges.

    `callers` or `fan_steps` must be there, if only as null or an empty list; all keys of the chance may be.
    """

    model_config = ConfigDict(json_schema_extra=_any_of(("callers", "fan_steps")))


class ChangesChance(Chance):
    """The chance of a change: so many days are drawn for the day as planned and for each change, the same ones.

    A change weighs more than one day; so fewer days are drawn than for a chance alone.
    """

    n: Annotated[int, Field(ge=1, le=10_000)] = FEW_DAYS


class ChangesAsked(ChangesQuery):
    """What would help: each change is run, and listed with what it gains in hours and weighs in grams.

    At least one key beside `targets`. With `chance`, also how much oftener all would last, and what would help a device
    that is never off on the day as planned, yet too seldom on the days drawn (it may be off on more than one day in
    twenty); its `min_soc` counts where `targets` is empty. At most 60 runs of the single day, beside those of the
    chance.
    """

    model_config = ConfigDict(
        json_schema_extra=_any_of(("chance", *(key for key in ChangesQuery.model_fields if key != "targets")))
    )

    chance: ChangesChance | None = None


QUESTIONS: Mapping[str, type[Given]] = {
    "?lowest_start": LowestStart,
    "?longest_phase": LongestPhase,
    "?smallest_bank": SmallestBank,
    "?lightest_bank": LightestBank,
    "?chance": ChanceQuery,
    "?forecast": ForecastAsked,
    "?changes": ChangesAsked,
}
"""Where keys fit several questions (`device` alone, `n` alone), the first of them is meant."""

_MUTE = frozenset({"min_soc", "seed"})
"""Keys that tell no question by themselves."""


def kind_of_query(value: object) -> str | None:
    """Which question it is, told by its keys; None if they tell nothing, or two."""
    keys = [key for key in value if isinstance(key, str)] if isinstance(value, Mapping) else []
    kinds = _kinds(keys)
    told = kinds and any(key not in _MUTE and _kinds([key]) for key in keys)
    return next((kind for kind in QUESTIONS if kind in kinds), None) if told else None


def odd_key(query: Mapping[str, object]) -> tuple[str, list[str]] | None:
    """The first key that belongs to another question than those before it, and these; None if all go together."""
    before: list[str] = []
    for key in query:
        if _kinds([key]):
            if not _kinds([*before, key]):
                return key, before
            before.append(key)
    return None


def _kinds(keys: Iterable[str]) -> set[str]:
    """The questions that have all of these keys; keys that none has do not count. Nothing is left of no keys."""
    found = [{kind for kind, model in QUESTIONS.items() if key in model.model_fields} for key in keys]
    known = [kinds for kinds in found if kinds]
    return set.intersection(*known) if known else set()


Query = Annotated[
    Annotated[LowestStart, Tag("?lowest_start")]
    | Annotated[LongestPhase, Tag("?longest_phase")]
    | Annotated[SmallestBank, Tag("?smallest_bank")]
    | Annotated[LightestBank, Tag("?lightest_bank")]
    | Annotated[ChanceQuery, Tag("?chance")]
    | Annotated[ForecastAsked, Tag("?forecast")]
    | Annotated[ChangesAsked, Tag("?changes")],
    Discriminator(kind_of_query),
]

_COMPLETE: JsonDict = {
    "oneOf": [
        {"required": ["day", "sample_h"]},
        {"required": ["day", "query"]},
        {"required": ["evening"], "maxProperties": 1},
        {"required": ["storage"], "maxProperties": 1},
    ]
}


class Request(Given):
    """One question: `day` with `sample_h` or `query`, or `evening`, or `storage`.

    Attributes:
        day: phases, devices, banks and plugs.
        sample_h: times, h from the start, at which charges are told beside the end of the day; may be empty.
        query: its keys tell the question; keys of two questions are refused.
        evening: what to charge tonight, where and when.
        storage: what to do with cells that will lie for weeks.
    """

    model_config = ConfigDict(json_schema_extra=_COMPLETE)

    day: DescribedDay | None = None
    sample_h: Annotated[tuple[Amount, ...], Field(strict=False)] | None = None
    query: Query | None = None
    evening: Evening | None = None
    storage: Storing | None = None
