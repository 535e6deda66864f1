"""A row's cells into a checked model: the faults of forms and models as problems with row and column."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from kitlog.fault import InputFault
from kitlog.files.csv_columns import Column, Columns
from kitlog.files.csv_problems import Problems, shown
from kitlog.files.csv_rows import Row

M = TypeVar("M", bound=BaseModel)

_LIMITS = {
    "less_than_equal": ("csv.too_large", "le"),
    "less_than": ("csv.too_large", "lt"),
    "greater_than_equal": ("csv.too_small", "ge"),
    "greater_than": ("csv.too_small", "gt"),
    "string_too_long": ("csv.too_long", "max_length"),
    "string_too_short": ("csv.empty_cell", "min_length"),
}
_ASKED_OF = {
    "rule.no_limit": "rule",
    "rule.recommended_after_due": "recommended_months",
    "record.next_before_done": "last_next_due_on",
}
"""Columns for what a model says of several fields at once; a facet's own goes to the facet's first column."""


@dataclass(frozen=True, slots=True)
class Values:
    """What the cells of a row hold, by heading; `sound` is False where some cell could not be read."""

    row: Row
    of: Mapping[str, object]
    sound: bool

    def nested(self, columns: Columns) -> dict[str, Any]:
        """The values by their paths in the model."""
        nested: dict[str, Any] = {}
        for heading, value in self.of.items():
            *parents, last = columns.by_heading[heading].path
            place = nested
            for parent in parents:
                place = place.setdefault(parent, {})
            place[last] = value
        return nested


def read_cells(row: Row, columns: Columns, problems: Problems) -> Values:
    """The values of a row; cells that cannot be read are noted and left out, so that the others are still checked.

    A required cell that is missing is noted as ``csv.empty_cell``.
    """
    before = problems.count
    values = {}
    for heading, cell in row.cells.items():
        form = columns.by_heading[heading].form
        text = cell if form.keeps_blanks else cell.strip()
        if not text or heading in row.unfit:
            continue
        try:
            values[heading] = form.read(text)
        except InputFault as fault:
            problems.add(row.spot, heading, fault.code, **{**fault.facts, "value": shown(cell)})
    for heading in columns.required:
        if not row.cells.get(heading, "").strip():
            problems.add(row.spot, heading, "csv.empty_cell")
    return Values(row, values, problems.count == before and not row.unfit)


def checked(
    model: type[M],
    fields: Mapping[str, Any],
    values: Values,
    columns: Columns,
    problems: Problems,
    under: tuple[str, ...] = (),
) -> M | None:
    """The model, or None with its faults noted; `under` is where its fields lie in the paths of the columns."""
    try:
        return model.model_validate(fields)
    except ValidationError as error:
        for detail in error.errors(include_url=False, include_input=False):
            _note(detail, values, columns.at((*under, *detail["loc"])), columns, problems)
        return None


def _note(detail: ErrorDetails, values: Values, at: Column | None, columns: Columns, problems: Problems) -> None:
    code = detail["type"]
    if code in _ASKED_OF and not values.sound:
        return  # the figure it misses may be the one that could not be read
    column = columns.by_heading.get(_ASKED_OF.get(code, "")) or at
    heading = column.heading if column else ""
    value = shown(values.row.cells.get(heading, ""))
    code, facts = _code_and_facts(code, detail.get("ctx", {}), column)
    problems.add(values.row.spot, heading, code, **{"value": value, **facts})


def _code_and_facts(code: str, facts: Mapping[str, Any], column: Column | None) -> tuple[str, dict[str, object]]:
    """Limits in the unit of the column, with the project's codes in place of the library's."""
    in_unit = column.form.in_unit if column else float
    if code in _LIMITS:
        ours, key = _LIMITS[code]
        return ours, {"limit": in_unit(facts[key]), "inclusive": key not in {"lt", "gt"}, "upper": key in {"lt", "le"}}
    if code == "facet.limits_reversed":
        return code, {**facts, "low": in_unit(facts["low"]), "high": in_unit(facts["high"])}
    return (code, dict(facts)) if "." in code else ("csv.not_valid", {"reason": code})
