"""One recording beside the list: what is asked, the figures that may be corrected, what was flown."""

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.flights_page.flown_ticks import FlownTicks
from kitlog.desktop.flights_page.log import airtime_text
from kitlog.desktop.flights_page.proposal_draft import Draft
from kitlog.desktop.flights_page.recording_table import becomes
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.chip import StateMark
from kitlog.desktop.parts.fields import ChoiceField, NumberField, TickField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.section import Section, clear
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.kit.item import Item
from kitlog.packing.flown_set import FlownSets
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.recording_report import flight_line, remarks, said_of
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper


class ProposalSide(QWidget):
    """The selected recording.

    Attributes:
        changed: the pilot decided something about it; spread: what was flown is wanted for all others too.
    """

    changed = Signal()
    spread = Signal()

    def __init__(self, items: Sequence[Item], sites: Sequence[str], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._draft: Draft | None = None
        self._sets: FlownSets | None = None
        self.state = StateMark()
        self.what = Paragraph("", Role.NAME, "ink")
        self._said = QVBoxLayout()
        self._said.setSpacing(look.px(4))
        self.hours, self.minutes = (
            NumberField("h", most=99, unknown="0 h"),
            NumberField("min", most=59, unknown="0 min"),
        )
        self.launches = NumberField(most=100, unknown="0")
        self.site = ChoiceField()
        self.site.setEditable(True)
        self.site.offer([(site, site) for site in ("", *sites)])
        self.ground = TickField(_("Ground handling: booked apart"))
        self.ground.setMinimumHeight(look.px(28))
        self.flown = FlownTicks(items)
        self.for_all = Button(_("The same for all flights"), Rank.ACT)
        self._assemble()
        self._listen()

    def put(self, draft: Draft | None, sets: FlownSets) -> None:
        """Show a recording."""
        self._draft, self._sets = draft, sets
        self.setVisible(draft is not None)
        if draft is None:
            return
        self.tell()
        clear(self._said)
        for text, tone in _lines(draft):
            self._said.addWidget(Paragraph(text, Role.SECOND, tone))
        for part in self._parts:
            part.setVisible(draft.is_flight)
        if draft.is_flight:
            self._put_figures(draft, sets)

    def tell(self) -> None:
        """Say anew what it becomes."""
        if self._draft is not None:
            word, mark = becomes(self._draft)
            self.state.show_state(word, mark)
            self.state.setVisible(mark is not Mark.NONE)
            outcome = self._draft.proposal.outcome
            self.what.setText(flight_line(outcome) or outcome.file)

    def _put_figures(self, draft: Draft, sets: FlownSets) -> None:
        flight, day = draft.proposal.outcome.flight, draft.proposal.outcome.local_day
        if flight is None or day is None:
            return
        fields = (self.hours, self.minutes, self.launches, self.site, self.ground)
        blockers = [QSignalBlocker(field) for field in fields]
        whole = round(draft.minutes)
        self.hours.put(whole // 60)
        self.minutes.put(whole % 60)
        self.launches.put(flight.launches if draft.launches is None else draft.launches)
        self.site.setEditText(draft.site)
        self.ground.setChecked(draft.on_ground)
        del blockers
        self.flown.put(draft.booked, sets.choices(day, flight.takeoff_at))
        for part in (self._each, self.for_all):
            part.setVisible(bool(self.flown.ticks))
        self._say_found()

    def _say_found(self) -> None:
        draft = self._draft
        flight = draft.proposal.outcome.flight if draft else None
        if draft is None or flight is None:
            return
        corrected = draft.airtime_min is not None
        self.found.setText(_("{airtime} was found in the recording").format(airtime=airtime_text(flight.airtime_min)))
        self.found.setVisible(corrected)

    def _figures_changed(self) -> None:
        draft = self._draft
        flight = draft.proposal.outcome.flight if draft else None
        if draft is None or flight is None:
            return
        minutes = (self.hours.whole() or 0) * 60 + (self.minutes.whole() or 0)
        draft.airtime_min = None if minutes == round(flight.airtime_min) else float(minutes)
        launches = self.launches.whole() or 0
        draft.launches = None if launches == flight.launches else launches
        draft.on_ground = self.ground.isChecked()
        draft.site = self.site.currentText().strip()
        self._say_found()
        self._decided()

    def _flown_changed(self) -> None:
        if self._draft is not None:
            lacked = self._draft.lacks_set
            self._draft.booked = self.flown.booked
            if lacked and not self._draft.is_asked:
                self._draft.ticked = True
            self._decided()

    def _decided(self) -> None:
        self.tell()
        self.changed.emit()

    def _listen(self) -> None:
        for field in (self.hours, self.minutes, self.launches):
            field.valueChanged.connect(lambda _value: self._figures_changed())
        self.site.editTextChanged.connect(lambda _text: self._figures_changed())
        self.ground.clicked.connect(lambda _on: self._figures_changed())
        self.flown.changed.connect(self._flown_changed)
        self.for_all.clicked.connect(self.spread)

    def _assemble(self) -> None:
        px = look.px
        rows = QVBoxLayout(self)
        rows.setContentsMargins(px(4), px(4), px(8), px(8))
        rows.setSpacing(px(8))
        rows.addWidget(self.state)
        rows.addWidget(self.what)
        rows.addLayout(self._said)
        form = Form(label_px=72)
        form.add(_("Airtime"), self.hours, self.minutes)
        self.hours.setAccessibleName(_("Airtime, hours"))
        self.minutes.setAccessibleName(_("Airtime, minutes"))
        self.found = form.add_note()
        form.add(_("Launches"), self.launches)
        form.add(_("Site"), self.site)
        form.add_wide(self.ground)
        rows.addWidget(form)
        section = Section(_("What was flown"))
        self._each = Text(_("Each gets the airtime and the launches."), Role.SMALL, "muted")
        section.rows.addWidget(self._each)
        section.rows.addWidget(self.flown)
        section.rows.addWidget(self.for_all)
        rows.addWidget(section)
        rows.addStretch()
        self._parts: tuple[QWidget, ...] = (form, section)


def _lines(draft: Draft) -> list[tuple[str, str]]:
    """What is asked or told about it, each with its tone."""
    outcome = draft.proposal.outcome
    lines = [(outcome.file, "muted")] if outcome.flight else []
    lines += [(first_upper(said_of(reason)), "ink") for reason in outcome.reasons]
    lines += [(first_upper(said_of(note)), "ink") for note in draft.proposal.notes]
    return [*lines, *((first_upper(text), "muted") for text in remarks(outcome))]
