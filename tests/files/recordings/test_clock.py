"""Times of day into moments."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.files.recordings.clock import DAY_S, among, moments

DAY = 20_000 * DAY_S


def test_midnight_is_the_next_day() -> None:
    assert moments([86_398, 86_399, 0, 1], DAY, {}) == [DAY + s for s in (86_398, 86_399, 86_400, 86_401)]


def test_a_step_back_is_left_out_and_adds_no_day() -> None:
    assert moments([100, 101, 99, 102], DAY, {}) == [DAY + 100, DAY + 101, None, DAY + 102]


def test_a_single_time_far_off_is_left_out() -> None:
    for odd in (80_000, 5, 36_700):
        found = moments([36_000, 36_001, odd, 36_002, 36_003], DAY, {})
        assert found == [DAY + 36_000, DAY + 36_001, None, DAY + 36_002, DAY + 36_003]


def test_a_clock_that_was_ahead_at_first() -> None:
    clock = [1_900, 1_901, *range(100, 160)]
    assert moments(clock, DAY, {}) == [None, None, *(DAY + s for s in range(100, 160))]


def test_a_date_in_the_midst_is_believed_if_it_is_near() -> None:
    assert moments([100, 200], DAY, {1: DAY + 2 * DAY_S}) == [DAY + 100, DAY + 2 * DAY_S + 200]
    assert moments([100, 200], DAY, {1: DAY + 900 * DAY_S}) == [DAY + 100, DAY + 200]


@given(st.integers(0, 86_399), st.lists(st.integers(0, 3_599), max_size=60))
def test_what_went_forward_comes_back(start: int, steps: list[int]) -> None:
    at = [DAY + start]
    for step in steps:
        at.append(at[-1] + step)
    assert moments([s % DAY_S for s in at], DAY, {}) == at


@given(st.lists(st.integers(0, 86_399), min_size=1, max_size=60))
def test_never_back_whatever_comes(clock: list[int]) -> None:
    found = moments(clock, DAY, {})
    kept = [s for s in found if s is not None]
    assert kept
    assert kept == sorted(kept)
    assert all(s is None or s % DAY_S == c for s, c in zip(found, clock, strict=True))


def test_a_v_fix_lies_between_those_about_it() -> None:
    assert among(50, DAY + 40, DAY + 60) == DAY + 50
    assert among(5_000, DAY + 40, DAY + 60) is None
    assert among(86_390, None, DAY + 5) == DAY - 10
    assert among(5, None, None) is None


HOUR = [*range(36_000, 39_600)]


@pytest.mark.parametrize("by_s", [1_800, 5 * 3_600, 10 * 3_600, -120, -1_800, -3 * 3_600, -9 * 3_600])
@pytest.mark.parametrize("first", [0, 1, 50, 2_000])
@pytest.mark.parametrize("count", [1, 3, 15])
def test_a_few_whose_clock_jumps_are_left_out(by_s: int, first: int, count: int) -> None:
    clock = [(at + by_s if first <= i < first + count else at) for i, at in enumerate(HOUR)]
    found = moments(clock, DAY, {})
    lost = [i for i, at in enumerate(found) if at is None]
    if first or by_s > 0 or by_s <= -3_600:  # at the begin, a step ahead of less than an hour is a pause
        assert lost == list(range(first, first + count))
        assert all(at in {None, DAY + true} for at, true in zip(found, HOUR, strict=True))
    else:
        assert lost == []


@pytest.mark.parametrize("by_s", [5 * 3_600, -3 * 3_600])
@pytest.mark.parametrize("count", [1, 3, 15])
def test_the_last_few_too(by_s: int, count: int) -> None:
    clock = [*HOUR[:-count], *(at + by_s for at in HOUR[-count:])]
    assert moments(clock, DAY, {}) == [*(DAY + at for at in HOUR[:-count]), *[None] * count]


def test_a_few_wrong_ones_across_midnight() -> None:
    true = [*range(86_000, 86_800)]
    clock = [at % DAY_S for at in true]
    clock[395:405] = [at % DAY_S for at in range(40_000, 40_010)]
    found = moments(clock, DAY, {})
    assert found == [None if 395 <= i < 405 else DAY + at for i, at in enumerate(true)]


def test_a_pause_is_no_jump() -> None:
    clock = [*HOUR, *range(50_000, 50_100)]
    assert moments(clock, DAY, {}) == [DAY + at for at in clock]


def test_jumps_one_after_the_other() -> None:
    clock = list(HOUR)
    clock[100], clock[101], clock[110], clock[111] = 80_000, 5, 36_000, 50_000
    assert [i for i, at in enumerate(moments(clock, DAY, {})) if at is None] == [100, 101, 110, 111]
