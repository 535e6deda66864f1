"""What a pilot does on the page Outing, through the window and on a real data file: findings and what is done about them."""

from desk_steps import Key, Use, item_named, outing_of, outing_page, work_on
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QDialog, QWidget

from kitlog.budget.result import Finding, State, Topic
from kitlog.desktop.outing_page.override_dialog import OverrideDialog
from kitlog.desktop.outing_page.page import OutingPage
from kitlog.desktop.outing_page.remedies import CODES
from kitlog.desktop.parts.button import Button
from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.window import Window
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.kit.service import Grounds, ServiceRule
from kitlog.outing.outing import Use as Planned
from kitlog.wording.remedies import CODES as SAID_REMEDIES


def later(page: OutingPage, qtbot, name: str) -> Button:
    """A button of the long lists, which follow a moment after their tile is opened."""

    def found() -> Button | None:
        return None if page.view is None else page.view.findChild(Button, name)

    qtbot.waitUntil(lambda: found() is not None)
    made = found()
    assert made is not None
    return made


def act_of(page: OutingPage, finding: str, words: str) -> Button:
    """The act of a finding's row that begins with some words."""
    row = next(row for row in page.rows() if row.finding.key.startswith(finding))
    return next(b for b in row.findChildren(Button) if b.words.startswith(words))


def test_telling_the_contact_notes_the_present_time(window: Window, qtbot) -> None:
    page, bench = outing_page(window), window.desk.bench
    qtbot.mouseClick(page.board.tiles[Topic.PEOPLE].act, Qt.MouseButton.LeftButton)
    assert outing_of(bench).people[0].told_at == bench.now()
    bench.undo()
    assert outing_of(bench).people[0].told_at is None


def test_a_swap_acts_and_is_undone(window: Window, qtbot) -> None:
    page, bench = outing_page(window), window.desk.bench
    outing, old = outing_of(bench), item_named(bench, "Headlamp")
    spare = Item(id="bike-lamp", name="Bike lamp", kind=Kind.LIGHT, mass_g=62)
    bench.add_item(spare)
    rule = ServiceRule(
        id="r", item_id=old.id, rule="worn out", due_on=bench.now().date(), grounds=Grounds.YES, source="own"
    )
    bench.save_rule(rule)
    page.open_topic(Topic.KIT)
    act = act_of(page, f"service.overdue:{old.id}", "Swap")
    qtbot.mouseClick(act, Qt.MouseButton.LeftButton)
    going = {line.item.id for line in bench.assess(outing_of(bench)).lines}
    assert spare.id in going
    assert old.id not in going
    bench.undo()
    assert outing_of(bench) == outing


def test_leave_out_and_take_along_act_and_are_undone(window: Window, qtbot) -> None:
    page, bench = outing_page(window), window.desk.bench
    before, camera = outing_of(bench), item_named(bench, "Action camera")
    page.open_topic(Topic.KIT)
    assert page.view is not None
    leave = later(page, qtbot, f"Leave out/{camera.id}")
    qtbot.mouseClick(leave, Qt.MouseButton.LeftButton)
    assert camera.id in outing_of(bench).left_out
    take = later(page, qtbot, f"Take along/{camera.id}")
    qtbot.mouseClick(take, Qt.MouseButton.LeftButton)
    assert camera.id not in outing_of(bench).left_out
    assert camera.id in {pin.item for pin in outing_of(bench).pinned}
    bench.undo()
    bench.undo()
    assert outing_of(bench) == before


def test_the_focus_never_falls_off_the_page_when_an_act_goes(window: Window, qtbot) -> None:
    page, bench = outing_page(window), window.desk.bench
    page.open_topic(Topic.KIT)
    assert page.view is not None
    camera = item_named(bench, "Action camera")
    leave = later(page, qtbot, f"Leave out/{camera.id}")
    leave.setFocus()
    qtbot.keyClick(leave, Key.Key_Space)
    focus = QApplication.focusWidget()
    assert focus is not None
    assert page.isAncestorOf(focus)


def stop_of(window: Window) -> Finding:
    assessment = window.desk.assessment()
    assert assessment is not None
    return next(f for f in assessment.findings if f.state is State.STOP and f.topic is Topic.KIT)


def test_a_stop_is_overridden_with_a_reason_that_stays_at_it(window: Window, in_dialog: Use, qtbot) -> None:
    bench = window.desk.bench
    outing = work_on(bench, "on foot")
    page = outing_page(window)
    finding = stop_of(window)
    page.open_topic(Topic.KIT)

    def reason(dialog: QDialog) -> None:
        assert isinstance(dialog, OverrideDialog)
        assert not dialog.main.isEnabled()
        qtbot.keyClicks(dialog.reason_field, "paid at the counter, card follows")
        qtbot.mouseClick(dialog.main, Qt.MouseButton.LeftButton)

    in_dialog(act_of(page, finding.key, "Override").click, reason)
    after = bench.outing(outing.id)
    assert after is not None
    assert [(o.finding, o.reason) for o in after.overrides] == [(finding.key, "paid at the counter, card follows")]
    row = next(row for row in page.rows() if row.finding.key == finding.key)
    assert row.finding.state is State.STOP
    shown = " ".join(w.property("text") or "" for w in row.findChildren(QWidget))
    assert "paid at the counter, card follows" in shown


def test_the_tag_leads_to_the_worst_finding_of_a_state(window: Window, qtbot) -> None:
    work_on(window.desk.bench, "on foot")
    page = outing_page(window)
    page.open_topic(Topic.WEIGHT)
    window.acts.open_worst("stop")
    qtbot.wait(20)
    assert page.topic is stop_of(window).topic
    focus = QApplication.focusWidget()
    row = next(row for row in page.rows() if row.finding.state is State.STOP)
    assert focus is not None
    assert row.isAncestorOf(focus)


def test_findings_that_ask_for_a_figure_open_the_editor(window: Window, in_dialog: Use, qtbot) -> None:
    from kitlog.desktop.kit_page.item_editor import ItemEditor

    page, bench = outing_page(window), window.desk.bench
    phone = item_named(bench, "Phone")
    bench.edit_items([phone.model_copy(update={"battery": None})])
    page.open_topic(Topic.POWER)
    seen: list[str] = []

    def look_at(dialog: QDialog) -> None:
        assert isinstance(dialog, ItemEditor)
        seen.append(dialog.item_id)

    in_dialog(act_of(page, "power.not_known", "Enter").click, look_at)
    assert seen == [phone.id]


def test_a_computed_change_is_said_whole_taken_into_the_plan_and_undone(window: Window, qtbot) -> None:
    page, bench = outing_page(window), window.desk.bench
    lit = Planned(item=item_named(bench, "Phone").id, phase="flight", way="flight, screen on", share=1.0)
    bench.save_outing(outing_of(bench).model_copy(update={"uses": (lit,)}))
    page.open_topic(Topic.POWER)
    row = next(row for row in page.rows() if row.finding.code == "power.phone_at_landing")
    said = " ".join(paragraph.text() for paragraph in row.findChildren(Paragraph))
    assert "10\xa0% of the time in “flight, screen on”: 58\xa0% at the landing, 42\xa0% on a high day" in said
    qtbot.mouseClick(act_of(page, "power.phone_at_landing", "Use less: Phone"), Qt.MouseButton.LeftButton)
    shares = {use.way: use.share for use in outing_of(bench).uses}
    assert shares == {"flight, screen on": 0.1, "flight, screen off": 0.9}
    landing = next(f for f in bench.assess(outing_of(bench)).findings if f.code == "power.phone_at_landing")
    assert landing.state is State.FINE
    bench.undo()
    assert outing_of(bench).uses == (lit,)


def test_every_remedy_has_an_act_or_is_advice() -> None:
    advice = {
        "draw_less",
        "take_caller",
        "load_bank",
        "ballast",
        "take_cable",
        "ask_airline",
        "recycle",
        "test_capacity",
    }
    assert CODES <= SAID_REMEDIES
    assert advice >= SAID_REMEDIES - CODES
