"""What a pilot does on the page Service, through the window and on a real data file."""

from collections.abc import Callable
from datetime import date

import pytest
from desk_steps import Use
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QDialog

from kitlog.desktop.service_page.band_words import band_of, grouped
from kitlog.desktop.service_page.event_dialog import EventDialog
from kitlog.desktop.service_page.page import ServicePage
from kitlog.desktop.service_page.record_dialog import RecordDialog
from kitlog.desktop.service_page.rule_editor import RuleEditor
from kitlog.desktop.service_page.starters_dialog import StartersDialog
from kitlog.desktop.window import Window
from kitlog.kit.due import DueState
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.kit.service import Grounds
from kitlog.paint.mark import Mark
from kitlog.workbench.reads import DueLine
from kitlog.workbench.workbench import Workbench

TODAY = date(2026, 5, 8)


@pytest.fixture
def page(window: Window) -> ServicePage:
    made = window.open("service")
    assert isinstance(made, ServicePage)
    return made


def line_of(bench: Workbench, item: str, rule: str) -> DueLine:
    return next(line for line in bench.due(TODAY) if line.item.name == item and line.rule.rule == rule)


def choose(page: ServicePage, item: str, rule: str) -> None:
    page._choose(line_of(page.desk.bench, item, rule).rule.id)


def test_the_list_has_the_soonest_first_and_every_state_as_a_word(page: ServicePage, demo_bench: Workbench) -> None:
    shown = [page.model.lines[n].rule.id for n in range(page.model.rowCount())]
    assert shown == [line.rule.id for line in demo_bench.due(TODAY)]
    words = {str(page.model.index(n, 0).data()) for n in range(page.model.rowCount())}
    assert "overdue" in words
    assert "no record" in words
    assert all(words)


def test_band_and_list_select_the_same_rule(page: ServicePage, demo_bench: Workbench, qtbot) -> None:
    choose(page, "Wing A", "wing.full")
    assert page.band.current is not None
    assert page._rules[page.band.current] == line_of(demo_bench, "Wing A", "wing.full").rule.id
    page.band.setFocus()
    qtbot.keyClick(page.band, Qt.Key.Key_Down)
    assert page.rule_id() == page._rules[page.band.current]
    middle = page.band.lane_rect(0).center().toPoint()
    qtbot.mouseClick(page.band, Qt.MouseButton.LeftButton, pos=QPoint(middle.x(), middle.y()))
    assert page.rule_id() == page._rules[0]


def test_the_band_tells_everything_in_words(page: ServicePage) -> None:
    told = page.band.accessibleDescription()
    for part in ("Helmet A", "full inspection", "22.1"):
        assert part in told.replace("\u00a0", " ")


def test_no_record_is_a_ring_and_never_good(demo_bench: Workbench) -> None:
    picture, rules = band_of(grouped(demo_bench.due(TODAY)), TODAY, 18, ())
    unknown = [line.rule.id for line in demo_bench.due(TODAY) if line.due.state is DueState.NO_RECORD]
    assert unknown
    lanes = [lane for lane, rule in zip(picture.lanes, rules, strict=True) if rule in unknown]
    assert {lane.mark for lane in lanes} == {Mark.NOT_KNOWN}
    assert all(lane.unknown for lane in lanes)


def test_a_rule_with_dates_and_hours_has_a_lane_for_each(demo_bench: Workbench) -> None:
    picture, rules = band_of(grouped(demo_bench.due(TODAY)), TODAY, 18, ())
    wing = line_of(demo_bench, "Wing A", "wing.full").rule.id
    lanes = [lane for lane, rule in zip(picture.lanes, rules, strict=True) if rule == wing]
    assert [lane.due is not None for lane in lanes] == [True, False]
    assert [lane.hours is not None for lane in lanes] == [False, True]


def test_lanes_of_one_item_stand_together(demo_bench: Workbench) -> None:
    names = [line.item.id for line in grouped(demo_bench.due(TODAY))]
    groups = [name for number, name in enumerate(names) if number == 0 or names[number - 1] != name]
    assert len(groups) == len(set(groups))


def test_a_recorded_service_is_in_the_file_and_changes_the_state(
    page: ServicePage, demo_bench: Workbench, in_dialog: Use
) -> None:
    choose(page, "Power bank", "any.capacity")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RecordDialog)
        assert [tick.isChecked() for tick in dialog.ticks.values()] == [True]
        dialog.who.setText("myself")
        dialog.outcome.choose("passed with remarks")
        dialog.remarks.setPlainText("9,400 mAh left")
        dialog.accept()

    in_dialog(page.record.click, enter)
    line = line_of(demo_bench, "Power bank", "any.capacity")
    assert line.due.state is DueState.IN_DATE
    assert line.due.last is not None
    assert (line.due.last.who, line.due.last.done_on) == ("myself", TODAY)


def test_one_record_may_satisfy_several_rules(page: ServicePage, demo_bench: Workbench, in_dialog: Use) -> None:
    choose(page, "Wing A", "wing.full")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RecordDialog)
        for tick in dialog.ticks.values():
            tick.setChecked(True)
        dialog.accept()

    in_dialog(page.acts.record_service, enter)
    assert {line_of(demo_bench, "Wing A", rule).due.state for rule in ("wing.full", "wing.trim")} == {DueState.IN_DATE}
    page.desk.perform(demo_bench.undo)
    assert line_of(demo_bench, "Wing A", "wing.full").due.state is DueState.DUE_SOON


def test_a_record_needs_a_tick_and_no_future_day(page: ServicePage, in_dialog: Use) -> None:
    choose(page, "Wing A", "wing.full")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RecordDialog)
        for tick in dialog.ticks.values():
            tick.setChecked(False)
        assert not dialog.main.isEnabled()
        assert dialog.reason.text()
        next(iter(dialog.ticks.values())).setChecked(True)
        dialog.day.put(date(2027, 1, 1))
        dialog.accept()
        assert dialog.isVisible()
        assert "2027" in dialog.wrong()

    in_dialog(page.acts.record_service, enter)


def test_an_event_says_what_it_opens_and_opens_it(page: ServicePage, demo_bench: Workbench, in_dialog: Use) -> None:
    choose(page, "Harness A", "harness.event")
    assert line_of(demo_bench, "Harness A", "harness.event").due.state is DueState.IN_DATE

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, EventDialog)
        assert not dialog.main.isEnabled()
        dialog.kind.choose("water")
        told = dialog.struck.ticks[line_of(demo_bench, "Harness A", "harness.event").item.id].accessibleDescription()
        assert "Check after an event: at once, a stop until it is done" in told
        dialog.note.setPlainText("Landed in the reeds.")
        dialog.accept()

    in_dialog(page.acts.log_event, enter)
    assert line_of(demo_bench, "Harness A", "harness.event").due.state is DueState.OVERDUE


def test_starters_are_offered_with_their_source_and_never_ticked(
    page: ServicePage, demo_bench: Workbench, in_dialog: Use
) -> None:
    choose(page, "Wing B", "wing.full")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, StartersDialog)
        offered = {starter.name for starter in demo_bench.starters_for(str(dialog.item.chosen()))}
        assert set(dialog.ticks) == offered
        assert not any(tick.isChecked() for tick in dialog.ticks.values())
        assert all(tick.accessibleDescription() for tick in dialog.ticks.values())
        assert not dialog.main.isEnabled()
        dialog.ticks["wing.trim"].setChecked(True)
        dialog.accept()

    in_dialog(page.acts.add_rule, enter)
    assert line_of(demo_bench, "Wing B", "wing.trim").rule.source


def test_a_starter_that_is_a_printed_date_asks_for_it(
    show: Callable[..., Window], empty_bench: Workbench, in_dialog: Use
) -> None:
    empty_bench.add_item(Item(id="b", name="Papers", kind=Kind.PAPERS))
    starter = next(s for s in empty_bench.starters_for("b") if not (s.months or s.hours or s.launches or s.events))
    page = show(empty_bench, "service").page("service")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RuleEditor)
        assert dialog.draft is not None
        dialog.accept()
        assert dialog.isVisible()
        assert dialog.wrong()
        dialog.due_on.put(date(2029, 11, 30))
        dialog.accept()

    item = empty_bench.item("b")
    assert item is not None
    in_dialog(lambda: RuleEditor(page.desk, item, None, starter, page).exec(), enter)
    assert [(rule.rule, rule.due_on) for rule in empty_bench.rules()] == [(starter.name, date(2029, 11, 30))]


def test_every_rule_of_the_demo_comes_back_from_the_form_as_it_is(
    page: ServicePage, demo_bench: Workbench, qtbot
) -> None:
    for line in demo_bench.due(TODAY):
        editor = RuleEditor(page.desk, line.item, line.rule, None, page)
        qtbot.addWidget(editor)
        assert editor.draft() == line.rule


def test_the_manual_overrides_stands_in_the_editor(page: ServicePage, demo_bench: Workbench, qtbot) -> None:
    from kitlog.desktop.parts.text import Text

    line = demo_bench.due(TODAY)[0]
    for dialog in (
        RuleEditor(page.desk, line.item, line.rule, None, page),
        StartersDialog(page.desk, line.item, page),
    ):
        qtbot.addWidget(dialog)
        assert any("override" in label.text() for label in dialog.findChildren(Text))


def test_a_rule_is_changed_and_the_list_follows(page: ServicePage, demo_bench: Workbench, in_dialog: Use) -> None:
    choose(page, "Helmet B", "helmet.age")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RuleEditor)
        dialog.months.put(12)
        dialog.grounds.choose(Grounds.YES)
        dialog.accept()

    in_dialog(page.acts.edit_rule, enter)
    line = line_of(demo_bench, "Helmet B", "helmet.age")
    assert (line.rule.months, line.rule.grounds, line.due.state) == (12, Grounds.YES, DueState.OVERDUE)
    assert page.rule_id() == line.rule.id


def test_a_rule_with_records_is_refused_in_words(window: Window, page: ServicePage, demo_bench: Workbench) -> None:
    choose(page, "Wing A", "wing.trim")
    page.acts.delete_rule()
    assert window.strip.isVisible()
    assert line_of(demo_bench, "Wing A", "wing.trim")


def test_less_room_shows_fewer_months(show: Callable[..., Window], demo_bench: Workbench) -> None:
    wide = show(demo_bench, "service").page("service")
    assert isinstance(wide, ServicePage)
    assert wide.band.picture is not None
    assert len(wide.band.picture.months) == 18
    narrow = show(demo_bench, "service", (1024, 600)).page("service")
    assert isinstance(narrow, ServicePage)
    assert narrow.band.picture is not None
    assert len(narrow.band.picture.months) == 12


def test_without_rules_the_page_says_how_to_begin(show: Callable[..., Window], empty_bench: Workbench) -> None:
    page = show(empty_bench, "service").page("service")
    assert isinstance(page, ServicePage)
    assert page.empty.isVisible()
    assert not page.empty.buttons[0].isEnabled()
    empty_bench.add_item(Item(id="w", name="Wing", kind=Kind.WING))
    assert page.empty.buttons[0].isEnabled()


def test_all_rules_of_an_item_are_reached_from_its_details(window: Window, demo_bench: Workbench) -> None:
    wing = next(item for item in demo_bench.items() if item.name == "Wing A")
    window.desk.show("service", wing.id)
    page = window.page("service")
    assert window.open_name == "service"
    assert isinstance(page, ServicePage)
    line = page.line()
    assert line is not None
    assert line.item.id == wing.id
