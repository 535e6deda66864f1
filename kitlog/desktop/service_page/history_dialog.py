"""The history of one item: all its records and events, what was measured, its papers; nothing is ever erased."""

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.paper_opening import open_paper
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.line import Hairline
from kitlog.desktop.parts.section import Section, clear
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.desktop.service_page.measured_view import MeasuredView
from kitlog.desktop.service_page.record_dialog import RecordDialog
from kitlog.kit.item import Item
from kitlog.kit.item_book import Entry
from kitlog.kit.measured_series import measured_series
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.paint.measurement_picture import picture_of
from kitlog.paint.type_scale import Role
from kitlog.wording.book_content import Shown, history_entries
from kitlog.wording.book_parts import BookEntry
from kitlog.wording.measurement_text import NEVER_CONVERTED
from kitlog.wording.translate import _, ngettext

Do = Callable[[], object]

AT_ONCE = 8
"""Entries that are shown at once: more take a tenth of a second and longer to lay out."""


class HistoryDialog(Dialog):
    """Records and events of an item, the newest first; records can be corrected, both can be struck through.

    Attributes:
        view: the picture of measured values, None while there is none.
    """

    def __init__(self, desk: Desk, item: Item, parent: QWidget) -> None:
        super().__init__(_("History of {name}").format(name=item.name), "", parent, wide=720)
        self._desk, self._item = desk, item
        self.view: MeasuredView | None = None
        self._most = AT_ONCE
        self._rows = QVBoxLayout()
        self._rows.setSpacing(look.px(8))
        self.body.addLayout(self._rows)
        self.reload()

    def reload(self) -> None:
        """Show all anew."""
        clear(self._rows)
        book = self._desk.bench.item_book(self._item.id)
        self._show_measured([judged.rule for judged in book.rules], book.records)
        shown = Shown(costs=True, lacking=self._desk.bench.papers_absent(book.papers))
        section = Section(_("Services and events, the newest first"))
        both = list(zip(book.history, history_entries(book, shown), strict=True))[::-1]
        for entry, said in both[: self._most]:
            section.rows.addWidget(self._block(entry, said))
            section.rows.addWidget(Hairline())
        if not both:
            section.rows.addWidget(Paragraph(_("Nothing is on record: no service, no event.")))
        self._rows.addWidget(section)
        self._offer_older(len(both) - self._most)

    def show_older(self) -> None:
        """Show some more of the older entries."""
        self._most += AT_ONCE
        self._keep_place(self.reload)

    def _offer_older(self, hidden: int) -> None:
        if hidden > 0:
            text = ngettext("Show {n} older entry", "Show older entries ({n})", hidden).format(n=hidden)
            row, button = WrapRow(), Button(text, Rank.ACT)
            button.clicked.connect(self.show_older)
            row.add(button)
            self._rows.addWidget(row)

    def _show_measured(self, rules: Sequence[ServiceRule], records: Sequence[ServiceRecord]) -> None:
        picture = picture_of(measured_series(records, rules))
        self.view = MeasuredView(picture) if picture else None
        if self.view is not None:
            section = Section(_("Measured values over the years"))
            section.rows.addWidget(self.view)
            section.rows.addWidget(Paragraph(_(NEVER_CONVERTED), Role.SMALL))
            self._rows.addWidget(section)

    def _block(self, entry: Entry, said: BookEntry) -> QFrame:
        block = QFrame()
        rows = QVBoxLayout(block)
        rows.setContentsMargins(0, look.px(4), 0, look.px(4))
        rows.setSpacing(look.px(2))
        head = WrapRow(gap=8, under=0)
        tone = "muted" if entry.struck else "ink"
        head.add(Text(said.when, Role.SECOND, tone), Paragraph(said.title, Role.NAME, tone))
        head.add(Text(said.figure, Role.SECOND, tone), pushed=True)
        if entry.struck:
            for text in head.findChildren(Text):
                font = text.font()
                font.setStrikeOut(True)
                text.setFont(font)
        rows.addWidget(head)
        for line in said.said:
            rows.addWidget(Paragraph(line, Role.SMALL))
        acts = self._acts(entry, said)
        if acts is not None:
            rows.addWidget(acts)
        return block

    def _acts(self, entry: Entry, said: BookEntry) -> WrapRow | None:
        """What can be done with an entry: open its papers, and while it counts correct it or strike it."""
        row, made = WrapRow(gap=16), [*self._papers(entry.what), *(() if entry.struck else self._changes(entry.what))]
        for words, do in made:
            button = Button(words, Rank.ACT)
            button.setAccessibleName(f"{words}: {said.title}, {said.when}")
            button.clicked.connect(lambda _on=False, do=do: self._do(do))
            row.add(button)
        return row if made else None

    def _papers(self, what: ServiceRecord | Event) -> list[tuple[str, Do]]:
        papers = what.papers if isinstance(what, ServiceRecord) else ()
        return [(_("Open {name}").format(name=paper.name), partial(open_paper, self._desk, paper)) for paper in papers]

    def _changes(self, what: ServiceRecord | Event) -> list[tuple[str, Do]]:
        bench, strike = self._desk.bench, _("Strike through")
        if isinstance(what, Event):
            return [(strike, partial(bench.strike_event, what.id))]
        return [(_("Correct…"), partial(self._correct, what)), (strike, partial(bench.strike_record, what.id))]

    def _correct(self, record: ServiceRecord) -> None:
        RecordDialog(self._desk, self._item.id, "", self, change=record).exec()

    def _do(self, do: Do) -> None:
        """Do it and show all anew; what was struck through is one step of undo away."""
        done = self.attempt(do)
        if done:
            self.say_wrong("")
        self._keep_place(self.reload)

    def _keep_place(self, do: Do) -> None:
        """Do what puts new rows in the place of the old ones; what is in view stays there."""
        before = self.scroller.verticalScrollBar().value()
        do()
        self.scroller.verticalScrollBar().setValue(before)
        self.main.setFocus()
