"""Reading happens away from the window: it stays alive, a long reading can be stopped, and an old look is never shown."""

import threading
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from desk_steps import Use
from import_steps import DOUBTFUL, ORDER, UNIT, kit, seen, using, written
from PySide6.QtCore import QElapsedTimer, QTimer
from PySide6.QtWidgets import QDialog

from kitlog.desktop.import_page import table_input
from kitlog.desktop.import_page.dialog import ImportDialog
from kitlog.desktop.import_page.table_input import TableInput
from kitlog.desktop.window import Window
from kitlog.workbench.kit_preview import ImportChoices, preview_kit
from kitlog.workbench.workbench import Workbench

MOST_SHARE = 0.8
"""Share of one look at a large table for which the window may stand still: less shows that it is made elsewhere."""

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


def many_rows(n: int) -> str:
    head = "Bezeichnung;Art;Gewicht;Hersteller;Modell;Gekauft;Farbe;Preis;Notiz;Ort;Seriennummer;Stück\n"
    return head + "".join(
        f"Ding {i};Lampe;{20 + i % 900};Tolve;M{i % 40};{i % 28 + 1:02}/0{i % 9 + 1}/2024;rot;{i},50;nichts;Rucksack;S{i};1\n"
        for i in range(n)
    )


def one_look_ms(bench: Workbench, table: TableInput) -> int:
    """How long one look takes on the window's own thread."""
    clock = QElapsedTimer()
    clock.start()
    preview_kit(bench.kit_source(), table.grid(lambda _share: None), "many.csv", ImportChoices())
    return clock.elapsed()


@pytest.mark.bench
def test_the_window_stays_alive_over_ten_thousand_rows(
    window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
) -> None:
    stalls, clock, beat = [0], QElapsedTimer(), QTimer()
    beat.setInterval(0)
    beat.timeout.connect(lambda: stalls.append(clock.restart()))

    def use(dialog: QDialog) -> None:
        seen(dialog, qtbot)
        assert isinstance(dialog, ImportDialog)
        for answer in ("g", "oz", "kg"):
            dialog.leaves.asked.columns[2, UNIT[1]].radios[answer].click()
            seen(dialog, qtbot)
        beat.stop()
        dialog.discard()

    page = kit(window)
    table = written(tmp_path, many_rows(10_000))
    own_ms = one_look_ms(demo_bench, table)
    clock.start()
    beat.start()
    in_dialog(lambda: page.acts.look_at(table), use)
    print(f"longest stall {max(stalls)} ms; one look takes {own_ms} ms")  # noqa: T201  # the figures are the point
    assert max(stalls) < MOST_SHARE * own_ms
