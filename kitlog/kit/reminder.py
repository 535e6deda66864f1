"""What a calendar was told last, so that the next file changes its entries instead of doubling them (RFC 5545)."""

from typing import Annotated

from pydantic import Field

from kitlog.kit.paper import ContentHash
from kitlog.units.days import Day
from kitlog.units.model import Frozen
from kitlog.units.text import Name


class Reminder(Frozen):
    """One entry as it went into the last calendar file.

    Attributes:
        id: the entry's UID, for good.
        sequence: raised by one each time that what it says changes.
        on: its day; content: SHA-256 of what it said.
        cancelled: it was taken back.
    """

    id: Name
    sequence: Annotated[int, Field(ge=0, le=2_000_000_000)] = 0
    on: Day
    content: ContentHash
    cancelled: bool = False
