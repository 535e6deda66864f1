"""What can be done on the page Repack: the handlers of its actions."""

from typing import TYPE_CHECKING

from kitlog.desktop.repack_page.progress import CLOSED, OpenStop
from kitlog.desktop.repack_page.rows import Row, RowKind
from kitlog.desktop.repack_page.step_words import STEPS
from kitlog.outing.ticks import Step, Tick, TickMark
from kitlog.wording.charge_text import summary_text
from kitlog.wording.findings import say
from kitlog.wording.sheet_words import line_name
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper

if TYPE_CHECKING:
    from kitlog.desktop.repack_page.page import RepackPage

LISTED = frozenset({Step.LAY_OUT, Step.STOW})
"""Steps whose lines can be missing or swapped."""


class RepackActs:
    """The acts of a page Repack."""

    def __init__(self, page: "RepackPage") -> None:
        self._page = page
        self._desk = page.desk
        self._bench = page.desk.bench

    def tick(self) -> None:
        """Tick the current line or take its tick away; what was missing counts as found again."""
        row, progress = self._page.current(), self._page.progress
        if row is None or not row.key or progress is None:
            return
        if row.missing:
            self._put(Step.LAY_OUT, row.key, TickMark.DONE)
        elif progress.is_done(self._page.step, row.key):
            self._take(self._page.step, row.key)
        else:
            self._put(self._page.step, row.key, TickMark.DONE)

    def mark_missing(self) -> None:
        """Say that the current line was looked for and not found, or take that back."""
        row = self._page.current()
        if row is None or not row.key or self._page.step not in LISTED:
            return
        if row.missing:
            self._take(Step.LAY_OUT, row.key)
        else:
            self._put(Step.LAY_OUT, row.key, TickMark.MISSING)

    def swap(self) -> None:
        """Let something else go instead of the current line, or do what its exception proposes."""
        row, progress = self._page.current(), self._page.progress
        if row is None or progress is None or self._page.step not in LISTED:
            return
        if row.kind is RowKind.EXCEPTION and not row.item_id:
            self._page.remedy(row)
            return
        line = progress.assessment.line(row.item_id)
        if line is None:
            return
        from kitlog.desktop.repack_page.swap_dialog import SwapDialog
        from kitlog.desktop.repack_page.swaps import swaps

        offered = tuple(swaps(line, progress.assessment, self._bench))
        if offered:
            SwapDialog(self._desk, progress.assessment.outing.id, line, offered, self._page).exec()
        elif row.kind is RowKind.EXCEPTION and row.finding is not None:
            self._page.remedy(row)
        else:
            self._page.say(_("Nothing else in the kit could go instead of {item}.").format(item=line.item.name))

    def next_step(self) -> None:
        """The step after this one."""
        self._step(1)

    def previous_step(self) -> None:
        """The step before this one."""
        self._step(-1)

    def show_drawing(self) -> None:
        """Show where everything rides."""
        self._page.show_drawing()

    def edit_evening(self) -> None:
        """Hours and place of the charging."""
        from kitlog.desktop.repack_page.evening_dialog import EveningDialog

        progress = self._page.progress
        if progress is not None:
            things = tuple(charge.item for charge in progress.charges)
            known = self._bench.asked_evening(progress.assessment).times
            EveningDialog(self._desk, progress.assessment.outing, known, things, self._page).exec()

    def enter_on_hand(self) -> None:
        """Go to the field for the charge on hand of the current line of charging."""
        self._page.open_step(Step.CHARGE)
        if self._page.charged_item() is not None:
            self._page.charge_head.begin()

    def note_on_hand(self, pct: float | None) -> None:
        """Note the charge with which the thing of the current line is seen."""
        item = self._page.charged_item()
        if item is not None:
            self._desk.perform(lambda: self._bench.note_on_hand({item.id: pct}))

    def show_storage(self) -> None:
        """Show what lies unused, and to which charge it is brought."""
        from kitlog.desktop.service_page.storage_dialog import StorageDialog

        StorageDialog(self._desk, self._page).exec()

    def mark_swollen(self) -> None:
        """Note that the battery of the current line is swollen, or take that back."""
        row = self._page.current()
        item = self._bench.item(row.item_id) if row is not None and row.item_id else None
        if item is None:
            return
        swollen = item.battery is None or item.battery.swollen_on is None
        if self._desk.perform(lambda: self._bench.note_swollen(item.id, swollen=swollen)) and swollen:
            self._page.say(_("{item}: noted as swollen. Do not take it, do not charge it.").format(item=item.name))

    def start_as_planned(self) -> None:
        """Let the outing begin with the charges that the plan ends with."""
        plan = self._page.planner.plan
        if plan is None or self._page.planner.outdated:
            self._page.say(_("The evening is not worked out yet: open the step Charge."))
        elif not plan.has_charger:
            self._page.say(summary_text(plan))
        elif self._desk.perform(lambda: self._bench.start_as_planned(self._page.outing_id, plan)):
            self._page.say(_("The outing now begins with the planned charges."))

    def close_repack(self) -> None:
        """Ask whether to, if lines are still to be stowed; then a reason for each open stop; then close."""
        progress = self._page.progress
        if progress is None or progress.closed is not None:
            return
        if progress.to_stow:
            self._page.ask_to_close(progress.to_stow)
        else:
            self.close_now()

    def close_now(self) -> None:
        """Ask a reason for each open stop, then close; left in between, what was written stays."""
        progress = self._page.progress
        if progress is None:
            return
        stops = progress.open_stops()
        for number, stop in enumerate(stops, start=1):
            if not self._reason(stop, f"{number} / {len(stops)}"):
                return
        self._put(Step.CLOSE, CLOSED, TickMark.DONE)
        self._page.open_step(Step.CLOSE)

    def open_again(self) -> None:
        """Take the closing back; the reasons stay on record."""
        if self._page.progress is not None and self._page.progress.closed is not None:
            self._take(Step.CLOSE, CLOSED)

    def save_sheet(self) -> None:
        """Save the sheet as one HTML file, for the phone."""
        from kitlog.desktop.repack_page.sheet_saving import ask_html, write_html

        progress = self._page.progress
        to = None if progress is None else ask_html(self._desk, progress.assessment, self._page)
        if progress is not None and to is not None and write_html(self._desk, progress.assessment, to):
            self._page.say(_("Sheet saved: {file}").format(file=to.name))

    def save_sheet_pdf(self) -> None:
        """Save the sheet as PDF, to print."""
        from kitlog.desktop.repack_page.sheet_saving import ask_pdf, write_pdf

        progress = self._page.progress
        asked = None if progress is None else ask_pdf(self._desk, progress.assessment, self._page)
        if progress is not None and asked is not None and write_pdf(self._desk, progress.assessment, *asked):
            self._page.say(_("Sheet saved: {file}").format(file=asked[0].name))

    def _reason(self, stop: OpenStop, place: str) -> bool:
        from kitlog.desktop.outing_page.override_dialog import OverrideDialog

        title, sentence = self._told(stop)
        outing = self._page.outing_id
        return bool(OverrideDialog(self._desk, outing, stop.key, title, sentence, self._page, place).exec())

    def _told(self, stop: OpenStop) -> tuple[str, str]:
        if stop.finding is not None:
            said = say(stop.finding, self._desk.names())
            return first_upper(said.title), first_upper(said.sentence)
        name = line_name(stop.line) if stop.line is not None else stop.key
        return name, _("Missing, and an essential need of this outing.")

    def _step(self, by: int) -> None:
        at = STEPS.index(self._page.step) + by
        if 0 <= at < len(STEPS):
            self._page.open_step(STEPS[at])

    def _put(self, step: Step, line: str, mark: TickMark) -> None:
        bench = self._bench
        tick = Tick(outing_id=self._page.outing_id, step=step, line=line, mark=mark, at=bench.now(), who=bench.who)
        self._desk.perform(lambda: bench.tick(tick))

    def _take(self, step: Step, line: str) -> None:
        self._desk.perform(lambda: self._bench.untick(self._page.outing_id, step, line))


def is_tickable(row: Row | None) -> bool:
    """Whether a row can be ticked, missed or swapped."""
    return row is not None and row.can_stand
