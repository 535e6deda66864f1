"""Importing recordings (search, reading, judging, duplicates) against what aerofiles alone needs to read them, in one run.

Processor time, the least of several turns in turn: other work on the machine makes single figures larger, never smaller.
"""

import io
import time
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest
from aerofiles.igc import Reader
from recordings import Day, flight, utc

from kitlog.files.recordings.read_batch import read_batch
from kitlog.kit.recordings.outcome import Status
from kitlog.kit.recordings.sieve import Logged

pytestmark = pytest.mark.bench

FILES = 20
LOGGED = 60  # three for each recording
MOST_TIMES = 1.5
TURNS, MOST_TURNS = 3, 15
BEGINS = utc("2026-04-05T09:00")


def _put(folder: Path, every: int) -> list[Path]:
    """Recordings of flights of 20 to 40 minutes, one a day, and one more of the first flight by another instrument."""
    days = (flight(Day(BEGINS + timedelta(days=n)).stand(300), 20 + n).stand(200).noisy(2.0, n) for n in range(FILES))
    paths = [folder / f"{n}.igc" for n in range(FILES + 1)]
    for n, day in enumerate(days):
        paths[n].write_bytes(day.igc(every=every))
    paths[-1].write_bytes(flight(Day(BEGINS).stand(300), 20).stand(200).noisy(2.0, FILES).igc(every=every))
    return paths


def _log() -> list[Logged]:
    """Flights of the years before, and many of the same days."""
    starts = [BEGINS + timedelta(hours=4 + 3 * (n % 3), days=FILES - n // 3) for n in range(LOGGED)]
    return [Logged(str(n), str(n), (f"{n:064x}",), ((at, at + timedelta(hours=2)),)) for n, at in enumerate(starts)]


def _seconds(work: Callable[[], object]) -> float:
    start = time.process_time()
    work()
    return time.process_time() - start


@pytest.mark.parametrize("every", [1, 5])
def test_importing_takes_at_most_half_as_long_again_as_aerofiles_alone(tmp_path: Path, every: int) -> None:
    paths = _put(tmp_path, every)
    log = _log()

    def with_aerofiles() -> int:
        return sum(len(Reader().read(io.StringIO(path.read_text("ascii")))["fix_records"][1]) for path in paths)

    def with_kitlog() -> list[Status]:
        return [one.status for one in read_batch([tmp_path], logged=log)]

    assert sorted(with_kitlog()) == [Status.DUPLICATE, *[Status.PROPOSED] * FILES]
    fixes = with_aerofiles()
    own_s = bare_s = float("inf")
    for turn in range(1, MOST_TURNS + 1):
        own_s, bare_s = min(own_s, _seconds(with_kitlog)), min(bare_s, _seconds(with_aerofiles))
        if turn >= TURNS and own_s <= MOST_TIMES * bare_s:
            break
    figures = f"{own_s * 1e6 / fixes:.1f} us a fix, aerofiles {bare_s * 1e6 / fixes:.1f} us, {own_s / bare_s:.2f} times"
    print(f"{len(paths)} recordings, {fixes} fixes, one in {every} s: {figures}")  # noqa: T201  # looked at, beside the assert
    assert own_s <= MOST_TIMES * bare_s
