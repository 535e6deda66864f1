"""A judged service rule as JSON."""

from datetime import date, timedelta
from typing import Any

from kitlog.kit.due import Due
from kitlog.kit.foresight import FORESEEN_DAYS
from kitlog.kit.item import Item
from kitlog.kit.off_season import Proposal
from kitlog.kit.serviced import ServicedItem
from kitlog.wording.rules import rule_text


def due_json(item: Item | ServicedItem, due: Due, off_season: Proposal | None = None) -> dict[str, Any]:
    """One rule of one item on a day; days as ``YYYY-MM-DD``, what is not known as None.

    A day foreseen further off than `FORESEEN_DAYS` is not known: the rate of one year says nothing of it.

    Args:
        item: whose rule.
        due: the rule judged.
        off_season: a month before the season into which it could be moved.
    """
    runs, late = due.runs_out, _later(due)
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
        "predicted_on": _near(due.predicted_on, due.on),
        "predicted_low_on": _near(runs.early if runs else None, due.on),
        "predicted_high_on": _near(runs.late if runs else None, due.on),
        "hours_foreseen": due.hours_then,
        "foreseen": due.foreseen,
        "state": due.state.value,
        "days_left": None if due.days_left is None or late is None else due.days_left + late.days,
        "book_by": None if due.book_by is None or late is None else str(due.book_by + late),
        "grounds": due.grounds.value,
        "last_done_on": _day(due.last.done_on if due.last else None),
        "failed": due.failed,
        "event": due.event.kind if due.event else None,
        "event_on": _day(due.event.on if due.event else None),
        "off_season": None if off_season is None else _moved(off_season),
    }


def _moved(proposal: Proposal) -> dict[str, Any]:
    return {"month": f"{proposal.in_month:%Y-%m}", "costs_months": proposal.costs_months}


def _later(due: Due) -> timedelta | None:
    """How much later the day by the calendar is than the first of both, where that one is foreseen too far off.

    None where there is no day by the calendar.
    """
    likely = due.predicted_on
    if likely is None or _near(likely, due.on) is not None or (due.due_on is not None and due.due_on <= likely):
        return timedelta()
    return None if due.due_on is None else due.due_on - likely


def _near(day: date | None, on: date) -> str | None:
    return None if day is None or day > on + timedelta(days=FORESEEN_DAYS) else str(day)


def _day(day: object) -> str | None:
    return None if day is None else str(day)
