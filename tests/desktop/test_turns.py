"""Work beside the window waits while the window has something to do, but never for good."""

import threading
import time
from collections.abc import Callable

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QObject

from kitlog.desktop.turns import MOST_WAIT_S, Turns


@pytest.fixture
def turns(qtbot) -> Turns:
    return Turns()


def waited_s(turns: Turns, meanwhile: Callable[[Callable[[], bool]], object] | None = None) -> float:
    """How long a thread waits for its turn while this one does nothing at all, or lets its events happen."""
    found: list[float] = []

    def wait() -> None:
        started = time.monotonic()
        turns.wait()
        found.append(time.monotonic() - started)

    thread = threading.Thread(target=wait)
    thread.start()
    if meanwhile is not None:
        meanwhile(lambda: bool(found))
    thread.join()
    return found[0]


def test_a_window_at_rest_lets_the_work_go_on(turns: Turns) -> None:
    assert waited_s(turns) < MOST_WAIT_S


def test_a_window_that_is_busy_makes_it_wait_and_rest_lets_it_go_on(turns: Turns, qtbot) -> None:
    turns.begin()
    QCoreApplication.sendEvent(QObject(), QEvent(QEvent.Type.User))
    assert waited_s(turns) >= MOST_WAIT_S * 0.9
    assert waited_s(turns, qtbot.waitUntil) < MOST_WAIT_S * 0.9
    turns.end()


def test_without_work_nothing_is_looked_at(turns: Turns) -> None:
    turns.begin()
    turns.end()
    QCoreApplication.sendEvent(QObject(), QEvent(QEvent.Type.User))
    assert waited_s(turns) < MOST_WAIT_S
