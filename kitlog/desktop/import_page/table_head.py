"""The head of the import: what is read, and the acts that read it again or bring a service file."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtWidgets import QHBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.import_page.table_input import TableInput
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.text import CutText
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _


class TableHead(QWidget):
    """The name of the table and two acts."""

    def __init__(
        self,
        table: TableInput,
        again: Callable[[], object],
        service: Callable[[], object],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(look.px(8), look.px(4), look.px(4), look.px(4))
        row.setSpacing(look.px(20))
        self.name = CutText(table.name, Role.SECOND, "muted")
        self.again = Button(_("Read again"), Rank.ACT)
        self.service = Button(_("Add a service file…"), Rank.ACT)
        self.again.clicked.connect(lambda _on=False: again())
        self.service.clicked.connect(lambda _on=False: service())
        row.addWidget(self.name, 1)
        row.addWidget(self.again)
        row.addWidget(self.service)
        self.again.setVisible(table.path is not None)
        self.service.setVisible(False)

    def show_service(self, service: Path | None, *, can_have: bool) -> None:
        """Say which service file is read along; a table that cannot be read has none."""
        self.service.say(_("With {file}: another…").format(file=service.name) if service else _("Add a service file…"))
        self.service.setVisible(can_have)
