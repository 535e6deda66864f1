"""Rows of a table into items: new ones, changes to those the kit has, and every problem by row and column."""

from collections.abc import Callable, Container, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Any

from pydantic import BaseModel, ValidationError

from kitlog.fault import InputFault
from kitlog.files.csv_checks import Values, checked
from kitlog.files.csv_columns import KIT
from kitlog.files.csv_names import MOST_NAMED, Named, NameIndex, as_name, circles
from kitlog.files.csv_problems import CellProblem, Problems, shown
from kitlog.files.csv_rows import Row
from kitlog.files.table.cells import Cell, text_of
from kitlog.files.table.charger_ports import with_own_ports
from kitlog.files.table.kit_reading import KitReading, ReadRow
from kitlog.files.table.remark import Remark
from kitlog.kit.facets import Bank, Battery, Charger, Garment, Harness, Reserve, Vessel, Wing
from kitlog.kit.item import Item
from kitlog.kit.kinds import MassSource
from kitlog.kit.meeting import Identity, Met, folded, meetings
from kitlog.packing.capacity import refuse_more_out_than_in

_IN_FACETS = {column.heading: column.path for column in KIT.all if len(column.path) > 1}
"""Headings of figures that lie in a facet of the item: the name of the facet, and their own."""
_FACETS: Mapping[str, type[BaseModel]] = {
    "battery": Battery, "bank": Bank, "charger": Charger, "garment": Garment, "harness": Harness, "reserve": Reserve,
    "vessel": Vessel, "wing": Wing,
}  # fmt: skip

_CAPACITIES = ("bank_rated_mah", "battery_wh", "battery_mah", "battery_v")

_checked_item: Callable[[object], Item] = Item.__pydantic_validator__.validate_python
"""As `Item.model_validate`, without its look at arguments that nobody gives: thousands of rows go through it."""


class Existing(StrEnum):
    """What becomes of a row that is about an item of the kit."""

    SKIP = "skip"
    UPDATE = "update"
    ADD = "add"


@dataclass(frozen=True, slots=True)
class Changed:
    """An item of the kit as it was and as the row makes it; the same where the row says nothing new."""

    before: Item
    after: Item


@dataclass(frozen=True, slots=True)
class Meeting:
    """A row about an item of the kit; `sure` is False where it could be about another one as well."""

    row: int
    item: Item
    sure: bool


@dataclass(frozen=True, slots=True)
class KitItems:
    """What a table brings.

    Attributes:
        new, changed: items to be written, and those of the kit that rows are about, with what they become.
        met: rows about items of the kit, whatever becomes of them.
        rows: line of each new or changed item, by id.
        twins: lines of rows that are the same throughout.
        remarks: what is to be said of rows beside the kit.
        problems: what is wrong with cells or rows; dropped: the same, where it was left not known instead.
    """

    new: tuple[Item, ...] = ()
    changed: tuple[Changed, ...] = ()
    met: tuple[Meeting, ...] = ()
    rows: Mapping[str, int] = field(default_factory=dict)
    twins: tuple[tuple[int, ...], ...] = ()
    remarks: tuple[Remark, ...] = ()
    problems: tuple[CellProblem, ...] = ()
    dropped: tuple[CellProblem, ...] = ()


@dataclass(slots=True)
class _Draft:
    """A row on its way to an item; `met` = the item of the kit that it is about and shall be left or changed."""

    row: ReadRow
    id: str
    met: Met | None
    values: Mapping[str, object]
    fitted_to: str | None = None


@dataclass(slots=True)
class _Work:
    """What the steps share."""

    reading: KitReading
    file: str
    leave_out: bool
    problems: list[CellProblem] = field(default_factory=list)
    dropped: list[CellProblem] = field(default_factory=list)
    facets: "_Facets" = field(init=False)

    def __post_init__(self) -> None:
        self.facets = _Facets([heading for heading in self.reading.said if heading in _IN_FACETS])

    def note(self, problem: CellProblem) -> None:
        """A problem under the heading of the file, among those that refuse the table or those that are left out."""
        place = self.reading.places.get(problem.column)
        column = place.named if place else ""
        told = CellProblem(problem.file, problem.row, column, problem.code, problem.facts, problem.record)
        (self.dropped if self.leave_out else self.problems).append(told)

    def add(self, row: ReadRow, heading: str, code: str, **facts: object) -> None:
        """Note a problem of a row's cell."""
        self.note(CellProblem(self.file, row.spot.row, heading, code, facts, row.spot.record))


def kit_items(
    reading: KitReading,
    file: str,
    known: Sequence[Item],
    new_id: Callable[[], str],
    existing: Existing | None,
    *,
    leave_out: bool,
) -> KitItems:
    """The items of a table.

    Args:
        reading: the table understood.
        file: its name, for problems.
        known: the kit.
        new_id: gives the id of a new item.
        existing: what becomes of rows about items of the kit; None = not decided, shown as if they were changed.
        leave_out: cells that no model takes are left not known, and rows without a name left out, all of them told.
    """
    work = _Work(reading, file, leave_out)
    named = [row for row in reading.rows if _has_name(row, work)]
    found = meetings([_identity(row) for row in named], known) if known else (None,) * len(named)
    met = tuple(Meeting(row.spot.row, one.item, one.sure) for row, one in zip(named, found, strict=True) if one)
    adding = existing is Existing.ADD
    drafts = [_draft(row, None if adding else one, new_id) for row, one in zip(named, found, strict=True)]
    _fit(drafts, known, work)
    new = tuple(item for draft in drafts if not draft.met and (item := _new(draft, work)))
    changed: tuple[Changed, ...] = ()
    if existing is not Existing.SKIP:
        changed = tuple(change for draft in drafts if draft.met and (change := _changed(draft, existing, work)))
    rows = {draft.id: draft.row.spot.row for draft in drafts}
    remarks = (*_states(drafts, work), *_serials(drafts, known))
    return KitItems(new, changed, met, rows, _twins(named), remarks, tuple(work.problems), tuple(work.dropped))


def _states(drafts: Sequence[_Draft], work: _Work) -> Iterator[Remark]:
    """States that are not understood: what became of them, in new rows and in those about items of the kit."""
    unsaid = [draft for draft in drafts if not draft.row.state_said]
    if new := [draft.row for draft in unsaid if not draft.met]:
        yield Remark("table.state_away", _words(new, work))
    if met := [draft.row for draft in unsaid if draft.met]:
        yield Remark("table.state_kept", _words(met, work))


def _words(rows: Sequence[ReadRow], work: _Work) -> dict[str, object]:
    words = tuple(dict.fromkeys(_text(row, "state", work).strip() for row in rows))
    return {"words": words, "rows": tuple(row.spot.row for row in rows)}


def _serials(drafts: Sequence[_Draft], known: Sequence[Item]) -> Iterator[Remark]:
    """Rows that bring a serial number which an item of another name in the kit has."""
    names = {same: item.name for item in known if (same := folded(item.serial))}
    for draft in drafts if names else ():
        serial = str(draft.values.get("serial") or "")
        if not draft.met and (name := names.get(folded(serial))) is not None:
            facts = {"row": draft.row.spot.row, "name": str(draft.values["name"]), "serial": serial, "other": name}
            yield Remark("table.serial_known", facts)


def _has_name(row: ReadRow, work: _Work) -> bool:
    if row.values.get("name"):
        return True
    work.add(
        row,
        "name",
        "table.no_name",
        value=shown(", ".join(text for cell in row.cells if (text := text_of(cell).strip()))),
    )
    return False


def _identity(row: ReadRow) -> Identity:
    says = row.values.get
    return Identity(str(says("name", "")), str(says("maker", "")), str(says("model", "")), str(says("serial", "")))


def _draft(row: ReadRow, met: Met | None, new_id: Callable[[], str]) -> _Draft:
    return _Draft(row, met.item.id if met else new_id(), met, row.values)


def _fit(drafts: Sequence[_Draft], known: Sequence[Item], work: _Work) -> None:
    """Names of what things are fitted to into ids; a circle or a name that is not one item's is a problem."""
    fitting = [draft for draft in drafts if "fitted_to" in draft.values]
    if not fitting:
        return
    ours = {draft.id for draft in drafts}
    here = [Named(as_name(str(draft.values["name"])), draft.id, draft.row.spot.row) for draft in drafts]
    index = NameIndex([*here, *(Named(item.name, item.id) for item in known if item.id not in ours)])
    for draft in fitting:
        cell = str(draft.values["fitted_to"])
        draft.values = _without(draft.values, {"fitted_to"})
        draft.fitted_to = _target(draft, cell, index, work)
    _note_circles(fitting, work)


def _without(values: Mapping[str, object], headings: Container[str]) -> dict[str, object]:
    return {heading: value for heading, value in values.items() if heading not in headings}


def _target(draft: _Draft, cell: str, index: NameIndex, work: _Work) -> str | None:
    try:
        found = index.find(cell)
    except InputFault as fault:
        work.add(draft.row, "fitted_to", fault.code, value=shown(cell), **fault.facts)
        return None
    if found.id == draft.id:
        work.add(draft.row, "fitted_to", "csv.fitted_to_itself", value=shown(cell))
        return None
    return found.id


def _note_circles(drafts: Sequence[_Draft], work: _Work) -> None:
    by_id = {draft.id: draft for draft in drafts}
    for circle in circles({draft.id: draft.fitted_to for draft in drafts if draft.fitted_to}):
        members = [by_id[item_id] for item_id in circle]
        rows = tuple(member.row.spot.row for member in members)[:MOST_NAMED]
        names = tuple(shown(str(member.values["name"])) for member in members[:MOST_NAMED])
        first = min(members, key=lambda member: member.row.spot.row)
        work.add(first.row, "fitted_to", "csv.fitted_in_circle", rows=rows, names=names)
        for member in members:
            member.fitted_to = None


class _Facets:
    """Facets of new items, checked once for all rows that give the same figures: they are frozen, and may be shared.

    Args:
        headings: those of the figures of facets that the table gives.
    """

    def __init__(self, headings: Sequence[str]) -> None:
        self.headings = headings
        self._checked: dict[tuple[object, ...], Mapping[str, object]] = {}

    def of(self, values: Mapping[str, object]) -> Mapping[str, object]:
        """The facets of a row by name; as plain figures where they make none, so that the item says why."""
        figures = tuple(map(values.get, self.headings))
        try:
            found = self._checked.get(figures)
        except TypeError:  # a way of use cannot be looked up
            return _by_facet(values, {})
        if found is None:
            found = self._checked[figures] = {name: _facet(name, own) for name, own in _by_facet(values, {}).items()}
        return found


def _facet(name: str, figures: Mapping[str, object]) -> object:
    try:
        return _FACETS[name].model_validate(figures)
    except ValidationError:
        return figures


def _by_facet(values: Mapping[str, object], base: Mapping[str, Any]) -> dict[str, dict[str, object]]:
    """Figures by facet and name, laid over those of a base."""
    found: dict[str, dict[str, object]] = {}
    for heading, value in values.items():
        if heading in _IN_FACETS:
            facet, name = _IN_FACETS[heading]
            if facet not in found:
                found[facet] = dict(base.get(facet) or {})
            found[facet][name] = value
    return found


def _fields(draft: _Draft, base: Mapping[str, Any], facets: _Facets) -> dict[str, Any]:
    """Values by their fields in the model, laid over what is there."""
    fields = {**base, **draft.values}
    if not facets.headings:
        return fields
    for heading in facets.headings:
        fields.pop(heading, None)
    fields |= _by_facet(draft.values, base) if draft.met else facets.of(draft.values)
    return fields


def _new(draft: _Draft, work: _Work) -> Item | None:
    return _item(draft, {"id": draft.id}, work)


def _changed(draft: _Draft, existing: Existing | None, work: _Work) -> Changed | None:
    """The item with what the row says laid over it; what the row leaves open stays as it is."""
    met = draft.met
    if met is None:
        return None
    if not met.sure and existing is Existing.UPDATE:
        work.add(draft.row, "name", "table.meets_several", value=shown(met.item.name))
        return None
    unsaid = {"kind": draft.row.kind_said, "state": draft.row.state_said}
    draft.values = _without(draft.values, {heading for heading, said in unsaid.items() if not said})
    mass = draft.values.get("mass_g")
    if mass is not None and mass != met.item.mass_g:
        draft.values = {"mass_source": MassSource.GUESS, **draft.values}
    after = _item(draft, met.item.model_dump(), work)
    return None if after is None else Changed(met.item, after)


def _item(draft: _Draft, base: dict[str, Any], work: _Work) -> Item | None:
    """The item; with `leave_out` the cells it cannot take are dropped one after the other."""
    if draft.fitted_to is not None:
        base["fitted_to"] = draft.fitted_to
    while True:
        fields = _fields(draft, base, work.facets)
        try:
            return _sound(_checked_item(fields))
        except ValidationError:
            problems = list(_problems(draft, fields, work))
        except InputFault as fault:
            problems = [_of_bank(draft, fault, work)]
        for problem in problems:
            work.note(problem)
        wrong = {problem.column for problem in problems} & set(draft.values) - {"name"}
        if not work.leave_out or not wrong:
            return None
        draft.values = _without(draft.values, wrong)


def _sound(item: Item) -> Item:
    """The item, unless it is a bank whose ports give more than its cell holds."""
    refuse_more_out_than_in(item)
    return with_own_ports(item)


def _of_bank(draft: _Draft, fault: InputFault, work: _Work) -> CellProblem:
    """The fault of a bank, at the first of its figures that the row gives."""
    heading = next((name for name in _CAPACITIES if name in draft.values), _CAPACITIES[0])
    problems = Problems(work.file)
    value = shown(_text(draft.row, heading, work))
    problems.add(draft.row.spot, heading, fault.code, **{**fault.facts, "value": value})
    return problems.kept[0]


def _problems(draft: _Draft, fields: Mapping[str, Any], work: _Work) -> Iterator[CellProblem]:
    """What the model says, by heading of kit.csv, with the cell as the pilot wrote it."""
    cells = {heading: _text(draft.row, heading, work) for heading in draft.values}
    problems = Problems(work.file)
    checked(Item, fields, Values(Row(draft.row.spot, cells, frozenset()), draft.values, sound=True), KIT, problems)
    yield from problems.kept


def _text(row: ReadRow, heading: str, work: _Work) -> str:
    place = work.reading.places.get(heading)
    return row.text(place.index) if place else ""


def _twins(rows: Sequence[ReadRow]) -> tuple[tuple[int, ...], ...]:
    cells = [tuple(row.cells) for row in rows]
    if len(set(cells)) == len(cells):
        return ()
    alike: dict[tuple[Cell, ...], list[int]] = {}
    for row, same in zip(rows, cells, strict=True):
        alike.setdefault(same, []).append(row.spot.row)
    return tuple(tuple(lines) for lines in alike.values() if len(lines) > 1)
