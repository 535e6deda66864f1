"""Two on one data file: what another process saw of a battery stands everywhere in this window, or nowhere."""

from collections.abc import Callable
from pathlib import Path

import pytest
from desk_steps import item_named, outing_of, outing_page, repack_page, row_of, stand_on
from power_plan_steps import BANK, PHONE, RADIO, Open, page_of
from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QApplication, QLabel

from kitlog.budget.result import Topic
from kitlog.desktop.kit_page.page import KitPage
from kitlog.desktop.repack_page.page import RepackPage
from kitlog.desktop.window import Window
from kitlog.outing.ticks import Step
from kitlog.workbench.workbench import Workbench

SEEN = {PHONE: 57.0, BANK: 35.0, RADIO: 40.0}


@pytest.fixture
def other(power_bench: Workbench, open_file: Callable[[Path], Workbench]) -> Workbench:
    """Another process on the same file; nothing of the plan of the power is told, and what was seen is known."""
    power_bench.note_on_hand({item_named(power_bench, name).id: pct for name, pct in SEEN.items()})
    return open_file(power_bench.path)


def see(bench: Workbench, pct: float, *names: str) -> None:
    bench.note_on_hand({item_named(bench, name).id: pct for name in names})


def come_to_front(window: Window) -> None:
    assert window.isActiveWindow()
    QApplication.sendEvent(window, QEvent(QEvent.Type.ActivationChange))


def charging(window: Window, qtbot) -> RepackPage:
    page = repack_page(window, Step.CHARGE)
    qtbot.waitUntil(lambda: planned(page), timeout=20_000)
    return page


def planned(page: RepackPage) -> bool:
    return page.planner.plan is not None and not page.planner.busy


def said_of_charging(page: RepackPage, name: str) -> tuple[str, float | None, float | None]:
    """The charge on hand of a thing in its row, in the field and in the plan."""
    stand_on(page, name)
    assert page.planner.plan is not None
    line = next(line for line in page.planner.plan.lines if line.thing.item.name == name)
    row = row_of(page, name)
    return row.right_note or row.right, page.charge_head.on_hand.number(), line.on_hand.seen_pct


def texts(widget: object) -> str:
    return " | ".join(label.text() for label in widget.findChildren(QLabel))  # type: ignore[attr-defined]


def test_the_step_of_charging_follows_when_the_window_comes_to_the_front(
    window: Window, other: Workbench, qtbot
) -> None:
    page = charging(window, qtbot)
    see(other, 17, PHONE)
    come_to_front(window)
    qtbot.waitUntil(lambda: planned(page), timeout=20_000)
    row, field, of_plan = said_of_charging(page, PHONE)
    assert "17" in row
    assert (field, of_plan) == (17, 17)


def test_what_is_read_while_the_window_stays_in_front_is_shown_everywhere(
    window: Window, other: Workbench, qtbot
) -> None:
    page = charging(window, qtbot)
    stand_on(page, RADIO)
    see(other, 17, PHONE)
    stand_on(page, PHONE)
    qtbot.waitUntil(lambda: "17" in said_of_charging(page, PHONE)[0] and planned(page), timeout=20_000)
    assert said_of_charging(page, PHONE)[1:] == (17, 17)
    assert window.desk.bench.look_again() is False


def test_the_tile_of_the_power_follows(window: Window, other: Workbench) -> None:
    page = outing_page(window)
    page.open_topic(Topic.POWER)
    assert page.view is not None
    assert "last seen with 57\u00a0%" in texts(page.view)
    see(other, 17, PHONE)
    come_to_front(window)
    assert "last seen with 17\u00a0%" in texts(page.view)
    assert "57\u00a0%" not in texts(page.view)


def test_the_details_in_kit_follow(window: Window, other: Workbench, qtbot) -> None:
    page = window.open("kit")
    assert isinstance(page, KitPage)
    page.show_this(item_named(window.desk.bench, PHONE).id)
    qtbot.waitUntil(lambda: "57\u00a0%" in texts(page))
    see(other, 17, PHONE)
    come_to_front(window)
    qtbot.waitUntil(lambda: "17\u00a0%" in texts(page) and "57\u00a0%" not in texts(page))


def test_a_page_that_is_not_shown_follows_too(window: Window, other: Workbench, qtbot) -> None:
    page = charging(window, qtbot)
    window.open("flights")
    see(other, 17, PHONE)
    come_to_front(window)
    window.open("repack")
    qtbot.waitUntil(lambda: planned(page), timeout=20_000)
    assert said_of_charging(page, PHONE)[1:] == (17, 17)


def test_the_open_power_plan_follows_when_the_program_comes_to_the_front(
    plan: Open, window: Window, other: Workbench
) -> None:
    page = page_of(plan(), PHONE)
    assert not window.isActiveWindow()
    see(other, 17, PHONE)
    application = QApplication.instance()
    assert isinstance(application, QApplication)
    application.applicationStateChanged.emit(Qt.ApplicationState.ApplicationActive)
    assert "17\u00a0%" in texts(page)


def test_a_window_that_is_closed_looks_at_nothing(window: Window, other: Workbench, qtbot) -> None:
    bench = window.desk.bench
    see(other, 17, PHONE)
    bench.items()
    window.close()
    bench.close()
    faults: list[object] = []
    window.desk.faulted.connect(faults.append)
    QApplication.processEvents()
    assert faults == []


def test_the_open_power_plan_follows(plan: Open, window: Window, other: Workbench, qtbot) -> None:
    dialog = plan()
    page = page_of(dialog, PHONE)
    assert "57\u00a0%" in texts(page)
    see(other, 17, PHONE)
    window.desk.bench.items()
    qtbot.waitUntil(lambda: "17\u00a0%" in texts(page))
    assert "57\u00a0%" not in texts(page)
    assert outing_of(window.desk.bench).starts == ()
