"""Taking many items back takes a while: the window says so, and nothing can be done twice meanwhile."""

import threading
from collections.abc import Callable, Iterator

import pytest
from import_steps import kit
from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication

from kitlog.desktop.desk import MANY
from kitlog.desktop.hands_off import WAIT_CURSOR_MS
from kitlog.desktop.window import Window
from kitlog.workbench.workbench import Workbench


def bring_in(bench: Workbench, name: str, count: int = MANY) -> None:
    rows = "".join(f"{name} {n},food,{40 + n % 9}\n" for n in range(count))
    bench.import_kit(bench.preview_kit(f"name,kind,mass_g\n{rows}".encode(), f"{name}.csv"))


@pytest.fixture
def held(demo_bench: Workbench, monkeypatch: pytest.MonkeyPatch) -> Iterator[threading.Event]:
    """Undo and redo wait, on their thread, until they are let go."""
    let_go = threading.Event()
    for name in ("undo", "redo"):
        move = getattr(demo_bench, name)
        monkeypatch.setattr(demo_bench, name, lambda move=move: (let_go.wait(20), move()))
    yield let_go
    let_go.set()


def while_it_goes_on(let_go: threading.Event, do: Callable[[], object], look: Callable[[], object]) -> None:
    """Do something long, look at the window once the cursor should have changed, and let the work go on."""
    failed: list[BaseException] = []

    def run() -> None:
        try:
            look()
        except BaseException as error:  # noqa: BLE001  # raised again outside of the event loop
            failed.append(error)
        let_go.set()

    QTimer.singleShot(2 * WAIT_CURSOR_MS, run)
    do()
    if failed:
        raise failed[0]


@pytest.mark.parametrize(
    ("way", "words"),
    [("undo", f"Taking back the import of {MANY} items …"), ("redo", f"Importing {MANY} items again …")],
)
def test_the_status_line_says_what_is_done_and_the_cursor_waits(
    way: str, words: str, window: Window, demo_bench: Workbench, held: threading.Event
) -> None:
    bring_in(demo_bench, "Bar")
    if way == "redo":
        held.set()
        window.acts.undo()
        held.clear()

    def look() -> None:
        assert window.status.busy.isVisible()
        assert window.status.busy.text() == words
        assert not window.status.undo_act.isVisible()
        cursor = QGuiApplication.overrideCursor()
        assert cursor is not None
        assert cursor.shape() is Qt.CursorShape.WaitCursor

    while_it_goes_on(held, getattr(window.acts, way), look)
    assert QGuiApplication.overrideCursor() is None
    assert window.status.busy.isHidden()
    if way == "redo":
        assert window.status.undo_act.words == "Undo: import Bar.csv"


def test_keys_clicks_and_closing_meanwhile_are_let_fall(
    window: Window, demo_bench: Workbench, held: threading.Event, qtbot
) -> None:
    before = len(demo_bench.items())
    bring_in(demo_bench, "Bar")
    bring_in(demo_bench, "Gel")
    page = kit(window)
    page.table.setFocus()

    def look() -> None:
        for target in (window, page.table):
            qtbot.keyClick(target, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
        qtbot.keyClick(page.table, Qt.Key.Key_Delete)
        qtbot.mouseClick(page.bar.add, Qt.MouseButton.LeftButton)
        assert QApplication.activeModalWidget() is None
        window.acts.undo()
        assert not window.close()
        assert window.isVisible()

    while_it_goes_on(held, window.acts.undo, look)
    qtbot.wait(1)
    assert len(demo_bench.items()) == before + MANY
    assert demo_bench.undoable is not None
    assert demo_bench.undoable.facts["file"] == "Bar.csv"
    assert len(page.model.rows) == before + MANY
    held.set()
    qtbot.keyClick(page.table, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert len(demo_bench.items()) == before


def test_what_is_shown_afterwards_was_read_beside_the_window(
    window: Window, demo_bench: Workbench, monkeypatch: pytest.MonkeyPatch
) -> None:
    from kitlog.desktop.kit_page import filtering

    on: list[threading.Thread] = []
    text_of = filtering.text_of
    monkeypatch.setattr(
        filtering, "text_of", lambda *given: (on.append(threading.current_thread()), text_of(*given))[1]
    )
    bring_in(demo_bench, "Zwieback")
    page = kit(window)
    page.bar.words.setText("zwieback")
    on.clear()
    window.acts.undo()
    assert page.model.rows == []
    window.acts.redo()
    assert len(page.model.rows) == MANY
    assert on
    assert threading.main_thread() not in on
    page.bar.clear()
    assert [row.item.name for row in page.model.rows] == sorted(
        (item.name for item in demo_bench.items()), key=str.casefold
    )
