"""JSON, read strictly: no key twice, no endless nesting, no half characters."""

import json
from collections.abc import Iterator, Mapping, Sequence

from kitlog.fault import InputFault
from kitlog.units.text import unfit_character

_LONGEST_INT = 18
"""Digits; anything longer is out of every range and need not become an int."""
_SHOWN = 80


def strict_object(text: str) -> dict[str, object]:
    """One JSON object as a dict.

    Raises:
        InputFault: ``json.syntax`` with ``line`` and ``column``, ``json.too_deep``, ``json.not_object``,
            ``json.key_twice`` with ``field``, ``json.lone_surrogate`` with ``value``. NaN and infinities are left to
            the model, which names their field.
    """
    try:
        tree: object = json.loads(text, object_pairs_hook=_once, parse_int=_int)
    except json.JSONDecodeError as error:
        raise InputFault("json.syntax", line=error.lineno, column=error.colno) from None
    except RecursionError:
        raise InputFault("json.too_deep") from None
    if not isinstance(tree, dict):
        raise InputFault("json.not_object")
    for string in _strings(tree):
        if any("\ud800" <= char <= "\udfff" for char in string):
            raise InputFault("json.lone_surrogate", value=shown(string))
    return tree


def decoded(data: bytes) -> str:
    """The text of a JSON file: UTF-8, with or without BOM.

    Raises:
        InputFault: ``json.not_utf8``.
    """
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise InputFault("json.not_utf8") from None


def shown(text: str) -> str:
    """A piece of input as it may be shown: short, printable."""
    head = text if len(text) <= _SHOWN else text[: _SHOWN - 1] + "…"
    return head if unfit_character(head, breaks=False) is None else head.encode("unicode_escape").decode("ascii")


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
            yield str(key)
            yield from _strings(value)
    elif isinstance(tree, Sequence):
        for value in tree:
            yield from _strings(value)
