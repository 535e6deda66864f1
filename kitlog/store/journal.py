"""What a transaction did, row by row: enough to take it back and to do it again."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from kitlog.store.aggregates import KIND_OF


@dataclass(frozen=True, slots=True)
class RowChange:
    """One row before and after.

    Attributes:
        table: its table; key: what names it there.
        before, after: its columns; None = it was not there, it is gone.
    """

    table: str
    key: tuple[Any, ...]
    before: Mapping[str, Any] | None
    after: Mapping[str, Any] | None


@dataclass(frozen=True, slots=True)
class Changes:
    """The rows that one transaction changed, in order."""

    rows: tuple[RowChange, ...] = ()

    def __bool__(self) -> bool:
        return bool(self.rows)

    @property
    def touched(self) -> frozenset[tuple[str, str]]:
        """What changed, as kind and id.

        Kinds: ``pilot``, ``item``, ``flight``, ``service_rule``, ``service_record``, ``event``, ``outing``, ``tick``
        (with the outing's id), ``preference`` (with its name).
        """
        return frozenset((KIND_OF[row.table], row.key[0]) for row in self.rows)
