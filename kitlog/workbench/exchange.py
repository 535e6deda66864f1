"""Kit in and out: CSV with a preview, the demo scenario, backup.

What reads and writes the files is imported when it is used: a window opens without it.
"""

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from kitlog.kit.item import Item
from kitlog.kit.service import ServiceRecord, ServiceRule
from kitlog.store.aggregates import Stored
from kitlog.workbench.outing_commands import OutingCommands

if TYPE_CHECKING:
    from kitlog.files.csv_export import Export
    from kitlog.files.demo import Demo


@dataclass(frozen=True, slots=True)
class KitPreview:
    """What an import would bring; nothing is written yet.

    Attributes:
        rows: text line of each item by id; twins: lines of rows that are the same throughout (each is an item).
        implausible: items whose mass lies outside what is usual for their kind, with that band in g: asked about.
    """

    file: str
    items: tuple[Item, ...]
    rules: tuple[ServiceRule, ...] = ()
    records: tuple[ServiceRecord, ...] = ()
    rows: dict[str, int] | None = None
    twins: tuple[tuple[int, ...], ...] = ()
    implausible: tuple[tuple[Item, tuple[int, int]], ...] = ()


class Exchange(OutingCommands):
    """Reads and writes of whole files."""

    def preview_kit(self, data: bytes, file: str, service: bytes | None = None, service_file: str = "") -> KitPreview:
        """Read a kit.csv, and a service.csv beside it, without writing anything.

        Raises:
            TableFault: with every problem of the file.
        """
        from kitlog.files.csv_kit import read_kit
        from kitlog.files.csv_service import read_service

        table = read_kit(data, file, self.items(), self.new_id)
        rules: tuple[ServiceRule, ...] = ()
        records: tuple[ServiceRecord, ...] = ()
        if service is not None:
            known = (*self.items(), *table.items)
            book = read_service(service, service_file, known, self.new_id, table.rows)
            rules, records = book.rules, book.records
        asked = tuple((item, band) for item in table.items if (band := self.implausible(item)) is not None)
        return KitPreview(file, table.items, rules, records, dict(table.rows), table.twins, asked)

    def import_kit(self, preview: KitPreview) -> None:
        """Write what a preview showed: one transaction, one undo step, after a copy of the data file."""
        self._data.copy_beside("before import", self.now())
        models: tuple[Stored, ...] = (*preview.items, *preview.rules, *preview.records)
        self._put("kit.import", models, {"file": preview.file, "count": len(preview.items)})

    def export_kit(self) -> "Export":
        """The kit as CSV."""
        from kitlog.files.csv_kit_export import write_kit

        return write_kit(self.items())

    def export_service(self) -> "Export":
        """Rules and newest records as CSV."""
        from kitlog.files.csv_service_export import write_service

        return write_service(self.items(), self.rules(), self.records(), self.events())

    def fill_with_demo(self, folder: Path) -> "Demo":
        """Fill the data file with the demo scenario: one transaction, one undo step."""
        from kitlog.files.demo import load_demo

        demo = load_demo(folder, self.new_id)
        service: tuple[Stored, ...] = (*demo.rules, *demo.records, *demo.events, *demo.flights)
        models: tuple[Stored, ...] = (demo.pilot, *demo.items, *service, *demo.outings)
        self._put("demo.fill", models)
        self.work_on(demo.outings[0].id)
        return demo

    def backup(self, to: Path) -> None:
        """Write a backup: a copy made by SQLite itself, with its checksum, in one file."""
        from kitlog.files import backup

        copy = self._data.copy_beside("for backup", self.now())
        try:
            backup.pack(copy, to, self.now())
        finally:
            copy.unlink(missing_ok=True)
