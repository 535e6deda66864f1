"""Swapping a line: what goes instead, with its mass."""

from collections.abc import Sequence

from PySide6.QtWidgets import QWidget

from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.repack_page.swaps import Swap
from kitlog.packing.assessment import ListLine
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import mass_text
from kitlog.wording.translate import _


class SwapDialog(Dialog):
    """The next best is chosen already; others can be."""

    def __init__(self, desk: Desk, outing_id: str, line: ListLine, offered: Sequence[Swap], parent: QWidget) -> None:
        super().__init__(_("Swap {item}").format(item=line.item.name), _("Swap"), parent, wide=440)
        self._desk, self._outing_id, self._line = desk, outing_id, line
        self.choice = ChoiceField([(swap.item.id, f"{swap.item.name}, {swap.note}") for swap in offered])
        form = Form(96)
        form.add(_("Goes instead"), self.choice)
        goes = _("On the list: {item}, {mass}.").format(item=line.item.name, mass=mass_text(line.mass_g))
        self.body.addWidget(Paragraph(goes, Role.BODY, "ink"))
        self.body.addWidget(form)
        said = _("Each was tried: no need of the list is left without, and no stop comes with it.")
        self.body.addWidget(Paragraph(said, Role.SMALL))
        self.main.setFocus()

    def accept(self) -> None:
        """Swap."""
        bench, chosen = self._desk.bench, str(self.choice.chosen())
        if self.attempt(lambda: bench.swap(self._outing_id, self._line.item.id, chosen)):
            super().accept()
