"""Any instance of a stored model: built from the model's own annotations, mended where fields depend on each other."""

import types
import typing
from collections.abc import Callable
from datetime import UTC, date, datetime, time, timedelta, timezone
from enum import StrEnum
from typing import Any

from annotated_types import Ge, Gt, Le, Lt
from hypothesis import strategies as st
from pydantic import AwareDatetime, BaseModel, StringConstraints
from pydantic.fields import FieldInfo

from kitlog.kit.facets import Battery, Reserve, WayOfUse, Wing
from kitlog.kit.flights import Flight
from kitlog.kit.measurement import UNITS, Measurement
from kitlog.kit.service import ModelRule, ServiceRecord, ServiceRule
from kitlog.outing.outing import Outing, Phase, StartCharge
from kitlog.units.days import FIRST_DAY, LAST_DAY

Fields = dict[str, Any]

_BIDI = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
CHARACTERS = st.characters(codec="utf-8", exclude_categories=("Cs", "Cc"), exclude_characters=_BIDI)
OFFSETS = st.sampled_from([UTC, timezone(timedelta(hours=2)), timezone(timedelta(hours=-9, minutes=-30))])
MOMENTS = st.datetimes(min_value=datetime(2, 1, 1), max_value=datetime(9998, 12, 31), timezones=OFFSETS)  # noqa: DTZ001
DAYS = st.dates(FIRST_DAY, LAST_DAY)


def instances(model: type[BaseModel], **given: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    """Instances of a model; fields named in `given` come from there."""
    fields = {name: given[name] if name in given else _of_field(info) for name, info in model.model_fields.items()}
    return st.fixed_dictionaries(fields).map(_MENDED.get(model, _as_it_is)).map(lambda raw: model(**raw))


def _of_field(info: FieldInfo) -> st.SearchStrategy[Any]:
    return _of(info.annotation, tuple(info.metadata))


def _of(annotation: Any, metadata: tuple[Any, ...] = ()) -> st.SearchStrategy[Any]:
    origin, parts = typing.get_origin(annotation), typing.get_args(annotation)
    if origin is typing.Annotated:
        inner = [m for part in parts[1:] for m in (part.metadata if isinstance(part, FieldInfo) else [part])]
        return _of(parts[0], (*metadata, *inner))
    if origin in {typing.Union, types.UnionType}:
        return st.one_of(*(_of(part, metadata if part is not type(None) else ()) for part in parts))
    if origin is tuple:
        return st.lists(_of(parts[0]), max_size=3, min_size=_least(metadata)).map(tuple)
    if origin is dict:
        return st.dictionaries(_of(parts[0]), _of(parts[1]), max_size=4)
    return _plain(annotation, metadata)


def _plain(kind: Any, metadata: tuple[Any, ...]) -> st.SearchStrategy[Any]:
    if kind is type(None):
        return st.none()
    if issubclass(kind, StrEnum):
        return st.sampled_from(list(kind))
    if issubclass(kind, BaseModel):
        return instances(kind)
    by_kind: dict[Any, Callable[[], st.SearchStrategy[Any]]] = {
        bool: st.booleans,
        int: lambda: st.integers(_bound(metadata, Ge, Gt, 1), _bound(metadata, Le, Lt, -1)),
        float: lambda: _numbers(metadata),
        str: lambda: _texts(metadata),
        date: lambda: DAYS,
        time: st.times,
        datetime: lambda: MOMENTS,
        AwareDatetime: lambda: MOMENTS,
    }
    return by_kind[kind]()


def _bound(metadata: tuple[Any, ...], included: type, excluded: type, step: int) -> int:
    for mark in metadata:
        if isinstance(mark, included):
            return int(mark.ge if isinstance(mark, Ge) else mark.le)
        if isinstance(mark, excluded):
            return int(mark.gt if isinstance(mark, Gt) else mark.lt) + step
    raise AssertionError(metadata)


def _numbers(metadata: tuple[Any, ...]) -> st.SearchStrategy[float]:
    low = _bound(metadata, Ge, Gt, 0)
    high = _bound(metadata, Le, Lt, 0)
    opened = {
        "exclude_min": any(isinstance(m, Gt) for m in metadata),
        "exclude_max": any(isinstance(m, Lt) for m in metadata),
    }
    return st.floats(low, high, **opened)


def _least(metadata: tuple[Any, ...]) -> int:
    return max((getattr(mark, "min_length", None) or 0 for mark in metadata), default=0)


def _texts(metadata: tuple[Any, ...]) -> st.SearchStrategy[str]:
    if any(getattr(mark, "pattern", None) == "^[0-9a-f]{64}$" for mark in metadata):
        return st.text("0123456789abcdef", min_size=64, max_size=64)
    text = st.text(CHARACTERS, max_size=30)
    one_line = any(isinstance(mark, StringConstraints) and mark.strip_whitespace for mark in metadata)
    text = text if one_line else text | st.text(CHARACTERS | st.sampled_from("\n\t"), max_size=60)
    return text.filter(str.strip) if _least(metadata) else text


def _as_it_is(raw: Fields) -> Fields:
    return raw


def _rising(*names: str) -> Callable[[Fields], Fields]:
    def mend(raw: Fields) -> Fields:
        known = [name for name in names if raw[name] is not None]
        return raw | dict(zip(known, sorted(raw[name] for name in known), strict=True))

    return mend


def _way(raw: Fields) -> Fields:
    """Each description whole or not at all, and at least one of them."""
    raw = _rising("low_w", "power_w", "high_w")(raw | {"power_w": raw["power_w"] or 0.5})
    for names in (("from_pct", "to_pct", "over_h"), ("current_ma", "at_v")):
        if any(raw[name] is None for name in names):
            raw |= dict.fromkeys(names)
    return raw


def _battery(raw: Fields) -> Fields:
    return raw if raw["wh"] is None or raw["mah"] is None else raw | {"v": None}


def _rule(raw: Fields) -> Fields:
    limits = ("months", "recommended_months", "hours", "launches", "due_on")
    if not raw["events"] and all(raw[name] is None for name in limits):
        raw["due_on"] = LAST_DAY
    return _rising("recommended_months", "months")(raw)


def _record(raw: Fields) -> Fields:
    return _rising("done_on", "next_due_on")(raw)


def _measurement(raw: Fields) -> Fields:
    units = UNITS[raw["what"]]
    return raw | {"unit": units[len(raw["place"]) % len(units)], "value": abs(raw["value"])}


def _flight(raw: Fields) -> Fields:
    raw = _rising("on", "until")(_rising("takeoff_at", "landing_at")(raw))
    return raw | ({"airtime_min": raw["airtime_min"] % 1440} if raw["until"] is None else {})


def _outing(raw: Fields) -> Fields:
    first = min(raw["first_day"], LAST_DAY - timedelta(days=60))
    phases = tuple({phase.name: phase for phase in raw["phases"]}.values())
    zone = None if raw["time_zone"] is None else "Europe/Vienna"
    return raw | {
        "first_day": first,
        "last_day": first + timedelta(days=3),
        "phases": phases,
        "time_zone": zone,
    }


_MENDED: dict[type[BaseModel], Callable[[Fields], Fields]] = {
    Wing: _rising("min_g", "max_g"),
    Reserve: _rising("min_g", "max_g"),
    Phase: _rising("low_h", "likely_h", "high_h"),
    Battery: _battery,
    WayOfUse: _way,
    StartCharge: _rising("low_pct", "likely_pct", "high_pct"),
    ServiceRule: _rule,
    ModelRule: _rule,
    ServiceRecord: _record,
    Measurement: _measurement,
    Flight: _flight,
    Outing: _outing,
}
