"""Words on a page: one line, one line that is cut where the room ends, or a paragraph."""

from PySide6.QtCore import QPointF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent, QTextLayout
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.paint.type_scale import Role

MOST_LAID = 8
"""So many wrappings a paragraph remembers."""

THIN, NARROW = "\u2009", "\u202f"
"""A thin space groups the digits of a figure: no line ends there, as at the narrow no-break space."""

PLAIN = Qt.TextFormat.PlainText
"""User text is never read as markup."""


class Text(QLabel):
    """One line in a role of the type scale; `tone` is ink, muted, accent, fine, look or stop."""

    def __init__(
        self, text: str = "", role: Role = Role.BODY, tone: str = "ink", parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.role = role
        self.setTextFormat(PLAIN)
        self.setFont(look.font(role))
        self.setMinimumHeight(look.px(role.line))
        self.setProperty("tone", tone)
        self.setText(text)

    def say(self, text: str, tone: str | None = None) -> None:
        """Show another text, in another tone if one is given."""
        self.setText(text)
        if tone is not None and tone != self.property("tone"):
            self.setProperty("tone", tone)
            self.style().unpolish(self)
            self.style().polish(self)


class CutText(Text):
    """One line that gives way: cut with an ellipsis, whole in the tool tip."""

    def __init__(
        self, text: str = "", role: Role = Role.BODY, tone: str = "ink", parent: QWidget | None = None
    ) -> None:
        super().__init__(text, role, tone, parent)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)

    def setText(self, text: str) -> None:
        """Show another text, offered whole where it is cut."""
        super().setText(text)
        self._offer_whole()

    def minimumSizeHint(self) -> QSize:
        """As narrow as an ellipsis."""
        return QSize(look.px(16), look.px(self.role.line))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Offer the whole text where it is cut."""
        super().resizeEvent(event)
        self._offer_whole()

    def _offer_whole(self) -> None:
        whole = self.fontMetrics().horizontalAdvance(self.text()) <= self.contentsRect().width()
        self.setToolTip("" if whole else self.text())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint as much as fits."""
        box = self.contentsRect()
        shown = self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, box.width())
        with QPainter(self) as painter:
            painter.setPen(self.palette().color(self.foregroundRole()))
            painter.drawText(box, self.alignment() | Qt.TextFlag.TextSingleLine, shown)


class Paragraph(Text):
    """Text in lines of the design's height, wrapped to the width there is."""

    def __init__(
        self, text: str = "", role: Role = Role.SECOND, tone: str = "muted", parent: QWidget | None = None
    ) -> None:
        super().__init__(text, role, tone, parent)
        self._laid: dict[tuple[str, int, str], list[str]] = {}
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setWordWrap(True)

    def hasHeightForWidth(self) -> bool:
        """A paragraph is as high as its lines."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Height of all lines at a width, in pixels; the margins round them are part of both."""
        margins = self.contentsMargins()
        lines = self._lines(width - margins.left() - margins.right())
        return max(1, len(lines)) * look.px(self.role.line) + margins.top() + margins.bottom()

    def sizeHint(self) -> QSize:
        """Wide enough for about nine words."""
        width = min(self.fontMetrics().horizontalAdvance(self.text()) + 2, look.px(360))
        return QSize(width, self.heightForWidth(width))

    def minimumSizeHint(self) -> QSize:
        """One word wide, or as wide as all of it where that is less."""
        wide = min(self.fontMetrics().horizontalAdvance(self.text()) + 2, look.px(64))
        return QSize(wide, look.px(self.role.line))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the lines."""
        box, step = self.contentsRect(), look.px(self.role.line)
        with QPainter(self) as painter:
            painter.setPen(self.palette().color(self.foregroundRole()))
            for number, line in enumerate(self._lines(box.width())):
                row = box.adjusted(0, number * step, 0, 0)
                row.setHeight(step)
                flags = (self.alignment() & Qt.AlignmentFlag.AlignHorizontal_Mask) | Qt.AlignmentFlag.AlignVCenter
                painter.drawText(row, flags | Qt.TextFlag.TextSingleLine, line)

    def _lines(self, width: int) -> list[str]:
        """The lines at a width; a layout asks for the same ones many times over."""
        key = (self.text(), width, self.font().key())
        if key not in self._laid:
            if len(self._laid) >= MOST_LAID:
                self._laid.clear()
            self._laid[key] = [line for part in key[0].split("\n") for line in _wrapped(part, self, width)]
        return self._laid[key]


def _wrapped(text: str, label: QLabel, width: int) -> list[str]:
    layout = QTextLayout(text.replace(THIN, NARROW), label.font())
    layout.beginLayout()
    lines: list[str] = []
    while (line := layout.createLine()).isValid():
        line.setLineWidth(max(1, width))
        line.setPosition(QPointF(0, 0))
        lines.append(text[line.textStart() : line.textStart() + line.textLength()].rstrip(" "))
    layout.endLayout()
    return lines or [""]
