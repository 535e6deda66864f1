"""Logging an event in the window: what it opens stands there before it is written, and nothing else is written."""

from collections.abc import Callable
from datetime import date

import pytest
from desk_steps import item_named
from PySide6.QtCore import Qt

from kitlog.desktop.service_page.event_dialog import EventDialog
from kitlog.desktop.window import Window
from kitlog.workbench.workbench import Workbench

Open = Callable[[str], EventDialog]


@pytest.fixture
def open_on(window: Window, qtbot) -> Open:
    def opened(name: str) -> EventDialog:
        item = item_named(window.desk.bench, name)
        dialog = EventDialog(window.desk, item.id, window)
        qtbot.addWidget(dialog)
        dialog.show()
        return dialog

    return opened


def ticked(dialog: EventDialog, bench: Workbench) -> set[str]:
    return {item.name for item in bench.items() if item.id in dialog.struck.ticked()}


def offered(dialog: EventDialog, bench: Workbench) -> set[str]:
    return {item.name for item in bench.items() if item.id in dialog.struck.ticks}


def test_nothing_is_proposed_before_it_is_said_what_happened(open_on: Open) -> None:
    dialog = open_on("Wing A")
    assert dialog.focusWidget() is dialog.kind
    assert not dialog.main.isEnabled()
    assert dialog.struck.ticked() == ()


def test_what_was_flown_last_is_offered_and_the_usual_ticked(open_on: Open, demo_bench: Workbench) -> None:
    dialog = open_on("Wing A")
    dialog.kind.choose("tree")
    assert offered(dialog, demo_bench) == {"Wing A", "Harness A", "Reserve A", "Helmet A"}
    assert ticked(dialog, demo_bench) == {"Wing A", "Harness A"}
    dialog.day.put(date(2026, 4, 12))  # that day the other wing was flown
    assert {"Wing A", "Wing B", "Harness B"} <= ticked(dialog, demo_bench)


def test_what_is_fitted_to_it_is_proposed_whatever_was_flown(open_on: Open, demo_bench: Workbench) -> None:
    harness, reserve = (item_named(demo_bench, name) for name in ("Harness B", "Reserve B"))
    assert reserve.fitted_to == harness.id
    dialog = open_on("Harness B")
    dialog.kind.choose("water")
    assert {"Harness B", "Reserve B"} <= ticked(dialog, demo_bench)
    dialog.kind.choose("tree")
    assert reserve.id in dialog.struck.ticks
    assert reserve.id not in dialog.struck.ticked()
    asked = dialog.struck.ticks[reserve.id].accessibleDescription()
    assert asked == "Reserve B is fitted to Harness B: tick it if it was struck too."


def test_what_is_fitted_to_something_added_comes_along(open_on: Open, demo_bench: Workbench) -> None:
    dialog = open_on("Wing A")
    dialog.kind.choose("water")
    harness = item_named(demo_bench, "Harness B")
    assert harness.id not in dialog.struck.ticks
    dialog.more.choose(harness.id)
    dialog.more.activated.emit(dialog.more.currentIndex())
    assert {"Harness B", "Reserve B"} <= ticked(dialog, demo_bench)


def test_what_it_opens_is_told_and_only_that_is_written(open_on: Open, demo_bench: Workbench) -> None:
    before = len(demo_bench.rules())
    dialog = open_on("Reserve A")
    dialog.kind.choose("reserve thrown")
    reserve = item_named(demo_bench, "Reserve A").id
    told = dialog.struck.ticks[reserve].accessibleDescription()
    assert "a stop until it is done (new rule, from the starters" in told
    for item_id, tick in dialog.struck.ticks.items():
        tick.setChecked(item_id == reserve)
    dialog.note.setPlainText("At 300 m.")
    dialog.accept()
    assert not dialog.isVisible()
    assert (demo_bench.events()[-1].item_id, demo_bench.events()[-1].note) == (reserve, "At 300 m.")
    assert len(demo_bench.rules()) == before + 1
    demo_bench.undo()
    assert len(demo_bench.rules()) == before


def test_another_thing_can_be_added(open_on: Open, demo_bench: Workbench) -> None:
    dialog = open_on("Wing A")
    dialog.kind.choose("helmet blow")
    helmet = item_named(demo_bench, "Helmet B")
    assert helmet.id not in dialog.struck.ticks
    dialog.more.choose(helmet.id)
    dialog.more.activated.emit(dialog.more.currentIndex())
    assert helmet.id in dialog.struck.ticked()
    assert dialog.more.chosen() == ""


def test_without_a_tick_it_waits(open_on: Open) -> None:
    dialog = open_on("Wing A")
    dialog.kind.choose("line cut")
    assert dialog.main.isEnabled()
    for tick in dialog.struck.ticks.values():
        tick.setChecked(False)
    assert not dialog.main.isEnabled()
    assert dialog.reason.text()


def test_a_day_to_come_is_refused_in_the_dialog(open_on: Open, demo_bench: Workbench) -> None:
    before = demo_bench.events()
    dialog = open_on("Wing A")
    dialog.kind.choose("line cut")
    dialog.day.put(date(2027, 1, 1))
    dialog.accept()
    assert dialog.isVisible()
    assert "2027" in dialog.wrong()
    assert demo_bench.events() == before


def test_by_keys_alone(open_on: Open, demo_bench: Workbench, qtbot) -> None:
    dialog = open_on("Wing A")
    qtbot.keyClicks(dialog.kind, "Line cut")
    assert dialog.kind.chosen() == "line cut"
    first = next(iter(dialog.struck.ticks.values()))
    first.setFocus()
    qtbot.keyClick(first, Qt.Key.Key_Space)
    qtbot.keyClick(first, Qt.Key.Key_Space)
    qtbot.keyClick(dialog, Qt.Key.Key_Return)
    assert [event.kind for event in demo_bench.events()[-1:]] == ["line cut"]


def test_no_label_is_cut(open_on: Open) -> None:
    dialog = open_on("Wing A")
    for number in range(dialog.kind.count()):
        dialog.kind.setCurrentIndex(number)
        assert dialog.kind.shown_text() == dialog.kind.currentText()


def test_something_else_wants_a_note(open_on: Open) -> None:
    dialog = open_on("Wing A")
    dialog.kind.choose("other")
    assert not dialog.main.isEnabled()
    dialog.note.setPlainText("Left in the hot car.")
    assert dialog.main.isEnabled()
