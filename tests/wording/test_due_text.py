"""The service list on a terminal: a day to book by is said only where the day itself is."""

from datetime import date, timedelta

from kitlog.kit.due import Due, DueState
from kitlog.kit.foresight import FORESEEN_DAYS, RunOut
from kitlog.kit.service import Grounds
from kitlog.wording.due_text import due_lines

TODAY = date(2026, 5, 8)


def said(likely: date, due_on: date | None = None) -> str:
    first = likely if due_on is None else min(likely, due_on)
    runs_out = RunOut(None, likely, None)
    book_by = first - timedelta(days=21)
    due = Due(
        "i", "r", "wing.full", Grounds.YES, DueState.IN_DATE, TODAY, due_on=due_on, runs_out=runs_out, book_by=book_by
    )
    return " ".join(" ".join(line[51:] for line in due_lines([("Wing A", due)], TODAY, 1)).split())


def test_a_day_to_book_by_that_rests_on_hours_foreseen_too_far_off_is_not_said() -> None:
    near, far = (TODAY + timedelta(days=FORESEEN_DAYS + more) for more in (0, 1))
    assert "book by" in said(near)
    assert "book by" not in said(far)


def test_one_that_rests_on_the_calendar_is() -> None:
    assert "book by 10 Apr 2040" in said(date(2186, 1, 1), due_on=date(2040, 5, 1)).replace("\u00a0", " ")
