"""What an export of the kit left behind, told once it is written."""

from pathlib import Path

from PySide6.QtWidgets import QWidget

from kitlog.desktop.kit_page.export import service_beside
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.text import Paragraph
from kitlog.paint.type_scale import Role
from kitlog.wording.export_text import left_behind_lines
from kitlog.wording.kit_text import lost_line
from kitlog.wording.translate import _
from kitlog.workbench.workbench import Workbench


class ExportReport(Dialog):
    """The log and the open events that the tables do not have, and what has no column.

    Attributes:
        lines: what is said.
    """

    def __init__(self, bench: Workbench, to: Path, parent: QWidget | None) -> None:
        super().__init__(_("Exported, but not all of it"), "", parent, wide=600)
        self.lines = report_lines(bench, to)
        for number, line in enumerate(self.lines):
            self.body.addWidget(Paragraph(line.strip(), Role.BODY if number == 0 else Role.SECOND, "ink"))


def report_lines(bench: Workbench, to: Path) -> tuple[str, ...]:
    """What the tables of an export do not hold; nothing where they hold it all."""
    left = bench.left_behind()
    exports = [(to, bench.export_kit()), (service_beside(to), bench.export_service())]
    named = [
        (file.name, [(lost.item, lost.field, lost.rule) for lost in one.lost]) for file, one in exports if one.lost
    ]
    behind = left_behind_lines(left.logs, [(line.item.name, line.due) for line in left.opened])
    return (*behind, *(lost_line(name, lost) for name, lost in named))
