import gc
import threading

import pytest

from kitlog.desktop.background import Background, Tell


def held(begun: threading.Event, let_go: threading.Event, result: str):
    """Work that waits, and looks now and then whether anybody still wants it."""

    def work(tell: Tell) -> str:
        begun.set()
        while not let_go.wait(0.005):
            tell(0.5)
        return result

    return work


@pytest.fixture
def background(qtbot) -> Background:
    return Background()


def test_the_result_comes_back_on_the_thread_of_the_window(background: Background, qtbot) -> None:
    threads: list[threading.Thread] = []
    background.done.connect(lambda _result: threads.append(threading.current_thread()))
    with qtbot.waitSignal(background.done) as came:
        background.ask(lambda _tell: threading.current_thread())
    assert came.args[0] is not threading.main_thread()
    assert threads == [threading.main_thread()]
    assert not background.busy


def test_what_was_asked_for_last_comes_back_and_nothing_else(background: Background, qtbot) -> None:
    results: list[object] = []
    background.done.connect(results.append)
    begun, let_go = threading.Event(), threading.Event()
    background.ask(held(begun, let_go, "first"))
    qtbot.waitUntil(begun.is_set)
    background.ask(lambda _tell: "second")
    background.ask(lambda _tell: "third")
    qtbot.waitUntil(lambda: not background.busy)
    assert results == ["third"]
    assert not let_go.is_set()


def test_work_that_never_looks_ends_and_its_result_is_not_shown(background: Background, qtbot) -> None:
    results: list[object] = []
    background.done.connect(results.append)
    begun, let_go = threading.Event(), threading.Event()

    def deaf(_tell: Tell) -> str:
        begun.set()
        let_go.wait(5)
        return "old"

    background.ask(deaf)
    qtbot.waitUntil(begun.is_set)
    background.ask(lambda _tell: "new")
    let_go.set()
    qtbot.waitUntil(lambda: not background.busy)
    assert results == ["new"]


def test_a_stopped_work_ends_and_says_nothing(background: Background, qtbot) -> None:
    results: list[object] = []
    background.done.connect(results.append)
    begun, let_go, ended = threading.Event(), threading.Event(), threading.Event()

    def work(tell: Tell) -> None:
        try:
            held(begun, let_go, "")(tell)
        finally:
            ended.set()

    background.ask(work)
    qtbot.waitUntil(begun.is_set)
    background.stop()
    qtbot.waitUntil(ended.is_set)
    assert results == []
    assert not background.busy


def test_it_tells_how_far_it_is(background: Background, qtbot) -> None:
    shares: list[float] = []
    background.going.connect(lambda _seconds, share: shares.append(share))
    begun, let_go = threading.Event(), threading.Event()
    background.ask(held(begun, let_go, "done"))
    qtbot.waitUntil(lambda: 0.5 in shares)
    let_go.set()
    qtbot.waitUntil(lambda: not background.busy)


def test_an_error_of_the_work_is_raised_where_the_window_is(background: Background, qtbot) -> None:
    def broken(_tell: Tell) -> None:
        raise KeyError("broken")

    told: list[bool] = []
    background.broke.connect(lambda: told.append(True))
    with qtbot.captureExceptions() as caught:
        background.ask(broken)
        qtbot.waitUntil(lambda: bool(caught))
    assert told == [True]
    assert caught[0][0] is KeyError
    assert not background.busy


def test_what_the_work_made_is_not_looked_through_for_circles_until_it_is_let_go(background: Background, qtbot) -> None:
    """A collection of ten thousand items stops the window for a fifth of a second."""
    with qtbot.waitSignal(background.done) as came:
        background.ask(lambda _tell: [[]])
    made = came.args[0]
    gc.collect()
    assert not any(one is made for one in gc.get_objects())
    assert gc.isenabled()
    background.let_go()
    assert any(one is made for one in gc.get_objects())


def test_no_collection_runs_while_any_thread_works(background: Background, qtbot) -> None:
    """On such a thread it would let go of things of the window, which Qt does not survive."""
    other = Background()
    begun, let_go = threading.Event(), threading.Event()
    other.ask(held(begun, let_go, "other"))
    qtbot.waitUntil(begun.is_set)
    with qtbot.waitSignal(background.done) as came:
        background.ask(lambda _tell: gc.isenabled())
    assert came.args[0] is False
    assert not gc.isenabled()
    let_go.set()
    qtbot.waitUntil(lambda: not other.busy)
    assert gc.isenabled()
