"""What changed, told to whoever shows it."""

from collections.abc import Callable
from dataclasses import dataclass

EVERYTHING = "everything"
"""The kind of a change whose extent is not known: another process wrote."""


@dataclass(frozen=True, slots=True)
class Change:
    """Kinds and ids of what changed.

    Kinds: ``item``, ``pilot``, ``flight``, ``rule``, ``record``, ``event``, ``outing``, ``tick``, ``preference``, or
    ``everything``.
    """

    kinds: frozenset[str]
    ids: frozenset[str]

    def touches(self, *kinds: str) -> bool:
        """Whether any of the kinds changed."""
        return EVERYTHING in self.kinds or not self.kinds.isdisjoint(kinds)


Listener = Callable[[Change], None]
