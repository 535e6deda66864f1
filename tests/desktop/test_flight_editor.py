"""Entering a flight: times, airtime and zone that follow from each other, and what is not at hand today."""

from datetime import date

import pytest
from desk_steps import Use
from PySide6.QtWidgets import QDialog

from kitlog.desktop.flights_page.flight_clock import system_zone
from kitlog.desktop.flights_page.flight_editor import FlightEditor
from kitlog.desktop.flights_page.page import FlightsPage
from kitlog.desktop.window import Window
from kitlog.kit.flights import Flight
from kitlog.kit.kinds import ItemState
from kitlog.workbench.workbench import Workbench


@pytest.fixture
def editor(window: Window, qtbot) -> FlightEditor:
    page = window.open("flights")
    assert isinstance(page, FlightsPage)
    made = FlightEditor(page.desk, None, page)
    qtbot.addWidget(made)
    made.day.put(date(2026, 5, 3))
    return made


def times(editor: FlightEditor, takeoff: str, landing: str) -> None:
    editor.takeoff.setText(takeoff)
    editor.landing.setText(landing)


def airtime(editor: FlightEditor) -> tuple[int | None, int | None]:
    return editor.hours.whole(), editor.minutes.whole()


def test_the_airtime_follows_the_times_until_it_is_typed_over(editor: FlightEditor) -> None:
    times(editor, "11:00", "13:30")
    assert airtime(editor) == (2, 30)
    editor.landing.setText("13:45")
    assert airtime(editor) == (2, 45)
    editor.minutes.put(40)
    editor.landing.setText("14:45")
    assert airtime(editor) == (2, 40)


def test_a_total_takes_no_airtime_from_two_times(editor: FlightEditor) -> None:
    editor.until.put(date(2026, 5, 5))
    times(editor, "11:00", "13:30")
    assert airtime(editor) == (None, None)


def test_no_airtime_is_asked_about(window: Window, demo_bench: Workbench, in_dialog: Use) -> None:
    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, FlightEditor)
        dialog.accept()
        assert dialog.isVisible()
        assert "no airtime" in dialog.question.what.text().casefold()

    before, page = len(demo_bench.flights()), window.open("flights")
    assert isinstance(page, FlightsPage)
    in_dialog(page.add.click, enter)
    assert len(demo_bench.flights()) == before


def test_the_zone_is_of_the_site_or_the_computer_and_never_of_another_place(
    editor: FlightEditor, demo_bench: Workbench
) -> None:
    far = Flight(id="far", on=date(2026, 5, 4), airtime_min=30, site="Far Hill", time_zone="Pacific/Auckland")
    demo_bench.add_flight(far)
    editor.site.setEditText("")
    assert editor.zone.text() == system_zone()
    editor.site.setEditText("far  hill")
    assert editor.zone.text() == "Pacific/Auckland"
    editor.zone.setText("Europe/Rome")
    editor.site.setEditText("elsewhere")
    times(editor, "11:00", "13:30")
    draft = editor.draft()
    assert draft.time_zone == "Europe/Rome"
    assert draft.takeoff_at is not None
    assert draft.takeoff_at.isoformat() == "2026-05-03T09:00:00+00:00"  # CEST is two hours ahead of UTC


def test_a_zone_that_there_is_not_is_refused(editor: FlightEditor) -> None:
    editor.zone.setText("Mars/Olympus")
    editor.accept()
    assert "Mars/Olympus" in editor.wrong()


def test_what_is_lent_today_can_have_been_flown(window: Window, demo_bench: Workbench, qtbot) -> None:
    wing = next(item for item in demo_bench.items() if item.name == "Wing A")
    demo_bench.set_state([wing.id], ItemState.LENT)
    page = window.open("flights")
    assert isinstance(page, FlightsPage)
    editor = FlightEditor(page.desk, None, page)
    qtbot.addWidget(editor)
    tick = editor.ticks[wing.id]
    assert tick.words == "Wing A (lent)"
    assert not tick.isChecked()
    assert list(editor.ticks)[-1] == wing.id
    tick.click()
    assert wing.id in editor.draft().flown
