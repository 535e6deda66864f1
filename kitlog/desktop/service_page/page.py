"""The page Service."""

from collections.abc import Mapping, Sequence
from typing import ClassVar

from PySide6.QtCore import QItemSelection, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QStackedWidget, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.fold import Fold
from kitlog.desktop.page import Page
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.empty import EmptyState
from kitlog.desktop.parts.paper_table import PaperTable
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.desktop.service_page.acts import ServiceActs
from kitlog.desktop.service_page.band import BandEnd, ServiceBand
from kitlog.desktop.service_page.band_words import band_of, grouped
from kitlog.desktop.service_page.detail import RuleDetail
from kitlog.desktop.service_page.list import COLUMNS, LIMITS, NAME, DueCells, DueModel
from kitlog.desktop.service_page.list_words import told
from kitlog.packing.storage_due import at_home, to_do
from kitlog.paint.type_scale import Role
from kitlog.wording.reminder_text import proposal_text
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import N_, _, ngettext
from kitlog.workbench.reads import DueLine

LONG, SHORT = 18, 12
"""Months that are shown, and where the window is not wide."""

CAPTION = N_("the months ahead; hours foreseen at the plain rate of the last 12 months")
CAPTION_BRIEF = N_("hours foreseen at the rate of the last 12 months")


class ServicePage(Page):
    """Band above, list below; both show the same rule as selected."""

    acts_class: ClassVar[type] = ServiceActs
    concerns: ClassVar[frozenset[str]] = frozenset({"item", "rule", "record", "event", "flight", "outing"})

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.acts: ServiceActs = ServiceActs(self)
        self._months = LONG
        self._caption = _(CAPTION)
        self._rules: tuple[str, ...] = ()
        self.band = ServiceBand()
        self.model = DueModel()
        self.table = PaperTable(_("Service, the soonest first"))
        self.table.setSelectionMode(PaperTable.SelectionMode.SingleSelection)
        self.table.setModel(self.model)
        self.table.setItemDelegate(DueCells(self.table, self.model))
        self.record = Button(_("Record a service"), Rank.MAIN)
        self.storage = Button("", Rank.ACT)
        self.detail = RuleDetail()
        self._assemble()
        self._connect()

    def reload(self) -> None:
        """Judge all rules anew; the selected one stays."""
        kept = self.rule_id()
        bench = self.desk.bench
        today = bench.now().date()
        lines = bench.due(today)
        self.model.put(lines)
        self.say(self._caption)
        self._show_band(lines)
        self._stack.setCurrentIndex(1 if lines else 0)
        self._show_storage()
        has_items = bool(bench.items())
        self.empty.buttons[0].setEnabled(has_items)
        self._choose(kept if self.model.row_of(kept) is not None else "")

    def line(self) -> DueLine | None:
        """The line of the selected rule."""
        rows = self.table.selected_rows()
        return self.model.lines[rows[0]] if rows else None

    def rule_id(self) -> str:
        """Id of the selected rule, empty for none."""
        line = self.line()
        return line.rule.id if line else ""

    def selected(self) -> dict[str, int]:
        """How many rules are selected."""
        return {"rules": len(self.table.selected_rows())}

    def show_this(self, what: str) -> None:
        """Select the worst rule of an item, by the item's id."""
        rule = next((line.rule.id for line in self.model.lines if line.item.id == what), "")
        self._choose(rule)

    def take_list_actions(self, actions: Mapping[str, QAction]) -> None:
        """R records the selected service."""
        self.table.addAction(actions["service.record_now"])

    def lay_out(self, fold: Fold) -> None:
        """Fewer months and columns where there is less room."""
        months = SHORT if fold.middle else LONG
        if months != self._months:
            self._months = months
            self._show_band(self.model.lines)
        for column in (5, 6):
            self.table.setColumnHidden(column, fold.middle)
        self.table.setColumnHidden(LIMITS, fold.thin)
        modes = self.table.head.ResizeMode
        self.table.head.setSectionResizeMode(NAME, modes.Stretch if fold.thin else modes.Interactive)
        if not fold.thin:
            self.table.setColumnWidth(NAME, look.px(COLUMNS[NAME][1]))
        side = look.px(fold.side_px)
        self._rows.setContentsMargins(side, look.px(fold.head_px(15)), side, look.px(12))
        self._caption = _(CAPTION_BRIEF if fold.middle else CAPTION)
        self.say(self._caption)
        self.caption.setAccessibleDescription(_(CAPTION))
        self.detail.fold(brief=fold.low)
        self.table.setMinimumHeight(look.px(28 + (2 if fold.tight else 4) * 32))

    def say(self, text: str) -> None:
        """Show a remark in place of the caption, until something changes."""
        self.caption.setText(text)
        self.caption.setAccessibleName(text)

    def first(self) -> QWidget:
        """The list, or the first act of the empty state."""
        return self.table if self.model.lines else self.empty.buttons[0]

    def _show_storage(self) -> None:
        """How many things lie unused and want another charge; without any there is no button."""
        count = len(to_do(at_home(self.desk.bench.storage_due(), self.desk.judged())))
        self.storage.say(_("Storage ({n})…").format(n=count))
        said = ngettext(
            "Storage charge: {n} thing lies unused, as far as the log tells",
            "Storage charge: {n} things lie unused, as far as the log tells",
            count,
        )
        self.storage.setAccessibleName(said.format(n=count))
        self.storage.setVisible(count > 0)

    def _show_band(self, lines: Sequence[DueLine]) -> None:
        bench = self.desk.bench
        today = bench.now().date()
        days = [day for outing in bench.outings() for day in outing.days if day >= today]
        by_rule = {line.rule.id: line for line in lines}
        picture, self._rules = band_of(grouped(list(lines)), today, self._months, days)
        self.band.show_picture(picture, [_told(by_rule[rule]) for rule in self._rules])
        for end in (self._months_head, self._legend):
            end.show_picture(picture)
        self._bands.setMaximumHeight(self.band.sizeHint().height() + 2)

    def _choose(self, rule_id: str) -> None:
        row = self.model.row_of(rule_id)
        if row is None:
            self.table.clearSelection()
        else:
            self.table.select(row)
        self._point()

    def _point(self) -> None:
        rule = self.rule_id()
        lane = self._rules.index(rule) if rule in self._rules else None
        if (
            lane is None
            or self.band.current is None
            or self._rules[self.band.current : self.band.current + 1] != (rule,)
        ):
            self.band.point_at(lane)
        if lane is not None:
            box = self.band.lane_rect(lane)
            self._bands.ensureVisible(0, round(box.center().y()), 0, look.px(60))
        self._show_detail()
        self.desk.selected.emit()

    def _show_detail(self) -> None:
        """What there is to say of the selected rule; nothing while there is none."""
        line, bench = self.line(), self.desk.bench
        if line is None or self.desk.writes:
            self.detail.clear()
        else:
            proposals = bench.proposals([line]).values()
            said = "".join(map(proposal_text, proposals))
            self.detail.show_rule(line, bench.on_next_outing(line.item.id, line.rule.id), said)

    def _lane_chosen(self, lane: int) -> None:
        self.band.point_at(lane)
        row = self.model.row_of(self._rules[lane])
        if row is not None:
            self.table.select(row)

    def _selection_changed(self, _on: QItemSelection, _off: QItemSelection) -> None:
        self._point()

    def _connect(self) -> None:
        self.band.chosen.connect(self._lane_chosen)
        self.record.clicked.connect(self.acts.record_service)
        self.storage.clicked.connect(self.acts.show_storage)
        self.table.doubleClicked.connect(lambda _index: self.acts.record_service())
        self.table.selectionModel().selectionChanged.connect(self._selection_changed)

    def _assemble(self) -> None:
        px = look.px
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        self._stack = QStackedWidget()
        whole.addWidget(self._stack)
        self.empty = EmptyState(
            _("No service rule yet"),
            _("Add an item, then take a starter rule for it and replace its figures\nby those of the maker’s manual."),
        )
        self.empty.act(_("Add a service rule"), Rank.MAIN).clicked.connect(self.acts.add_rule)
        self._stack.addWidget(self.empty)
        filled = QWidget()
        self._stack.addWidget(filled)
        self._rows = QVBoxLayout(filled)
        self._rows.setSpacing(px(6))
        self._rows.addLayout(self._head())
        self._bands = QScrollArea()
        self._bands.setWidget(self.band)
        self._bands.setWidgetResizable(True)
        self._bands.setFrameShape(QFrame.Shape.NoFrame)
        self._bands.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._bands.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._bands.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
        self._months_head, self._legend = BandEnd(foot=False), BandEnd(foot=True)
        bands = QVBoxLayout()
        bands.setSpacing(0)
        for widget in (self._months_head, self._bands, self._legend):
            row = QHBoxLayout()
            row.setContentsMargins(0, 0, 0 if widget is self._bands else px(10), 0)
            row.addWidget(widget)
            bands.addLayout(row, 1 if widget is self._bands else 0)
        self._rows.addLayout(bands, 3)
        self._rows.addWidget(self._more())
        self._rows.addWidget(self.table, 2)
        self._rows.addWidget(self.detail)
        for number, (_title, wide, _text) in enumerate(COLUMNS):
            self.table.setColumnWidth(number, px(wide))
        self.table.head.setSectionResizeMode(LIMITS, self.table.head.ResizeMode.Stretch)

    def _head(self) -> QHBoxLayout:
        head = QHBoxLayout()
        head.setSpacing(look.px(12))
        head.addWidget(Text(_("Service"), Role.TITLE))
        self.caption = Paragraph(_(CAPTION), Role.SECOND, "muted")
        head.addWidget(self.caption, 1, Qt.AlignmentFlag.AlignVCenter)
        head.addWidget(self.record)
        return head

    def _more(self) -> WrapRow:
        """What else can be done here, in rows as the room allows."""
        row = WrapRow(gap=20)
        for text, do in (
            (_("What stops me?"), self.acts.show_stops),
            (_("Before the season…"), self.acts.run_season),
            (_("History…"), self.acts.show_history),
            (_("Log an event…"), self.acts.log_event),
            (_("Add a rule…"), self.acts.add_rule),
            (_("Calendar file…"), self.acts.write_calendar),
            (_("Service book…"), self.acts.print_book),
        ):
            button = Button(text, Rank.ACT)
            button.clicked.connect(do)
            row.add(button)
        row.add(self.storage)
        return row


def _told(line: DueLine) -> str:
    """What a lane tells: rule, state, limits, source, last record."""
    first, behind = told(line)
    return f"{line.item.name}, {rule_text(line.due.rule)}: {first}\n{behind}"
