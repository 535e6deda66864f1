"""One look at a table: its grid, what it would bring, or why it cannot be read. Pure but for the files it reads."""

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from kitlog.desktop.import_page.table_input import TableInput, Tell, bytes_of
from kitlog.fault import Fault, InputFault
from kitlog.workbench.kit_preview import ImportChoices, KitPreview, KitSource, ServiceFile, preview_kit

if TYPE_CHECKING:
    from kitlog.files.table.cells import Grid

GRID = 0.3
"""Share of a first look that is done once the cells are there."""


@dataclass(frozen=True, slots=True)
class Look:
    """What a look showed.

    Attributes:
        grid: the cells of the table, None where not even they can be read.
        preview: what it would bring, None where `fault` says why not.
        service_fault: why the service file beside it cannot be taken; the preview is then one without it.
        holds: whether what was decided was about columns of these headings, else it was left aside.
        unanswered: the preview without the answers, where they were given about another sheet.
    """

    grid: "Grid | None" = None
    preview: KitPreview | None = None
    fault: Fault | None = None
    service_fault: Fault | None = None
    holds: bool = True
    unanswered: KitPreview | None = None


@dataclass(frozen=True, slots=True)
class Request:
    """What is to be looked at; nothing in it changes, so a thread may use it.

    Attributes:
        grid: the cells, if they have been read already.
        no_headings: the pilot said that the first row is an item already.
        key: of the headings that the choices are about, where they were made about another sheet; else empty.
    """

    table: TableInput
    source: KitSource
    choices: ImportChoices
    service: Path | None = None
    grid: "Grid | None" = None
    no_headings: bool = False
    key: str = ""

    def __call__(self, tell: Tell) -> Look:
        """Look."""
        begin = 0.0 if self.grid else GRID
        try:
            grid = self.grid or self.table.grid(lambda share: tell(share * GRID))
        except Fault as fault:
            return Look(fault=fault)
        rest = _part(tell, begin, 1.0)
        return self._of_other_sheet(grid, rest) if self.key else self._look(grid, self.choices, rest)

    def _of_other_sheet(self, grid: "Grid", tell: Tell) -> Look:
        """What was decided about another sheet holds for one of the same headings alone."""
        first = self._look(grid, replace(self.choices, settled=None), _part(tell, 0.0, 0.5))
        if first.preview is not None and first.preview.key == self.key:
            return replace(self._look(grid, self.choices, _part(tell, 0.5, 1.0)), unanswered=first.preview)
        if self.choices.meanings:
            first = self._look(grid, ImportChoices(), _part(tell, 0.5, 1.0))
        return replace(first, holds=False)

    def _look(self, grid: "Grid", choices: ImportChoices, tell: Tell) -> Look:
        try:
            return self._with_service(grid, choices, tell)
        except Fault as fault:
            return Look(grid, fault=fault)

    def _with_service(self, grid: "Grid", choices: ImportChoices, tell: Tell) -> Look:
        tell(0.0)
        if self.service is None:
            return Look(grid, self._preview(grid, choices, tell))
        try:
            beside = ServiceFile(bytes_of(self.service), self.service.name)
            return Look(grid, self._preview(grid, choices, tell, beside))
        except InputFault as fault:
            return Look(grid, self._preview(grid, choices, tell), service_fault=fault)

    def _preview(
        self, grid: "Grid", choices: ImportChoices, tell: Tell, service: ServiceFile | None = None
    ) -> KitPreview:
        source = self.source
        if self.no_headings:
            # What is remembered belongs to headings: another table without them has other columns.
            grid, source, choices = _under_blanks(grid), replace(source, remembered={}), replace(choices, heading_row=0)
        return preview_kit(source, grid, self.table.name, choices, service, tell)


def _part(tell: Tell, begin: float, end: float) -> Tell:
    """Tells a part of the whole."""
    return lambda share: tell(begin + share * (end - begin))


def _under_blanks(grid: "Grid") -> "Grid":
    """The same rows below a row of empty headings."""
    wide = max(len(row.cells) for row in grid.rows)
    return replace(grid, rows=(grid.rows[0]._replace(cells=("",) * wide), *grid.rows))
