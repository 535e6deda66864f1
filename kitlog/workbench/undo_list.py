"""Undo and redo: the rows as they were, newest last, 200 deep; per window, gone when the program ends."""

from collections import deque
from collections.abc import Mapping
from dataclasses import dataclass, field

from kitlog.store.journal import Changes

DEPTH = 200


@dataclass(frozen=True, slots=True)
class UndoStep:
    """What a step did, as a code and the facts of its sentence."""

    code: str
    facts: Mapping[str, object] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Done:
    """A step and the rows it changed."""

    step: UndoStep
    changes: Changes


class UndoList:
    """Steps that can be taken back, and steps that can be done again."""

    def __init__(self) -> None:
        self._done: deque[Done] = deque(maxlen=DEPTH)
        self._undone: list[Done] = []

    def push(self, done: Done) -> None:
        """A new step: what was undone before it cannot be done again."""
        self._done.append(done)
        self._undone.clear()

    @property
    def last_done(self) -> Done | None:
        """What undo would take back."""
        return self._done[-1] if self._done else None

    @property
    def last_undone(self) -> Done | None:
        """What redo would do again."""
        return self._undone[-1] if self._undone else None

    def moved_back(self) -> None:
        """The last step was undone."""
        self._undone.append(self._done.pop())

    def moved_on(self) -> None:
        """The last undone step was done again."""
        self._done.append(self._undone.pop())

    def forget(self) -> None:
        """Nothing can be undone any more: somebody else wrote."""
        self._done.clear()
        self._undone.clear()
