"""Which of the pilot's banks is the lightest that does, as rows: name, mass, and why not."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import CutText, Paragraph, Text
from kitlog.packing.power_limits import PowerLimits
from kitlog.paint.type_scale import Role
from kitlog.wording.findings import Names
from kitlog.wording.power_lightest_text import lightest_text, trial_texts

NAME_PX, MASS_PX, INDENT_PX = 180, 72, 12


class LightestRows(QWidget):
    """The answer, and each bank that was tried or could not be."""

    def __init__(self, names: Names, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._names = names
        self._shown: PowerLimits | None = None
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(look.px(2))
        self.said = Paragraph("", Role.SECOND, "ink")
        whole.addWidget(self.said)
        self._rows = QVBoxLayout()
        self._rows.setSpacing(look.px(2))
        whole.addLayout(self._rows)

    def show_limits(self, limits: PowerLimits) -> None:
        """Show the answer once it is known; the same again changes nothing."""
        if limits == self._shown:
            return
        self._shown = limits
        clear(self._rows)
        self.said.say(lightest_text(limits, self._names) if limits.complete else "")
        if limits.lightest is not None:
            for name, mass, verdict in trial_texts(limits.lightest, self._names):
                self._rows.addWidget(_row(name, mass, verdict))


def _row(name: str, mass: str, verdict: str) -> QWidget:
    made = QWidget()
    made.setAccessibleName(", ".join(part for part in (name, mass, verdict) if part))
    row = QHBoxLayout(made)
    row.setContentsMargins(look.px(INDENT_PX), 0, 0, 0)
    row.setSpacing(look.px(8))
    called, weighs = CutText(name, Role.SECOND), Text(mass, Role.SECOND)
    called.setFixedWidth(look.px(NAME_PX))
    weighs.setFixedWidth(look.px(MASS_PX))
    weighs.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
    row.addWidget(called, 0, Qt.AlignmentFlag.AlignTop)
    row.addWidget(weighs, 0, Qt.AlignmentFlag.AlignTop)
    row.addWidget(Paragraph(verdict), 1)
    return made
