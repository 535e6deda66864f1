"""The core of the workbench: one write = one transaction = one undo step; reads are kept until something changes."""

from collections.abc import Callable, Iterable, Mapping
from datetime import datetime
from pathlib import Path
from typing import Any, TypeVar

from kitlog.outing.library import Library
from kitlog.store.aggregates import Stored
from kitlog.store.data_file import DataFile
from kitlog.store.journal import Changes
from kitlog.store.reader import Reader
from kitlog.store.writer import Writer
from kitlog.workbench.change import EVERYTHING, Change, Listener
from kitlog.workbench.undo_list import Done, UndoList, UndoStep

T = TypeVar("T")

_WORDS = {"service_rule": "rule", "service_record": "record"}
"""Kinds whose name outside the store is shorter."""


class Core:
    """Data file, library, clock, undo list and listeners.

    Args:
        data: the open data file.
        library: the starters with the pilot's edits on top.
        clock: the present moment, aware.
        new_id: a fresh id at each call.
        who: the name that ticks carry.
    """

    def __init__(
        self,
        data: DataFile,
        library: Library,
        clock: Callable[[], datetime],
        new_id: Callable[[], str],
        who: str = "",
    ) -> None:
        self.library = library
        self.now = clock
        self.new_id = new_id
        self.who = who
        self._data = data
        self._undo = UndoList()
        self._listeners: list[Listener] = []
        self._moved_listeners: list[Callable[[], object]] = []
        self._kept: dict[str, Any] = {}
        self._kept_version = self._told_version = data.data_version()

    @property
    def path(self) -> Path:
        """The data file."""
        return self._data.path

    def close(self) -> None:
        """Let go of the data file."""
        self._data.close()

    def on_change(self, listener: Listener) -> Callable[[], None]:
        """Call `listener` after each change; the answer takes the listener off again."""
        self._listeners.append(listener)
        return lambda: self._listeners.remove(listener)

    def on_moved(self, listener: Callable[[], object]) -> Callable[[], None]:
        """Call `listener` when a read has met what another process wrote; the answer takes the listener off again.

        What is shown is then half old and half new until `look_again`, which is to be called as soon as nothing is
        being read. A listener is called from any thread, in the midst of the read.
        """
        self._moved_listeners.append(listener)
        return lambda: self._moved_listeners.remove(listener)

    def look_again(self) -> bool:
        """If another process wrote: read anew, forget the undo list, tell everybody. To be called on focus."""
        version = self._data.data_version()
        if version == self._told_version:
            return False
        self._told_version = version
        self._undo.forget()
        self._tell(Change(frozenset({EVERYTHING}), frozenset()))
        return True

    @property
    def undoable(self) -> UndoStep | None:
        """What undo would take back."""
        done = self._undo.last_done
        return done.step if done else None

    @property
    def redoable(self) -> UndoStep | None:
        """What redo would do again."""
        done = self._undo.last_undone
        return done.step if done else None

    def undo(self) -> UndoStep | None:
        """Take the last step back; history stays as a struck-through entry."""
        done = self._undo.last_done
        if done is None:
            return None
        with self._data.writing() as writer:
            writer.revert(done.changes, now=self.now())
        self._undo.moved_back()
        self._changed(done.changes)
        return done.step

    def redo(self) -> UndoStep | None:
        """Do the last undone step again."""
        done = self._undo.last_undone
        if done is None:
            return None
        with self._data.writing() as writer:
            writer.replay(done.changes)
        self._undo.moved_on()
        self._changed(done.changes)
        return done.step

    def _write(
        self,
        code: str,
        work: Callable[[Writer], object],
        facts: Mapping[str, object] | None = None,
        *,
        undo: bool = True,
    ) -> None:
        with self._data.writing() as writer:
            work(writer)
            changes = writer.changes
        if not changes:
            return
        if undo:
            self._undo.push(Done(UndoStep(code, facts or {}), changes))
        self._changed(changes)

    def _changed(self, changes: Changes) -> None:
        kinds = frozenset(_WORDS.get(kind, kind) for kind, _ in changes.touched)
        for name in kinds:
            self._kept.pop(name, None)
        self._tell(Change(kinds, frozenset(name for _, name in changes.touched)))

    def _tell(self, change: Change) -> None:
        for listener in tuple(self._listeners):
            listener(change)

    def _read(self, kind: str, read: Callable[[Reader], T]) -> T:
        """What was read before, unless another process wrote since: a write made from old rows would undo its work."""
        version = self._data.data_version()
        if version != self._kept_version:
            self._kept.clear()
            self._kept_version = version
            self._say_moved()
        if kind not in self._kept:
            with self._data.reading() as reader:
                self._kept[kind] = read(reader)
        kept: T = self._kept[kind]
        return kept

    def _say_moved(self) -> None:
        if self._kept_version != self._told_version:
            for listener in tuple(self._moved_listeners):
                listener()

    def _put(self, code: str, models: Iterable[Stored], facts: Mapping[str, object] | None = None) -> None:
        self._write(code, lambda writer: writer.put_all(models), facts)
