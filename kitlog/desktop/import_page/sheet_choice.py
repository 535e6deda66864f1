"""Which sheet of a workbook is read: those that hold anything, and the field that chooses among them."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtWidgets import QHBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.import_page.look_at_table import Look
from kitlog.desktop.parts.fields import ChoiceField
from kitlog.desktop.parts.text import Text
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _


@dataclass(frozen=True, slots=True)
class Sheets:
    """The sheets of a workbook with anything in them; none where there is nothing to choose.

    Attributes:
        names: in the order in which they were first told: the one in front, the others, the hidden ones.
        hidden: those that the workbook does not show; read: the one that was read.
    """

    names: tuple[str, ...] = ()
    hidden: frozenset[str] = frozenset()
    read: str = ""


def sheets_of(before: Sheets, seen: Look, wanted: str) -> Sheets:
    """The sheets after a look at the one that was wanted; they keep their order, also where it could not be read."""
    if seen.grid is None:
        known = seen.fault.facts.get("known") if seen.fault and seen.fault.code == "table.no_such_sheet" else None
        return Sheets(known if isinstance(known, tuple) else before.names, before.hidden, wanted or before.read)
    told = {remark.code: remark.facts for remark in seen.grid.remarks}
    taken = told.get("table.sheet_taken")
    if taken is None:
        return Sheets()
    read, others, hidden = str(taken["sheet"]), _names(taken["others"]), _names(taken["hidden"])
    there = (read, *others, *hidden)
    names = tuple(sorted(there, key=lambda name: before.names.index(name) if name in before.names else len(there)))
    return Sheets(names, frozenset((*hidden, *([read] if "table.sheet_hidden" in told else []))), read)


def _names(fact: object) -> tuple[str, ...]:
    return tuple(map(str, fact)) if isinstance(fact, tuple) else ()


class SheetRow(QWidget):
    """The field, shown where there is something to choose.

    Args:
        file: the workbook; choose: is called with the name of the sheet that is wanted.
    """

    def __init__(self, file: str, choose: Callable[[str], object], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.px(10))
        self.field = ChoiceField()
        self.field.setAccessibleName(_("Sheet of {file}").format(file=file))
        self.field.setAccessibleDescription(_("The sheet of the workbook that is read; the others are left alone."))
        self.field.activated.connect(lambda _index: choose(str(self.field.chosen())))
        row.addWidget(Text(_("Sheet"), Role.SECOND, "muted"))
        row.addWidget(self.field)
        row.addStretch()
        self.hide()

    def show_sheets(self, sheets: Sheets) -> None:
        """Offer the sheets, and show which one was read."""
        self.field.offer([(name, _said(name, sheets)) for name in sheets.names])
        self.field.setCurrentIndex(sheets.names.index(sheets.read) if sheets.read in sheets.names else -1)
        self.setVisible(len(sheets.names) > 1)


def _said(name: str, sheets: Sheets) -> str:
    return _("{sheet} (hidden)").format(sheet=name) if name in sheets.hidden else name
