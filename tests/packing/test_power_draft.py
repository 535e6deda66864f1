"""A plan with other durations: what is drawn while dragging is what would be assessed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from small_kit import outing

from kitlog.packing.power_draft import LONGEST_H, with_likely

PLAN = outing(
    phases=[
        {"name": "wait", "way": "wait", "low_h": 0.5, "likely_h": 1, "high_h": 2},
        {"name": "flight", "way": "flight", "low_h": 2, "likely_h": 4, "high_h": 6},
    ]
)


def hours(plan, number):
    phase = plan.phases[number]
    return phase.low_h, phase.likely_h, phase.high_h


@pytest.mark.parametrize(
    ("likely_h", "three"),
    [(5, (3, 5, 7)), (2, (0, 2, 4)), (1, (0, 1, 3)), (0, (0, 0, 2)), (-3, (0, 0, 2)), (999, (236, 238, LONGEST_H))],
)
def test_low_and_high_keep_their_distance_as_far_as_they_can(likely_h, three):
    moved = with_likely(PLAN, 1, likely_h)
    assert hours(moved, 1) == pytest.approx(three)
    assert moved.phases[0] == PLAN.phases[0]
    assert moved.model_copy(update={"phases": PLAN.phases}) == PLAN


@given(st.floats(-10, 300), st.integers(0, 1))
def test_it_is_a_plan_whatever_is_asked_for(likely_h, number):
    low, likely, high = hours(with_likely(PLAN, number, likely_h), number)
    assert 0 <= low <= likely <= high <= LONGEST_H


def test_the_same_duration_is_the_same_plan():
    assert with_likely(PLAN, 1, 4.0) == PLAN
