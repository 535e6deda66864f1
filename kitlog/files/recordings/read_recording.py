"""One IGC file into fixes: whatever is in it, it ends in a recording or in a fault with a sentence."""

import hashlib
from collections.abc import Iterable, Sequence
from datetime import UTC, date, datetime
from itertools import compress

from kitlog.fault import InputFault
from kitlog.files.recordings.clock import DAY_S, among, astray, moments
from kitlog.files.recordings.records import Records, clock_s, records_of
from kitlog.kit.recordings.fix import Fix, Recording
from kitlog.sky.zone import utc_day_of

MAX_BYTES = 16 << 20
"""Greatest file; a day and a night with a fix a second are about 5 MB."""
_FREE_CLOCK_S = 600


def read_recording(data: bytes, file: str, local_day: date | None = None) -> Recording:
    """Read one IGC file (technical specification of the FAI, appendix A).

    Args:
        data: the whole file.
        file: its name, for faults.
        local_day: the day on the clocks of the place, used where the file has no date.

    Raises:
        InputFault: ``recording.too_large``, ``recording.not_igc`` (no fix record at all), ``recording.no_fix`` (none
            that can be used, with ``broken`` and ``invalid``), ``recording.no_date``, ``recording.date_is_none`` (with
            ``date`` as written); with ``file``.
    """
    if len(data) > MAX_BYTES:
        raise InputFault("recording.too_large", file=file, bytes=len(data), limit=MAX_BYTES)
    records = records_of(data)
    if not records.texts and not records.broken:
        raise InputFault("recording.not_igc", file=file)
    if "A" not in records.validity:
        raise InputFault("recording.no_fix", file=file, broken=records.broken, invalid=len(records.texts))
    day = records.day or _given(records, local_day, file)
    return _recording(records, _moments(records, day), file)


def _given(records: Records, local_day: date | None, file: str) -> date:
    """The UTC day of the first A fix that counts, from the day that the pilot names."""
    if local_day is None and records.no_day:
        raise InputFault("recording.date_is_none", file=file, date=records.no_day)
    if local_day is None:
        raise InputFault("recording.no_date", file=file)
    valid = [i for i, letter in enumerate(records.validity) if letter == "A"]
    wrong = astray([clock_s(records.texts[i]) for i in valid], ())
    first = next(i for k, i in enumerate(valid) if k not in wrong)
    return utc_day_of(local_day, clock_s(records.texts[first]), records.lat_deg[first], records.lon_deg[first])


def _moments(records: Records, day: date) -> list[int | None]:
    """When each record was taken; A fixes by themselves, V fixes between them."""
    clock = [clock_s(text) for text in records.texts]
    valid = [i for i, letter in enumerate(records.validity) if letter == "A"]
    later = {k: _midnight(records.days[i]) for k, i in enumerate(valid) if k and i in records.days}
    first_s = _midnight(day) + (DAY_S if records.day and _begins_before_midnight(clock, valid[0]) else 0)
    at: list[int | None] = [None] * len(clock)
    for i, moment in zip(valid, moments([clock[i] for i in valid], first_s, later), strict=True):
        at[i] = moment
    if len(valid) < len(clock):
        _place_v_fixes(at, clock, records.validity)
    return at


def _begins_before_midnight(clock: Sequence[int], first: int) -> bool:
    """Whether V fixes lead over midnight to the first A fix: the date is theirs."""
    return first > 0 and clock[first - 1] > clock[first] and (clock[first] - clock[first - 1]) % DAY_S < _FREE_CLOCK_S


def _place_v_fixes(at: list[int | None], clock: Sequence[int], validity: Sequence[str]) -> None:
    latest: list[int | None] = [None] * len(at)
    after: int | None = None
    for i in range(len(at) - 1, -1, -1):
        after = latest[i] = after if at[i] is None else at[i]
    before: int | None = None
    for i, letter in enumerate(validity):
        if letter == "V":
            at[i] = among(clock[i], before, latest[i])
        before = before if at[i] is None else at[i]


def _midnight(day: date) -> int:
    return int(datetime(day.year, day.month, day.day, tzinfo=UTC).timestamp())


def _recording(records: Records, at: Sequence[int | None], file: str) -> Recording:
    kept = [moment is not None for moment in at]
    valid = [letter == "A" for letter in records.validity]
    gnss, pressure = (_recorded(column, valid) for column in (records.gnss_m, records.pressure_m))
    rows = zip(at, records.lat_deg, records.lon_deg, gnss, pressure, valid, strict=True)
    fixes = tuple(map(Fix._make, compress(rows, kept)))
    return Recording(
        file=file,
        fixes=fixes,
        content=_content(fixes[0], compress(records.texts, kept)),
        day_given=records.day is None,
        pilot=records.pilot,
        glider=records.glider,
        broken=records.broken,
        out_of_order=len(kept) - len(fixes),
    )


def _recorded(heights: Sequence[int], valid: Sequence[bool]) -> Sequence[int | None]:
    """Heights; none at all where every A fix says 0, which is how a recorder without that height writes it."""
    return heights if any(compress(heights, valid)) else [None] * len(heights)


def _content(first: Fix, texts: Iterable[str]) -> str:
    day = str(first.at_s // DAY_S)
    return hashlib.sha256("\n".join([day, *texts]).encode("ascii")).hexdigest()
