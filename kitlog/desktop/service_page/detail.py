"""What stands under the list about the selected rule: limits, span, booking, the next outing, where it comes from."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.text import CutText, Paragraph
from kitlog.desktop.service_page.list_words import told
from kitlog.kit.due import Due
from kitlog.paint.type_scale import Role
from kitlog.wording.rules import rule_text
from kitlog.workbench.reads import DueLine


class RuleDetail(QWidget):
    """Two or three lines; where the window is low, one that is cut, with the rest as a tool tip."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._brief = False
        self.first, self.behind = Paragraph("", Role.SECOND, "ink"), Paragraph("", Role.SMALL, "muted")
        self.line = CutText("", Role.SMALL)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(look.px(8), 0, look.px(8), 0)
        rows.setSpacing(look.px(2))
        for text in (self.first, self.behind, self.line):
            rows.addWidget(text)
        self.clear()

    def show_rule(self, line: DueLine, then: Due | None, proposal: str = "") -> None:
        """Say what is on record of a rule; `then`: the same on the next outing."""
        first, behind = told(line, then, proposal)
        said = f"{line.item.name}, {rule_text(line.due.rule)}: {first}"
        self.first.setText(said)
        self.behind.setText(behind)
        self.line.setText(said)
        self.line.setToolTip(f"{said}\n{behind}")
        self.setAccessibleName(said)
        self.setAccessibleDescription(behind)
        self._show()

    def clear(self) -> None:
        """Nothing is selected."""
        for text in (self.first, self.behind, self.line):
            text.setText("")
        self._show()

    def fold(self, *, brief: bool) -> None:
        """Take one line only, or as many as are needed."""
        self._brief = brief
        self._show()

    def _show(self) -> None:
        is_there = bool(self.first.text())
        self.setVisible(is_there)
        self.first.setVisible(not self._brief)
        self.behind.setVisible(not self._brief and bool(self.behind.text()))
        self.line.setVisible(self._brief)
