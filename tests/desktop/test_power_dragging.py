"""Phases dragged in the power picture, by the pointer and by keys, on a real data file."""

from collections.abc import Callable
from dataclasses import replace
from datetime import time as clock

import pytest
from desk_steps import Key, outing_of, outing_page
from power_topic_steps import at, bands, drawn, picture_of, spread_shown, topic_of
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QWidget

from kitlog.budget.result import Topic
from kitlog.desktop.outing_page.page import OutingPage
from kitlog.desktop.outing_page.plan_words import hm_text, home_texts
from kitlog.desktop.outing_page.power_words import power_picture
from kitlog.desktop.outing_page.tile_words import tile_words
from kitlog.desktop.parts.text import Text
from kitlog.desktop.window import Window
from kitlog.outing.outing import Outing
from kitlog.workbench.workbench import Workbench


@pytest.fixture
def page(window: Window) -> OutingPage:
    opened = outing_page(window)
    opened.open_topic(Topic.POWER)
    return opened


def hours(outing: Outing) -> list[tuple[float, float, float]]:
    return [(round(p.low_h, 4), round(p.likely_h, 4), round(p.high_h, 4)) for p in outing.phases]


def test_an_edge_is_dragged_and_let_go_in_one_step_to_undo(page: OutingPage, window: Window, qtbot) -> None:
    drawn(page, qtbot)
    bench, picture = window.desk.bench, picture_of(page)
    before = outing_of(bench)
    flight_end = picture.picture.edges[2]
    place = flight_end + 0.04
    qtbot.mousePress(picture, Qt.MouseButton.LeftButton, pos=at(picture, flight_end))
    qtbot.mouseMove(picture, at(picture, place - 0.02))
    qtbot.mouseMove(picture, at(picture, place))
    assert picture.moving
    assert outing_of(bench) == before
    assert bench.undoable is None or bench.undoable.code != "outing.edit"
    assert not spread_shown(page)
    assert topic_of(page).first.text().startswith("Flight: ")
    assert picture.picture.edges[2] == pytest.approx(place, abs=0.01)
    shown = picture.picture
    qtbot.mouseRelease(picture, Qt.MouseButton.LeftButton, pos=at(picture, place))
    after = outing_of(bench)
    assert hours(after)[0] == hours(before)[0]
    low, likely, high = hours(after)[1]
    more = likely - 4.5
    assert more > 0.25
    assert round(likely * 12) == pytest.approx(likely * 12, abs=1e-3)
    assert (low, high) == (pytest.approx(2.5 + more, abs=1e-3), pytest.approx(6.0 + more, abs=1e-3))
    assessment = window.desk.assessment()
    assert assessment is not None
    assert power_picture(assessment, window.desk.names()) == replace(
        shown, span_h=0.0, ends_px=0.0
    )  # what was seen is what is then assessed
    said = tuple(hm_text(hours) for hours in (likely, low, high))
    assert window.status.undo_act.words == "Undo: flight {} (low {}, high {})".format(*said)
    bench.undo()
    assert outing_of(bench) == before


def test_the_scale_of_the_beginning_holds_until_it_is_let_go(page: OutingPage, window: Window, qtbot) -> None:
    """56 pixels are as many hours at the end of a drag as at its beginning, there and back."""
    bench, picture = window.desk.bench, picture_of(page)
    drawn(page, qtbot)
    edges, total_h, wide = picture.picture.edges, picture.picture.lasts_h, bands(picture).width()
    start = at(picture, edges[2])
    qtbot.mousePress(picture, Qt.MouseButton.LeftButton, pos=start)
    for more in (28, 56, 140, 56):
        qtbot.mouseMove(picture, start + QPoint(more, 0))
    draft = topic_of(page).draft
    assert draft is not None
    assert draft.outing.phases[1].likely_h == pytest.approx(4.5 + 56 / wide * total_h, abs=2.5 / 60)
    assert bands(picture).width() == pytest.approx(wide)
    assert picture.picture.edges[:2] == pytest.approx(edges[:2])
    assert picture.picture.edges[2] == pytest.approx(edges[2] + 56 / wide, abs=0.01)
    assert picture.picture.edges[-1] > 1
    qtbot.mouseRelease(picture, Qt.MouseButton.LeftButton, pos=start + QPoint(56, 0))
    assert hours(outing_of(bench))[1][1] == pytest.approx(draft.outing.phases[1].likely_h, abs=1e-3)
    assert picture_of(page).picture.edges[-1] == pytest.approx(1.0)


def test_past_the_end_of_the_bands_the_axis_grows(page: OutingPage, qtbot) -> None:
    picture = picture_of(page)
    start = at(picture, picture.picture.edges[2])
    qtbot.mousePress(picture, Qt.MouseButton.LeftButton, pos=start)
    qtbot.mouseMove(picture, start + QPoint(round(bands(picture).width()), 0))
    assert picture.picture.edges[2] == pytest.approx(1.0)
    qtbot.mouseMove(picture, start)
    assert picture.picture.edges[-1] == pytest.approx(1.0)
    qtbot.keyClick(picture, Key.Key_Escape)
    assert picture.picture.span_h == 0


def test_escape_gives_it_up(page: OutingPage, window: Window, qtbot) -> None:
    drawn(page, qtbot)
    bench, picture = window.desk.bench, picture_of(page)
    before, undoable = outing_of(bench), bench.undoable
    edges = picture.picture.edges
    qtbot.mousePress(picture, Qt.MouseButton.LeftButton, pos=at(picture, edges[1]))
    qtbot.mouseMove(picture, at(picture, edges[1] + 0.1))
    assert picture.picture.edges != edges
    qtbot.keyClick(picture, Key.Key_Escape)
    qtbot.mouseRelease(picture, Qt.MouseButton.LeftButton, pos=at(picture, 0.9))
    assert picture.picture.edges == edges
    assert spread_shown(page)
    assert outing_of(bench) == before
    assert bench.undoable == undoable


def test_a_press_that_moves_nothing_writes_nothing(page: OutingPage, window: Window, qtbot) -> None:
    bench, picture = window.desk.bench, picture_of(page)
    undoable = bench.undoable
    qtbot.mouseClick(picture, Qt.MouseButton.LeftButton, pos=at(picture, picture.picture.edges[2]))
    assert bench.undoable == undoable


def test_keys_choose_move_and_keep(page: OutingPage, window: Window, qtbot) -> None:
    bench, picture = window.desk.bench, picture_of(page)
    before = outing_of(bench)
    picture.setFocus()
    qtbot.keyClick(picture, Key.Key_BracketRight)
    qtbot.keyClick(picture, Key.Key_BracketRight)
    assert topic_of(page).first.text().startswith("Flight: 4:30")
    for _step in range(3):
        qtbot.keyClick(picture, Key.Key_Left, Qt.KeyboardModifier.ControlModifier)
    assert topic_of(page).first.text().startswith("Flight: 4:15")
    assert "Enter keeps it" in topic_of(page).second.text()
    assert outing_of(bench) == before
    qtbot.keyClick(picture, Key.Key_Return)
    assert hours(outing_of(bench))[1] == (2.25, 4.25, 5.75)
    again = picture_of(page)
    assert QApplication.focusWidget() is again
    assert again.edge == 1
    qtbot.keyClick(again, Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    qtbot.keyClick(again, Key.Key_Escape)
    assert hours(outing_of(bench))[1] == (2.25, 4.25, 5.75)
    assert not again.moving
    bench.undo()
    assert outing_of(bench) == before


def test_low_and_high_that_move_with_it_are_said_by_the_keys_too(
    page: OutingPage, window: Window, qtbot, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Walk out, 0:30 to 2:00, likely 1:00: seven steps below it the low duration is 0, not what it was."""
    bench, picture, told = window.desk.bench, picture_of(page), list[str]()
    monkeypatch.setattr(
        "kitlog.desktop.outing_page.power_topic.QAccessible.updateAccessibility",
        lambda event: told.append(event.message()),
    )
    picture.setFocus()
    for _step in range(3):
        qtbot.keyClick(picture, Key.Key_BracketRight)
    assert "(low 0:30, high 2:00)" in topic_of(page).first.text()
    for _step in range(7):
        qtbot.keyClick(picture, Key.Key_Left, Qt.KeyboardModifier.ControlModifier)
    assert topic_of(page).first.text().startswith("Walk out: 0:25\u00a0h likely (low now 0:00, high now 1:25)")
    assert "low now 0:00, high now 1:25" in told[-1]
    qtbot.keyClick(picture, Key.Key_Return)
    assert hours(outing_of(bench))[2] == (0.0, pytest.approx(5 / 12, abs=1e-3), pytest.approx(17 / 12, abs=1e-3))
    assert window.status.undo_act.words == "Undo: walk out 0:25 (low 0:00, high 1:25)"


def test_tile_and_phases_follow_the_edge_and_the_rest_is_greyed(page: OutingPage, window: Window, qtbot) -> None:
    bench, picture = window.desk.bench, picture_of(page)
    old = page.board.tiles[Topic.POWER].shown
    picture.setFocus()
    qtbot.keyClick(picture, Key.Key_BracketRight)
    qtbot.keyClick(picture, Key.Key_BracketRight)
    for _step in range(18):
        qtbot.keyClick(picture, Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    draft = topic_of(page).draft
    assert draft is not None
    names, whole = window.desk.names(), bench.assess(draft.outing)
    expected = tile_words(Topic.POWER, whole, names)

    def shown() -> tuple[object, ...]:
        words = page.board.tiles[Topic.POWER].shown
        assert words is not None
        return words.figure, words.state, words.lines

    qtbot.waitUntil(lambda: shown() == (expected.figure, expected.state, expected.lines))
    assert old is not None
    assert shown() != (old.figure, old.state, old.lines)
    assert topic_of(page).state.accessibleName() == expected.state
    said = [text.text() for text in page.plan.findChildren(Text) if text.isVisible()]
    home = home_texts(draft.outing)
    assert home is not None
    assert {"6:00", home[0], home[1], home[2]} <= set(said)
    behind = [tile for tile in page.board.tiles.values() if tile.graphicsEffect() is not None]
    assert {tile.topic for tile in behind} == set(page.board.tiles) - {Topic.POWER}
    assert all("before the move" in tile.accessibleDescription() for tile in behind)
    qtbot.keyClick(picture, Key.Key_Escape)
    assert page.board.tiles[Topic.POWER].shown == old
    assert not any(tile.graphicsEffect() for tile in page.board.tiles.values())
    assert "4:30" in [text.text() for text in page.plan.findChildren(Text) if text.isVisible()]


def test_a_move_that_is_kept_leaves_nothing_grey(page: OutingPage, window: Window, qtbot) -> None:
    picture = picture_of(page)
    picture.setFocus()
    qtbot.keyClick(picture, Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: page.board.tiles[Topic.WEIGHT].graphicsEffect() is not None)
    qtbot.keyClick(picture, Key.Key_Return)
    assert not any(part.graphicsEffect() for part in page.findChildren(QWidget))


def test_leaving_the_picture_with_the_keys_gives_the_move_up(page: OutingPage, window: Window, qtbot) -> None:
    bench, picture = window.desk.bench, picture_of(page)
    before = outing_of(bench)
    picture.setFocus()
    qtbot.keyClick(picture, Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    assert picture.moving
    qtbot.keyClick(picture, Key.Key_Tab)
    assert not picture.moving
    assert outing_of(bench) == before


def test_a_plan_without_a_start_says_the_hours_in_all(
    show: Callable[..., Window], demo_bench: Workbench, qtbot
) -> None:
    plan = outing_of(demo_bench)
    demo_bench.save_outing(plan.model_copy(update={"starts_at": None}))
    opened = outing_page(show(demo_bench))
    opened.open_topic(Topic.POWER)
    picture_of(opened).setFocus()
    qtbot.keyClick(picture_of(opened), Key.Key_BracketLeft)
    assert "9:00 h in all" in topic_of(opened).first.text()
    assert plan.starts_at == clock(11)
