"""A judged service rule as JSON."""

from typing import Any

from kitlog.kit.due import Due
from kitlog.kit.item import Item
from kitlog.wording.rules import rule_text


def due_json(item: Item, due: Due) -> dict[str, Any]:
    """One rule of one item on a day; days as ``YYYY-MM-DD``, what is not known as None."""
    return {
        "item": item.name,
        "item_id": item.id,
        "rule": due.rule,
        "rule_label": rule_text(due.rule),
        "due_on": _day(due.due_on),
        "recommended_on": _day(due.recommended_on),
        "hours_left": due.hours_left,
        "launches_left": due.launches_left,
        "predicted_on": _day(due.predicted_on),
        "state": due.state.value,
        "days_left": due.days_left,
        "book_by": _day(due.book_by),
        "grounds": due.grounds.value,
    }


def _day(day: object) -> str | None:
    return None if day is None else str(day)
