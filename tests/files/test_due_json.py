"""What is foreseen too far off is not known, in JSON as in words."""

from datetime import date, timedelta

from small_kit import item

from kitlog.files.due_json import due_json
from kitlog.kit.due import Due, DueState
from kitlog.kit.foresight import FORESEEN_DAYS, RunOut
from kitlog.kit.service import Grounds
from kitlog.wording.due_sentence import likely_text

TODAY = date(2026, 5, 8)
LAST = TODAY + timedelta(days=FORESEEN_DAYS)
FAR = LAST + timedelta(days=1)


def test_what_follows_from_it_follows_from_the_calendar_alone() -> None:
    far, due_on = date(2046, 5, 1), date(2046, 5, 11)
    left = (far - TODAY).days

    def said(**facts: object) -> tuple[object, object]:
        due = Due(
            "i", "r", "wing.full", Grounds.YES, DueState.IN_DATE, TODAY, runs_out=RunOut(None, far, None), **facts
        )  # type: ignore[arg-type]
        found = due_json(item("i", "wing"), due)
        return found["days_left"], found["book_by"]

    book_by = far - timedelta(days=21)
    assert said(days_left=left, book_by=book_by) == (None, None)
    assert said(days_left=left, book_by=book_by, due_on=due_on) == (left + 10, "2046-04-20")
    assert said(days_left=12, due_on=TODAY + timedelta(days=12)) == (12, None)


def told(runs_out: RunOut) -> tuple[str | None, ...]:
    due = Due("i", "r", "wing.full", Grounds.YES, DueState.IN_DATE, TODAY, runs_out=runs_out)
    said = due_json(item("i", "wing"), due)
    assert (said["predicted_on"] is None) == (likely_text(due) == "")
    return said["predicted_low_on"], said["predicted_on"], said["predicted_high_on"]


def test_a_day_beyond_five_years_is_none() -> None:
    assert told(RunOut(LAST, LAST, FAR)) == (str(LAST), str(LAST), None)
    assert told(RunOut(LAST, FAR, FAR)) == (str(LAST), None, None)
    assert told(RunOut(FAR, date(2186, 1, 1), None)) == (None, None, None)
