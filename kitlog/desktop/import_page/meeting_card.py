"""The questions about whole rows: those that are in the kit already, and cells that no item can take."""

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QButtonGroup, QGridLayout

from kitlog.desktop import look
from kitlog.desktop.import_page.card import ANSWER_PX, Card
from kitlog.desktop.import_page.radio import RadioField
from kitlog.desktop.parts.fields import TickField
from kitlog.desktop.parts.text import CutText
from kitlog.files.csv_problems import CellProblem
from kitlog.files.table.kit_items import Existing, Meeting
from kitlog.paint.type_scale import Role
from kitlog.wording.faults import fault_text
from kitlog.wording.import_text import MOST_NAMED
from kitlog.wording.import_words import mend_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import first_upper

MOST_LISTED = 8


class MeetingCard(Card):
    """Rows about items and service rules that the kit has: what becomes of them?"""

    def __init__(
        self, met: Sequence[Meeting], rules: Sequence[CellProblem], decide: Callable[[Existing], object]
    ) -> None:
        n = len(met) + len(rules)
        about = _("In your kit already")
        super().__init__(about, ngettext("What becomes of {n} row?", "What becomes of {n} rows?", n).format(n=n))
        self.met, self.rules = tuple(met), tuple(rules)
        if met:
            self.note(self._named())
        for problem in rules[:MOST_LISTED]:
            self.note(problem_text(problem))
        if len(rules) > MOST_LISTED:
            more = len(rules) - MOST_LISTED
            self.note(ngettext("and {n} more", "and {n} more", more).format(n=more))
        if rules:
            self.note(_("A service rule is never added twice: choose to skip or to update."))
        words = {
            Existing.SKIP: (_("skip them"), _("the items stay as they are")),
            Existing.UPDATE: (
                _("update them"),
                _("what the row says replaces what is there; empty cells change nothing"),
            ),
            Existing.ADD: (_("add them as second ones"), _("each row becomes an item of its own")),
        }
        self._group = QButtonGroup(self)
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(look.px(24))
        self._grid.setVerticalSpacing(0)
        self._grid.setColumnMinimumWidth(0, look.px(ANSWER_PX))
        self._grid.setColumnStretch(1, 1)
        self.radios = {one: self._row(number, *words[one]) for number, one in enumerate(Existing)}
        self.rows.addLayout(self._grid)
        for one, radio in self.radios.items():
            radio.clicked.connect(lambda _on=False, one=one: decide(one))

    def show_existing(self, existing: Existing | None) -> None:
        """Show what is decided."""
        self._group.setExclusive(False)
        for one, radio in self.radios.items():
            radio.setChecked(one is existing)
        self._group.setExclusive(True)
        self.show_state(is_open=existing is None or (bool(self.rules) and existing is Existing.ADD))

    def _row(self, number: int, words: str, meaning: str) -> RadioField:
        radio = RadioField(words)
        radio.setAccessibleDescription(meaning)
        self._group.addButton(radio)
        self._grid.addWidget(radio, number, 0)
        self._grid.addWidget(CutText(meaning, Role.SECOND, "muted"), number, 1)
        return radio

    def _named(self) -> str:
        unsure = _(" (or another one)")
        parts = [
            _("row {row} {item}").format(row=one.row, item=one.item.name) + ("" if one.sure else unsure)
            for one in self.met[:MOST_NAMED]
        ]
        more = len(self.met) - MOST_NAMED
        text = first_upper(", ".join(parts))
        return text + (ngettext(" and {n} more", " and {n} more", more).format(n=more) if more > 0 else "")


class ProblemCard(Card):
    """Cells and rows that no item can take: left out, or mended in the file."""

    def __init__(self, problems: Sequence[CellProblem], leave_out: Callable[[bool], object]) -> None:
        n = len(problems)
        super().__init__(
            _("Not possible"), ngettext("{n} cell cannot be taken", "{n} cells cannot be taken", n).format(n=n)
        )
        self.problems = tuple(problems)
        for problem in problems[:MOST_LISTED]:
            self.note(problem_text(problem))
        more = n - MOST_LISTED
        if more > 0:
            self.note(ngettext("and {n} more", "and {n} more", more).format(n=more))
        self.tick = TickField(_("leave them not known, and leave out rows without a name"))
        self.tick.clicked.connect(leave_out)
        self.rows.addWidget(self.tick)
        self.note(mend_text())

    def show_left_out(self, *, left_out: bool) -> None:
        """Show what is decided."""
        self.tick.setChecked(left_out)
        self.show_state(is_open=not left_out)


def problem_text(problem: CellProblem) -> str:
    """One problem: where it stands and what it is."""
    text = fault_text(problem.as_fault())
    place = _("Row {row}").format(row=problem.row) if problem.row else problem.file
    where = f"{place}, {problem.column}" if problem.column else place
    return f"{where}: {text.what}."
