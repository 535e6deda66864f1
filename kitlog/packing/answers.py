"""Answers to checks: which stand, which have expired; and the questions that only the pilot can answer."""

from collections.abc import Iterable
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from kitlog.outing.conditions import OPEN_COUNTS_AS_YES, Answer3
from kitlog.outing.library import Library
from kitlog.outing.outing import Answer, Outing
from kitlog.packing.assessment import Asked, Question, Truth
from kitlog.packing.chosen_set import SetChoice

ANSWER_HOLDS = timedelta(hours=6)
"""Answers about the day (weather, pilot, notices) are looked at again after this (common practice, no source)."""

REFUSALS = frozenset({"no", "not done", "none"})
"""Answers that say that a check is not met."""


_OF_THE_DAY = frozenset({"morning", "launch"})
"""Moments whose answers expire; what was planned, packed or charged stays so."""


def newest(outing: Outing, check: str, now: datetime) -> Answer | None:
    """The newest answer to a check that was given up to now; a blank one takes back what was said before."""
    given = [answer for answer in outing.answers if answer.check == check and answer.at <= now]
    last = max(given, key=lambda answer: answer.at, default=None)
    return last if last is not None and last.value.strip() else None


def expired(answer: Answer, now: datetime) -> bool:
    """Whether an answer about the day is older than 6 hours."""
    return now - answer.at > ANSWER_HOLDS


def refuses(answer: Answer) -> bool:
    """Whether an answer says no."""
    return answer.value.strip().casefold() in REFUSALS


def questions(
    outing: Outing, library: Library, truths: Iterable[Truth], chosen: SetChoice, now: datetime
) -> tuple[Question, ...]:
    """The day's questions, answered or not; open conditions; open choices of the set."""
    asked = [_of_day(check.id, check.label or check.text, outing, now) for check in library.checks if check.question]
    asked += [
        Question(f"condition.{truth.condition.value}", truth.condition.value, "condition")
        for truth in truths
        if truth.answer is Answer3.OPEN and (truth.condition in OPEN_COUNTS_AS_YES or truth.by == "derived")
    ]
    asked += [Question(f"set.{kind.value}", kind.value, "set") for kind in chosen.open]
    return tuple(asked)


def _of_day(check: str, label: str, outing: Outing, now: datetime) -> Question:
    answer = newest(outing, check, now)
    if answer is None:
        return Question(check, label, "day")
    return Question(check, label, "day", answer.value, answer.at, expired(answer, now))


def check_answer(asked: Asked, outing: Outing, now: datetime, library: Library) -> Answer | None:
    """The answer to a need's check that still stands.

    One about the morning or the launch expires like those of the day; one about the launch is void after midnight too.
    """
    answer = newest(outing, asked.need.check, now) if asked.need.check else None
    if answer is None:
        return None
    moment = next((check.moment for check in library.checks if check.id == answer.check), "")
    if moment in _OF_THE_DAY and expired(answer, now):
        return None
    return None if moment == "launch" and _before_midnight(answer, outing, now) else answer


def _before_midnight(answer: Answer, outing: Outing, now: datetime) -> bool:
    """Whether midnight at the site lies between the answer and now."""
    zone = ZoneInfo(outing.time_zone) if outing.time_zone else now.tzinfo
    return answer.at.astimezone(zone).date() != now.astimezone(zone).date()
