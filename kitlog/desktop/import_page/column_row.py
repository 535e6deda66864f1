"""One heading of the table: its first cells, what it stands for, the unit, and how that was found."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop.import_page.field_choice import FieldChoice, FieldList
from kitlog.desktop.parts.chip import StateMark
from kitlog.desktop.parts.fields import ChoiceField
from kitlog.desktop.parts.text import CutText, Text
from kitlog.files.table.table_column import TableColumn
from kitlog.files.table.targets import TARGETS, Meaning
from kitlog.files.table.units import UNITS, dimension_of
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.import_words import how_text
from kitlog.wording.translate import _

Means = Callable[[int, Meaning], object]
NOT_READ = frozenset({"", "double"})
"""How a column is called that kitlog does not read by itself."""


class ColumnRow:
    """The widgets of one heading in a grid.

    Args:
        column: the heading; fields: the list of all fields; means: is called with what it shall stand for.
    """

    def __init__(self, column: TableColumn, fields: FieldList, means: Means) -> None:
        self.column, self._means = column, means
        self.name = column.heading or _("column {letters}").format(letters=column.letters)
        self.heading = CutText(self.name, Role.NAME)
        self.letters = Text(_("column {letters}").format(letters=column.letters), Role.SMALL, "muted")
        self.examples = CutText("", Role.SECOND, "muted")
        self.field = FieldChoice(fields, _("{heading} stands for").format(heading=self.name))
        self.unit = ChoiceField()
        self.unit.setAccessibleName(_("unit of {heading}").format(heading=self.name))
        self.how = Text("", Role.SMALL, "muted")
        self.lost = StateMark("", Mark.LOOK, on_tint=False)
        self.field.picked.connect(self._picked)
        self.unit.activated.connect(lambda _index: self._means(self.column.index, self._meaning(self.field.held)))

    def place(self, grid: QGridLayout, row: int) -> None:
        """Stand in a grid; only then is anything shown, for what has no parent would be a window of its own."""
        left, right = QVBoxLayout(), QHBoxLayout()
        left.setSpacing(0)
        left.addWidget(self.heading)
        if self.column.heading:
            left.addWidget(self.letters)
        right.addWidget(self.how)
        right.addWidget(self.lost)
        grid.addLayout(left, row, 0)
        grid.addWidget(self.examples, row, 1)
        grid.addWidget(self.field, row, 2)
        grid.addWidget(self.unit, row, 3)
        grid.addLayout(right, row, 4)
        grid.setAlignment(right, Qt.AlignmentFlag.AlignLeft)
        self.show_column(self.column)

    def show_column(self, column: TableColumn) -> None:
        """Show what it stands for now."""
        self.column = column
        self.examples.setText("   ".join(column.examples) if column.examples else _("no cells"))
        self.field.hold(column.target)
        self._offer_units(column)
        self.how.setText(how_text(column.how))
        self.how.setVisible(column.how not in NOT_READ)
        self.lost.show_state(how_text(column.how), Mark.LOOK)
        self.lost.setVisible(column.how in NOT_READ)
        self.field.setAccessibleDescription(how_text(column.how))

    def stops(self) -> tuple[QWidget, ...]:
        """What Tab goes through."""
        return self.field, self.unit

    def _offer_units(self, column: TableColumn) -> None:
        units = units_of(column.target)
        held = column.meaning.unit if column.meaning else ""
        if units and held and held not in units:
            units = (*units, held)
        self.unit.offer([("", _("in the cells")), *((unit, unit) for unit in units)])
        self.unit.choose(held)
        kept = self.unit.sizePolicy()
        kept.setRetainSizeWhenHidden(True)
        self.unit.setSizePolicy(kept)
        self.unit.setVisible(bool(units))

    def _picked(self, target: str) -> None:
        self._means(self.column.index, self._meaning(target))

    def _meaning(self, target: str) -> Meaning:
        unit = str(self.unit.chosen() or "")
        return Meaning(target, unit if unit in units_of(target) else "")


def units_of(target: str) -> tuple[str, ...]:
    """The units that bare numbers of a field can have; none where it is no figure."""
    own = TARGETS[target].unit if target else ""
    dimension = dimension_of(own)
    return tuple(unit for unit in UNITS if dimension and dimension_of(unit) == dimension)
