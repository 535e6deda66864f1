"""Wh, mAh and V of a row, and columns of battery texts."""

import pytest
from column_reads import one, read
from hypothesis import given
from hypothesis import strategies as st

from kitlog.files.table.doubt import Question
from kitlog.files.table.electric import doubt_of, draw_from_ma, readings_of, settled
from kitlog.kit.facets import Battery

WH, MAH, V = "battery_wh", "battery_mah", "battery_v"


@pytest.mark.parametrize(
    ("cell", "held"),
    [
        ("10000 mAh", {MAH: 10000.0}), ("5 Ah", {MAH: 5000.0}), ("38.5Wh", {WH: 38.5}), ("3,7 V 2600 mAh", {V: 3.7, MAH: 2600.0}),
        ("10000mAh/38.5Wh", {MAH: 10000.0, WH: 38.5}), ("2600 mAh @ 3.7V", {MAH: 2600.0, V: 3.7}),
        ("3.7 V, 2,600 mAh", {V: 3.7, MAH: 2600.0}), ("10.000 mAh (3,7 V)", {MAH: 10000.0, V: 3.7}),
        ("37 Wh (10'000 mAh / 3.7 V)", {WH: 37.0, MAH: 10000.0, V: 3.7}), ("2600 mAh bei 3,7 V", {MAH: 2600.0, V: 3.7}),
        ("10000", {MAH: 10000.0}), ("", None), ("unknown", None),
    ],
)  # fmt: skip
def test_batteries_as_they_are_written(cell, held):
    assert one("battery", "mAh", cell) == held


@pytest.mark.parametrize(
    "cell",
    ["10000", "2x 2600 mAh", "2600 mAh 2.6 Ah", "LiPo 2600 mAh", "2600 mAh LiPo", "10-20 Wh", "10 Wh, 20 Wh", "3.7-4.2 V", "5 m",
     "7,4 V 2.600 mAh 9.6 Wh"],
)  # fmt: skip
def test_what_says_nothing_that_could_be_taken(cell):
    assert one("battery", "", cell) is Question.UNREAD


def test_ten_mah_are_no_reading_beside_ten_thousand():
    assert read("battery", "", ["10.000 mAh"]).values == ({MAH: 10000.0},)
    reading = read("battery", "", ["4,500 mAh", "3,7 V 1.100 mAh"])
    assert reading.values == (None, {V: 3.7, MAH: 1100.0})
    assert dict(reading.doubts[0].readings) == {"comma": "4.5 mAh", "point": "4500 mAh"}
    assert read("battery", "", ["10.000 mAh", "3,7 V"]).values == ({MAH: 10000.0}, {V: 3.7})


def test_currents_become_powers_with_volts():
    # Power is current times voltage: 150 mA at 3.7 V are 0.555 W.
    assert draw_from_ma(150, 3.7) == 0.555


@pytest.mark.parametrize(
    ("wh", "mah", "v", "question"),
    [
        (None, 10000, 5.0, Question.MAH_AT),
        (None, 10000, 4.75, Question.MAH_AT),
        (37.0, 10000, 5.0, Question.MAH_AT),
        (33.0, 6600, 5.0, None),
        (None, 10000, 5.5, Question.MAH_AT),
        (None, 10000, 4.8, Question.MAH_AT),
        (None, 1200, 4.5, None),
        (None, 5000, 7.4, None),
        (None, 10000, 3.7, None),
        (None, 10000, None, None),
        (37.0, 10000, 3.7, None),
        (38.5, 10000, 3.7, None),
        (50.0, 10000, 3.7, Question.ENERGY),
        (1.0, 0, 3.7, Question.ENERGY),
    ],
)
def test_what_is_asked_of_a_row(wh, mah, v, question):
    # 10,000 mAh at 3.7 V are 37 Wh, at 3.85 V 38.5 Wh (printed beside the same capacity, hive.blog); volts of a
    # dedicated port 4.75 to 5.25 V (USB Battery Charging 1.2), up to 5.5 V (from memory: USB Type-C). 4.5 V are three
    # alkaline cells in a row, 7.4 V two lithium ones (common practice).
    assert doubt_of(wh, mah, v) is question


def test_answers_to_five_volts():
    assert settled(None, 10000, 5.0, Question.MAH_AT, "cell") == (None, 10000, None)
    assert settled(None, 10000, 5.0, Question.MAH_AT, "5v") == (None, 10000, 5.0)
    assert settled(37.0, 10000, 5.0, Question.MAH_AT, "empty") == (37.0, None, None)
    assert doubt_of(37.0, 10000, 5.0, answered=(Question.MAH_AT,)) is Question.ENERGY


def test_answers_to_a_contradiction():
    assert settled(50.0, 10000, 3.7, Question.ENERGY, "wh") == (50.0, None, None)
    assert settled(50.0, 10000, 3.7, Question.ENERGY, "mah") == (None, 10000, 3.7)
    assert settled(50.0, 10000, 3.7, Question.ENERGY, "empty") == (None, None, None)
    assert settled(50.0, 10000, 3.7, None, "") == (50.0, 10000, 3.7)


def test_readings_show_the_figures():
    assert readings_of(50.0, 10000, 3.7, Question.ENERGY) == {"wh": "50 Wh", "mah": "10000 mAh × 3.7 V = 37 Wh"}
    assert readings_of(None, 10000, 5.0, Question.MAH_AT) == {"cell": "10000 mAh, ? V", "5v": "10000 mAh × 5 V = 50 Wh"}


_FIGURE = st.none() | st.floats(0.1, 9000)


@given(
    _FIGURE,
    _FIGURE,
    _FIGURE | st.floats(4.5, 5.5),
    st.sampled_from(["cell", "5v", "empty"]),
    st.sampled_from(["wh", "mah"]),
)
def test_what_is_settled_the_model_takes(wh, mah, v, at, energy):
    v = v and min(v, 1000)
    answers = {Question.MAH_AT: at, Question.ENERGY: energy}
    asked = []
    while (question := doubt_of(wh, mah, v, answered=asked)) is not None:
        wh, mah, v = settled(wh, mah, v, question, answers[question])
        asked.append(question)
    Battery(wh=wh, mah=mah, v=v)
