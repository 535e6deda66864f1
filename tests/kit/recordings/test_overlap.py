"""Two recorders of one flight."""

from datetime import timedelta

from hypothesis import given
from hypothesis import strategies as st
from recordings import utc

from kitlog.kit.recordings.overlap import Overlap, Span, first_of_each_flight, overlap

NOON = utc("2026-04-05T12:00")


def span(start_min: float, end_min: float) -> Span:
    return NOON + timedelta(minutes=start_min), NOON + timedelta(minutes=end_min)


def test_a_second_recorder_is_the_same_flight() -> None:
    assert overlap(span(0, 100), span(1, 99)) is Overlap.SAME
    assert overlap(span(0, 100), span(60, 101)) is Overlap.SAME


def test_flights_one_after_the_other_are_two_even_if_the_clocks_differ_a_little() -> None:
    assert overlap(span(0, 100), span(100, 160)) is Overlap.APART
    assert overlap(span(0, 100), span(99.5, 160)) is Overlap.APART


def test_a_part_is_to_be_asked_about() -> None:
    assert overlap(span(0, 100), span(80, 160)) is Overlap.PARTLY


def test_the_first_given_stays() -> None:
    spans = [span(200, 300), span(0, 100), span(2, 90), span(201, 299), span(120, 130)]
    assert first_of_each_flight(spans) == (0, 1, 1, 0, 4)


@given(st.lists(st.tuples(st.integers(0, 500), st.integers(1, 200)), max_size=12))
def test_against_all_pairs(raw: list[tuple[int, int]]) -> None:
    spans = [span(start, start + length) for start, length in raw]
    firsts = list(range(len(spans)))
    for _ in spans:
        for i, one in enumerate(spans):
            for j, other in enumerate(spans):
                if overlap(one, other) is Overlap.SAME:
                    firsts[i] = firsts[j] = min(firsts[i], firsts[j])
    assert first_of_each_flight(spans) == tuple(firsts)
