"""A flight entered by hand: when, how long, with what."""

from datetime import date

from PySide6.QtWidgets import QGridLayout, QWidget

from kitlog.desktop.desk import Desk
from kitlog.desktop.flights_page.flight_clock import FlightClock
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField, DateField, NumberField, TickField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.note_field import NoteField
from kitlog.desktop.parts.section import Section
from kitlog.desktop.parts.text import Paragraph
from kitlog.fault import Fault, InputFault
from kitlog.kit.flight_questions import ASKED
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.outing.outing import Outing
from kitlog.packing.flown_set import FLOWN_KINDS
from kitlog.paint.type_scale import Role
from kitlog.wording.faults import fault_text
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper, word


class FlightEditor(Dialog):
    """Add a flight, or edit one.

    Attributes:
        flight_id: of the flight that was saved.
    """

    def __init__(self, desk: Desk, flight: Flight | None, parent: QWidget) -> None:
        super().__init__(_("Add flight") if flight is None else _("Edit flight"), _("Save"), parent, wide=520)
        self._desk, self._flight = desk, flight
        self.flight_id = flight.id if flight else desk.bench.new_id()
        self.day, self.until = DateField(), DateField()
        self.clock = FlightClock(flight)
        self.hours, self.minutes = self.clock.hours, self.clock.minutes
        self.takeoff, self.landing, self.zone = self.clock.takeoff, self.clock.landing, self.clock.zone
        self.launches = NumberField(most=100_000, unknown="1")
        self.ground = NumberField("min", most=100_000, unknown="0 min")
        self.site = ChoiceField()
        self.site.setEditable(True)
        self.note = NoteField(64)
        self.ticks: dict[str, TickField] = {}
        self.carried = TickField(_("Everything else on the list of that day was carried"))
        self._flown_touched = flight is not None
        self._assemble()
        self._put(flight)
        self.day.dateChanged.connect(lambda _day: self._day_changed())
        self._day_changed()
        self.site.editTextChanged.connect(lambda _text: self._propose_zone())
        self.clock.listen(self._on, lambda: self.until.day() is not None)

    def draft(self) -> Flight:
        """The flight as it stands in the form.

        Raises:
            pydantic.ValidationError: something cannot be so.
        """
        raw = {} if self._flight is None else self._flight.model_dump()
        on = self._on()
        minutes = (self.hours.whole() or 0) * 60 + (self.minutes.whole() or 0)
        flown = tuple(item_id for item_id, tick in self.ticks.items() if tick.isChecked())
        launches = self.launches.whole()
        entered = {
            "id": self.flight_id,
            "on": on,
            "until": self.until.day(),
            "airtime_min": float(minutes),
            "ground_handling_min": self.ground.number() or 0.0,
            "launches": 1 if launches is None else launches,
            "site": self.site.currentText(),
            "note": self.note.toPlainText(),
            "flown": flown,
            "carried": self._carried(frozenset(flown)),
        }
        if self._flight is not None and minutes == round(self._flight.airtime_min):
            entered["airtime_min"] = self._flight.airtime_min  # untouched, it keeps its seconds
        if self._flight is None or on != self._flight.on or self.clock.is_touched():
            entered |= self.clock.moments(on)
        return Flight.model_validate(raw | entered)

    def accept(self) -> None:
        """Save the flight; what is unlikely is asked about first."""
        asked: list[InputFault] = []

        def save() -> None:
            try:
                self._save()
            except InputFault as fault:
                if fault.code not in ASKED:
                    raise
                asked.append(fault)

        if not self.attempt(save):
            return
        if asked:
            self._ask(asked[0])
        else:
            super().accept()

    def _ask(self, fault: InputFault) -> None:
        said = fault_text(fault)
        self.say_wrong("")
        do, stay = (_("Save it so"), self._save_so), (_("Keep editing"), self.day.setFocus)
        self.question.ask(first_upper(said.what) + ".", _("Nothing of it is written yet."), do, stay)

    def _save_so(self) -> None:
        if self.attempt(lambda: self._save(sure=True)):
            super().accept()

    def _save(self, *, sure: bool = False) -> None:
        self.clock.refuse_wrong()
        bench, draft = self._desk.bench, self.draft()
        if self._flight is None:
            bench.add_flight(draft, sure=sure)
        elif draft != self._flight:
            bench.edit_flight(draft, sure=sure)

    def _on(self) -> date:
        return self.day.day() or self._desk.bench.now().date()

    def _propose_zone(self) -> None:
        self.clock.propose_zone(self._desk.bench.zone_on(self._on(), self.site.currentText()))

    def _assemble(self) -> None:
        form = Form()
        form.add(_("Date"), self.day)
        form.add(_("Airtime"), self.hours, self.minutes)
        self.hours.setAccessibleName(_("Airtime, hours"))
        self.minutes.setAccessibleName(_("Airtime, minutes"))
        form.add(_("Take-off, landing"), self.takeoff, self.landing)
        self.takeoff.setAccessibleName(_("Take-off, local time"))
        self.landing.setAccessibleName(_("Landing, local time"))
        form.add(_("Time zone"), self.zone)
        form.add(_("Launches"), self.launches)
        form.add(_("Ground handling"), self.ground)
        form.add(_("Site"), self.site)
        form.add(_("Total until"), self.until)
        form.add_note(_("A last day makes it a typed total of several days."))
        self.body.addWidget(form)
        flown = Section(_("What was flown"))
        flown.rows.addWidget(Paragraph(_("Each gets the airtime and the launches."), Role.SMALL))
        grid = QGridLayout()
        for number, item in enumerate(self._could_fly()):
            tick = TickField(item.name if item.usable else f"{item.name} ({_not_at_hand(item)})")
            tick.clicked.connect(self._touch)
            self.ticks[item.id] = tick
            grid.addWidget(tick, number // 2, number % 2)
        flown.rows.addLayout(grid)
        flown.rows.addWidget(self.carried)
        self.body.addWidget(flown)
        last = Form()
        last.add(_("Note"), self.note)
        self.body.addWidget(last)

    def _could_fly(self) -> list[Item]:
        """What is at hand first; then what is not today, and may have been on the day of the flight."""
        kept = frozenset(self._flight.flown if self._flight else ())
        order = tuple(Kind)
        items = [i for i in self._desk.bench.items() if i.kind in FLOWN_KINDS or i.id in kept]
        return sorted(items, key=lambda item: (not item.usable, order.index(item.kind), item.name.casefold()))

    def _put(self, flight: Flight | None) -> None:
        bench = self._desk.bench
        sites = dict.fromkeys(f.site for f in sorted(bench.flights(), key=lambda f: f.on, reverse=True) if f.site)
        self.site.offer([(site, site) for site in ("", *sites)])
        self.day.put(flight.on if flight else bench.now().date())
        if flight is None:
            return
        self.until.put(flight.until)
        self.clock.put_airtime(round(flight.airtime_min))
        self.launches.put(flight.launches)
        self.ground.put(flight.ground_handling_min)
        self.site.setEditText(flight.site)
        self.note.setPlainText(flight.note)
        for item_id, tick in self.ticks.items():
            tick.setChecked(item_id in flight.flown)

    def _touch(self) -> None:
        self._flown_touched = True

    def _day_changed(self) -> None:
        """Propose what was flown: the set of that day's outing, else that of the last flight."""
        outing = self._outing()
        self.carried.setVisible(outing is not None)
        self._propose_zone()
        if self._flown_touched:
            return
        proposed = self._set_of(outing) if outing is not None else self._usual()
        for item_id, tick in self.ticks.items():
            tick.setChecked(item_id in proposed)
        if outing is not None and not self.site.currentText():
            self.site.setEditText(outing.site.name)

    def _usual(self) -> frozenset[str]:
        """What was flown last, as far as it is at hand."""
        at_hand = {item.id for item in self._desk.bench.items() if item.usable}
        return frozenset(self._desk.bench.usual_set()) & at_hand

    def _outing(self) -> Outing | None:
        day: date | None = self.day.day()
        return next((o for o in self._desk.bench.outings() if day is not None and day in o.days), None)

    def _listed(self, outing: Outing) -> frozenset[str]:
        try:
            return frozenset(line.item.id for line in self._desk.bench.assess(outing).lines if not line.in_car)
        except Fault:
            return frozenset()

    def _set_of(self, outing: Outing) -> frozenset[str]:
        return self._listed(outing) & frozenset(self.ticks)

    def _carried(self, flown: frozenset[str]) -> tuple[str, ...]:
        outing = self._outing()
        if outing is None or not self.carried.isChecked():
            return () if self._flight is None else tuple(c for c in self._flight.carried if c not in flown)
        return tuple(sorted(self._listed(outing) - flown))


def _not_at_hand(item: Item) -> str:
    return word(item.state.value) if item.quantity > 0 else _("none left")
