"""The foot of the repack: take-off mass, what is left to do, the counts, and closing."""

from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from kitlog.budget.result import State
from kitlog.desktop import look
from kitlog.desktop.fold import Fold
from kitlog.desktop.outing_page.tile_words import range_line
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.chip import StateMark
from kitlog.desktop.parts.line import Hairline
from kitlog.desktop.parts.section import RIGHT
from kitlog.desktop.parts.text import Text
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.desktop.repack_page.progress import Progress
from kitlog.desktop.words import count_text
from kitlog.outing.ticks import Step
from kitlog.packing.assessment import Counts
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import kg_text, moment_text
from kitlog.wording.translate import _, ngettext


@dataclass(frozen=True, slots=True)
class FootWords:
    """What the foot says.

    Attributes:
        mass, mass_note, state: take-off mass with its tolerance and state.
        left, left_note: how many lines are left, and which.
        counts, questions: of the assessment; asks: how many stops closing asks a reason for; to_stow: lines not stowed.
        closed: when it was closed, empty while it is open.
    """

    mass: str
    mass_note: str
    state: State
    left: str
    left_note: str
    counts: Counts
    questions: str
    asks: int
    to_stow: int
    closed: str


def foot_words(progress: Progress) -> FootWords:
    """The foot of a repack."""
    assessment, mass = progress.assessment, progress.assessment.mass
    finding = next((f for f in assessment.findings if f.code == "weight.takeoff_range"), None)
    least = _("at least {mass}").format(mass=kg_text(mass.known_g))
    count = progress.count(Step.STOW)
    open_questions = assessment.counts.open_questions
    asked = ngettext("{n} question not answered", "{n} questions not answered", open_questions)
    return FootWords(
        mass=least if mass.take_off_g is None else kg_text(mass.take_off_g),
        mass_note=range_line(finding) if finding else "",
        state=finding.state if finding else State.NOT_KNOWN,
        left=_("{left} of {n}").format(left=count.of - count.done, n=count.of),
        left_note=_left_note(progress),
        counts=assessment.counts,
        questions=asked.format(n=open_questions) if open_questions else _("all questions answered"),
        asks=len(progress.open_stops()),
        to_stow=count.of - count.done,
        closed="" if progress.closed is None else moment_text(progress.closed.at),
    )


def _left_note(progress: Progress) -> str:
    missing, stops = len(progress.missing), len(progress.open_stops())
    parts = [_("{n} to stow").format(n=len(progress.to_stow))]
    if missing:
        parts.append(_("{n} missing").format(n=missing))
    if stops:
        parts.append(ngettext("{n} stop", "{n} stops", stops).format(n=stops))
    return ", ".join(parts)


class CountMarks(QWidget):
    """Stop, look and not known as shapes with numbers; a count of none is left out."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._parts: list[tuple[str, Mark]] = []
        self.small = False
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_counts(self, counts: Counts) -> None:
        """Show the counts of an assessment."""
        pairs = ((counts.stop, State.STOP), (counts.look, State.LOOK), (counts.not_known, State.NOT_KNOWN))
        self._parts = [(count_text(n, state), Mark(state.value)) for n, state in pairs if n]
        self.setAccessibleName(", ".join(words for words, _mark in self._parts) or _("nothing open on record"))
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """As wide as its words."""
        text = look.lettering()
        wide = sum(text.width(words, self._role) + look.px(18) + self._gap for words, _mark in self._parts)
        none = text.width(_("nothing open on record"), Role.BODY)
        return QSize(round(wide if self._parts else none) + 2, look.px(28))

    @property
    def _role(self) -> Role:
        return Role.LABEL if self.small else Role.SECTION

    @property
    def _gap(self) -> int:
        return look.px(10 if self.small else 20)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint shapes and words."""
        t, px, text = look.tokens(), look.px, look.lettering()
        row = QRectF(self.rect())
        with QPainter(self) as painter:
            if not self._parts:
                text.draw(painter, row, _("nothing open on record"), Role.BODY, t.muted)
            for words, mark in self._parts:
                draw_state(painter, QRectF(row.left(), row.center().y() - px(6), px(12), px(12)), mark, t)
                row.setLeft(row.left() + px(18))
                colour = t.muted if mark is Mark.NOT_KNOWN else t.ink
                row.setLeft(text.draw(painter, row, words, self._role, colour).right() + self._gap)


class Footer(QWidget):
    """The foot itself; `close_act` closes the repack, or opens it again."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        px = look.px
        self.mass, self.mass_note = Text("", Role.TITLE), Text("", Role.SMALL, "muted")
        self.state = StateMark("", on_tint=False)
        self.left, self.left_note = Text("", Role.TITLE), Text("", Role.SMALL, "muted")
        self.counts, self.questions = CountMarks(), Text("", Role.SMALL, "muted")
        self.asks, self.asks_count = Text("", Role.SMALL, "muted"), Text("", Role.CHIP, "stop")
        self.close_act = Button(_("Close repack"), large=True)
        self.reopen_act = Button(_("Open again"), Rank.PLAIN, large=True)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(0)
        rows.addWidget(Hairline(strong=True))
        self._around, self._row = QVBoxLayout(), WrapRow(gap=24)
        self._around.addWidget(self._row)
        rows.addLayout(self._around)
        self._uprights: list[QWidget] = []
        self._block(_("Take-off mass"), self.mass, self.mass_note, self.state)
        self._upright()
        self._block(_("Left to do"), self.left, self.left_note)
        self._upright()
        self._block(_("Findings"), self.counts, self.questions)
        end = QWidget()
        end_row = QHBoxLayout(end)
        end_row.setContentsMargins(0, 0, 0, 0)
        end_row.setSpacing(px(12))
        self._asking = QWidget()
        beside = QVBoxLayout(self._asking)
        beside.setContentsMargins(0, 0, 0, 0)
        beside.setSpacing(0)
        beside.addStretch()
        for text in (self.asks, self.asks_count):
            text.setAlignment(RIGHT)
            beside.addWidget(text)
        beside.addStretch()
        end_row.addWidget(self._asking)
        for button in (self.close_act, self.reopen_act):
            end_row.addWidget(button, 0, Qt.AlignmentFlag.AlignVCenter)
        self._row.add(end, pushed=True)
        self.fold(Fold())

    def fold(self, fold: Fold) -> None:
        """Less room at the sides and between, smaller counts where it is narrow, no second lines where it is tight."""
        middle, side = fold.middle, look.px(fold.side_px)
        above = look.px(4 if fold.low else 8)
        self._row.set_gap(20 if fold.narrow else 24)
        for widget in self._uprights:
            widget.setVisible(not fold.narrow)
        for note in (self.mass_note, self.left_note, self.questions):
            note.setVisible(not fold.tight)
        self._asking.setVisible(not fold.tight)
        self.counts.small = fold.narrow
        self.counts.updateGeometry()
        self._around.setContentsMargins(side, above, side, above)
        self.close_act.say(_("Close") if middle else _("Close repack"))
        self.close_act.setAccessibleName(_("Close repack"))

    def show_words(self, words: FootWords) -> None:
        """Show where the repack stands."""
        self.mass.setText(words.mass)
        self.mass_note.setText(words.mass_note)
        self.mass.setToolTip(words.mass_note)
        self.state.show_state(_(words.state.value), Mark(words.state.value))
        self.left.setText(words.left)
        self.left_note.setText(words.left_note)
        self.left.setToolTip(words.left_note)
        self.counts.show_counts(words.counts)
        self.questions.setText(words.questions)
        self.counts.setToolTip(words.questions)
        self._show_closing(words)

    def _show_closing(self, words: FootWords) -> None:
        asks, closed = words.asks > 0, bool(words.closed)
        said = _("asks for a reason:") if asks else _("still to stow:")
        self.asks.setText(_("closed {time}").format(time=words.closed) if closed else said)
        self.asks.setVisible(closed or asks or words.to_stow > 0)
        stops = ngettext("{n} stop", "{n} stops", words.asks).format(n=words.asks)
        lines = ngettext("{n} line", "{n} lines", words.to_stow).format(n=words.to_stow)
        self.asks_count.say(stops if asks else lines, "stop" if asks else "ink")
        self.asks_count.setVisible((asks or words.to_stow > 0) and not closed)
        self.close_act.setVisible(not closed)
        self.reopen_act.setVisible(closed)
        self.close_act.rank = Rank.PLAIN if asks or words.to_stow else Rank.MAIN
        said = ngettext("asks for a reason: {n} stop", "asks for a reason: {n} stops", words.asks)
        self.close_act.setAccessibleDescription(said.format(n=words.asks) if asks else "")
        self.close_act.setToolTip(said.format(n=words.asks) if asks else "")
        self.close_act.update()

    def _block(self, title: str, figure: QWidget, note: Text, state: StateMark | None = None) -> None:
        box = QWidget()
        box.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Preferred)
        block = QVBoxLayout(box)
        block.setContentsMargins(0, 0, 0, 0)
        block.setSpacing(0)
        head = QHBoxLayout()
        head.setSpacing(look.px(8))
        head.addWidget(Text(title, Role.SMALL, "muted"))
        if state is not None:
            state.setFixedHeight(look.px(16))
            head.addWidget(state)
        head.addStretch()
        block.addLayout(head)
        block.addWidget(figure)
        block.addWidget(note)
        self._row.add(box)

    def _upright(self) -> None:
        line = Hairline(upright=True)
        line.setFixedHeight(look.px(56))
        self._uprights.append(line)
        self._row.add(line)
