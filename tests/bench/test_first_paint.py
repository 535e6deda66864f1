"""How soon the window is there, against a bare window that imports the same libraries, in one run.

Processor time of whole processes, the least of several in turn: other work on the machine makes single figures larger,
never smaller, so a ratio over the limit is measured on until more turns would not change it.
"""

import os
import resource
import subprocess
import sys
from pathlib import Path

import pytest

from kitlog.app import open_bench
from kitlog.files.resources import resources_folder

pytestmark = pytest.mark.bench

MOST_RATIO = 1.3
TURNS = 7
MOST_TURNS = 28

BARE = """
import sqlite3
import sqlalchemy
from pydantic import BaseModel, Field
import platformdirs
from PySide6 import QtCore, QtGui, QtSvg, QtWidgets

class Bare(QtWidgets.QMainWindow):
    def paintEvent(self, event):
        super().paintEvent(event)
        print("first paint", flush=True)
        QtCore.QTimer.singleShot(0, QtWidgets.QApplication.quit)

application = QtWidgets.QApplication([])
window = Bare()
window.resize(1280, 800)
window.show()
application.exec()
"""


def _cpu_s(command: list[str], home: Path) -> float:
    environment = os.environ | {
        "QT_QPA_PLATFORM": "offscreen",
        "KITLOG_FIRST_PAINT": "1",
        "HOME": str(home),
        "XDG_CONFIG_HOME": str(home),
    }
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    run = subprocess.run(command, env=environment, capture_output=True, text=True, timeout=60, check=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    assert run.stdout == "first paint\n"
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def test_the_frame_paints_nearly_as_soon_as_a_bare_window(tmp_path: Path) -> None:
    file = tmp_path / "kit.kitlog"
    bench = open_bench(file)
    bench.fill_with_demo(resources_folder() / "demo")
    bench.close()
    own = [sys.executable, "-m", "kitlog", "--data", str(file)]
    bare = [sys.executable, "-c", BARE]
    own_s = bare_s = float("inf")
    for turn in range(1, MOST_TURNS + 1):
        own_s, bare_s = min(own_s, _cpu_s(own, tmp_path)), min(bare_s, _cpu_s(bare, tmp_path))
        if turn >= TURNS and own_s / bare_s <= MOST_RATIO:
            break
    print(f"first paint: {own_s:.3f} s, bare window {bare_s:.3f} s, ratio {own_s / bare_s:.2f}")  # noqa: T201  # looked at, never asserted
    assert own_s / bare_s <= MOST_RATIO
