"""The last step: findings worst first, the open questions, the sheet."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QApplication, QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from kitlog.budget.result import State
from kitlog.desktop import look
from kitlog.desktop.outing_page.finding_rows import FindingRow, RowActs
from kitlog.desktop.outing_page.question_band import QuestionBand
from kitlog.desktop.parts.button import Button
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.desktop.repack_page.progress import Progress, missing_key
from kitlog.paint.type_scale import Role
from kitlog.wording.findings import Names
from kitlog.wording.sheet_words import line_name
from kitlog.wording.translate import _


class CloseView(QScrollArea):
    """What is still open before the bag is shut.

    Attributes:
        asked: a question is to be answered, by its id; sheet, sheet_pdf: the sheet is to be saved, as web page or PDF.
    """

    asked = Signal(str)
    sheet = Signal()
    sheet_pdf = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        px = look.px
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._inside = QWidget()
        rows = QVBoxLayout(self._inside)
        rows.setContentsMargins(0, 0, px(12), px(12))
        rows.setSpacing(px(12))
        head = QHBoxLayout()
        self.sheet_act = Button(_("Save the sheet…"))
        self.sheet_act.clicked.connect(self.sheet)
        self.sheet_pdf_act = Button(_("Save as PDF…"))
        self.sheet_pdf_act.clicked.connect(self.sheet_pdf)
        self.says = Paragraph("")
        head.addWidget(self.says, 1)
        head.addWidget(self.sheet_act, 0, Qt.AlignmentFlag.AlignTop)
        head.addWidget(self.sheet_pdf_act, 0, Qt.AlignmentFlag.AlignTop)
        rows.addLayout(head)
        self.band = QuestionBand()
        self.band.asked.connect(self.asked)
        rows.addWidget(self.band)
        self._body = QVBoxLayout()
        self._body.setSpacing(px(6))
        rows.addLayout(self._body)
        rows.addStretch()
        self.setWidget(self._inside)

    def show_progress(self, progress: Progress, names: Names, acts: RowActs) -> None:
        """Show what is open; the focus stays with what has the same name."""
        held = self._held()
        self.says.setText(
            _("Nothing is judged good here: what is on record stands below, and what is not known is said.")
        )
        self.band.show_questions(progress.assessment.questions)
        clear(self._body)
        for line in progress.missing:
            reason = progress.reason(missing_key(line))
            said = _("Missing: {item}").format(item=line_name(line))
            more = _("; reason on record: {reason}").format(reason=reason) if reason else ""
            self._body.addWidget(Paragraph(said + more, Role.NAME, "stop" if not reason else "ink"))
        findings = [finding for finding in progress.assessment.findings if finding.state is not State.FINE]
        if not findings:
            self._body.addWidget(Text(_("No stop, look or not known on record."), Role.BODY))
        for finding in findings:
            self._body.addWidget(FindingRow(finding, names, acts))
        if held:
            self._hold(held)

    def first(self) -> QWidget:
        """What has the focus when the step is opened."""
        return self.band.segments[0] if self.band.segments else self.sheet_act

    def _held(self) -> str:
        focus = QApplication.focusWidget()
        return focus.objectName() if focus is not None and self._inside.isAncestorOf(focus) else ""

    def _hold(self, name: str) -> None:
        again = self._inside.findChild(QWidget, name)
        (again if isinstance(again, QWidget) else self.sheet_act).setFocus(Qt.FocusReason.OtherFocusReason)
