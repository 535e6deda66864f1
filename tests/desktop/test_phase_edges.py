"""The edges between phases, by hand and by property."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.desktop.outing_page.phase_edges import SNAP_H, edge_near, hold, snapped, stepped
from kitlog.paint.power_picture import PhaseBand, PowerPicture

DAY = PowerPicture(
    (PhaseBand("wait", "", 1.0, 2.0), PhaseBand("flight", "", 4.0, 6.0), PhaseBand("walk", "", 1.0, 2.0)), ()
)
"""Bands of 0.2, 0.6 and 0.2 of the width."""


@pytest.mark.parametrize(("place", "number"), [(0.21, 0), (0.79, 1), (0.99, 2), (0.5, None), (0.0, None)])
def test_the_edge_under_a_pointer(place: float, number: int | None) -> None:
    assert edge_near(DAY, place, 0.02) == number


def test_without_hours_there_is_no_edge_to_take() -> None:
    assert edge_near(PowerPicture((PhaseBand("wait", "", 0, 0),), ()), 1.0, 0.1) is None


def test_the_edge_follows_the_pointer() -> None:
    """By hand: 2 h more flight make the whole 12 h, the edge lies at (2 + 8) / 12."""
    assert hold(DAY, 1, 0.8).likely_at(10 / 12) == pytest.approx(6.0)
    assert hold(DAY, 1, 0.8).likely_at(0.75) == pytest.approx(2.0)  # (8 - 2) / (10 - 2)


@given(st.sampled_from([0, 1]), st.floats(0.05, 0.95))
def test_it_lies_under_the_pointer_wherever_that_is(number: int, place: float) -> None:
    held = hold(DAY, number, DAY.edges[number + 1])
    likely_h = held.likely_at(place)
    phase = DAY.phases[number]
    moved = PhaseBand("", "", likely_h, likely_h + phase.high_h - phase.likely_h)
    phases = (*DAY.phases[:number], moved, *DAY.phases[number + 1 :])
    lies = PowerPicture(phases, ()).edges[number + 1]
    least = PowerPicture(
        (*DAY.phases[:number], PhaseBand("", "", 0, phase.high_h - phase.likely_h), *DAY.phases[number + 1 :]), ()
    )
    assert lies == pytest.approx(max(place, least.edges[number + 1]), abs=SNAP_H / 4)


def test_the_last_edge_goes_by_the_hours_of_a_pixel() -> None:
    assert hold(DAY, 2, 1.0).likely_at(0.95) == pytest.approx(0.5)
    assert hold(DAY, 2, 1.0).likely_at(1.1) == pytest.approx(2.0)
    assert hold(DAY, 2, 1.0).likely_at(0.2) == 0.0


def test_where_it_was_taken_beside_the_edge_it_does_not_jump() -> None:
    assert hold(DAY, 1, 0.81).likely_at(0.81) == pytest.approx(4.0)


def test_past_the_end_it_stays_a_duration() -> None:
    assert hold(DAY, 0, 0.2).likely_at(1.0) == 240.0
    assert hold(DAY, 0, 0.2).likely_at(1.5) == 240.0


@given(st.floats(0, 240))
def test_durations_go_in_steps_of_five_minutes(hours: float) -> None:
    assert snapped(hours) == pytest.approx(hours, abs=SNAP_H / 2 + 1e-9)
    assert snapped(hours) * 12 == pytest.approx(round(snapped(hours) * 12), abs=1e-6)


@pytest.mark.parametrize(
    ("hours", "steps", "to"),
    [(1.0, 1, 13 / 12), (1.0, -1, 11 / 12), (1.02, 1, 13 / 12), (1.02, -1, 1.0), (0.0, -1, 0.0), (0.05, -1, 0.0)],
)
def test_a_key_goes_to_the_next_whole_step(hours: float, steps: int, to: float) -> None:
    assert stepped(hours, steps) == pytest.approx(to)
