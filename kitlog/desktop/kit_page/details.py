"""The details at the right of the kit table."""

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.kit_page.figures import figure_rows, take_off_row
from kitlog.desktop.kit_page.filter_bar import totals_text
from kitlog.desktop.kit_page.photo_view import Photos, PhotoView
from kitlog.desktop.kit_page.record_sections import add_rules, coming_outing, use_section
from kitlog.desktop.paper_opening import open_paper
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.section import Section, clear
from kitlog.desktop.parts.text import CutText, Paragraph, Text
from kitlog.kit.item import Item
from kitlog.kit.paper import Paper
from kitlog.paint.type_scale import Role
from kitlog.wording.paper_text import paper_text
from kitlog.wording.rules import rule_text
from kitlog.wording.season_text import custody_text
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper, word
from kitlog.workbench.reads import KitRow

HEAD_PX = 220
"""Room for name and make in the head where the details are at their narrowest, in px of the design."""


class Details(QScrollArea):
    """Everything about the selected item, or the sum of several."""

    def __init__(
        self,
        desk: Desk,
        edit: Callable[[], None],
        bulk: Callable[[], None],
        book: Callable[[], None],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._desk, self._edit, self._bulk, self._book = desk, edit, bulk, book
        self._photos = Photos(desk, self)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        inside = QWidget()
        self._rows = QVBoxLayout(inside)
        self._rows.setContentsMargins(*(look.px(side) for side in (23, 15, 24, 16)))
        self._rows.setSpacing(look.px(12))
        self.setWidget(inside)

    def show_rows(self, rows: Sequence[KitRow]) -> None:
        """Show one item, several, or nothing."""
        clear(self._rows)
        if len(rows) == 1:
            self._show_item(rows[0])
        elif rows:
            self._show_many(rows)
        self._rows.addStretch()

    def _show_item(self, row: KitRow) -> None:
        item = row.item
        self._rows.addLayout(self._head(item))
        if custody := custody_text(item):
            late = item.back_by is not None and item.back_by < self._desk.bench.now().date()
            self._rows.addWidget(Paragraph(first_upper(custody), Role.SECOND, "look" if late else "muted"))
        self._rows.addWidget(PhotoView(item.kind.value, item.papers, self._photos))
        figures = Section(_("Figures"))
        flown = take_off_row(item, self._desk.assessed_already(), self._desk.bench.now().date())
        figures.add_figures(figure_rows(row, self._desk.bench.library) + flown)
        self._rows.addWidget(figures)
        self._add_question(row)
        for section in (self._pairs(item), self._service(item), self._use(item), self._papers(item)):
            if section is not None:
                self._rows.addWidget(section)
        if item.notes:
            notes = Section(_("Notes"))
            notes.rows.addWidget(Paragraph(item.notes, Role.SECOND, "muted"))
            self._rows.addWidget(notes)

    def _show_many(self, rows: Sequence[KitRow]) -> None:
        head, more = totals_text(rows)
        self._rows.addWidget(Text(head, Role.TITLE))
        self._rows.addWidget(Paragraph(more))
        button = Button(_("Set state and zone…"))
        button.clicked.connect(self._bulk)
        self._rows.addWidget(button)

    def _head(self, item: Item) -> QVBoxLayout:
        whole, head = QVBoxLayout(), QHBoxLayout()
        whole.setSpacing(0)
        head.setSpacing(look.px(8))
        whole.addLayout(head)
        more = " ".join(part for part in (item.maker, item.model) if part)
        made = CutText(more, Role.BODY, "muted")
        is_short = _fit_beside(item.name, more)
        if is_short:
            head.addWidget(Text(item.name, Role.TITLE))
            head.addWidget(made, 1)
        else:
            head.addWidget(Paragraph(item.name, Role.TITLE, "ink"), 1)
            whole.addWidget(made)
            made.setVisible(bool(more))
        edit = Button(_("Edit"), Rank.ACT)
        edit.setAccessibleName(_("Edit {name}").format(name=item.name))
        edit.clicked.connect(self._edit)
        head.addWidget(edit, 0, Qt.AlignmentFlag.AlignVCenter if is_short else Qt.AlignmentFlag.AlignTop)
        return whole

    def _add_question(self, row: KitRow) -> None:
        band = self._desk.bench.implausible(row.item)
        if band is not None:
            self._rows.addWidget(Paragraph(implausible_text(row.item, band, self._desk), Role.SECOND, "look"))

    def _papers(self, item: Item) -> Section:
        """Its papers and photos, each to be opened; the act of the section prints all that is on record."""
        section = Section(_("Papers"), _("Service book…"), self._book)
        for paper in item.papers:
            row = QHBoxLayout()
            row.addWidget(CutText(paper_text(paper), Role.SECOND), 1)
            button = Button(_("Open"), Rank.ACT)
            button.setAccessibleName(_("Open {paper}").format(paper=paper.name))
            button.clicked.connect(partial(self._open, paper))
            row.addWidget(button)
            section.rows.addLayout(row)
        if not item.papers:
            section.rows.addWidget(Paragraph(_("No paper or photo yet; the editor takes them."), Role.SMALL))
        return section

    def _open(self, paper: Paper, _checked: bool = False) -> None:  # noqa: FBT001, FBT002  # Qt tells it
        self._desk.perform(partial(open_paper, self._desk, paper))

    def _pairs(self, item: Item) -> Section | None:
        bench = self._desk.bench
        host = bench.item(item.fitted_to) if item.fitted_to else None
        guests = [other.name for other in bench.items() if other.fitted_to == item.id]
        rows = [(_("Fitted to"), host.name, _("moves as one"))] if host else []
        rows += [(_("Carries"), name, "") for name in guests]
        if not rows:
            return None
        section = Section(_("Pairs"))
        section.add_figures(rows)
        return section

    def _service(self, item: Item) -> Section | None:
        bench = self._desk.bench
        today, outing = bench.on_record(item.id), coming_outing(self._desk)
        then = bench.on_record(item.id, outing) if outing is not None else None
        dues = today.dues if today is not None else ()
        of_model = bench.model_rules_for(item.id)
        if not dues and not of_model and not bench.starters_for(item.id):
            return None
        act = (
            (_("All rules"), lambda: self._desk.show("service", item.id))
            if dues
            else (_("Starter rules"), self._starters(item))
        )
        section = Section(_("Service"), *act)
        add_rules(section, dues, then.dues if then is not None else ())
        if of_model:
            names = ", ".join(rule_text(rule.rule) for rule in of_model)
            said = _("Its model has a rule that this item has not taken: {names}").format(names=names)
            section.rows.addWidget(Paragraph(said, Role.SMALL, "look"))
            take = Button(_("Take it…"), Rank.ACT)
            take.setAccessibleName(f"{_('Take it…')} {names}")
            take.clicked.connect(self._starters(item))
            section.rows.addWidget(take, 0, Qt.AlignmentFlag.AlignLeft)
        elif not dues:
            section.rows.addWidget(
                Paragraph(_("No rule yet. Starters can be offered; the maker’s manual replaces them."))
            )
        return section

    def _starters(self, item: Item) -> Callable[[], object]:
        def offer() -> object:
            from kitlog.desktop.service_page.starters_dialog import StartersDialog

            return StartersDialog(self._desk, item, self.window()).exec()

        return offer

    def _use(self, item: Item) -> Section | None:
        record = self._desk.bench.on_record(item.id)
        return None if record is None else use_section(self._desk, record)


def _fit_beside(name: str, more: str) -> bool:
    """Whether a name and what is known of its make stand in one line, in the narrower of the two widths."""
    text = look.lettering()
    return text.width(name, Role.TITLE) + text.width(more, Role.BODY) <= look.px(HEAD_PX)


def implausible_text(item: Item, band: tuple[int, int], desk: Desk) -> str:
    """The question about a mass outside what is usual: asked, never refused."""
    label = word(desk.bench.library.facts(item.kind).label)
    usual = _("{least} to {most} g").format(least=band[0], most=band[1])
    return _("Sure? One piece of {kind} is usually {usual}. Keep the figure if you weighed it.").format(
        kind=label, usual=usual
    )
