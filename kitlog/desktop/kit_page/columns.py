"""The columns of the kit table as data."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from typing import Any

from kitlog.kit.due import DueState
from kitlog.outing.library import Library
from kitlog.wording.figures import day_text, number_text
from kitlog.wording.translate import N_, _
from kitlog.wording.words import word
from kitlog.workbench.reads import KitRow

_DUE_ORDER = (
    DueState.OVERDUE,
    DueState.DUE_SOON,
    DueState.RECOMMENDED_PASSED,
    DueState.NO_RECORD,
    DueState.IN_DATE,
    DueState.DOES_NOT_APPLY,
    DueState.NO_RULE,
)

_SHORT = {DueState.RECOMMENDED_PASSED: N_("recommended")}
"""What would not fit into its column."""


@dataclass(frozen=True, slots=True)
class Column:
    """One column.

    Attributes:
        title: its head.
        wide: width in px of the design; the first column takes what is left.
        text: the words of a cell; key: what it is sorted by.
        right: figures stand at the right.
        in_details: goes into the details where the window is not wide.
    """

    id: str
    title: str
    wide: int
    text: Callable[[KitRow, Library], str]
    key: Callable[[KitRow, Library], Any]
    right: bool = False
    in_details: bool = False


def _kind(row: KitRow, library: Library) -> str:
    return word(library.facts(row.item.kind).label)


def _mass(row: KitRow, _library: Library) -> str:
    mass_g = row.item.all_mass_g
    return word("not known") if mass_g is None else number_text(mass_g)


def _source(row: KitRow, _library: Library) -> str:
    return "" if row.item.mass_g is None else word(row.item.mass_source.value)


def _carried(row: KitRow, _library: Library) -> str:
    return "" if row.last_carried is None else day_text(row.last_carried, year=False)


def _service(row: KitRow, _library: Library) -> str:
    return _(_SHORT[row.due_state]) if row.due_state in _SHORT else word(row.due_state.value)


def _text_key(text: Callable[[KitRow, Library], str]) -> Callable[[KitRow, Library], str]:
    return lambda row, library: text(row, library).casefold()


def _name(row: KitRow, _library: Library) -> str:
    return row.item.name


def _air(row: KitRow, _library: Library) -> str:
    return word(row.zone.value)


def _foot(row: KitRow, _library: Library) -> str:
    return word(row.zone_on_foot.value)


COLUMNS = (
    Column("name", N_("Name"), 184, _name, _text_key(_name)),
    Column("kind", N_("Kind"), 98, _kind, _text_key(_kind)),
    Column("mass", N_("Mass, g"), 56, _mass, lambda row, _library: row.item.all_mass_g or -1, right=True),
    Column("source", N_("Source"), 92, _source, _text_key(_source), in_details=True),
    Column("air", N_("In the air"), 93, _air, _text_key(_air)),
    Column("foot", N_("On foot"), 88, _foot, _text_key(_foot), in_details=True),
    Column("service", N_("Service"), 110, _service, lambda row, _library: _DUE_ORDER.index(row.due_state)),
    Column(
        "carried",
        N_("Carried"),
        58,
        _carried,
        lambda row, _library: row.last_carried or date.min,
        right=True,
        in_details=True,
    ),
)
