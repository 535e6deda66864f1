"""How far the power goes, as rows: what is asked about, the likely day, the high day, how sure."""

from collections.abc import Iterable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import CutText, Paragraph, Text
from kitlog.paint.type_scale import Role
from kitlog.wording.power_asked_text import LimitWords
from kitlog.wording.translate import _

CASE_PX, SURE_PX, INDENT_PX = 172, 72, 12
"""Widths of the columns and how far rows stand in under their question, in px of the design."""


class LimitRow(QWidget):
    """One answer."""

    def __init__(self, words: LimitWords, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.words = words
        self.setAccessibleName(words.spoken)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(look.px(INDENT_PX), 0, 0, 0)
        whole.setSpacing(0)
        row = QHBoxLayout()
        row.setSpacing(look.px(8))
        whole.addLayout(row)
        if words.why_not:
            row.addWidget(Paragraph(words.spoken))
            return
        row.addWidget(CutText(words.subject, Role.SECOND), 1)
        for text in (words.likely, words.high):
            row.addWidget(_cell(CutText(text, Role.NAME), CASE_PX))
        row.addWidget(_cell(Text(words.sure, Role.SMALL, "muted"), SURE_PX))
        if words.note:
            whole.addWidget(Paragraph(words.note, Role.SMALL))


def _cell(text: Text, wide: int) -> Text:
    text.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
    text.setFixedWidth(look.px(wide))
    return text


def heads() -> QWidget:
    """What stands over the columns."""
    made = QWidget()
    row = QHBoxLayout(made)
    row.setContentsMargins(look.px(INDENT_PX), 0, 0, 0)
    row.setSpacing(look.px(8))
    row.addStretch(1)
    for text in (_("likely day"), _("high day")):
        row.addWidget(_cell(Text(text, Role.SMALL, "muted"), CASE_PX))
    row.addWidget(_cell(Text(_("sure"), Role.SMALL, "muted"), SURE_PX))
    return made


class LimitRows(QWidget):
    """The answers to one question; hidden while there are none."""

    def __init__(self, caption: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.shown: tuple[LimitWords, ...] = ()
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(look.px(2))
        if caption:
            whole.addWidget(Paragraph(caption, Role.SECOND, "ink"))
        self._rows = QVBoxLayout()
        self._rows.setSpacing(look.px(2))
        whole.addLayout(self._rows)
        self.hide()

    def show_answers(self, answers: Iterable[LimitWords]) -> None:
        """Show these; the same again change nothing."""
        wanted = tuple(answers)
        if wanted != self.shown:
            self.shown = wanted
            clear(self._rows)
            for words in wanted:
                self._rows.addWidget(LimitRow(words))
        self.setVisible(bool(wanted))
