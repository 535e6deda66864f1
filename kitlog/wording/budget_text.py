"""The answer of one calculation as lines: names and figures under each other, what is not known said."""

from collections.abc import Iterator, Mapping, Sequence

from kitlog.wording.columns import table
from kitlog.wording.figures import number_text
from kitlog.wording.translate import _


def budget_lines(answer: Mapping[str, object]) -> Iterator[str]:
    """Each part of the answer with its figures; the names carry the units, as in the JSON."""
    plain = {name: value for name, value in answer.items() if not isinstance(value, Mapping)}
    yield from _figures(plain, 0)
    for name, value in answer.items():
        if isinstance(value, Mapping):
            yield name
            yield from _part(value, 2)


def _part(part: Mapping[str, object], indent: int) -> Iterator[str]:
    yield from _figures({name: value for name, value in part.items() if not isinstance(value, Mapping)}, indent)
    for name, value in part.items():
        if isinstance(value, Mapping):
            yield " " * indent + name
            yield from _part(value, indent + 2)


def _figures(figures: Mapping[str, object], indent: int) -> Iterator[str]:
    if figures:
        yield from table([(name, _shown(value)) for name, value in figures.items()], (False, False), indent)


def _shown(value: object) -> str:
    if value is None:
        return _("none or not known")
    if isinstance(value, bool):
        return _("yes") if value else _("no")
    if isinstance(value, float):
        return number_text(value, 3)
    if isinstance(value, int):
        return number_text(value)
    if isinstance(value, Sequence) and not isinstance(value, str):
        return ", ".join(map(_shown, value)) or _("none")
    return str(value)
