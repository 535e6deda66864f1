"""Answers worked out beside the window: one plan at a time, better and better, dropped at once for another."""

from collections.abc import Iterator
from dataclasses import dataclass

import pytest
from PySide6.QtWidgets import QApplication

from kitlog.desktop.outing_page.beside import Beside, Steps


@dataclass(frozen=True)
class Count:
    n: int
    is_final: bool = False


def counting(to: int, ended: list[int]) -> Steps[Count]:
    """Every second slice brings nothing worth showing."""
    n = 0
    try:
        for n in range(1, to + 1):
            yield Count(n, is_final=n == to)
            yield None
    finally:
        ended.append(n)


@pytest.fixture
def beside(qapp: QApplication) -> Iterator[Beside[Count]]:
    made = Beside[Count]()
    yield made
    made.drop()


def test_the_last_answer_is_kept_and_the_same_is_not_worked_out_again(beside: Beside[Count], qtbot) -> None:
    ended: list[int] = []
    beside.ask("plan", lambda: counting(5, ended))
    assert beside.busy
    qtbot.waitUntil(lambda: not beside.busy)
    assert (beside.latest, ended) == (Count(5, is_final=True), [5])
    beside.ask("plan", lambda: pytest.fail("asked again"))
    assert beside.latest == Count(5, is_final=True)


def test_another_question_drops_what_was_found_at_once(beside: Beside[Count], qtbot) -> None:
    ended: list[int] = []
    beside.ask("plan", lambda: counting(10**6, ended))
    qtbot.waitUntil(lambda: beside.latest is not None)
    beside.ask("another", lambda: None)
    assert beside.latest is None
    assert not beside.busy
    qtbot.waitUntil(lambda: bool(ended))
    assert ended[0] < 10**6


def test_paused_it_keeps_what_there_is_and_goes_on_when_asked(beside: Beside[Count], qtbot) -> None:
    ended: list[int] = []
    beside.ask("plan", lambda: counting(10**6, ended))
    qtbot.waitUntil(lambda: beside.latest is not None)
    beside.pause()
    qtbot.waitUntil(lambda: bool(ended))
    assert beside.latest is not None
    beside.ask("plan", lambda: counting(3, ended))
    qtbot.waitUntil(lambda: not beside.busy)
    assert beside.latest == Count(3, is_final=True)
