"""Columns of figures with units: energies, powers, volumes, areas, speeds, times, shares."""

from decimal import Decimal

import pytest
from column_reads import one, read, remarks
from hypothesis import given
from hypothesis import strategies as st

from kitlog.files.table.cells import Figure
from kitlog.files.table.doubt import Question
from kitlog.files.table.electric import Milliamps


@pytest.mark.parametrize(
    ("target", "unit", "cell", "value"),
    [
        ("battery_wh", "Wh", "38.5", 38.5), ("battery_wh", "", "38,5 Wh", 38.5), ("battery_wh", "Wh", "38500 mWh", 38.5),
        ("battery_wh", "", "0,0385 kWh", 38.5), ("battery_mah", "", "5 Ah", 5000.0), ("battery_mah", "Ah", "2,6", 2600.0),
        ("battery_v", "", "3700 mV", 3.7), ("battery_v", "V", "3,7", 3.7), ("draw_w", "W", "0.15", 0.15),
        ("draw_w", "mW", "150", 0.15), ("draw_w", "", "150 mA", Milliamps(150.0)), ("draw_w", "mA", "30", Milliamps(30.0)),
        ("draw_w", "", "0,5 A", Milliamps(500.0)), ("charge_max_w", "", "1 A", Milliamps(1000.0)),
        ("volume_ml", "l", "0,75", 750), ("vessel_ml", "", "7,5 dl", 750), ("vessel_ml", "", "33 cl", 330),
        ("vessel_ml", "ml", "750", 750), ("harness_volume_l", "l", "120", 120.0), ("harness_volume_l", "", "120 Liter", 120.0),
        ("wing_flat_m2", "m2", "26,5", 26.5), ("wing_flat_m2", "", "26.5 m²", 26.5), ("wing_flat_m2", "", "26 m2", 26.0),
        ("wing_trim_kmh", "", "38 km/h", 38.0), ("wing_trim_kmh", "", "10 m/s", 36.0), ("wing_sink_ms", "", "3,6 km/h", 1.0),
        ("battery_health_pct", "%", "95", 95.0), ("battery_health_pct", "", "95 %", 95.0),
        ("bank_off_s", "s", "32", 32.0), ("bank_off_s", "", "2 min", 120.0), ("bank_off_s", "", "1 min 30 s", 90.0),
        ("clo", "clo", "0,6", 0.6), ("opening_h", "h", "112", 112.0), ("opening_h", "h", "112,5 h", 112.5),
        ("opening_h", "h", "112:30", 112.5), ("opening_h", "h", "112:30:00", 112.5), ("opening_h", "h", "0:45", 0.75),
        ("opening_h", "h", "112 h 30", 112.5), ("opening_h", "h", "112h30", 112.5), ("opening_h", "", "6750 min", 112.5),
        ("opening_h", "h", "112 Std. 30 Min.", 112.5), ("opening_h", "h", "", None), ("opening_h", "h", "k.A.", None),
    ],
)  # fmt: skip
def test_figures_as_they_are_written(target, unit, cell, value):
    # Definitions of the SI and its prefixes; 1 m/s = 3.6 km/h.
    found = one(target, unit, cell)
    assert found == value
    assert type(found) is type(value)


@pytest.mark.parametrize(
    ("target", "unit", "cell"),
    [
        ("battery_wh", "Wh", "2600 mAh"), ("battery_mah", "mAh", "9.6 Wh"), ("draw_w", "W", "5 V"),
        ("battery_wh", "", "38.5"), ("draw_w", "", "5"), ("vessel_ml", "", "750"), ("bank_off_s", "", "30"),
        ("bank_port_w", "", "2 A"), ("vessel_ml", "ml", "0,5"), ("opening_h", "h", "1:75"), ("opening_h", "h", "2 h 75"),
        ("battery_health_pct", "%", "0.95"), ("battery_health_pct", "%", "1"), ("wing_flat_m2", "m2", "285 sq ft"),
        ("wing_trim_kmh", "", "24 mph"), ("draw_w", "W", "0.1-0.3"), ("draw_w", "W", "<1"), ("battery_wh", "Wh", "10 Wh each"),
    ],
)  # fmt: skip
def test_what_says_nothing_that_could_be_taken(target, unit, cell):
    assert one(target, unit, cell) is Question.UNREAD


def test_a_unit_that_goes_without_saying_is_said_to_have_been_taken():
    reading = read("opening_h", "", ["112", "80,5", "3 h", "1:30", ""])
    assert reading.values == (112.0, 80.5, 3.0, 1.5, None)
    assert remarks(reading) == [("table.usual_unit", {"unit": "h", "cells": 2})]
    assert read("opening_h", "h", ["112"]).remarks == ()


def test_a_workbooks_share_is_a_percentage():
    cells = [Figure(Decimal("0.95"), "95 %", percent=True), Figure(Decimal(95), "95"), Figure(Decimal("0.95"), "0.95")]
    reading = read("battery_health_pct", "%", cells)
    assert reading.values == (95.0, 95.0, None)
    assert [doubt.question for doubt in reading.doubts] == [Question.UNREAD]


def test_a_workbooks_duration_is_read_as_shown():
    # A duration of 112:30 is kept as 4.6875 days in a workbook.
    assert one("opening_h", "h", Figure(Decimal("4.6875"), "112:30")) == 112.5


def test_beyond_the_models_limits_there_is_no_reading():
    # kitlog.kit.facets.Wing: at most 100 m2
    assert one("wing_flat_m2", "m2", "26.500") == 26.5


def test_a_capacity_that_no_device_has_is_no_reading():
    assert one("battery_mah", "mAh", "4,500") == 4_500.0
    reading = read("battery_mah", "mAh", ["4,500", "3,7"])
    assert reading.values == (None, 3.7)
    assert dict(reading.doubts[0].readings) == {"comma": "4.5 mAh", "point": "4500 mAh"}
    assert one("battery_mah", "mAh", "25,500", {"decimal": "comma"}) == 25.5  # both could be meant
    assert one("battery_mah", "mAh", "12") == 12.0  # nothing else can be meant


def test_evidence_decides():
    reading = read("opening_h", "h", ["1.250", "80,5"])
    assert reading.values == (1250.0, 80.5)
    assert remarks(reading) == [("table.decided_decimal", {"mark": "comma", "cells": 1, "example": "80,5"})]


def test_our_own_files_need_no_units():
    reading = read("battery_wh", "", ["1.250", "0.5"], own=True)
    assert (reading.values, reading.doubts, reading.remarks) == ((1.25, 0.5), (), ())


@given(st.decimals(0, 9999, places=2), st.sampled_from([",", "."]), st.sampled_from(["", " Wh", "Wh"]))
def test_energies_read_back_in_both_marks(value, mark, unit):
    assert one("battery_wh", "Wh", f"{value}".replace(".", mark) + unit) == float(value)


@given(st.integers(0, 99_999), st.integers(0, 59))
def test_hours_and_minutes_read_back(hours, minutes):
    expected = pytest.approx(hours + minutes / 60, abs=1e-9)
    assert one("opening_h", "h", f"{hours}:{minutes:02}") == expected
    assert one("opening_h", "h", f"{hours} h {minutes:02}") == expected
    assert one("opening_h", "h", f"{hours}h{minutes:02}min") == expected
