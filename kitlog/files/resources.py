"""The resources: where they lie, and the starter library read from its TOML files."""

import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any, TypeVar

from pydantic import ValidationError

from kitlog.fault import SystemFault
from kitlog.files.places import resources_folder as resources_folder  # noqa: PLC0414  # told on from here
from kitlog.outing.library import Library
from kitlog.outing.needs import FlightType
from kitlog.units.model import Frozen

M = TypeVar("M", bound=Frozen)

_FLAT = ("needs", "serves", "kinds", "places", "starter_rules", "starter_uses", "events", "air_travel")
"""Files whose tables are named as fields of `Library`."""


def load_library(folder: Path) -> Library:
    """The starter library from ``library/`` in the folder of the resources.

    Flight types and check lists lie in one file each, in the order of the file names.

    Raises:
        SystemFault: ``resources.broken`` with ``file``, ``where`` (table and field, or empty) and ``problem``.
    """
    library = folder / "library"
    fields: dict[str, Any] = {}
    for name in _FLAT:
        part = _read(library / f"{name}.toml", Library)
        fields.update({field: getattr(part, field) for field in part.model_fields_set})
    fields["flight_types"] = tuple(_read(file, FlightType) for file in _files(library / "flight_types"))
    lists = [_read(file, Library) for file in _files(library / "checks")]
    fields["checks"] = tuple(check for part in lists for check in part.checks)
    return Library(**fields)


def _files(folder: Path) -> Iterator[Path]:
    files = sorted(folder.glob("*.toml"))
    if not files:
        raise SystemFault("resources.broken", file=str(folder), where="", problem="no such files")
    yield from files


def _read(file: Path, model: type[M]) -> M:
    try:
        raw = tomllib.loads(file.read_text(encoding="utf-8"))
        return model.model_validate(_with_moment(raw))
    except ValidationError as problem:
        first = problem.errors(include_url=False)[0]
        where = ".".join(str(step) for step in first["loc"])
        raise SystemFault("resources.broken", file=str(file), where=where, problem=first["msg"]) from problem
    except (OSError, ValueError, TypeError) as problem:
        raise SystemFault("resources.broken", file=str(file), where="", problem=str(problem)) from problem


def _with_moment(raw: dict[str, Any]) -> dict[str, Any]:
    """A check list names its moment once, above its rows."""
    if "moment" not in raw:
        return raw
    rows = raw.get("checks", [])
    return {"checks": [{"moment": raw["moment"], **row} for row in rows]}
