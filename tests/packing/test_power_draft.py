"""A plan with other durations: what is drawn while dragging is what would be assessed."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scenario import LIBRARY, O1, judged
from small_kit import outing

from kitlog.budget.result import Topic
from kitlog.packing.power_draft import LONGEST_H, redrawn, with_likely

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


def said_of_power(assessment):
    return {(finding.key, finding.state, finding.figure) for finding in assessment.of(Topic.POWER)}


@pytest.mark.parametrize("likely_h", [0.5, 3.0, 5.5, 9.0, 14.0])
def test_what_is_said_of_the_power_while_dragging_is_what_is_said_when_it_is_kept(likely_h):
    """The tile shows it: a reserve that is used up, a charge in the cold and the rest among it."""
    flight = next(number for number, phase in enumerate(O1.phases) if phase.name == "flight")
    moved = with_likely(O1, flight, likely_h)
    before = judged(O1)
    drawn, kept = redrawn(before, moved, LIBRARY), judged(moved)
    assert said_of_power(drawn) == said_of_power(kept)
    assert said_of_power(drawn) != said_of_power(before)


def test_a_reason_on_record_stays_at_its_finding_while_dragging():
    before = judged(O1)
    closed = before.of(Topic.POWER)[0]
    with_reason = replace(
        before,
        findings=tuple(replace(one, override="spare cells") if one is closed else one for one in before.findings),
    )
    drawn = redrawn(with_reason, with_likely(O1, 1, 5.0), LIBRARY)
    assert [one.override for one in drawn.findings if one.key == closed.key] == ["spare cells"]
