"""Measured values of a service record: what, value, unit, gauge, place; one row each."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import partial

from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.fields import ChoiceField, LineField, NumberField
from kitlog.desktop.parts.tab_order import tab_before
from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.kit.measurement import UNITS, Measured, Measurement
from kitlog.paint.type_scale import Role
from kitlog.wording.measurement_text import NEVER_CONVERTED, measured_choices, unit_text
from kitlog.wording.translate import _


@dataclass(frozen=True)
class MeasuredRow:
    """The fields of one measured value."""

    box: WrapRow
    what: ChoiceField
    value: NumberField
    unit: ChoiceField
    gauge: LineField
    place: LineField


class MeasuredRows(QWidget):
    """Rows of measured values; a row without a value is left out.

    Attributes:
        rows: in their order.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows: list[MeasuredRow] = []
        self._before: tuple[Measurement, ...] = ()
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(look.px(4))
        self._lines = QVBoxLayout()
        self._lines.setSpacing(look.px(8))
        whole.addLayout(self._lines)
        self.rule = Paragraph(_(NEVER_CONVERTED), Role.SMALL)
        self.rule.hide()
        whole.addWidget(self.rule)
        self.add_act = Button(_("Add a measured value"), Rank.ACT)
        self.add_act.clicked.connect(self._add)
        foot = WrapRow()
        foot.add(self.add_act)
        whole.addWidget(foot)

    def propose(self, before: Iterable[Measurement]) -> None:
        """What was measured the last time: a new row proposes its quantity, unit, gauge and place, never its value."""
        self._before = tuple(before)

    def put(self, measurements: Iterable[Measurement]) -> None:
        """Show measured values."""
        for row in tuple(self.rows):
            self._take(row)
        for one in measurements:
            self._put(one).value.put(one.value)

    def measurements(self) -> tuple[Measurement, ...]:
        """What was entered.

        Raises:
            pydantic.ValidationError: a value cannot be so.
        """
        return tuple(self._made(row, value) for row in self.rows if (value := row.value.number()) is not None)

    def _made(self, row: MeasuredRow, value: float) -> Measurement:
        return Measurement(
            what=Measured(str(row.what.chosen())),
            value=value,
            unit=str(row.unit.chosen()),
            gauge=row.gauge.text(),
            place=row.place.text(),
        )

    def _add(self) -> None:
        """A row like the one that comes next in the last record, else like the one above."""
        there = len(self.rows)
        like = self._before[there] if there < len(self._before) else None
        if like is None and self.rows:
            like = self._made(self.rows[-1], 0.0)
        self._put(like).value.setFocus()

    def _put(self, like: Measurement | None) -> MeasuredRow:
        row = self._new()
        if like is not None:
            row.what.choose(like.what.value)
            _offer_units(row)
            row.unit.choose(like.unit)
            row.gauge.setText(like.gauge)
            row.place.setText(like.place)
        self.rows.append(row)
        self._lines.addWidget(row.box)
        tab_before(self.add_act, row.box)
        self._look()
        return row

    def _new(self) -> MeasuredRow:
        row = MeasuredRow(
            WrapRow(gap=8),
            ChoiceField(measured_choices()),
            NumberField(decimals=3, least=-100_000, most=1_000_000, unknown=_("value")),
            ChoiceField(),
            LineField(hint=_("gauge")),
            LineField(hint=_("cell, line …")),
        )
        names = (_("What was measured"), _("Measured value"), _("Unit"), _("Gauge"), _("Place"))
        fields: tuple[QWidget, ...] = (row.what, row.value, row.unit, row.gauge, row.place)
        for field, name, wide in zip(fields, names, (136, 80, 88, 112, 116), strict=True):
            field.setAccessibleName(name)
            field.setFixedWidth(look.px(wide))
            row.box.add(field)
        remove = Button(_("Remove"), Rank.ACT)
        remove.setAccessibleName(_("Remove this measured value"))
        remove.clicked.connect(partial(self._remove, row))
        row.box.add(remove)
        row.what.currentIndexChanged.connect(lambda _index: _offer_units(row))
        _offer_units(row)
        return row

    def _remove(self, row: MeasuredRow) -> None:
        self._take(row)
        self.add_act.setFocus()

    def _take(self, row: MeasuredRow) -> None:
        self.rows.remove(row)
        self._lines.removeWidget(row.box)
        row.box.hide()
        row.box.setParent(None)
        row.box.deleteLater()
        self._look()

    def _look(self) -> None:
        self.rule.setVisible(bool(self.rows))


def _offer_units(row: MeasuredRow) -> None:
    row.unit.offer([(unit, unit_text(unit)) for unit in UNITS[Measured(str(row.what.chosen()))]])
    row.unit.setFixedWidth(max(look.px(88), row.unit.sizeHint().width()))  # a unit is never cut
