"""What pydantic refuses, as a fault that names the field and the value."""

from pydantic import ValidationError

from kitlog.fault import InputFault
from kitlog.units.strict_json import shown

_CODES = {
    "extra_forbidden": "field.unknown",
    "missing": "field.missing",
    "finite_number": "number.not_finite",
    "string_too_short": "text.empty",
    "string_too_long": "text.too_long",
    "string_unicode": "json.lone_surrogate",
    "too_short": "list.length",
    "too_long": "list.length",
    "greater_than": "number.out_of_range",
    "greater_than_equal": "number.out_of_range",
    "less_than": "number.out_of_range",
    "less_than_equal": "number.out_of_range",
    "enum": "field.not_in_list",
    "date_from_datetime_parsing": "day.not_a_day",
    "date_parsing": "day.not_a_day",
    "timezone_aware": "time.no_zone",
}
_LIMITS = {"gt": "above", "ge": "at_least", "lt": "below", "le": "at_most", "max_length": "at_most"}


def refused(error: ValidationError, **facts: object) -> InputFault:
    """The first complaint of a model as a fault: ``field``, ``value`` and limits, beside the given facts.

    A code of our own (``outing.days_reversed``) stays; the library's become ``field.unknown``, ``field.missing``,
    ``field.wrong_type``, ``field.not_in_list``, ``number.out_of_range`` and the like.
    """
    first = error.errors(include_url=False)[0]
    kind, context = first["type"], first.get("ctx", {})
    code = kind if "." in kind else _CODES.get(kind, "field.wrong_type")
    if code == "list.length" and isinstance(first["input"], str):
        code = "text.empty" if kind == "too_short" else "text.too_long"
    told: dict[str, object] = {"field": ".".join(str(part) for part in first["loc"] if part != "[key]"), **facts}
    if not isinstance(first["input"], dict | list | tuple):
        told["value"] = shown(str(first["input"]))
    told |= {
        _LIMITS.get(name, name): value for name, value in context.items() if name not in {"error", "actual_length"}
    }
    if code == "field.wrong_type":
        told["reason"] = first["msg"]
    return InputFault(code, **told)
