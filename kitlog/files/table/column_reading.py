"""What the cells of one column were read as: the contract between the columns and the table."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from kitlog.files.table.doubt import Question
from kitlog.files.table.remark import Remark


@dataclass(frozen=True, slots=True)
class CellDoubt:
    """A doubtful cell of a column: position in the list that was read, the question, the readings by answer.

    `emptied` where the answer was to leave such cells not known.
    """

    at: int
    question: Question
    readings: Mapping[str, str] = field(default_factory=dict)
    emptied: bool = False


@dataclass(frozen=True, slots=True)
class ColumnReading:
    """The values of a column, in the order of its cells.

    Attributes:
        values: None where a cell is empty, says that it is not known, or is doubtful.
        guesses: positions of figures marked as rough ("ca. 420 g", "~420", "420?").
        each, pairs: positions of masses said to be of one piece ("68 g each"), and of a pair ("1.1 kg the pair").
        doubts: doubtful cells, unread ones included.
        remarks: what decided (``table.decided_dates`` ...), for the report; no heading in the facts, the table adds it.
    """

    values: tuple[object, ...]
    guesses: frozenset[int] = frozenset()
    doubts: tuple[CellDoubt, ...] = ()
    remarks: tuple[Remark, ...] = ()
    each: frozenset[int] = frozenset()
    pairs: frozenset[int] = frozenset()
