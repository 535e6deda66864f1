"""JSON text -> a checked request. Everything that can be wrong with the form becomes one `InputFault`."""

from typing import TypeVar

from pydantic import ValidationError

from kitlog.budget.power.check_query import check_request
from kitlog.budget.power.day import Given
from kitlog.budget.power.question import Request
from kitlog.budget.power.refusal import refusal
from kitlog.units.strict_json import strict_object

GivenT = TypeVar("GivenT", bound=Given)


def read_request(text: str) -> Request:
    """Read one JSON object: a day with `sample_h` or a `query`.

    Raises:
        InputFault: the codes in the docstring of `kitlog.budget.power.checks`.
    """
    request = read(Request, strict_object(text))
    check_request(request)
    return request


def read(model: type[GivenT], tree: object) -> GivenT:
    """The model, or an `InputFault` that names the id, the field and the value of the first thing wrong."""
    try:
        return model.model_validate(tree)
    except ValidationError as error:
        raise refusal(error, tree) from None
