"""What the menus of the window itself do; actions of a page live in the page."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog

from kitlog.desktop.desk import MANY
from kitlog.desktop.scheme import Scheme
from kitlog.desktop.undo_words import moving_text
from kitlog.fault import SystemFault
from kitlog.paint.mark import Mark
from kitlog.wording.translate import _
from kitlog.workbench.undo_list import UndoStep

if TYPE_CHECKING:
    from kitlog.desktop.window import Window


class WindowActs:
    """The handlers of the action table that belong to no page.

    Args:
        window: the window they act on.
    """

    def __init__(self, window: "Window") -> None:
        self._window = window
        self._desk = window.desk

    def undo(self) -> None:
        """Take the last step back."""
        self._move(self._desk.bench.undo, self._desk.bench.undoable, back=True)

    def redo(self) -> None:
        """Do the last undone step again."""
        self._move(self._desk.bench.redo, self._desk.bench.redoable, back=False)

    def _move(self, move: Callable[[], object], step: UndoStep | None, *, back: bool) -> None:
        """Undo or redo a step; one of many items with the window alive meanwhile, and saying what it does."""
        items = step.facts.get("count", 0) if step else 0
        if step is not None and isinstance(items, int) and items >= MANY:
            said = moving_text(step, self._desk.names(), back=back)
            self._desk.perform(partial(self._desk.write_apart, move, said))
        else:
            self._desk.perform(move)

    def back_up(self) -> None:
        """Write a backup to where the pilot says."""
        bench = self._desk.bench
        proposed = str(bench.path.with_name(f"{bench.path.stem} {bench.now():%Y-%m-%d}.kitlogbackup"))
        chosen, _kind = QFileDialog.getSaveFileName(self._window, _("Back up the data file"), proposed)
        if chosen:
            self._back_up(Path(chosen))

    def _back_up(self, to: Path) -> None:
        """Write it beside the window, scans may be large; a paper that could not go in is told."""
        lacking: list[SystemFault] = []
        write = partial(self._desk.write_apart, lambda: lacking.extend(self._desk.bench.backup(to)))
        self._desk.perform(partial(write, _("Backing up…")))
        for fault in lacking[:1]:
            self._desk.faulted.emit(fault)

    def tell_lost_papers(self) -> None:
        """Say it where the data file was moved without the folder of its papers."""
        lost = self._desk.bench.papers_lost()
        if lost is not None:
            self._desk.faulted.emit(lost)

    def open_demo(self) -> None:
        """Open the demo kit in a window of its own data file."""
        if self._desk.open_demo is not None:
            self._desk.perform(self._desk.open_demo)

    def quit(self) -> None:
        """Close the window."""
        self._window.close()

    def edit_pilot(self) -> None:
        """Name and body masses of the pilot."""
        from kitlog.desktop.pilot_dialog import PilotDialog

        PilotDialog(self._desk, self._window).exec()

    def choose_outing(self) -> None:
        """Work on another outing, or plan a first one."""
        if not self._desk.bench.outings():
            self.show_there("outing", "new")
            return
        from kitlog.desktop.outing_choice import OutingChoice

        choice = OutingChoice(self._desk, self._window)
        if choice.exec():
            self.take_outing(choice.chosen())

    def take_outing(self, outing_id: str) -> None:
        """Work on an outing from now on; an empty id plans a new one."""
        if outing_id:
            self._desk.perform(lambda: self._desk.bench.work_on(outing_id))
        else:
            self.show_there("outing", "new")

    def open_worst(self, state: str) -> None:
        """Show the worst finding of a state."""
        self.show_there("outing", Mark(state).value)

    def show_there(self, page: str, what: str) -> None:
        """Show something on a page."""
        self._window.open(page).show_this(what)

    def find_command(self) -> None:
        """Find a command by its name and do it."""
        from kitlog.desktop.keys_dialog import CommandSearch

        search = CommandSearch(self._window.action_set.by_id, self._window)
        chosen = search.chosen if search.exec() else None
        do = chosen() if chosen else None
        if do is not None:
            do()

    def show_keys(self) -> None:
        """All keys."""
        from kitlog.desktop.keys_dialog import KeysDialog

        KeysDialog(self._window).exec()

    def show_about(self) -> None:
        """What kitlog is, its stance, its licences."""
        from kitlog.desktop.about import AboutDialog

        AboutDialog(self._window).exec()

    def show_kit(self) -> None:
        """Show Kit."""
        self._window.open("kit")

    def show_service(self) -> None:
        """Show Service."""
        self._window.open("service")

    def show_outing(self) -> None:
        """Show Outing."""
        self._window.open("outing")

    def show_repack(self) -> None:
        """Show Repack."""
        self._window.open("repack")

    def show_flights(self) -> None:
        """Show Flights."""
        self._window.open("flights")

    def choose_light(self) -> None:
        """Light from now on."""
        self._window.choose_scheme(Scheme.LIGHT)

    def choose_dark(self) -> None:
        """Dark from now on."""
        self._window.choose_scheme(Scheme.DARK)

    def choose_system(self) -> None:
        """As the system from now on."""
        self._window.choose_scheme(Scheme.SYSTEM)
