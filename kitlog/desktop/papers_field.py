"""The papers and photos of a record or an item: attached by button or by dropping files, opened, saved, taken off."""

from collections.abc import Callable, Iterable, Sequence
from functools import partial
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QFileDialog, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.apart import apart
from kitlog.desktop.desk import Desk
from kitlog.desktop.paper_opening import open_paper, save_paper
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.text import CutText, Paragraph
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.fault import Fault
from kitlog.kit.paper import Paper
from kitlog.paint.type_scale import Role
from kitlog.wording.faults import fault_text
from kitlog.wording.paper_text import paper_text
from kitlog.wording.translate import _

FILTER = "PDF, JPEG, PNG (*.pdf *.jpg *.jpeg *.png);;* (*)"


class PapersField(QWidget):
    """A list of papers; what is attached is kept at once, the row that names it with the form.

    Attributes:
        changed: a paper was attached or taken off.
        papers: in their order.
    """

    changed = Signal()

    def __init__(self, desk: Desk, papers: Iterable[Paper] = (), parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.papers: tuple[Paper, ...] = ()
        self.setAcceptDrops(True)
        self.setAccessibleName(_("Papers and photos"))
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(look.px(4))
        self._lines = QVBoxLayout()
        self._lines.setSpacing(look.px(4))
        rows.addLayout(self._lines)
        self._wrong = Paragraph("", Role.SMALL, "stop")
        self._wrong.hide()
        rows.addWidget(self._wrong)
        foot = WrapRow(gap=12)
        self.attach_act = Button(_("Attach a paper or photo…"), Rank.ACT)
        self.attach_act.clicked.connect(self._choose)
        foot.add(self.attach_act)
        foot.add(Paragraph(_("or drop PDF, JPEG or PNG files here"), Role.SMALL), wide=True)
        rows.addWidget(foot)
        self.put(papers)

    def put(self, papers: Iterable[Paper]) -> None:
        """Show these papers."""
        self.papers = tuple(papers)
        for old in self.findChildren(WrapRow, "paper"):
            self._lines.removeWidget(old)
            old.hide()
            old.deleteLater()
        for paper in self.papers:
            self._lines.addWidget(self._row(paper))

    def attach(self, files: Sequence[Path]) -> None:
        """Keep files; those that are none of ours are told by their names, the others are in."""
        told = []
        for file in files:
            try:
                paper = apart(partial(self._desk.bench.attach, file))
            except Fault as fault:
                told.append(fault_text(fault).line)
            else:
                if paper.sha256 not in {known.sha256 for known in self.papers}:
                    self.put((*self.papers, paper))
        self._say("\n".join(told))
        self.changed.emit()

    def remove(self, paper: Paper) -> None:
        """Take a paper off the list; its bytes stay until nothing has named them for a day."""
        self.put(one for one in self.papers if one != paper)
        self.attach_act.setFocus()
        self.changed.emit()

    def wrong(self) -> str:
        """What could not be attached or opened, and why; empty for nothing."""
        return self._wrong.text()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Files may be dropped; what they are is told when they are."""
        if event.mimeData().hasUrls():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Attach what was dropped."""
        files = [Path(url.toLocalFile()) for url in event.mimeData().urls() if url.isLocalFile()]
        event.acceptProposedAction()
        self.attach(files)

    def _choose(self) -> None:
        names, _kind = QFileDialog.getOpenFileNames(self, _("Attach papers and photos"), "", FILTER)
        if names:
            self.attach([Path(name) for name in names])

    def _row(self, paper: Paper) -> WrapRow:
        row = WrapRow(gap=12)
        row.setObjectName("paper")
        row.add(CutText(paper_text(paper), Role.SECOND), wide=True)
        for words, do in (
            (_("Open"), partial(self._try, partial(open_paper, self._desk, paper))),
            (_("Save…"), partial(self._try, partial(save_paper, self._desk, paper, self))),
            (_("Take off"), partial(self.remove, paper)),
        ):
            button = Button(words, Rank.ACT)
            button.setAccessibleName(f"{words} {paper.name}")
            button.clicked.connect(lambda _on=False, do=do: do())
            row.add(button)
        return row

    def _try(self, do: Callable[[], object]) -> None:
        try:
            do()
        except Fault as fault:
            self._say(fault_text(fault).line)
        else:
            self._say("")

    def _say(self, text: str) -> None:
        self._wrong.setText(text)
        self._wrong.setVisible(bool(text))
