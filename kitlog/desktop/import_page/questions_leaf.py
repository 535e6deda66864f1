"""The leaf of the questions: about rows that are in the kit, about columns, about cells that cannot be taken."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.import_page.card import Card
from kitlog.desktop.import_page.column_card import ColumnCard
from kitlog.desktop.import_page.decisions import Decisions, Key
from kitlog.desktop.import_page.headings_leaf import paper_scroll
from kitlog.desktop.import_page.meeting_card import MeetingCard, ProblemCard
from kitlog.desktop.import_page.question_book import Asked
from kitlog.desktop.import_page.service_card import ServiceCard
from kitlog.desktop.parts.tab_order import tab_stops
from kitlog.desktop.parts.text import Paragraph
from kitlog.fault import Fault
from kitlog.files.table.kit_items import Existing
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _
from kitlog.workbench.kit_preview import KitPreview


@dataclass(frozen=True, slots=True)
class Answering:
    """What is called with the answers."""

    column: Callable[[Key, str], object]
    existing: Callable[[Existing], object]
    leave_out: Callable[[bool], object]
    no_service: Callable[[], object]


class QuestionsLeaf(QWidget):
    """The cards, one below the other; those answered stay and can be changed."""

    def __init__(self, answering: Answering, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._answering = answering
        self.columns: dict[Key, ColumnCard] = {}
        self.meeting: MeetingCard | None = None
        self.problem: ProblemCard | None = None
        self.service: ServiceCard | None = None
        self._inside = QWidget()
        self._cards = QVBoxLayout(self._inside)
        self._cards.setContentsMargins(0, 0, look.px(12), 0)
        self._cards.setSpacing(look.px(12))
        self.none = Paragraph(_("Nothing is doubtful. Look at what comes in, then import it."), Role.BODY)
        self._cards.addWidget(self.none)
        self._cards.addStretch()
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(paper_scroll(self._inside))

    def show_all(
        self, preview: KitPreview, questions: Mapping[Key, Asked], decisions: Decisions, service_fault: Fault | None
    ) -> None:
        """Show the questions after a look; cards about the same cells stay, and so does the focus."""
        self._show_service(service_fault)
        self._show_meeting(preview, decisions)
        self._show_columns(questions)
        self._show_problem(preview, decisions)
        self.none.setVisible(not self.cards())

    def cards(self) -> list[Card]:
        """All cards from the top."""
        single = [card for card in (self.service, self.meeting) if card is not None]
        return [*single, *self.columns.values(), *([self.problem] if self.problem else [])]

    def open_count(self) -> int:
        """How many wait for an answer."""
        return sum(card.is_open for card in self.cards())

    def _show_columns(self, questions: Mapping[Key, Asked]) -> None:
        kept: dict[Key, ColumnCard] = {}
        for key, asked in questions.items():
            card = self.columns.pop(key, None)
            if card is not None and not _same(card.asked, asked):
                self._drop(card)
                card = None
            if card is None:
                card = ColumnCard(asked, lambda answer, key=key: self._answering.column(key, answer))  # type: ignore[misc]
            else:
                card.show_asked(asked)
            kept[key] = card
        for card in self.columns.values():
            self._drop(card)
        self.columns = kept
        self._place()

    def _show_meeting(self, preview: KitPreview, decisions: Decisions) -> None:
        shown = None if self.meeting is None else (self.meeting.met, self.meeting.rules)
        if self.meeting is not None and shown != (preview.met, preview.service_met):
            self._drop(self.meeting)
            self.meeting = None
        if (preview.met or preview.service_met) and self.meeting is None:
            self.meeting = MeetingCard(preview.met, preview.service_met, self._answering.existing)
        if self.meeting is not None:
            self.meeting.show_existing(decisions.existing)

    def _show_problem(self, preview: KitPreview, decisions: Decisions) -> None:
        problems = preview.dropped or preview.problems
        if self.problem is not None and self.problem.problems != problems:
            self._drop(self.problem)
            self.problem = None
        if problems and self.problem is None:
            self.problem = ProblemCard(problems, self._answering.leave_out)
        if self.problem is not None:
            self.problem.show_left_out(left_out=decisions.leave_out)
        self._place()

    def _show_service(self, fault: Fault | None) -> None:
        if self.service is not None:
            self._drop(self.service)
            self.service = None
        if fault is not None:
            self.service = ServiceCard(fault, self._answering.no_service)

    def _place(self) -> None:
        for number, card in enumerate(self.cards(), 1):
            if self._cards.indexOf(card) != number:
                self._cards.insertWidget(number, card)
        stops = [stop for card in self.cards() for stop in tab_stops(card)]
        for stop, following in pairwise(stops):
            QWidget.setTabOrder(stop, following)

    def _drop(self, card: Card) -> None:
        self._cards.removeWidget(card)
        card.hide()
        card.deleteLater()


def _same(before: Asked, now: Asked) -> bool:
    """Whether two questions are about the same cells, whatever was answered."""
    return [cell.spot for cell in before.cells] == [cell.spot for cell in now.cells] and before.answers == now.answers
