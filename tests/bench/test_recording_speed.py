"""Reading and judging recordings against what aerofiles alone needs to read them, in one run.

Processor time, the least of several turns in turn: other work on the machine makes single figures larger, never smaller.
"""

import io
import time
from collections.abc import Callable
from datetime import timedelta

import pytest
from aerofiles.igc import Reader
from recordings import Day, flight, utc

from kitlog.files.recordings.read_recording import read_recording
from kitlog.kit.recordings.found import FlightFound
from kitlog.kit.recordings.judge import judge

pytestmark = pytest.mark.bench

FILES = 50
MOST_TIMES = 1.5
TURNS, MOST_TURNS = 3, 15


def _files(every: int) -> list[bytes]:
    begins = utc("2026-04-05T09:00")
    days = (Day(begins + timedelta(days=n)).stand(300) for n in range(FILES))
    return [flight(day, 20 + n % 20).stand(200).noisy(2.0, n).igc(every=every) for n, day in enumerate(days)]


def _seconds(work: Callable[[], object]) -> float:
    start = time.process_time()
    work()
    return time.process_time() - start


@pytest.mark.parametrize("every", [1, 5])
def test_fifty_recordings_take_at_most_half_as_long_again_as_aerofiles(every: int) -> None:
    files = _files(every)

    def with_aerofiles() -> int:
        return sum(len(Reader().read(io.StringIO(data.decode()))["fix_records"][1]) for data in files)

    def with_kitlog() -> int:
        return sum(isinstance(judge(read_recording(data, "x").fixes), FlightFound) for data in files)

    assert with_kitlog() == FILES
    fixes = with_aerofiles()
    own_s = bare_s = float("inf")
    for turn in range(1, MOST_TURNS + 1):
        own_s, bare_s = min(own_s, _seconds(with_kitlog)), min(bare_s, _seconds(with_aerofiles))
        if turn >= TURNS and own_s <= MOST_TIMES * bare_s:
            break
    figures = f"{own_s * 1e6 / fixes:.1f} us a fix, aerofiles {bare_s * 1e6 / fixes:.1f} us, {own_s / bare_s:.2f} times"
    print(f"{FILES} recordings, {fixes} fixes, one in {every} s: {figures}")  # noqa: T201  # looked at, beside the assert
    assert own_s <= MOST_TIMES * bare_s
