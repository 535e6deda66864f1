"""At 1024 by 600, and with names as long as they may be, no word of a control is cut and no act leaves the window."""

from collections.abc import Callable

import pytest
from desk_steps import item_named
from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QApplication, QWidget

from kitlog.desktop.kit_page.details import Details
from kitlog.desktop.kit_page.item_editor import ItemEditor
from kitlog.desktop.kit_page.page import KitPage
from kitlog.desktop.parts.button import Button
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField
from kitlog.desktop.parts.text import CutText
from kitlog.desktop.pilot_dialog import PilotDialog
from kitlog.desktop.service_page.event_dialog import EventDialog
from kitlog.desktop.service_page.page import ServicePage
from kitlog.desktop.service_page.record_dialog import RecordDialog
from kitlog.desktop.window import Window
from kitlog.kit.item import Item
from kitlog.workbench.workbench import Workbench

SMALL = (1024, 600)
LONG = "a wing whose owner typed all that its label says, maker and size and batch and colour and year"

DIALOGS: dict[str, Callable[[Window, Item], Dialog]] = {
    "event": lambda w, i: EventDialog(w.desk, i.id, w),
    "record": lambda w, i: RecordDialog(w.desk, i.id, "", w),
    "item": lambda w, i: ItemEditor(w.desk, i, w),
    "pilot": lambda w, _i: PilotDialog(w.desk, w),
}


def is_whole(text: CutText) -> bool:
    return text.fontMetrics().horizontalAdvance(text.text()) <= text.contentsRect().width()


def left_right(widget: QWidget, within: QWidget) -> tuple[int, int]:
    left = widget.mapTo(within, QPoint(0, 0)).x()
    return left, left + widget.width()


@pytest.fixture
def long_named(demo_bench: Workbench) -> Item:
    item = item_named(demo_bench, "Wing A").model_copy(update={"name": LONG})
    demo_bench.edit_items([item])
    return item


def test_the_words_of_the_filters_are_whole(show: Callable[..., Window], demo_bench: Workbench) -> None:
    page = show(demo_bench, "kit", SMALL).page("kit")
    assert isinstance(page, KitPage)
    assert page.bar.kind.shown_text() == "All kinds"
    assert page.bar.zone.shown_text() == "All zones"


def test_the_caption_of_the_service_page_is_whole(show: Callable[..., Window], demo_bench: Workbench) -> None:
    page = show(demo_bench, "service", SMALL).page("service")
    assert isinstance(page, ServicePage)
    assert page.caption.text()
    assert is_whole(page.caption)


@pytest.mark.parametrize("size", [(1280, 800), SMALL, (820, 600)])
def test_a_long_name_pushes_no_act_off_the_details(
    show: Callable[..., Window], demo_bench: Workbench, long_named: Item, qtbot, size: tuple[int, int]
) -> None:
    window = show(demo_bench, "kit", size)
    page = window.page("kit")
    assert isinstance(page, KitPage)
    page.select_ids([long_named.id])
    page._sides.show_right()

    def acts() -> dict[str, Button]:
        return {button.words: button for button in page.findChildren(Button) if button.isVisible()}

    qtbot.waitUntil(lambda: {"Edit", "All rules", "Flights"} <= set(acts()))
    details = page.findChild(Details)
    assert isinstance(details, Details)
    qtbot.waitUntil(lambda: details.width() > 200)
    for words in ("Edit", "All rules", "Flights"):
        left, right = left_right(acts()[words], details)
        assert left >= 0, words
        assert right <= details.viewport().width(), words
    qtbot.waitUntil(lambda: is_whole(window.status.stance))


@pytest.mark.parametrize("name", DIALOGS)
def test_a_long_name_pushes_nothing_out_of_a_dialog(
    window: Window, demo_bench: Workbench, long_named: Item, qtbot, name: str
) -> None:
    dialog = DIALOGS[name](window, long_named)
    qtbot.addWidget(dialog)
    dialog.show()
    qtbot.waitUntil(dialog.isVisible)
    room = dialog.scroller.viewport().width()
    for field in dialog._inside.findChildren(QWidget):
        if field.window() is dialog and field.isVisibleTo(dialog):
            assert left_right(field, dialog._inside)[1] <= room, field
    for act in (dialog.main, dialog.leave):
        assert left_right(act, dialog)[1] <= dialog.width()
    assert dialog.width() <= SMALL[0]


def test_a_long_choice_is_cut_with_an_ellipsis(qtbot, styled: QApplication) -> None:
    field = ChoiceField([(1, LONG)])
    qtbot.addWidget(field)
    field.resize(field.minimumSizeHint())
    field.show()
    assert field.width() < 200
    assert field.shown_text().endswith("…")
