"""Steps that the tests of the power topic share: the topic, its picture, all days drawn, places on the bands."""

from PySide6.QtCore import QPoint, QRectF
from PySide6.QtWidgets import QApplication

from kitlog.budget.power.forecast import Forecast
from kitlog.desktop.outing_page.page import OutingPage
from kitlog.desktop.outing_page.power_topic import PowerTopic
from kitlog.desktop.outing_page.power_view import PowerView
from kitlog.paint import power_lanes


def topic_of(page: OutingPage) -> PowerTopic:
    assert page.view is not None
    found = page.view.findChild(PowerTopic)
    assert isinstance(found, PowerTopic)
    return found


def picture_of(page: OutingPage) -> PowerView:
    return topic_of(page).picture


def drawn(page: OutingPage, qtbot) -> Forecast:
    """Wait until all days are drawn."""
    qtbot.waitUntil(lambda: not page.power.forecasting.busy, timeout=60_000)
    latest = page.power.forecasting.latest
    assert latest is not None
    assert latest.is_final
    return latest


def bands(picture: PowerView) -> QRectF:
    return power_lanes.bands_rect(picture.picture, QRectF(picture.rect()), QApplication.font())


def at(picture: PowerView, place: float, y: float = 20.0) -> QPoint:
    box = bands(picture)
    return QPoint(round(box.left() + place * box.width()), round(box.top() + y))


def spread_shown(page: OutingPage) -> bool:
    return any(lane.spread is not None for lane in picture_of(page).picture.lanes)
