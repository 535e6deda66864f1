"""Portraits of the pages with the demo kit, as PNG: ``python packaging/portraits.py FOLDER [--size 1280x800] ...``.

For the pictures of the README, and for looking at the window without a screen. Inter is used if it is installed.
"""

import argparse
import os
import sys
import tempfile
from datetime import UTC, datetime
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QElapsedTimer, QSettings
from PySide6.QtGui import QFont, QFontDatabase
from PySide6.QtWidgets import QApplication

from kitlog.app import open_bench
from kitlog.desktop import look
from kitlog.desktop.application import prepared
from kitlog.desktop.desk import Desk
from kitlog.desktop.outing_page.page import OutingPage
from kitlog.desktop.page import PAGES
from kitlog.desktop.scheme import Scheme, lay_over
from kitlog.desktop.window import Window
from kitlog.desktop.window_memory import WindowMemory
from kitlog.files.resources import resources_folder
from kitlog.paint.icons import IconSet
from kitlog.workbench.workbench import Workbench

EVENING = datetime(2026, 5, 8, 18, 41, tzinfo=UTC)
"""The evening before the first outing of the demo."""

FONT = "Inter"
OPENED = {"outing": "power"}
"""What is opened on a page before its portrait."""

SETTLE_MS = 250
"""How long the window may take to show details and counts that follow a little later."""


def bench_at(path: Path, *, demo: bool) -> Workbench:
    """A data file, filled with the demo or empty."""
    bench = open_bench(path, clock=lambda: EVENING)
    if demo:
        bench.fill_with_demo(resources_folder() / "demo")
    return bench


def settle() -> None:
    """Let everything happen that is due."""
    timer = QElapsedTimer()
    timer.start()
    while timer.elapsed() < SETTLE_MS:
        QApplication.processEvents()


def portrait(window: Window, page: str, file: Path) -> None:
    """Show a page and save what it looks like."""
    shown = window.open(page)
    if page in OPENED:
        shown.show_this(OPENED[page])
    settle()
    while isinstance(shown, OutingPage) and shown.power.forecasting.busy:
        QApplication.processEvents()
    settle()
    window.grab().save(str(file))
    print(file)


def import_portraits(window: Window, table: Path, folder: Path, scheme: str) -> None:
    """Show what a table would bring, leaf by leaf, and save each."""
    from kitlog.desktop.import_page.dialog import HIGH, WIDE, ImportDialog
    from kitlog.desktop.import_page.leaves import Leaf
    from kitlog.desktop.import_page.table_input import of_file

    window.open("kit")
    dialog = ImportDialog(window.desk, of_file(table), window)
    dialog.show()
    dialog.resize(min(look.px(WIDE), window.width() - 60), min(look.px(HIGH), window.height() - 40))
    while dialog.background.busy:
        QApplication.processEvents()
    shown = dialog.leaves.shown
    for leaf in (*list(Leaf)[: Leaf.CHOICE],) if shown <= Leaf.NOTES else (shown,):
        dialog.leaves.open(leaf)
        settle()
        file = folder / f"import_{leaf.name.lower()}_{scheme}.png"
        dialog.grab().save(str(file))
        print(file)
    dialog.discard()


def main(arguments: list[str]) -> int:
    """Save every page of the demo, and the page of an empty kit."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--size", default="1280x800")
    parser.add_argument("--scheme", default="light", choices=["light", "dark"])
    parser.add_argument("--scale", type=float, default=1.0, help="size of the letters, 1 = 14 px")
    parser.add_argument("--table", type=Path, help="a table whose import is shown over the demo kit")
    given = parser.parse_args(arguments)
    given.folder.mkdir(parents=True, exist_ok=True)
    application = prepared(["kitlog"])
    font = QFont(FONT if FONT in QFontDatabase.families() else application.font().family())
    font.setPixelSize(round(14 * given.scale))
    application.setFont(font)
    lay_over(Scheme(given.scheme), application)
    width, height = (int(side) for side in given.size.split("x"))
    with tempfile.TemporaryDirectory() as scratch:
        memory = WindowMemory(QSettings(str(Path(scratch) / "window.ini"), QSettings.Format.IniFormat))
        for name, pages in (("demo", PAGES), ("empty", PAGES[:1])):
            bench = bench_at(Path(scratch) / f"{name}.kitlog", demo=name == "demo")
            offer = bench.items if name == "empty" else None  # any callable shows that a demo is offered
            window = Window(Desk(bench, IconSet(resources_folder() / "icons"), offer), memory)
            window.resize(width, height)
            window.show()
            for page in pages:
                suffix = "" if name == "demo" else "_empty"
                portrait(window, page, given.folder / f"{page}{suffix}_{given.scheme}.png")
            if given.table is not None and name == "demo":
                import_portraits(window, given.table, given.folder, given.scheme)
            window.close()
            bench.close()
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
