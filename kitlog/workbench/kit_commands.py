"""What can be done to the kit: items, states, zones, the pilot."""

from collections.abc import Mapping, Sequence

from kitlog.fault import InputFault
from kitlog.kit.incidents import follow_ups
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, Zone
from kitlog.kit.service import Event, ServiceRule
from kitlog.outing.outing import Evening, Outing
from kitlog.outing.pilot import BodyMass, BodyRole, Pilot
from kitlog.packing.measured_draws import measured_instead
from kitlog.store.writer import Writer
from kitlog.workbench.incident_rows import NEW_PAIRING, incident_rows, pair_change
from kitlog.workbench.reads import Reads


class KitCommands(Reads):
    """Writes to the kit; each is one transaction and one undo step."""

    def add_item(self, item: Item) -> str:
        """Add an item and give its id."""
        self._write("item.add", lambda w: w.put(item), {"name": item.name})
        return item.id

    def edit_items(self, items: Sequence[Item]) -> None:
        """Change items. A reserve fitted to another harness than before is an event, which opens its check.

        Raises:
            InputFault: ``item.unknown``: it has been deleted meanwhile.
        """
        for item in items:
            self._known(item.id)
        self._put(*self._edit_step(items, self._pair_changes(items)))

    def _edit_step(
        self, items: Sequence[Item], events: Sequence[Event | ServiceRule]
    ) -> tuple[str, tuple[Item | Event | ServiceRule, ...], dict[str, object]]:
        """What is written, and what undo says of it: a measurement names the draw that was there before."""
        facts: dict[str, object] = {"name": items[0].name if items else "", "count": len(items)}
        replaced = measured_instead(self._known(items[0].id), items[0]) if len(items) == 1 else None
        if any(isinstance(row, Event) and row.kind == NEW_PAIRING for row in events):
            return "item.paired", (*items, *events), facts
        if replaced is None:
            return "item.edit", (*items, *events), facts
        facts |= {"way": replaced.way, "was_w": replaced.before.likely_w, "basis": replaced.basis}
        return "item.measured", (*items, *events), facts

    def duplicate_item(self, item_id: str) -> str:
        """A second item like the first, without its history, serial number, papers, pair and loan."""
        item = self._known(item_id)
        twin = item.model_copy(update={**_OF_THIS_ONE, "id": self.new_id(), "state": _at_hand(item.state)})
        self._write("item.duplicate", lambda w: w.put(twin), {"name": item.name})
        return twin.id

    def delete_items(self, ids: Sequence[str]) -> None:
        """Delete items that have no history, with their rules, from kit and outings.

        Raises:
            InputFault: ``item.has_history`` with ``name``: flights, records or events name it; it can be retired.
        """
        items = [self._known(item_id) for item_id in ids]
        for item in items:
            if self._has_history(item.id):
                raise InputFault("item.has_history", name=item.name)
        rules = [rule for rule in self.rules() if rule.item_id in ids]
        outings = [without for o in self.outings() if (without := _without(o, frozenset(ids))) != o]

        def work(writer: Writer) -> None:
            for outing in outings:
                writer.put(outing)
            for rule in rules:
                writer.remove(ServiceRule, rule.id, now=self.now())
            for item in items:
                writer.remove(Item, item.id, now=self.now())

        self._write("item.delete", work, {"name": items[0].name if items else "", "count": len(items)})

    def set_state(self, ids: Sequence[str], state: ItemState) -> None:
        """Change the state of several items at once."""
        self._change("item.state", ids, {"state": state})

    def set_zone(self, ids: Sequence[str], zone: Zone | None, zone_on_foot: Zone | None = None) -> None:
        """Change where several items ride, in the air and on foot; None leaves a zone as it is."""
        update = {name: z for name, z in (("zone", zone), ("zone_on_foot", zone_on_foot)) if z is not None}
        self._change("item.zone", ids, update)

    def save_pilot(self, pilot: Pilot) -> None:
        """Add or change the pilot or a passenger."""
        self._write("pilot.edit", lambda w: w.put(pilot), {"name": pilot.name})

    def add_body_mass(self, mass: BodyMass, name: str = "") -> None:
        """Add a dated body mass to the pilot, who is made if there is none yet; the same day's mass is replaced."""
        pilot = self.pilot() or Pilot(id=self.new_id(), name=name or "Pilot", role=BodyRole.PILOT)
        kept = tuple(m for m in pilot.masses if m.taken_on != mass.taken_on)
        update = {"masses": (*kept, mass), "name": name or pilot.name}
        self._write("pilot.mass", lambda w: w.put(pilot.model_copy(update=update)), {"name": pilot.name})

    def set_preference(self, name: str, value: str) -> None:
        """Set a preference; it is no step to undo."""
        self._write("preference", lambda w: w.put_preference(name, value or None), undo=False)

    def _change(self, code: str, ids: Sequence[str], update: Mapping[str, object]) -> None:
        items = [self._known(item_id).model_copy(update=update) for item_id in ids]
        facts = {"count": len(items), "name": items[0].name if items else "", **update}
        self._put(code, items, facts)

    def _known(self, item_id: str) -> Item:
        item = self.item(item_id)
        if item is None:
            raise InputFault("item.unknown", name=item_id)
        return item

    def _has_history(self, item_id: str) -> bool:
        return (
            any(record.item_id == item_id for record in self.records())
            or any(event.item_id == item_id for event in self.events())
            or any(item_id in (*flight.flown, *flight.carried) for flight in self.flights())
        )

    def _pair_changes(self, items: Sequence[Item], more: Sequence[ServiceRule] = ()) -> tuple[Event | ServiceRule, ...]:
        """What changed pairs write: the event and, for a new pairing, the rule that asks for the check.

        Args:
            items: as they shall be.
            more: rules that are written with them.
        """
        names = {item.id: item.name for item in (*self.items(), *items)}
        rows: list[Event | ServiceRule] = []
        for item in items:
            kind, note = pair_change(self.item(item.id), item, self.events(), names)
            if kind == NEW_PAIRING and (incident := self.library.incident(kind)) is not None:
                found = follow_ups(incident, [item], (*self.rules(), *more))
                rows += incident_rows(incident, found, self.library, self.now().date(), note, self.new_id)
            elif kind:
                rows.append(Event(id=self.new_id(), item_id=item.id, on=self.now().date(), kind=kind, note=note))
        return tuple(rows)


_OF_THIS_ONE: Mapping[str, object] = {
    "serial": "",
    "fitted_to": None,
    "papers": (),
    "belongs_to": "",
    "lent_to": "",
    "back_by": None,
}
"""What an item like it does not have."""


def _at_hand(state: ItemState) -> ItemState:
    """The state of an item like one that is lent or borrowed: it is neither."""
    return ItemState.IN_SERVICE if state in {ItemState.LENT, ItemState.BORROWED} else state


def _without(outing: Outing, ids: frozenset[str]) -> Outing:
    """The outing without any mention of some items."""
    chosen = outing.set.model_copy(update={k: None for k, v in outing.set.model_dump().items() if v in ids})
    plugs = outing.plugs
    return outing.model_copy(
        update={
            "set": chosen,
            "pinned": tuple(pin for pin in outing.pinned if pin.item not in ids),
            "left_out": tuple(name for name in outing.left_out if name not in ids),
            "uses": tuple(use for use in outing.uses if use.item not in ids),
            "starts": tuple(start for start in outing.starts if start.item not in ids),
            "evening": _without_priority(outing.evening, ids),
            "plugs": None if plugs is None else tuple(p for p in plugs if not {p.device, p.bank} & ids),
        }
    )


def _without_priority(evening: Evening | None, ids: frozenset[str]) -> Evening | None:
    if evening is None:
        return None
    return evening.model_copy(update={"priority": tuple(name for name in evening.priority if name not in ids)})
