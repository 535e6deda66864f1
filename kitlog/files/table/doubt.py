"""What a table leaves open: the question, the cell, its possible readings; and the answers that settle it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from kitlog.files.csv_problems import Spot


class Question(StrEnum):
    """What may have to be asked of a column."""

    DATES = "dates"
    """Which of day, month and year stands first (03/04/2025)."""
    DECIMAL = "decimal"
    """Whether a mark is a decimal mark or parts thousands (1.250)."""
    MASS_UNIT = "mass_unit"
    """A mass without unit."""
    MAH_AT = "mah_at"
    """5 V beside mAh: is the capacity that of the cell, or at the 5 V of the port?"""
    ENERGY = "energy"
    """Wh and mAh x V contradict each other."""
    TWO_MASSES = "two_masses"
    """Two columns of masses that disagree."""
    MONTHS = "months"
    """A month or a year without a day."""
    DAY_NUMBERS = "day_numbers"
    """A bare number where a day should be: a spreadsheet's count of days."""
    UNREAD = "unread"
    """A cell that says nothing kitlog could take; only leaving it out settles it."""


CHOICES: Mapping[Question, tuple[str, ...]] = {
    Question.DATES: ("dmy", "mdy", "ymd"),
    Question.DECIMAL: ("comma", "point"),
    Question.MASS_UNIT: ("g", "kg", "oz", "lb"),
    Question.MAH_AT: ("cell", "5v"),
    Question.ENERGY: ("wh", "mah"),
    Question.TWO_MASSES: ("first", "second"),
    Question.MONTHS: ("first", "last"),
    Question.DAY_NUMBERS: ("1900", "1904"),
    Question.UNREAD: (),
}
"""The answers to each question; ``empty`` (leave the doubtful cells not known) answers every one."""

EMPTY = "empty"


@dataclass(frozen=True, slots=True)
class Answers:
    """Answers to the questions of one column: a choice of `CHOICES` or ``empty``; missing = not answered."""

    given: Mapping[Question, str] = field(default_factory=dict)

    def to(self, question: Question) -> str:
        """The answer, or the empty text."""
        return self.given.get(question, "")


@dataclass(frozen=True, slots=True)
class Settled:
    """Answers for a whole file: those of single columns (by index of the column), and those for all the others."""

    everywhere: Answers = field(default_factory=Answers)
    by_column: Mapping[int, Answers] = field(default_factory=dict)

    def of(self, column: int) -> Answers:
        """The answers that hold for a column: its own first, then those for all."""
        own = self.by_column.get(column)
        return Answers({**self.everywhere.given, **own.given}) if own else self.everywhere


@dataclass(frozen=True, slots=True)
class Doubt:
    """A doubtful cell.

    Attributes:
        question: what would have to be asked.
        column: index of its column, from 0; heading: its text in the file (of cells open together: all of theirs).
        text: the cell, with those open together likewise.
        readings: what it could mean, as text for a person, by answer ({"dmy": "2025-04-03", "mdy": "2025-03-04"}).
        emptied: it was left not known, because the answer was ``empty``.
    """

    question: Question
    spot: Spot
    column: int
    heading: str
    text: str
    readings: Mapping[str, str] = field(default_factory=dict)
    emptied: bool = False
