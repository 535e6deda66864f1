import os
import shutil
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from desk_steps import outing_of
from item_editor_steps import Open
from power_plan_steps import known_kit
from PySide6.QtCore import QSettings, QTimer
from PySide6.QtWidgets import QApplication, QDialog

from kitlog.app import open_bench
from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.kit_page.item_editor import ItemEditor
from kitlog.desktop.outing_page.power_plan import PowerPlan
from kitlog.desktop.scheme import Scheme, lay_over
from kitlog.desktop.window import Window
from kitlog.desktop.window_memory import WindowMemory
from kitlog.files.resources import resources_folder
from kitlog.kit.item import Item
from kitlog.paint.icons import IconSet
from kitlog.workbench.workbench import Workbench

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

EVENING = datetime(2026, 5, 8, 18, 41, tzinfo=UTC)
"""The evening before the first outing of the demo."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The offscreen platform has no window manager and says so of a least size, and of lists that open for keys."""
    here = Path(__file__).parent
    for item in items:
        if item.path.is_relative_to(here):
            item.add_marker(pytest.mark.qt_log_ignore("propagateSizeHints", r"support (raise\(\)|grabbing)"))


def clock() -> datetime:
    return EVENING


@pytest.fixture(scope="session")
def demo_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A data file with the demo, made once and copied for each test."""
    path = tmp_path_factory.mktemp("demo") / "demo.kitlog"
    bench = open_bench(path, clock=clock)
    bench.fill_with_demo(resources_folder() / "demo")
    bench.close()
    return path


@pytest.fixture
def open_file() -> Iterator[Callable[[Path], Workbench]]:
    """Open data files; they are closed after the test."""
    opened: list[Workbench] = []

    def open_path(path: Path) -> Workbench:
        opened.append(open_bench(path, clock=clock))
        return opened[-1]

    yield open_path
    for bench in opened:
        bench.close()


@pytest.fixture
def demo_bench(demo_file: Path, tmp_path: Path, open_file: Callable[[Path], Workbench]) -> Workbench:
    path = tmp_path / "kit.kitlog"
    shutil.copy(demo_file, path)
    return open_file(path)


@pytest.fixture
def empty_bench(tmp_path: Path, open_file: Callable[[Path], Workbench]) -> Workbench:
    return open_file(tmp_path / "kit.kitlog")


@pytest.fixture
def styled(qapp: QApplication) -> QApplication:
    """The application as `start` prepares it."""
    qapp.setQuitOnLastWindowClosed(False)  # else no dialog opens after the first test
    if not qapp.styleSheet():
        qapp.setStyle("Fusion")
        qapp.setFont(look.least_body(qapp.font()))
    if not qapp.styleSheet() or look.tokens().dark:
        lay_over(Scheme.LIGHT, qapp)
    return qapp


@pytest.fixture
def memory(tmp_path: Path) -> WindowMemory:
    return WindowMemory(QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat))


@pytest.fixture
def show(qtbot, styled: QApplication, memory: WindowMemory, open_file: object) -> Iterator[Callable[..., Window]]:
    """Show a window on a workbench; data files are closed after it."""
    shown: list[Window] = []

    def on(bench: Workbench, page: str = "kit", size: tuple[int, int] = (1280, 800), **more: object) -> Window:
        window = Window(Desk(bench, IconSet(resources_folder() / "icons"), **more), memory)  # type: ignore[arg-type]
        qtbot.addWidget(window)
        window.resize(*size)
        with qtbot.waitExposed(window):
            window.show()
        window.open(page)
        window.activateWindow()
        qtbot.waitUntil(lambda: window.painted_once)
        shown.append(window)
        return window

    yield on
    for window in shown:
        window.close()


@pytest.fixture
def window(show: Callable[..., Window], demo_bench: Workbench) -> Window:
    """A window on the demo."""
    return show(demo_bench)


@pytest.fixture
def in_dialog(qtbot, styled: QApplication) -> Callable[[Callable[[], object], Callable[[QDialog], object]], None]:
    """Do something that opens a dialog, and use the dialog; it is left if it stays open."""

    def use_dialog(do: Callable[[], object], use: Callable[[QDialog], object]) -> None:
        failed: list[BaseException] = []
        used: list[bool] = []

        def run() -> None:
            dialog = QApplication.activeModalWidget()
            if not isinstance(dialog, QDialog) or not dialog.isAncestorOf(QApplication.focusWidget()):
                QTimer.singleShot(5, run)
                return
            try:
                use(dialog)
                used.append(True)
            except BaseException as error:  # noqa: BLE001  # raised again outside of the event loop
                failed.append(error)
            if dialog.isVisible():
                dialog.done(QDialog.DialogCode.Rejected)

        QTimer.singleShot(0, run)
        do()
        if failed:
            raise failed[0]
        assert used, "no dialog was opened"
        shown = [top for top in QApplication.topLevelWidgets() if isinstance(top, Window) and top.isVisible()]
        for window in shown[:1]:
            window.activateWindow()
            qtbot.waitUntil(window.isActiveWindow)

    return use_dialog


@pytest.fixture
def power_bench(demo_bench: Workbench) -> Workbench:
    """The demo with draws that are known to the tests of the power plan."""
    known_kit(demo_bench)
    return demo_bench


@pytest.fixture
def plan(power_bench: Workbench, window: Window, qtbot) -> Iterator[Callable[[], PowerPlan]]:
    """Open the power plan of the outing being worked on; it is left at the end."""
    opened: list[PowerPlan] = []

    def open_plan() -> PowerPlan:
        opened.append(PowerPlan(window.desk, outing_of(power_bench), window))
        opened[-1].show()
        opened[-1].activateWindow()
        qtbot.waitUntil(opened[-1].isActiveWindow)
        return opened[-1]

    yield open_plan
    for dialog in opened:
        dialog.discard()


@pytest.fixture
def edit(window: Window, qtbot) -> Open:
    """Open the editor of an item, or of a new one."""

    def open_editor(item: Item | None) -> ItemEditor:
        editor = ItemEditor(window.desk, item, window)
        qtbot.addWidget(editor)
        editor.show()
        editor.activateWindow()
        qtbot.waitUntil(editor.isActiveWindow)
        return editor

    return open_editor
