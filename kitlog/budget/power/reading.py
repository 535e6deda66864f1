"""JSON text -> a checked request. Everything that can be wrong with the form becomes one `InputFault`."""

import json
from collections.abc import Iterator, Mapping, Sequence
from typing import TypeVar

from pydantic import ValidationError

from kitlog.budget.power.check_query import check_request
from kitlog.budget.power.day import Given
from kitlog.budget.power.question import Request
from kitlog.budget.power.refusal import refusal, shown
from kitlog.fault import InputFault

GivenT = TypeVar("GivenT", bound=Given)

_LONGEST_INT = 18  # digits; anything longer is out of every range and need not become an int


def read_request(text: str) -> Request:
    """Read one JSON object: a day with `sample_h` or a `query`.

    Raises:
        InputFault: the codes in the docstring of `kitlog.budget.power.checks`.
    """
    request = read(Request, _tree(text))
    check_request(request)
    return request


def read(model: type[GivenT], tree: object) -> GivenT:
    """The model, or an `InputFault` that names the id, the field and the value of the first thing wrong."""
    try:
        return model.model_validate(tree)
    except ValidationError as error:
        raise refusal(error, tree) from None


def _tree(text: str) -> object:
    try:
        tree: object = json.loads(text, object_pairs_hook=_once, parse_int=_int)
    except json.JSONDecodeError as error:
        raise InputFault("json.syntax", line=error.lineno, column=error.colno) from None
    except RecursionError:
        raise InputFault("json.too_deep") from None
    if not isinstance(tree, dict):
        raise InputFault("json.not_object")
    for string in _strings(tree):
        if not _is_text(string):
            raise InputFault("json.lone_surrogate", value=shown(string))
    return tree


def _once(pairs: Sequence[tuple[str, object]]) -> dict[str, object]:
    found = dict(pairs)
    if len(found) < len(pairs):
        keys = [key for key, _ in pairs]
        twice = next(key for key in keys if keys.count(key) > 1)
        raise InputFault("json.key_twice", field=shown(twice))
    return found


def _int(digits: str) -> int | float:
    return int(digits) if len(digits) <= _LONGEST_INT else float(digits)


def _strings(tree: object) -> Iterator[str]:
    if isinstance(tree, str):
        yield tree
    elif isinstance(tree, Mapping):
        for key, value in tree.items():
            yield key
            yield from _strings(value)
    elif isinstance(tree, Sequence):
        for value in tree:
            yield from _strings(value)


def _is_text(string: str) -> bool:
    """Half of a surrogate pair is no character: it can be neither stored nor printed."""
    return not any("\ud800" <= char <= "\udfff" for char in string)
