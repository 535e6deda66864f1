"""Answers to checks: which stand, which have expired; and the questions that only the pilot can answer."""

from collections.abc import Iterable
from datetime import datetime, timedelta

from kitlog.outing.conditions import OPEN_COUNTS_AS_YES, Answer3
from kitlog.outing.library import Library
from kitlog.outing.outing import Answer, Outing
from kitlog.packing.assessment import Asked, Question, Truth
from kitlog.packing.chosen_set import SetChoice

ANSWER_HOLDS = timedelta(hours=6)
"""Answers about the day (weather, pilot, notices) are looked at again after this (common practice, no source)."""

REFUSALS = frozenset({"no", "not done", "none"})
"""Answers that say that a check is not met."""


def newest(outing: Outing, check: str, now: datetime) -> Answer | None:
    """The newest answer to a check that was given up to now."""
    given = [answer for answer in outing.answers if answer.check == check and answer.at <= now]
    return max(given, key=lambda answer: answer.at, default=None)


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


def check_answer(asked: Asked, outing: Outing, now: datetime) -> Answer | None:
    """The newest answer to a need's check."""
    return newest(outing, asked.need.check, now) if asked.need.check else None
