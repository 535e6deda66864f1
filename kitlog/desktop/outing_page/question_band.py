"""The band of open questions: a dashed strip above the tiles, one segment a question."""

from datetime import datetime

from PySide6.QtCore import QLineF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.pressable import Pressable
from kitlog.desktop.parts.ring import draw_ring
from kitlog.packing.assessment import Question
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.strokes import pen
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import moment_text
from kitlog.wording.lines import question_text
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper, word

HIGH, PAD, RING, GAP = 32, 12, 11, 8
DASHES = (3.0, 3.0)


def subject_text(question: Question) -> str:
    """Whom or what a question is about."""
    return first_upper(_(question.label) if question.kind == "day" else word(question.label))


def rest_text(question: Question) -> str:
    """The question or its answer, after its subject."""
    if question.answered and isinstance(question.at, datetime):
        return f"{question.value}, {moment_text(question.at)}"
    if question.expired:
        return _("answered too long ago")
    if question.kind == "day":
        return _("not answered")
    return _("yes or no?") if question.kind == "condition" else _("which one?")


class Segment(Pressable):
    """One question; pressed, it asks."""

    ring_radius = None

    def __init__(self, question: Question, parent: QWidget) -> None:
        super().__init__("", parent)
        self.question = question
        self.act = _("Change") if question.answered else _("Answer")
        self.subject, self.rest = f"{subject_text(question)}:", rest_text(question)
        self.setAccessibleName(f"{self.subject} {self.rest}. {self.act}")
        self.setToolTip(question_text(question) if question.kind != "day" else "")
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def wide(self, *, brief: bool) -> int:
        """Width that it asks for in pixels."""
        text = look.lettering()
        words = text.width(self.subject, Role.CHIP) + text.width(self.act, Role.CHIP)
        rest = 0.0 if brief else text.width(self.rest, Role.SMALL) + look.px(4)
        return round(words + rest) + look.px(2 * PAD + RING + 2 * GAP + 6)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint ring, subject, question and act."""
        t, px, text = look.tokens(), look.px, look.lettering()
        row = QRectF(self.rect()).adjusted(px(PAD), 0, -px(PAD), 0)
        answered = self.question.answered
        with QPainter(self) as painter:
            mark = Mark.NONE if answered else Mark.NOT_KNOWN
            draw_state(painter, QRectF(row.left(), row.center().y() - px(RING) / 2, px(RING), px(RING)), mark, t)
            act = text.width(self.act, Role.CHIP)
            at = row.adjusted(row.width() - act - 1, 0, 0, 0)
            drawn = text.draw(painter, at, self.act, Role.CHIP, t.accent)
            if self.underMouse():
                painter.setPen(QPen(t.accent, 1))
                painter.drawLine(QLineF(drawn.left(), drawn.bottom(), drawn.right(), drawn.bottom()))
            words = row.adjusted(0 if answered else px(RING + GAP), 0, -act - px(GAP), 0)
            done = text.draw(painter, words, self.subject, Role.CHIP, t.ink if answered else t.muted)
            words.setLeft(done.right() + px(4))
            text.draw(painter, words, self.rest, Role.SMALL, t.ink if answered else t.muted)
            if self.hasFocus():
                draw_ring(painter, QRectF(self.rect()).adjusted(2, 2, -2, -2), px(5))


class QuestionBand(QWidget):
    """All questions of the outing; it takes as many rows as they need.

    Attributes:
        asked: a question is to be answered, by its id.
    """

    asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.brief = False
        self.single = False
        self.segments: list[Segment] = []
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setAccessibleName(_("Questions to the pilot"))

    def show_questions(self, questions: tuple[Question, ...]) -> None:
        """Show these questions; the focus stays with the same one."""
        held = next((segment.question.id for segment in self.segments if segment.hasFocus()), "")
        for segment in self.segments:
            segment.hide()
            segment.deleteLater()
        self.segments = [Segment(question, self) for question in questions]
        for segment in self.segments:
            segment.clicked.connect(lambda _on=False, name=segment.question.id: self.asked.emit(name))
            segment.show()
            if segment.question.id == held:
                segment.setFocus()
        self.setVisible(bool(questions))
        self._lay()
        self.updateGeometry()

    def fold(self, *, brief: bool, single: bool) -> None:
        """Shorten the questions, or give each a row of its own."""
        if (brief, single) != (self.brief, self.single):
            self.brief, self.single = brief, single
            self._lay()
            self.updateGeometry()

    def hasHeightForWidth(self) -> bool:
        """More rows where it is narrower."""
        return True

    def heightForWidth(self, width: int) -> int:
        """32 a row."""
        return max(1, len(self._rows(width))) * look.px(HIGH)

    def sizeHint(self) -> QSize:
        """As wide as there is room."""
        return QSize(look.px(480), self.heightForWidth(max(self.width(), look.px(320))))

    def minimumSizeHint(self) -> QSize:
        """One segment."""
        return QSize(look.px(200), look.px(HIGH))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay the segments."""
        super().resizeEvent(event)
        self._lay()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the strip and its perforations."""
        t = look.tokens()
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(pen(t.outline, 1, DASHES))
            painter.setBrush(t.sunk)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), look.px(6), look.px(6))
            painter.setPen(pen(t.strong_line, 1, DASHES))
            for segment in self.segments:
                box = segment.geometry()
                if box.left() > look.px(4):
                    painter.drawLine(QLineF(box.left() - 0.5, box.top() + 1, box.left() - 0.5, box.bottom()))
                if box.top() > look.px(4):
                    painter.drawLine(QLineF(box.left(), box.top() - 0.5, box.right(), box.top() - 0.5))

    def _rows(self, width: int) -> list[list[Segment]]:
        rows: list[list[Segment]] = []
        for segment in self.segments:
            used = sum(other.wide(brief=self.brief) for other in rows[-1]) if rows else width
            if self.single or not rows or used + segment.wide(brief=self.brief) > width:
                rows.append([])
            rows[-1].append(segment)
        return rows

    def _lay(self) -> None:
        high = look.px(HIGH)
        for number, row in enumerate(self._rows(self.width())):
            spare = (self.width() - sum(s.wide(brief=self.brief) for s in row)) / len(row)
            left = 0.0
            for segment in row:
                wide = segment.wide(brief=self.brief) + spare
                segment.setGeometry(round(left), number * high, round(wide), high)
                left += wide
        self.update()
