"""Every read: the models as they stand, and what is computed from them."""

from dataclasses import dataclass
from datetime import date

from kitlog.files.table.collector import collector_paused
from kitlog.kit.due import Due, DueState, due_states
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.kinds import Zone
from kitlog.kit.service import Event, ModelRule, ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook
from kitlog.kit.serviced import ServicedItem
from kitlog.kit.usage import Usage, logged
from kitlog.outing.library import StarterRule
from kitlog.outing.outing import Outing
from kitlog.outing.pilot import BodyRole, Pilot
from kitlog.outing.ticks import Tick
from kitlog.packing.assess import assess
from kitlog.packing.assessment import Assessment
from kitlog.packing.capacity import energy_wh
from kitlog.packing.kit import History, Kit
from kitlog.packing.load import usual_zones
from kitlog.packing.serving import serving
from kitlog.workbench.core import Core

WORKING_ON = "working on"
"""The preference that names the outing being worked on."""


@dataclass(frozen=True, slots=True)
class KitRow:
    """One row of the kit table.

    Attributes:
        due_state: the worst of its rules today; zone, zone_on_foot: the usual ones where the item names none.
        last_carried: day of the last flight it was on; serves, guessed: what it can do, and whether that is a guess.
        implausible: its mass lies outside what is usual for its kind.
    """

    item: Item
    due_state: DueState
    zone: Zone
    zone_on_foot: Zone
    last_carried: date | None
    serves: frozenset[str]
    guessed: bool
    implausible: bool


@dataclass(frozen=True, slots=True)
class DueLine:
    """One rule of one item on a day."""

    item: Item
    rule: ServiceRule
    due: Due


@dataclass(frozen=True, slots=True)
class DueRow:
    """The same with the few columns of the item that a service list needs."""

    item: ServicedItem
    rule: ServiceRule
    due: Due


_WORST = (
    DueState.OVERDUE,
    DueState.DUE_SOON,
    DueState.RECOMMENDED_PASSED,
    DueState.NO_RECORD,
    DueState.IN_DATE,
    DueState.DOES_NOT_APPLY,
    DueState.NO_RULE,
)
"""Worst first for an item as a whole: what is not known is not hidden by what is in date."""

_RANK = {state: place for place, state in enumerate(_WORST)}


def worst_state(dues: tuple[Due, ...]) -> DueState:
    """The state of an item as a whole: the worst of its rules; no rule if it has none."""
    return min((due.state for due in dues), key=_WORST.index, default=DueState.NO_RULE)


@dataclass(frozen=True, slots=True)
class _KeptRows:
    """The rows of the kit table, and what they were made of."""

    of: tuple[object, ...]
    day: date
    rows: tuple[KitRow, ...]


class Reads(Core):
    """What the workbench can be asked."""

    _rows_kept: _KeptRows | None = None
    _book_kept: ServiceBook | None = None

    def pilots(self) -> tuple[Pilot, ...]:
        """Pilot and passengers."""
        return self._read("pilot", lambda reader: reader.pilots())

    def pilot(self) -> Pilot | None:
        """The pilot."""
        return next((p for p in self.pilots() if p.role is BodyRole.PILOT), None)

    def items(self) -> tuple[Item, ...]:
        """The kit."""
        return self._read("item", lambda reader: reader.items())

    def item(self, item_id: str) -> Item | None:
        """One item, None if there is none of that id."""
        return next((item for item in self.items() if item.id == item_id), None)

    def flights(self) -> tuple[Flight, ...]:
        """The log."""
        return self._read("flight", lambda reader: reader.flights())

    def rules(self) -> tuple[ServiceRule, ...]:
        """The service rules."""
        return self._read("rule", lambda reader: reader.rules())

    def model_rules(self) -> tuple[ModelRule, ...]:
        """The service rules by model."""
        return self._read("model_rule", lambda reader: reader.model_rules())

    def records(self) -> tuple[ServiceRecord, ...]:
        """The service records, struck ones included."""
        return self._read("record", lambda reader: reader.records())

    def events(self) -> tuple[Event, ...]:
        """The events, struck ones included."""
        return self._read("event", lambda reader: reader.events())

    def outings(self) -> tuple[Outing, ...]:
        """The outings."""
        return self._read("outing", lambda reader: reader.outings())

    def outing(self, outing_id: str) -> Outing | None:
        """One outing, None if there is none of that id."""
        return next((outing for outing in self.outings() if outing.id == outing_id), None)

    def ticks(self, outing_id: str) -> tuple[Tick, ...]:
        """The ticks of an outing's repack."""
        with self._data.reading() as reader:
            return reader.ticks(outing_id)

    def preferences(self, beginning: str) -> dict[str, str]:
        """The preferences whose names begin so."""
        held = self._read("preference", lambda reader: reader.preferences())
        return {name: value for name, value in held.items() if name.startswith(beginning)}

    def preference(self, name: str, default: str = "") -> str:
        """A preference of the pilot."""
        return self._read("preference", lambda reader: reader.preferences()).get(name, default)

    def current_outing(self) -> Outing | None:
        """The outing being worked on: the pilot's choice, else the next one, else the last one."""
        chosen = self.outing(self.preference(WORKING_ON))
        if chosen is not None:
            return chosen
        today = self.now().date()
        coming = [outing for outing in self.outings() if outing.last_day >= today]
        if coming:
            return min(coming, key=lambda outing: outing.first_day)
        return max(self.outings(), key=lambda outing: outing.last_day, default=None)

    def book(self) -> ServiceBook:
        """Everything that due states are judged from; the very same until something of it changes."""
        book = ServiceBook(self.rules(), self.records(), self.events(), self.flights())
        if self._book_kept is None or not self._book_kept.is_of(book):
            self._book_kept = book
        return self._book_kept

    def due(self, on: date) -> tuple[DueLine, ...]:
        """Every rule of every item that is not retired or lost, judged on a day; the soonest first."""
        book, today = self.book(), self.now().date()
        rules = {rule.id: rule for rule in book.rules}
        lines = [
            DueLine(item, rules[due.rule_id], due)
            for item in self.items()
            if item.state not in {"retired", "lost"}
            for due in due_states(item, book, on, today=today)
        ]
        return tuple(sorted(lines, key=_soonest))

    def due_list(self, on: date) -> tuple[DueRow, ...]:
        """The same as `due` for a list or a calendar, from few columns: whole items take twice as long to read."""
        with collector_paused():
            book, today = self.book(), self.now().date()
            rules = {rule.id: rule for rule in book.rules}
            rows = [
                DueRow(item, rules[due.rule_id], due)
                for item in self.serviced_items()
                if item.kept
                for due in due_states(item, book, on, today=today)
            ]
        return tuple(sorted(rows, key=_soonest))

    def serviced_items(self) -> tuple[ServicedItem, ...]:
        """The kit in the few columns that a service list needs."""
        with self._data.reading() as reader:
            return reader.serviced_items()

    def usage(self, item_id: str, until: date) -> Usage:
        """Airtime, ground handling and launches in the log of one item, without its opening balance."""
        item = self.item(item_id)
        return logged(self.book().flown_with(item.id), until=until) if item else Usage()

    def kit_rows(self) -> tuple[KitRow, ...]:
        """The kit as a table; the very same rows until something that they show, or the day, is another."""
        items, book, today = self.items(), self.book(), self.now().date()
        of = (items, book.rules, book.records, book.events, book.flights)
        kept = self._rows_kept
        if kept is None or kept.day != today or any(a is not b for a, b in zip(kept.of, of, strict=True)):
            carried = _last_carried(book.flights)
            rows = tuple(self._row(item, book, today, carried.get(item.id)) for item in items)
            kept = self._rows_kept = _KeptRows(of, today, rows)
        return kept.rows

    def _row(self, item: Item, book: ServiceBook, today: date, last_carried: date | None) -> KitRow:
        zone, zone_on_foot = usual_zones(item, self.library)
        serves = serving(item, self.library)
        return KitRow(
            item=item,
            due_state=worst_state(due_states(item, book, today)),
            zone=zone,
            zone_on_foot=zone_on_foot,
            last_carried=last_carried,
            serves=serves.names,
            guessed=serves.guessed,
            implausible=self.implausible(item) is not None,
        )

    def implausible(self, item: Item) -> tuple[int, int] | None:
        """The usual masses of a kind in g, if the item's lies outside them: to be asked about, never refused."""
        facts = self.library.facts(item.kind)
        least, most = float(facts.least_g), float(facts.most_g)
        energy = energy_wh(item)
        if facts.wh_band_g is not None and energy:
            least, most = (energy * g_per_wh for g_per_wh in facts.wh_band_g)
        if item.mass_g is None or least <= item.mass_g <= most:
            return None
        return round(least), round(most)

    def starters_for(self, item_id: str) -> tuple[StarterRule, ...]:
        """Starter rules that could apply to an item and that it has not: offered, never applied by themselves."""
        item = self.item(item_id)
        if item is None:
            return ()
        has = {rule.rule for rule in self.rules() if rule.item_id == item_id}
        serves = serving(item, self.library).names
        return tuple(
            starter
            for starter in self.library.starter_rules
            if starter.name not in has and (item.kind in starter.kinds or not serves.isdisjoint(starter.serves))
        )

    def kit(self) -> Kit:
        """What the pilot has, for an assessment."""
        passenger = next((p for p in self.pilots() if p.role is BodyRole.PASSENGER), None)
        return Kit(self.pilot(), self.items(), self.rules(), passenger)

    def history(self) -> History:
        """What has been, for an assessment."""
        return History(self.records(), self.events(), self.flights(), self.outings())

    def assess(self, outing: Outing) -> Assessment:
        """All that an outing has to say; drafts too, nothing is written.

        Raises:
            InputFault: it names an unknown or ambiguous item, or an unknown flight type.
        """
        return assess(outing, self.kit(), self.library, self.history(), self.now())


def _soonest(line: DueLine | DueRow) -> tuple[int, int]:
    days = line.due.days_left
    return _RANK[line.due.state], days if days is not None else 10**6


def _last_carried(flights: tuple[Flight, ...]) -> dict[str, date]:
    last: dict[str, date] = {}
    for flight in flights:
        for item_id in (*flight.flown, *flight.carried):
            last[item_id] = max(flight.last_day, last.get(item_id, flight.last_day))
    return last
