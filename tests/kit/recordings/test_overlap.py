"""Two recorders of one flight."""

from datetime import timedelta

from hypothesis import given
from hypothesis import strategies as st
from recordings import utc

from kitlog.kit.recordings.overlap import Flown, Overlap, Place, Places, both_s, overlap

NOON = utc("2026-04-05T12:00")


def span(start_min: float, end_min: float) -> Flown:
    return ((NOON + timedelta(minutes=start_min), NOON + timedelta(minutes=end_min)),)


def test_a_second_recorder_is_the_same_flight() -> None:
    assert overlap(span(0, 100), span(1, 99)) is Overlap.SAME
    assert overlap(span(0, 100), span(60, 101)) is Overlap.SAME


def test_flights_one_after_the_other_are_two_even_if_the_clocks_differ_a_little() -> None:
    assert overlap(span(0, 100), span(100, 160)) is Overlap.APART
    assert overlap(span(0, 100), span(99.5, 160)) is Overlap.APART


def test_a_part_is_to_be_asked_about() -> None:
    assert overlap(span(0, 100), span(80, 160)) is Overlap.PARTLY


def test_time_on_the_ground_between_two_launches_is_nobodys() -> None:
    assert overlap((*span(0, 60), *span(120, 200)), span(70, 110)) is Overlap.APART


def test_a_flight_without_length_or_times_is_no_other() -> None:
    assert overlap(span(5, 5), span(0, 100)) is Overlap.APART
    assert overlap((), span(0, 100)) is Overlap.APART


@given(
    st.lists(st.tuples(st.integers(-3_000, 3_000), st.integers(1, 2_000)), max_size=12),
    st.tuples(st.integers(-3_000, 3_000), st.integers(1, 2_000)),
)
def test_none_that_overlaps_is_overlooked(raw: list[tuple[int, int]], asked: tuple[int, int]) -> None:
    places = Places()
    flights = [span(start, start + length) for start, length in raw]
    for n, flown in enumerate(flights):
        places.add(Place(str(n), "", flown, in_log=False))
    flown = span(asked[0], sum(asked))
    near = [place.key for place in places.near(flown)]
    assert near == sorted(near, key=int)
    assert {str(n) for n, other in enumerate(flights) if both_s(flown, other)} <= set(near)


@given(st.lists(st.integers(0, 500), min_size=4, max_size=4))
def test_against_minutes_counted_one_by_one(raw: list[int]) -> None:
    one, other = sorted(raw[:2]), sorted(raw[2:])
    shared = len(set(range(*one)) & set(range(*other)))
    assert both_s(span(*one), span(*other)) == shared * 60
