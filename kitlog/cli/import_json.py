"""The preview of an import as JSON: columns, counts, what was decided, what is open, cell by cell."""

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from kitlog.wording.import_text import remark_text

if TYPE_CHECKING:
    from kitlog.files.csv_problems import CellProblem
    from kitlog.files.table.doubt import Doubt
    from kitlog.workbench.kit_preview import KitPreview


def counts_of(preview: "KitPreview") -> dict[str, int]:
    """What an import brings, in figures."""
    return {
        "new": len(preview.new),
        "changed": len(preview.changed),
        "unchanged": preview.unchanged,
        "skipped": preview.skipped,
        "rules": len(preview.rules),
        "records": sum(record.struck_at is None for record in preview.records),
    }


def preview_json(preview: "KitPreview", *, written: bool) -> dict[str, object]:
    """All that the preview says."""
    return {
        "written": written,
        **counts_of(preview),
        "sheets": _sheets(preview),
        "columns": list(_columns(preview)),
        "remarks": [
            {"code": remark.code, **remark.facts, "text": remark_text(remark.code, remark.facts)}
            for remark in preview.remarks
        ],
        "doubts": [_doubt(doubt) for doubt in preview.doubts],
        "left_open": [_doubt(doubt) for doubt in preview.emptied] + [_problem(one) for one in preview.dropped],
        "problems": [_problem(one) for one in preview.problems],
        "meets": [{"row": one.row, "item": one.item.name, "id": one.item.id, "sure": one.sure} for one in preview.met],
        "changes": [
            {
                "row": preview.rows.get(one.after.id),
                "item": one.before.name,
                "fields": _differences(one.before, one.after),
            }
            for one in preview.changed
        ],
        "twins": [list(twin) for twin in preview.twins],
        "implausible": [
            {"item": item.name, "row": preview.rows.get(item.id), "mass_g": item.mass_g, "usual_g": list(band)}
            for item, band in preview.implausible
        ],
    }


def _sheets(preview: "KitPreview") -> dict[str, object]:
    """The sheet of a workbook that was read, and those that were not; nothing where there is but one to read."""
    taken = next((remark.facts for remark in preview.remarks if remark.code == "table.sheet_taken"), None)
    return {} if taken is None else {"read": taken["sheet"], "not_read": taken["others"], "hidden": taken["hidden"]}


def _columns(preview: "KitPreview") -> Iterator[dict[str, object]]:
    for column in preview.columns:
        unit = column.meaning.unit if column.meaning else ""
        yield {
            "column": column.letters,
            "heading": column.heading,
            "field": None if column.meaning is None else column.target,
            "unit": unit,
            "how": column.how,
            "filled": column.filled,
        }


def _doubt(doubt: "Doubt") -> dict[str, object]:
    return {
        "row": doubt.spot.row,
        "heading": doubt.heading,
        "text": doubt.text,
        "question": doubt.question.value,
        "readings": dict(doubt.readings),
    }


def _problem(problem: "CellProblem") -> dict[str, object]:
    value = problem.facts.get("value", "")
    return {"row": problem.row, "heading": problem.column, "text": value, "code": problem.code}


def _differences(before: object, after: object) -> list[str]:
    fields: Mapping[str, object] = getattr(type(before), "model_fields", {})
    return [name for name in fields if getattr(before, name) != getattr(after, name)]
