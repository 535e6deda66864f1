"""A judged service rule as JSON."""

from typing import Any

from kitlog.kit.due import Due
from kitlog.kit.item import Item
from kitlog.kit.off_season import Proposal
from kitlog.kit.serviced import ServicedItem
from kitlog.wording.rules import rule_text


def due_json(item: Item | ServicedItem, due: Due, off_season: Proposal | None = None) -> dict[str, Any]:
    """One rule of one item on a day; days as ``YYYY-MM-DD``, what is not known as None.

    Args:
        item: whose rule.
        due: the rule judged.
        off_season: a month before the season into which it could be moved.
    """
    runs = due.runs_out
    return {
        "item": item.name,
        "item_id": item.id,
        "rule": due.rule,
        "rule_label": rule_text(due.rule),
        "due_on": _day(due.due_on),
        "recommended_on": _day(due.recommended_on),
        "hours_left": due.hours_left,
        "launches_left": due.launches_left,
        "use_sure": due.use_sure,
        "predicted_on": _day(due.predicted_on),
        "predicted_low_on": _day(runs.early if runs else None),
        "predicted_high_on": _day(runs.late if runs else None),
        "hours_foreseen": due.hours_then,
        "foreseen": due.foreseen,
        "state": due.state.value,
        "days_left": due.days_left,
        "book_by": _day(due.book_by),
        "grounds": due.grounds.value,
        "last_done_on": _day(due.last.done_on if due.last else None),
        "failed": due.failed,
        "event": due.event.kind if due.event else None,
        "event_on": _day(due.event.on if due.event else None),
        "off_season": None if off_season is None else _moved(off_season),
    }


def _moved(proposal: Proposal) -> dict[str, Any]:
    return {"month": f"{proposal.in_month:%Y-%m}", "costs_months": proposal.costs_months}


def _day(day: object) -> str | None:
    return None if day is None else str(day)
