"""What the pilot has decided about a table so far."""

from dataclasses import dataclass, field, replace

from kitlog.files.table.doubt import Answers, Question, Settled
from kitlog.files.table.kit_items import Existing
from kitlog.files.table.targets import Meaning
from kitlog.workbench.kit_preview import ImportChoices

Key = tuple[int, Question]
"""A question: index of the column, and what is asked of it."""


@dataclass(slots=True)
class Decisions:
    """Answers by column and question, meanings by column, and what holds for the whole table."""

    answers: dict[Key, str] = field(default_factory=dict)
    meanings: dict[int, Meaning] = field(default_factory=dict)
    existing: Existing | None = None
    leave_out: bool = False
    heading_row: int | None = None
    no_headings: bool = False

    def copy(self) -> "Decisions":
        """The same, to come back to."""
        return replace(self, answers=dict(self.answers), meanings=dict(self.meanings))

    def of_columns(self) -> "Decisions":
        """What would hold for another sheet of the same headings: nothing that was said of rows."""
        if self.no_headings:
            return Decisions()
        return Decisions(dict(self.answers), dict(self.meanings))

    def choices(self) -> ImportChoices:
        """The same as a preview takes it."""
        by_column: dict[int, dict[Question, str]] = {}
        for (column, question), answer in self.answers.items():
            by_column.setdefault(column, {})[question] = answer
        settled = Settled(by_column={column: Answers(given) for column, given in by_column.items()})
        return ImportChoices(
            settled, dict(self.meanings), existing=self.existing, leave_out=self.leave_out, heading_row=self.heading_row
        )

    def mean(self, column: int, meaning: Meaning) -> None:
        """Let a column stand for something; what was answered about it before is asked again."""
        self.meanings[column] = meaning
        self.answers = {key: answer for key, answer in self.answers.items() if key[0] != column}

    def begin_at(self, row: int | None) -> None:
        """Take a row of the grid as the headings, None for none; all other decisions were about other columns."""
        self.heading_row, self.no_headings = row, row is None
        self.answers, self.meanings, self.leave_out = {}, {}, False
