"""The edges between phases, by hand and by property."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.desktop.outing_page.phase_edges import SNAP_H, Scale, edge_near, hold, snapped, stepped
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


def test_the_edge_follows_the_pointer_by_the_hours_of_a_pixel() -> None:
    """By hand: the whole width is 10 h, so that a tenth of it is one hour."""
    assert hold(DAY, 1, 0.8).likely_at(0.9) == pytest.approx(5.0)
    assert hold(DAY, 1, 0.8).likely_at(0.6) == pytest.approx(2.0)
    assert hold(DAY, 2, 1.0).likely_at(0.95) == pytest.approx(0.5)
    assert hold(DAY, 2, 1.0).likely_at(1.1) == pytest.approx(2.0)
    assert hold(DAY, 2, 1.0).likely_at(0.2) == 0.0


@given(st.sampled_from([0, 1, 2]), st.floats(-0.2, 1.2))
def test_it_lies_under_the_pointer_and_what_is_before_stays(number: int, place: float) -> None:
    """On the scale of the beginning; past the end of the bands the edge stays there, and the axis grows."""
    phase = DAY.phases[number]
    likely_h = hold(DAY, number, DAY.edges[number + 1]).likely_at(place)
    moved = PhaseBand("", "", likely_h, likely_h + phase.high_h - phase.likely_h)
    phases = (*DAY.phases[:number], moved, *DAY.phases[number + 1 :])
    edges = Scale(DAY.lasts_h, 0).lay(PowerPicture(phases, ()), number).edges
    least = DAY.edges[number] + (phase.high_h - phase.likely_h) / 10
    assert edges[number + 1] == pytest.approx(min(max(place, least), 1.0), abs=SNAP_H / 10)
    if place <= 1.0:
        assert edges[: number + 1] == pytest.approx(DAY.edges[: number + 1])
        after = [edge - edges[number + 1] for edge in edges[number + 2 :]]
        assert after == pytest.approx([edge - DAY.edges[number + 1] for edge in DAY.edges[number + 2 :]])


def test_where_it_was_taken_beside_the_edge_it_does_not_jump() -> None:
    assert hold(DAY, 1, 0.81).likely_at(0.81) == pytest.approx(4.0)


def test_far_away_it_stays_a_duration() -> None:
    assert hold(DAY, 0, 0.2).likely_at(100) == 240.0


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
