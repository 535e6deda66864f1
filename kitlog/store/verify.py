"""Is a data file sound? Everything that opening asks, and every row read into its model."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from kitlog.fault import SystemFault
from kitlog.store import connection, creation, gate
from kitlog.store.connection import engine_on
from kitlog.store.faults import told
from kitlog.store.marks import SCHEMA
from kitlog.store.reader import Reader
from kitlog.store.rows import Rows

_READINGS: tuple[Callable[[Reader], object], ...] = (
    Reader.pilots,
    Reader.items,
    Reader.flights,
    Reader.rules,
    Reader.model_rules,
    Reader.records,
    Reader.events,
    Reader.reminders,
    Reader.outings,
    Reader.ticks,
    Reader.preferences,
)


@dataclass(frozen=True, slots=True)
class Problem:
    """What is wrong with a file: a fault's code and facts, as `kitlog.wording` turns them into sentences."""

    code: str
    facts: Mapping[str, object] = field(default_factory=dict)


def verify(path: Path) -> tuple[Problem, ...]:
    """What is wrong with the data file or copy at `path`; nothing if it is sound.

    The file is not changed, but that SQLite takes back what a killed program left half-written. An older schema is no
    problem; its rows are read once it has been brought up to date.
    """
    try:
        place = creation.resolved(path)
        gate.refuse_place(place, to_write=False)
        with told(place, "data_file.damaged"):
            return _inside(place)
    except SystemFault as fault:
        return (Problem(fault.code, fault.facts),)


def _inside(path: Path) -> tuple[Problem, ...]:
    raw = connection.connect(path)
    try:
        if gate.refuse_unfit(raw, path) < SCHEMA:
            return ()
        with engine_on(raw).connect() as plain:
            return _unreadable(Reader(Rows(plain, path)))
    finally:
        raw.close()


def _unreadable(reader: Reader) -> tuple[Problem, ...]:
    """One problem for each kind of thing that cannot be read."""
    problems = []
    for read in _READINGS:
        try:
            read(reader)
        except SystemFault as fault:
            problems.append(Problem(fault.code, fault.facts))
    return tuple(problems)
