"""The window: menus, tag, rail, sheet and status line; pages are built when they are first shown."""

from typing import cast

from PySide6.QtCore import QEvent, QRect, Qt, QTimer, Signal
from PySide6.QtGui import QCloseEvent, QPaintEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QApplication, QGridLayout, QMainWindow, QStackedWidget

from kitlog.desktop import look
from kitlog.desktop.action_set import ActionSet
from kitlog.desktop.actions import Action
from kitlog.desktop.desk import Desk
from kitlog.desktop.due_banner import DueBanner
from kitlog.desktop.fault_strip import FaultStrip
from kitlog.desktop.fold import Fold, fold_of
from kitlog.desktop.ground import Ground
from kitlog.desktop.outing_tag import OutingTag
from kitlog.desktop.page import Page
from kitlog.desktop.page_area import PageArea
from kitlog.desktop.page_list import build_page
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.rail import Rail
from kitlog.desktop.rules import Standing
from kitlog.desktop.scheme import Scheme, lay_over
from kitlog.desktop.status_line import StatusLine
from kitlog.desktop.tag_words import counts_of, tag_words
from kitlog.desktop.undo_words import undo_text
from kitlog.desktop.window_acts import WindowActs
from kitlog.desktop.window_memory import WindowMemory
from kitlog.desktop.words import saved_text
from kitlog.fault import Fault
from kitlog.wording.faults import fault_text
from kitlog.workbench.change import Change

COUNTS_AFTER_MS = 30
"""The counts of the tag follow what is shown: first paint and answers to keys come before them."""

LEAST = (640, 480)
"""Smallest size of the window in pixels; the screen does not grow with the letters: with large ones pages scroll."""

OUTDATES_FAULTS = frozenset({"outing", "item", "rule", "record", "event", "flight", "pilot", "preference"})
"""Kinds of change that an outing hangs on: a message of what was refused before them is out of date."""


class Window(QMainWindow):
    """The main window on one desk.

    Attributes:
        painted: it has been painted for the first time.
        painted_once: whether that has been.
    """

    painted = Signal()

    def __init__(self, desk: Desk, memory: WindowMemory) -> None:
        super().__init__()
        self.desk = desk
        self.memory = memory
        self.painted_once = False
        self._pages: dict[str, Page] = {}
        self._areas: dict[str, PageArea] = {}
        self._fold = Fold()
        self.setWindowTitle(f"kitlog, {desk.path.name}")
        self.setMinimumSize(*LEAST)
        self.acts = WindowActs(self)
        self.action_set = ActionSet(self, self.do)
        self.action_set.fill(self.menuBar())
        self.menuBar().setFixedHeight(look.px(32))
        self.ground = Ground()
        self.tag, self.strip, self.rail = OutingTag(), FaultStrip(), Rail(desk.icons)
        self.banner = DueBanner()
        self.stack, self.status = QStackedWidget(), StatusLine()
        self._assemble()
        self._connect()
        self.action_set.choose(f"view.{memory.scheme()}")
        memory.give_back(self)
        self.open(memory.page())
        self.show_outing()

    def page(self, name: str) -> Page:
        """A page by its name, built when it is first asked for."""
        if name not in self._pages:
            made = build_page(name, self.desk)
            made.take_list_actions(self.action_set.by_id)
            self._pages[name] = made
            self._areas[name] = PageArea(made)
            self.stack.addWidget(self._areas[name])
            made.lay_out(self._fold)
        return self._pages[name]

    def open(self, name: str) -> Page:
        """Show a page."""
        page = self.page(name)
        self.rail.open(name)
        self.action_set.choose(f"view.{name}")
        self.stack.setCurrentWidget(self._areas[name])
        page.look_fresh()
        self._place()
        self.look_at_actions()
        if self.isVisible():
            page.first().setFocus()
        return page

    @property
    def open_name(self) -> str:
        """The name of the page that is shown."""
        return self.rail.open_tab().name

    def do(self, action: Action) -> None:
        """Do an action of the table."""
        page, _dot, method = action.handler.rpartition(".")
        owner = self.open(page).acts if page else self.acts
        getattr(owner, method)()

    def choose_scheme(self, scheme: Scheme) -> None:
        """Show light, dark or as the system, from now on."""
        self.memory.keep_scheme(scheme)
        lay_over(scheme, cast("QApplication", QApplication.instance()))

    def standing(self) -> Standing:
        """Where the window stands, for what can be done now."""
        bench = self.desk.bench
        selected: dict[str, int] = {}
        for page in self._pages.values():
            selected |= page.selected()
        return Standing(
            items=len(bench.items()),
            rules=len(bench.rules()),
            outings=len(bench.outings()),
            demo=self.desk.open_demo is not None,
            undoable=bench.undoable is not None,
            redoable=bench.redoable is not None,
            outing=self.desk.outing() is not None,
            selected_items=selected.get("items", 0),
            selected_rules=selected.get("rules", 0),
            selected_flights=selected.get("flights", 0),
            repack_line=selected.get("repack", 0) > 0,
        )

    def look_at_actions(self) -> None:
        """Enable what can be done now; before the first paint nobody can do anything."""
        if self.painted_once:
            self.action_set.look_again(self.standing())

    def show_fault(self, fault: Fault) -> None:
        """Say what went wrong, why, and what to do."""
        self.strip.say(fault_text(fault))
        self._place()

    def changed(self, change: Change) -> None:
        """Reload what shows something of it; what was refused before was of the outing as it was then."""
        if change.touches(*OUTDATES_FAULTS):
            self.strip.hide()
        for page in self._pages.values():
            if change.touches(*page.concerns):
                page.stale = True
        self._pages[self.open_name].look_fresh()
        self.show_outing()
        self.show_saved()
        self.look_at_actions()
        if self.banner.hears(change):
            self.remind()

    def remind(self) -> None:
        """Say in a line what is overdue, due soon, or to go back."""
        if self.isVisible():
            self.desk.perform(lambda: self.banner.say(self.desk.bench.to_remember()))

    def show_outing(self) -> None:
        """Write the tag; its counts follow once there is time to assess."""
        outing = self.desk.outing()
        if outing is None:
            self.tag.show_none()
        else:
            self.tag.show_outing(*tag_words(outing, self.desk.bench))
            self._assess.start()
        self.tag.lay_out(brief=self._fold.middle, thin=self._fold.thin)

    def show_counts(self) -> None:
        """Assess the outing and show how much is open."""
        try:
            assessment = self.desk.assessment()
        except Fault as fault:
            self.show_fault(fault)
            assessment = None  # the counts of the plan before are not those of this one
        self.tag.show_counts(counts_of(assessment))

    def show_saved(self) -> None:
        """Show the present moment as saved, and what undo would take back."""
        bench = self.desk.bench
        step = bench.undoable
        self.status.show_saved(saved_text(bench.now()) if step else self.desk.path.name)
        self.status.show_undo(undo_text(step, self.desk.names()) if step else "")

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint, and say so the first time."""
        super().paintEvent(event)
        if not self.painted_once:
            self.painted_once = True
            QTimer.singleShot(0, self.painted.emit)

    def showEvent(self, event: QShowEvent) -> None:
        """Lay sheet and tab where the layout has put them."""
        super().showEvent(event)
        self._place()
        self._pages[self.open_name].first().setFocus()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fold to the room there is."""
        super().resizeEvent(event)
        fold = fold_of(self.width(), self.height(), look.scale())
        if fold != self._fold:
            self._fold = fold
            self._lay_out()
        self._place()

    def changeEvent(self, event: QEvent) -> None:
        """Look whether another process wrote when the window comes to the front."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and self.isActiveWindow():
            self.desk.look_again()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Keep the geometry for the next time."""
        self.memory.keep(self, self.open_name)
        self._assess.stop()
        for dialog in self.findChildren(Dialog):
            dialog.discard()  # nothing may look at the data file once it is closed
        for page in self._pages.values():
            page.leave()
        self.desk.leave()
        super().closeEvent(event)

    def _assemble(self) -> None:
        px = look.px
        self.setCentralWidget(self.ground)
        self._grid = QGridLayout(self.ground)
        self._grid.setContentsMargins(0, px(8), px(16), 0)
        self._grid.setHorizontalSpacing(0)
        self._grid.setVerticalSpacing(0)
        self._grid.addWidget(self.tag, 0, 1)
        self._grid.addWidget(self.strip, 1, 1)
        self._grid.addWidget(self.banner, 2, 1)
        self._grid.setRowMinimumHeight(3, px(8))
        self._grid.addWidget(self.rail, 4, 0)
        self._grid.addWidget(self.stack, 4, 1)
        self._grid.addWidget(self.status, 5, 1)
        self._grid.setRowStretch(4, 1)
        self._grid.setColumnStretch(1, 1)
        self.stack.setContentsMargins(1, 1, 1, 1)
        self.rail.bare(bare=False)

    def _connect(self) -> None:
        self._assess = QTimer(self)
        self._assess.setSingleShot(True)
        self._assess.setInterval(COUNTS_AFTER_MS)
        self._assess.timeout.connect(self.show_counts)
        self.rail.chosen.connect(self.open)
        self.tag.other.connect(self.acts.choose_outing)
        self.tag.opened.connect(self.acts.open_worst)
        self.status.undo.connect(self.acts.undo)
        self.strip.gone.connect(self._place)
        self.banner.moved.connect(self._place)
        self.banner.wanted.connect(self.acts.show_service)
        self.desk.changed.connect(self.changed)
        self.desk.faulted.connect(self.show_fault)
        self.desk.busy.connect(self.status.show_busy)
        self.desk.selected.connect(self.look_at_actions)
        self.desk.wanted.connect(self.acts.show_there)
        cast("QApplication", QApplication.instance()).applicationStateChanged.connect(self._come_back)
        self.painted.connect(self._after_first_paint)

    def _come_back(self, state: Qt.ApplicationState) -> None:
        """The same where a dialog, and not the window itself, comes to the front with the program."""
        if state == Qt.ApplicationState.ApplicationActive and self.isVisible():
            self.desk.look_again()

    def _after_first_paint(self) -> None:
        if not self.isVisible():
            return
        self.show_saved()
        self.look_at_actions()

    def _lay_out(self) -> None:
        brief = self._fold.middle
        self.rail.bare(bare=brief)
        self.tag.lay_out(brief=brief, thin=self._fold.thin)
        self.status.lay_out(self._fold)
        for page in self._pages.values():
            page.lay_out(self._fold)

    def _place(self) -> None:
        self._grid.activate()
        tab = self.rail.open_tab()
        origin = tab.mapTo(self.ground, tab.rect().topLeft())
        self.ground.lay(self.stack.geometry(), QRect(origin, tab.size()))
