"""What a recording holds: fixes in the order of time, and what its header says."""

from dataclasses import dataclass
from datetime import UTC, date, datetime
from typing import NamedTuple


class Fix(NamedTuple):
    """One position in time; a tuple, because a recording has thousands.

    Attributes:
        at_s: UTC, whole seconds since 1970.
        lat_deg, lon_deg: WGS 84, north and east positive.
        gnss_m: height by satellite, None if the recording has none; pressure_m: height in the standard atmosphere,
            likewise.
        valid: True for an A fix (three dimensions), False for a V fix (two, or no satellites: the place may be
            anything).
    """

    at_s: int
    lat_deg: float
    lon_deg: float
    gnss_m: int | None
    pressure_m: int | None
    valid: bool


@dataclass(frozen=True, slots=True)
class Recording:
    """One file, read.

    Attributes:
        file: its name, for what is said about it.
        fixes: never going back in time; at least one is valid.
        content: SHA-256 over the UTC day and the fix records; the file's name and its headers do not matter.
        day_given: the file has no date and the day was given beside it.
        pilot, glider: texts of the header, empty if it has none.
        broken: fix records that could not be read; out_of_order: fixes left out because their time does not go on from
            those about them.
    """

    file: str
    fixes: tuple[Fix, ...]
    content: str
    day_given: bool = False
    pilot: str = ""
    glider: str = ""
    broken: int = 0
    out_of_order: int = 0

    @property
    def first_at(self) -> datetime:
        """Time of the first fix."""
        return moment(self.fixes[0].at_s)

    @property
    def utc_day(self) -> date:
        """UTC date of the first fix."""
        return self.first_at.date()


def moment(at_s: float) -> datetime:
    """An aware time from seconds since 1970, to the second."""
    return datetime.fromtimestamp(round(at_s), UTC)
