"""Many recordings at once: what a person drags in or names, one outcome a file.

    for outcome in read_batch([Path("card"), Path("one.igc")], logged=flights_in_the_log):
        ...  # an Outcome: proposed (a flight was found), duplicate, or refused with its reason

Files are looked for first (`search`), then read, judged and held against the log and the files before them
(`kitlog.kit.recordings.sieve`), one at a time, as the outcomes are asked for: whoever stops asking stops the reading.
Nothing is written. A file that cannot be read is an outcome like any other, and the next one is read.
"""

import stat
from collections.abc import Callable, Iterable, Iterator
from datetime import date
from pathlib import Path

from kitlog.fault import InputFault
from kitlog.files.recordings.read_recording import MAX_BYTES, read_recording
from kitlog.files.recordings.search import label_of, recordings_among
from kitlog.kit.recordings.fix import Recording
from kitlog.kit.recordings.outcome import Outcome, refused
from kitlog.kit.recordings.sieve import Logged, Sieve

Progress = Callable[[int, int], object]
"""Is told how many files are done, and how many there are in all."""


def read_batch(
    paths: Iterable[Path],
    *,
    logged: Iterable[Logged] = (),
    local_day: date | None = None,
    progress: Progress | None = None,
    cancelled: Callable[[], bool] = lambda: False,
) -> Iterator[Outcome]:
    """Read and judge recordings, in the order given, those of a folder sorted.

    Args:
        paths: files, and folders that are searched for recordings.
        logged: the flights in the log, so that none comes in twice.
        local_day: the day on the clocks of the place, for files without a date; without it these are refused.
        progress: told once before the first file and after each.
        cancelled: asked before each file and while folders are searched; True ends the reading there, and what was
            yielded stays good.
    """
    found: list[Path | InputFault] = []
    for one in recordings_among(paths):
        if cancelled():
            return
        found.append(one)
    sieve = Sieve(logged)
    for done, one in enumerate(found):
        _tell(progress, done, len(found))
        if cancelled():
            return
        yield _outcome(one, sieve, local_day)
    _tell(progress, len(found), len(found))


def _tell(progress: Progress | None, done: int, of: int) -> None:
    if progress is not None:
        progress(done, of)


def _outcome(found: Path | InputFault, sieve: Sieve, local_day: date | None) -> Outcome:
    try:
        return sieve.outcome(_recording(found, local_day))
    except InputFault as fault:
        file = str(fault.facts["file"])
        return refused(file, fault.code, {name: value for name, value in fault.facts.items() if name != "file"})


def _recording(found: Path | InputFault, local_day: date | None) -> Recording:
    if isinstance(found, InputFault):
        raise found
    label = label_of(found)
    return read_recording(_bytes_of(found, label), label, local_day)


def _bytes_of(path: Path, label: str) -> bytes:
    """All of a plain file that is not too large."""
    try:
        about = path.stat()
        if not stat.S_ISREG(about.st_mode):
            raise InputFault("recording.not_a_file", file=label)
        if about.st_size > MAX_BYTES:
            raise InputFault("recording.too_large", file=label, bytes=about.st_size, limit=MAX_BYTES)
        with path.open("rb") as file:
            return file.read(MAX_BYTES + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise InputFault("recording.cannot_read", file=label, reason=reason) from error
