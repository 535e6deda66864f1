"""How long the window stands still while a large table is read or written away from it, as shares of that work.

The heart of the window beats each few milliseconds; the longest time between two beats counts. Work on the window's own
thread would be a share of 1. The collector counts apart: it stops the window whichever thread it runs on, and took a tenth
before what the work makes was kept from it. Other work on the machine makes a share larger by
chance, so one over the limit is measured again.
"""

import gc
import os
import time
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings, Qt, QTimer

from kitlog.app import open_bench
from kitlog.desktop.desk import Desk
from kitlog.desktop.import_page.dialog import ImportDialog
from kitlog.desktop.import_page.ready import make_ready
from kitlog.desktop.import_page.table_input import of_file
from kitlog.desktop.window import Window
from kitlog.desktop.window_memory import WindowMemory
from kitlog.files.resources import resources_folder
from kitlog.paint.icons import IconSet

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

pytestmark = [pytest.mark.bench, pytest.mark.qt_log_ignore("propagateSizeHints", r"support (raise\(\)|grabbing)")]

MOST_STILL, MOST_COLLECTING = 0.33, 0.04
MOST_WRITING = 0.08
"""Writing, and showing what was written: 0.15 while the page read the kit anew on the window's thread, then 0.02."""
TURNS = 12
ROWS = 10_000
BEAT_MS = 5
HEADINGS = "Name;Art;Gewicht (g);Stück;Hersteller;Modell;Seriennummer;Gekauft am;Akku mAh;Spannung V;Farbe;Bemerkung"


def _table(folder: Path) -> Path:
    rows = (
        f"Teil {n};Vario;{100 + n % 900};1;Hollin;Merlar {n % 7};S{n:05};{1 + n % 28}.05.2021;{1000 + n % 50};3,7;rot;"
        f"liegt im Fach {n % 9}"
        for n in range(ROWS)
    )
    path = folder / "kit.csv"
    path.write_text("\n".join((HEADINGS, *rows)), encoding="utf-8")
    return path


class _Heart:
    """Beats on the thread of the window; seconds between two beats at most, and seconds of collections, which stop all threads."""

    def __init__(self) -> None:
        self.longest_s = self.collecting_s = 0.0
        self._last = self._begun = time.perf_counter()
        self._timer = QTimer()
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.setInterval(BEAT_MS)
        self._timer.timeout.connect(self._beat)
        self._timer.start()
        gc.callbacks.append(self._collecting)

    def stop(self) -> None:
        self._timer.stop()
        gc.callbacks.remove(self._collecting)

    def _beat(self) -> None:
        now = time.perf_counter()
        self.longest_s, self._last = max(self.longest_s, now - self._last), now

    def _collecting(self, phase: str, _info: dict[str, int]) -> None:
        now = time.perf_counter()
        if phase == "stop":
            self.collecting_s += now - self._begun
        self._begun = now


def _looked_at(desk: Desk, path: Path, qtbot) -> tuple[float, float]:
    """The shares of a whole look for which the window stood still at most, and for which it collected."""
    dialog = ImportDialog(desk, of_file(path), None)
    qtbot.addWidget(dialog)
    with qtbot.waitExposed(dialog):
        dialog.show()
    heart, start = _Heart(), time.perf_counter()
    qtbot.waitUntil(lambda: not dialog.background.busy, timeout=60_000)
    qtbot.wait(4 * BEAT_MS)  # what was shown is painted
    whole_s = time.perf_counter() - start
    heart.stop()
    assert dialog.preview is not None
    assert len(dialog.preview.new) == ROWS
    dialog.discard()
    print(f"{whole_s:.3f} s, still for {heart.longest_s:.3f} s, collecting {heart.collecting_s:.3f} s")  # noqa: T201  # looked at, never asserted
    return heart.longest_s / whole_s, heart.collecting_s / whole_s


def test_the_window_stands_still_for_a_small_share_of_the_reading(tmp_path: Path, qtbot, qapp) -> None:
    bench = open_bench(tmp_path / "kit.kitlog")
    desk = Desk(bench, IconSet(resources_folder() / "icons"))
    path = _table(tmp_path)
    make_ready()
    fits = False
    for _turn in range(TURNS):
        still, collecting = _looked_at(desk, path, qtbot)
        fits = still <= MOST_STILL and collecting <= MOST_COLLECTING
        if fits:
            break
    bench.close()
    assert fits, (still, collecting)


def _done_again(window: Window, qtbot) -> float:
    """The share of doing an import again, after it was taken back, for which the window stood still at most."""
    window.acts.undo()
    qtbot.wait(4 * BEAT_MS)
    heart, start = _Heart(), time.perf_counter()
    window.acts.redo()
    qtbot.wait(4 * BEAT_MS)
    whole_s = time.perf_counter() - start
    heart.stop()
    assert len(window.desk.bench.items()) == ROWS
    print(f"again in {whole_s:.3f} s, still for {heart.longest_s:.3f} s")  # noqa: T201  # looked at, never asserted
    return heart.longest_s / whole_s


def test_the_window_stands_still_for_a_small_share_of_the_writing(tmp_path: Path, qtbot, qapp) -> None:
    bench = open_bench(tmp_path / "kit.kitlog")
    memory = WindowMemory(QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat))
    window = Window(Desk(bench, IconSet(resources_folder() / "icons")), memory)
    qtbot.addWidget(window)
    with qtbot.waitExposed(window):
        window.show()
    window.open("kit")
    path = _table(tmp_path)
    bench.import_kit(bench.preview_kit(path.read_bytes(), path.name))
    shares = []
    for _turn in range(TURNS):
        shares.append(_done_again(window, qtbot))
        if shares[-1] <= MOST_WRITING:
            break
    window.close()
    bench.close()
    assert shares[-1] <= MOST_WRITING, shares
