"""The question about a column: its cells as heads, its answers as rows, and what each makes of each cell."""

from collections.abc import Callable

from PySide6.QtWidgets import QButtonGroup, QGridLayout

from kitlog.desktop import look
from kitlog.desktop.import_page.card import ANSWER_PX, Card
from kitlog.desktop.import_page.question_book import Asked
from kitlog.desktop.import_page.radio import RadioField
from kitlog.desktop.parts.text import CutText, Text
from kitlog.files.table.doubt import Question
from kitlog.paint.type_scale import Role
from kitlog.wording.import_text import rows_text
from kitlog.wording.import_words import answer_text, asked_text, cells_text, mend_text
from kitlog.wording.translate import _


class ColumnCard(Card):
    """One question about one column.

    Args:
        asked: the question; answer: is called with an answer.
    """

    def __init__(self, asked: Asked, answer: Callable[[str], object]) -> None:
        super().__init__(asked.heading or _("no heading"), asked_text(asked.question.value))
        self.asked = asked
        rows = rows_text([cell.spot.row for cell in asked.cells])
        self.note(cells_text(len(asked.cells), rows))
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(look.px(24))
        self._grid.setVerticalSpacing(0)
        self._grid.setContentsMargins(0, look.px(4), 0, 0)
        self._group = QButtonGroup(self)
        self.radios = {name: self._row(name, number) for number, name in enumerate(asked.answers, 1)}
        self._examples()
        self.rows.addLayout(self._grid)
        if asked.question is Question.UNREAD:
            self.note(mend_text())
        for name, radio in self.radios.items():
            radio.clicked.connect(lambda _on=False, name=name: answer(name))
        self.show_asked(asked)

    def show_asked(self, asked: Asked) -> None:
        """Show what is answered now; the cells are the same."""
        self.asked = asked
        self._group.setExclusive(False)
        for name, radio in self.radios.items():
            radio.setChecked(name == asked.answer)
        self._group.setExclusive(True)
        self.show_state(is_open=not asked.answer)

    def _row(self, answer: str, number: int) -> RadioField:
        radio = RadioField(answer_text(self.asked.question.value, answer))
        readings = [cell.readings.get(answer, "") for cell in self.asked.examples()]
        said = ", ".join(
            f"{cell.text}: {reading}" for cell, reading in zip(self.asked.examples(), readings, strict=True) if reading
        )
        radio.setAccessibleName(f"{self.about}, {radio.words}")
        radio.setAccessibleDescription(said)
        self._group.addButton(radio)
        self._grid.addWidget(radio, number, 0)
        for place, reading in enumerate(readings, 1):
            self._grid.addWidget(CutText(reading, Role.SECOND, "muted"), number, place)
        return radio

    def _examples(self) -> None:
        examples = self.asked.examples()
        self._grid.addWidget(Text(_("in the table"), Role.SMALL, "muted"), 0, 0)
        for place, cell in enumerate(examples, 1):
            self._grid.addWidget(CutText(cell.text, Role.NAME), 0, place)
        self._grid.setColumnStretch(len(examples) + 1, 1)
        self._grid.setColumnMinimumWidth(0, look.px(ANSWER_PX))
