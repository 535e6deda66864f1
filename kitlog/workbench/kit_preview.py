"""What an import of a table would bring: worked out from a snapshot of the kit, away from the window if need be."""

import json
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from typing import TYPE_CHECKING

from kitlog.files.csv_problems import CellProblem, TableFault
from kitlog.kit.item import Item
from kitlog.kit.service import ServiceRecord, ServiceRule

if TYPE_CHECKING:
    from kitlog.files.csv_service import ServiceTable
    from kitlog.files.csv_service_meeting import HeldService
    from kitlog.files.table.cells import Grid
    from kitlog.files.table.doubt import Doubt, Settled
    from kitlog.files.table.kit_items import Changed, Existing, KitItems, Meeting
    from kitlog.files.table.kit_reading import KitReading
    from kitlog.files.table.remark import Remark
    from kitlog.files.table.table_column import TableColumn
    from kitlog.files.table.targets import Meaning
    from kitlog.files.table.vocabulary import Vocabulary

REMEMBERED = "table "
"""Preferences that hold what the columns of a table stand for begin so; then comes the key of its headings."""

READ, MADE = 0.3, 0.9
"""Shares of a preview that are done once the columns are read, and once the items are made; measured."""

_BARE = re.compile(r"[0-9]+(?:[.,][0-9]+)?")


@dataclass(frozen=True, slots=True)
class ServiceFile:
    """A service.csv read along with a kit."""

    data: bytes
    file: str


@dataclass(frozen=True, slots=True)
class ImportChoices:
    """What the pilot has decided so far.

    Attributes:
        settled: answers to doubts; None = none yet.
        meanings: what columns stand for, by index; by_heading: the same, by heading.
        existing: what becomes of rows about items that the kit has; None = not decided.
        leave_out: what no item can take is left not known, and told (else it refuses the table).
        heading_row: index of the row of headings in the grid, where the pilot chose it.
        sure: what is unlikely in the service file has been asked about, and is so.
    """

    settled: "Settled | None" = None
    meanings: "Mapping[int, Meaning]" = field(default_factory=dict)
    by_heading: "Mapping[str, Meaning]" = field(default_factory=dict)
    existing: "Existing | None" = None
    leave_out: bool = False
    heading_row: int | None = None
    sure: bool = False


@dataclass(frozen=True, slots=True)
class KitSource:
    """What a preview needs of the workbench: nothing in it changes, so another thread may use it.

    Attributes:
        remembered: the preferences that hold meanings of columns, by key of the headings.
        implausible: the usual band of masses in g where an item's mass lies outside it.
        today: days after it that a table gives are told; None = no day is known to be ahead.
        service: rules and records that a service file meets; None = none, and nothing is asked about.
    """

    items: tuple[Item, ...]
    words: "Vocabulary"
    new_id: Callable[[], str]
    remembered: Mapping[str, str]
    implausible: Callable[[Item], tuple[int, int] | None]
    today: date | None = None
    service: "HeldService | None" = None


@dataclass(frozen=True, slots=True)
class KitPreview:
    """What an import would bring; nothing is written yet.

    Attributes:
        columns: the columns of the table, and what each stands for.
        remarks: what is to be said of how it was read.
        doubts: doubtful cells that are still open; emptied: those left not known by choice.
        problems: what is wrong with cells or rows; dropped: the same, left not known or out by choice.
        new: items to add; changed: items of the kit that become others; unchanged, skipped: how many rows change
            nothing, and how many are about items of the kit that stay as they are by choice.
        met: rows about items of the kit; asked about while `choices.existing` is None.
        rules, records: of the service file, as they would be written; service_met: its rows that would change a rule
            that is there.
        rows: text line of each item by id; twins: lines of rows that are the same throughout (each is an item).
        implausible: items whose mass lies outside what is usual for their kind, with that band in g: asked about.
        key: of the headings, under which the meanings of the columns are remembered.
    """

    file: str
    choices: ImportChoices
    columns: "tuple[TableColumn, ...]" = ()
    remarks: "tuple[Remark, ...]" = ()
    doubts: "tuple[Doubt, ...]" = ()
    emptied: "tuple[Doubt, ...]" = ()
    problems: tuple[CellProblem, ...] = ()
    dropped: tuple[CellProblem, ...] = ()
    new: tuple[Item, ...] = ()
    changed: "tuple[Changed, ...]" = ()
    unchanged: int = 0
    skipped: int = 0
    met: "tuple[Meeting, ...]" = ()
    rules: tuple[ServiceRule, ...] = ()
    records: tuple[ServiceRecord, ...] = ()
    service_met: tuple[CellProblem, ...] = ()
    rows: Mapping[str, int] = field(default_factory=dict)
    twins: tuple[tuple[int, ...], ...] = ()
    implausible: tuple[tuple[Item, tuple[int, int]], ...] = ()
    key: str = ""

    @property
    def items(self) -> tuple[Item, ...]:
        """What would be written: new items, and changed ones as they become."""
        return (*self.new, *(change.after for change in self.changed))

    @property
    def undecided(self) -> bool:
        """Whether rows meet items of the kit and nobody has said what becomes of them."""
        return bool(self.met or self.service_met) and self.choices.existing is None

    @property
    def rules_undecided(self) -> bool:
        """Whether rows meet rules of the kit and nobody has said what becomes of them; none is ever added twice."""
        from kitlog.files.table.kit_items import Existing

        return bool(self.service_met) and self.choices.existing not in (Existing.SKIP, Existing.UPDATE)

    def refusal(self) -> TableFault | None:
        """Why it cannot be written as it stands: open doubts, problems, rows that meet the kit; None if it can."""
        problems = [*map(self.problem_of, self.doubts), *self.problems]
        if self.rules_undecided:
            problems += self.service_met
        if self.undecided:
            problems += [
                CellProblem(self.file, meeting.row, "", "table.meets_existing", {"value": meeting.item.name}, 0)
                for meeting in self.met
            ]
        if not problems:
            return None
        files = {problem.file for problem in problems}
        file = files.pop() if len(files) == 1 else self.file
        return TableFault(file, tuple(sorted(problems, key=lambda problem: problem.row)), 0)

    def problem_of(self, doubt: "Doubt") -> CellProblem:
        """A doubtful cell as a problem, with all that it can mean."""
        facts: dict[str, object] = {
            "value": doubt.text,
            "readings": tuple(doubt.readings.values()),
            "answers": tuple(doubt.readings),
        }
        code = f"table.{doubt.question.value}"
        column = doubt.heading or str(doubt.column + 1)
        if doubt.question.value == "two_masses":
            named = [column.named for column in self.columns if column.target in ("mass_g", "mass_more")]
            facts |= {"map": f"{named[-1]}=-", "other": f"{named[0]}=-"}
        if map_to := self._unit_wanted(doubt):
            code, facts["map"] = "table.no_unit", f"{column}={map_to}"
        return CellProblem(self.file, doubt.spot.row, column, code, facts, doubt.spot.record)

    def _unit_wanted(self, doubt: "Doubt") -> str:
        """Field and unit of an unread bare figure to which only the unit is wanting; empty for any other doubt."""
        from kitlog.files.table.doubt import Question
        from kitlog.files.table.targets import TARGETS, Way

        column = next((column for column in self.columns if column.index == doubt.column), None)
        if doubt.question is not Question.UNREAD or column is None or not column.meaning or column.meaning.unit:
            return ""
        target = TARGETS["battery_mah" if TARGETS[column.target].way is Way.ELECTRIC else column.target]
        bare = target.way is Way.FIGURE and target.unit not in ("", "%") and _BARE.fullmatch(doubt.text)
        return f"{target.name}:{target.unit}" if bare else ""


def _nobody(_share: float) -> None:
    """Told of progress, and does nothing."""


def preview_kit(
    source: KitSource,
    grid: "Grid",
    file: str,
    choices: ImportChoices,
    service: ServiceFile | None = None,
    tell: Callable[[float], None] = _nobody,
) -> KitPreview:
    """What an import would bring.

    Args:
        source: the kit as it is.
        grid: the table.
        file: its name.
        choices: what the pilot has decided.
        service: a service file that lies beside it.
        tell: is told after each step the share (0 to 1) that is done; what it raises ends the work.

    Raises:
        InputFault: the table cannot be read at all (``table.*``).
        TableFault: with every problem of the service file.
    """
    from kitlog.files.table.collector import collector_paused
    from kitlog.files.table.doubt import Settled
    from kitlog.files.table.kit_items import kit_items
    from kitlog.files.table.kit_reading import Choices, read_kit_grid
    from kitlog.files.table.mass_outcomes import told_in_grams

    def remembered(key: str) -> "dict[int, Meaning]":
        return meanings_from(source.remembered.get(key, ""))

    wanted = Choices(
        choices.settled or Settled(), choices.meanings, choices.by_heading, choices.heading_row, remembered
    )
    with collector_paused():
        reading = read_kit_grid(grid, source.words, wanted)
        tell(READ)
        brought = kit_items(reading, file, source.items, source.new_id, choices.existing, leave_out=choices.leave_out)
        tell(MADE)
        doubts = told_in_grams(reading.doubts, reading.columns, grid, brought.rows.values())
        return _preview(source, file, choices, replace(reading, doubts=doubts), brought, service)


def _preview(
    source: KitSource,
    file: str,
    choices: ImportChoices,
    reading: "KitReading",
    brought: "KitItems",
    service: ServiceFile | None,
) -> KitPreview:
    from kitlog.files.table.days_ahead import days_ahead
    from kitlog.files.table.kit_items import Existing

    changed = tuple(change for change in brought.changed if change.before != change.after)
    written = (*brought.new, *(change.after for change in changed))
    skips = choices.existing is Existing.SKIP
    book = _service(source, written, brought, service, choices)
    return KitPreview(
        file,
        choices,
        reading.columns,
        (*reading.remarks, *brought.remarks, *days_ahead(written, brought.rows, source.today), *_service_remarks(book)),
        tuple(doubt for doubt in reading.doubts if not doubt.emptied),
        tuple(doubt for doubt in reading.doubts if doubt.emptied),
        brought.problems,
        brought.dropped,
        brought.new,
        changed,
        unchanged=len(brought.changed) - len(changed),
        skipped=len(brought.met) if skips else 0,
        met=brought.met,
        rules=book.rules,
        records=book.records,
        service_met=book.met,
        rows=brought.rows,
        twins=brought.twins,
        implausible=tuple((item, band) for item in written if (band := source.implausible(item)) is not None),
        key=reading.key,
    )


def _service(
    source: KitSource,
    written: tuple[Item, ...],
    brought: "KitItems",
    service: ServiceFile | None,
    choices: ImportChoices,
) -> "ServiceTable":
    from kitlog.files.csv_service import ServiceTable, read_service

    if service is None:
        return ServiceTable((), (), {})
    ids = {item.id for item in written}
    known = (*(item for item in source.items if item.id not in ids), *written)
    held = source.service and replace(source.service, existing=choices.existing, sure=choices.sure)
    return read_service(service.data, service.file, known, source.new_id, brought.rows, held)


def _service_remarks(book: "ServiceTable") -> "Iterator[Remark]":
    """What is to be said of rows about rules that are there already."""
    from kitlog.files.table.remark import Remark

    counts = {
        "service.changed": book.changed,
        "service.unchanged": book.unchanged,
        "service.skipped": book.skipped,
    }
    for code, count in counts.items():
        if count:
            yield Remark(code, {"count": count})


def meanings_from(text: str) -> "dict[int, Meaning]":
    """Meanings of columns as they are remembered; nothing where the text is not what was written."""
    from kitlog.files.table.targets import TARGETS, Meaning

    try:
        pairs = json.loads(text or "{}").items()
        found = {int(index): Meaning(str(target), str(unit)) for index, (target, unit) in pairs}
    except (ValueError, TypeError, AttributeError):
        return {}
    return {index: meaning for index, meaning in found.items() if not meaning.target or meaning.target in TARGETS}


def meanings_text(columns: "tuple[TableColumn, ...]") -> str:
    """Meanings of columns, to be remembered."""
    held = {column.index: (column.target, column.meaning.unit if column.meaning else "") for column in columns}
    return json.dumps(held)
