"""With letters of 150 and 200 per cent all pages and dialogs stay on the screen, and no word is cut without a tool tip.

Resize text: WCAG 2.2, criterion 1.4.4 (200 per cent without loss of content or of function).
"""

from collections.abc import Callable, Iterator

import pytest
from desk_steps import item_named, outing_of
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication, QLabel, QScrollArea, QWidget

from kitlog.desktop import look
from kitlog.desktop.kit_page.item_editor import ItemEditor
from kitlog.desktop.outing_page.plan_editor import PlanEditor
from kitlog.desktop.outing_page.power_plan import PowerPlan
from kitlog.desktop.page import PAGES
from kitlog.desktop.page_area import PageArea
from kitlog.desktop.parts.button import Button
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.text import CutText, Paragraph
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.desktop.pilot_dialog import PilotDialog
from kitlog.desktop.repack_page.page import RepackPage
from kitlog.desktop.scheme import Scheme, lay_over
from kitlog.desktop.service_page.history_dialog import HistoryDialog
from kitlog.desktop.service_page.model_rules_dialog import ModelRulesDialog
from kitlog.desktop.service_page.notices_dialog import NoticesDialog
from kitlog.desktop.service_page.record_dialog import RecordDialog
from kitlog.desktop.service_page.season_dialog import SeasonDialog
from kitlog.desktop.service_page.stops_dialog import StopsDialog
from kitlog.desktop.window import Window
from kitlog.outing.ticks import Step
from kitlog.workbench.workbench import Workbench

SIZES = ((1280, 800), (1024, 600))

DIALOGS: dict[str, Callable[[Window], Dialog]] = {
    "item": lambda w: ItemEditor(w.desk, item_named(w.desk.bench, "Phone"), w),
    "bank": lambda w: ItemEditor(w.desk, item_named(w.desk.bench, "Power bank"), w),
    "plan": lambda w: PlanEditor(w.desk, outing_of(w.desk.bench), w),
    "power plan": lambda w: PowerPlan(w.desk, outing_of(w.desk.bench), w),
    "record": lambda w: RecordDialog(w.desk, item_named(w.desk.bench, "Wing A").id, "", w),
    "history": lambda w: HistoryDialog(w.desk, item_named(w.desk.bench, "Wing A"), w),
    "pilot": lambda w: PilotDialog(w.desk, w),
    "notices": lambda w: NoticesDialog(w.desk, item_named(w.desk.bench, "Wing A").id, w),
    "models": lambda w: ModelRulesDialog(w.desk, w),
    "stops": lambda w: StopsDialog(w.desk, w),
    "season": lambda w: SeasonDialog(w.desk, w),
}


def in_letters(application: QApplication, size: float) -> None:
    font = QFont(application.font())
    font.setPixelSize(round(14 * size))
    application.setFont(font)
    lay_over(Scheme.LIGHT, application)


@pytest.fixture(params=[1.0, 1.5, 2.0])
def letters(request: pytest.FixtureRequest, styled: QApplication) -> Iterator[float]:
    """The size of the letters, 1 for 14 px; as before afterwards."""
    before = QFont(styled.font())
    in_letters(styled, request.param)
    yield request.param
    styled.setFont(before)
    lay_over(Scheme.LIGHT, styled)


def cut_words(top: QWidget) -> list[str]:
    """Words that are shown in less room than they need; names may be cut where the tool tip has them whole."""
    labels = [label for label in top.findChildren(QLabel) if label.isVisible() and label.window() is top]
    lines = [label for label in labels if label.text() and not isinstance(label, Paragraph)]
    narrow = [one for one in lines if one.fontMetrics().horizontalAdvance(one.text()) > one.contentsRect().width()]
    cut = [one.text() for one in narrow if not (isinstance(one, CutText) and one.toolTip() == one.text())]
    low = [
        label.text()
        for label in labels
        if isinstance(label, Paragraph) and label.heightForWidth(label.width()) > label.height()
    ]
    buttons = [button for button in top.findChildren(Button) if button.isVisible() and button.window() is top]
    pressed = [one.words for one in buttons if one.width() < one.sizeHint().width() and one.toolTip() != one.words]
    return [*cut, *low, *pressed]


def lost_sideways(top: QWidget) -> list[str]:
    """What is wider than its room, and has no bar to be scrolled by."""
    areas = [area for area in top.findChildren(QScrollArea) if area.isVisible() and area.widget() is not None]
    return [
        type(area.widget()).__name__
        for area in areas
        if area.widget().width() > area.viewport().width() and area.horizontalScrollBar().maximum() == 0
    ]


def none_in_the_end(qtbot, found: Callable[[], list[str]]) -> None:
    """Layouts and what follows a little later come to rest first."""

    def look_again() -> None:
        assert found() == []

    qtbot.waitUntil(look_again, timeout=2000)


def settle() -> None:
    for _round in range(4):
        QApplication.processEvents()


def test_pages_stay_within_the_window_and_cut_no_word(
    letters: float, show: Callable[..., Window], demo_bench: Workbench, qtbot
) -> None:
    window = show(demo_bench)
    for size in SIZES:
        window.resize(*size)
        for name in PAGES:
            window.open(name)
            none_in_the_end(qtbot, lambda: cut_words(window) + lost_sideways(window))
            assert (window.width(), window.height()) == size, name


def test_the_foot_of_the_repack_can_be_reached(
    letters: float, show: Callable[..., Window], demo_bench: Workbench
) -> None:
    window = show(demo_bench, "repack")
    page = window.page("repack")
    assert isinstance(page, RepackPage)
    area = page.parentWidget().parentWidget()
    assert isinstance(area, PageArea)
    for size in SIZES:
        window.resize(*size)
        for step in Step:
            page.open_step(step)
            settle()
            act = page.footer.close_act
            area.ensureWidgetVisible(act)
            assert area.viewport().rect().contains(act.mapTo(page, act.rect().center()) + page.pos()), (size, step)


def test_a_page_fills_the_room_and_is_scrolled_only_below_its_least_size(qtbot) -> None:
    page = QWidget()
    page.setMinimumSize(300, 200)
    area = PageArea(page)
    qtbot.addWidget(area)
    area.resize(500, 400)
    area.show()
    assert (page.width(), page.height()) == (500, 400)
    assert not area.verticalScrollBar().isVisible()
    area.resize(500, 150)
    settle()
    assert page.height() == 200
    assert area.verticalScrollBar().maximum() == 50
    assert area.horizontalScrollBar().maximum() == 0


def test_dialogs_stay_on_the_screen_and_cut_no_word(letters: float, window: Window, qtbot) -> None:
    for name, opened in DIALOGS.items():
        dialog = opened(window)
        qtbot.addWidget(dialog)
        dialog.show()
        none_in_the_end(qtbot, lambda dialog=dialog: cut_words(dialog) + lost_sideways(dialog))
        room = dialog.screen().availableGeometry().size()
        assert dialog.size().boundedTo(room) == dialog.size(), name
        for act in (act for act in (dialog.main, dialog.leave) if act.isVisible()):
            assert dialog.rect().contains(act.geometry()), name
        dialog.discard()


def test_a_row_goes_on_below_where_the_room_ends(qtbot) -> None:
    row = WrapRow(gap=8, under=4)
    words = [Button("Charge"), Button("As usual"), Button("Rest to")]
    row.add(*words)
    qtbot.addWidget(row)
    row.resize(row.sizeHint())
    row.show()
    assert len({word.y() for word in words}) == 1
    row.resize(row.minimumSizeHint().width(), 400)
    assert [word.x() for word in words] == [0, 0, 0]
    assert row.minimumSizeHint().height() == 3 * words[0].height() + 2 * look.px(4)
    words[1].hide()
    settle()
    assert row.minimumSizeHint().height() == 2 * words[0].height() + look.px(4)
