"""Kit in and out: tables with a preview, the demo scenario, backup.

What reads and writes the files is imported when it is used: a window opens without it.
"""

from pathlib import Path
from typing import TYPE_CHECKING

from kitlog.fault import SystemFault
from kitlog.kit.usage import logged
from kitlog.store.aggregates import Stored
from kitlog.store.paper_rows import papers_named
from kitlog.workbench.evening_commands import EveningCommands
from kitlog.workbench.event_names import event_words
from kitlog.workbench.kit_preview import (
    REMEMBERED,
    ImportChoices,
    KitPreview,
    KitSource,
    ServiceFile,
    meanings_text,
    preview_kit,
)
from kitlog.workbench.left_behind import LeftBehind

if TYPE_CHECKING:
    from kitlog.files.csv_export import Export
    from kitlog.files.demo import Demo


NO_CHOICES = ImportChoices()
"""Nothing decided yet."""


class Exchange(EveningCommands):
    """Reads and writes of whole files."""

    def kit_source(self) -> KitSource:
        """What a preview needs, as it is now; it may be used on another thread."""
        from kitlog.files.csv_service_meeting import HeldService
        from kitlog.files.resources import resources_folder
        from kitlog.files.table.vocabulary import load_vocabulary

        held = {name.removeprefix(REMEMBERED): value for name, value in self.preferences(REMEMBERED).items()}
        words = load_vocabulary(resources_folder())
        now = self.now()
        service = HeldService(self.book(), now, event_words(self.library, (*self.rules(), *self.model_rules())))
        return KitSource(tuple(self.items()), words, self.new_id, held, self.implausible, now.date(), service)

    def preview_kit(
        self, data: bytes, file: str, choices: ImportChoices = NO_CHOICES, service: ServiceFile | None = None
    ) -> KitPreview:
        """Read a table of any form, and a service.csv beside it, without writing anything.

        Raises:
            InputFault: the file is no table that can be read (``table.*``).
            TableFault: with every problem of the service file.
        """
        from kitlog.files.table.open_grid import read_grid

        return preview_kit(self.kit_source(), read_grid(data, file), file, choices, service)

    def import_kit(self, preview: KitPreview) -> None:
        """Write what a preview showed: one transaction, one undo step, after a copy of the data file.

        What the pilot chose its columns to mean is remembered for the next table of the same headings.

        Raises:
            TableFault: ``csv.refused``: cells are doubtful or wrong, or rows meet the kit and nobody has decided.
        """
        refusal = preview.refusal()
        if refusal is not None:
            raise refusal
        pairs = self._pair_changes([change.after for change in preview.changed], preview.rules)
        models: tuple[Stored, ...] = (*preview.items, *preview.rules, *preview.records, *pairs)
        if models:
            self._data.copy_beside("before import", self.now())
            self._put("kit.import", models, {"file": preview.file, "count": len(preview.items)})
        if preview.choices.meanings or preview.choices.by_heading:
            self.set_preference(REMEMBERED + preview.key, meanings_text(preview.columns))

    def export_kit(self) -> "Export":
        """The kit as CSV."""
        from kitlog.files.csv_kit_export import write_kit

        return write_kit(self.items())

    def export_service(self) -> "Export":
        """Rules and newest records as CSV."""
        from kitlog.files.csv_service_export import write_service

        return write_service(self.items(), self.rules(), self.records(), self.events(), self.model_rules())

    def left_behind(self) -> LeftBehind:
        """What a kit that is read from the two exports would no longer know: hours of the log, and what is open."""
        today, book = self.now().date(), self.book()
        logs = ((item, logged(book.flown_with(item.id), until=today)) for item in self.items())
        held = tuple((item, usage) for item, usage in logs if usage.airtime_h or usage.ground_h or usage.launches)
        return LeftBehind(held, tuple(line for line in self.due(today) if line.due.event is not None))

    def fill_with_demo(self, folder: Path) -> "Demo":
        """Fill the data file with the demo scenario: one transaction, one undo step."""
        from kitlog.files.demo import load_demo

        demo = load_demo(folder, self.new_id)
        service: tuple[Stored, ...] = (*demo.rules, *demo.records, *demo.events, *demo.flights)
        models: tuple[Stored, ...] = (demo.pilot, *demo.items, *service, *demo.outings)
        self._put("demo.fill", models)
        self.work_on(demo.outings[0].id)
        return demo

    def backup(self, to: Path) -> tuple[SystemFault, ...]:
        """Write a backup: a copy made by SQLite itself and the papers, with their checksums, in one file.

        Returns:
            One fault for each paper that is not in the backup because it is missing or damaged.
        """
        from kitlog.files import backup, papers

        copy = self._data.copy_beside("for backup", self.now())
        try:
            looked = papers.look(self.path, papers_named(copy))
            backup.pack(copy, to, self.now(), looked.whole, self.path)
        finally:
            copy.unlink(missing_ok=True)
        return looked.faults
