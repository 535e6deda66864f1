"""A table that cannot be read: what it is, and what to do."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.text import Paragraph
from kitlog.fault import Fault
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.type_scale import Role
from kitlog.wording.faults import fault_text
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper


class _Shape(QWidget):
    """The shape of a stop."""

    def __init__(self) -> None:
        super().__init__()
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        """As high as the line beside it."""
        return QSize(look.px(16), look.px(24))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint it."""
        with QPainter(self) as painter:
            draw_state(painter, QRectF(0, look.px(5), look.px(14), look.px(14)), Mark.STOP, look.tokens())


class FaultLeaf(QWidget):
    """One sentence of what is wrong, one of what to do."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        px = look.px
        self.what, self.remedy = Paragraph("", Role.SECTION, "ink"), Paragraph("", Role.BODY)
        words = QVBoxLayout()
        words.setSpacing(px(6))
        words.addWidget(self.what)
        words.addWidget(self.remedy)
        words.addWidget(Paragraph(_("Nothing was written."), Role.BODY))
        words.addStretch(1)
        row = QHBoxLayout()
        row.setSpacing(px(10))
        shape = QVBoxLayout()
        shape.addWidget(_Shape())
        shape.addStretch()
        row.addLayout(shape)
        row.addLayout(words, 1)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, px(24), px(24), 0)
        rows.addLayout(row)
        rows.addStretch()

    def show_fault(self, fault: Fault) -> None:
        """Say what is wrong."""
        said = fault_text(fault)
        self.what.setText(f"{said.where}: {said.what}." if said.where else f"{first_upper(said.what)}.")
        self.remedy.setText("\n".join((said.remedy, *said.more[:8])))
        self.setAccessibleName(self.what.text())
        self.setAccessibleDescription(self.remedy.text())
