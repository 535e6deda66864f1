"""Figures with their units: thin space in thousands, true minus sign, no break between figure and unit."""

from datetime import date, datetime

from kitlog.wording.translate import N_, _

THIN = "\u2009"
NO_BREAK = "\u00a0"
MINUS = "\u2212"

MONTHS = (
    N_("Jan"),
    N_("Feb"),
    N_("Mar"),
    N_("Apr"),
    N_("May"),
    N_("Jun"),
    N_("Jul"),
    N_("Aug"),
    N_("Sep"),
    N_("Oct"),
    N_("Nov"),
    N_("Dec"),
)


def number_text(number: float, decimals: int = 0) -> str:
    """A number with a thin space between thousands and a true minus sign."""
    text = f"{abs(number):,.{decimals}f}".replace(",", THIN)
    negative = number < 0 and any(char in "123456789" for char in text)
    return f"{MINUS}{text}" if negative else text


def with_unit(number: float, unit: str, decimals: int = 0) -> str:
    """A number and its unit, held together."""
    return f"{number_text(number, decimals)}{NO_BREAK}{unit}"


def mass_text(mass_g: float | None) -> str:
    """A mass in grams, or that it is not known."""
    return _("not known") if mass_g is None else with_unit(mass_g, "g")


def kg_text(mass_g: float | None, decimals: int = 1) -> str:
    """A mass given in grams, shown in kilograms, or that it is not known."""
    return _("not known") if mass_g is None else with_unit(mass_g / 1000, "kg", decimals)


def percent_text(share_pct: float | None, decimals: int = 0) -> str:
    """A share in per cent, or that it is not known."""
    return _("not known") if share_pct is None else with_unit(share_pct, "%", decimals)


def hours_text(hours: float) -> str:
    """A duration as h:mm, rounded to the minute."""
    minutes = round(abs(hours) * 60)
    sign = MINUS if hours < 0 and minutes else ""
    return f"{sign}{minutes // 60}:{minutes % 60:02d}{NO_BREAK}h"


def span_text(hours: float) -> str:
    """A short span: minutes under two hours, else h:mm."""
    minutes = round(abs(hours) * 60)
    return with_unit(minutes, "min") if minutes < 120 else hours_text(abs(hours))


def day_text(day: date, *, year: bool = True) -> str:
    """A day with its month as a word."""
    text = f"{day.day}{NO_BREAK}{_(MONTHS[day.month - 1])}"
    return f"{text}{NO_BREAK}{day.year}" if year else text


def days_text(first: date, last: date) -> str:
    """One day, or from the first to the last."""
    if first == last:
        return day_text(first)
    return _("{first} to {last}").format(first=day_text(first, year=first.year != last.year), last=day_text(last))


def clock_text(at: datetime) -> str:
    """A time of day on a 24 h clock."""
    return f"{at.hour:02d}:{at.minute:02d}"


RAISED = str.maketrans("0123456789", "\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079")
"""Digits above the line."""


def nights_text(nights: int) -> str:
    """What stands behind a time of day that lies on a later day: how many nights after; empty for the same day."""
    return f"\u207a{str(nights).translate(RAISED)}" if nights else ""


def moment_text(at: datetime) -> str:
    """The time of day of something that was done, on the clock of this machine; the data file keeps UTC."""
    return clock_text(at.astimezone())


def litres_text(volume_ml: float) -> str:
    """A volume given in ml, shown in litres."""
    decimals = 1 if round(volume_ml) % 100 == 0 else 2
    return with_unit(volume_ml / 1000, "l", decimals)
