"""The frame: tag, rail, status line, faults, undo, another process, scheme, folds, what is remembered."""

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QSettings, Qt
from PySide6.QtWidgets import QApplication, QDialog, QLabel

from kitlog.desktop import look
from kitlog.desktop.fold import Fold, fold_of
from kitlog.desktop.outing_choice import OutingChoice
from kitlog.desktop.page import PAGES
from kitlog.desktop.pilot_dialog import PilotDialog
from kitlog.desktop.scheme import Scheme, lay_over
from kitlog.desktop.status_line import STANCE
from kitlog.desktop.window import Window
from kitlog.desktop.window_memory import WindowMemory
from kitlog.fault import SystemFault
from kitlog.kit.item import Item
from kitlog.paint.mark import Mark
from kitlog.paint.tokens import DARK, LIGHT
from kitlog.workbench.workbench import Workbench

CONTROL = Qt.KeyboardModifier.ControlModifier


def test_pages_are_built_when_they_are_first_shown(window: Window) -> None:
    assert set(window._pages) == {"kit"}
    window.open("flights")
    assert set(window._pages) == {"kit", "flights"}


@pytest.mark.parametrize(("number", "page"), list(enumerate(PAGES, start=1)))
def test_keys_lead_to_the_pages(number: int, page: str, window: Window, qtbot) -> None:
    qtbot.keyClick(window, Qt.Key(Qt.Key.Key_0.value + number), CONTROL)
    assert window.open_name == page
    assert window.rail.tabs[page].isChecked()
    assert window.action_set.by_id[f"view.{page}"].isChecked()


def test_the_tag_says_which_outing_and_how_much_is_open(window: Window, demo_bench: Workbench, qtbot) -> None:
    assert "9 May 2026" in window.tag.day.text().replace("\u00a0", " ")
    assert window.tag.near.text() == "tomorrow"
    counts = demo_bench.assess(demo_bench.outings()[0]).counts
    qtbot.waitUntil(window.tag.chips[Mark.LOOK].isVisible)
    assert window.tag.chips[Mark.LOOK].words == f"{counts.look} look"
    assert window.tag.chips[Mark.STOP].isVisible() == (counts.stop > 0)


def test_without_an_outing_the_tag_offers_one(show: Callable[..., Window], empty_bench: Workbench) -> None:
    window = show(empty_bench)
    assert window.tag.day.text() == ""
    assert window.tag.act.words == "New outing"
    assert not any(chip.isVisible() for chip in window.tag.chips.values())


def test_another_outing_can_be_chosen(window: Window, demo_bench: Workbench, in_dialog) -> None:
    def choose(dialog: QDialog) -> None:
        assert isinstance(dialog, OutingChoice)
        assert dialog.list.count() == 3
        dialog.list.setCurrentRow(1)
        dialog.accept()

    in_dialog(window.tag.act.click, choose)
    outing = demo_bench.current_outing()
    assert outing is not None
    assert outing.name == "Skarnock on foot, with a night out"
    assert "20" in window.tag.day.text()


def test_the_stance_stands_in_the_window_in_full_or_brief(show: Callable[..., Window], demo_bench: Workbench) -> None:
    window = show(demo_bench)
    assert window.status.stance.text() == STANCE
    window.resize(1024, 600)
    assert "last word" in window.status.stance.text()
    assert window.status.stance.accessibleDescription() == STANCE


def test_nothing_to_undo_is_said(show: Callable[..., Window], empty_bench: Workbench, qtbot) -> None:
    window = show(empty_bench)
    qtbot.waitUntil(lambda: window.status.saved.text() != "")
    assert window.status.nothing.isVisible()
    assert not window.status.undo_act.isVisible()
    assert window.status.saved.text() == "kit.kitlog"


def test_undo_in_the_status_line_takes_back(show: Callable[..., Window], empty_bench: Workbench) -> None:
    window = show(empty_bench)
    empty_bench.add_item(Item(id="a", name="Whistle"))
    assert window.status.undo_act.words == "Undo: add Whistle"
    window.status.undo_act.click()
    assert empty_bench.items() == ()
    assert window.status.nothing.isVisible()
    assert window.action_set.by_id["edit.redo"].isEnabled()


def test_a_fault_is_said_in_three_parts_and_can_be_closed_by_keyboard(window: Window, qtbot) -> None:
    def fails() -> None:
        raise SystemFault("data_file.read_only", path="/kit.kitlog", reason="")

    assert not window.desk.perform(fails)
    assert window.strip.isVisible()
    assert "kit.kitlog" in window.strip.what.text()
    assert window.strip.more.text()
    window.strip.close_act.setFocus()
    qtbot.keyClick(window.strip.close_act, Qt.Key.Key_Escape)
    assert not window.strip.isVisible()


def test_a_message_of_what_was_refused_goes_when_the_outing_changes(window: Window, demo_bench: Workbench) -> None:
    def refused() -> None:
        raise SystemFault("data_file.read_only", path="/kit.kitlog", reason="")

    outing = demo_bench.outings()[0]
    sheet = window.stack.geometry()
    window.desk.perform(refused)
    assert window.strip.isVisible()
    assert window.stack.geometry() != sheet
    demo_bench.save_outing(outing.model_copy(update={"name": "done elsewhere"}))
    assert not window.strip.isVisible()
    assert window.stack.geometry() == sheet
    window.desk.perform(refused)
    demo_bench.work_on(demo_bench.outings()[1].id)
    assert not window.strip.isVisible()


def test_what_another_window_wrote_shows_up_on_focus(
    window: Window, demo_bench: Workbench, open_file: Callable[[Path], Workbench]
) -> None:
    other = open_file(demo_bench.path)
    other.add_item(Item(id="other", name="From elsewhere"))
    QApplication.sendEvent(window, QEvent(QEvent.Type.ActivationChange))
    assert "From elsewhere" in [row.item.name for row in window.page("kit").model.rows]  # type: ignore[attr-defined]
    assert not window.action_set.by_id["edit.undo"].isEnabled()


def test_only_pages_that_show_what_changed_are_reloaded(window: Window, demo_bench: Workbench) -> None:
    kit = window.page("kit")
    window.open("flights")
    kit.stale = False
    demo_bench.set_preference("anything", "else")
    assert not kit.stale
    demo_bench.add_item(Item(id="new", name="Whistle"))
    assert kit.stale
    window.open("kit")
    assert not kit.stale


def test_the_scheme_is_laid_over_and_remembered(window: Window, memory: WindowMemory, qapp: QApplication) -> None:
    window.acts.choose_dark()
    assert look.tokens() is DARK
    assert memory.scheme() is Scheme.DARK
    dark = window.grab().toImage()
    assert dark.pixelColor(2, dark.height() - 2) == DARK.paper
    window.acts.choose_light()
    assert look.tokens() is LIGHT
    assert window.grab().toImage().pixelColor(2, dark.height() - 2) == LIGHT.paper


def test_labels_follow_the_scheme(window: Window, qapp: QApplication) -> None:
    caption = window.status.stance
    assert caption.palette().color(caption.foregroundRole()) == LIGHT.muted
    lay_over(Scheme.DARK, qapp)
    try:
        assert caption.palette().color(caption.foregroundRole()) == DARK.muted
    finally:
        lay_over(Scheme.LIGHT, qapp)


@pytest.mark.parametrize(
    ("width", "height", "scale", "fold"),
    [
        (1280, 800, 1.0, Fold()),
        (1200, 700, 1.0, Fold()),
        (1199, 800, 1.0, Fold(middle=True)),
        (1024, 600, 1.0, Fold(middle=True, low=True)),
        (999, 800, 1.0, Fold(middle=True, narrow=True)),
        (1280, 800, 1.5, Fold(middle=True, narrow=True, low=True)),
        (2560, 1600, 2.0, Fold()),
    ],
)
def test_folds_follow_width_height_and_font(width: int, height: int, scale: float, fold: Fold) -> None:
    assert fold_of(width, height, scale) == fold
    assert fold.side_px == (16 if fold.middle else 24)
    assert fold.head_px(15) == (12 if fold.low else 15)


@pytest.mark.parametrize("page", PAGES)
@pytest.mark.parametrize("size", [(1280, 800), (1024, 600), (800, 560)])
def test_no_page_asks_for_more_room_than_there_is(
    page: str, size: tuple[int, int], show: Callable[..., Window], demo_bench: Workbench
) -> None:
    window = show(demo_bench, page, size)
    QApplication.processEvents()
    assert (window.width(), window.height()) == size


def test_narrow_tabs_keep_their_names(show: Callable[..., Window], demo_bench: Workbench) -> None:
    window = show(demo_bench, size=(1024, 600))
    for tab in window.rail.tabs.values():
        assert tab.toolTip() == tab.words
        assert tab.accessibleName() == tab.words
    assert window.rail.width() < 60


def test_page_and_geometry_come_back(
    show: Callable[..., Window], demo_bench: Workbench, memory: WindowMemory, tmp_path: Path
) -> None:
    window = show(demo_bench, "service", (1100, 700))
    window.close()
    again = show(demo_bench, memory.page(), size=(1100, 700))
    assert again.open_name == "service"
    assert QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat).value("geometry") is not None


def test_a_broken_memory_stops_nothing(tmp_path: Path, show: Callable[..., Window], empty_bench: Workbench) -> None:
    ini = tmp_path / "broken.ini"
    ini.write_text("[General]\ngeometry=@ByteArray(no)\nscheme=purple\npage=\x00\n", encoding="utf-8")
    broken = WindowMemory(QSettings(str(ini), QSettings.Format.IniFormat))
    assert broken.scheme() is Scheme.SYSTEM
    assert broken.page() == "kit"


def test_nothing_but_geometry_and_choices_is_kept_outside_the_data_file(
    show: Callable[..., Window], demo_bench: Workbench, tmp_path: Path
) -> None:
    window = show(demo_bench)
    window.acts.choose_light()
    window.close()
    kept = QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat).allKeys()
    assert set(kept) <= {"geometry", "page", "scheme"}


def test_a_body_mass_is_entered_and_earlier_ones_stay(window: Window, demo_bench: Workbench, in_dialog) -> None:
    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, PilotDialog)
        dialog.mass.put(75.5)
        dialog.accept()

    before = demo_bench.pilot()
    assert before is not None
    in_dialog(window.acts.edit_pilot, enter)
    after = demo_bench.pilot()
    assert after is not None
    assert after.mass_on(demo_bench.now().date()).mass_g == 75_500  # type: ignore[union-attr]
    assert len(after.masses) == len(before.masses) + 1


def test_the_demo_is_offered_only_where_there_is_one(show: Callable[..., Window], empty_bench: Workbench) -> None:
    window = show(empty_bench)
    assert not window.action_set.by_id["file.demo"].isEnabled()
    page = window.page("kit")
    assert "demo" not in " ".join(b.words for b in page.empty.buttons)  # type: ignore[attr-defined]


def test_no_text_of_a_user_is_read_as_markup(show: Callable[..., Window], empty_bench: Workbench) -> None:
    empty_bench.add_item(Item(id="a", name="<b>Rope</b> & <img src=x>", notes="<i>n</i>"))
    window = show(empty_bench)
    for label in window.findChildren(QLabel):
        assert label.textFormat() is Qt.TextFormat.PlainText


def test_letters_are_never_smaller_than_the_design(qapp: QApplication) -> None:
    from PySide6.QtGui import QFont

    from kitlog.paint.type_scale import Role, body_px, font

    tiny = QFont(qapp.font())
    tiny.setPointSizeF(6)
    assert body_px(look.least_body(tiny)) == pytest.approx(14)
    assert body_px(font(look.least_body(tiny), Role.SMALL)) >= 11.99
    large = QFont(qapp.font())
    large.setPointSizeF(20)
    assert look.least_body(large).pointSizeF() == 20
