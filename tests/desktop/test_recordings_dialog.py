"""Recordings through the window: dropped or chosen, read beside it, looked at, corrected and entered in one step."""

import time
from collections.abc import Callable
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest
from desk_steps import Use, check_controls
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QDialog, QFileDialog
from recordings import Day, flight, utc

from kitlog.desktop.flights_page.page import FlightsPage
from kitlog.desktop.flights_page.recording_table import BECOMES, DATE, FILE, TICK
from kitlog.desktop.flights_page.recordings_dialog import RecordingsDialog
from kitlog.desktop.window import Window
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.workbench.workbench import Workbench

SATURDAY = utc("2026-05-02T09:00")
Read = Callable[..., RecordingsDialog]


def flown(begins: datetime = SATURDAY, minutes: int = 30) -> Day:
    return flight(Day(begins).stand(200), minutes).stand(200)


def put(folder: Path, name: str, day: Day, **more: object) -> Path:
    path = folder / name
    path.write_bytes(day.igc(every=4, **more))  # type: ignore[arg-type]
    return path


@pytest.fixture
def page(window: Window) -> FlightsPage:
    made = window.open("flights")
    assert isinstance(made, FlightsPage)
    return made


@pytest.fixture
def read(page: FlightsPage, qtbot) -> Read:
    """Open the dialog on files and wait until they are read."""

    def open_dialog(*paths: Path) -> RecordingsDialog:
        dialog = RecordingsDialog(page.desk, paths, page)
        qtbot.addWidget(dialog)
        dialog.show()
        dialog.activateWindow()
        qtbot.waitUntil(lambda: not dialog.background.busy)
        return dialog

    return open_dialog


def cell(dialog: RecordingsDialog, row: int, column: int) -> str:
    return str(dialog.model.index(row, column).data(Qt.ItemDataRole.AccessibleTextRole))


def becomes(dialog: RecordingsDialog) -> list[str]:
    return [cell(dialog, row, BECOMES) for row in range(dialog.model.rowCount())]


def new_flights(bench: Workbench, before: tuple[Flight, ...]) -> list[Flight]:
    known = {one.id for one in before}
    return [one for one in bench.flights() if one.id not in known]


def test_a_row_for_each_file_and_what_became_of_it(read: Read, demo_bench: Workbench, tmp_path: Path) -> None:
    day = flown()
    bad = tmp_path / "c.igc"
    bad.write_bytes(b"nothing")
    cable = Day(utc("2026-05-03T09:00"), height=800).stand(100).cable(400).stand(100)
    dialog = read(put(tmp_path, "a.igc", day), put(tmp_path, "b.igc", day), bad, put(tmp_path, "d.igc", cable))
    assert becomes(dialog) == ["flight", "duplicate", "refused", "asked"]
    assert [cell(dialog, row, TICK) for row in range(4)] == [
        "to be entered",
        "no flight to enter",
        "no flight to enter",
        "left out",
    ]
    assert (cell(dialog, 0, DATE), cell(dialog, 0, FILE)) == ("2\u00a0May\u00a02026", "a.igc")
    assert "1 flight to enter, 0:30" in dialog.sum.text()
    assert dialog.table.currentIndex().row() == 3  # what is asked about is looked at first
    report = dialog.report()
    assert all(name in report for name in ("a.igc", "b.igc", "c.igc", "d.igc"))
    assert "cable car" in report
    assert demo_bench.undoable is None


def test_what_is_ticked_is_entered_in_one_step(
    window: Window, read: Read, demo_bench: Workbench, tmp_path: Path, qtbot
) -> None:
    before = demo_bench.flights()
    paths = [put(tmp_path, f"{n}.igc", flown(SATURDAY + timedelta(days=n), 20 + n)) for n in range(3)]
    dialog = read(*paths)
    dialog.table.select(1)
    dialog.table.setFocus()
    qtbot.keyClick(dialog.table, Qt.Key.Key_Space)
    assert becomes(dialog) == ["flight", "left out", "flight"]
    dialog.main.click()
    assert not dialog.isVisible()
    new = new_flights(demo_bench, before)
    assert [one.on for one in new] == [date(2026, 5, 2), date(2026, 5, 4)]
    assert all(one.flown == demo_bench.usual_set() for one in new)
    window.acts.undo()
    assert demo_bench.flights() == before


def test_figures_are_corrected_and_what_was_found_stays_beside(
    read: Read, demo_bench: Workbench, tmp_path: Path
) -> None:
    before = demo_bench.flights()
    dialog = read(put(tmp_path, "a.igc", flown()))
    side = dialog.side
    assert (side.hours.whole(), side.minutes.whole(), side.launches.whole()) == (0, 30, 1)
    assert side.found.isHidden()
    side.minutes.put(25)
    side.launches.put(2)
    side.site.setEditText("Quern Ledge")
    assert side.found.isVisible()
    assert "0:30" in side.found.text()
    wing = next(tick for tick in side.flown.ticks.values() if tick.words == "Wing B")
    wing.click()
    dialog.main.click()
    (new,) = new_flights(demo_bench, before)
    assert (new.airtime_min, new.launches, new.site) == (25, 2, "Quern Ledge")
    assert new.found_airtime_min == pytest.approx(30, abs=0.5)
    assert next(item.id for item in demo_bench.items() if item.name == "Wing B") in new.flown


def test_one_choice_for_all(read: Read, demo_bench: Workbench, tmp_path: Path) -> None:
    before = demo_bench.flights()
    dialog = read(*(put(tmp_path, f"{n}.igc", flown(SATURDAY + timedelta(days=n))) for n in range(2)))
    for tick in dialog.side.flown.ticks.values():
        if tick.isChecked() != (tick.words == "Wing B"):
            tick.click()
    dialog.side.for_all.click()
    dialog.main.click()
    wing = next(item.id for item in demo_bench.items() if item.name == "Wing B")
    assert [one.flown for one in new_flights(demo_bench, before)] == [(wing,), (wing,)]


def test_ground_handling_is_booked_apart(read: Read, demo_bench: Workbench, tmp_path: Path) -> None:
    before = demo_bench.flights()
    dialog = read(put(tmp_path, "a.igc", flown()))
    dialog.side.ground.click()
    assert becomes(dialog) == ["on the ground"]
    dialog.main.click()
    (new,) = new_flights(demo_bench, before)
    assert (new.airtime_min, new.launches, round(new.ground_handling_min)) == (0, 0, 30)


def test_nobody_knows_what_was_flown(
    show: Callable[..., Window], empty_bench: Workbench, tmp_path: Path, qtbot
) -> None:
    for name in ("One", "Two"):
        empty_bench.add_item(Item(id=name, name=name, kind=Kind.WING))
    page = show(empty_bench, "flights").page("flights")
    dialog = RecordingsDialog(page.desk, [put(tmp_path, "a.igc", flown())], page)
    qtbot.addWidget(dialog)
    dialog.show()
    qtbot.waitUntil(lambda: not dialog.background.busy)
    assert becomes(dialog) == ["asked"]
    assert not dialog.main.isEnabled()
    dialog.side.flown.ticks["Two"].click()
    assert becomes(dialog) == ["flight"]
    dialog.main.click()
    assert [one.flown for one in empty_bench.flights()] == [("Two",)]


def test_a_day_for_what_has_no_date(read: Read, demo_bench: Workbench, tmp_path: Path, qtbot) -> None:
    before = demo_bench.flights()
    dialog = read(put(tmp_path, "a.igc", flown(), date_line=""), put(tmp_path, "b.igc", flown(utc("2026-05-04T09:00"))))
    assert becomes(dialog) == ["refused", "flight"]
    assert dialog.undated.isVisible()
    dialog.table.select(1)
    dialog.side.minutes.put(20)
    dialog.day.lineEdit().setText("2 Mayhem")
    dialog._again()
    assert "2 Mayhem" in dialog.wrong()
    dialog.day.put(date(2026, 5, 2))
    dialog._again()
    qtbot.waitUntil(lambda: not dialog.background.busy)
    assert becomes(dialog) == ["flight", "flight"]
    assert not dialog.undated.isVisible()
    dialog.main.click()
    new = {one.on: one.airtime_min for one in new_flights(demo_bench, before)}
    assert new[date(2026, 5, 4)] == 20  # what was decided before stays
    assert new[date(2026, 5, 2)] == pytest.approx(30, abs=0.5)


def test_a_second_recorder_alone_is_remembered(read: Read, demo_bench: Workbench, tmp_path: Path) -> None:
    day = flown()
    read(put(tmp_path, "a.igc", day)).main.click()
    before = demo_bench.flights()
    dialog = read(put(tmp_path, "b.igc", day.noisy(3)))
    assert becomes(dialog) == ["duplicate"]
    dialog.main.click()
    changed = [one for one in demo_bench.flights() if one not in before]
    assert [len(one.recordings) for one in changed] == [2]


def test_nothing_to_enter_says_so(read: Read, tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    dialog = read(tmp_path / "empty")
    assert becomes(dialog) == ["refused"]
    assert not dialog.main.isEnabled()
    assert "no flight to enter" in dialog.reason.text()


def test_leaving_asks_once_something_was_decided(read: Read, tmp_path: Path) -> None:
    dialog = read(put(tmp_path, "a.igc", flown()))
    assert not dialog.changed()
    dialog.side.minutes.put(20)
    dialog.reject()
    assert dialog.isVisible()
    dialog.discard()
    assert not dialog.isVisible()


def test_stopping_keeps_what_was_read(page: FlightsPage, tmp_path: Path, qtbot) -> None:
    paths = [put(tmp_path, f"{n:02}.igc", flown(SATURDAY - timedelta(days=n), 10)) for n in range(40)]
    dialog = RecordingsDialog(page.desk, paths, page)
    qtbot.addWidget(dialog)
    dialog.show()
    qtbot.waitUntil(lambda: dialog._reading.done >= 2)
    assert dialog._reading.said().startswith("Reading ")
    dialog.waiting.cancel.click()
    qtbot.waitUntil(lambda: not dialog.background.busy)
    assert 2 <= dialog.model.rowCount() < 40
    assert f"stopped, {40 - dialog.model.rowCount()} not read" in dialog.counts.text()
    assert dialog.main.isEnabled()


def test_the_window_stays_alive_while_recordings_are_read(page: FlightsPage, tmp_path: Path, qtbot) -> None:
    long_day = flight(Day(utc("2026-05-02T06:00")).stand(200), 300).stand(200)
    paths = []
    for n in range(3):
        path = tmp_path / f"{n}.igc"
        path.write_bytes(long_day.noisy(1, seed=n).igc(every=1))
        paths.append(path)
    dialog = RecordingsDialog(page.desk, paths, page)
    qtbot.addWidget(dialog)
    dialog.show()
    longest, last = 0.0, time.perf_counter()
    while dialog.background.busy:
        QApplication.processEvents()
        now = time.perf_counter()
        longest, last = max(longest, now - last), now
    assert dialog.model.rowCount() == 3
    assert longest < 0.25  # 0.1 s is the aim; the machine of the checks may be busy


def test_files_dropped_on_the_page_are_read(page: FlightsPage, tmp_path: Path, in_dialog: Use, qtbot) -> None:
    put(tmp_path, "a.igc", flown())

    def drop() -> None:
        data = QMimeData()
        data.setUrls([QUrl.fromLocalFile(str(tmp_path))])
        what = (Qt.DropAction.CopyAction, data, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier)
        QApplication.sendEvent(page, QDragEnterEvent(QPoint(5, 5), *what))
        assert tmp_path.name in page.drop.sheet.what
        QApplication.sendEvent(page, QDropEvent(QPointF(5, 5), *what))
        assert not page.drop.sheet.isVisible()
        QApplication.processEvents()

    used: list[str] = []

    def look(dialog: QDialog) -> None:
        assert isinstance(dialog, RecordingsDialog)
        qtbot.waitUntil(lambda: not dialog.background.busy)
        used.extend(becomes(dialog))

    in_dialog(drop, look)
    assert used == ["flight"]


def test_chosen_files_and_folders(
    page: FlightsPage, tmp_path: Path, in_dialog: Use, qtbot, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = put(tmp_path, "a.igc", flown())
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", lambda *_args: ([str(path)], ""))
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_args: str(tmp_path))

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RecordingsDialog)
        qtbot.waitUntil(lambda: not dialog.background.busy)
        dialog.main.click()

    before = len(page.desk.bench.flights())
    in_dialog(page.read.click, enter)
    assert len(page.desk.bench.flights()) == before + 1
    selected = page.flight()
    assert selected is not None
    assert selected.recordings

    def look(dialog: QDialog) -> None:
        assert isinstance(dialog, RecordingsDialog)
        qtbot.waitUntil(lambda: not dialog.background.busy)
        assert becomes(dialog) == ["duplicate"]

    in_dialog(page.acts.read_folder, look)


def test_everything_has_a_name_and_can_be_hit(read: Read, tmp_path: Path) -> None:
    dialog = read(put(tmp_path, "a.igc", flown()), put(tmp_path, "b.igc", flown(), date_line=""))
    check_controls(dialog)


def test_the_list_has_the_focus_once_it_is_read(read: Read, tmp_path: Path) -> None:
    dialog = read(put(tmp_path, "a.igc", flown()))
    assert dialog.focusWidget() is dialog.table
