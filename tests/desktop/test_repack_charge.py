"""The step of charging: the plan of the evening, charges on hand, swollen batteries, all through the window."""

from collections.abc import Callable
from datetime import datetime, time, timedelta
from itertools import pairwise

import pytest
from desk_steps import Key, Use, check_controls, item_named, outing_of, repack_page, row_of, stand_on
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import QApplication, QDialog

from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.repack_page.evening_dialog import EveningDialog
from kitlog.desktop.repack_page.evening_panel import EveningDialogue
from kitlog.desktop.repack_page.page import RepackPage
from kitlog.desktop.window import Window
from kitlog.kit.item import Item
from kitlog.outing.outing import Evening
from kitlog.outing.ticks import Step
from kitlog.paint.mark import Mark
from kitlog.workbench.workbench import Workbench

EVENING = Evening(from_at=time(19), bed_at=time(22, 30), up_at=time(6), leave_at=time(7), sockets=1, place_c=19.0)
WATTS = {"Phone": 18.0, "Power bank": 18.0, "Handheld radio": 5.0}
SEEN = {"Phone": 62.0, "Power bank": 35.0, "Handheld radio": 40.0}


def ready(page: RepackPage) -> bool:
    return page.planner.plan is not None and not page.planner.busy


@pytest.fixture
def charging(demo_bench: Workbench) -> Workbench:
    """The demo with one charger of two ports, three things described, an evening told."""
    ports = [{"power_w": 20.0, "connector": "USB-C"}, {"power_w": 12.0, "connector": "USB-C"}]
    known = [item.id for item in demo_bench.items() if item.charger is not None or item.kind == "cable"]
    demo_bench.delete_items(known)
    demo_bench.add_item(
        Item.model_validate(
            {"id": "block", "name": "Block", "kind": "charger", "charger": {"total_w": 30, "ports": ports}}
        )
    )
    demo_bench.edit_items(
        [
            item.model_copy(update={"battery": item.battery.model_copy(update={"charge_max_w": WATTS.get(item.name)})})
            for item in demo_bench.items()
            if item.battery is not None
        ]
    )
    demo_bench.note_on_hand({item_named(demo_bench, name).id: pct for name, pct in SEEN.items()})
    demo_bench.set_evening(outing_of(demo_bench).id, EVENING)
    return demo_bench


@pytest.fixture
def page(charging: Workbench, show: Callable[..., Window], qtbot) -> RepackPage:
    shown = repack_page(show(charging), Step.CHARGE)
    qtbot.waitUntil(lambda: ready(shown), timeout=20_000)
    return shown


def test_each_thing_says_when_it_is_full_and_where_it_hangs_until_when(page: RepackPage) -> None:
    row = row_of(page, "Phone")
    assert row.right.startswith("full ")
    assert row.note.startswith("Block, port ")
    assert row.right_note.startswith("62\u00a0% at ")
    assert page.planner.plan is not None
    assert page.planner.plan.lines[0].thing.item.name == "Phone"
    said = [text.text() for text in page.evening.findChildren(Paragraph)]
    assert any(text.startswith("Plug ") for text in said)


def test_what_is_not_described_is_never_full(page: RepackPage) -> None:
    row = row_of(page, "Flight computer")
    assert (row.right, row.note, row.faded) == ("not known", "charging power not on record", True)
    assert "not known" in page.charge_head.says.text().casefold()


def test_a_typed_charge_is_one_step_to_undo_and_the_plan_follows(page: RepackPage, qtbot) -> None:
    bench = page.desk.bench
    stand_on(page, "Phone")
    before = row_of(page, "Phone").right
    for key in (Key.Key_5, Key.Key_Return):
        qtbot.keyClick(QApplication.focusWidget() or page.list, key)
    battery = item_named(bench, "Phone").battery
    assert battery is not None
    assert battery.on_hand_pct == 5
    assert QApplication.focusWidget() is page.list
    qtbot.waitUntil(lambda: ready(page), timeout=20_000)
    assert row_of(page, "Phone").right != before
    bench.undo()
    battery = item_named(bench, "Phone").battery
    assert battery is not None
    assert battery.on_hand_pct == 62


def charge_of(page: RepackPage, name: str) -> float | None:
    battery = item_named(page.desk.bench, name).battery
    assert battery is not None
    return battery.on_hand_pct


def click_on_hand(page: RepackPage, qtbot) -> None:
    line = page.charge_head.on_hand.lineEdit()
    qtbot.mouseClick(line, Qt.MouseButton.LeftButton, pos=line.rect().center())


def test_a_charge_typed_after_a_click_replaces_the_one_before(page: RepackPage, qtbot) -> None:
    stand_on(page, "Handheld radio")
    click_on_hand(page, qtbot)
    qtbot.keyClicks(QApplication.focusWidget(), "62")
    qtbot.keyClick(QApplication.focusWidget(), Key.Key_Return)
    assert charge_of(page, "Handheld radio") == 62


@pytest.mark.parametrize("typed", ["200", "6x", "40 %62", "-1"])
def test_what_is_no_charge_is_marked_and_said_and_nothing_is_stored(page: RepackPage, qtbot, typed: str) -> None:
    stand_on(page, "Handheld radio")
    before = item_named(page.desk.bench, "Handheld radio")
    click_on_hand(page, qtbot)
    qtbot.keyClicks(QApplication.focusWidget(), typed)
    qtbot.keyClick(QApplication.focusWidget(), Key.Key_Return)
    field = page.charge_head.on_hand
    assert item_named(page.desk.bench, "Handheld radio") == before
    assert field.text() == f"{typed}\u00a0%"
    assert field.property("wrong") is True
    assert QApplication.focusWidget() is field
    assert f"“{typed}” cannot be read" in page.remark.text()
    page.list.setFocus()
    assert item_named(page.desk.bench, "Handheld radio") == before
    stand_on(page, "Phone")
    assert field.text() == "62\u00a0%"
    assert field.property("wrong") is False


def test_an_emptied_charge_is_not_known(page: RepackPage, qtbot) -> None:
    stand_on(page, "Handheld radio")
    click_on_hand(page, qtbot)
    qtbot.keyClick(QApplication.focusWidget(), Key.Key_Delete)
    qtbot.keyClick(QApplication.focusWidget(), Key.Key_Return)
    assert charge_of(page, "Handheld radio") is None


def test_the_same_charge_typed_again_is_seen_now(page: RepackPage, qtbot) -> None:
    bench = page.desk.bench
    phone = item_named(bench, "Phone")
    assert phone.battery is not None
    long_ago = bench.now() - timedelta(days=200)
    old = phone.battery.model_copy(update={"on_hand_at": long_ago})
    bench.edit_items([phone.model_copy(update={"battery": old})])
    stand_on(page, "Phone")
    qtbot.keyClicks(page.list, "6")
    qtbot.keyClicks(QApplication.focusWidget(), "2")
    qtbot.keyClick(QApplication.focusWidget(), Key.Key_Return)
    seen = item_named(bench, "Phone").battery
    assert seen is not None
    assert seen.on_hand_pct == 62
    assert seen.on_hand_at is not None
    assert seen.on_hand_at > long_ago + timedelta(days=199)


def test_return_without_typing_is_no_reading(page: RepackPage, qtbot) -> None:
    stand_on(page, "Phone")
    before = item_named(page.desk.bench, "Phone")
    click_on_hand(page, qtbot)
    qtbot.keyClick(QApplication.focusWidget(), Key.Key_Return)
    assert item_named(page.desk.bench, "Phone") == before


def test_until_the_new_plan_is_there_the_old_one_is_called_outdated(page: RepackPage, qtbot) -> None:
    old = row_of(page, "Phone").right
    page.desk.bench.note_on_hand({item_named(page.desk.bench, "Phone").id: 5.0})
    assert page.planner.outdated
    row = row_of(page, "Phone")
    assert (row.right, row.faded) == (old, True)
    assert "anew" in page.charge_head.says.text()
    assert not page.charge_head.start_act.isEnabled()
    qtbot.waitUntil(lambda: ready(page), timeout=20_000)
    assert not row_of(page, "Phone").faded


def test_swollen_is_one_act_and_can_be_taken_back(page: RepackPage, qtbot) -> None:
    bench = page.desk.bench
    stand_on(page, "Power bank")
    page.charge_head.swollen_act.click()
    qtbot.waitUntil(lambda: ready(page), timeout=20_000)
    row = row_of(page, "Power bank")
    assert row.right == "swollen: not charged"
    assert row.mark in {Mark.STOP, Mark.LOOK}
    assert "Not swollen" in page.charge_head.swollen_act.words
    assert "swollen" in page.remark.text()
    bench.undo()
    battery = item_named(bench, "Power bank").battery
    assert battery is not None
    assert battery.swollen_on is None


def test_the_plan_becomes_the_start_of_the_outing(page: RepackPage) -> None:
    bench = page.desk.bench
    bench.set_evening(outing_of(bench).id, EVENING.model_copy(update={"from_at": time(22, 20), "leave_at": time(6)}))
    while not ready(page):
        QApplication.processEvents()
    assert page.planner.plan is not None
    short = {line.thing.item.id for line in page.planner.plan.lines if line.missing_wh > 0}
    page.charge_head.start_act.click()
    assert {start.item for start in outing_of(bench).starts} == short
    bench.undo()
    assert outing_of(bench).starts == ()


def test_a_start_taken_from_an_older_plan_is_called_so(page: RepackPage, qtbot) -> None:
    """The outing keeps the charges it was given; a reading after that changes the plan, and both are told."""
    bench = page.desk.bench
    bench.set_evening(outing_of(bench).id, EVENING.model_copy(update={"from_at": time(22, 20), "leave_at": time(6)}))
    qtbot.waitUntil(lambda: ready(page), timeout=20_000)
    page.charge_head.start_act.click()
    qtbot.waitUntil(lambda: ready(page), timeout=20_000)
    assert page.charge_head.others.isHidden()
    bench.note_on_hand({item_named(bench, "Power bank").id: 5.0})
    qtbot.waitUntil(lambda: ready(page), timeout=20_000)
    said = page.charge_head.others.text()
    assert page.charge_head.others.isVisible()
    assert said.startswith("The outing begins otherwise, reckoned / planned: ")
    assert "Power bank " in said
    page.charge_head.start_act.click()
    qtbot.waitUntil(lambda: ready(page), timeout=20_000)
    assert page.charge_head.others.isHidden()


def test_what_does_not_end_full_is_told_before_any_start_is_entered(page: RepackPage, qtbot) -> None:
    """The power budget begins full where nothing is entered: two screens must not disagree in silence."""
    assert page.charge_head.others.isHidden()
    page.desk.bench.set_evening(outing_of(page.desk.bench).id, EVENING.model_copy(update={"sockets": 0}))
    qtbot.waitUntil(lambda: ready(page), timeout=20_000)
    assert page.charge_head.others.isVisible()
    assert "Phone 100 / 62\u00a0%" in page.charge_head.others.text()


def test_without_a_socket_what_is_on_hand_becomes_the_start(page: RepackPage, qtbot) -> None:
    bench = page.desk.bench
    bench.set_evening(outing_of(bench).id, EVENING.model_copy(update={"sockets": 0}))
    qtbot.waitUntil(lambda: ready(page), timeout=20_000)
    page.charge_head.start_act.click()
    starts = {start.item: start.likely_pct for start in outing_of(bench).starts}
    assert starts.items() >= {item_named(bench, name).id: pct for name, pct in SEEN.items()}.items()
    qtbot.waitUntil(lambda: ready(page), timeout=20_000)
    assert page.charge_head.others.isHidden()


def test_hours_that_nobody_told_are_those_of_the_plan_in_the_dialog_too(
    page: RepackPage, qtbot, in_dialog: Use, monkeypatch: pytest.MonkeyPatch
) -> None:
    bench = page.desk.bench
    late = datetime.combine(outing_of(bench).first_day, time(21, 38), bench.now().tzinfo) - timedelta(days=1)
    monkeypatch.setattr(bench, "now", lambda: late)
    bench.set_evening(outing_of(bench).id, None)
    qtbot.waitUntil(lambda: ready(page), timeout=20_000)
    begins = page.charge_head.times.text().removeprefix("assumed: ")[:5]
    assert begins >= "21:40"

    def read(dialog: QDialog) -> None:
        assert isinstance(dialog, EveningDialog)
        assert dialog.times["from_at"].text() == begins
        dialog.times["bed_at"].setText("19")
        assert dialog.reason.text() == "Bed at: write it as 19:30, of 24 hours."
        dialog.reject()

    in_dialog(page.charge_head.hours_act.click, read)


def test_the_evening_is_changed_in_a_dialog(page: RepackPage, in_dialog: Use) -> None:
    def change(dialog: QDialog) -> None:
        assert isinstance(dialog, EveningDialog)
        dialog.times["bed_at"].setText("ten")
        assert not dialog.main.isEnabled()
        dialog.times["bed_at"].setText("18:00")
        assert "follow" in dialog.reason.text()
        dialog.times["bed_at"].setText("23:15")
        dialog.sockets.put(None)
        dialog.first_item.choose(item_named(page.desk.bench, "Power bank").id)
        dialog.main.click()

    in_dialog(page.charge_head.hours_act.click, change)
    evening = outing_of(page.desk.bench).evening
    assert evening is not None
    assert (evening.bed_at, evening.sockets) == (time(23, 15), None)
    assert evening.priority == (item_named(page.desk.bench, "Power bank").id,)
    while not ready(page):
        QApplication.processEvents()
    assert page.planner.plan is not None
    assert page.planner.plan.lines[0].thing.item.name == "Power bank"


def test_without_a_charger_it_says_what_is_missing(show: Callable[..., Window], charging: Workbench, qtbot) -> None:
    charging.delete_items(["block"])
    page = repack_page(show(charging), Step.CHARGE)
    qtbot.waitUntil(lambda: ready(page), timeout=20_000)
    assert page.charge_head.says.text() == "No charger is on record, so nothing can be planned."
    assert row_of(page, "Phone").right == "no charger"
    assert not page.charge_head.start_act.isEnabled()


def test_narrow_the_plan_opens_over_the_page(page: RepackPage, in_dialog: Use) -> None:
    page.window().resize(920, 640)
    QApplication.processEvents()
    seen: list[type[QDialog]] = []

    def read(dialog: QDialog) -> None:
        seen.append(type(dialog))
        dialog.accept()

    in_dialog(page.narrow_act.click, read)
    assert seen == [EveningDialogue]


def test_controls_have_names_and_room(page: RepackPage) -> None:
    stand_on(page, "Phone")
    check_controls(page)


def test_other_steps_have_no_field_for_a_charge(page: RepackPage, qtbot) -> None:
    page.open_step(Step.STOW)
    assert not page.charge_head.isVisible()
    stand_on(page, "Phone")
    qtbot.keyClick(page.list, Key.Key_5)
    battery = item_named(page.desk.bench, "Phone").battery
    assert battery is not None
    assert battery.on_hand_pct == 62


def test_what_is_stowed_says_how_its_charging_goes(page: RepackPage, qtbot) -> None:
    when = row_of(page, "Phone").right
    page.open_step(Step.STOW)
    assert row_of(page, "Phone").right_note == f"62\u00a0%, {when}"
    assert row_of(page, "Flight computer").right_note == "to charge"
    page.desk.bench.note_on_hand({item_named(page.desk.bench, "Phone").id: 5.0})
    assert row_of(page, "Phone").right_note == "to charge"
    qtbot.waitUntil(lambda: row_of(page, "Phone").right_note.startswith("5\u00a0%, full "), timeout=20_000)


def test_ticking_asks_for_no_new_plan(page: RepackPage, qtbot) -> None:
    stand_on(page, "Phone")
    qtbot.keyClick(page.list, Key.Key_Space)
    assert row_of(page, "Phone").ticked
    assert not page.planner.outdated


@pytest.mark.parametrize("wide", [340, 420, 520, 640, 900])
def test_the_charge_on_hand_stands_with_its_word_and_act(page: RepackPage, wide: int) -> None:
    """With assumed hours the word stayed at the right while its field went on in the next line."""
    stand_on(page, "Handheld radio")
    head = page.charge_head
    head.setFixedWidth(wide)
    head.times.setText("assumed: " + head.times.text())
    QApplication.processEvents()
    places = [
        QRect(part.mapTo(head, QPoint(0, 0)), part.size()) for part in (head.of_item, head.on_hand, head.swollen_act)
    ]
    for left, right in pairwise(places):
        assert left.right() < right.left() <= left.right() + 40
        assert abs(left.center().y() - right.center().y()) <= 2
    assert places[-1].right() < wide
