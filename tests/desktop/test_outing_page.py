"""What a pilot does on the page Outing, through the window and on a real data file."""

import time
from collections.abc import Callable
from pathlib import Path

import pytest
from desk_steps import Key, check_controls, outing_page, work_on
from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QApplication, QWidget

from kitlog.budget.result import State, Topic
from kitlog.desktop import look
from kitlog.desktop.outing_page.power_view import PowerView
from kitlog.desktop.outing_page.weight_view import WeightView
from kitlog.desktop.scheme import Scheme, lay_over
from kitlog.desktop.window import Window
from kitlog.outing.outing import Outing
from kitlog.workbench.workbench import Workbench


def test_without_an_outing_the_page_says_how_to_begin(
    show: Callable[..., Window], empty_bench: Workbench, qtbot
) -> None:
    page = outing_page(show(empty_bench))
    assert page.first() is page.empty.buttons[0]
    assert page.empty.buttons[0].words == "New outing"
    assert QApplication.focusWidget() is page.empty.buttons[0]


def test_the_board_shows_each_topic_in_its_worst_state(window: Window) -> None:
    page = outing_page(window)
    assessment = window.desk.assessment()
    assert assessment is not None
    for topic, tile in page.board.tiles.items():
        states = {finding.state for finding in assessment.of(topic)}
        worst = next(s for s in (State.STOP, State.LOOK, State.NOT_KNOWN, State.FINE) if s in states)
        assert tile.shown is not None
        assert tile.shown.state == worst.value
        assert worst.value in tile.accessibleName()


def test_a_topic_nobody_judged_is_not_known_never_fine(show: Callable[..., Window], empty_bench: Workbench) -> None:
    day = empty_bench.now().date()
    empty_bench.save_outing(Outing(name="bare", flight_types=("ridge",), first_day=day, last_day=day))
    page = outing_page(show(empty_bench))
    shown = {topic: tile.shown.state for topic, tile in page.board.tiles.items() if tile.shown}
    assert shown[Topic.WEIGHT] == "not known"
    assert "fine" not in shown.values()


@pytest.mark.parametrize(("topic", "kind"), [(Topic.POWER, PowerView), (Topic.WEIGHT, WeightView)])
def test_a_tile_opens_its_picture_by_keyboard(window: Window, qtbot, topic: Topic, kind: type[QWidget]) -> None:
    page = outing_page(window)
    page.board.tiles[topic].setFocus()
    qtbot.keyClick(page.board.tiles[topic], Key.Key_Space)
    assert page.topic is topic
    assert page.view is not None
    picture = page.view.findChild(kind)
    assert picture is not None
    assert len(picture.accessibleDescription()) > 40


def test_arrow_keys_read_the_power_picture(window: Window, qtbot) -> None:
    page = outing_page(window)
    page.open_topic(Topic.POWER)
    assert page.view is not None
    picture = page.view.findChild(PowerView)
    assert isinstance(picture, PowerView)
    whole = picture.accessibleDescription()
    qtbot.keyClick(picture, Key.Key_Home)
    assert "11:00" in picture.reading()
    assert "Phone 100" in picture.reading()
    qtbot.keyClick(picture, Key.Key_End)
    assert "likely 20:00, high 01:30⁺¹" in picture.reading()
    assert picture.accessibleDescription() == picture.reading()
    qtbot.keyClick(picture, Key.Key_Escape)
    assert picture.reading() == ""
    assert picture.accessibleDescription() == whole


def test_the_pointer_reads_the_power_picture(window: Window, qtbot) -> None:
    page = outing_page(window)
    page.open_topic(Topic.POWER)
    assert page.view is not None
    picture = page.view.findChild(PowerView)
    assert isinstance(picture, PowerView)
    qtbot.mouseMove(picture, QPoint(picture.width() // 2, picture.height() // 2))
    qtbot.waitUntil(lambda: picture.cursor_at is not None)
    assert "likely" in picture.reading()


def test_arrow_keys_step_through_the_weight_ruler(window: Window, qtbot) -> None:
    page = outing_page(window)
    page.open_topic(Topic.WEIGHT)
    assert page.view is not None
    picture = page.view.findChild(WeightView)
    assert isinstance(picture, WeightView)
    qtbot.keyClick(picture, Key.Key_Right)
    assert picture.reading().startswith("Landing")
    qtbot.keyClick(picture, Key.Key_Right)
    assert picture.reading().startswith("Take-off")


@pytest.mark.parametrize("size", [(1280, 800), (1024, 600), (820, 600)])
@pytest.mark.parametrize("scheme", [Scheme.LIGHT, Scheme.DARK])
def test_every_control_has_a_name_and_can_be_hit(
    show: Callable[..., Window], demo_bench: Workbench, qapp: QApplication, size: tuple[int, int], scheme: Scheme
) -> None:
    lay_over(scheme, qapp)
    work_on(demo_bench, "on foot")
    page = outing_page(show(demo_bench, "outing", size))
    for topic in (None, *page.board.tiles):
        page.open_topic(topic)
        page.grab()
        check_controls(page)


def test_in_a_narrow_window_the_plan_folds_behind_a_button(
    show: Callable[..., Window], demo_bench: Workbench, qtbot
) -> None:
    page = outing_page(show(demo_bench, "outing", (1024, 600)))
    assert not page.plan.isVisible()
    assert page.board.isVisible()
    qtbot.keyClick(page.plan_act, Key.Key_Space)
    assert page.plan.isVisible()
    assert not page.board.isVisible()
    assert QApplication.focusWidget() is page.plan.edit_act
    qtbot.keyClick(page.plan.board_act, Key.Key_Space)
    assert page.board.isVisible()
    focus = QApplication.focusWidget()
    assert focus is not None
    assert page.isAncestorOf(focus)


def test_tab_goes_through_the_whole_page(window: Window, qtbot) -> None:
    page = outing_page(window)
    page.open_topic(Topic.PEOPLE)
    met: set[str] = set()
    for _step in range(60):
        qtbot.keyClick(QApplication.focusWidget(), Key.Key_Tab)
        focus = QApplication.focusWidget()
        assert focus is not None
        met.add(focus.accessibleName())
    wanted = {"Edit plan", "Show the repack", *(t.accessibleName() for t in page.board.tiles.values())}
    assert wanted <= met


def test_the_page_is_built_and_opened_without_a_stall(
    show: Callable[..., Window], demo_bench: Workbench, qapp: QApplication
) -> None:
    window = show(demo_bench, "kit")
    window.desk.assessment()
    started = time.thread_time()
    page = outing_page(window)
    built_s = time.thread_time() - started
    again: list[float] = []
    for topic in (Topic.POWER, Topic.WEIGHT, Topic.KIT, Topic.PEOPLE):
        started = time.thread_time()
        page.open_topic(topic)
        again.append(time.thread_time() - started)
    assert min(again) < 0.1  # processor time of the quietest: the machine may be shared
    assert built_s < 0.3


def test_the_plan_says_that_kitlog_alarms_nobody(window: Window, open_file: Callable[[Path], Workbench]) -> None:
    page = outing_page(window)
    words = " ".join(str(w.property("text") or "") for w in page.plan.findChildren(QWidget))
    assert "kitlog alarms nobody" in words
    assert look.tokens() is not None
