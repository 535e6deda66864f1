"""Printing a book: of one item for a buyer, an inspector or an insurer; of the whole kit for an insurance claim."""

from abc import abstractmethod
from collections.abc import Callable, Sequence
from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QHBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.book_saving import CURRENCY, ask_where, usual_paper, write_book
from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField, LineField, TickField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.pdf_writing import Paper
from kitlog.kit.inventory import Inventory
from kitlog.kit.item import Item
from kitlog.paint.type_scale import Role
from kitlog.wording.book_content import Shown, book_content
from kitlog.wording.book_parts import BookContent
from kitlog.wording.inventory_content import InventoryShown, inventory_content
from kitlog.wording.translate import _, ngettext


def _usual_currency(desk: Desk) -> str:
    """The one that was typed here last, else that of the newest service with a cost."""
    known = [record for record in desk.bench.records() if record.currency and record.struck_at is None]
    newest = max(known, key=lambda record: record.done_on, default=None)
    return desk.bench.preference(CURRENCY) or (newest.currency if newest else "")


class PrintDialog(Dialog):
    """What both have: photos, currency, paper; saved, it stays open and says where the file lies.

    Attributes:
        saved: the file that was written last, None before.
    """

    def __init__(self, desk: Desk, title: str, parent: QWidget) -> None:
        super().__init__(title, _("Save as PDF…"), parent, wide=560)
        self._desk = desk
        self.saved: Path | None = None
        self.form = Form()
        self.remark = Paragraph("", Role.SMALL)
        self.photos = TickField(_("Photos as pictures"))
        self.photos.setChecked(True)
        self.currency = LineField(hint=_("EUR, CHF …"))
        self.currency.setText(_usual_currency(desk))
        self.paper = ChoiceField([(Paper.A4, _("A4")), (Paper.LETTER, _("US letter"))])
        self.paper.choose(usual_paper())
        self.done_note = Paragraph("", Role.SECOND, "ink")
        self.open_act = Button(_("Open the PDF"), Rank.ACT)
        self.open_act.clicked.connect(self._open)
        self._done = QWidget()
        row = QHBoxLayout(self._done)
        row.setContentsMargins(0, look.px(4), look.px(4), look.px(4))
        row.addWidget(self.done_note, 1)
        row.addWidget(self.open_act)
        self._done.hide()

    @abstractmethod
    def words(self) -> Callable[[], BookContent]:
        """What makes the words as the form has it; it may be called away from the window."""

    @abstractmethod
    def file_stem(self) -> str:
        """A name for the file."""

    def accept(self) -> None:
        """Ask where, make it, write it."""
        to = ask_where(self._desk, self.file_stem(), self)
        if to is not None:
            self.save(to)

    def save(self, to: Path) -> None:
        """Make it and write it there, or say why not."""
        self.say_wrong("")
        self.main.setEnabled(False)
        paper = Paper(str(self.paper.chosen()))
        try:
            done = self.attempt(lambda: write_book(self._desk, self.words(), paper, to))
        finally:
            self.main.setEnabled(True)
        if done:
            self._written(to)

    def _written(self, to: Path) -> None:
        self.saved = to
        currency, bench = self.currency.text().strip(), self._desk.bench
        if currency != bench.preference(CURRENCY):
            self._desk.perform(lambda: bench.set_preference(CURRENCY, currency))
        said = _("Saved: {file}").format(file=to.name)
        self.done_note.setText(said)
        self.done_note.setAccessibleName(said)
        self._done.show()
        self.leave.say(_("Close"))
        self.settle()
        self.resize(self.width(), max(self.height(), self.sizeHint().height()))
        self.open_act.setFocus()

    def _open(self) -> None:
        if self.saved is not None:
            QDesktopServices.openUrl(QUrl.fromLocalFile(str(self.saved)))

    def _close_form(self) -> None:
        """The rows that both have, after those of their own."""
        self.form.add(_("Currency"), self.currency)
        self.form.add(_("Paper"), self.paper)
        self.body.addWidget(self.form)
        self.body.addSpacing(look.px(4))
        self.body.addWidget(self.remark)
        self.body.addWidget(self._done)


class BookDialog(PrintDialog):
    """The service book of one item."""

    def __init__(self, desk: Desk, item_id: str, parent: QWidget) -> None:
        super().__init__(desk, _("Service book"), parent)
        items = sorted(desk.bench.items(), key=lambda item: item.name.casefold())
        self._names = {item.id: item.name for item in items}
        self.item = ChoiceField([(item.id, item.name) for item in items])
        self.item.choose(item_id)
        self.costs = TickField(_("Value and costs"))
        self.form.add(_("Of"), self.item)
        self.form.add(_("With"), self.costs)
        self.form.add("", self.photos)
        self._close_form()
        self.item.currentIndexChanged.connect(lambda _index: self._look())
        self._look()

    def words(self) -> Callable[[], BookContent]:
        """The book of the item that is chosen."""
        bench, made_at = self._desk.bench, self._desk.bench.now()
        book = bench.item_book(str(self.item.chosen()))
        costs, photos, currency = self.costs.isChecked(), self.photos.isChecked(), self.currency.text().strip()
        return lambda: book_content(book, made_at, Shown(costs, photos, currency, bench.lacking(book.papers)))

    def file_stem(self) -> str:
        """Service book and item."""
        return f"{_('Service book')} {self._names.get(str(self.item.chosen()), '')}"

    def _look(self) -> None:
        """Say how much there is, so that a book of nothing is no surprise."""
        if self.item.chosen() is None:
            self.want(_("There is no item yet."))
            return
        book = self._desk.bench.item_book(str(self.item.chosen()))
        entries = ngettext("{n} service or event", "{n} services and events", len(book.history))
        papers = ngettext("{n} paper or photo", "{n} papers and photos", len(book.papers))
        said = _("On record: {entries}, {papers}. Struck entries stay in it and are marked.")
        self.remark.setText(
            said.format(entries=entries.format(n=len(book.history)), papers=papers.format(n=len(book.papers)))
        )


class InventoryDialog(PrintDialog):
    """The inventory of the kit, or of what is selected of it."""

    def __init__(self, desk: Desk, selected: Sequence[Item], parent: QWidget) -> None:
        super().__init__(desk, _("Inventory"), parent)
        self._selected = frozenset(item.id for item in selected)
        some = ngettext("the {n} selected item", "the {n} selected items", len(selected)).format(n=len(selected))
        choices: list[tuple[object, str]] = [
            ("all", _("all that is not retired")),
            ("retired", _("all, retired items too")),
        ]
        self.which = ChoiceField([*choices, *([("selected", some)] if selected else [])])
        if len(selected) > 1:
            self.which.choose("selected")
        self.form.add(_("List"), self.which)
        self.form.add(_("With"), self.photos)
        self._close_form()
        self.which.currentIndexChanged.connect(lambda _index: self._look())
        self._look()

    def words(self) -> Callable[[], BookContent]:
        """The list that is chosen."""
        bench, made_at = self._desk.bench, self._desk.bench.now()
        listed = bench.inventory(self._only(), retired=self.which.chosen() == "retired")
        photos, currency = self.photos.isChecked(), self.currency.text().strip()
        return lambda: inventory_content(
            listed, made_at, InventoryShown(photos, currency, bench.lacking(listed.papers))
        )

    def file_stem(self) -> str:
        """Inventory."""
        return _("Inventory")

    def _only(self) -> frozenset[str]:
        return self._selected if self.which.chosen() == "selected" else frozenset()

    def _look(self) -> None:
        """Say what is listed and what is missing in it."""
        listed = self._desk.bench.inventory(self._only(), retired=self.which.chosen() == "retired")
        if not listed.items:
            self.want(_("There is nothing to list."))
            return
        self.want("")
        self.remark.setText(_gaps_text(listed))


def _gaps_text(listed: Inventory) -> str:
    """How many items, and how many of the pilot's own lack a value, or a photo or bill."""
    n, lacks, bare = len(listed.items), len(listed.without_value), sum(not item.papers for item in listed.own)
    parts = [ngettext("{n} item", "{n} items", n).format(n=n)]
    if lacks:
        parts.append(ngettext("{n} without a value", "{n} without a value", lacks).format(n=lacks))
    if bare:
        parts.append(ngettext("{n} without a photo or bill", "{n} without a photo or bill", bare).format(n=bare))
    said = _("Listed: {parts}.").format(parts=", ".join(parts))
    return said if not lacks and not bare else f"{said} {_('Values and photos are entered in the editor of an item.')}"
