"""Reading happens away from the window: it stays alive, a long reading can be stopped, and an old look is never shown."""

import threading
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from desk_steps import Use
from import_steps import DOUBTFUL, ORDER, UNIT, answer, heads, kit, seen, using, written
from PySide6.QtCore import QElapsedTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialog

from kitlog.desktop.desk import MANY
from kitlog.desktop.import_page import look_at_table, table_input
from kitlog.desktop.import_page.dialog import ImportDialog
from kitlog.desktop.import_page.look_at_table import GRID
from kitlog.desktop.import_page.table_input import TableInput
from kitlog.desktop.import_page.waiting import AFTER_S
from kitlog.desktop.window import Window
from kitlog.workbench.kit_preview import preview_kit
from kitlog.workbench.workbench import Workbench

STOP_S = 1.0
LONG = 20_000
"""Rows: the most that a table may have."""


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
        assert dialog.waiting.bar.value() == round(300 * GRID)
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


@pytest.fixture
def held_preview(monkeypatch: pytest.MonkeyPatch) -> Iterator[Callable[[bool], object]]:
    """Holds each preview from when it is called with True until it is called with False."""
    let_go = threading.Event()
    let_go.set()

    def slow(*given: Any) -> object:
        while not let_go.wait(0.005):
            given[-1](0.5)
        return preview_kit(*given)

    monkeypatch.setattr(look_at_table, "preview_kit", slow)
    yield lambda hold: let_go.clear() if hold else let_go.set()
    let_go.set()


def shown_late(dialog: ImportDialog, qtbot) -> None:
    """Wait for the bar, and see that it did not come before its time."""
    early: list[float] = []
    dialog.background.going.connect(
        lambda seconds, _share: early.append(seconds) if seconds < AFTER_S and dialog.waiting.isVisible() else None
    )
    qtbot.waitUntil(dialog.waiting.isVisible)
    assert early == []
    qtbot.waitUntil(lambda: dialog.waiting.bar.value() > 0)
    assert not dialog.main.isEnabled()


def test_a_long_pasted_table_shows_how_far_it_is_and_can_be_stopped(
    window: Window, demo_bench: Workbench, in_dialog: Use, qtbot, held_preview
) -> None:
    rows = (f"Bar {n}\tfood\t{40 + n % 9}" for n in range(LONG))
    QGuiApplication.clipboard().setText("\n".join(("name\tkind\tmass_g", *rows)))
    kept = demo_bench.items()
    held_preview(True)

    def use(dialog: QDialog) -> None:
        assert isinstance(dialog, ImportDialog)
        shown_late(dialog, qtbot)
        dialog.waiting.cancel.click()
        assert not dialog.isVisible()

    in_dialog(kit(window).acts.paste_table, use)
    assert demo_bench.items() == kept


def test_a_long_pasted_table_that_is_waited_for_comes_in_and_is_undone(
    window: Window, demo_bench: Workbench, in_dialog: Use, qtbot, held_preview
) -> None:
    rows = (f"Bar {n}\tfood\t{40 + n % 9}" for n in range(MANY))
    QGuiApplication.clipboard().setText("\n".join(("name\tkind\tmass_g", *rows)))
    kept = demo_bench.items()
    held_preview(True)

    def use(dialog: QDialog) -> None:
        assert isinstance(dialog, ImportDialog)
        shown_late(dialog, qtbot)
        held_preview(False)
        seen(dialog, qtbot).main.click()

    in_dialog(kit(window).acts.paste_table, use)
    assert len(demo_bench.items()) == len(kept) + MANY
    assert len(kit(window).selected_ids()) == MANY
    window.acts.undo()
    assert demo_bench.items() == kept
    assert len(kit(window).model.rows) == len(kept)
    window.acts.redo()
    assert len(kit(window).model.rows) == len(kept) + MANY


@pytest.mark.parametrize("what", ["answer", "mapping"])
def test_a_long_second_reading_can_be_stopped_and_what_was_decided_before_stays(
    what: str, window: Window, tmp_path: Path, in_dialog: Use, qtbot, held_preview
) -> None:
    def use(dialog: ImportDialog) -> None:
        answer(dialog, qtbot, UNIT, "g")
        held_preview(True)
        if what == "answer":
            dialog.leaves.asked.columns[ORDER].radios["dmy"].click()
        else:
            dialog.leaves.headings.row_of(3).field.picked.emit("colour")
        shown_late(dialog, qtbot)
        dialog.waiting.cancel.click()
        assert dialog.isVisible()
        assert dialog.waiting.isHidden()
        assert dialog.leaves.asked.columns[UNIT].radios["g"].isChecked()
        assert not dialog.leaves.asked.columns[ORDER].radios["dmy"].isChecked()
        assert heads(dialog)["Zzz"] == ("", "")
        assert dialog.reason.text() == "1 question is open."
        held_preview(False)
        answer(dialog, qtbot, ORDER, "dmy")
        assert dialog.main.isEnabled()

    in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), using(qtbot, use))


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
