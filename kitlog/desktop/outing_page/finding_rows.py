"""Findings as rows: state, title, figure, sentence, what would help, and a reason where a stop was closed with one."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from kitlog.budget.result import Finding, Remedy, State, Sure
from kitlog.desktop import look
from kitlog.desktop.outing_page.tile_words import short_act
from kitlog.desktop.outing_page.topics import mark_of
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.chip import StateMark
from kitlog.desktop.parts.text import CutText, Paragraph, Text
from kitlog.packing.power_remedies import is_computed
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.findings import Names, say
from kitlog.wording.remedies import remedy_text
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper

Doing = Callable[[], object]
Doer = Callable[[Remedy, Finding], Doing | None]
"""What a remedy does when pressed, None for advice alone."""

SPOKEN_BY_PILOT = frozenset({"tell_contact"})
"""Remedies that the pilot carries out; pressed, it is only noted that it was done. kitlog itself tells nobody."""

STATE_WIDE = 92
BESIDE = 300
"""Acts with more words than this, in px, stand below each other."""


@dataclass(frozen=True, slots=True)
class RowActs:
    """What the rows do: remedies, and closing a stop with a reason."""

    remedy: Doer
    override: Callable[[Finding], object]


class FindingRow(QWidget):
    """One finding on its ground; its acts carry names that survive a reload."""

    def __init__(self, finding: Finding, names: Names, acts: RowActs, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.finding = finding
        self._mark = mark_of(finding.state)
        said = say(finding, names)
        title = first_upper(said.title)
        self.setAccessibleName(f"{_(finding.state.value)}: {title}. {said.sentence}")
        px = look.px
        rows = QVBoxLayout(self)
        rows.setContentsMargins(px(12), px(6), px(12), px(6))
        rows.setSpacing(px(2))
        head = QHBoxLayout()
        head.setSpacing(px(8))
        state = StateMark(_(finding.state.value), self._mark, on_tint=False)
        state.setFixedWidth(px(STATE_WIDE))
        head.addWidget(state)
        head.addWidget(CutText(title, Role.GROUP), 1)
        if finding.sure in {Sure.GUESS, Sure.ESTIMATE} and finding.figure is not None:
            head.addWidget(Text(_(finding.sure.value), Role.SMALL, "muted"))
        head.addWidget(Text(said.figure, Role.GROUP))
        rows.addLayout(head)
        below = QVBoxLayout()
        below.setContentsMargins(px(STATE_WIDE + 8), 0, 0, 0)
        below.setSpacing(px(2))
        below.addWidget(Paragraph(with_stop(first_upper(said.sentence))))
        self._add_override(below, finding)
        self._add_acts(below, finding, names, acts, title)
        rows.addLayout(below)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the ground of *look* and *stop*, or a hairline below."""
        t = look.tokens()
        with QPainter(self) as painter:
            if self._mark in {Mark.STOP, Mark.LOOK}:
                painter.setRenderHint(QPainter.RenderHint.Antialiasing)
                painter.setPen(QPen(t.tint(t.state(self._mark), 0.3), 1))
                painter.setBrush(t.tile(self._mark))
                box = QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
                painter.drawRoundedRect(box, look.px(6), look.px(6))
            else:
                painter.fillRect(0, self.height() - 1, self.width(), 1, t.hairline)

    def _add_override(self, below: QVBoxLayout, finding: Finding) -> None:
        if finding.override:
            below.addWidget(Paragraph(_("Reason on record: {reason}").format(reason=finding.override), tone="ink"))

    def _add_acts(self, below: QVBoxLayout, finding: Finding, names: Names, acts: RowActs, title: str) -> None:
        row = self._acts_layout(finding, names)
        for number, remedy in enumerate(finding.remedies):
            words, do = remedy_text(remedy, names), acts.remedy(remedy, finding)
            if do is None:
                below.addWidget(Paragraph(with_stop(words)))
                continue
            if remedy.code in SPOKEN_BY_PILOT or is_computed(remedy):
                below.addWidget(Paragraph(with_stop(words)))
                words = short_act(remedy, names)
            button = Button(words, Rank.ACT).give_way()
            button.setObjectName(f"{finding.key}/{number}")
            button.setAccessibleName(f"{title}: {words}")
            button.clicked.connect(lambda _on=False, act=do: act())
            row.addWidget(button)
        if finding.state is State.STOP:
            words = _("Another reason…") if finding.override else _("Override with a reason…")
            button = Button(words, Rank.ACT, quiet=True)
            button.setObjectName(f"{finding.key}/override")
            button.setAccessibleName(f"{title}: {words}")
            button.clicked.connect(lambda _on=False: acts.override(finding))
            row.addWidget(button)
        if row.count():
            if row.direction() is QBoxLayout.Direction.LeftToRight:
                row.addStretch()
            below.addLayout(row)
        else:
            row.deleteLater()

    def _acts_layout(self, finding: Finding, names: Names) -> QBoxLayout:
        """Acts beside each other, or below each other where their words are long."""
        words = look.lettering()
        wide = sum(words.width(remedy_text(remedy, names), Role.NAME) for remedy in finding.remedies)
        beside = wide <= look.px(BESIDE)
        row = QBoxLayout(QBoxLayout.Direction.LeftToRight if beside else QBoxLayout.Direction.TopToBottom)
        row.setSpacing(look.px(16 if beside else 2))
        return row


def with_stop(sentence: str) -> str:
    """A sentence with its full stop."""
    return sentence if not sentence or sentence[-1] in ".?!…" else f"{sentence}."


def finding_list(findings: tuple[Finding, ...], names: Names, acts: RowActs) -> QWidget:
    """Rows of findings, as they come."""
    made = QWidget()
    made.setObjectName("findings")
    rows = QVBoxLayout(made)
    rows.setContentsMargins(0, 0, 0, 0)
    rows.setSpacing(look.px(6))
    for finding in findings:
        rows.addWidget(FindingRow(finding, names, acts))
    return made
