"""Files and folders of recordings, good and broken, as one batch."""

import os
import random
from datetime import date, timedelta
from pathlib import Path

import pytest
from recordings import Day, flight, utc

from kitlog.files.recordings import read_batch as module
from kitlog.files.recordings.read_batch import read_batch
from kitlog.kit.recordings.outcome import Outcome, Status
from kitlog.kit.recordings.sieve import Logged
from kitlog.wording.recording_text import reason_text

MORNING = utc("2026-04-05T09:00")


def igc(days: int = 0, *, date_line: str | None = None) -> bytes:
    begins = MORNING + timedelta(days=days)
    return flight(Day(begins).stand(200), 12).stand(200).igc(every=4, date_line=date_line)


def put(folder: Path, name: str, data: bytes) -> Path:
    path = folder / name
    path.write_bytes(data)
    return path


def told(found: list[Outcome]) -> list[tuple[str, str, list[str]]]:
    for one in found:
        for reason in one.reasons:
            assert "recording." not in reason_text(reason).line
    return [(Path(one.file).name, one.status.value, [reason.code for reason in one.reasons]) for one in found]


def test_one_outcome_a_file_and_the_broken_do_not_stop_the_rest(tmp_path: Path) -> None:
    put(tmp_path, "1.igc", igc())
    put(tmp_path, "2.igc", b"")
    put(tmp_path, "3.igc", b"\x00\xff" * 500)
    put(tmp_path, "4.igc", igc(date_line=""))
    put(tmp_path, "5.igc", igc(1))
    put(tmp_path, "6.igc", igc())
    put(tmp_path, "7.igc", Day(MORNING).stand(600).igc())
    (tmp_path / "8.igc").symlink_to(tmp_path / "nowhere")
    os.mkfifo(tmp_path / "9.igc")
    assert told(list(read_batch([tmp_path, tmp_path / "gone.igc"]))) == [
        ("1.igc", "proposed", []),
        ("2.igc", "refused", ["recording.not_igc"]),
        ("3.igc", "refused", ["recording.not_igc"]),
        ("4.igc", "refused", ["recording.no_date"]),
        ("5.igc", "proposed", []),
        ("6.igc", "duplicate", ["recording.same_content"]),
        ("7.igc", "refused", ["recording.no_flight"]),
        ("8.igc", "refused", ["recording.cannot_read"]),
        ("9.igc", "refused", ["recording.not_a_file"]),
        ("gone.igc", "refused", ["recording.cannot_read"]),
    ]


def test_a_missing_date_is_the_day_given(tmp_path: Path) -> None:
    path = put(tmp_path, "a.igc", igc(date_line=""))
    (one,) = read_batch([path], local_day=date(2026, 4, 5))
    assert (one.status, one.local_day, one.day_given) == (Status.PROPOSED, date(2026, 4, 5), True)
    assert one.flight is not None
    assert abs((one.flight.takeoff_at - MORNING).total_seconds() - 200) < 10


def test_what_is_in_the_log_is_a_duplicate(tmp_path: Path) -> None:
    path = put(tmp_path, "a.igc", igc())
    (first,) = read_batch([path])
    assert told(list(read_batch([path], logged=[Logged("f", "5 April", (first.content,))]))) == [
        ("a.igc", "duplicate", ["recording.same_content"])
    ]


def test_too_large_says_how_large(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "MAX_BYTES", 1_000)
    (one,) = read_batch([put(tmp_path, "a.igc", b"B" * 5_000)])
    assert (one.reasons[0].code, one.reasons[0].facts) == ("recording.too_large", {"bytes": 5_000, "limit": 1_000})


def test_progress_is_told_before_the_first_and_after_each(tmp_path: Path) -> None:
    for n in range(3):
        put(tmp_path, f"{n}.igc", igc(n))
    steps: list[tuple[int, int]] = []
    list(read_batch([tmp_path], progress=lambda done, of: steps.append((done, of))))
    assert steps == [(0, 3), (1, 3), (2, 3), (3, 3)]


def test_cancelled_between_two_files_what_came_before_is_good(tmp_path: Path) -> None:
    for n in range(4):
        put(tmp_path, f"{n}.igc", igc(n))
    found: list[Outcome] = []
    for one in read_batch([tmp_path], cancelled=lambda: len(found) == 2):
        found.append(one)  # noqa: PERF402  # what is cancelled depends on it
    assert [name for name, *_ in told(found)] == ["0.igc", "1.igc"]


def test_cancelled_while_folders_are_searched_nothing_is_read(tmp_path: Path) -> None:
    put(tmp_path, "a.igc", igc())
    assert list(read_batch([tmp_path], cancelled=lambda: True)) == []


@pytest.mark.parametrize("seed", range(20))
def test_damaged_files_are_outcomes(tmp_path: Path, seed: int) -> None:
    chance = random.Random(seed)
    whole = igc()
    for n in range(6):
        data = bytearray(whole)
        for _ in range(chance.choice([1, 30, 300])):
            where = chance.randrange(len(data))
            data[where : where + chance.choice([0, 1, 9])] = chance.randbytes(chance.choice([1, 3]))
        put(tmp_path, f"{n}.igc", bytes(data[: chance.randrange(len(data))]))
    found = list(read_batch([tmp_path]))
    assert len(found) == 6
    assert all(one.reasons or one.status is Status.PROPOSED for one in found)
    told(found)
