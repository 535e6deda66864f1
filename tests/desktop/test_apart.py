import threading

import pytest
from PySide6.QtCore import QTimer

from kitlog.desktop.apart import apart
from kitlog.fault import InputFault


def test_the_window_has_its_turn_while_the_work_goes_on(qapp) -> None:
    turns = threading.Event()
    QTimer.singleShot(0, turns.set)
    assert apart(lambda: turns.wait(5))


def test_it_gives_what_the_work_gives_from_another_thread(qapp) -> None:
    assert apart(threading.current_thread) is not threading.main_thread()


def test_what_the_work_raises_is_raised_here(qapp) -> None:
    def refused() -> None:
        raise InputFault("paste.nothing")

    with pytest.raises(InputFault):
        apart(refused)
