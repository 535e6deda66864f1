"""What a pilot does before a season, and what stops him on a day, through the window and on a real data file."""

from datetime import date

import pytest
from desk_steps import Use
from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QApplication, QDialog

from kitlog.desktop.service_page.page import ServicePage
from kitlog.desktop.service_page.season_dialog import SeasonDialog
from kitlog.desktop.service_page.stops_dialog import StopsDialog
from kitlog.desktop.window import Window
from kitlog.workbench.workbench import Workbench

TODAY = date(2026, 5, 8)


@pytest.fixture
def page(window: Window) -> ServicePage:
    made = window.open("service")
    assert isinstance(made, ServicePage)
    return made


@pytest.fixture
def run(page: ServicePage, qtbot) -> SeasonDialog:
    dialog = SeasonDialog(page.desk, page)
    qtbot.addWidget(dialog)
    dialog.show()
    return dialog


def names(bench: Workbench) -> list[str]:
    return [line.item.name for line in bench.season_start().lines]


def go_to(run: SeasonDialog, name: str) -> None:
    while (line := run.line()) is not None and line.item.name != name:
        run.later.click()
    assert run.line() is not None


def test_one_thing_at_a_time_in_the_order_of_the_run(run: SeasonDialog, demo_bench: Workbench, qtbot) -> None:
    shown = []
    for _name in names(demo_bench):
        line = run.line()
        assert line is not None
        assert line.item.name in run.name.text()
        shown.append(line.item.name)
        qtbot.keyClick(run, Qt.Key.Key_PageDown)
    assert shown == names(demo_bench)
    assert run.line() is None
    assert "left for later" in run.name.text()
    assert run.main.words == "Close"
    assert demo_bench.undoable is None or demo_bench.undoable.code != "record.add"


def test_a_look_is_recorded_and_the_next_thing_follows(run: SeasonDialog, demo_bench: Workbench, qtbot) -> None:
    first = run.line()
    assert first is not None
    assert not any(ask.tick.isChecked() for ask in run.asks)
    assert run.main.hasFocus()
    qtbot.keyClick(run.main, Qt.Key.Key_Return)
    record = demo_bench.records()[-1]
    assert (record.item_id, record.rules, record.done_on) == (first.item.id, (), TODAY)
    following = run.line()
    assert following is not None
    assert following.item.id != first.item.id
    assert run.progress.text().startswith("2 ")


def test_the_focus_is_on_the_answer_or_on_what_it_wants(run: SeasonDialog, demo_bench: Workbench) -> None:
    for _name in names(demo_bench):
        assert run.main.hasFocus() if run.main.isEnabled() else run.asks[0].tick.hasFocus()
        run.later.click()
    assert run.main.hasFocus()


def test_what_is_ticked_is_done_by_the_look(run: SeasonDialog, demo_bench: Workbench) -> None:
    go_to(run, "Harness B")
    (ask,) = run.asks
    ask.tick.setChecked(True)
    run.note.setText("seams good")
    run.accept()
    record = demo_bench.records()[-1]
    assert (record.rules, record.remarks) == ((ask.rule_id,), "seams good")
    assert "Harness B" not in names(demo_bench)


def test_a_thing_looked_at_since_wants_a_tick(run: SeasonDialog, demo_bench: Workbench) -> None:
    harness = next(item.id for item in demo_bench.items() if item.name == "Harness A")
    demo_bench.looked_at(harness)
    go_to(run, "Harness A")
    assert not run.main.isEnabled()
    assert run.reason.text()
    run.asks[0].tick.setChecked(True)
    assert run.main.isEnabled()


def test_another_day_asks_other_things(run: SeasonDialog) -> None:
    run.since.put(date(2026, 5, 1))
    line = run.line()
    assert line is not None
    assert line.item.name == "Wing A"
    run.since.put(None)
    assert run.line() is None
    assert run.name.text() == "Enter since when a look counts."


def test_what_stops_follows_the_day(page: ServicePage, demo_bench: Workbench, in_dialog: Use) -> None:
    def ask(dialog: QDialog) -> None:
        assert isinstance(dialog, StopsDialog)
        tonight = [row.accessibleName() for row in dialog.rows]
        assert any(text.startswith("Helmet A: replace after a blow, stop") for text in tonight)
        assert not any(text.startswith("First aid kit") for text in tonight)
        dialog.day.put(date(2026, 9, 5))
        later = [row.accessibleName() for row in dialog.rows]
        assert any(text.startswith("First aid kit: contents and dates, look") for text in later)
        assert "foreseen" in dialog.note.text()
        assert any(text.startswith("Wing A: full inspection, look") for text in later)
        dialog.law.setChecked(True)
        law = [row.accessibleName() for row in dialog.rows]
        assert any(text.startswith("Wing A: full inspection, stop") for text in law)
        dialog.day.put(None)
        assert dialog.rows == []
        assert dialog.said.text() == "Enter a day."

    in_dialog(page.acts.show_stops, ask)
    assert demo_bench.undoable is None or demo_bench.undoable.code == "demo.fill"


def test_an_outing_that_is_demanded_asks_the_law(page: ServicePage, demo_bench: Workbench, qtbot) -> None:
    outing = demo_bench.current_outing()
    assert outing is not None
    demo_bench.save_outing(outing.model_validate({**outing.model_dump(), "demanded": ("law",)}))
    dialog = StopsDialog(page.desk, page)
    qtbot.addWidget(dialog)
    assert not dialog.law.isChecked()
    dialog.day.put(outing.first_day)
    assert dialog.law.isChecked()
    assert outing.name in dialog.note.text()


def test_an_untouched_thing_is_left_without_being_asked(run: SeasonDialog, demo_bench: Workbench, qtbot) -> None:
    while not run.asks:
        run.later.click()
    run.asks[0].tick.setChecked(True)
    run.main.click()
    assert run.line() is not None
    QApplication.processEvents()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert not run.changed()
    qtbot.keyClick(run, Qt.Key.Key_Escape)
    assert not run.isVisible()
