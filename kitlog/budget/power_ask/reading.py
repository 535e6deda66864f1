"""JSON text -> a checked question. Everything that can be wrong with the form becomes one `InputFault`."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeVar

from pydantic import ValidationError

from kitlog.budget.charging.evening import Evening
from kitlog.budget.charging.storage import Storing
from kitlog.budget.power.check_query import check_samples
from kitlog.budget.power.checks import check_day
from kitlog.budget.power.day import Day, Given
from kitlog.budget.power.question import Chance, Triple
from kitlog.budget.power.refusal import refusal, shown
from kitlog.budget.power_ask.described import KnownDay, known_day
from kitlog.budget.power_ask.request import ChangesAsked, Request, odd_key
from kitlog.fault import InputFault
from kitlog.units.strict_json import strict_object

GivenT = TypeVar("GivenT", bound=Given)
ChanceT = TypeVar("ChanceT", bound=Chance)


@dataclass(frozen=True, slots=True)
class Times:
    """The day as it goes, with the charges at some times, h from the start."""

    sample_h: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class DayAsked:
    """A checked day in W, and what is asked of it."""

    day: Day
    asked: Given | Times


Asked = DayAsked | Evening | Storing


def read_request(text: str) -> Asked:
    """Read one JSON object.

    Raises:
        InputFault: the codes in the docstring of `kitlog.budget.power.checks`.
    """
    tree = strict_object(text)
    _refuse_two_questions(tree.get("query"))
    request = _read(tree)
    night = _of_the_night(request)
    return _of_the_day(request) if night is None else night


def _read(tree: object) -> Request:
    """The model, or an `InputFault` that names the id, the field and the value of the first thing wrong."""
    try:
        return Request.model_validate(tree)
    except ValidationError as error:
        raise refusal(error, tree) from None


def _refuse_two_questions(query: object) -> None:
    odd = odd_key(query) if isinstance(query, Mapping) else None
    if odd is not None:
        key, others = odd
        raise InputFault("query.two_questions", field="query", key=shown(key), others=[shown(each) for each in others])


def _of_the_night(request: Request) -> Evening | Storing | None:
    night = request.evening or request.storage
    if night is not None:
        given = [name for name in Request.model_fields if getattr(request, name) is not None]
        if len(given) > 1:
            raise InputFault("request.two_things_asked", first=given[0], other=given[1])
    return night


def _of_the_day(request: Request) -> DayAsked:
    if request.day is None:
        if request.sample_h is None and request.query is None:
            raise InputFault("request.nothing_asked")
        raise InputFault("field.missing", id=None, field="day", value="object")
    known = known_day(request.day)
    check_day(known.day)
    if request.query is not None and request.sample_h is not None:
        raise InputFault("request.two_things_asked", first="sample_h", other="query")
    if request.query is not None:
        return DayAsked(known.day, _with_errors(request.query, known))
    if request.sample_h is None:
        raise InputFault("request.nothing_asked")
    check_samples(known.day, request.sample_h)
    return DayAsked(known.day, Times(request.sample_h))


def _with_errors(query: Given, known: KnownDay) -> Given:
    """A question of chance with the errors of described draws that it does not name itself."""
    if isinstance(query, Chance):
        return _uncertain(query, known)
    if isinstance(query, ChangesAsked) and query.chance is not None:
        return query.model_copy(update={"chance": _uncertain(query.chance, known)})
    return query


def _uncertain(query: ChanceT, known: KnownDay) -> ChanceT:
    draws: dict[str, dict[str, Triple]] = {name: dict(triples) for name, triples in known.draws.items() if triples}
    for name, triples in query.draws.items():
        draws[name] = {**draws.get(name, {}), **triples}
    return query.model_copy(update={"draws": draws})
