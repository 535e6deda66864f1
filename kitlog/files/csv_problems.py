"""What is wrong with a CSV file: every problem with its row and column, collected before the file is refused."""

import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from kitlog.fault import InputFault

MAX_PROBLEMS = 100
"""Problems that are kept; of the rest only the number is."""
MAX_COUNTED = 10_000
"""Problems after which reading stops: such a file is of another kind altogether."""

_SHOWN = 80


@dataclass(frozen=True, slots=True)
class CellProblem:
    """One problem of a file.

    Attributes:
        file: the name the file was read under.
        row: text line on which the row begins, the first line being 1; 0 where the file as a whole is meant.
        column: its heading, empty where the row or the file as a whole is meant.
        code, facts: as in `kitlog.fault.Fault`; ``value`` is the cell, shortened, unprintable characters escaped.
        record: the row number a spreadsheet shows; differs from `row` below a cell that spans several lines.
    """

    file: str
    row: int
    column: str
    code: str
    facts: Mapping[str, object]
    record: int

    def as_fault(self) -> InputFault:
        """The same problem as a fault of its own, for whoever makes sentences of faults."""
        place = {"file": self.file, "row": self.row, "field": self.column, "record": self.record}
        return InputFault(self.code, **{**self.facts, **place})


class TableFault(InputFault):
    """A CSV file refused as a whole, code ``csv.refused``.

    Attributes:
        problems: at most `MAX_PROBLEMS` of them, by row.
        more: how many there are besides; the fact ``at_least`` says that reading stopped there.
    """

    def __init__(self, file: str, problems: tuple[CellProblem, ...], more: int) -> None:
        count = len(problems) + more
        facts = {"count": count, "at_least": count >= MAX_COUNTED}
        super().__init__("csv.refused", file=file, problems=problems, more=more, **facts)
        self.problems = problems
        self.more = more


class Spot(NamedTuple):
    """Where in a file something stands: text line and spreadsheet row; both 0 for the file as a whole."""

    row: int = 0
    record: int = 0


@dataclass(slots=True)
class Problems:
    """Collects the problems of one file while it is read."""

    file: str
    count: int = 0
    kept: list[CellProblem] = field(default_factory=list)

    def add(self, spot: Spot, column: str, code: str, **facts: object) -> None:
        """Note a problem; from the hundred-and-first on it is only counted, and the ten-thousandth ends it."""
        self.count += 1
        if len(self.kept) < MAX_PROBLEMS:
            self.kept.append(CellProblem(self.file, spot.row, column, code, facts, spot.record))
        if self.count >= MAX_COUNTED:
            self.refuse_if_any()

    def refuse_if_any(self) -> None:
        """Raise `TableFault` if there was any problem."""
        if self.count:
            problems = tuple(sorted(self.kept, key=lambda problem: problem.row))
            raise TableFault(self.file, problems, self.count - len(problems))


def shown(text: str) -> str:
    r"""A cell as it may be shown: at most 80 characters, control and format characters as ``\uXXXX``."""
    head = text if len(text) <= _SHOWN else text[: _SHOWN - 1] + "…"
    if head.isprintable():
        return head
    return "".join(_visible(char) for char in head)


def _visible(char: str) -> str:
    return f"\\u{ord(char):04X}" if unicodedata.category(char) in {"Cc", "Cf", "Cs"} else char
