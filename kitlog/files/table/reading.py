"""What one cell may say, and how answers settle it: shared by the columns of numbers and of days."""

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from kitlog.files.table.column_reading import CellDoubt, ColumnReading
from kitlog.files.table.doubt import EMPTY, Answers, Question
from kitlog.files.table.remark import Remark


@dataclass(frozen=True, slots=True)
class Read:
    """What a cell says.

    Attributes:
        value: what it says for sure; None = nothing, or open.
        rough: marked as a rough figure.
        question: what is open, None = nothing.
        choices: the value by answer, for what is open; an answer without a value cannot be meant.
        readings: the same as text for a person, where that is not plain from the values.
        mark: the decimal mark that this cell proves ("comma", "point"), empty if none.
        impossible: the proof is that the other reading is beyond what kitlog can hold.
        unlikely: answers that only the pilot may give, whatever the other cells prove (a mass finer than a gram).
    """

    value: object = None
    rough: bool = False
    question: Question | None = None
    choices: Mapping[str, object] = field(default_factory=dict)
    readings: Mapping[str, str] = field(default_factory=dict)
    mark: str = ""
    impossible: bool = False
    unlikely: frozenset[str] = frozenset()


Key = TypeVar("Key", bound=Hashable)

NOTHING = Read()
UNREAD = Read(question=Question.UNREAD)


def settled(read: Read, answers: Answers) -> Read | CellDoubt:
    """The cell after the answers: what it says, or its doubt (at position 0, for whoever knows the position)."""
    if read.question is None:
        return read
    answer = answers.to(read.question)
    if answer == EMPTY:
        return CellDoubt(0, read.question, _readings(read), emptied=True)
    if not answer or read.question is Question.UNREAD:
        return CellDoubt(0, read.question, _readings(read))
    value = read.choices.get(answer)
    if value is None:
        return settled(UNREAD, answers)
    return Read(value, read.rough)


def _readings(read: Read) -> Mapping[str, str]:
    return read.readings or {answer: str(value) for answer, value in read.choices.items()}


def gathered(
    keys: Sequence[Key],
    plain: Mapping[Key, object],
    reads: Mapping[Key, Read],
    answers: Answers,
    remarks: Sequence[Remark] = (),
) -> ColumnReading:
    """The reading of a column from what its different cells say.

    `keys` are the cells in their order, `plain` the values of those that nothing is to be said of, `reads` what all the
    others say.
    """
    if not reads:
        return ColumnReading(tuple(map(plain.__getitem__, keys)), remarks=tuple(remarks))
    ends = {key: settled(read, answers) for key, read in reads.items()}
    rough = {key for key, end in ends.items() if isinstance(end, Read) and end.rough and end.value is not None}
    doubtful = {key: end for key, end in ends.items() if isinstance(end, CellDoubt)}
    values = {**plain, **{key: end.value if isinstance(end, Read) else None for key, end in ends.items()}}
    return ColumnReading(
        tuple(map(values.__getitem__, keys)),
        frozenset(at for at, key in enumerate(keys) if key in rough) if rough else frozenset(),
        tuple(_at(at, doubtful[key]) for at, key in enumerate(keys) if key in doubtful) if doubtful else (),
        tuple(remarks),
    )


def _at(at: int, doubt: CellDoubt) -> CellDoubt:
    return CellDoubt(at, doubt.question, doubt.readings, doubt.emptied)
