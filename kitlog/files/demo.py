"""The demo scenario: an invented pilot with kit, service, season and outings, read from files that ship with kitlog.

The two CSV files and the outings are what a pilot could have written; `season.toml` holds what has no file of its own.
"""

import json
import tomllib
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated, Any, TypeVar

from pydantic import BeforeValidator, Field, ValidationError

from kitlog.fault import InputFault, SystemFault
from kitlog.files.csv_kit import read_kit
from kitlog.files.csv_service import ServiceTable, read_service
from kitlog.kit.facets import Battery, Charger, ChargerPort, Share, WayOfUse
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.kinds import PhaseWay
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.outing.outing import Outing
from kitlog.outing.pilot import Pilot
from kitlog.packing.naming import with_ids
from kitlog.units.model import Frozen
from kitlog.units.text import Name

OUTINGS = ("skarnock-cross-country", "skarnock-hike-and-night", "lake-osmere-course")
"""The planned outings, by date. `sample.json` beside them is for trying the command line."""

M = TypeVar("M", bound=Frozen)


@dataclass(frozen=True, slots=True)
class Demo:
    """Everything the scenario puts into a new data file; wherever an item or rule is named, by its id."""

    pilot: Pilot
    items: tuple[Item, ...]
    rules: tuple[ServiceRule, ...]
    records: tuple[ServiceRecord, ...]
    events: tuple[Event, ...]
    flights: tuple[Flight, ...]
    outings: tuple[Outing, ...]


class _During(Frozen):
    """The share of the time that a way of use takes in each of some ways of moving."""

    during: tuple[PhaseWay, ...]
    share: Annotated[float, Field(ge=0, le=1)] = 1.0


def _with_shares(raw: Any) -> Any:
    """A way of use as the model has it: the ways of moving and the one share become shares."""
    if not isinstance(raw, dict):
        return raw
    told = _During.model_validate({name: raw[name] for name in _During.model_fields if name in raw})
    way = {name: value for name, value in raw.items() if name not in _During.model_fields}
    return way | {"shares": tuple(Share(during=moving, share=told.share) for moving in told.during)}


class _Device(Frozen):
    """What a row of kit.csv cannot say of a device or a charger."""

    item: Name
    offset_k: float | None = None
    fixed_c: float | None = None
    quiescent_w: float | None = None
    ways: tuple[Annotated[WayOfUse, BeforeValidator(_with_shares)], ...] = ()
    ports: tuple[ChargerPort, ...] = ()


def load_demo(folder: Path, new_id: Callable[[], str]) -> Demo:
    """The demo scenario.

    Args:
        folder: where `kit.csv`, `service.csv`, `season.toml` and `outings/` lie.
        new_id: gives the id of everything that needs one.

    Raises:
        SystemFault: ``demo.damaged`` with ``file`` and ``reason``: a file that came with kitlog is missing or changed.
    """
    return _Reader(folder, new_id).demo()


class _Reader:
    """Reads the files, giving ids as it goes."""

    def __init__(self, folder: Path, new_id: Callable[[], str]) -> None:
        self._folder = folder
        self._new_id = new_id
        self._file = ""

    def demo(self) -> Demo:
        try:
            return self._demo()
        except SystemFault:
            raise
        except (OSError, ValueError, KeyError, InputFault) as problem:
            file = str(self._folder / self._file)
            raise SystemFault("demo.damaged", file=file, reason=_reason(problem)) from problem

    def _demo(self) -> Demo:
        kit = read_kit(self._bytes("kit.csv"), "kit.csv", (), self._new_id)
        service = read_service(self._bytes("service.csv"), "service.csv", kit.items, self._new_id, kit.rows)
        season = tomllib.loads(self._bytes("season.toml").decode())
        ids = {item.name: item.id for item in kit.items}
        told = self._records(season["records"], ids, service.rules)
        return Demo(
            pilot=self._one(Pilot, season["pilot"]),
            items=_with_devices(kit.items, season["devices"]),
            rules=service.rules,
            records=(*_untold(service, told), *told),
            events=tuple(self._one(Event, _of_item(row, ids)) for row in season["events"]),
            flights=tuple(self._flight(row, season["sets"], ids) for row in season["flights"]),
            outings=tuple(self._outing(name, kit.items) for name in OUTINGS),
        )

    def _bytes(self, file: str) -> bytes:
        self._file = file
        return (self._folder / file).read_bytes()

    def _one(self, model: type[M], fields: Mapping[str, Any]) -> M:
        return model.model_validate({**fields, "id": self._new_id()})

    def _flight(self, row: Mapping[str, Any], sets: Mapping[str, Any], ids: Mapping[str, str]) -> Flight:
        fields = {**row, "flown": row["flown"] if "flown" in row else sets[row["set"]]}
        fields.pop("set", None)
        for part in ("flown", "carried"):
            fields[part] = tuple(ids[name] for name in fields.get(part, ()))
        return self._one(Flight, fields)

    def _records(
        self, rows: Iterable[Mapping[str, Any]], ids: Mapping[str, str], rules: Iterable[ServiceRule]
    ) -> tuple[ServiceRecord, ...]:
        by_name = {(rule.item_id, rule.rule): rule.id for rule in rules}
        return tuple(self._record(_of_item(row, ids), by_name) for row in rows)

    def _record(self, fields: dict[str, Any], by_name: Mapping[tuple[str, str], str]) -> ServiceRecord:
        rules = tuple(by_name[fields["item_id"], name] for name in fields["rules"])
        return self._one(ServiceRecord, {**fields, "rules": rules})

    def _outing(self, name: str, items: Sequence[Item]) -> Outing:
        raw = json.loads(self._bytes(f"outings/{name}.json"))
        return with_ids(self._one(Outing, raw), items)


def _of_item(row: Mapping[str, Any], ids: Mapping[str, str]) -> dict[str, Any]:
    return {**{key: value for key, value in row.items() if key != "item"}, "item_id": ids[row["item"]]}


def _untold(service: ServiceTable, told: Iterable[ServiceRecord]) -> tuple[ServiceRecord, ...]:
    """The records of service.csv that no fuller record of the same day and rule stands in for."""
    known = {(rule, record.done_on) for record in told for rule in record.rules}
    return tuple(r for r in service.records if not known.issuperset((rule, r.done_on) for rule in r.rules))


def _with_devices(items: Iterable[Item], rows: Iterable[Mapping[str, Any]]) -> tuple[Item, ...]:
    devices = {device.item: device for device in map(_Device.model_validate, rows)}
    done = tuple(_with_device(item, devices.pop(item.name, None)) for item in items)
    if devices:
        raise KeyError(*devices)
    return done


def _with_device(item: Item, device: _Device | None) -> Item:
    if device is None:
        return item
    if device.ports:
        charger = (item.charger or Charger()).model_copy(update={"ports": device.ports})
        return item.model_copy(update={"charger": charger})
    update: dict[str, object] = {"battery": _battery(item.battery or Battery(), device)}
    if item.bank is not None:
        update["bank"] = item.bank.model_copy(update={"quiescent_w": device.quiescent_w})
    return item.model_copy(update=update)


def _battery(battery: Battery, device: _Device) -> Battery:
    fields = {"offset_k": device.offset_k, "fixed_c": device.fixed_c, "ways": device.ways or battery.ways}
    return Battery.model_validate({**battery.model_dump(), **fields})


def _reason(problem: Exception) -> str:
    """What is wrong, as short as the library says it; for the curious, the sentence is made in wording."""
    if isinstance(problem, InputFault):
        return problem.code
    if isinstance(problem, ValidationError):
        first = problem.errors(include_url=False)[0]
        return f"{'.'.join(map(str, first['loc']))}: {first['type']}"
    return f"{type(problem).__name__}: {problem}"
