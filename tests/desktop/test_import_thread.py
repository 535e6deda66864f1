"""Reading happens away from the window: it stays alive, a long reading can be stopped, and an old look is never shown."""

import threading
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from desk_steps import Use
from import_steps import DOUBTFUL, ORDER, UNIT, kit, seen, using, written
from PySide6.QtCore import QElapsedTimer
from PySide6.QtWidgets import QDialog

from kitlog.desktop.import_page import table_input
from kitlog.desktop.import_page.dialog import ImportDialog
from kitlog.desktop.import_page.table_input import TableInput
from kitlog.desktop.window import Window
from kitlog.workbench.workbench import Workbench

STOP_S = 1.0


@pytest.fixture
def held(monkeypatch: pytest.MonkeyPatch) -> Iterator[tuple[threading.Event, threading.Event]]:
    """Hold the reading of the next tables until it is let go: the event that it ended, and the one that lets it go."""
    let_go, ended = threading.Event(), threading.Event()
    grid = TableInput.grid

    def slow(table: TableInput, tell: Callable[[float], None]) -> object:
        try:
            while not let_go.wait(0.005):
                tell(0.3)
            return grid(table, tell)
        finally:
            ended.set()

    monkeypatch.setattr(table_input.TableInput, "grid", slow)
    yield ended, let_go
    let_go.set()


def test_a_long_reading_shows_how_far_it_is_and_can_be_stopped(
    window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot, held
) -> None:
    ended, _let_go = held
    kept = demo_bench.items()

    def use(dialog: QDialog) -> None:
        assert isinstance(dialog, ImportDialog)
        assert dialog.waiting.isHidden()
        clock = QElapsedTimer()
        clock.start()
        qtbot.waitUntil(dialog.waiting.isVisible)
        assert clock.elapsed() >= 300
        assert dialog.waiting.bar.value() == 300
        assert not dialog.main.isEnabled()
        clock.restart()
        dialog.waiting.cancel.click()
        assert not dialog.isVisible()
        qtbot.waitUntil(ended.is_set)
        assert clock.elapsed() < STOP_S * 1000

    in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), use)
    assert demo_bench.items() == kept


def test_a_long_reading_that_is_waited_for_is_shown(
    window: Window, tmp_path: Path, in_dialog: Use, qtbot, held
) -> None:
    _ended, let_go = held

    def use(dialog: QDialog) -> None:
        assert isinstance(dialog, ImportDialog)
        qtbot.waitUntil(dialog.waiting.isVisible)
        let_go.set()
        seen(dialog, qtbot)
        assert not dialog.waiting.isVisible()
        assert dialog.leaves.asked.open_count() == 2

    in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), use)


def test_nothing_can_be_written_while_an_answer_is_worked_in(
    window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
) -> None:
    kept = demo_bench.items()

    def use(dialog: ImportDialog) -> None:
        for key, given in ((UNIT, "g"), (ORDER, "dmy")):
            dialog.leaves.asked.columns[key].radios[given].click()
        assert dialog.preview is None
        assert not dialog.main.isEnabled()
        dialog.accept()
        assert dialog.isVisible()
        assert demo_bench.items() == kept
        seen(dialog, qtbot)
        dialog.leaves.asked.columns[UNIT].radios["kg"].click()
        dialog.leaves.asked.columns[UNIT].radios["oz"].click()
        seen(dialog, qtbot)
        assert dialog.preview is not None
        assert dialog.preview.new[1].mass_g == 397  # 14 oz of 28.349523125 g (NIST SP 811, appendix B)

    in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), using(qtbot, use))
