"""What fills the shares of a device in one phase or in all: as usual, the presets of its kind, the rest to a way."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.phase_column import PhaseColumn
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.fields import ChoiceField
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.kit.item import Item
from kitlog.packing.power_plan import PRESETS, PresetShares, lacking_ways, preset_shares
from kitlog.paint.type_scale import Role
from kitlog.wording.draw_text import short_text
from kitlog.wording.power_plan_text import lacking_text, way_text
from kitlog.wording.translate import _


class ShareActs(QWidget):
    """Acts on the columns of one device.

    Attributes:
        done: an act was done.
        where: the phase they act on, or all; usual: takes the item's own shares back.
        presets: an act a preset; rest: gives `rest_to` what the others leave.
    """

    done = Signal()

    def __init__(self, item: Item, columns: Sequence[PhaseColumn], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._columns = columns
        whole: list[tuple[object, str]] = [(None, _("all phases"))]
        self.where = ChoiceField([*whole, *((column.phase.name, column.phase.name) for column in columns)])
        self.where.setAccessibleName(_("Phases to fill, {item}").format(item=item.name))
        self.usual = Button(_("As usual"), Rank.ACT)
        self.usual.setAccessibleName(_("Shares of {item} as usual").format(item=item.name))
        self.usual.setToolTip(_("Take the item’s own shares back"))
        self.usual.clicked.connect(lambda _on=False: self._each(PhaseColumn.take_usual))
        fitted = preset_shares(item)
        several = len({one.lead for one in fitted}) > 1
        self.presets = [self._preset(one, tell_apart=several) for one in fitted]
        self.rest = Button(_("Rest to"), Rank.ACT)
        self.rest.clicked.connect(lambda _on=False: self._give_rest())
        ways = columns[0].fields if columns else {}
        self.rest_to = ChoiceField([(way, way_text(way)) for way in ways])
        self.rest_to.setAccessibleName(_("Way of use that gets the rest, {item}").format(item=item.name))
        self.rest_to.currentIndexChanged.connect(lambda _index: self._name_rest())
        self._item = item.name
        self._name_rest()
        self._assemble(item)

    @property
    def stops(self) -> tuple[QWidget, ...]:
        """What Tab goes through, from left to right."""
        return (self.where, self.usual, *self.presets, self.rest, self.rest_to)

    def _chosen(self) -> list[PhaseColumn]:
        where = self.where.chosen()
        return [column for column in self._columns if where is None or column.phase.name == where]

    def _each(self, do: Callable[[PhaseColumn], object]) -> None:
        for column in self._chosen():
            do(column)
        self.done.emit()

    def _give_rest(self) -> None:
        way = str(self.rest_to.chosen())
        self._each(lambda column: column.give_rest(way))

    def _preset(self, one: PresetShares, *, tell_apart: bool) -> Button:
        name = f"{one.preset.name}, {one.lead}" if tell_apart else one.preset.name
        act = Button(name, Rank.ACT)
        said = ", ".join(f"{short_text(100 * share, '%')} {way}" for way, share in one.shares.items())
        act.setAccessibleName(_("Preset {name}: {shares}").format(name=name, shares=said))
        act.setToolTip(f"{said}. {one.preset.source}")
        act.clicked.connect(lambda _on=False: self._each(lambda column: column.put(one.shares)))
        return act

    def _name_rest(self) -> None:
        way = way_text(str(self.rest_to.chosen()))
        self.rest.setAccessibleName(_("Give {way} the rest of the time, {item}").format(way=way, item=self._item))

    def _assemble(self, item: Item) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(look.px(4))
        row = WrapRow(gap=12)
        row.add(Text(_("Fill"), Role.SECOND, "muted"), *self.stops)
        rows.addWidget(row)
        lacking = lacking_ways(item)
        if lacking:
            names = [preset.name for preset in PRESETS[item.kind]]
            self.lacking = Paragraph(lacking_text(names, lacking), Role.SMALL, "muted")
            rows.addWidget(self.lacking)
