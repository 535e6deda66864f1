"""The leaf of how the table was read: what decided, what was left out, what was left not known."""

from collections.abc import Iterator

from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.import_page.headings_leaf import paper_scroll
from kitlog.desktop.import_page.word_rows import WordRows, word_table
from kitlog.desktop.parts.line import Hairline
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.paint.type_scale import Role
from kitlog.wording.faults import fault_text
from kitlog.wording.import_text import remark_text
from kitlog.wording.import_words import asked_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import first_upper
from kitlog.workbench.kit_preview import KitPreview

MOST = 120
"""Sentences that stand one below the other; further ones stand in the table."""


class NotesLeaf(QWidget):
    """Sentences about the reading, and the cells that were left not known."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sentences: list[str] = []
        self._inside = QWidget()
        self._said = QVBoxLayout(self._inside)
        self._said.setContentsMargins(0, 0, look.px(12), 0)
        self._said.setSpacing(look.px(7))
        self.left = WordRows((_("Row"), _("Heading"), _("Cell"), _("Why it was left not known")))
        self.left_title = Text("", Role.GROUP)
        self.table = word_table(_("Cells left not known"), self.left, (56, 152, 200, 240))
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(paper_scroll(self._inside), 1)
        rows.addWidget(self.left_title)
        rows.addWidget(self.table, 1)

    def show_preview(self, preview: KitPreview | None) -> None:
        """Show what is to be said of a reading."""
        remarks = preview.remarks if preview else ()
        said = [first_upper(remark_text(remark.code, remark.facts, in_window=True)) for remark in remarks]
        if said != self.sentences:
            self.sentences = said
            self._put_up()
        left = list(left_rows(preview)) if preview else []
        left += [("", "", "", text) for text in said[MOST:]]
        self.left.put(left)
        n = len(left)
        self.left_title.setText(ngettext("{n} cell left not known", "{n} cells left not known", n).format(n=n))
        for widget in (self.left_title, self.table):
            widget.setVisible(bool(left))

    def count(self) -> int:
        """How much there is to be said."""
        return len(self.sentences)

    def _put_up(self) -> None:
        clear(self._said)
        for number, text in enumerate(self.sentences[:MOST]):
            if number:
                self._said.addWidget(Hairline())
            self._said.addWidget(Paragraph(text, Role.BODY, "ink"))
        if not self.sentences:
            self._said.addWidget(Paragraph(_("Read as it stands; there is nothing to be said."), Role.BODY))
        self._said.addStretch()


def left_rows(preview: KitPreview) -> Iterator[tuple[str, str, str, str]]:
    """Cells that are left not known by choice: row, heading, cell, why."""
    for doubt in preview.emptied:
        yield str(doubt.spot.row), doubt.heading, doubt.text, asked_text(doubt.question.value)
    for problem in preview.dropped:
        why = first_upper(fault_text(problem.as_fault()).what)
        yield str(problem.row or ""), problem.column, str(problem.facts.get("value", "")), why
