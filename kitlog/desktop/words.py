"""Words of the window that belong to no finding: how near a day is, counts, when it was saved."""

from datetime import date, datetime

from kitlog.budget.result import State
from kitlog.wording.figures import MONTHS, NO_BREAK, clock_text, day_text, days_text
from kitlog.wording.translate import N_, _, ngettext

WEEKDAYS = (N_("Mon"), N_("Tue"), N_("Wed"), N_("Thu"), N_("Fri"), N_("Sat"), N_("Sun"))


def saved_text(now: datetime) -> str:
    """When it was last saved."""
    return _("Saved {time}").format(time=clock_text(now))


def weekday_text(day: date) -> str:
    """A day with the day of the week."""
    return f"{_(WEEKDAYS[day.weekday()])} {day_text(day)}"


def outing_days_text(first: date, last: date) -> str:
    """The days of an outing."""
    return weekday_text(first) if first == last else days_text(first, last)


def near_text(first: date, last: date, today: date) -> str:
    """How near an outing is: today, tomorrow, in some days, some days ago."""
    days = (first - today).days
    if first <= today <= last:
        return _("today")
    if days == 1:
        return _("tomorrow")
    if days > 1:
        return ngettext("in {n} day", "in {n} days", days).format(n=days)
    past = (today - last).days
    return ngettext("{n} day ago", "{n} days ago", past).format(n=past)


def count_text(count: int, state: State) -> str:
    """A number and the word of a state."""
    return f"{count} {_(state.value)}"


def month_text(day: date) -> str:
    """A month with its year."""
    return f"{_(MONTHS[day.month - 1])}{NO_BREAK}{day.year}"
