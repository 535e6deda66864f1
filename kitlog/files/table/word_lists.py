"""The files of ``tables/`` in the folder of the resources, as they are written."""

import tomllib
from pathlib import Path
from typing import TypeVar

from pydantic import Field, ValidationError

from kitlog.fault import SystemFault
from kitlog.kit.kinds import ItemState, Kind, Layer, MassSource, Zone
from kitlog.units.model import Frozen

M = TypeVar("M", bound=Frozen)
Words = tuple[str, ...]


class HeadingWords(Frozen):
    """Headings with one meaning; the fields as told at the top of ``headings.toml``."""

    target: str
    words: Words
    units: Words = ()
    weak: bool = False
    otherwise: str = ""
    source: MassSource | None = None


class HeadingLists(Frozen):
    """``headings.toml``."""

    ignored: Words
    besides: Words
    currencies: Words
    rough: Words
    lowest: Words
    highest: Words
    service: Words
    service_beside: Words
    headings: tuple[HeadingWords, ...]


class KindWords(Frozen):
    """Words of one kind; the fields as told at the top of ``kinds.toml``."""

    kind: Kind
    en: Words = ()
    de: Words = ()
    fr: Words = ()
    any: Words = ()
    ends: Words = ()
    alone: Words = ()
    named: Words = ()


class KindLists(Frozen):
    """``kinds.toml``."""

    broad: Words
    either: Words
    never: Words
    parts: Words
    fittings: Words
    noun_endings: Words
    kinds: tuple[KindWords, ...]


class OtherLists(Frozen):
    """``words.toml``."""

    totals: Words
    part_totals: Words
    named_totals: Words
    of_totals: Words
    last_totals: Words
    no_items: Words
    notes: Words
    things: Words
    mass_words: Words
    unit_cells: Words
    adjectives: Words
    after: Words
    dittos: Words
    zone: dict[Zone, Words] = Field(default_factory=dict)
    state: dict[ItemState, Words] = Field(default_factory=dict)
    mass_source: dict[MassSource, Words] = Field(default_factory=dict)
    garment_layer: dict[Layer, Words] = Field(default_factory=dict)


def read_lists(file: Path, model: type[M]) -> M:
    """One file.

    Raises:
        SystemFault: ``resources.broken`` with ``file``, ``where`` and ``problem``.
    """
    try:
        return model.model_validate(tomllib.loads(file.read_text(encoding="utf-8")))
    except ValidationError as problem:
        first = problem.errors(include_url=False)[0]
        where = ".".join(str(step) for step in first["loc"])
        raise SystemFault("resources.broken", file=str(file), where=where, problem=first["msg"]) from problem
    except (OSError, ValueError) as problem:
        raise SystemFault("resources.broken", file=str(file), where="", problem=str(problem)) from problem
