"""Opening the window: a fault at the door, and the demo beside an empty kit."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QApplication, QDialog, QMessageBox

from kitlog.desktop.start import start
from kitlog.desktop.window_memory import WindowMemory
from kitlog.desktop.windows import FAULT_CODE, Windows
from kitlog.fault import SystemFault
from kitlog.files.resources import resources_folder
from kitlog.kit.item import Item
from kitlog.paint.icons import IconSet
from kitlog.workbench.workbench import Workbench

ICONS = resources_folder() / "icons"


def test_a_fault_at_the_door_is_said_in_words_and_ends_with_three(
    styled: QApplication, in_dialog, tmp_path: Path
) -> None:
    codes: list[int] = []
    settings = QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)

    def refuse() -> Workbench:
        raise SystemFault("data_file.newer", path="/kit.kitlog", reason="")

    def read(dialog: QDialog) -> None:
        assert isinstance(dialog, QMessageBox)
        assert dialog.text()
        assert "kit.kitlog" in dialog.informativeText()

    in_dialog(lambda: codes.append(start(refuse, ICONS, "kit.kitlog", settings=settings)), read)
    assert codes == [FAULT_CODE]


def test_the_demo_takes_the_place_of_an_empty_kit(
    styled: QApplication,
    memory: WindowMemory,
    empty_bench: Workbench,
    demo_file: Path,
    open_file: Callable[[Path], Workbench],
    qtbot,
) -> None:
    windows = Windows(IconSet(ICONS), memory, lambda: open_file(demo_file))
    first = windows.open(empty_bench)
    first.acts.open_demo()
    assert not first.isVisible()
    demo = windows._open[-1]
    assert demo.isVisible()
    assert len(demo.desk.bench.items()) > 40
    for window in windows._open:
        window.close()
        window.deleteLater()


def test_the_demo_opens_beside_a_kit(
    styled: QApplication,
    memory: WindowMemory,
    empty_bench: Workbench,
    demo_file: Path,
    open_file: Callable[[Path], Workbench],
    qtbot,
) -> None:
    empty_bench.add_item(Item(id="w", name="Wing"))
    windows = Windows(IconSet(ICONS), memory, lambda: open_file(demo_file))
    first = windows.open(empty_bench)
    first.acts.open_demo()
    assert first.isVisible()
    for window in windows._open:
        window.close()
        window.deleteLater()
