"""What can be done about service: rules, records, events."""

from kitlog.fault import InputFault
from kitlog.kit.incidents import answers
from kitlog.kit.record_questions import answered_that_day, record_questions
from kitlog.kit.service import Event, ServiceRecord
from kitlog.workbench.flight_import import FlightImport

REPACK, REPACKED = "reserve.repack", "reserve repacked"
"""The rule of the reserve, and the event of its harness that each repack is."""


class ServiceCommands(FlightImport):
    """Writes to the service book."""

    def add_record(self, record: ServiceRecord, *, sure: bool = False) -> str:
        """Record that a service was done.

        Events of that very day that its rules answer to count as answered by it, unless it names some itself. A reserve
        repacked calls for a look at its harness, if a rule of the harness asks for one with each repack.

        Args:
            record: the record.
            sure: the pilot has been asked about what is unlikely, and said that it is so.

        Raises:
            InputFault: ``record.in_future`` with ``day``; ``item.unknown``; ``rule.unknown``: it is no rule of that
                item; what is asked about (unless `sure`), see `kitlog.kit.record_questions`.
        """
        self._put("record.add", self._entered(record, sure=sure), {"item_id": record.item_id})
        return record.id

    def change_record(self, record_id: str, record: ServiceRecord, *, sure: bool = False) -> str:
        """Put another record in the place of one, which stays on record, struck through; one step to undo.

        Args:
            record_id: the one that is struck.
            record: the new one, with an id of its own.
            sure: as in `add_record`.

        Raises:
            InputFault: as `add_record`; ``record.unknown``: there is none, or it is struck already.
        """
        old = next((r for r in self.records() if r.id == record_id and r.struck_at is None), None)
        if old is None or record.id == record_id:
            raise InputFault("record.unknown", name=record_id)
        struck = old.model_copy(update={"struck_at": self.now()})
        entered = self._entered(record, sure=sure, instead_of=record_id)
        self._put("record.change", (struck, *entered), {"item_id": record.item_id})
        return record.id

    def _entered(self, record: ServiceRecord, *, sure: bool, instead_of: str = "") -> tuple[ServiceRecord | Event, ...]:
        """The rows of a record that may stand in the book."""
        if record.done_on > self.now().date():
            raise InputFault("record.in_future", day=record.done_on)
        item, rules = self._known(record.item_id), self.rules()
        of_item = {rule.id for rule in rules if rule.item_id == item.id}
        for rule_id in record.rules:
            if rule_id not in of_item:
                raise InputFault("rule.unknown", rule=rule_id)
        flown = self.book().flown_with(item.id)
        others = [other for other in self.records() if other.id != instead_of]
        for asked in () if sure else record_questions(record, item, others, flown):
            raise InputFault(asked.code, **asked.facts)
        answered = record.answers or answered_that_day(record, rules, self.events())
        written = record.model_copy(update={"answers": answered})
        return (written, *self._repack_calls_for(written))

    def _repack_calls_for(self, record: ServiceRecord) -> tuple[Event, ...]:
        """The event of the harness that a repack of its reserve is; none where no rule asks, or it was looked over."""
        rules, reserve = self.rules(), self._known(record.item_id)
        repacked = any(rule.id in record.rules and rule.rule == REPACK for rule in rules)
        if not repacked or record.failed or reserve.fitted_to is None:
            return ()
        harness, day = reserve.fitted_to, record.done_on
        asking = {r.id for r in rules if r.item_id == harness and r.applies and answers(r, REPACKED)}
        looked = any(r.done_on >= day and asking & set(r.rules) for r in self.records() if r.struck_at is None)
        told = any((e.item_id, e.on, e.kind) == (harness, day, REPACKED) for e in self.events() if not e.struck_at)
        if not asking or looked or told:
            return ()
        return (Event(id=self.new_id(), item_id=harness, on=day, kind=REPACKED, note=reserve.name),)

    def strike_record(self, record_id: str) -> None:
        """Strike a record through; it stays on record."""
        record = next((r for r in self.records() if r.id == record_id), None)
        if record is None:
            raise InputFault("record.unknown", name=record_id)
        struck = record.model_copy(update={"struck_at": self.now()})
        self._write("record.strike", lambda w: w.put(struck), {"item_id": record.item_id})

    def log_event(self, event: Event) -> str:
        """Log that something happened to an item; rules that answer to it are open from that day.

        Raises:
            InputFault: ``event.in_future`` with ``day``.
        """
        if event.on > self.now().date():
            raise InputFault("event.in_future", day=event.on)
        self._write("event.log", lambda w: w.put(event), {"item_id": event.item_id, "kind": event.kind})
        return event.id
