"""The phases as a table that can be edited: add, remove, move up and down."""

from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.hour_fields import HoursField, MarkedField
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.fields import ChoiceField, NumberField
from kitlog.desktop.parts.text import Text
from kitlog.kit.kinds import PhaseWay
from kitlog.outing.outing import Phase
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import N_, _

HEADS = (N_("Name"), N_("Way of moving"), N_("low"), N_("likely"), N_("high"), N_("Air"))
COLDEST, WARMEST = -60, 60


@dataclass(frozen=True)
class PhaseRow:
    """The fields of one phase; was: its name in the plan, empty for a new one."""

    was: str
    name: MarkedField
    way: ChoiceField
    low: HoursField
    likely: HoursField
    high: HoursField
    air: NumberField
    up: Button
    down: Button
    remove: Button

    @property
    def widgets(self) -> tuple[QWidget, ...]:
        """In the order of the columns."""
        return (self.name, self.way, self.low, self.likely, self.high, self.air, self.up, self.down, self.remove)

    @property
    def hours(self) -> tuple[HoursField, HoursField, HoursField]:
        """The three durations."""
        return self.low, self.likely, self.high


class PhaseTable(QWidget):
    """Rows of phases.

    Attributes:
        changed: something was typed, added, removed or moved.
        rows: from the first phase to the last.
    """

    changed = Signal()

    def __init__(self, phases: tuple[Phase, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows: list[PhaseRow] = []
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.setSpacing(look.px(8))
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(look.px(8))
        self._grid.setVerticalSpacing(look.px(6))
        self._grid.setColumnStretch(0, 1)
        outer.addLayout(self._grid)
        foot = QHBoxLayout()
        self.add_act = Button(_("Add a phase"), Rank.ACT)
        self.add_act.clicked.connect(self.add)
        foot.addWidget(self.add_act)
        foot.addStretch()
        outer.addLayout(foot)
        for phase in phases:
            self.rows.append(self._made(phase, phase.name))
        self._lay()

    def values(self) -> list[dict[str, Any]]:
        """What was entered, by the names of the model; a duration that cannot be read is missing."""
        return [
            {
                "name": row.name.text().strip(),
                "way": row.way.chosen(),
                "low_h": row.low.hours(),
                "likely_h": row.likely.hours(),
                "high_h": row.high.hours(),
                "air_c": row.air.number(),
            }
            for row in self.rows
        ]

    def renamed(self) -> dict[str, str]:
        """The names of phases that are still there, by those that they had."""
        return {row.was: row.name.text().strip() for row in self.rows if row.was}

    def fault(self) -> str:
        """What cannot be so, in words that name the phase; the fields are marked. Empty if all is well."""
        faults = [self._row_fault(row) for row in self.rows]
        names = [row.name.text().strip() for row in self.rows]
        for row, name in zip(self.rows, names, strict=True):
            twice = bool(name) and names.count(name) > 1
            row.name.mark_wrong(wrong=twice or not name)
            faults.append(_("Two phases are called “{name}”: name them apart.").format(name=name) if twice else "")
        return next((fault for fault in faults if fault), "")

    def add(self) -> None:
        """One more phase at the end, with a name of its own."""
        names = {row.name.text().strip() for row in self.rows}
        way = next((w for w in (PhaseWay.FLIGHT, PhaseWay.WALK_OUT, PhaseWay.RIDE_HOME) if w.value not in names), None)
        way = way or PhaseWay.WALK_OUT
        number = 2
        name = way.value
        while name in names:
            name, number = f"{way.value} {number}", number + 1
        self.rows.append(self._made(Phase(name=name, way=way, low_h=0.5, likely_h=1.0, high_h=2.0)))
        self._lay()
        self.rows[-1].name.setFocus()
        self.rows[-1].name.selectAll()
        self.changed.emit()

    def remove(self, row: PhaseRow) -> None:
        """Take a phase out; the focus goes to the next one."""
        at = self.rows.index(row)
        self.rows.remove(row)
        for widget in row.widgets:
            widget.hide()
            widget.deleteLater()
        self._lay()
        left = self.rows[min(at, len(self.rows) - 1)].remove if self.rows else self.add_act
        left.setFocus(Qt.FocusReason.OtherFocusReason)
        self.changed.emit()

    def shift(self, row: PhaseRow, by: int) -> None:
        """Move a phase up or down."""
        at = self.rows.index(row)
        to = at + by
        if 0 <= to < len(self.rows):
            self.rows.insert(to, self.rows.pop(at))
            self._lay()
            self.changed.emit()

    def _row_fault(self, row: PhaseRow) -> str:
        name = row.name.text().strip()
        if not name:
            return _("A phase needs a name.")
        hours = [field.hours() for field in row.hours]
        known = [one for one in hours if one is not None]
        if len(known) < len(hours):
            return _("{name}: write a duration as 1:30, 1.5 or 90 min.").format(name=name)
        falling = known != sorted(known)
        for field in row.hours:
            field.mark_wrong(wrong=falling)
        return _("{name}: low, likely and high must rise.").format(name=name) if falling else ""

    def _made(self, phase: Phase, was: str = "") -> PhaseRow:
        of = _("of {phase}").format(phase=phase.name)
        row = PhaseRow(
            was=was,
            name=MarkedField(phase.name),
            way=ChoiceField([(way, _(way.value)) for way in PhaseWay]),
            low=HoursField(phase.low_h, f"{_('low')} {of}"),
            likely=HoursField(phase.likely_h, f"{_('likely')} {of}"),
            high=HoursField(phase.high_h, f"{_('high')} {of}"),
            air=NumberField("°C", decimals=1, least=COLDEST, most=WARMEST, unknown="?"),
            up=Button("↑", Rank.ACT),
            down=Button("↓", Rank.ACT),
            remove=Button("×", Rank.ACT),
        )
        row.way.choose(phase.way)
        row.air.put(phase.air_c)
        row.air.setFixedWidth(look.px(84))
        row.name.setMinimumWidth(look.px(120))
        spoken = ((row.name, _("Name")), (row.way, _("Way of moving")), (row.air, _("Air temperature")))
        acts = ((row.up, _("Move up")), (row.down, _("Move down")), (row.remove, _("Remove")))
        for widget, word in (*spoken, *acts):
            widget.setAccessibleName(f"{word} {of}")
            widget.setToolTip(word if isinstance(widget, Button) else "")
        self._listen(row)
        return row

    def _listen(self, row: PhaseRow) -> None:
        for field in (row.name, *row.hours):
            field.textChanged.connect(lambda _text: self.changed.emit())
        row.way.currentIndexChanged.connect(lambda _index: self.changed.emit())
        row.air.valueChanged.connect(lambda _value: self.changed.emit())
        row.up.clicked.connect(lambda _on=False: self.shift(row, -1))
        row.down.clicked.connect(lambda _on=False: self.shift(row, 1))
        row.remove.clicked.connect(lambda _on=False: self.remove(row))

    def _lay(self) -> None:
        kept = {widget for row in self.rows for widget in row.widgets}
        while (item := self._grid.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None and widget not in kept:
                widget.hide()
                widget.deleteLater()
        for column, head in enumerate(HEADS):
            self._grid.addWidget(Text(_(head), Role.SMALL, "muted"), 0, column)
        before: QWidget | None = None
        for number, row in enumerate(self.rows, start=1):
            row.up.setEnabled(number > 1)
            row.down.setEnabled(number < len(self.rows))
            for column, widget in enumerate(row.widgets):
                self._grid.addWidget(widget, number, column)
                widget.show()
                if before is not None:
                    QWidget.setTabOrder(before, widget)
                before = widget
        if before is not None:
            QWidget.setTabOrder(before, self.add_act)
