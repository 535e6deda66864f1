"""What a pilot does on the page Kit, through the window and on a real data file."""

import time
from collections.abc import Callable
from pathlib import Path

import pytest
from desk_steps import Use, item_named
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QDialog

from kitlog.desktop.kit_page.bulk_editor import BulkEditor
from kitlog.desktop.kit_page.filtering import Haystack, KitFilter, Show
from kitlog.desktop.kit_page.item_editor import ItemEditor
from kitlog.desktop.kit_page.page import KitPage
from kitlog.desktop.window import Window
from kitlog.kit.due import DueState
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, Kind, MassSource, Zone
from kitlog.workbench.kit_preview import ServiceFile
from kitlog.workbench.reads import KitRow
from kitlog.workbench.workbench import Workbench


def kit(window: Window) -> KitPage:
    page = window.page("kit")
    assert isinstance(page, KitPage)
    return page


def names(page: KitPage) -> list[str]:
    return [row.item.name for row in page.model.rows]


def select(page: KitPage, *wanted: str) -> None:
    page.select_ids([item_named(page.desk.bench, name).id for name in wanted])


def test_an_item_added_by_keyboard_is_in_the_file(
    show: Callable[..., Window], empty_bench: Workbench, open_file: Callable[[Path], Workbench], in_dialog: Use, qtbot
) -> None:
    window = show(empty_bench)

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, ItemEditor)
        qtbot.keyClicks(QApplication.focusWidget(), "Wing A")
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        qtbot.keyClicks(QApplication.focusWidget(), "Wing")
        for _step in range(2):
            qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        qtbot.keyClicks(QApplication.focusWidget(), "4350")
        qtbot.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(lambda: qtbot.keyClick(window, Qt.Key.Key_N, Qt.KeyboardModifier.ControlModifier), enter)
    assert names(kit(window)) == ["Wing A"]
    again = open_file(empty_bench.path)
    saved = item_named(again, "Wing A")
    assert (saved.kind, saved.mass_g, saved.quantity) == (Kind.WING, 4350, 1)


def test_undo_takes_an_edit_back_and_redo_does_it_again(
    window: Window, demo_bench: Workbench, in_dialog: Use, qtbot
) -> None:
    select(kit(window), "Phone")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, ItemEditor)
        dialog.main_fields.mass.setValue(250)
        dialog.accept()

    in_dialog(kit(window).acts.edit_item, enter)
    assert item_named(demo_bench, "Phone").mass_g == 250
    assert "Phone" in window.status.undo_act.words
    qtbot.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert item_named(demo_bench, "Phone").mass_g == 206
    qtbot.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
    assert item_named(demo_bench, "Phone").mass_g == 250


def test_an_edit_keeps_what_the_form_does_not_show(window: Window, demo_bench: Workbench, in_dialog: Use) -> None:
    before = item_named(demo_bench, "Phone")
    select(kit(window), "Phone")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, ItemEditor)
        assert dialog.draft() == before
        dialog.more.lines["maker"].setText("Tessel")
        dialog.accept()

    in_dialog(kit(window).acts.edit_item, enter)
    assert item_named(demo_bench, "Phone") == before.model_copy(update={"maker": "Tessel"})


def test_every_item_of_the_demo_comes_back_from_the_form_as_it_is(window: Window, demo_bench: Workbench, qtbot) -> None:
    for item in demo_bench.items():
        editor = ItemEditor(window.desk, item, window)
        qtbot.addWidget(editor)
        assert editor.draft() == item


def test_an_item_without_a_name_is_held_back_with_the_reason(window: Window, qtbot) -> None:
    editor = ItemEditor(window.desk, None, window)
    qtbot.addWidget(editor)
    assert not editor.main.isEnabled()
    assert "name" in editor.reason.text()
    editor.main_fields.name.setText("Whistle")
    assert editor.main.isEnabled()


def test_an_implausible_mass_is_asked_about_and_not_refused(
    window: Window, demo_bench: Workbench, in_dialog: Use
) -> None:
    select(kit(window), "Helmet A")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, ItemEditor)
        assert dialog.main_fields.question.text() == ""
        dialog.main_fields.mass.setValue(19_000)
        assert "Sure?" in dialog.main_fields.question.text()
        dialog.accept()

    in_dialog(kit(window).acts.edit_item, enter)
    assert item_named(demo_bench, "Helmet A").mass_g == 19_000


def test_limits_that_contradict_each_other_are_said_in_the_dialog(
    window: Window, demo_bench: Workbench, in_dialog: Use
) -> None:
    select(kit(window), "Wing A")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, ItemEditor)
        form = dialog.facets["wing"]
        form._form.fields["min_g"].put(200)  # type: ignore[attr-defined]
        dialog.accept()
        assert dialog.isVisible()
        assert "above the greatest" in dialog.wrong()

    in_dialog(kit(window).acts.edit_item, enter)
    wing = item_named(demo_bench, "Wing A").wing
    assert wing is not None
    assert wing.min_g == 85_000


def test_only_facets_that_fit_the_kind_are_shown_and_others_can_be_added(window: Window, qtbot) -> None:
    editor = ItemEditor(window.desk, None, window)
    qtbot.addWidget(editor)
    editor.main_fields.kind.choose(Kind.GLOVES)
    assert list(editor.facets) == ["garment"]
    editor._show_facet("battery")
    assert set(editor.facets) == {"garment", "battery"}
    editor.main_fields.kind.choose(Kind.VESSEL)
    assert set(editor.facets) == {"vessel"}


def test_starter_figures_of_a_device_are_marked_as_starters(window: Window, qtbot) -> None:
    editor = ItemEditor(window.desk, None, window)
    qtbot.addWidget(editor)
    editor.main_fields.kind.choose(Kind.PHONE)
    ways = editor.facets["battery"].ways
    assert ways is not None
    ways.starters.setCurrentIndex(1)
    ways.take_starter()
    assert ways.ways()
    assert {way.basis for way in ways.ways()} == {"starter"}


def test_the_filter_finds_any_word_of_a_row(window: Window, qtbot) -> None:
    page = kit(window)
    qtbot.keyClick(window, Qt.Key.Key_F, Qt.KeyboardModifier.ControlModifier)
    assert QApplication.focusWidget() is page.bar.words
    qtbot.keyClicks(page.bar.words, "hollin tarn")
    assert names(page) == ["Wing B"]
    page.bar.clear()
    assert len(names(page)) == 49


def test_a_filter_that_hides_all_says_so_and_offers_the_way_back(window: Window, qtbot) -> None:
    page = kit(window)
    qtbot.keyClicks(page.bar.words, "no such thing")
    assert page.nothing.isVisible()
    qtbot.mouseClick(page.nothing.act, Qt.MouseButton.LeftButton)
    assert page.table.isVisible()
    assert page.bar.words.text() == ""


def test_filter_chips_say_how_many_rows_they_leave(window: Window, demo_bench: Workbench, qtbot) -> None:
    page = kit(window)
    for show, chip in page.bar.chips.items():
        expected = page._haystack.count(show)
        assert chip.isVisible() == (expected > 0)
        if expected:
            assert f"({expected})" in chip.accessibleName()
            chip.click()
            assert len(names(page)) == expected
            chip.click()


def test_kind_and_zone_filter(window: Window) -> None:
    page = kit(window)
    page.bar.kind.choose(Kind.HELMET)
    assert names(page) == ["Helmet A", "Helmet B"]
    page.bar.zone.choose(Zone.FRONT_CONTAINER)
    assert names(page) == []
    page.bar.kind.choose(None)
    assert names(page) == ["Reserve B"]


def test_totals_tell_number_and_mass_of_what_is_shown(window: Window, demo_bench: Workbench) -> None:
    page = kit(window)
    page.bar.kind.choose(Kind.WING)
    assert page.total.text().startswith("2 items")
    assert "8.3" in page.total.text()  # 5,240 g + 3,080 g
    assert "1 maker" in page.total_more.text()


def test_bulk_edit_is_one_step_to_undo(window: Window, demo_bench: Workbench, in_dialog: Use, qtbot) -> None:
    select(kit(window), "Fleece", "Down jacket", "Socks")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, BulkEditor)
        dialog.state.choose(ItemState.LENT)
        dialog.zone.choose(Zone.BACK_POCKET)
        dialog.accept()

    in_dialog(kit(window).acts.bulk_edit, enter)
    changed = [item_named(demo_bench, name) for name in ("Fleece", "Down jacket", "Socks")]
    assert {(i.state, i.zone) for i in changed} == {(ItemState.LENT, Zone.BACK_POCKET)}
    window.acts.undo()
    assert {item_named(demo_bench, name).state for name in ("Fleece", "Down jacket", "Socks")} == {ItemState.IN_SERVICE}


def test_bulk_edit_leaves_what_is_not_chosen(window: Window, demo_bench: Workbench, in_dialog: Use) -> None:
    select(kit(window), "Fleece", "Socks")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, BulkEditor)
        dialog.foot.choose(Zone.IN_HAND)
        dialog.accept()

    zone = item_named(demo_bench, "Fleece").zone
    in_dialog(kit(window).acts.bulk_edit, enter)
    assert item_named(demo_bench, "Fleece").zone_on_foot is Zone.IN_HAND
    assert item_named(demo_bench, "Fleece").zone is zone


def test_a_retired_item_goes_behind_its_filter(window: Window, demo_bench: Workbench) -> None:
    page = kit(window)
    select(page, "Trail shoes")
    page.acts.retire_items()
    assert "Trail shoes" not in names(page)
    page.show_only(Show.GONE)
    assert names(page) == ["Trail shoes"]


def test_an_item_with_history_is_refused_in_words_and_stays(window: Window, demo_bench: Workbench) -> None:
    select(kit(window), "Wing A")
    kit(window).acts.delete_items()
    assert window.strip.isVisible()
    assert window.strip.what.text()
    assert window.strip.more.text()
    assert item_named(demo_bench, "Wing A")


def test_a_deleted_item_comes_back_with_undo(window: Window, demo_bench: Workbench) -> None:
    select(kit(window), "Sunglasses")
    kit(window).acts.delete_items()
    assert "Sunglasses" not in names(kit(window))
    window.acts.undo()
    assert "Sunglasses" in names(kit(window))


def test_a_duplicate_is_selected(window: Window, demo_bench: Workbench) -> None:
    select(kit(window), "Headlamp")
    kit(window).acts.duplicate_item()
    assert names(kit(window)).count("Headlamp") == 2
    assert kit(window).selected_ids() != (item_named(demo_bench, "Headlamp").id,)
    assert len(kit(window).selected_ids()) == 1


def test_rows_are_sorted_by_any_head_both_ways(window: Window) -> None:
    page = kit(window)
    page._sort_by(2)
    masses = [row.item.all_mass_g or -1 for row in page.model.rows]
    assert masses == sorted(masses)
    page._sort_by(2)
    assert [row.item.all_mass_g or -1 for row in page.model.rows] == sorted(masses, reverse=True)


def test_the_selection_stays_on_its_item_when_rows_move(window: Window, demo_bench: Workbench) -> None:
    page = kit(window)
    select(page, "Phone")
    page._sort_by(2)
    assert page.selected_ids() == (item_named(demo_bench, "Phone").id,)


def test_many_items_are_selected_in_one_step(window: Window, demo_bench: Workbench) -> None:
    """One by one, thousands that were imported would stop the window for minutes."""
    page = kit(window)
    told: list[object] = []
    page.select_ids((page.model.rows[0].item.id,))
    page.table.selectionModel().selectionChanged.connect(lambda on, _off: told.append(on))
    wanted = [row.item.id for number, row in enumerate(page.model.rows) if number % 5]
    page.select_ids(wanted)
    assert page.selected_ids() == tuple(wanted)
    assert len(wanted) > 10
    assert len(told) <= 2


def test_details_follow_the_selection(window: Window, qtbot) -> None:
    page = kit(window)
    select(page, "Wing A")
    qtbot.waitUntil(lambda: page._details is not None and "85 to 105" in _texts(page._details))
    texts = _texts(page._details)
    assert "luggage scale" in texts
    assert "full inspection" in texts
    assert "due soon" in texts
    select(page, "Wing A", "Wing B")
    qtbot.waitUntil(lambda: "2 items" in _texts(page._details))


def _texts(widget: object) -> str:
    from PySide6.QtWidgets import QLabel, QWidget

    assert isinstance(widget, QWidget)
    labels = [label.text() for label in widget.findChildren(QLabel) if not label.isHidden()]
    named = [child.accessibleName() for child in widget.findChildren(QWidget) if not child.isHidden()]
    return "\n".join(labels + named).replace("\u00a0", " ").replace("\u2009", " ")


def test_exported_items_can_be_read_again(window: Window, demo_bench: Workbench, tmp_path: Path, open_file) -> None:
    from kitlog.desktop.kit_page.export import export_kit

    export_kit(demo_bench, tmp_path / "out.csv")
    other = open_file(tmp_path / "other.kitlog")
    service = ServiceFile((tmp_path / "out-service.csv").read_bytes(), "out-service.csv")
    other.import_kit(other.preview_kit((tmp_path / "out.csv").read_bytes(), "out.csv", service=service))
    assert {i.name for i in other.items()} == {i.name for i in demo_bench.items()}
    assert len(other.rules()) == len(demo_bench.rules())


def test_an_export_tells_what_the_tables_do_not_hold(window: Window, demo_bench: Workbench, tmp_path: Path) -> None:
    from kitlog.desktop.kit_page.export_report import ExportReport

    report = ExportReport(demo_bench, tmp_path / "out.csv", window)
    assert any("Wing A" in line and "in the log" in line for line in report.lines)
    assert any("open since" in line for line in report.lines)


def test_an_empty_kit_shows_what_to_do_and_the_first_act_has_the_focus(
    show: Callable[..., Window], empty_bench: Workbench, qtbot
) -> None:
    opened: list[bool] = []
    window = show(empty_bench, open_demo=lambda: opened.append(True))
    page = kit(window)
    assert page.empty.isVisible()
    assert not page.bar.isVisible()
    qtbot.waitUntil(lambda: QApplication.focusWidget() is page.empty.buttons[0])
    qtbot.mouseClick(page.empty.buttons[-1], Qt.MouseButton.LeftButton)
    assert opened == [True]


def _many(count: int) -> list[KitRow]:
    kinds = tuple(Kind)
    return [
        KitRow(
            Item(
                id=f"i{n}", name=f"Thing {n}", kind=kinds[n % len(kinds)], mass_g=n % 900, mass_source=MassSource.GUESS
            ),
            DueState.NO_RULE,
            Zone.WORN,
            Zone.RUCKSACK,
            None,
            frozenset(),
            guessed=True,
            implausible=False,
        )
        for n in range(count)
    ]


def test_filtering_ten_thousand_rows_takes_less_than_a_tenth_of_a_second(window: Window) -> None:
    page = kit(window)
    page._haystack = Haystack(_many(10_000), window.desk.bench.library)
    page.sift()
    assert len(page.model.rows) == 10_000
    best = 1.0
    for words in ("thing 99", "9 9", "", "thing", "wing 77"):
        started = time.process_time()
        page.bar.words.setText(words)
        QApplication.processEvents()
        best = min(best, time.process_time() - started)
    assert best < 0.1


def test_words_are_sought_in_any_case_and_order() -> None:
    rows = _many(200)
    stack = Haystack(rows, None)
    assert [row.item.name for row in stack.sift(KitFilter("7 THING 19"))] == ["Thing 197"]
    assert stack.sift(KitFilter(kind=Kind.WING)) == [row for row in rows if row.item.kind is Kind.WING]


@pytest.mark.parametrize("wanted", list(Show))
def test_a_filter_never_adds_rows(window: Window, wanted: Show) -> None:
    page = kit(window)
    every = len(page._haystack.rows)
    assert len(page._haystack.sift(KitFilter(shows=frozenset({wanted})))) <= every


def test_in_one_column_details_take_the_place_of_the_table_and_esc_goes_back(
    show: Callable[..., Window], demo_bench: Workbench, qtbot
) -> None:
    window = show(demo_bench, "kit", (900, 700))
    page = kit(window)
    select(page, "Wing A")
    assert page.table.isVisible()
    qtbot.mouseClick(page._sides.open_act, Qt.MouseButton.LeftButton)
    assert not page.table.isVisible()
    qtbot.waitUntil(lambda: page._details is not None and page._details.isVisible())
    qtbot.waitUntil(lambda: "85 to 105" in _texts(page._details))
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Escape)
    assert page.table.isVisible()
    window.resize(1280, 800)
    assert page.table.isVisible()
    assert page._sides.right.isVisible()
    assert not page._sides.open_act.isVisible()
