"""The charge at the start of the day: low, likely and high in per cent; nothing entered is full."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.percent_field import PercentField
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.kit.item import Item
from kitlog.outing.outing import StartCharge
from kitlog.paint.type_scale import Role
from kitlog.wording.power_plan_text import start_text, unread_text
from kitlog.wording.translate import N_, _

CASES = (N_("low"), N_("likely"), N_("high"))


class StartFields(QWidget):
    """Three figures of one device or bank.

    Attributes:
        changed: something was typed.
        fields: low, likely, high.
    """

    changed = Signal()

    def __init__(self, item: Item, start: StartCharge | None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._item = item.id
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(look.px(4))
        row = WrapRow(gap=12)
        row.add(Text(_("Charge at the start, %"), Role.SECOND, "muted"))
        self.fields = tuple(
            PercentField(_("{case} charge of {item} at the start, in %").format(case=_(case), item=item.name))
            for case in CASES
        )
        for case, field in zip(CASES, self.fields, strict=True):
            row.add(_beside(Text(_(case), Role.SMALL, "muted"), field))
        self.said = Text("", Role.SMALL, "muted")
        row.add(self.said)
        rows.addWidget(row)
        self.note = Paragraph("", Role.SMALL, "stop")
        self.note.hide()
        rows.addWidget(self.note)
        if start is not None:
            self.put(start.low_pct, start.likely_pct, start.high_pct)
        for field in self.fields:
            field.textChanged.connect(lambda _text: self.changed.emit())

    def put(self, low_pct: float, likely_pct: float, high_pct: float) -> None:
        """Show other charges."""
        for field, pct in zip(self.fields, (low_pct, likely_pct, high_pct), strict=True):
            field.put(pct)

    def start(self) -> StartCharge | None:
        """What was entered, None for full; only asked where there is no fault."""
        low, likely, high = (field.pct() for field in self.fields)
        if likely is None:
            return None
        low, high = (likely if end is None else end for end in (low, high))
        return StartCharge(item=self._item, low_pct=low, likely_pct=likely, high_pct=high)

    def fault(self) -> str:
        """What cannot be so, said under the fields and at each that is concerned; empty if all is well."""
        wrong = [field for field in self.fields if field.is_wrong()]
        text = unread_text(_("charge at the start")) if wrong else ""
        if not wrong:
            wrong, text = self._out_of_order()
        for field in self.fields:
            field.mark(text if field in wrong else "")
        self.note.say(text)
        self.note.setVisible(bool(text))
        self.said.say(start_text(self.fields[1].pct()) if not text else "")
        return text

    def _out_of_order(self) -> tuple[list[PercentField], str]:
        low, likely, high = (field.pct() for field in self.fields)
        if likely is None and (low is not None or high is not None):
            return [self.fields[1]], _("Give the likely charge too, or leave all three empty for full.")
        known = [pct for pct in (low, likely, high) if pct is not None]
        if known != sorted(known):
            return [*self.fields], _("Low, likely and high must rise.")
        return [], ""


def _beside(label: QWidget, field: QWidget) -> QWidget:
    """A word and its field, never apart."""
    both = QWidget()
    row = QHBoxLayout(both)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(look.px(8))
    row.addWidget(label)
    row.addWidget(field)
    return both
