"""Ways of use, connectors and chargers as a pilot enters them in the editor of an item."""

from datetime import date

import pytest
from desk_steps import Use, item_named
from item_editor_steps import Open, battery, figure, new_phone, plain, ways
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from kitlog.desktop.kit_page.cable_form import CableForm
from kitlog.desktop.kit_page.facet_form import FacetForm
from kitlog.desktop.kit_page.item_editor import ItemEditor
from kitlog.desktop.kit_page.page import KitPage
from kitlog.desktop.kit_page.ways_form import WaysForm
from kitlog.desktop.parts.tab_order import tab_stops
from kitlog.desktop.undo_words import undo_text
from kitlog.desktop.window import Window
from kitlog.kit.facets import Battery, Charger, ChargerPort, Share, WayOfUse
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, PhaseWay
from kitlog.workbench.workbench import Workbench


class TestWays:
    def test_only_the_fields_of_the_description_are_shown(self, edit: Open) -> None:
        form = new_phone(edit(None))
        form.add.click()
        (row,) = form.rows
        for given, shown in (
            ("watts", {"power_w", "low_w", "high_w"}),
            ("current", {"current_ma", "at_v"}),
            ("hours", {"lasts_h"}),
            ("drop", {"from_pct", "to_pct", "over_h", "measured_on"}),
        ):
            row.given.choose(given)
            QApplication.processEvents()
            assert {name for name, field in row.draws.fields.items() if field.isVisible()} == shown

    def test_the_draw_is_told_at_once_with_its_range(self, edit: Open) -> None:
        editor = edit(None)
        form = new_phone(editor)
        form.add.click()
        (row,) = form.rows
        row.given.choose("drop")
        assert row.result.text() == "not known: give the charge at both ends, and the hours between"
        for name, number in (("from_pct", 100), ("to_pct", 63), ("over_h", 4.5)):
            row.draws.fields[name].put(number)  # type: ignore[arg-type]
        # 17.3 Wh x 37 % / 4.5 h = 1.4224 W; 36 and 38 points give 1.384 and 1.461.
        assert plain(row.result.text()) == "1.42 W, 1.38–1.46, from 100 to 63 % in 4.5 h, measured"
        figure(battery(editor), "health_pct", 50)
        assert plain(row.result.text()).startswith("0.71 W, 0.69–0.73")
        figure(battery(editor), "wh", None)
        assert row.result.text() == "not known: the battery’s energy is missing"

    def test_a_drop_that_is_too_small_is_refused_in_words(self, edit: Open) -> None:
        form = new_phone(edit(None))
        form.add.click()
        (row,) = form.rows
        row.given.choose("drop")
        for name, number in (("from_pct", 100), ("to_pct", 98.5), ("over_h", 1)):
            row.draws.fields[name].put(number)  # type: ignore[arg-type]
        assert "says too little about the draw" in row.result.text()
        assert "more than 2 points" in row.result.text()
        assert row.result.property("tone") == "stop"

    def test_a_new_measurement_is_of_today(self, edit: Open) -> None:
        form = new_phone(edit(None))
        form.add.click()
        form.rows[0].given.choose("drop")
        assert form.rows[0].draws.day.day() == date(2026, 5, 8)

    def test_starters_come_with_their_range_and_source(self, edit: Open) -> None:
        form = new_phone(edit(None))
        form.starters.setCurrentIndex(1)
        form.take_starter()
        first = form.ways()[0]
        assert (first.low_w, first.power_w, first.high_w, first.basis) == (0.5, 0.9, 1.6, "starter")
        assert first.source.startswith("Network on")
        assert "starter figure, not measured" in form.rows[0].result.text()
        assert first.source in form.rows[0].result.text()

    def test_a_changed_starter_figure_is_a_guess(self, edit: Open) -> None:
        form = new_phone(edit(None))
        form.starters.setCurrentIndex(1)
        form.take_starter()
        form.rows[0].draws.fields["power_w"].put(1.0)  # type: ignore[arg-type]
        first = form.ways()[0]
        assert (first.basis, first.source, first.power_w) == ("guess", "", 1.0)

    def test_starters_leave_what_is_measured(self, edit: Open, demo_bench: Workbench) -> None:
        form = ways(edit(item_named(demo_bench, "Phone")))
        own = [way for way in form.ways() if way.basis == "measured"]
        form.starters.setCurrentIndex(1)
        form.take_starter()
        assert [way for way in form.ways() if way.basis == "measured"] == own
        assert "flight, screen on" not in {way.name for way in form.ways()}

    def test_an_own_way_takes_the_shares_of_the_starter_of_its_name(self, edit: Open) -> None:
        form = new_phone(edit(None))
        form.starters.setCurrentIndex(1)
        form.take_starter()
        offered = {way.name: way.shares for way in form.ways()}
        name = "tracking, screen off"
        assert PhaseWay.FLIGHT in {share.during for share in offered[name]}
        form = new_phone(edit(None))
        form.add.click()
        form.rows[0].name.setText(name)
        form.rows[0].given.choose("drop")
        for field, number in (("from_pct", 100), ("to_pct", 63), ("over_h", 4.5)):
            form.rows[0].draws.fields[field].put(number)  # type: ignore[arg-type]
        form.starters.setCurrentIndex(1)
        form.take_starter()
        own = next(way for way in form.ways() if way.name == name)
        assert (own.basis, own.shares) == ("measured", offered[name])

    def test_off_is_told_from_what_nobody_said(self, edit: Open) -> None:
        form = new_phone(edit(None))
        form.add.click()
        table, flight = form.table, [*PhaseWay].index(PhaseWay.FLIGHT)
        assert table.item(1, flight).text() == "–"
        table.item(0, flight).setText("0")
        assert table.item(1, flight).text() == "100"
        assert table.shares() == [(Share(during=PhaseWay.FLIGHT, share=0.0),)]

    def test_an_untouched_item_stays_as_exact_as_it_is(self, edit: Open, demo_bench: Workbench) -> None:
        fine = WayOfUse(
            name="t", power_w=0.123456, lasts_h=9.123456, basis="maker", shares=(Share(during="night", share=1 / 3),)
        )
        item = Item(id="x", name="X", kind=Kind.PHONE, battery=Battery(wh=17.34567, ways=(fine,)))
        assert edit(item).draft() == item
        for one in demo_bench.items():
            assert edit(one).draft() == one

    def test_another_description_drops_the_former_one(self, edit: Open) -> None:
        way = WayOfUse(name="t", from_pct=100, to_pct=50, over_h=4, basis="measured")
        form = ways(edit(Item(id="x", name="X", kind=Kind.PHONE, battery=Battery(wh=10, ways=(way,)))))
        form.rows[0].given.choose("watts")
        form.rows[0].draws.fields["power_w"].put(2)  # type: ignore[arg-type]
        (now,) = form.ways()
        assert (now.described, now.power_w, now.from_pct) == ("watts", 2, None)

    def test_a_measurement_replaces_the_starter_figure_and_undo_says_what_it_was(
        self, window: Window, demo_bench: Workbench, in_dialog: Use
    ) -> None:
        page = window.page("kit")
        assert isinstance(page, KitPage)
        page.select_ids([item_named(demo_bench, "Phone").id])

        def enter(dialog: QWidget) -> None:
            assert isinstance(dialog, ItemEditor)
            row = next(row for row in ways(dialog).rows if row.called() == "flight, screen on")
            row.given.choose("drop")
            for name, number in (("from_pct", 90), ("to_pct", 50), ("over_h", 2)):
                row.draws.fields[name].put(number)  # type: ignore[arg-type]
            assert "before: 2.60 W, starter figure, not measured" in plain(row.result.text())
            dialog.accept()

        in_dialog(page.acts.edit_item, enter)
        phone = item_named(demo_bench, "Phone")
        assert phone.battery is not None
        way = next(way for way in phone.battery.ways if way.name == "flight, screen on")
        assert (way.described, way.basis, way.power_w, way.low_w, way.source) == ("drop", "measured", None, None, "")
        assert demo_bench.undoable is not None
        told = plain(undo_text(demo_bench.undoable, {}))
        assert told == ("Undo: measurement for Phone, flight, screen on (before: 2.60 W, starter figure, not measured)")

    def test_a_way_without_a_name_is_refused_not_lost(self, edit: Open) -> None:
        editor = edit(None)
        form = new_phone(editor)
        form.add.click()
        form.rows[0].draws.fields["power_w"].put(1)  # type: ignore[arg-type]
        editor.accept()
        assert editor.isVisible()
        assert editor.wrong()


class TestShares:
    def type_share(self, form: WaysForm, row: int, way: PhaseWay, text: str) -> None:
        form.table.setCurrentCell(row, list(PhaseWay).index(way))
        form.table.item(row, list(PhaseWay).index(way)).setText(text)

    def test_shares_are_edited_in_per_cent_and_the_rest_is_off(self, edit: Open) -> None:
        form = new_phone(edit(None))
        form.starters.setCurrentIndex(1)
        form.take_starter()
        self.type_share(form, 0, PhaseWay.FLIGHT, "62,5 %")
        assert form.ways()[0].shares == (Share(during=PhaseWay.FLIGHT, share=0.625),)
        flight = list(PhaseWay).index(PhaseWay.FLIGHT)
        assert form.table.item(len(form.rows), flight).text() == "37.5"

    @pytest.mark.parametrize("typed", ["150", "-5", "most of it", "inf", "nan"])
    def test_what_is_no_share_stays_and_is_refused(self, edit: Open, typed: str) -> None:
        editor = edit(None)
        form = new_phone(editor)
        form.starters.setCurrentIndex(1)
        form.take_starter()
        before, known = form.table.shares(), editor._desk.bench.items()
        self.type_share(form, 0, PhaseWay.FLIGHT, typed)
        cell = form.table.item(0, list(PhaseWay).index(PhaseWay.FLIGHT))
        assert cell.text() == typed
        assert "0 to 100" in cell.toolTip()
        assert form.wrong.isVisible()
        assert f"“{typed}”" in form.wrong.text()
        assert form.rows[0].called() in form.wrong.text()
        assert form.table.shares() == before
        editor.accept()
        assert editor.isVisible()
        assert f"“{typed}”" in editor.wrong()
        assert editor._desk.bench.items() == known
        self.type_share(form, 0, PhaseWay.FLIGHT, "50")
        assert not form.wrong.isVisible()
        assert not cell.toolTip()
        assert form.ways()[0].shares[0] == Share(during=PhaseWay.FLIGHT, share=0.5)

    def test_a_changed_share_is_not_left_unasked(self, edit: Open, demo_bench: Workbench) -> None:
        editor = edit(item_named(demo_bench, "Handheld radio"))
        assert not editor.changed()
        self.type_share(ways(editor), 0, PhaseWay.FLIGHT, "4")
        assert editor.changed()

    def test_more_than_the_whole_time_is_refused(self, edit: Open) -> None:
        editor = edit(None)
        form = new_phone(editor)
        form.starters.setCurrentIndex(1)
        form.take_starter()
        self.type_share(form, 1, PhaseWay.FLIGHT, "20")
        editor.accept()
        assert editor.isVisible()
        assert "120" in editor.wrong()
        assert "flight" in editor.wrong()

    def test_keys_type_and_empty_a_share(self, edit: Open) -> None:
        form = new_phone(edit(None))
        form.add.click()
        QApplication.processEvents()
        form.rows[0].name.setText("on")
        form.rows[0].draws.fields["power_w"].put(1)  # type: ignore[arg-type]
        form.table.setFocus()
        form.table.setCurrentCell(0, 0)
        QTest.keyClick(form.table, Qt.Key.Key_Right)
        QTest.keyClicks(form.table, "5")
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
        QApplication.processEvents()
        assert form.ways()[0].shares == (Share(during=PhaseWay.HIKE_UP, share=0.05),)
        form.table.setCurrentCell(0, 1)
        QTest.keyClick(form.table, Qt.Key.Key_Delete)
        assert form.ways()[0].shares == ()

    @pytest.mark.parametrize(("number", "shares"), [(1, [0.05, 0.05, 0.9]), (2, [0.05, 0.25, 0.7])])
    def test_presets_set_the_shares_of_a_radio(
        self, edit: Open, demo_bench: Workbench, number: int, shares: list[float]
    ) -> None:
        form = ways(edit(item_named(demo_bench, "Handheld radio")))
        form.presets.setCurrentIndex(number)
        form.take_preset()
        found = [{one.during: one.share for one in way.shares} for way in form.ways()]
        assert [one[PhaseWay.FLIGHT] for one in found] == shares
        form.table.check()

    def test_a_preset_says_which_ways_it_wants(self, edit: Open) -> None:
        editor = edit(None)
        editor.main_fields.kind.choose(Kind.RADIO)
        form = ways(editor)
        form.presets.setCurrentIndex(1)
        form.take_preset()
        assert "transmit" in form.note.text()


class TestConnectors:
    def test_any_text_is_kept(self, edit: Open) -> None:
        editor = edit(None)
        new_phone(editor)
        field = battery(editor).fields["connector"]
        field.setFocus()
        QTest.keyClicks(QApplication.focusWidget(), "magnetic, round")
        item = editor.draft()
        assert item.battery is not None
        assert item.battery.connector == "magnetic, round"

    def test_a_cable_has_two_ends(self, edit: Open) -> None:
        editor = edit(None)
        editor.main_fields.name.setText("Spare")
        editor.main_fields.kind.choose(Kind.CABLE)
        form = editor.facets["battery"]
        assert isinstance(form, CableForm)
        form.one.setText("USB-C")
        form.other.setText("micro-USB")
        assert editor.draft().battery == Battery(connector="USB-C to micro-USB")

    def test_the_ends_are_shown_again(self, edit: Open) -> None:
        item = Item(id="x", name="X", kind=Kind.CABLE, battery=Battery(connector="usb-a - barrel"))
        editor = edit(item)
        form = editor.facets["battery"]
        assert isinstance(form, CableForm)
        assert (form.one.text(), form.other.text()) == ("USB-A", "barrel")
        assert editor.draft() == item

    def test_another_kind_has_another_form(self, edit: Open) -> None:
        editor = edit(None)
        editor.main_fields.kind.choose(Kind.CABLE)
        editor.main_fields.kind.choose(Kind.PHONE)
        assert isinstance(editor.facets["battery"], FacetForm)


class TestCharger:
    def test_ports_are_added_and_removed_by_keyboard(self, edit: Open) -> None:
        editor = edit(None)
        editor.main_fields.name.setText("Charger")
        editor.main_fields.kind.choose(Kind.CHARGER)
        form = editor.facets["charger"]
        assert isinstance(form, FacetForm)
        assert form.ports is not None
        figure(form, "total_w", 20)
        QApplication.processEvents()
        for watts, connector in ((18, "USB-C"), (10, "USB-A"), (5, "")):
            form.ports.add.setFocus()
            QTest.keyClick(form.ports.add, Qt.Key.Key_Space)
            assert QApplication.focusWidget() is form.ports.rows[-1].power
            form.ports.rows[-1].power.put(watts)
            form.ports.rows[-1].connector.setText(connector)
        form.ports.rows[1].fixed.click()
        form.ports.rows[2].drop.setFocus()
        QTest.keyClick(form.ports.rows[2].drop, Qt.Key.Key_Space)
        ports = (
            ChargerPort(power_w=18, connector="USB-C"),
            ChargerPort(power_w=10, connector="USB-A", fixed_cable=True),
        )
        assert editor.draft().charger == Charger(total_w=20, ports=ports)
        assert QApplication.focusWidget() is form.ports.rows[1].drop

    def test_a_charger_is_saved(self, window: Window, demo_bench: Workbench, in_dialog: Use) -> None:
        page = window.page("kit")
        assert isinstance(page, KitPage)

        def enter(dialog: QWidget) -> None:
            assert isinstance(dialog, ItemEditor)
            dialog.main_fields.name.setText("Travel charger")
            dialog.main_fields.kind.choose(Kind.CHARGER)
            form = dialog.facets["charger"]
            assert isinstance(form, FacetForm)
            assert form.ports is not None
            form.ports.add.click()
            form.ports.rows[0].power.put(30)
            dialog.accept()

        in_dialog(page.acts.add_item, enter)
        assert item_named(demo_bench, "Travel charger").charger == Charger(ports=(ChargerPort(power_w=30),))


@pytest.mark.parametrize("name", ["Phone", "Power bank", "Handheld radio", "Cables"])
def test_every_field_is_named_and_reached_by_tab(edit: Open, demo_bench: Workbench, name: str) -> None:
    editor = edit(item_named(demo_bench, name))
    stops = [stop for stop in tab_stops(editor.facets["battery"]) if stop.isVisible()]
    assert all(stop.accessibleName() for stop in stops)
    assert len({stop.accessibleName() for stop in stops}) == len(stops)
    reached, widget = [], editor.main_fields.name
    for _ in range(400):
        widget = widget.nextInFocusChain()
        reached.append(widget)
    places = [reached.index(stop) for stop in stops]
    assert places == sorted(places)
