"""The plan at the left: flight type, launch, way home, phases, people, the kit for the day."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QGridLayout, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page import plan_words
from kitlog.desktop.outing_page.plan_phases import PlanPhases
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.line import Hairline
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import CutText, Paragraph, Text
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Assessment
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import number_text
from kitlog.wording.power_plan_text import summary_texts
from kitlog.wording.translate import _
from kitlog.wording.words import ALARMS_NOBODY


class PlanPanel(QScrollArea):
    """The plan of one outing.

    Attributes:
        edit: the plan is to be edited; power: its power; repack: the repack is asked for; board: the board is wanted
            back.
    """

    edit = Signal()
    power = Signal()
    repack = Signal()
    board = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        px = look.px
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        inside = QWidget()
        rows = QVBoxLayout(inside)
        rows.setContentsMargins(px(24), px(16), px(24), px(16))
        rows.setSpacing(px(12))
        self.edit_act = Button(_("Edit"), Rank.ACT)
        self.edit_act.setAccessibleName(_("Edit plan"))
        self.edit_act.clicked.connect(self.edit)
        self.board_act = Button(_("Board"), Rank.ACT)
        self.board_act.setAccessibleName(_("Back to the board"))
        self.board_act.clicked.connect(self.board)
        self.board_act.hide()
        self.repack_act = Button(_("Repack"), Rank.ACT)
        self.repack_act.setAccessibleName(_("Show the repack"))
        self.repack_act.clicked.connect(self.repack)
        self.power_act = Button(_("Power plan"), Rank.ACT)
        self.power_act.setAccessibleName(_("Edit the power plan"))
        self.power_act.clicked.connect(self.power)
        head = QHBoxLayout()
        head.setSpacing(px(16))
        head.addWidget(Text(_("Plan"), Role.TITLE))
        head.addStretch()
        head.addWidget(self.board_act)
        head.addWidget(self.edit_act)
        rows.addLayout(head)
        self._phases: PlanPhases | None = None
        self._body = QVBoxLayout()
        self._body.setSpacing(px(12))
        rows.addLayout(self._body)
        self.powered, self.kit = Paragraph(""), Paragraph("")
        rows.addLayout(_with_act(_("Power"), self.power_act, self.powered))
        rows.addWidget(Hairline())
        rows.addLayout(_with_act(_("Kit for the day"), self.repack_act, self.kit))
        rows.addStretch()
        self.setWidget(inside)

    def show_plan(self, outing: Outing, library: Library) -> None:
        """Show the plan; the kit for the day follows with the assessment."""
        clear(self._body)
        self._body.addLayout(_facts(outing, library))
        self._body.addWidget(Hairline())
        self._phases = PlanPhases(outing)
        self._body.addLayout(self._phases)
        if outing.top_m is not None:
            self._section(_("Air"), "", _("Planned top {height} m.").format(height=number_text(outing.top_m)))
        said = f"{plan_words.people_text(outing)} {_(ALARMS_NOBODY)}"
        self._section(_("People"), plan_words.told_text(outing), said)
        self._body.addWidget(Hairline())
        self.powered.say(" ".join(summary_texts(outing)))
        self.powered.updateGeometry()

    def show_hours(self, outing: Outing) -> None:
        """Show the hours of a plan that is being tried in its table."""
        if self._phases is not None:
            self._phases.show_hours(outing)

    def show_kit(self, assessment: Assessment, names: dict[str, str]) -> None:
        """Say what goes and what stays at home."""
        self.kit.setText(plan_words.kit_text(assessment, names))
        self.kit.updateGeometry()

    def _section(self, title: str, right: str, text: str) -> None:
        self._body.addWidget(Hairline())
        head = QHBoxLayout()
        head.addWidget(Text(title, Role.GROUP))
        head.addStretch()
        head.addWidget(Text(right, Role.SMALL, "muted"))
        block = QVBoxLayout()
        block.setSpacing(look.px(4))
        block.addLayout(head)
        block.addWidget(Paragraph(text))
        self._body.addLayout(block)


def _with_act(title: str, act: Button, text: Paragraph) -> QVBoxLayout:
    head = QHBoxLayout()
    head.addWidget(Text(title, Role.GROUP))
    head.addStretch()
    head.addWidget(act)
    block = QVBoxLayout()
    block.setSpacing(look.px(4))
    block.addLayout(head)
    block.addWidget(text)
    return block


def _facts(outing: Outing, library: Library) -> QGridLayout:
    grid = QGridLayout()
    grid.setHorizontalSpacing(look.px(8))
    grid.setVerticalSpacing(0)
    grid.setColumnMinimumWidth(0, look.px(80))
    grid.setColumnStretch(1, 1)
    rows: tuple[tuple[str, str, str], ...] = (
        (_("Flight type"), plan_words.types_text(outing, library), ""),
        (_("Launch"), outing.site.name or _("not named yet"), plan_words.launch_text(outing)),
        (_("Way home"), outing.way_home or _("not planned yet"), ""),
    )
    ticked = plan_words.ticked_text(outing)
    rows += ((_("Ticked"), ticked, ""),) if ticked else ()
    for number, (label, value, note) in enumerate(rows):
        at = 3 * number
        grid.addWidget(Text(label, Role.SECOND, "muted"), at, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(_wrapped(value), at, 1)
        if note:
            grid.addWidget(CutText(note, Role.SMALL, "muted"), at + 1, 1)
        grid.setRowMinimumHeight(at + 2, look.px(6))
    return grid


def _wrapped(text: str) -> Paragraph:
    return Paragraph(text, Role.NAME, "ink")
