"""The ring of the focus is whole wherever its button stands."""

import pytest
from desk_steps import outing_page
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import QApplication, QScrollArea, QVBoxLayout, QWidget

from kitlog.budget.result import Topic
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.ring import FocusRing
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.desktop.window import Window


def ring_around(button: QWidget) -> FocusRing:
    button.setFocus(Qt.FocusReason.TabFocusReason)
    QApplication.processEvents()
    rings = [ring for ring in button.window().findChildren(FocusRing) if ring.isVisible()]
    assert len(rings) == 1
    return rings[0]


def check_whole(button: QWidget) -> None:
    ring = ring_around(button)
    assert ring.visibleRegion().boundingRect() == ring.rect()
    own = QRect(button.mapToGlobal(QPoint(0, 0)), button.size())
    assert QRect(ring.mapToGlobal(QPoint(0, 0)), ring.size()) == own.adjusted(-4, -4, 4, 4)


@pytest.fixture
def sheet(styled: QApplication, qtbot) -> QWidget:
    shown = QWidget()
    qtbot.addWidget(shown)
    shown.resize(400, 300)
    shown.show()
    shown.activateWindow()
    qtbot.waitUntil(shown.isActiveWindow)
    return shown


def test_in_a_row_that_is_no_higher_than_it(sheet: QWidget) -> None:
    row, button = WrapRow(), Button("Change", Rank.ACT)
    row.add(button)
    rows = QVBoxLayout(sheet)
    rows.addWidget(row)
    row.show()
    QApplication.processEvents()
    check_whole(button)
    rows.setContentsMargins(40, 60, 20, 20)
    QApplication.processEvents()
    check_whole(button)


def test_what_is_scrolled_takes_its_ring_along(sheet: QWidget) -> None:
    inside, area = QWidget(), QScrollArea()
    rows = QVBoxLayout(inside)
    rows.setContentsMargins(10, 60, 10, 600)
    row, button = WrapRow(), Button("Change", Rank.ACT)
    row.add(button)
    rows.addWidget(row)
    area.setWidgetResizable(True)
    area.setWidget(inside)
    QVBoxLayout(sheet).addWidget(area)
    area.show()
    QApplication.processEvents()
    check_whole(button)
    area.verticalScrollBar().setValue(20)
    check_whole(button)


def test_of_the_act_that_opens_the_power_plan(window: Window) -> None:
    page = outing_page(window)
    page.open_topic(Topic.POWER)
    QApplication.processEvents()
    assert page.view is not None
    act = page.view.findChild(Button, "power plan")
    assert isinstance(act, Button)
    page.scroller.ensureWidgetVisible(act, 0, 40)
    check_whole(act)
