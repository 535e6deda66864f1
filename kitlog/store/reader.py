"""Reading: each method sends a fixed number of statements, however many rows there are; order = order of entry."""

from pydantic import ValidationError
from sqlalchemy import ColumnElement, Table

from kitlog.fault import SystemFault
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.reminder import Reminder
from kitlog.kit.service import Event, ModelRule, ServiceRecord, ServiceRule
from kitlog.kit.serviced import ServicedItem
from kitlog.outing.outing import Outing
from kitlog.outing.pilot import Pilot
from kitlog.outing.ticks import Tick
from kitlog.store import aggregates
from kitlog.store.rows import Rows
from kitlog.store.shape import Key, M, One, Part, Root, Row, all_parts
from kitlog.store.tables.kit import ITEM, PREFERENCE


class Reader:
    """What the data file holds, as the frozen models; all in one transaction, so it fits together.

    Raises (every method):
        SystemFault: ``data_file.damaged`` with ``table`` (and ``id``, ``field``) where rows make no model,
            ``data_file.locked`` and the like.
    """

    def __init__(self, rows: Rows) -> None:
        self._rows = rows

    def pilots(self) -> tuple[Pilot, ...]:
        """Pilot and passengers."""
        return self._all(aggregates.PILOTS)

    def pilot(self, pilot_id: str) -> Pilot | None:
        """One of them."""
        return self._one(aggregates.PILOTS, pilot_id)

    def items(self) -> tuple[Item, ...]:
        """The kit."""
        return self._all(aggregates.ITEMS)

    def serviced_items(self) -> tuple[ServicedItem, ...]:
        """The kit in the few columns that a service list needs, in a tenth of the time."""
        return tuple(map(ServicedItem._make, self._rows.columns(ITEM, ServicedItem._fields)))

    def item(self, item_id: str) -> Item | None:
        """One item."""
        return self._one(aggregates.ITEMS, item_id)

    def flights(self) -> tuple[Flight, ...]:
        """The log."""
        return self._all(aggregates.FLIGHTS)

    def flight(self, flight_id: str) -> Flight | None:
        """One flight."""
        return self._one(aggregates.FLIGHTS, flight_id)

    def rules(self) -> tuple[ServiceRule, ...]:
        """The service rules."""
        return self._all(aggregates.RULES)

    def rule(self, rule_id: str) -> ServiceRule | None:
        """One service rule."""
        return self._one(aggregates.RULES, rule_id)

    def model_rules(self) -> tuple[ModelRule, ...]:
        """The rules of models, which rules of their items follow."""
        return self._all(aggregates.MODEL_RULES)

    def reminders(self) -> tuple[Reminder, ...]:
        """What the last calendar file said."""
        return self._all(aggregates.REMINDERS)

    def records(self) -> tuple[ServiceRecord, ...]:
        """The service records, struck ones included."""
        return self._all(aggregates.RECORDS)

    def record(self, record_id: str) -> ServiceRecord | None:
        """One service record."""
        return self._one(aggregates.RECORDS, record_id)

    def events(self) -> tuple[Event, ...]:
        """The events, struck ones included."""
        return self._all(aggregates.EVENTS)

    def event(self, event_id: str) -> Event | None:
        """One event."""
        return self._one(aggregates.EVENTS, event_id)

    def outings(self) -> tuple[Outing, ...]:
        """The outings with all their parts, struck overrides included."""
        return self._all(aggregates.OUTINGS)

    def outing(self, outing_id: str) -> Outing | None:
        """One outing."""
        return self._one(aggregates.OUTINGS, outing_id)

    def ticks(self, outing_id: str | None = None) -> tuple[Tick, ...]:
        """The ticks of an outing's repack; None = of all outings."""
        root = aggregates.TICKS
        return self._all(root, *(() if outing_id is None else (root.table.c.outing_id == outing_id,)))

    def preferences(self) -> dict[str, str]:
        """The pilot's preferences by name."""
        return {row["name"]: row["value"] for row in self._rows.all(PREFERENCE)}

    def _one(self, root: Root[M], name: str) -> M | None:
        found = self._all(root, root.table.c[root.key[0]] == name, name=name)
        return found[0] if found else None

    def _all(self, root: Root[M], *where: ColumnElement[bool], name: str | None = None) -> tuple[M, ...]:
        rows = self._rows.all(root.table, *where)
        grouped = {part.table.name: self._part(part, name) for part in all_parts(root.parts)}
        try:
            return tuple(root.read(row, grouped) for row in rows)
        except ValidationError as error:
            raise self._damaged(root.table, error) from error

    def _part(self, part: Part, name: str | None) -> dict[Key, list[Row]]:
        owner = next(iter(part.table.primary_key.columns))
        where = () if name is None else (owner == name,)
        return self._rows.grouped(part.table, *where, by_place=not isinstance(part, One))

    def _damaged(self, table: Table, error: ValidationError) -> SystemFault:
        first = error.errors(include_url=False)[0]
        place = ".".join(map(str, first["loc"]))
        return SystemFault(
            "data_file.damaged", path=str(self._rows.path), table=table.name, field=place, reason=first["msg"]
        )
