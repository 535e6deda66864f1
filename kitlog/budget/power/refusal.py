"""From a model's complaint to a fault that names the thing: the id, the field in it, and the value."""

from collections.abc import Mapping, Sequence
from typing import Any

from pydantic import ValidationError

from kitlog.fault import InputFault

Loc = tuple[int | str, ...]

_CODES = {
    "extra_forbidden": "field.unknown",
    "missing": "field.missing",
    "finite_number": "number.not_finite",
    "union_tag_not_found": "query.unclear",
    "string_pattern_mismatch": "id.unusable",
    "string_too_short": "id.unusable",
    "string_too_long": "id.unusable",
    "string_unicode": "json.lone_surrogate",
    "too_short": "list.length",
    "too_long": "list.length",
    "greater_than": "number.out_of_range",
    "greater_than_equal": "number.out_of_range",
    "less_than": "number.out_of_range",
    "less_than_equal": "number.out_of_range",
}

_LIMITS = {
    "gt": "above",
    "ge": "at_least",
    "lt": "below",
    "le": "at_most",
    "min_length": "at_least",
    "max_length": "at_most",
}

_WANTED = {
    "float_type": "number",
    "int_type": "whole_number",
    "bool_type": "true_or_false",
    "string_type": "text",
    "tuple_type": "list",
    "dict_type": "object",
    "model_type": "object",
    "model_attributes_type": "object",
}


def refusal(error: ValidationError, tree: object) -> InputFault:
    """The first complaint as a fault; `tree` is what was read, for the ids on the way to the complaint."""
    complaints = error.errors(include_url=False)
    first, path = complaints[0], complaints[0]["loc"]
    if first["type"] == "missing" and isinstance(path[-1], int):
        return _too_short(path[:-1], [each["loc"] for each in complaints], tree)
    within, owner, rest = _owner(path, tree)
    code = _CODES.get(first["type"], "field.wrong_type")
    facts: dict[str, object] = {
        **_outer(within),
        "id": owner,
        "field": _field(rest),
        "value": _value(first["input"]),
        **_limit(first.get("ctx", {})),
    }
    if code == "field.wrong_type":
        facts["wanted"] = _WANTED.get(first["type"], "other")
    return InputFault(code, **facts)


def _too_short(path: Loc, complaints: Sequence[Loc], tree: object) -> InputFault:
    """A list of fixed length (low, likely, high) complains of each place that is missing."""
    within, owner, rest = _owner(path, tree)
    least = max(int(each[-1]) for each in complaints if each[:-1] == path) + 1
    facts = {"id": owner, "field": _field(rest), "value": "list", "relation": "at_least", "limit": least}
    return InputFault("list.length", **_outer(within), **facts)


def _outer(within: str | None) -> dict[str, object]:
    """A fact for the thing around the one that is named: a port says little without its charger."""
    return {} if within is None else {"within": within}


def _field(path: Loc) -> str:
    return shown(".".join(str(part) for part in path if not _is_tag(part)))


def _owner(path: Loc, tree: object) -> tuple[str | None, str | None, Loc]:
    """The two innermost ids on the path (a plug and a target go by their device), and the path from there on."""
    within: str | None = None
    owner: str | None = None
    rest, here = path, tree
    for depth, part in enumerate(path):
        here = _step(here, part)
        name = _name(here)
        if name is not None:
            within, owner, rest = owner, name, path[depth + 1 :]
    return within, owner, rest


def _step(here: object, part: int | str) -> object:
    if isinstance(here, Mapping):
        # a tag of a union stands in the path but not in what was read
        return here if _is_tag(part) and part not in here else here.get(part)
    if isinstance(here, Sequence) and not isinstance(here, str) and isinstance(part, int) and part < len(here):
        return here[part]
    return None


def _is_tag(part: int | str) -> bool:
    """The models mark the branches of a union with names that begin with a question mark."""
    return isinstance(part, str) and part.startswith("?")


def _name(here: object) -> str | None:
    if not isinstance(here, Mapping):
        return None
    name = here.get("id", here.get("device"))
    return shown(name) if isinstance(name, str) else None


def _limit(context: Mapping[str, Any]) -> dict[str, object]:
    for key, relation in _LIMITS.items():
        if key in context:
            return {"relation": relation, "limit": context[key]}
    return {}


def _value(value: object) -> object:
    if value is None or isinstance(value, bool | int | float):
        return value
    if isinstance(value, str):
        return shown(value)
    return "object" if isinstance(value, Mapping) else "list"


def shown(text: str) -> str:
    """Short enough, and printable, for one line of any terminal: what is not a letter or sign becomes `?`."""
    return "".join(char if char.isprintable() else "?" for char in text[:80])
