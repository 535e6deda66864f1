"""The power plan of an outing as a pilot makes it: shares of use, plugs, charges at the start."""

import pytest
from desk_steps import Key, Use, check_controls, item_named, outing_of, outing_page, work_on
from power_plan_steps import BANK, FLIGHT, GLOVES, PHONE, RADIO, Open, kept, page_of, plain, row_text, with_battery
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog

from kitlog.desktop.outing_page.percent_field import percent_of
from kitlog.desktop.outing_page.power_plan import PowerPlan
from kitlog.desktop.outing_page.wide_area import WideArea
from kitlog.desktop.window import Window
from kitlog.kit.facets import Share
from kitlog.kit.kinds import PhaseWay
from kitlog.outing.outing import Use as UseShare
from kitlog.workbench.workbench import Workbench


class TestReach:
    def test_it_opens_from_the_plan_and_from_the_menu(self, window: Window, in_dialog: Use, qtbot) -> None:
        page = outing_page(window)
        seen: list[QDialog] = []
        in_dialog(lambda: qtbot.mouseClick(page.plan.power_act, Qt.MouseButton.LeftButton), seen.append)
        in_dialog(window.action_set.by_id["outing.power_plan"].trigger, seen.append)
        assert [type(dialog) for dialog in seen] == [PowerPlan, PowerPlan]

    def test_all_that_takes_the_focus_is_named(self, plan: Open) -> None:
        dialog = plan()
        for thing in dialog.pages.things:
            dialog.pages.choose(thing.id)
            check_controls(dialog)

    def test_tab_goes_from_the_list_through_the_page_to_the_buttons(self, plan: Open) -> None:
        dialog = plan()
        page = page_of(dialog, RADIO)
        dialog.pages.list.setFocus()
        columns = [field for column in page.columns for field in column.fields.values()]
        expected = [*page.start.fields, *page.acts.stops, *columns, dialog.usual_plugs, dialog.leave, dialog.main]
        passed = []
        while (focus := QApplication.focusWidget()) is not dialog.main:
            passed.append(focus)
            assert len(passed) < 100
            QTest.keyClick(focus, Key.Key_Tab)
        assert [widget for widget in [*passed, dialog.main] if widget in expected] == expected

    def test_tab_goes_down_a_phase_and_arrows_too(self, plan: Open) -> None:
        dialog = plan()
        page = page_of(dialog, RADIO)
        column, after = page.columns[0], page.columns[1]
        fields = [*column.fields.values()]
        fields[0].setFocus()
        for expected in (*fields[1:], column.plug.bank, after.fields["transmit 5 W"]):
            QTest.keyClick(QApplication.focusWidget(), Key.Key_Tab)
            assert QApplication.focusWidget() is expected
        QTest.keyClick(QApplication.focusWidget(), Key.Key_Down)
        assert QApplication.focusWidget() is after.fields["receive"]
        QTest.keyClick(QApplication.focusWidget(), Key.Key_Up)
        assert QApplication.focusWidget() is after.fields["transmit 5 W"]

    def test_what_is_described_with_no_way_of_use_says_so(self, plan: Open, power_bench: Workbench) -> None:
        gloves = item_named(power_bench, GLOVES)
        power_bench.edit_items([with_battery(gloves, ways=())])
        assert page_of(plan(), GLOVES).columns == []

    def test_a_phase_of_which_nobody_said_anything_is_not_shown_as_off(
        self, plan: Open, power_bench: Workbench
    ) -> None:
        gloves = item_named(power_bench, GLOVES)
        assert gloves.battery is not None
        foot = (Share(during=PhaseWay.WALK_OUT, share=1.0),)
        ways = tuple(
            way.model_copy(update={"shares": foot if n == 0 else ()}) for n, way in enumerate(gloves.battery.ways)
        )
        power_bench.edit_items([with_battery(gloves, ways=ways)])
        dialog = plan()
        before = row_text(dialog, GLOVES)
        page = page_of(dialog, GLOVES)
        assert "left open" in before
        assert "left open" in page.summary()
        flight = next(column for column in page.columns if column.phase.way is PhaseWay.FLIGHT)
        assert (flight.total.text(), flight.mean.text(), flight.fault()) == ("left open", "not known", "")
        assert flight.shares() == {}
        flight.put({"off": 1.0})
        assert (plain(flight.total.text()), flight.mean.text()) == ("100 %, own", "nothing")

    @pytest.mark.parametrize("words", ["on foot", "course"])
    def test_other_outings_open_and_come_back_as_they_were(
        self, plan: Open, power_bench: Workbench, words: str
    ) -> None:
        before = work_on(power_bench, words)
        dialog = plan()
        for thing in dialog.pages.things:
            dialog.pages.choose(thing.id)
        assert dialog.draft() == before
        assert not dialog.changed()


class TestShares:
    def test_the_sum_and_the_mean_draw_follow_while_one_types(self, plan: Open, power_bench: Workbench) -> None:
        """By hand: 0.75 x 1.1 W + 0.25 x 2.7 (2.3 to 3.1) W = 1.5 (1.4 to 1.6) W; the starter figure makes the mean a guess."""
        dialog = plan()
        column = page_of(dialog, PHONE).columns[FLIGHT]
        assert plain(column.total.text()) == "100 %, usual"
        assert plain(column.mean.text()) == "1.10 W"
        column.fields["flight, screen off"].setText("75")
        assert plain(column.total.text()) == "75 %, not 100"
        column.fields["flight, screen on"].setText("25 %")
        assert plain(column.total.text()) == "100 %, own"
        assert plain(column.mean.text()) == "1.50 W"
        assert (column.range.text(), column.sure.text()) == ("1.40–1.60", "guess")
        after = kept(dialog, power_bench)
        phone = item_named(power_bench, PHONE).id
        assert after.uses == (
            UseShare(item=phone, phase="flight", way="flight, screen off", share=0.75),
            UseShare(item=phone, phase="flight", way="flight, screen on", share=0.25),
        )
        drawn = power_bench.assess(after).power.draws[phone]["flight"]
        assert drawn.likely_w == pytest.approx(1.5)

    def test_each_way_shows_its_draw_and_how_sure(self, plan: Open) -> None:
        dialog = plan()
        page = page_of(dialog, PHONE)
        said = [plain(label.text()) for label in page.findChildren(type(page.columns[0].sure))]
        assert "2.70 W, 2.30–3.10" in said
        assert "starter figure, not measured" in said
        assert "1.10 W, measured" in said
        assert "draws nothing" in said

    @pytest.mark.parametrize(
        ("text", "said"),
        [
            ("60", "Flight: the shares add up to 60 %, not to 100 %. Give the 40 %"),
            ("140", "Flight, share: write a figure from 0 to 100."),
            ("half", "Flight, share: write a figure from 0 to 100."),
            ("-5", "Flight, share: write a figure from 0 to 100."),
        ],
    )
    def test_what_cannot_be_so_is_said_and_the_old_plan_stays(
        self, plan: Open, power_bench: Workbench, text: str, said: str
    ) -> None:
        before, dialog = outing_of(power_bench), plan()
        page = page_of(dialog, PHONE)
        field = page.columns[FLIGHT].fields["flight, screen off"]
        field.setText(text)
        dialog.look()
        assert plain(page.wrong.text()).startswith(said)
        assert field.property("wrong") is True
        assert plain(field.accessibleDescription()).startswith(said)
        assert not page.columns[0].fields["at launch"].property("wrong")
        assert page.columns[FLIGHT].mean.text() == "–"
        assert row_text(dialog, PHONE) == "! cannot be so"
        assert dialog.assessed is None
        assert dialog.live.text() == "not known while something cannot be so"
        assert not dialog.main.isEnabled()
        assert PHONE in dialog.reason.text()
        dialog.accept()
        assert dialog.isVisible()
        assert outing_of(power_bench) == before
        field.setText("100")
        dialog.look()
        assert dialog.main.isEnabled()
        assert field.property("wrong") is False

    def test_too_much_is_said_with_how_much(self, plan: Open) -> None:
        page = page_of(plan(), PHONE)
        page.columns[FLIGHT].fields["on the ground"].setText("12,5")
        assert plain(page.wrong.text()) == "Flight: the shares add up to 112.5 %, not to 100 %. Take 12.5 % away."

    def test_the_rest_goes_to_the_way_chosen(self, plan: Open, power_bench: Workbench) -> None:
        dialog = plan()
        page = page_of(dialog, GLOVES)
        for column in page.columns:
            column.fields["medium"].setText("")
            column.fields["off"].setText("")
            column.fields["high"].setText("20")
        page.acts.rest_to.choose("off")
        QTest.keyClick(page.acts.rest, Key.Key_Space)
        assert [plain(column.total.text()) for column in page.columns] == ["100 %, own"] * len(page.columns)
        wanted = {column.phase.name: column.shares() for column in page.columns}
        uses = kept(dialog, power_bench).uses
        assert {use.way for use in uses} >= {"high", "off"}
        for phase, shares in wanted.items():
            assert {use.way: use.share for use in uses if use.phase == phase} == pytest.approx(shares)

    def test_the_rest_is_not_given_where_there_is_none(self, plan: Open) -> None:
        page = page_of(plan(), GLOVES)
        column = page.columns[FLIGHT]
        column.fields["high"].setText("90")
        column.fields["medium"].setText("90")
        page.acts.rest_to.choose("off")
        page.acts.rest.click()
        assert column.fields["off"].pct() is None
        page.acts.rest_to.choose("medium")
        page.acts.rest.click()
        assert column.fields["medium"].pct() == pytest.approx(10)

    def test_as_usual_takes_the_own_shares_out_again(self, plan: Open, power_bench: Workbench) -> None:
        before = outing_of(power_bench)
        dialog = plan()
        page_of(dialog, RADIO).acts.presets[1].click()
        planned = kept(dialog, power_bench)
        assert {use.way: use.share for use in planned.uses if use.phase == "flight"} == {
            "transmit 5 W": 0.05,
            "receive": 0.25,
            "standby": 0.7,
        }
        again = plan()
        page = page_of(again, RADIO)
        assert row_text(again, RADIO) == "own shares"
        page.acts.where.choose("flight")
        page.acts.usual.click()
        assert not any(use.phase == "flight" for use in again.draft().uses)
        assert any(use.phase == "walk out" for use in again.draft().uses)
        page.acts.where.choose(None)
        page.acts.usual.click()
        assert kept(again, power_bench) == before

    def test_presets_are_for_one_phase_too_and_name_their_shares(self, plan: Open) -> None:
        page = page_of(plan(), RADIO)
        named = [plain(act.accessibleName()) for act in page.acts.presets]
        assert named[0] == "Preset 5/5/90: 5 % transmit 5 W, 5 % receive, 90 % standby"
        page.acts.where.choose("flight")
        page.acts.presets[1].click()
        assert [column.planned for column in page.columns] == [False, True, False, False]

    def test_presets_that_lack_a_way_are_not_offered_and_say_what_to_do(
        self, plan: Open, power_bench: Workbench
    ) -> None:
        radio = item_named(power_bench, RADIO)
        assert radio.battery is not None
        ways = tuple(way for way in radio.battery.ways if way.name != "receive")
        power_bench.edit_items([with_battery(radio, ways=ways)])
        acts = page_of(plan(), RADIO).acts
        assert acts.presets == []
        assert acts.lacking.text() == (
            "5/5/90 and 5/25/70 need ways of use for “receive”: describe them at the item in Kit."
        )
        assert not hasattr(page_of(plan(), PHONE).acts, "lacking")

    def test_a_way_that_is_gone_is_said_at_once(self, plan: Open, power_bench: Workbench) -> None:
        outing, gloves = outing_of(power_bench), item_named(power_bench, GLOVES)
        uses = (
            UseShare(item=gloves.id, phase="flight", way="low", share=0.5),
            UseShare(item=gloves.id, phase="flight", way="high", share=0.5),
        )
        power_bench.save_outing(outing.model_copy(update={"uses": uses}))
        dialog = plan()
        assert row_text(dialog, GLOVES) == "! cannot be so"
        page = page_of(dialog, GLOVES)
        assert "“low” is no way of use of it any more." in page.wrong.text()
        page.columns[FLIGHT].fields["medium"].setText("50")
        assert {use.way for use in kept(dialog, power_bench).uses} == {"medium", "high"}


def test_one_dialog_is_one_step_to_undo(plan: Open, power_bench: Workbench, window: Window) -> None:
    before, dialog = outing_of(power_bench), plan()
    page_of(dialog, RADIO).acts.presets[0].click()
    phone = page_of(dialog, PHONE)
    phone.start.fields[1].setText("80")
    phone.columns[FLIGHT].plug.bank.choose(item_named(power_bench, BANK).id)
    after = kept(dialog, power_bench)
    assert (bool(after.uses), bool(after.plugs), bool(after.starts)) == (True, True, True)
    said = outing_page(window).plan.powered.text()
    assert said.startswith("Own shares of use for 1 device. 1 plug of your own. ")
    assert said.endswith(" 1 charge at the start entered, all else begins full, assumed.")
    power_bench.undo()
    assert outing_of(power_bench) == before


def test_leaving_asks_only_where_something_was_changed(plan: Open, power_bench: Workbench) -> None:
    before, dialog = outing_of(power_bench), plan()
    page = page_of(dialog, RADIO)
    page.acts.where.choose("flight")
    assert not dialog.changed()
    page.columns[FLIGHT].fields["standby"].setText("80")
    assert dialog.changed()
    dialog.reject()
    assert dialog.isVisible()
    dialog.discard()
    assert outing_of(power_bench) == before


@pytest.mark.parametrize(
    ("text", "pct"),
    [("5", 5), ("5 %", 5), ("2,5", 2.5), (" 100% ", 100), ("100.1", None), ("", None), ("5 5", None), ("1e1", None)],
)
def test_figures_as_they_are_typed(text: str, pct: float | None) -> None:
    assert percent_of(text) == pct


@pytest.mark.parametrize(("wide", "high"), [(700, 540), (920, 540), (1150, 720)])
def test_the_plan_scrolls_in_one_place_and_the_bar_of_its_table_is_in_sight(
    plan: Open, qtbot, wide: int, high: int
) -> None:
    """One bar up and down; where the phases have no room, a bar sideways at the foot of what is seen."""
    dialog = plan()
    dialog.resize(wide, high)
    QApplication.processEvents()
    page = page_of(dialog, PHONE)
    QApplication.processEvents()
    assert dialog.scroller.verticalScrollBar().maximum() == 0
    table = page.findChild(WideArea)
    assert table is not None
    own, bar = table.horizontalScrollBar(), page.sideways
    assert bar.isVisible() == (own.maximum() > 0)
    if bar.isVisible():
        foot = bar.mapTo(dialog, bar.rect().bottomRight())
        assert foot.y() < dialog.main.mapTo(dialog, QPoint(0, 0)).y()
        assert foot.x() < dialog.width()
        bar.setValue(bar.maximum())
        assert own.value() == own.maximum() > 0
        own.setValue(0)
        assert bar.value() == 0
