"""The page Flights."""

from collections.abc import Iterable
from datetime import date, timedelta
from typing import ClassVar

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QStackedWidget, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.flights_page.acts import FlightActs
from kitlog.desktop.flights_page.hour_bars import HourBars, hour_bars
from kitlog.desktop.flights_page.log import COLUMNS, FIGURES, FROM, SITE, TOP, LogCells, LogModel, airtime_text
from kitlog.desktop.flights_page.recorded import recorded_rows
from kitlog.desktop.flights_page.recordings_input import dropped, said_of_drop
from kitlog.desktop.fold import Fold
from kitlog.desktop.import_page.drop import FileDrop
from kitlog.desktop.page import Page
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.empty import EmptyState
from kitlog.desktop.parts.paper_table import PaperTable
from kitlog.desktop.parts.section import Section, clear
from kitlog.desktop.parts.text import CutText, Paragraph, Text
from kitlog.desktop.parts.two_sides import TwoSides
from kitlog.kit.flights import Flight
from kitlog.kit.usage import logged
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import day_text, with_unit
from kitlog.wording.translate import _, ngettext

RECENT = timedelta(days=365)


class FlightsPage(Page):
    """The log left; what a flight was booked on, and hours by item, right."""

    acts_class: ClassVar[type] = FlightActs
    concerns: ClassVar[frozenset[str]] = frozenset({"flight", "item", "rule", "record"})

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.acts: FlightActs = FlightActs(self)
        self.model = LogModel()
        self.table = PaperTable(_("Flights, the newest first"), FIGURES, high=36)
        self.table.setSelectionMode(PaperTable.SelectionMode.SingleSelection)
        self.table.setModel(self.model)
        self.table.setItemDelegate(LogCells(self.table, self.model))
        self.caption = CutText("", Role.SECOND, "muted")
        self._captions, self._is_middle = ("", ""), False
        self.total = Text("", Role.GROUP)
        self.read = Button(_("Read recordings…"), Rank.MAIN)
        self.add = Button(_("Add flight"))
        self.hours = HourBars()
        self._assemble()
        self.read.clicked.connect(self.acts.read_recordings)
        self.add.clicked.connect(self.acts.add_flight)
        self.drop = FileDrop(self, dropped, said_of_drop, self.acts.read, desk.faulted.emit)
        self.table.doubleClicked.connect(lambda _index: self.acts.edit_flight())
        self.table.selectionModel().selectionChanged.connect(lambda _on, _off: self._selected())

    def reload(self) -> None:
        """Read the log anew; the selected flight stays."""
        kept = self.flight_id()
        flights = sorted(self.desk.bench.flights(), key=lambda flight: (flight.last_day, flight.on), reverse=True)
        self.model.put(flights)
        self._stack.setCurrentIndex(1 if flights else 0)
        self._say_totals(flights, self.desk.bench.now().date())
        self.hours.show_bars(hour_bars(self.desk.bench))
        row = self.model.row_of(kept)
        if flights:
            self.table.select(0 if row is None else row)
        self._selected()

    def flight(self) -> Flight | None:
        """The selected flight."""
        rows = self.table.selected_rows()
        return self.model.flights[rows[0]] if rows else None

    def flight_id(self) -> str:
        """Id of the selected flight, empty for none."""
        flight = self.flight()
        return flight.id if flight else ""

    def selected(self) -> dict[str, int]:
        """How many flights are selected."""
        return {"flights": len(self.table.selected_rows())}

    def show_this(self, what: str) -> None:
        """Select a flight by its id."""
        row = self.model.row_of(what)
        if row is not None:
            self.table.select(row)

    def lay_out(self, fold: Fold) -> None:
        """In one column the right side takes the place of the log."""
        self._sides.lay_out(narrow=fold.narrow, right_px=340 if fold.middle else 439)
        self._is_middle = fold.middle
        self._say_caption()
        self.table.setColumnHidden(FROM, fold.middle)
        self.table.setColumnHidden(TOP, fold.thin or (fold.middle and not fold.narrow))
        side = look.px(fold.side_px)
        self._left.setContentsMargins(side, look.px(fold.head_px(15)), look.px(12), look.px(12))

    def first(self) -> QWidget:
        """The log, or the first act of the empty state."""
        return self.table if self.model.flights else self.empty.buttons[0]

    def _say_totals(self, flights: Iterable[Flight], today: date) -> None:
        flights = tuple(flights)
        year = logged(flights, after=date(today.year - 1, 12, 31), until=today).airtime_h
        recent = logged(flights, after=today - RECENT, until=today).airtime_h
        figures = {"year_h": with_unit(year, "h", 1), "year": today.year, "recent_h": with_unit(recent, "h", 1)}
        said = _("{year_h} in {year}, {recent_h} in the last 12 months").format(**figures)
        self._captions = said, _("{recent_h} in 12 months").format(**figures)
        self._say_caption()
        count = ngettext("{n} entry", "{n} entries", len(flights)).format(n=len(flights))
        airtime = airtime_text(sum(flight.airtime_min for flight in flights))
        self.total.setText(_("{count}, {airtime} of airtime").format(count=count, airtime=airtime))

    def _say_caption(self) -> None:
        self.caption.setText(self._captions[self._is_middle])

    def _selected(self) -> None:
        clear(self._booked)
        flight = self.flight()
        if flight is not None:
            self._show_booked(flight)
        self.desk.selected.emit()

    def _show_booked(self, flight: Flight) -> None:
        names = self.desk.names()
        section = Section(_("Booked on what was flown"), _("Edit"), self.acts.edit_flight)
        rows = [(_("Date"), day_text(flight.on), flight.site), (_("Airtime"), airtime_text(flight.airtime_min), "")]
        if flight.ground_handling_min:
            rows.append((_("On the ground"), airtime_text(flight.ground_handling_min), ""))
        section.add_figures([*rows, *recorded_rows(flight)])
        flown = ", ".join(names.get(item_id, item_id) for item_id in flight.flown)
        section.rows.addWidget(Paragraph(flown or _("nothing: no item gets these hours"), Role.SECOND, "ink"))
        if flight.carried:
            carried = ", ".join(names.get(item_id, item_id) for item_id in flight.carried)
            section.rows.addWidget(Paragraph(_("Carried: {names}").format(names=carried), Role.SMALL))
        if flight.note:
            section.rows.addWidget(Paragraph(flight.note, Role.SECOND, "muted"))
        self._booked.addWidget(section)

    def _assemble(self) -> None:
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        self._stack = QStackedWidget()
        whole.addWidget(self._stack)
        self.empty = EmptyState(
            _("No flight yet"),
            _(
                "Hours and launches are booked on what was flown: they drive the service dates.\n"
                "Drop recordings (IGC) here, or begin with a typed total of an old log."
            ),
        )
        self.empty.act(_("Read recordings…"), Rank.MAIN).clicked.connect(self.acts.read_recordings)
        self.empty.act(_("Add a flight"), Rank.PLAIN).clicked.connect(self.acts.add_flight)
        self._stack.addWidget(self.empty)
        left, self._right = QWidget(), self._side()
        self._sides = TwoSides(left, self._right, _("Hours by item"), _("Back to the log"))
        self._stack.addWidget(self._sides)
        self._left = QVBoxLayout(left)
        self._left.setSpacing(look.px(8))
        self._left.addLayout(self._head())
        self._left.addWidget(self.table, 1)
        self._left.addLayout(self._foot())
        for number, (_title, wide, _text) in enumerate(COLUMNS):
            self.table.setColumnWidth(number, look.px(wide))
        self.table.head.setSectionResizeMode(SITE, self.table.head.ResizeMode.Stretch)

    def _head(self) -> QHBoxLayout:
        head = QHBoxLayout()
        head.setSpacing(look.px(16))
        head.setContentsMargins(0, 0, look.px(10), 0)
        head.addWidget(Text(_("Flights"), Role.TITLE))
        head.addWidget(self.caption, 1)
        head.addWidget(self.add)
        head.addWidget(self.read)
        return head

    def _foot(self) -> QHBoxLayout:
        foot = QHBoxLayout()
        foot.setContentsMargins(look.px(8), 0, look.px(10), 0)
        foot.addWidget(self.total)
        foot.addStretch()
        foot.addWidget(CutText(_("airtime is booked on what was flown"), Role.SMALL, "muted"))
        foot.addWidget(self._sides.open_act)
        return foot

    def _side(self) -> QScrollArea:
        area = QScrollArea()
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        inside = QWidget()
        rows = QVBoxLayout(inside)
        rows.setContentsMargins(*(look.px(side) for side in (23, 18, 24, 16)))
        rows.setSpacing(look.px(16))
        self._booked = QVBoxLayout()
        rows.addLayout(self._booked)
        by_item = Section(_("Hours by item"))
        by_item.rows.addWidget(Paragraph(_("since new, where the hours before the log are known"), Role.SMALL))
        by_item.rows.addWidget(self.hours)
        rows.addWidget(by_item)
        rows.addStretch()
        area.setWidget(inside)
        return area
