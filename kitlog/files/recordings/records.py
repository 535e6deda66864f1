"""The records of an IGC file, line by line: fixes (B), date, pilot and glider (H); all others are left alone."""

import re
from dataclasses import dataclass, field
from datetime import date
from typing import Any

from kitlog.units.days import FIRST_DAY, LAST_DAY

MAX_TEXT = 80
"""Longest text taken from a header."""
FIX_CHARACTERS = 35

_FIX = re.compile(
    r"B(?:[01]\d|2[0-3])[0-5]\d[0-5]\d\d\d[0-5]\d{4}[NS]\d{3}[0-5]\d{4}[EW][AV](?:-\d{4}|\d{5}){2}", re.ASCII
)
_DATE = re.compile(r"H.DTE(?:DATE)?[ :]*(\d\d)(\d\d)(\d\d)(?!\d)", re.ASCII | re.IGNORECASE)
_CENTURY_TURNS = 70
"""Years of two digits from here on are of the 20th century."""
_MARKS = {b"\xff\xfe": "utf-16", b"\xfe\xff": "utf-16", b"\xef\xbb\xbf": "utf-8-sig"}


@dataclass(slots=True)
class Records:
    """Columns of the fix records that can be read, in the order of the file, and what the header says.

    Attributes:
        texts: the first 35 characters of each record, all that says where and when.
        lat_deg, lon_deg, validity ("A" or "V"), pressure_m, gnss_m: as written, 0 where a height is not recorded.
        days: dates by the number of fixes before them; day: the first, None if there is none.
        no_day: a date of the header that is none (day 99), as written; empty if there is none such.
        pilot, glider: texts of the header; broken: fix records that cannot be read.
    """

    texts: list[str] = field(default_factory=list)
    lat_deg: list[float] = field(default_factory=list)
    lon_deg: list[float] = field(default_factory=list)
    validity: list[str] = field(default_factory=list)
    pressure_m: list[int] = field(default_factory=list)
    gnss_m: list[int] = field(default_factory=list)
    days: dict[int, date] = field(default_factory=dict)
    no_day: str = ""
    pilot: str = ""
    glider: str = ""
    broken: int = 0

    @property
    def day(self) -> date | None:
        """The date that stands first."""
        return self.days[min(self.days)] if self.days else None


def clock_s(text: str) -> int:
    """Seconds since midnight UTC of a fix record."""
    return int(text[1:3]) * 3_600 + int(text[3:5]) * 60 + int(text[5:7])


def records_of(data: bytes) -> Records:
    """Read all lines of a file, whatever they are."""
    from aerofiles.igc.reader import LowLevelReader

    records = Records()
    latitude, longitude = LowLevelReader.decode_latitude, LowLevelReader.decode_longitude
    for line in _text(data).replace("\r", "\n").split("\n"):
        if line[:1] == "B":
            _add_fix(records, line, latitude, longitude)
        elif line[:1] == "H":
            _add_header(records, line, LowLevelReader.decode_H_record)
    return records


def _text(data: bytes) -> str:
    """The text: UTF-8, else Latin-1, as older recorders write it."""
    encoding = next((name for mark, name in _MARKS.items() if data.startswith(mark)), "utf-8")
    try:
        return data.decode(encoding)
    except UnicodeDecodeError:
        return data.decode("latin-1")


def _add_fix(records: Records, line: str, latitude: Any, longitude: Any) -> None:
    """Take a fix, or count it as broken; the form is checked first, because the library is lenient.

    The library's reading of whole records is not used: most of its time goes into the time of day, which
    is reckoned in seconds here.
    """
    try:
        place = (latitude(line[7:15]), longitude(line[15:24])) if _FIX.match(line) else None
    except ValueError:
        place = None
    if place is None:
        records.broken += 1
        return
    records.texts.append(line[:FIX_CHARACTERS])
    records.lat_deg.append(place[0])
    records.lon_deg.append(place[1])
    records.validity.append(line[24])
    records.pressure_m.append(int(line[25:30]))
    records.gnss_m.append(int(line[30:35]))


def _add_header(records: Records, line: str, decode: Any) -> None:
    kind = line[2:5].upper()
    if kind == "DTE":
        _add_day(records, line)
    elif kind == "PLT" and not records.pilot:
        records.pilot = _header(line, decode, "pilot")
    elif kind == "GTY" and not records.glider:
        records.glider = _header(line, decode, "glider_model")


def _add_day(records: Records, line: str) -> None:
    day = _day(line)
    if day is not None:
        records.days.setdefault(len(records.texts), day)
    elif not records.no_day and any(letter.isdigit() for letter in line):
        records.no_day = "".join(letter for letter in line[:MAX_TEXT] if letter.isprintable()).strip()


def _day(line: str) -> date | None:
    """The date of a header in its old form (HFDTE160701) or its new one (HFDTEDATE:160701,01); None if it is none."""
    match = _DATE.match(line)
    if match is None:
        return None
    day, month, year = map(int, match.groups())
    try:
        found = date(year + (1900 if year >= _CENTURY_TURNS else 2000), month, day)
    except ValueError:
        return None
    return found if FIRST_DAY <= found <= LAST_DAY else None


def _header(line: str, decode: Any, key: str) -> str:
    value = decode(line).get(key) or ""
    return "".join(letter for letter in value if letter.isprintable())[:MAX_TEXT].strip()
