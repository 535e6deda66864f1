"""One plug: on which bank a device hangs in a phase, below which charge it is put on, to which it is charged."""

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.percent_field import MOST_PCT, PercentField
from kitlog.desktop.parts.fields import ChoiceField
from kitlog.kit.item import Item
from kitlog.outing.outing import PlugPlan
from kitlog.packing.plug_checks import PlugTrouble
from kitlog.wording.power_plan_text import unread_text
from kitlog.wording.translate import _

Banks = tuple[tuple[object, str], ...]
"""Ids and names of the banks to choose from."""


class PlugFields(QObject):
    """The fields of one device in one phase.

    Attributes:
        changed: something was chosen or typed.
    """

    changed = Signal()

    def __init__(self, item: Item, phase: str, banks: Banks, plug: PlugPlan | None) -> None:
        super().__init__()
        self._device, self._phase = item.id, phase
        of = _("{item} in {phase}").format(item=item.name, phase=phase)
        self.bank = ChoiceField([(None, "–"), *banks])
        self.bank.setAccessibleName(f"{_('Bank')}: {of}")
        self.bank.setMinimumWidth(look.px(64))
        self.below = PercentField(f"{_('Put on below, in %')}: {of}", _("any"))
        self.below.setToolTip(_("Empty: from the start of the phase"))
        self.to = PercentField(f"{_('Charged to, in %')}: {of}", "100")
        self.limits = QWidget()
        row = QHBoxLayout(self.limits)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.px(6))
        row.addWidget(self.below)
        row.addWidget(self.to)
        row.addStretch()
        self.put(plug)
        self.bank.currentIndexChanged.connect(lambda _index: self._chosen())
        for field in (self.below, self.to):
            field.textChanged.connect(lambda _text: self.changed.emit())

    def put(self, plug: PlugPlan | None) -> None:
        """Show a plug or none."""
        self.bank.choose(plug.bank if plug else None)
        self.below.put(plug.connect_below_pct if plug else None)
        whole = plug is None or plug.charge_to_pct == MOST_PCT
        self.to.put(None if whole or plug is None else plug.charge_to_pct)
        self._show_limits()

    def plug(self) -> PlugPlan | None:
        """What was entered, None where it hangs on no bank; only asked where there is no fault."""
        bank, to_pct = self.bank.chosen(), self.to.pct()
        if not isinstance(bank, str):
            return None
        return PlugPlan(
            phase=self._phase,
            device=self._device,
            bank=bank,
            connect_below_pct=self.below.pct(),
            charge_to_pct=MOST_PCT if to_pct is None else to_pct,
        )

    def fault(self) -> str:
        """What cannot be read; its field is marked."""
        said = ""
        for field, what in ((self.below, _("put on below")), (self.to, _("charged to"))):
            text = unread_text(f"{self._phase}, {what}") if field.is_wrong() and field.isEnabled() else ""
            field.mark(text)
            said = said or text
        return said

    def mark(self, troubles: frozenset[PlugTrouble], text: str) -> None:
        """Mark what cannot be so and say why; empty takes the marks away."""
        ports, ends = PlugTrouble.PORTS in troubles, PlugTrouble.ENDS_FIRST in troubles
        if bool(self.bank.property("wrong")) != ports:
            self.bank.setProperty("wrong", ports)
            self.bank.style().unpolish(self.bank)
            self.bank.style().polish(self.bank)
        self.bank.setAccessibleDescription(text)
        for field in (self.below, self.to):
            if ends:
                field.mark(text)

    def _chosen(self) -> None:
        self._show_limits()
        self.changed.emit()

    def _show_limits(self) -> None:
        for field in (self.below, self.to):
            field.setEnabled(self.bank.chosen() is not None)
