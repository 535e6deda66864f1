"""The questions of a table: one for each column and question, those answered included, so that they can be changed."""

from collections.abc import Mapping
from dataclasses import dataclass

from kitlog.desktop.import_page.decisions import Decisions, Key
from kitlog.files.table.doubt import CHOICES, EMPTY, Doubt, Question
from kitlog.workbench.kit_preview import KitPreview

EXAMPLES = 3


@dataclass(frozen=True, slots=True)
class Asked:
    """One question about a column.

    Attributes:
        heading: of the column; cells: every doubtful cell.
        answer: what was answered, empty if nothing yet.
    """

    key: Key
    heading: str
    cells: tuple[Doubt, ...]
    answer: str = ""

    @property
    def question(self) -> Question:
        """What is asked."""
        return self.key[1]

    @property
    def answers(self) -> tuple[str, ...]:
        """What can be answered: whatever at least one cell can mean, and leaving them all not known."""
        meant = {answer for cell in self.cells for answer in cell.readings}
        return (*(answer for answer in CHOICES[self.question] if answer in meant), EMPTY)

    def examples(self) -> tuple[Doubt, ...]:
        """A few cells that differ."""
        by_text = {cell.text: cell for cell in reversed(self.cells)}
        return tuple(sorted(by_text.values(), key=lambda cell: cell.spot.row)[:EXAMPLES])


def questions_of(before: Mapping[Key, Asked], preview: KitPreview, decisions: Decisions) -> dict[Key, Asked]:
    """The questions after a look: what is open, and what was answered and so is not asked any more."""
    found: dict[Key, list[Doubt]] = {}
    for doubt in (*preview.doubts, *preview.emptied):
        found.setdefault((doubt.column, doubt.question), []).append(doubt)
    open_keys = {(doubt.column, doubt.question) for doubt in preview.doubts}
    made = {
        key: Asked(key, cells[0].heading, tuple(cells), "" if key in open_keys else decisions.answers.get(key, ""))
        for key, cells in found.items()
    }
    for key, asked in before.items():
        answer = decisions.answers.get(key, "")
        if key not in made and answer:
            made[key] = Asked(key, asked.heading, asked.cells, answer)
    order = list(Question)
    return dict(sorted(made.items(), key=lambda pair: (pair[0][0], order.index(pair[0][1]))))
