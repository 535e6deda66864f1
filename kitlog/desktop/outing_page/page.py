"""The page Outing."""

from typing import ClassVar

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QHideEvent, QShowEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QStackedWidget, QVBoxLayout, QWidget

from kitlog.budget.result import Finding, Remedy, State, Topic
from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.fold import Fold
from kitlog.desktop.outing_page.acts import OutingActs
from kitlog.desktop.outing_page.ask_panel import AskTools
from kitlog.desktop.outing_page.asking import ask, ask_reason
from kitlog.desktop.outing_page.finding_rows import Doing, FindingRow, RowActs
from kitlog.desktop.outing_page.forecasting import Forecasting
from kitlog.desktop.outing_page.outdated import Outdated, grey
from kitlog.desktop.outing_page.plan_panel import PlanPanel
from kitlog.desktop.outing_page.power_asking import PowerAsking
from kitlog.desktop.outing_page.power_topic import PowerTools, PowerTopic
from kitlog.desktop.outing_page.question_band import QuestionBand
from kitlog.desktop.outing_page.record_rows import Records
from kitlog.desktop.outing_page.remedies import Remedies
from kitlog.desktop.outing_page.tile import Board
from kitlog.desktop.outing_page.tile_words import TileWords, tile_words
from kitlog.desktop.outing_page.topic_view import TopicActs, topic_view
from kitlog.desktop.outing_page.topics import topics_of, worst_topic
from kitlog.desktop.page import Page
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.empty import EmptyState
from kitlog.desktop.parts.line import Hairline
from kitlog.fault import Fault
from kitlog.outing.outing import Phase
from kitlog.packing.assessment import Assessment
from kitlog.wording.faults import FaultText, fault_text
from kitlog.wording.translate import _
from kitlog.workbench.power_question import power_asked

BAR, RING = 14, 4
"""Room of the scroll bar, which lies in the margin of the sheet, and of the focus ring around a tile, in px."""


class OutingPage(Page):
    """The plan left, the open questions and the board right."""

    acts_class: ClassVar[type] = OutingActs
    concerns: ClassVar[frozenset[str]] = frozenset(
        {"outing", "item", "rule", "record", "event", "flight", "pilot", "preference"}
    )

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.acts: OutingActs = OutingActs(self)
        self.remedies = Remedies(desk, self, self.acts.edit_plan)
        asks = AskTools(PowerAsking(self), lambda judged: power_asked(desk.bench, judged), self._power_act)
        self.power = PowerTools(
            Forecasting(self), desk.bench.library, self._keep_phase, asks, self._follow, self.acts.edit_power
        )
        self.plan, self.band, self.board = PlanPanel(), QuestionBand(), Board()
        self.topic: Topic | None = None
        self.view: QWidget | None = None
        self._outing_id = ""
        self._fold = Fold()
        self._is_plan_open = False
        self._assemble()
        self._connect()

    def reload(self) -> None:
        """Read the outing anew and assess it; the open tile stays open."""
        outing = self.desk.outing()
        self._stack.setCurrentIndex(0 if outing is None else 1)
        if outing is None:
            self._outing_id = ""
            return
        self.plan.show_plan(outing, self.desk.bench.library)
        try:
            assessment = self.desk.assessment()
        except Fault as fault:
            self.desk.faulted.emit(fault)
            self._show_outdated(fault_text(fault), same=outing.id == self._outing_id)
            return
        if assessment is not None:
            if outing.id != self._outing_id:
                self._outing_id = outing.id
                self.topic = worst_topic(assessment)
            self._show(assessment)

    def lay_out(self, fold: Fold) -> None:
        """In less room the plan folds behind a button, and the questions are shortened."""
        self._fold = fold
        side = look.px(fold.side_px)
        around = look.px(RING)
        self._right_rows.setContentsMargins(side - around, look.px(fold.head_px(16)), side - look.px(BAR), 0)
        self._place_band()
        self.band.fold(brief=fold.middle, single=fold.narrow)
        self.board.columns(2 if fold.narrow else 4)
        self._place_plan()

    def first(self) -> QWidget:
        """The open tile, or the first act of the empty state."""
        if self._stack.currentIndex() == 0:
            return self.empty.buttons[0]
        if self._fold.middle and self._is_plan_open:
            return self.plan.edit_act
        if self.outdated.is_shown:
            return self.plan_act if self._fold.middle else self.plan.edit_act
        if self.topic is not None and self.topic in self.board.tiles:
            return self.board.tiles[self.topic]
        return next(iter(self.board.tiles.values()), self.plan.edit_act)

    def show_this(self, what: str) -> None:
        """Plan a new outing for "new"; open a topic by its word; show the worst finding of a state by its word."""
        if what == "new":
            self.acts.new_outing()
            return
        if what in {topic.value for topic in Topic}:
            self.open_topic(Topic(what))
        elif what in {state.value for state in State}:
            self._show_worst(State(what))

    def open_topic(self, topic: Topic | None) -> None:
        """Show what belongs to a topic under the board; None shows all findings."""
        assessment = self.desk.judged()
        if assessment is None:
            return
        self._close_plan()
        self.topic = topic
        self._show_view(assessment)
        if self.view is not None:
            view = self.view
            QTimer.singleShot(0, self, lambda: self._bring(view))

    def ask(self, question_id: str) -> None:
        """Ask one question."""
        ask(self.desk, question_id, self)

    def override(self, finding: Finding) -> None:
        """Ask for a reason why a stop does not keep the pilot at home."""
        ask_reason(self.desk, finding, self)

    def leave(self) -> None:
        """The window closes: nobody wants the days that are still being drawn."""
        self.power.drop()

    def showEvent(self, event: QShowEvent) -> None:
        """Draw the days on that were not wanted while another page was open."""
        super().showEvent(event)
        topic = None if self.view is None else self.view.findChild(PowerTopic)
        if topic is not None and not self.stale:
            topic.want_days()

    def hideEvent(self, event: QHideEvent) -> None:
        """Another page is open: the machine is not kept busy for this one."""
        super().hideEvent(event)
        self.power.pause()

    def rows(self) -> list[FindingRow]:
        """The findings that are shown."""
        return [] if self.view is None else self.view.findChildren(FindingRow)

    def _show(self, assessment: Assessment) -> None:
        self._top.show()
        self.outdated.take_away([self.board, *self._views()])
        self._grey_rest(is_old=False)
        names = self.desk.names()
        self.plan.show_kit(assessment, names)
        self.band.show_questions(assessment.questions)
        self.board.show_tiles([tile_words(topic, assessment, names) for topic in topics_of(assessment)])
        self._show_view(assessment)

    def _show_outdated(self, text: FaultText, *, same: bool) -> None:
        """What cannot be assessed shows nothing new: what was found before is greyed and says so, or goes."""
        self.power.drop()
        self.outdated.lay_over([self.board, *self._views()], text, keep=same)
        self._top.setVisible(same)
        self._outing_id = self._outing_id if same else ""

    def _views(self) -> list[QWidget]:
        return [] if self.view is None else [self.view]

    def _show_view(self, assessment: Assessment) -> None:
        held = self._held()
        if self.topic is not Topic.POWER:
            self.power.pause()
        if self.topic is not None and self.topic not in self.board.tiles:
            self.topic = worst_topic(assessment)
        self.board.show_open(self.topic)
        bench, outing = self.desk.bench, assessment.outing
        records = Records(lambda name: bench.on_record(name, outing), lambda name: self.desk.show("service", name))
        rows = RowActs(self._remedy, self.override)
        acts = TopicActs(rows, self.power, self._take_along, self._leave_out, records)
        view = topic_view(self.topic, assessment, self.desk.names(), acts, at_once=held is not None)
        if self.view is not None:
            self.view.hide()
            self.view.deleteLater()
        self.view = view
        self._view_rows.addWidget(view)
        if held is not None:
            self._hold(held)

    def _held(self) -> str | None:
        """The name of what has the focus in the view, None if it is elsewhere."""
        from PySide6.QtWidgets import QApplication

        focus = QApplication.focusWidget()
        if self.view is None or focus is None or not self.view.isAncestorOf(focus):
            return None
        return focus.objectName()

    def _hold(self, name: str) -> None:
        """Give the focus back to what has the same name; if it is gone, to the open tile."""
        again = self.view.findChild(QWidget, name) if self.view is not None and name else None
        (again if isinstance(again, QWidget) else self.first()).setFocus(Qt.FocusReason.OtherFocusReason)

    def _bring(self, widget: QWidget) -> None:
        if widget is self.view:
            top = widget.mapTo(self._inside, widget.rect().topLeft()).y()
            self.scroller.ensureVisible(0, top + min(widget.height(), self.scroller.viewport().height() // 2), 0, 0)

    def _show_worst(self, state: State) -> None:
        """Open the topic of the worst finding of a state and go to its row."""
        assessment = self.desk.judged()
        found = next((f for f in assessment.findings if f.state is state), None) if assessment else None
        if found is None:
            return
        self.open_topic(found.topic)
        row = next((row for row in self.rows() if row.finding.key == found.key), None)
        if row is not None:
            QTimer.singleShot(0, row, lambda: self._go_to(row))

    def _go_to(self, row: FindingRow) -> None:
        self.scroller.ensureWidgetVisible(row)
        act = next(iter(row.findChildren(Button)), None)
        if act is not None:
            act.setFocus(Qt.FocusReason.OtherFocusReason)

    def _remedy(self, remedy: Remedy, finding: Finding) -> Doing | None:
        outing = self.desk.outing()
        return self.remedies.act(outing, remedy, finding) if outing else None

    def _power_act(self, remedy: Remedy) -> Doing | None:
        outing = self.desk.outing()
        return self.remedies.change_power(outing, remedy) if outing else None

    def _take_along(self, item_id: str) -> None:
        outing = self.desk.outing()
        if outing is not None:
            self.remedies.take_along(outing, item_id)

    def _keep_phase(self, number: int, phase: Phase) -> bool:
        """Write the durations that were dragged; one step to undo."""
        outing = self.desk.outing()
        return outing is not None and self.desk.perform(lambda: self.desk.bench.change_phase(outing.id, number, phase))

    def _follow(self, draft: Assessment | None) -> None:
        """Show the power of a plan that is tried in its tile and its phases, and grey the rest; None: all as it is."""
        shown = draft or self.desk.assessed_already()
        if shown is not None:
            self.plan.show_hours(shown.outing)
            self.board.tiles[Topic.POWER].show_words(tile_words(Topic.POWER, shown, self.desk.names()))
        self._grey_rest(is_old=draft is not None)

    def _grey_rest(self, *, is_old: bool) -> None:
        self.board.grey_others(Topic.POWER, is_old=is_old)
        findings = None if self.view is None else self.view.findChild(QWidget, "findings")
        if isinstance(findings, QWidget):
            grey(findings, is_old=is_old, why=_("of the plan before the move"))

    def _leave_out(self, item_id: str) -> None:
        outing = self.desk.outing()
        if outing is not None:
            self.remedies.leave_out(outing, item_id)

    def _act_of_tile(self, topic: str) -> None:
        """Do what the tile proposes; advice alone, or a picture, opens the tile."""
        words = self.board.tiles[Topic(topic)].shown
        do = self._tile_remedy(words) if words else None
        if do is None:
            self.open_topic(Topic(topic))
        else:
            do()

    def _tile_remedy(self, words: TileWords) -> Doing | None:
        assessment = self.desk.judged()
        if words.remedy is None or assessment is None:
            return None
        finding = next((f for f in assessment.of(words.topic) if words.remedy in f.remedies), None)
        return None if finding is None else self._remedy(words.remedy, finding)

    def _open_plan(self) -> None:
        self._is_plan_open = True
        self._place_plan()
        self.plan.edit_act.setFocus()

    def _close_plan(self) -> None:
        was_open, self._is_plan_open = self._is_plan_open, False
        self._place_plan()
        if was_open and self._fold.middle:
            self.first().setFocus()

    def _place_plan(self) -> None:
        folded, is_open = self._fold.middle, self._is_plan_open
        self.plan.setVisible(not folded or is_open)
        self._right.setVisible(not folded or not is_open)
        self._upright.setVisible(not folded)
        self.plan_act.setVisible(folded)
        self.plan.board_act.setVisible(folded)
        self.plan.setMinimumWidth(look.px(328))
        self.plan.setMaximumWidth(look.px(560) if folded else look.px(328))

    def _keep_room_of_bar(self, _least: int, most: int) -> None:
        """Board and picture keep their width whether there is a scroll bar or not."""
        self._inside_rows.setContentsMargins(0, 0, look.px(BAR - RING) if most == 0 else 0, 0)

    def _place_band(self) -> None:
        """The questions stay in sight above the board; in one column they scroll with it."""
        self._top_row.setContentsMargins(look.px(RING), 0, look.px(RING if self._fold.narrow else BAR), 0)
        if self._fold.narrow:
            self._inside_rows.insertWidget(0, self._top)
        else:
            self._right_rows.insertWidget(0, self._top)

    def _connect(self) -> None:
        self.plan.edit.connect(self.acts.edit_plan)
        self.plan.power.connect(self.acts.edit_power)
        self.plan.repack.connect(lambda: self.desk.show("repack"))
        self.plan.board.connect(self._close_plan)
        self.plan_act.clicked.connect(self._open_plan)
        self.band.asked.connect(self.ask)
        self.board.pressed.connect(lambda topic: self.open_topic(Topic(topic)))
        self.board.acted.connect(self._act_of_tile)

    def _assemble(self) -> None:
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        self._stack = QStackedWidget()
        whole.addWidget(self._stack)
        self.empty = self._empty()
        self._stack.addWidget(self.empty)
        filled = QWidget()
        self._stack.addWidget(filled)
        row = QHBoxLayout(filled)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        self._right, self._upright = QWidget(), Hairline(upright=True)
        row.addWidget(self.plan)
        row.addWidget(self._upright)
        row.addWidget(self._right, 1)
        self._right_rows = QVBoxLayout(self._right)
        self._right_rows.setSpacing(look.px(4))
        self.plan_act = Button(_("Plan"))
        self.plan_act.setAccessibleName(_("Show the plan"))
        self._top = QWidget()
        top = self._top_row = QHBoxLayout(self._top)
        top.setSpacing(look.px(12))
        top.addWidget(self.band, 1)
        top.addWidget(self.plan_act, 0, Qt.AlignmentFlag.AlignTop)
        self._right_rows.addWidget(self._top)
        self._right_rows.addWidget(self._scrolled(), 1)

    def _scrolled(self) -> QScrollArea:
        self.scroller = QScrollArea()
        self.scroller.setFrameShape(QFrame.Shape.NoFrame)
        self.scroller.setWidgetResizable(True)
        self.scroller.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.scroller.verticalScrollBar().rangeChanged.connect(self._keep_room_of_bar)
        self.scroller.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._inside = QWidget()
        rows = self._inside_rows = QVBoxLayout(self._inside)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(look.px(4))
        self.outdated = Outdated()
        rows.addWidget(self.outdated)
        rows.addWidget(self.board)
        self._view_rows = QVBoxLayout()
        self._view_rows.setContentsMargins(look.px(RING), 0, look.px(RING), 0)
        self._view_rows.setSpacing(look.px(8))
        self._view_rows.addWidget(Hairline())
        rows.addLayout(self._view_rows)
        rows.addStretch()
        self.scroller.setWidget(self._inside)
        return self.scroller

    def _empty(self) -> EmptyState:
        empty = EmptyState(
            _("No outing yet"),
            _(
                "Say what kind of flight, how long and how cold it may get:\n"
                "the list, the lanes and the ruler follow from it."
            ),
            _("A guess for each figure is enough to begin; it is shown as a guess."),
        )
        empty.act(_("New outing"), Rank.MAIN).clicked.connect(self.acts.new_outing)
        empty.offer_demo(self.desk.open_demo)
        return empty
