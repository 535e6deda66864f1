"""Plugs and charges at the start in the power plan, a journey by air in the plan."""

from datetime import timedelta

import pytest
from desk_steps import Key, Use, item_named, outing_of, outing_page, work_on
from power_plan_steps import BANK, FLIGHT, GLOVES, PHONE, RADIO, Open, kept, page_of, plain, row_text, with_battery
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QDialog

from kitlog.desktop.outing_page.device_plan import DevicePlan
from kitlog.desktop.outing_page.plan_editor import PlanEditor
from kitlog.desktop.outing_page.power_plan import PowerPlan
from kitlog.desktop.window import Window
from kitlog.kit.facets import Bank
from kitlog.kit.kinds import ItemState
from kitlog.outing.conditions import Condition
from kitlog.outing.outing import PlugPlan, StartCharge
from kitlog.outing.outing import Use as UseShare
from kitlog.workbench.workbench import Workbench


def usual(bench: Workbench) -> None:
    """Plan no plugs of one's own."""
    bench.save_outing(outing_of(bench).model_copy(update={"plugs": None}))


def hang(dialog: PowerPlan, bench: Workbench, name: str, at: int = FLIGHT) -> DevicePlan:
    page = page_of(dialog, name)
    page.columns[at].plug.bank.choose(item_named(bench, BANK).id)
    dialog.look()
    return page


class TestPlugs:
    def test_usual_plugs_are_shown_as_such_and_stay_so(self, plan: Open, power_bench: Workbench) -> None:
        usual(power_bench)
        before, dialog = outing_of(power_bench), plan()
        assert dialog.plugs_said.text() == "Usual plugs: Phone on Power bank after the flight (walk out, ride home)."
        assert dialog.usual_plugs.isHidden()
        columns = page_of(dialog, PHONE).columns
        bank = item_named(power_bench, BANK).id
        assert [column.plug.bank.chosen() for column in columns] == [None, None, bank, bank]
        assert row_text(dialog, PHONE) == "on a bank"
        page_of(dialog, RADIO).acts.presets[0].click()
        assert kept(dialog, power_bench).plugs is before.plugs is None

    def test_a_plug_of_ones_own_takes_the_usual_ones_over(self, plan: Open, power_bench: Workbench) -> None:
        usual(power_bench)
        dialog = plan()
        page = hang(dialog, power_bench, PHONE)
        page.columns[FLIGHT].plug.below.setText("60")
        page.columns[FLIGHT].plug.to.setText("90")
        page.columns[3].plug.bank.choose(None)
        dialog.look()
        assert dialog.plugs_said.text() == "Plugs of your own."
        phone, bank = (item_named(power_bench, name).id for name in (PHONE, BANK))
        own = PlugPlan(phase="flight", device=phone, bank=bank, connect_below_pct=60.0, charge_to_pct=90.0)
        after = kept(dialog, power_bench)
        assert after.plugs == (own, PlugPlan(phase="walk out", device=phone, bank=bank))
        planned = power_bench.assess(after).power.planned
        assert planned is not None
        assert [(plug.connect_below, plug.charge_to) for plug in planned.plugs] == [(0.6, 0.9), (None, 1.0)]

    def test_usual_again(self, plan: Open, power_bench: Workbench) -> None:
        dialog = plan()
        hang(dialog, power_bench, PHONE)
        QTest.keyClick(dialog.usual_plugs, Key.Key_Space)
        assert page_of(dialog, PHONE).columns[FLIGHT].plug.bank.chosen() is None
        assert kept(dialog, power_bench).plugs is None

    def test_none_at_all_is_a_plan_too(self, plan: Open, power_bench: Workbench) -> None:
        usual(power_bench)
        dialog = plan()
        for column in page_of(dialog, PHONE).columns:
            column.plug.bank.choose(None)
        dialog.look()
        assert dialog.plugs_said.text() == "Your own plan: nothing hangs on a bank."
        assert kept(dialog, power_bench).plugs == ()

    def test_limits_wait_for_a_bank(self, plan: Open, power_bench: Workbench) -> None:
        dialog = plan()
        plug = page_of(dialog, PHONE).columns[FLIGHT].plug
        assert not plug.below.isEnabled()
        hang(dialog, power_bench, PHONE)
        assert plug.below.isEnabled()

    def test_more_devices_than_ports_are_said_at_both(self, plan: Open, power_bench: Workbench) -> None:
        before, dialog = outing_of(power_bench), plan()
        phone, radio = hang(dialog, power_bench, PHONE), hang(dialog, power_bench, RADIO)
        said = "Flight: 2 devices at a time on Power bank, which has 1 port."
        for page in (phone, radio):
            assert page.plug_wrong.text().startswith(said)
            bank = page.columns[FLIGHT].plug.bank
            assert bank.property("wrong") is True
            assert bank.accessibleDescription().startswith(said)
            assert not page.columns[0].plug.bank.property("wrong")
        assert (row_text(dialog, PHONE), row_text(dialog, RADIO)) == ("! cannot be so", "! cannot be so")
        dialog.accept()
        assert dialog.isVisible()
        assert outing_of(power_bench) == before
        page_of(dialog, RADIO).columns[FLIGHT].plug.bank.choose(None)
        dialog.look()
        assert phone.columns[FLIGHT].plug.bank.property("wrong") is False
        assert phone.plug_wrong.isHidden()
        assert dialog.main.isEnabled()

    def test_ports_that_are_not_on_record_are_a_caution(self, plan: Open, power_bench: Workbench) -> None:
        power_bench.edit_items([item_named(power_bench, BANK).model_copy(update={"bank": Bank()})])
        dialog = plan()
        hang(dialog, power_bench, PHONE)
        page = hang(dialog, power_bench, RADIO)
        assert "Flight: 2 devices at a time on Power bank, whose ports are not on record" in page.cautions.text()
        assert dialog.main.isEnabled()

    def test_a_cable_that_is_missing_is_said_and_may_be_saved(self, plan: Open, power_bench: Workbench) -> None:
        phone = item_named(power_bench, PHONE)
        power_bench.edit_items([with_battery(phone, connector="barrel")])
        dialog = plan()
        page = hang(dialog, power_bench, PHONE)
        assert page.cautions.text().startswith("Flight: no cable on the list fits between Phone and Power bank.")
        assert page.columns[FLIGHT].plug.bank.accessibleDescription() == page.cautions.text()
        assert kept(dialog, power_bench).plugs

    def test_what_takes_no_charge_is_said(self, plan: Open, power_bench: Workbench) -> None:
        page = hang(plan(), power_bench, GLOVES)
        assert "its battery gains nothing" in page.cautions.text()

    @pytest.mark.parametrize(
        ("below", "to", "said"),
        [
            ("60", "50", "Flight: charging would end before it begins."),
            ("x", "", "Flight, put on below: write a figure from 0 to 100."),
            ("", "101", "Flight, charged to: write a figure from 0 to 100."),
        ],
    )
    def test_limits_that_cannot_be_so(self, plan: Open, power_bench: Workbench, below: str, to: str, said: str) -> None:
        dialog = plan()
        page = hang(dialog, power_bench, PHONE)
        plug = page.columns[FLIGHT].plug
        plug.below.setText(below)
        plug.to.setText(to)
        dialog.look()
        assert page.plug_wrong.text().startswith(said)
        assert plug.below.property("wrong") or plug.to.property("wrong")
        assert not dialog.main.isEnabled()

    def test_the_page_of_the_bank_says_what_hangs_on_it(self, plan: Open, power_bench: Workbench) -> None:
        dialog = plan()
        assert page_of(dialog, BANK).hanging.text().startswith("Nothing hangs on it.")
        hang(dialog, power_bench, PHONE)
        assert page_of(dialog, BANK).hanging.text() == "Hangs on it: Phone (flight)."

    def test_a_plan_that_contradicts_itself_can_be_mended_here(self, plan: Open, power_bench: Workbench) -> None:
        phone, bank = (item_named(power_bench, name).id for name in (PHONE, BANK))
        flight = PlugPlan(phase="flight", device=phone, bank=bank, connect_below_pct=40.0)
        gone = PlugPlan(phase="night", device=phone, bank=bank)
        twice = flight.model_copy(update={"connect_below_pct": None})
        power_bench.save_outing(outing_of(power_bench).model_copy(update={"plugs": (flight, gone, twice)}))
        dialog = plan()
        assert not dialog.changed()
        assert kept(dialog, power_bench).plugs == (flight,)

    def test_plugs_of_what_stays_at_home_are_kept(self, plan: Open, power_bench: Workbench) -> None:
        gloves, bank = (item_named(power_bench, name).id for name in (GLOVES, BANK))
        power_bench.leave_out(outing_of(power_bench).id, gloves)
        home = PlugPlan(phase="flight", device=gloves, bank=bank)
        power_bench.save_outing(outing_of(power_bench).model_copy(update={"plugs": (home,)}))
        dialog = plan()
        assert GLOVES not in [thing.name for thing in dialog.pages.things]
        hang(dialog, power_bench, PHONE)
        plugs = kept(dialog, power_bench).plugs
        assert plugs is not None
        assert plugs[0] == home
        assert [plug.device for plug in plugs[1:]] == [item_named(power_bench, PHONE).id]

    @pytest.mark.parametrize("state", [ItemState.RETIRED, ItemState.LENT, ItemState.AWAY])
    def test_plugs_on_a_bank_that_is_not_at_hand_are_without_effect_and_say_why(
        self, plan: Open, power_bench: Workbench, state: ItemState
    ) -> None:
        bank, phone = item_named(power_bench, BANK), item_named(power_bench, PHONE)
        plugs = (PlugPlan(phase="flight", device=phone.id, bank=bank.id),)
        power_bench.save_outing(outing_of(power_bench).model_copy(update={"plugs": plugs}))
        power_bench.set_state([bank.id], state)
        dialog = plan()
        page = page_of(dialog, PHONE)
        assert dialog.assessed is not None
        assert dialog.assessed.power.planned is not None
        assert dialog.assessed.power.planned.plugs == ()
        assert page.cautions.text() == f"Flight: without effect, Power bank, {state.value}."
        assert page.columns[FLIGHT].plug.bank.currentText() == f"Power bank, {state.value}"
        assert row_text(dialog, PHONE) == "as usual"
        assert dialog.plugs_said.text() == "Plugs of your own, 1 of them without effect."
        assert kept(dialog, power_bench).plugs == plugs


class TestStarts:
    def test_a_charge_seen_is_told_with_its_time_and_can_be_begun_with(
        self, plan: Open, power_bench: Workbench
    ) -> None:
        phone = item_named(power_bench, PHONE)
        power_bench.note_on_hand({phone.id: 62.0})
        dialog = plan()
        page = page_of(dialog, PHONE)
        assert plain(page.seen.text()).startswith("last seen with 62 % (")
        assert plain(page.take.words) == "Begin with 62 %"
        page.take.click()
        dialog.look()
        assert page.take.isHidden()
        assert page.start.said.text() == "as entered; what is seen later does not change it"
        assert row_text(dialog, PHONE).replace("\u00a0", " ") == "from 62 %"
        assert kept(dialog, power_bench).starts == (
            StartCharge(item=phone.id, low_pct=62.0, likely_pct=62.0, high_pct=62.0),
        )

    def test_a_later_reading_changes_no_start_and_is_offered(self, plan: Open, power_bench: Workbench) -> None:
        phone = item_named(power_bench, PHONE)
        start = StartCharge(item=phone.id, low_pct=62.0, likely_pct=62.0, high_pct=62.0)
        power_bench.save_outing(outing_of(power_bench).model_copy(update={"starts": (start,)}))
        power_bench.note_on_hand({phone.id: 62.0})
        dialog = plan()
        page = page_of(dialog, PHONE)
        assert page.take.isHidden()
        power_bench.note_on_hand({phone.id: 41.0})
        assert plain(page.take.words) == "Begin with 41 %"
        assert page.take.isVisible()
        assert page.start.start() == start

    def test_a_charge_seen_days_ago_is_told_with_its_day_and_not_offered(
        self, plan: Open, power_bench: Workbench
    ) -> None:
        long_ago = power_bench.now() - timedelta(days=3)
        phone = item_named(power_bench, PHONE)
        power_bench.edit_items([with_battery(phone, on_hand_pct=62.0, on_hand_at=long_ago)])
        page = page_of(plan(), PHONE)
        assert plain(page.seen.text()) == "last seen with 62 % (5 May)"
        assert page.take.isHidden()

    def test_nothing_entered_is_full_and_said(self, plan: Open) -> None:
        start = page_of(plan(), PHONE).start
        assert start.said.text() == "nothing entered: reckoned as full"
        assert start.start() is None

    def test_low_likely_and_high(self, plan: Open, power_bench: Workbench) -> None:
        dialog = plan()
        for name, texts in ((PHONE, ("60", "80", "95")), (BANK, ("", "50", ""))):
            for field, text in zip(page_of(dialog, name).start.fields, texts, strict=True):
                field.setText(text)
        dialog.look()
        assert row_text(dialog, PHONE).replace("\u00a0", " ") == "from 80 %"
        after = kept(dialog, power_bench)
        phone, bank = (item_named(power_bench, name).id for name in (PHONE, BANK))
        assert after.starts == (
            StartCharge(item=phone, low_pct=60.0, likely_pct=80.0, high_pct=95.0),
            StartCharge(item=bank, low_pct=50.0, likely_pct=50.0, high_pct=50.0),
        )
        planned = power_bench.assess(after).power.planned
        assert planned is not None
        assert next(device.start for device in planned.devices if device.id == phone) == 0.8

    def test_emptied_it_is_full_again(self, plan: Open, power_bench: Workbench) -> None:
        phone = item_named(power_bench, PHONE).id
        start = StartCharge(item=phone, low_pct=60.0, likely_pct=80.0, high_pct=95.0)
        power_bench.save_outing(outing_of(power_bench).model_copy(update={"starts": (start,)}))
        dialog = plan()
        fields = page_of(dialog, PHONE).start.fields
        assert [field.text() for field in fields] == ["60", "80", "95"]
        for field in fields:
            field.clear()
        assert kept(dialog, power_bench).starts == ()

    @pytest.mark.parametrize(
        ("texts", "said"),
        [
            (("90", "80", ""), "Low, likely and high must rise."),
            (("50", "", ""), "Give the likely charge too, or leave all three empty for full."),
            (("", "120", ""), "Charge at the start: write a figure from 0 to 100."),
            (("", "unknown", ""), "Charge at the start: write a figure from 0 to 100."),
        ],
    )
    def test_what_cannot_be_so(
        self, plan: Open, power_bench: Workbench, texts: tuple[str, str, str], said: str
    ) -> None:
        before, dialog = outing_of(power_bench), plan()
        start = page_of(dialog, PHONE).start
        for field, text in zip(start.fields, texts, strict=True):
            field.setText(text)
        dialog.look()
        assert start.note.text() == said
        assert any(field.property("wrong") for field in start.fields)
        assert not dialog.main.isEnabled()
        dialog.accept()
        assert outing_of(power_bench) == before


class TestPlan:
    def test_shares_and_plugs_follow_a_phase_that_is_renamed(
        self, power_bench: Workbench, window: Window, in_dialog: Use
    ) -> None:
        phone, bank = (item_named(power_bench, name).id for name in (PHONE, BANK))
        update = {
            "uses": (UseShare(item=phone, phase="flight", way="flight, screen on", share=1.0),),
            "plugs": tuple(PlugPlan(phase=phase, device=phone, bank=bank) for phase in ("flight", "walk out")),
        }
        power_bench.save_outing(outing_of(power_bench).model_copy(update=update))

        def edit(dialog: QDialog) -> None:
            assert isinstance(dialog, PlanEditor)
            dialog.phases.rows[FLIGHT].name.setText("first flight")
            dialog.phases.remove(dialog.phases.rows[2])
            dialog.accept()

        in_dialog(outing_page(window).acts.edit_plan, edit)
        after = outing_of(power_bench)
        assert [use.phase for use in after.uses] == ["first flight"]
        assert after.plugs == (PlugPlan(phase="first flight", device=phone, bank=bank),)
        assert power_bench.assess(after).power.likely is not None

    def test_a_journey_by_airliner_is_ticked_in_plain_words(
        self, power_bench: Workbench, window: Window, in_dialog: Use
    ) -> None:
        """What the rules for baggage say then stands among the findings (IATA, as in `air_travel.toml`)."""
        page = outing_page(window)

        def edit(dialog: QDialog) -> None:
            assert isinstance(dialog, PlanEditor)
            choice = dialog.conditions.choices[Condition.BY_AIR]
            assert choice.accessibleName() == "Journey by airliner"
            assert choice.currentText() == "no, not ticked"
            choice.choose(True)
            dialog.accept()

        in_dialog(page.acts.edit_plan, edit)
        after = outing_of(power_bench)
        assert after.conditions == {Condition.BY_AIR: True}
        codes = {finding.code for finding in power_bench.assess(after).findings}
        assert "power.air_cabin" in codes
        said = [label.text() for label in page.plan.findChildren(type(page.plan.kit))]
        assert "yes: by air" in said


def test_the_old_result_is_not_shown_as_new(power_bench: Workbench, window: Window) -> None:
    """A plan whose shares do not add up, as another program may have left it: the board is greyed and says so."""
    page = outing_page(window)
    assert not page.outdated.is_shown
    phone = item_named(power_bench, PHONE).id
    half = (UseShare(item=phone, phase="flight", way="flight, screen on", share=0.5),)
    power_bench.save_outing(outing_of(power_bench).model_copy(update={"uses": half}))
    assert page.outdated.is_shown
    assert "add up" in page.outdated.why.text()
    assert not page.board.isEnabled()
    window.action_set.by_id["edit.undo"].trigger()
    assert not page.outdated.is_shown


def test_such_a_plan_can_be_mended_in_the_dialog(power_bench: Workbench, plan: Open) -> None:
    phone = item_named(power_bench, PHONE).id
    half = (UseShare(item=phone, phase="flight", way="flight, screen on", share=0.5),)
    power_bench.save_outing(outing_of(power_bench).model_copy(update={"uses": half}))
    dialog = plan()
    assert row_text(dialog, PHONE) == "! cannot be so"
    page = page_of(dialog, PHONE)
    assert plain(page.columns[FLIGHT].total.text()) == "50 %, not 100"
    page.acts.where.choose("flight")
    page.acts.usual.click()
    assert kept(dialog, power_bench).uses == ()


def test_an_outing_without_flight_or_phases_has_no_usual_plug(power_bench: Workbench, plan: Open) -> None:
    work_on(power_bench, "on foot")
    power_bench.save_outing(outing_of(power_bench).model_copy(update={"phases": (), "uses": (), "plugs": None}))
    dialog = plan()
    assert dialog.plugs_said.text() == "Usual plugs: nothing hangs on a bank."
    assert page_of(dialog, PHONE).columns == []
