"""Courses for pictures."""

from itertools import pairwise

import pytest

from kitlog.budget.power.day import Day
from kitlog.budget.power.simulate import simulate
from kitlog.budget.power.trace import BEND

DAY = Day.model_validate(
    {
        "phases": [
            {"id": "flight", "hours": 4, "ambient_C": -5},
            {"id": "pause", "hours": 0, "ambient_C": 25},
            {"id": "ride", "hours": 3, "ambient_C": 20},
        ],
        "devices": [
            {"id": "phone", "cell_Wh": 12, "start": 0.9, "draw_W": {"flight": 2, "ride": 1}, "charge_max_W": 9, "temp_fixed_C": 25},
            {"id": "gloves", "cell_Wh": 5, "draw_W": {"flight": 4}, "temp_offset_C": 5},
        ],
        "banks": [{"id": "bank", "cell_Wh": 37, "temp_offset_C": 5}, {"id": "car", "cell_Wh": None}],
        "plugs": [
            {"phase": "flight", "device": "phone", "bank": "bank", "connect_below": 0.6},
            {"phase": "ride", "device": "phone", "bank": "car"},
        ],
    }
)  # fmt: skip


@pytest.fixture(scope="module")
def result():
    return simulate(DAY)


def test_points_stand_at_every_event_and_close_enough_in_bends(result):
    points = result.device_courses["phone"].points
    times_h = [time_h for time_h, _ in points]
    assert {0.0, 4.0, 7.0} <= set(times_h)
    assert any(soc == pytest.approx(0.6) for _, soc in points)
    between_h = [0.5 * (one + two) for one, two in pairwise(times_h)]
    exact = simulate(DAY, between_h).devices["phone"].samples_soc
    drawn = [0.5 * (one + two) for (_, one), (_, two) in pairwise(points)]
    assert max(abs(one - two) for one, two in zip(exact, drawn, strict=True)) <= BEND
    assert 8 < len(points) < 80


def test_a_straight_day_needs_few_points(result):
    assert len(result.device_courses["gloves"].points) <= 6


def test_floors_stand_for_phases_that_have_a_duration(result):
    floors = result.device_courses["gloves"].floors
    assert [(floor.phase, floor.from_h, floor.to_h) for floor in floors] == [("flight", 0, 4), ("ride", 4, 7)]
    assert [floor.floor_soc for floor in floors] == pytest.approx([0.15, 0.0])


def test_spans(result):
    phone, gloves = result.device_courses["phone"], result.device_courses["gloves"]
    assert [(span.what, span.from_h, span.to_h) for span in phone.plugged] == [
        ("bank", pytest.approx(1.8), 4.0),
        ("car", 4.0, 7.0),
    ]
    assert [(span.from_h, span.to_h) for span in gloves.off] == [(pytest.approx(0.85 * 5 / 4), 4.0)]
    assert [span.what for span in result.bank_courses["bank"].states] == ["off", "on", "off"]
    assert result.bank_courses["bank"].off == ()


def test_a_supply_without_end_and_a_device_without_a_cell_have_no_course():
    day = Day.model_validate(
        {
            "phases": [{"id": "a", "hours": 1, "ambient_C": 20}],
            "devices": [{"id": "lamp", "cell_Wh": 0}],
            "banks": [{"id": "car", "cell_Wh": None}],
        }
    )
    result = simulate(day)
    assert result.device_courses["lamp"].points == ()
    assert result.bank_courses["car"].points == ()


def test_spans_that_say_the_same_are_one():
    day = Day.model_validate(
        {
            "phases": [{"id": name, "hours": 1, "ambient_C": -15} for name in "abc"],
            "devices": [{"id": "vario", "cell_Wh": 1, "draw_W": {"a": 2, "b": 2, "c": 2}, "restart_margin": 0}],
            "banks": [{"id": "bank", "cell_Wh": 0}],
            "plugs": [{"phase": name, "device": "vario", "bank": "bank"} for name in "abc"],
        }
    )
    course = simulate(day).device_courses["vario"]
    assert [(span.from_h, span.to_h) for span in course.plugged] == [(0, 3)]
    assert len(course.off) == 1  # comes back at each phase start, and is off again at the same instant
