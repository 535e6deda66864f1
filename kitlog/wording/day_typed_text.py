"""Sentences about a day that was typed and cannot be taken."""

from kitlog.units.days import FIRST_DAY, LAST_DAY
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper


def unread_day_text(name: str, typed: str) -> str:
    """What was typed where, that it is no day, and how one may be written."""
    said = _("“{typed}” cannot be read as a day from {first} to {last}. Write it as 20 Jun 2026 or 2026-06-20.").format(
        typed=typed, first=FIRST_DAY.year, last=LAST_DAY.year
    )
    return f"{first_upper(name)}: {said}" if name else said
