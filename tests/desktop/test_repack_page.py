"""What a pilot does on the page Repack, through the window and on a real data file."""

import time
from collections.abc import Callable
from pathlib import Path

import pytest
from desk_steps import Key, check_controls, outing_of, repack_page, row_of, stand_on, ticks_of, work_on
from PySide6.QtCore import QPoint, QRectF, Qt
from PySide6.QtWidgets import QApplication

from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.repack_page.row_paint import box_rect
from kitlog.desktop.repack_page.rows import RowKind
from kitlog.desktop.scheme import Scheme, lay_over
from kitlog.desktop.window import Window
from kitlog.kit.kinds import Zone
from kitlog.outing.outing import Outing, OwnLine
from kitlog.outing.ticks import Step
from kitlog.packing.assess import assess
from kitlog.paint.mark import Mark
from kitlog.workbench import reads
from kitlog.workbench.workbench import Workbench


def test_without_an_outing_the_page_says_how_to_begin(show: Callable[..., Window], empty_bench: Workbench) -> None:
    page = repack_page(show(empty_bench))
    assert page.empty.buttons[0].words == "New outing"
    assert QApplication.focusWidget() is page.empty.buttons[0]
    assert page.selected() == {"repack": 0}


def test_an_outing_without_kit_can_be_opened_in_every_step(
    show: Callable[..., Window], empty_bench: Workbench, qtbot
) -> None:
    day = empty_bench.now().date()
    empty_bench.save_outing(Outing(name="bare", flight_types=("ridge",), first_day=day, last_day=day))
    page = repack_page(show(empty_bench))
    for step in Step:
        page.open_step(step)
        page.grab()
    page.open_step(Step.STOW)
    assert all(row.kind is not RowKind.LINE for row in page.list.rows.rows)
    for key in (Key.Key_Space, Key.Key_M, Key.Key_Down, Key.Key_End):
        qtbot.keyClick(page.list, key)
    assert ticks_of(empty_bench) == {}


def test_the_first_step_lists_every_pocket(window: Window) -> None:
    page = repack_page(window, Step.EMPTY)
    wanted = [check.id for check in window.desk.bench.library.checks if check.moment == "empty"]
    assert sorted(row.key for row in page.list.rows.rows if row.key) == sorted(wanted)


def test_space_ticks_and_the_tick_survives_a_new_window(
    window: Window, show: Callable[..., Window], open_file: Callable[[Path], Workbench], qtbot
) -> None:
    page = repack_page(window, Step.STOW)
    row = stand_on(page, "Helmet B")
    assert not row.ticked
    qtbot.keyClick(page.list, Key.Key_Space)
    assert row_of(page, "Helmet B").ticked
    path = window.desk.path
    window.close()
    again = repack_page(show(open_file(path)), Step.STOW)
    assert row_of(again, "Helmet B").ticked
    tick = again.desk.bench.ticks(again.outing_id)[0]
    assert (tick.step, tick.who, tick.at) == (Step.STOW, again.desk.bench.who, again.desk.bench.now())


def test_space_again_takes_the_tick_away_and_undo_brings_it_back(window: Window, qtbot) -> None:
    page = repack_page(window, Step.LAY_OUT)
    stand_on(page, "Boots")
    qtbot.keyClick(page.list, Key.Key_Space)
    qtbot.keyClick(page.list, Key.Key_Space)
    assert not row_of(page, "Boots").ticked
    window.acts.undo()
    assert row_of(page, "Boots").ticked
    window.acts.undo()
    assert ticks_of(window.desk.bench) == {}


def test_a_tick_does_not_assess_again(window: Window, qtbot, monkeypatch: pytest.MonkeyPatch) -> None:
    page = repack_page(window, Step.STOW)
    window.desk.assessment()
    qtbot.wait(120)
    calls: list[int] = []

    def counted(*given: object) -> object:
        calls.append(1)
        return assess(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(reads, "assess", counted)
    stand_on(page, "Boots")
    qtbot.keyClick(page.list, Key.Key_Space)
    qtbot.wait(60)
    assert row_of(page, "Boots").ticked
    assert calls == []


def test_the_arrow_keys_stand_on_lines_alone(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    qtbot.keyClick(page.list, Key.Key_Home)
    met = []
    able = [row.title for row in page.list.rows.rows if row.can_stand]
    for _step in range(len(able)):
        row = page.current()
        assert row is not None
        met.append(row.title)
        qtbot.keyClick(page.list, Key.Key_Down)
    assert met == able
    qtbot.keyClick(page.list, Key.Key_Home)
    first = page.current()
    assert first is not None
    assert first.title == able[0]


def test_after_a_change_of_step_the_keys_stand_on_a_line(window: Window, qtbot) -> None:
    page = repack_page(window, Step.EMPTY)
    assert QApplication.focusWidget() is page.list
    for step in (Step.CHARGE, Step.LAY_OUT, Step.EMPTY):
        page.open_step(step)
        row = page.current()
        assert row is not None
        qtbot.keyClick(page.list, Key.Key_Space)
        assert (step, row.key) in ticks_of(window.desk.bench)
    page.open_step(Step.CLOSE)
    assert page.drawing.selected is None


def test_the_strip_counts_and_keeps_each_step_open_to_all(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    lines = len(page.list.rows.rows) - sum(row.kind is RowKind.HEAD for row in page.list.rows.rows)
    assert page.strip.tabs[Step.STOW].accessibleName() == f"4. Stow: 0 of {lines}"
    stand_on(page, "Helmet B")
    qtbot.keyClick(page.list, Key.Key_Space)
    assert page.strip.tabs[Step.STOW].accessibleName() == f"4. Stow: 1 of {lines}"
    page.strip.tabs[Step.CLOSE].setFocus()
    qtbot.keyClick(page.strip.tabs[Step.CLOSE], Key.Key_Space)
    assert page.step is Step.CLOSE
    page.acts.previous_step()
    assert page.step is Step.STOW
    page.acts.next_step()
    assert page.step is Step.CLOSE


def test_a_press_on_the_box_ticks_and_a_press_beside_it_does_not(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    stand_on(page, "Phone")
    rect = QRectF(page.list.visualRect(page.list.currentIndex()))
    beside = QPoint(round(rect.center().x()), round(rect.center().y()))
    qtbot.mouseClick(page.list.viewport(), Qt.MouseButton.LeftButton, pos=beside)
    assert not row_of(page, "Phone").ticked
    qtbot.mouseClick(page.list.viewport(), Qt.MouseButton.LeftButton, pos=box_rect(rect).center().toPoint())
    assert row_of(page, "Phone").ticked
    assert min(box_rect(rect).width(), box_rect(rect).height()) >= 28


def test_charging_shows_how_long_each_device_lasts(window: Window, qtbot) -> None:
    page = repack_page(window, Step.CHARGE)
    rows = page.list.rows.rows
    assert rows[0].title == "What to charge, most important first"
    assert row_of(page, "Handheld radio").mark is Mark.LOOK
    assert any("left / " in text.text() for text in page.evening.findChildren(Paragraph))
    stand_on(page, "Phone")
    qtbot.keyClick(page.list, Key.Key_Space)
    assert "1 of" in page.strip.tabs[Step.CHARGE].accessibleName()
    page.open_step(Step.STOW)
    assert row_of(page, "Phone").right_note == "full"
    assert row_of(page, "Flight computer").right_note == "to charge"


def test_an_own_line_is_ticked_by_its_text(window: Window, qtbot) -> None:
    bench = window.desk.bench
    outing = outing_of(bench)
    own = OwnLine(text="letter for Ulla", mass_g=20, zone=Zone.SIDE_POCKET)
    bench.save_outing(outing.model_copy(update={"own_lines": (own,)}))
    page = repack_page(window, Step.STOW)
    assert page.list.stand_on_key("letter for Ulla")
    qtbot.keyClick(page.list, Key.Key_Space)
    assert (Step.STOW, "letter for Ulla") in ticks_of(bench)


@pytest.mark.parametrize("size", [(1280, 800), (1024, 600), (820, 600)])
@pytest.mark.parametrize("scheme", [Scheme.LIGHT, Scheme.DARK])
def test_every_control_has_a_name_and_can_be_hit(
    show: Callable[..., Window], demo_bench: Workbench, qapp: QApplication, size: tuple[int, int], scheme: Scheme
) -> None:
    lay_over(scheme, qapp)
    work_on(demo_bench, "on foot")
    page = repack_page(show(demo_bench, "repack", size))
    for step in Step:
        page.open_step(step)
        for _pass in range(3):  # rows that wrap settle their height in the second pass of the layout
            qapp.processEvents()
        check_controls(page)


def test_every_row_is_spoken_with_the_state_of_its_box(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    stand_on(page, "Helmet B")
    spoken = page.list.rows.data(page.list.currentIndex(), int(Qt.ItemDataRole.AccessibleTextRole))
    assert str(spoken).startswith("not ticked, Helmet B")
    qtbot.keyClick(page.list, Key.Key_Space)
    spoken = page.list.rows.data(page.list.currentIndex(), int(Qt.ItemDataRole.AccessibleTextRole))
    assert str(spoken).startswith("ticked, Helmet B")


def test_the_keys_of_the_list_are_the_actions_of_the_menu(window: Window) -> None:
    page = repack_page(window, Step.STOW)
    page.list.setFocus()
    stand_on(page, "Helmet B")
    for action in ("repack.tick", "repack.missing", "repack.swap"):
        assert window.action_set.by_id[action].isEnabled()
        assert window.action_set.by_id[action] in page.list.actions()
    page.open_step(Step.CLOSE)
    assert not window.action_set.by_id["repack.tick"].isEnabled()


def test_opening_and_ticking_do_not_stall(show: Callable[..., Window], demo_bench: Workbench, qtbot) -> None:
    window = show(demo_bench, "kit")
    window.desk.assessment()
    repack_page(window, Step.STOW)
    page = repack_page(window)
    stand_on(page, "Phone")
    took: list[float] = []
    for _press in range(6):
        started = time.thread_time()
        qtbot.keyClick(page.list, Key.Key_Space)
        QApplication.processEvents()
        took.append(time.thread_time() - started)
    assert min(took) < 0.1  # processor time of the quietest of six: the machine may be shared
