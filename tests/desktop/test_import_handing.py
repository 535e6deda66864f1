"""How a table comes to the window: dropped, pasted, chosen."""

from pathlib import Path

import pytest
from desk_steps import Use, item_named
from import_steps import PLAIN, kit, using, written
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDragLeaveEvent, QDropEvent, QGuiApplication
from PySide6.QtWidgets import QApplication, QFileDialog

from kitlog.desktop.import_page.dialog import ImportDialog
from kitlog.desktop.window import Window
from kitlog.workbench.workbench import Workbench

COPY, LEFT, NONE = Qt.DropAction.CopyAction, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier


def files(*paths: Path | str) -> QMimeData:
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path)) if isinstance(path, Path) else QUrl(path) for path in paths])
    return data


def enter(data: QMimeData) -> QDragEnterEvent:
    return QDragEnterEvent(QPoint(10, 10), COPY, data, LEFT, NONE)


def drop(data: QMimeData) -> QDropEvent:
    return QDropEvent(QPointF(10, 10), COPY, data, LEFT, NONE)


@pytest.mark.parametrize("on", ["page", "window"])
def test_a_table_can_be_dropped_on_the_page_and_on_its_window(
    on: str, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
) -> None:
    table = written(tmp_path, PLAIN, "meine Liste.txt")
    assert table.path is not None
    data = files(table.path)
    page = kit(window)
    over = page if on == "page" else window

    def do() -> None:
        held = enter(data)
        QApplication.sendEvent(over, held)
        assert held.isAccepted()
        assert page.drop.sheet.isVisible()
        assert "meine Liste.txt" in page.drop.sheet.accessibleName()
        QApplication.sendEvent(over, drop(data))
        assert not page.drop.sheet.isVisible()
        QApplication.processEvents()

    in_dialog(do, using(qtbot, lambda dialog: dialog.main.click()))
    assert item_named(demo_bench, "Head torch")


def test_what_is_held_over_the_page_and_taken_away_leaves_nothing(window: Window, tmp_path: Path) -> None:
    page = kit(window)
    data = files(tmp_path / "a.csv")
    QApplication.sendEvent(page, enter(data))
    QApplication.sendEvent(page, QDragLeaveEvent())
    assert not page.drop.sheet.isVisible()


def test_the_window_takes_no_table_while_another_page_is_shown(window: Window) -> None:
    kit(window)
    assert window.acceptDrops()
    window.open("service")
    assert not window.acceptDrops()
    window.open("kit")
    assert window.acceptDrops()


@pytest.mark.parametrize("what", ["folder", "several", "elsewhere"])
def test_what_is_no_table_is_said_while_it_is_held_and_when_it_is_dropped(
    what: str, window: Window, tmp_path: Path, qtbot
) -> None:
    data = {
        "folder": files(tmp_path),
        "several": files(tmp_path / "a.csv", tmp_path / "b.csv"),
        "elsewhere": files("https://example.org/kit.csv"),
    }[what]
    said = {"folder": "is a folder", "several": "2 files", "elsewhere": "does not lie on this machine"}[what]
    page = kit(window)
    QApplication.sendEvent(page, enter(data))
    assert said in page.drop.sheet.accessibleName()
    QApplication.sendEvent(page, drop(data))
    qtbot.waitUntil(window.strip.isVisible)
    assert said in window.strip.what.text()


def test_a_table_can_be_pasted_by_its_key(window: Window, demo_bench: Workbench, in_dialog: Use, qtbot) -> None:
    QGuiApplication.clipboard().setText(PLAIN.replace(",", "\t"))
    page = kit(window)
    page.table.setFocus()

    def use(dialog: ImportDialog) -> None:
        assert dialog.table.path is None
        assert not dialog.head.again.isVisible()
        dialog.main.click()

    in_dialog(lambda: qtbot.keyClick(page.table, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier), using(qtbot, use))
    assert item_named(demo_bench, "Spare whistle").mass_g == 14


def test_pasting_into_a_field_stays_pasting_text(window: Window, qtbot) -> None:
    QGuiApplication.clipboard().setText("wing")
    page = kit(window)
    page.bar.words.setFocus()
    qtbot.keyClick(page.bar.words, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert page.bar.words.text() == "wing"


def test_a_table_pasted_while_the_filter_has_the_keys_is_read_as_a_table(
    window: Window, demo_bench: Workbench, in_dialog: Use, qtbot
) -> None:
    """The keys are with the filter after an undo, and whoever pastes again had lost their table to it."""
    QGuiApplication.clipboard().setText(PLAIN)
    page = kit(window)
    page.bar.words.setFocus()
    keys = Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier
    in_dialog(
        lambda: qtbot.keyClick(page.bar.words, *keys),
        using(qtbot, lambda dialog: dialog.main.click()),
    )
    assert page.bar.words.text() == ""
    assert item_named(demo_bench, "Spare whistle")


def test_a_file_that_was_copied_is_read_when_it_is_pasted(
    window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
) -> None:
    table = written(tmp_path, PLAIN, "copied.csv")
    assert table.path is not None
    data = files(table.path)
    data.setText(str(table.path))  # file managers lay the name beside it
    QGuiApplication.clipboard().setMimeData(data)

    def use(dialog: ImportDialog) -> None:
        assert dialog.table.path == table.path
        dialog.main.click()

    in_dialog(kit(window).acts.paste_table, using(qtbot, use))
    assert item_named(demo_bench, "Spare whistle")


def test_an_empty_clipboard_is_said(window: Window) -> None:
    QGuiApplication.clipboard().clear()
    kit(window).acts.paste_table()
    assert window.strip.isVisible()
    assert "no text to paste" in window.strip.what.text()


def test_a_table_can_be_chosen(
    window: Window, tmp_path: Path, in_dialog: Use, qtbot, monkeypatch: pytest.MonkeyPatch
) -> None:
    table = written(tmp_path, PLAIN)
    asked: list[str] = []

    def chosen(_parent: object, _title: str, _folder: str, kinds: str) -> tuple[str, str]:
        asked.append(kinds)
        return str(table.path), ""

    monkeypatch.setattr(QFileDialog, "getOpenFileName", chosen)
    in_dialog(kit(window).acts.import_table, using(qtbot, lambda dialog: dialog.reject()))
    assert all(ending in asked[0] for ending in ("*.csv", "*.xlsx", "*.ods", "(*)"))
