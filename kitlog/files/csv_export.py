"""What both exports share: cells of models, the bytes of a file, what the columns cannot hold."""

import csv
import io
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from kitlog.files.csv_columns import Columns
from kitlog.kit.item import Item


@dataclass(frozen=True, slots=True)
class Lost:
    """A figure that the file does not hold.

    Attributes:
        item: name of the item.
        field: its place in the model (``battery.place``, ``records.who``).
        rule: name of the service rule, where it is one rule's.
    """

    item: str
    field: str
    rule: str = ""


@dataclass(frozen=True, slots=True)
class Export:
    """A file as bytes (UTF-8 without BOM, CRLF), and what could not be written into it, each thing once."""

    data: bytes
    lost: tuple[Lost, ...] = ()


def written(columns: Columns, rows: Iterable[Mapping[str, str]]) -> bytes:
    """Rows by heading as the bytes of a file: all headings, always in the same order."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(columns.headings)
    writer.writerows([row.get(heading, "") for heading in columns.headings] for row in rows)
    return text.getvalue().encode("utf-8")


def cells_of(model: object, columns: Columns, under: tuple[str, ...] = ()) -> dict[str, str]:
    """The cells of a model, by heading; `under` is where its fields lie in the paths of the columns."""
    return {heading: write(value) for heading, write, value in _filled(model, columns, under)}


def unwritten(model: object, columns: Columns, under: tuple[str, ...] = ()) -> Iterator[str]:
    """Headings of fields that have a value which their column cannot hold."""
    return (heading for heading, write, value in _filled(model, columns, under) if not write(value))


def _filled(model: object, columns: Columns, under: tuple[str, ...]) -> Iterator[tuple[str, Any, Any]]:
    for column in columns.all:
        if column.path[: len(under)] == under:
            value = _value(model, column.path[len(under) :])
            if not blank(value):
                yield column.heading, column.form.write, value


def blank(value: object) -> bool:
    """Whether a field holds nothing: none, no text, no parts."""
    return value is None or value in ("", ())


def _value(model: object, path: Sequence[str]) -> Any:
    value: Any = model
    for step in path:
        value = getattr(value, step, None)
    return value


def unique_names(items: Iterable[Item]) -> dict[str, str]:
    """Names by id of the items that a cell can name: those that share their name with no other."""
    items = tuple(items)
    times = Counter(item.name for item in items)
    return {item.id: item.name for item in items if times[item.name] == 1}
