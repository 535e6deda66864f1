"""What a pilot does on the page Flights, through the window and on a real data file."""

from collections.abc import Callable
from datetime import date

import pytest
from desk_steps import Use
from PySide6.QtWidgets import QDialog

from kitlog.desktop.flights_page.flight_editor import FlightEditor
from kitlog.desktop.flights_page.hour_bars import hour_bars
from kitlog.desktop.flights_page.page import FlightsPage
from kitlog.desktop.window import Window
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.workbench.workbench import Workbench


@pytest.fixture
def page(window: Window) -> FlightsPage:
    made = window.open("flights")
    assert isinstance(made, FlightsPage)
    return made


def names(bench: Workbench, ids: tuple[str, ...]) -> set[str]:
    return {item.name for item in bench.items() if item.id in ids}


def test_the_log_has_the_newest_first(page: FlightsPage, demo_bench: Workbench) -> None:
    days = [flight.last_day for flight in page.model.flights]
    assert days == sorted(days, reverse=True)
    assert len(days) == len(demo_bench.flights())


def test_totals_are_those_of_the_log(page: FlightsPage, demo_bench: Workbench) -> None:
    minutes = round(sum(flight.airtime_min for flight in demo_bench.flights()))
    assert f"{minutes // 60}:{minutes % 60:02d}" in page.total.text()
    assert str(len(demo_bench.flights())) in page.total.text()


def test_a_flight_is_added_with_the_set_of_the_last_one_proposed(
    page: FlightsPage, demo_bench: Workbench, in_dialog: Use
) -> None:
    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, FlightEditor)
        flown = {dialog.ticks[item_id].words for item_id in dialog.ticks if dialog.ticks[item_id].isChecked()}
        assert flown == names(demo_bench, demo_bench.usual_set())
        dialog.hours.put(2)
        dialog.minutes.put(40)
        dialog.site.setEditText("Skarnock")
        dialog.accept()

    before = len(demo_bench.flights())
    in_dialog(page.add.click, enter)
    flight = max(demo_bench.flights(), key=lambda f: f.on)
    assert len(demo_bench.flights()) == before + 1
    assert (flight.on, flight.airtime_min, flight.launches, flight.site) == (date(2026, 5, 8), 160, 1, "Skarnock")
    assert flight.flown == tuple(sorted(flight.flown, key=flight.flown.index))
    assert page.flight_id() == flight.id


def test_on_the_day_of_an_outing_its_own_set_is_proposed(
    show: Callable[..., Window], demo_bench: Workbench, qtbot
) -> None:
    page = show(demo_bench, "flights").page("flights")
    editor = FlightEditor(page.desk, None, page)
    qtbot.addWidget(editor)
    editor.day.put(date(2026, 6, 20))
    flown = {tick.words for tick in editor.ticks.values() if tick.isChecked()}
    assert {"Wing B", "Harness B", "Reserve B", "Helmet B"} <= flown
    assert not {"Wing A", "Harness A"} & flown
    assert editor.site.currentText() != ""
    editor.carried.setChecked(True)
    draft = editor.draft()
    assert draft.carried
    assert not set(draft.carried) & set(draft.flown)


def test_what_was_ticked_by_hand_is_not_proposed_over(page: FlightsPage, qtbot) -> None:
    editor = FlightEditor(page.desk, None, page)
    qtbot.addWidget(editor)
    wing = next(tick for tick in editor.ticks.values() if tick.words == "Wing B")
    wing.click()
    chosen = {tick.words for tick in editor.ticks.values() if tick.isChecked()}
    editor.day.put(date(2026, 5, 9))
    assert {tick.words for tick in editor.ticks.values() if tick.isChecked()} == chosen


def test_every_flight_of_the_demo_comes_back_from_the_form_as_it_is(
    page: FlightsPage, demo_bench: Workbench, qtbot
) -> None:
    for flight in demo_bench.flights():
        editor = FlightEditor(page.desk, flight, page)
        qtbot.addWidget(editor)
        draft = editor.draft()
        assert draft.model_copy(update={"flown": flight.flown}) == flight
        assert set(draft.flown) == set(flight.flown)


def test_a_flight_of_tomorrow_is_refused_in_words(page: FlightsPage, in_dialog: Use) -> None:
    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, FlightEditor)
        dialog.day.put(date(2026, 5, 9))
        dialog.accept()
        assert dialog.isVisible()
        assert "2026-05-09" in dialog.wrong()

    in_dialog(page.acts.add_flight, enter)


def test_a_flight_longer_than_a_day_is_refused_in_words(page: FlightsPage, in_dialog: Use) -> None:
    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, FlightEditor)
        dialog.hours.put(25)
        dialog.accept()
        assert dialog.isVisible()
        assert "longer than a day" in dialog.wrong()

    in_dialog(page.acts.add_flight, enter)


def test_a_deleted_flight_comes_back_with_undo(window: Window, page: FlightsPage, demo_bench: Workbench) -> None:
    before = len(demo_bench.flights())
    page.acts.delete_flight()
    assert len(demo_bench.flights()) == before - 1
    window.acts.undo()
    assert len(demo_bench.flights()) == before


def test_hours_by_item_are_opening_balance_and_log(empty_bench: Workbench) -> None:
    empty_bench.add_item(Item(id="w", name="Wing", kind=Kind.WING, opening_h=10))
    empty_bench.add_item(Item(id="h", name="Harness", kind=Kind.HARNESS))
    empty_bench.add_flight(Flight(id="f", on=date(2026, 5, 1), airtime_min=90, flown=("w", "h")))
    assert [(bar.name, bar.hours) for bar in hour_bars(empty_bench)] == [("Wing", 11.5), ("Harness", 1.5)]


def test_a_limit_by_hours_is_drawn_where_it_lies(page: FlightsPage, demo_bench: Workbench) -> None:
    wing = next(bar for bar in hour_bars(demo_bench) if bar.name == "Wing A")
    assert wing.limit_h is not None
    assert wing.limit_h - wing.hours == pytest.approx(22.1, abs=0.05)  # 100 h less what was flown since, worked by hand
    assert "Wing A" in page.hours.accessibleDescription()


def test_the_side_tells_what_the_selected_flight_was_booked_on(page: FlightsPage, demo_bench: Workbench) -> None:
    from kitlog.desktop.parts.text import Text

    page.show_this(next(f.id for f in demo_bench.flights() if f.on == date(2026, 4, 12)))
    texts = " ".join(label.text() for label in page._right.findChildren(Text) if not label.isHidden())
    assert "Wing B" in texts
    assert "Foil blanket" in texts


def test_an_empty_log_says_how_to_begin(show: Callable[..., Window], empty_bench: Workbench, in_dialog: Use) -> None:
    page = show(empty_bench, "flights").page("flights")
    assert isinstance(page, FlightsPage)
    assert page.empty.isVisible()

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, FlightEditor)
        dialog.minutes.put(20)
        dialog.accept()

    in_dialog(page.empty.buttons[1].click, enter)
    assert not page.empty.isVisible()
    assert len(empty_bench.flights()) == 1


def test_times_are_typed_on_the_clocks_of_the_place(page: FlightsPage, demo_bench: Workbench, in_dialog: Use) -> None:
    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, FlightEditor)
        dialog.day.put(date(2026, 5, 2))
        dialog.takeoff.setText("25:00")
        dialog.hours.put(1)
        dialog.accept()
        assert "no time of day" in dialog.wrong()
        dialog.takeoff.setText("11:30")
        dialog.landing.setText("12.45")
        dialog.accept()
        assert not dialog.isVisible()

    in_dialog(page.acts.add_flight, enter)
    flight = next(f for f in demo_bench.flights() if f.on == date(2026, 5, 2))
    assert flight.takeoff_at is not None
    assert flight.landing_at is not None
    assert (flight.landing_at - flight.takeoff_at).total_seconds() == 75 * 60

    def again(dialog: QDialog) -> None:
        assert isinstance(dialog, FlightEditor)
        assert (dialog.takeoff.text(), dialog.landing.text()) == ("11:30", "12:45")

    page.show_this(flight.id)
    in_dialog(page.acts.edit_flight, again)


def test_a_wing_twice_in_the_air_is_asked_about(page: FlightsPage, demo_bench: Workbench, in_dialog: Use) -> None:
    before = len(demo_bench.flights())

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, FlightEditor)
        dialog.day.put(date(2026, 5, 2))
        dialog.takeoff.setText("11:30")
        dialog.hours.put(1)
        dialog.accept()

    def again(dialog: QDialog) -> None:
        enter(dialog)
        assert isinstance(dialog, FlightEditor)
        assert dialog.isVisible()
        assert dialog.question.isVisible()
        assert "twice at a time" in dialog.question.what.text()
        assert len(demo_bench.flights()) == before + 1
        dialog.question.do_act.click()
        assert not dialog.isVisible()

    in_dialog(page.acts.add_flight, enter)
    in_dialog(page.acts.add_flight, again)
    assert len(demo_bench.flights()) == before + 2
