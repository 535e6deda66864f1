"""Times at which something was done: kept in UTC, shown on the clock of the machine."""

import time
from collections.abc import Iterator
from datetime import UTC, datetime

import pytest

from kitlog.wording.figures import moment_text


@pytest.fixture
def in_rome(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    monkeypatch.setenv("TZ", "Europe/Rome")
    time.tzset()
    yield
    monkeypatch.undo()
    time.tzset()


@pytest.mark.skipif(not hasattr(time, "tzset"), reason="this system cannot change its zone for one process")
def test_an_answer_is_shown_at_the_time_it_was_given(in_rome: None) -> None:
    assert moment_text(datetime(2026, 5, 8, 18, 41, tzinfo=UTC)) == "20:41"  # summer time: UTC + 2 h
    assert moment_text(datetime(2026, 1, 8, 18, 41, tzinfo=UTC)) == "19:41"  # standard time: UTC + 1 h
