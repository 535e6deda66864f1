"""Recordings that are read, looked at, corrected and confirmed; nothing is entered before that."""

from collections.abc import Sequence
from functools import partial
from pathlib import Path

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QGuiApplication, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.background import Background
from kitlog.desktop.desk import MANY, Desk
from kitlog.desktop.flights_page.log import airtime_text
from kitlog.desktop.flights_page.proposal_draft import Draft, draft_of, has_seconds, kept
from kitlog.desktop.flights_page.proposal_side import ProposalSide
from kitlog.desktop.flights_page.recording_reading import Reading
from kitlog.desktop.flights_page.recording_table import RecordingModel, RecordingTable
from kitlog.desktop.import_page.waiting import Waiting
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import DateField
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.kit.flights import Flight
from kitlog.paint.type_scale import Role
from kitlog.wording.recording_report import RULE, counts_line, outcome_lines
from kitlog.wording.translate import _, ngettext

WIDE, HIGH = 980, 700
"""Width and height where there is room, in px of the design."""
SIDE, SIDE_SCARCE, SCARCE = 332, 260, 800
"""Width of what stands beside the list, usually and in a dialog narrower than the last, in px of the design."""
LOW = 200
"""Least height of the list; a dialog that is lower is scrolled."""


class RecordingsDialog(Dialog):
    """What a batch of recordings holds.

    Args:
        desk: the desk.
        paths: files and folders.

    Attributes:
        written: the flights that were entered.
    """

    def __init__(self, desk: Desk, paths: Sequence[Path], parent: QWidget | None) -> None:
        super().__init__(_("Read recordings"), _("Enter flights"), parent, wide=WIDE)
        self._desk, self._paths = desk, paths
        self._touched = False
        self.drafts: list[Draft] = []
        self.written: tuple[Flight, ...] = ()
        self._reading = Reading(desk.bench.flight_source(), paths)
        self.background = Background(self)
        self._build()
        self.background.done.connect(self._read)
        self.background.going.connect(self._going)
        self.background.broke.connect(self._broke)
        self._ask()

    def changed(self) -> bool:
        """Whether the pilot has decided anything, which leaving would lose."""
        return self._touched

    def accept(self) -> None:
        """Enter what is ticked, in one step."""
        if self.background.busy or not self.main.isEnabled():
            return
        confirmed = [draft.confirmed() for draft in self.drafts if draft.ticked]
        batch = [draft.proposal for draft in self.drafts]
        done: list[tuple[Flight, ...]] = []

        def enter() -> None:
            done.append(self._desk.bench.import_flights(confirmed, batch))

        write = enter if len(confirmed) < MANY else partial(self._desk.write_apart, enter)
        if self.attempt(write) and done:
            self.written = done[0]
            self.background.let_go()
            super().accept()

    def discard(self) -> None:
        """Leave it: a reading that goes on is for nobody."""
        self._reading.stopped.set()
        self.background.let_go()
        super().discard()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return in a field never enters flights: the button has to be pressed itself."""
        if event.key() not in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            super().keyPressEvent(event)

    def sizeHint(self) -> QSize:
        """Large, but never larger than most of the screen."""
        room = self.screen().availableGeometry()
        return QSize(min(look.px(WIDE), round(room.width() * 0.94)), min(look.px(HIGH), round(room.height() * 0.92)))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """With large letters the list keeps what tells flights apart; the rest stands beside it."""
        super().resizeEvent(event)
        wide = self.width() / max(look.px(1000), 1) * 1000
        scarce = wide < SCARCE
        self.side_area.setFixedWidth(look.px(SIDE_SCARCE if scarce else SIDE))
        self.table.show_columns(scarce=scarce)

    def report(self) -> str:
        """One line a file and what is to be said of it, as text."""
        names = self._desk.names()
        lines = [
            line
            for draft in self.drafts
            for line in outcome_lines(draft.proposal.outcome, draft.booked, draft.proposal.notes, names)
        ]
        return "\n".join([*lines, "", self.counts.text()])

    def _ask(self) -> None:
        self.main.setEnabled(False)
        self.say_wrong("")
        self.background.ask(self._reading)

    def _again(self) -> None:
        """Read anew, with a day for what has none; what was decided stays."""
        if self.day.is_wrong():
            self.say_wrong(self.day.wrong_text())
            return
        self._reading = Reading(self._desk.bench.flight_source(), self._paths, self.day.day())
        self._ask()

    def _going(self, seconds: float, share: float) -> None:
        self.waiting.tell(seconds, share, self._reading.said())
        self.want(_("The recordings are being read."))

    def _stop(self) -> None:
        """What was read so far stays."""
        self._reading.stopped.set()

    def _broke(self) -> None:
        self.waiting.hide()
        self.want(_("kitlog failed at these recordings; please report it."))

    def _read(self, reading: object) -> None:
        if not isinstance(reading, Reading):
            return
        books = not reading.source.sets.is_empty
        self.waiting.hide()
        self.drafts = kept(self.drafts, [draft_of(one, books=books) for one in reading.proposals])
        self.model.put(self.drafts)
        self._say_undated(sum(_is_undated(draft) for draft in self.drafts))
        for part in self._result:
            part.setVisible(bool(self.drafts))
        if self.drafts:
            first = next((n for n, draft in enumerate(self.drafts) if draft.is_asked), 0)
            self.table.select(first)
            self.table.setFocus()
        self._told()
        self.settle()

    def _say_undated(self, n: int) -> None:
        said = ngettext(
            "{n} recording has no date. It was made on", "{n} recordings have no date. They were made on", n
        )
        self.undated_said.setText(said.format(n=n))
        self.undated.setVisible(n > 0)

    def _selected(self) -> None:
        row = self.table.currentIndex().row()
        self.side.put(self.drafts[row] if 0 <= row < len(self.drafts) else None, self._reading.source.sets)
        self.side_area.verticalScrollBar().setValue(0)

    def _toggle(self, row: int) -> None:
        draft = self.drafts[row]
        if draft.is_flight:
            draft.ticked = not draft.ticked
            self._touched = True
            self._told()

    def _tick_all(self) -> None:
        """Tick all flights about which nothing is asked; if all of them are, none."""
        plain = [draft for draft in self.drafts if draft.is_flight and not draft.is_asked]
        wanted = not all(draft.ticked for draft in plain)
        for draft in plain:
            draft.ticked = wanted
        self._touched = True
        self._told()

    def _decided(self) -> None:
        self._touched = True
        self._told()

    def _spread(self) -> None:
        """Book all flights on what was flown in this one; what was carried stays with its day."""
        flown = self.side.flown.booked.flown
        for draft in self.drafts:
            if draft.is_flight and draft.booked.flown != flown:
                draft.book_on(flown)
        self._decided()

    def _told(self) -> None:
        """Say anew what would be entered."""
        self.model.changed()
        self.side.tell()
        ticked = [draft for draft in self.drafts if draft.ticked]
        minutes = sum(draft.minutes for draft in ticked if not draft.on_ground)
        said = ngettext("{n} flight to enter, {airtime}", "{n} flights to enter, {airtime}", len(ticked))
        self.sum.setText(said.format(n=len(ticked), airtime=airtime_text(minutes)))
        self.counts.setText(self._count())
        self.want(self._wanted(ticked))
        self.main.say(_("Enter flights") if ticked or not has_seconds(self.drafts) else _("Remember recordings"))

    def _count(self) -> str:
        said = counts_line(draft.proposal.outcome for draft in self.drafts) if self.drafts else ""
        reading = self._reading
        if reading.stopped.is_set() and reading.done < reading.of:
            return _("{counts}; stopped, {n} not read").format(counts=said, n=reading.of - reading.done)
        return said

    def _wanted(self, ticked: Sequence[Draft]) -> str:
        if ticked or has_seconds(self.drafts):
            return ""
        if any(draft.is_flight for draft in self.drafts):
            return _("No flight is ticked.")
        return _("There is no flight to enter.")

    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(self.report())

    def _show_rule(self) -> None:
        self.rule.setVisible(self.rule.isHidden())

    def _build(self) -> None:
        bench = self._desk.bench
        self.waiting = Waiting()
        self.waiting.stopped.connect(self._stop)
        self.model = RecordingModel()
        self.table = RecordingTable(self.model)
        self.table.toggled.connect(self._toggle)
        self.table.selectionModel().selectionChanged.connect(lambda _on, _off: self._selected())
        latest = sorted(bench.flights(), key=lambda flight: flight.on, reverse=True)
        sites = [*(flight.site for flight in latest), *(outing.site.name for outing in bench.outings())]
        self.side = ProposalSide(bench.items(), tuple(dict.fromkeys(filter(None, sites))))
        self.side.changed.connect(self._decided)
        self.side.spread.connect(self._spread)
        self.counts, self.sum = Paragraph("", Role.SECOND, "muted"), Text("", Role.GROUP)
        for part in (self._build_head(), self._build_undated(), self.waiting, self._build_rule()):
            self.body.addWidget(part)
        self.body.addWidget(self._build_sides(), 1)
        self._result: tuple[QWidget, ...] = (self.head, self.table, self.side_area)
        for part in self._result:
            part.hide()

    def _build_head(self) -> QWidget:
        self.head = head = WrapRow(gap=16)
        acts = (
            (_("Tick or untick all"), self._tick_all),
            (_("Copy the report"), self._copy),
            (_("How take-off and landing are told"), self._show_rule),
        )
        head.add(self.sum)
        head.add(self.counts, wide=True)
        for words, do in acts:
            act = Button(words, Rank.ACT)
            act.clicked.connect(lambda _on=False, do=do: do())
            head.add(act)
        return head

    def _build_undated(self) -> QWidget:
        self.undated = WrapRow(gap=8)
        self.undated_said, self.day = Text("", Role.SECOND), DateField()
        self.day.setAccessibleName(_("Day of recordings without a date"))
        again = Button(_("Read again"))
        again.clicked.connect(self._again)
        self.undated.add(self.undated_said, self.day, again)
        self.undated.hide()
        return self.undated

    def _build_rule(self) -> QWidget:
        self.rule = QWidget()
        rows = QVBoxLayout(self.rule)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(look.px(4))
        for text in RULE:
            rows.addWidget(Paragraph(_(text), Role.SMALL))
        self.rule.hide()
        return self.rule

    def _build_sides(self) -> QWidget:
        sides = QWidget()
        sides.setMinimumHeight(look.px(LOW))
        row = QHBoxLayout(sides)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.px(16))
        row.addWidget(self.table, 1)
        self.side_area = QScrollArea()
        self.side_area.setFrameShape(QFrame.Shape.NoFrame)
        self.side_area.setWidgetResizable(True)
        self.side_area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.side_area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.side_area.setFixedWidth(look.px(SIDE))
        self.side_area.setWidget(self.side)
        row.addWidget(self.side_area)
        return sides


def _is_undated(draft: Draft) -> bool:
    undated = {"recording.no_date", "recording.date_is_none"}
    return any(reason.code in undated for reason in draft.proposal.outcome.reasons)
