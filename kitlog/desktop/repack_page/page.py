"""The page Repack."""

from typing import ClassVar

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from kitlog.budget.result import Finding, Remedy
from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.fold import Fold
from kitlog.desktop.outing_page.asking import ask, ask_reason
from kitlog.desktop.outing_page.finding_rows import Doing, RowActs
from kitlog.desktop.outing_page.remedies import Remedies
from kitlog.desktop.page import Page
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.empty import EmptyState
from kitlog.desktop.parts.key_cap import KeyRow
from kitlog.desktop.parts.line import Hairline
from kitlog.desktop.parts.question_strip import QuestionStrip
from kitlog.desktop.parts.text import CutText, Text
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.desktop.repack_page.acts import LISTED, RepackActs, is_tickable
from kitlog.desktop.repack_page.charge_head import ChargeHead
from kitlog.desktop.repack_page.charge_planner import ChargePlanner
from kitlog.desktop.repack_page.charge_rows import Shown
from kitlog.desktop.repack_page.close_view import CloseView
from kitlog.desktop.repack_page.evening_panel import EveningDialogue, EveningPanel, Unused
from kitlog.desktop.repack_page.footer import Footer, foot_words
from kitlog.desktop.repack_page.offer_book import OfferBook
from kitlog.desktop.repack_page.progress import Progress
from kitlog.desktop.repack_page.row_list import RowList
from kitlog.desktop.repack_page.rows import Row
from kitlog.desktop.repack_page.step_rows import rows_of
from kitlog.desktop.repack_page.step_strip import StepStrip
from kitlog.desktop.repack_page.step_words import TITLES, first_open, step_words
from kitlog.desktop.repack_page.zone_view import ZoneView
from kitlog.desktop.repack_page.zone_words import zone_picture
from kitlog.fault import Fault
from kitlog.kit.item import Item
from kitlog.outing.ticks import Step
from kitlog.packing.charging import Charge
from kitlog.packing.evening_plan import other_starts
from kitlog.packing.storage_due import at_home, to_do
from kitlog.paint.type_scale import Role
from kitlog.wording.charge_text import other_starts_text
from kitlog.wording.figures import kg_text
from kitlog.wording.translate import _, ngettext

MOST_NAMED = 6
"""So many lines that are still to be stowed are named; the rest is counted."""

PLANNED = frozenset({Step.LAY_OUT, Step.CHARGE, Step.STOW})
"""Steps whose rows say how the charging goes."""

SAID_MS = 6000
"""How long a remark stands beside the keys."""


class RepackPage(Page):
    """Five steps, a list to tick, where it rides, and the foot.

    Attributes:
        step: the step that is open.
        progress: where the repack stands, None without an outing.
        planner: the evening's plan of charging.
    """

    acts_class: ClassVar[type] = RepackActs
    concerns: ClassVar[frozenset[str]] = frozenset(
        {"outing", "item", "rule", "record", "event", "flight", "pilot", "preference", "tick"}
    )

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.acts: RepackActs = RepackActs(self)
        self.step = Step.EMPTY
        self.progress: Progress | None = None
        self.outing_id = ""
        self.question = QuestionStrip()
        self._fold = Fold()
        self._remedies = Remedies(desk, self, lambda: desk.show("outing"))
        self._offers = OfferBook(desk.bench, self._offers_known)
        self.strip, self.footer = StepStrip(), Footer()
        self.list, self.closing = RowList(_("Lines of this step")), CloseView()
        self.planner = ChargePlanner(self)
        self.charge_head, self.evening = ChargeHead(), EveningPanel()
        self.drawing, self.bars = ZoneView(bars=False), ZoneView(bars=True)
        self._quiet = QTimer(self)
        self._quiet.setSingleShot(True)
        self._quiet.setInterval(SAID_MS)
        self._assemble()
        self._connect()

    def reload(self) -> None:
        """Read outing and ticks anew; ticks alone are not assessed again, and what was asked before is out of date."""
        if self.question.withdraw():
            self.first().setFocus()
        outing = self.desk.outing()
        try:
            assessment = self.desk.assessment()
        except Fault as fault:
            self.desk.faulted.emit(fault)
            return
        self._stack.setCurrentIndex(0 if outing is None or assessment is None else 1)
        if outing is None or assessment is None:
            self.progress, self.outing_id = None, ""
            return
        self.progress = Progress(assessment, self.desk.bench.library, self.desk.bench.ticks(outing.id))
        if outing.id != self.outing_id:
            self.outing_id = outing.id
            self.step = first_open(self.progress)
        self._show(self.progress)

    def open_step(self, step: Step) -> None:
        """Show another step."""
        if self.progress is None:
            return
        self.step = step
        self.question.withdraw()
        self._show(self.progress)
        self.list.scrollToTop()
        self.first().setFocus()
        self.desk.selected.emit()

    def current(self) -> Row | None:
        """The row on which the keys stand, None where the step is no list."""
        return None if self.step is Step.CLOSE else self.list.current()

    def charged_item(self) -> Item | None:
        """The thing on whose line the keys stand while charging."""
        row = self.current() if self.step is Step.CHARGE else None
        return self.desk.bench.item(row.item_id) if row is not None and row.item_id else None

    def say(self, text: str) -> None:
        """Show a remark for a while, where the step's title stands."""
        self.remark.setText(text)
        self.remark.setVisible(bool(text))
        self.remark.setAccessibleName(text)
        self._show_keys()
        self._quiet.start()

    def ask_to_close(self, to_stow: tuple[str, ...]) -> None:
        """Ask, with what is still to be stowed, whether the repack is to be closed all the same."""
        names, n = self.desk.names(), len(to_stow)
        what = ngettext(
            "{n} line is not stowed yet. Close all the same?", "{n} lines are not stowed yet. Close all the same?", n
        )
        listed = ", ".join(names.get(line, line) for line in to_stow[:MOST_NAMED])
        more = n - MOST_NAMED
        rest = ngettext("{listed} and {n} more", "{listed} and {n} more", more).format(listed=listed, n=more)
        self.question.ask(
            what.format(n=n),
            rest if more > 0 else listed,
            (_("Close repack"), self.acts.close_now),
            (_("Go on stowing"), lambda: self._go_on(to_stow[0])),
        )

    def _go_on(self, line: str) -> None:
        self.open_step(Step.STOW)
        self.list.stand_on_key(line)

    def remedy(self, row: Row) -> None:
        """Do what an exception proposes first."""
        if row.finding is not None and row.finding.remedies:
            do = self._remedy(row.finding.remedies[0], row.finding)
            if do is not None:
                do()
            else:
                self.say(row.right)

    def show_drawing(self) -> None:
        """Go to what stands beside the list; where it has no room, it opens over the page."""
        if self.step is Step.CHARGE:
            if self._fold.narrow:
                EveningDialogue(self._evening(), self._charges(), self.desk.names(), self._unused(), self).exec()
            else:
                self.evening.setFocus(Qt.FocusReason.OtherFocusReason)
        elif not self._fold.middle:
            self.drawing.setFocus(Qt.FocusReason.OtherFocusReason)
        elif self.progress is not None:
            from kitlog.desktop.repack_page.drawing_dialog import DrawingDialog

            DrawingDialog(zone_picture(self.progress), self._zone_of_row(), self).exec()

    def lay_out(self, fold: Fold) -> None:
        """Bars instead of the drawing, a lower strip, less room at the sides."""
        self._fold = fold
        px = look.px
        side = px(fold.side_px)
        self._top.setContentsMargins(side, px(fold.head_px(16)), side, px(8 if fold.low else 16))
        self._left_rows.setContentsMargins(side, 0, px(12), 0)
        self._right_rows.setContentsMargins(px(16 if fold.middle else 23), 0, side, px(8))
        self.strip.fold(low=fold.low)
        self.footer.fold(fold)
        self.drawing.setVisible(not fold.middle)
        self._bar_box.setVisible(fold.middle)
        self._right.setFixedWidth(px(288 if fold.middle else 512))
        self._right.setVisible(not fold.narrow)
        self._upright.setVisible(not fold.narrow)
        self.narrow_act.setVisible(fold.narrow)
        self._show_keys()

    def first(self) -> QWidget:
        """The list, the first open question, or the first act of the empty state."""
        if self.progress is None:
            return self.empty.buttons[0]
        return self.closing.first() if self.step is Step.CLOSE else self.list

    def show_this(self, what: str) -> None:
        """Open a step by its word, or go to a line."""
        if what in {step.value for step in Step}:
            self.open_step(Step(what))
        elif what and not self.list.stand_on_key(what) and self.step not in LISTED:
            self.open_step(Step.STOW)
            self.list.stand_on_key(what)

    def leave(self) -> None:
        """The window closes: no plan is wanted any more."""
        self.planner.stop()

    def selected(self) -> dict[str, int]:
        """Whether a line can be ticked."""
        return {"repack": int(is_tickable(self.current()))}

    def take_list_actions(self, actions: dict[str, QAction]) -> None:  # type: ignore[override]
        """Space, M and S work in the list."""
        for name in ("repack.tick", "repack.missing", "repack.swap"):
            self.list.addAction(actions[name])

    def _show(self, progress: Progress) -> None:
        self.strip.show_steps(step_words(progress, self.step))
        self.title.setText(_(TITLES[self.step]))
        is_close = self.step is Step.CLOSE
        self._steps.setCurrentIndex(1 if is_close else 0)
        if is_close:
            self.closing.show_progress(
                progress, self.desk.names(), RowActs(self._remedy, lambda finding: ask_reason(self.desk, finding, self))
            )
        else:
            self._show_rows(progress)
        self._show_beside()
        self._mark_zone()
        picture = zone_picture(progress)
        self.drawing.show_zones(picture)
        self.bars.show_zones(picture)
        self.pack.setText(_("on the back {mass}").format(mass=kg_text(progress.assessment.mass.pack_g)))
        self.footer.show_words(foot_words(progress))
        self._show_keys()

    def _show_beside(self) -> None:
        """The evening beside the charging, else where everything rides."""
        charging = self.step is Step.CHARGE
        self.charge_head.setVisible(charging)
        self._beside.setCurrentIndex(1 if charging else 0)
        self.narrow_act.say(_("Plan") if charging else _("Drawing"))
        self.narrow_act.setAccessibleName(_("Show the evening by the clock") if charging else _("Show where it rides"))

    def _evening(self) -> Shown:
        return Shown(self.planner.plan, self.planner.outdated, self.desk.bench.now())

    def _charges(self) -> tuple[Charge, ...]:
        return self.progress.charges if self.progress is not None else ()

    def _unused(self) -> Unused:
        """What lies at home and wants its storage charge; what goes along does not lie."""
        assessment = self.progress.assessment if self.progress is not None else None
        lines = to_do(at_home(self.desk.bench.storage_due(), assessment))
        return Unused(lines, self.desk.bench.now(), self.acts.show_storage)

    def _plan_charging(self, progress: Progress) -> None:
        """Ask for the evening's plan where it is shown; a fault of the kit's figures is told."""
        if self.step not in PLANNED:
            return
        try:
            asked = self.desk.bench.asked_evening(progress.assessment)
        except Fault as fault:
            self.desk.faulted.emit(fault)
            return
        self.planner.turn_to(self.outing_id, asked, helped=self.step is Step.CHARGE)
        if self.step is Step.CHARGE:
            self._show_evening()

    def _show_evening(self) -> None:
        shown = self._evening()
        self.charge_head.show_plan(shown)
        self.charge_head.show_starts(self._other_starts(shown))
        self.evening.show_plan(shown, self._charges(), self.desk.names(), self._unused())
        self._show_on_hand()

    def _other_starts(self, shown: Shown) -> str:
        """What the outing begins with where the plan, worked out, ends otherwise."""
        if shown.plan is None or shown.outdated or self.progress is None:
            return ""
        others = other_starts(shown.plan, self.progress.assessment.outing)
        return other_starts_text(others, self.desk.names())

    def _show_on_hand(self) -> None:
        item = self.charged_item()
        battery = item.battery if item is not None else None
        self.charge_head.show_item(item, battery.on_hand_pct if battery else None)

    def _replanned(self) -> None:
        if self.progress is not None and self.step in PLANNED:
            self.list.put(rows_of(self.step, self.progress, self.desk.names(), self._offers.known(), self._evening()))
        if self.step is Step.CHARGE:
            self._show_evening()

    def _digit(self, text: str) -> None:
        if self.charged_item() is not None:
            self.charge_head.begin(text)

    def _show_rows(self, progress: Progress) -> None:
        self._offers.turn_to(progress)
        self._plan_charging(progress)
        rows = rows_of(self.step, progress, self.desk.names(), self._offers.known(), self._evening())
        self.list.put(rows)
        self.list.setAccessibleName(_("Lines to tick: {step}").format(step=_(TITLES[self.step])))
        self._offers.look_up(rows)

    def _offers_known(self) -> None:
        """An offer was found out: show it."""
        if self.progress is not None and self.step is not Step.CLOSE:
            self.list.put(rows_of(self.step, self.progress, self.desk.names(), self._offers.known(), self._evening()))

    def _show_keys(self) -> None:
        """The keys that do something in this step, where there is room."""
        fit = self.step is not Step.CLOSE and not self.remark.text() and not self._fold.tight
        self.keys.setVisible(fit)
        self.more_keys.setVisible(fit and self.step in LISTED)

    def _zone_of_row(self) -> str | None:
        row = self.current()
        return row.zone.value if row is not None and row.zone is not None else None

    def _mark_zone(self) -> None:
        for view in (self.drawing, self.bars):
            view.select(self._zone_of_row())

    def _stood(self) -> None:
        self._mark_zone()
        if self.step is Step.CHARGE:
            self._show_on_hand()
        self.desk.selected.emit()

    def _to_zone(self, zone: str) -> None:
        """Bring the first line of a zone into view and stand on it."""
        rows = self.list.rows.rows
        found = next((n for n, row in enumerate(rows) if row.can_stand and row.zone and row.zone.value == zone), None)
        if found is not None:
            self.list.stand_on(found)

    def _remedy(self, remedy: Remedy, finding: Finding) -> Doing | None:
        outing = self.desk.outing()
        return None if outing is None else self._remedies.act(outing, remedy, finding)

    def _connect(self) -> None:
        self.strip.chosen.connect(lambda step: self.open_step(Step(step)))
        self.list.ticked.connect(self.acts.tick)
        self.list.missed.connect(self.acts.mark_missing)
        self.list.swapped.connect(self.acts.swap)
        self.list.stood.connect(self._stood)
        self.list.typed.connect(self._digit)
        self._connect_charging()
        for view in (self.drawing, self.bars):
            view.chosen.connect(self._to_zone)
        self.closing.asked.connect(lambda question: ask(self.desk, question, self))
        self.closing.sheet.connect(self.acts.save_sheet)
        self.closing.sheet_pdf.connect(self.acts.save_sheet_pdf)
        self.footer.close_act.clicked.connect(self.acts.close_repack)
        self.footer.reopen_act.clicked.connect(self.acts.open_again)
        for act in (self.drawing_act, self.narrow_act):
            act.clicked.connect(self.show_drawing)
        self._quiet.timeout.connect(lambda: self.say(""))

    def _connect_charging(self) -> None:
        self.planner.changed.connect(self._replanned)
        self.planner.faulted.connect(self.desk.faulted)
        self.charge_head.hours.connect(self.acts.edit_evening)
        self.charge_head.start.connect(self.acts.start_as_planned)
        self.charge_head.swollen.connect(self.acts.mark_swollen)
        self.charge_head.typed.connect(self.acts.note_on_hand)
        self.charge_head.unread.connect(self.say)
        self.charge_head.left.connect(self.list.setFocus)

    def _assemble(self) -> None:
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        self._stack = QStackedWidget()
        whole.addWidget(self._stack)
        self.empty = self._empty()
        self._stack.addWidget(self.empty)
        filled = QWidget()
        self._stack.addWidget(filled)
        rows = QVBoxLayout(filled)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(0)
        self._top = QHBoxLayout()
        self._top.addWidget(self.strip)
        rows.addLayout(self._top)
        middle = QHBoxLayout()
        middle.setSpacing(0)
        left, self._right, self._upright = QWidget(), QWidget(), Hairline(upright=True)
        middle.addWidget(left, 1)
        middle.addWidget(self._upright)
        middle.addWidget(self._right)
        rows.addLayout(middle, 1)
        rows.addWidget(self.footer)
        self._fill_left(left)
        self._fill_right()

    def _fill_left(self, left: QWidget) -> None:
        self._left_rows = QVBoxLayout(left)
        self._left_rows.setSpacing(look.px(8))
        self.title, self.remark = Text("", Role.TITLE), CutText("", Role.SECOND, "accent")
        self.remark.hide()
        always = (((_("Space"),), _("tick")), (("↑", "↓"), _("move")))
        self.keys, self.more_keys = KeyRow(always), KeyRow(((("M",), _("missing")), (("S",), _("swap"))))
        around, head = QHBoxLayout(), WrapRow(gap=12)
        around.setContentsMargins(0, 0, look.px(12), 0)
        around.addWidget(head)
        head.add(self.title)
        head.add(self.remark, wide=True)
        self.narrow_act = Button(_("Drawing"), Rank.ACT)
        self.narrow_act.setAccessibleName(_("Show where it rides"))
        self.narrow_act.hide()
        head.add(self.keys, pushed=True)
        head.add(self.more_keys, self.narrow_act, pushed=True)
        self._left_rows.addLayout(around)
        self._left_rows.addWidget(self.question)
        self._left_rows.addWidget(self.charge_head)
        self.charge_head.hide()
        self._steps = QStackedWidget()
        self._steps.addWidget(self.list)
        self._steps.addWidget(self.closing)
        self._left_rows.addWidget(self._steps, 1)

    def _fill_right(self) -> None:
        self._right_rows = QVBoxLayout(self._right)
        self._beside, riding = QStackedWidget(), QWidget()
        self._beside.addWidget(riding)
        self._beside.addWidget(self.evening)
        self._right_rows.addWidget(self._beside, 1)
        riding_rows = QVBoxLayout(riding)
        riding_rows.setContentsMargins(0, 0, 0, 0)
        riding_rows.addWidget(self.drawing, 1)
        self._bar_box = QWidget()
        rows = QVBoxLayout(self._bar_box)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(self.bars)
        foot = QHBoxLayout()
        self.drawing_act = Button(_("Drawing"), Rank.ACT)
        self.drawing_act.setAccessibleName(_("Show the drawing"))
        self.pack = Text("", Role.SMALL, "muted")
        foot.addWidget(self.drawing_act)
        foot.addStretch()
        foot.addWidget(self.pack)
        rows.addLayout(foot)
        rows.addStretch()
        riding_rows.addWidget(self._bar_box, 1)
        self._bar_box.hide()

    def _empty(self) -> EmptyState:
        empty = EmptyState(
            _("Nothing to repack for"),
            _("The list follows from an outing: what kind of flight, how long, how cold.\nPlan one, and pack for it."),
        )
        plan = empty.act(_("New outing"), Rank.MAIN)
        plan.clicked.connect(lambda: self.desk.show("outing", "new"))
        empty.offer_demo(self.desk.open_demo)
        return empty
