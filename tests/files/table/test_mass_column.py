"""Columns of masses: units, rough figures, decimal marks decided or asked about."""

from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest
from column_reads import one, read, remarks
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from kitlog.files.table.cells import CalendarDay, Figure
from kitlog.files.table.doubt import Question


@pytest.mark.parametrize(
    ("cell", "grams"),
    [
        ("420", 420), ("0", 0), ("420 g", 420), ("420g", 420), ("420 Gr.", 420), ("420 Gramm", 420), ("+420", 420),
        ("1,2 kg", 1200), ("0.420 kg", 420), ("0,420kg", 420), ("1.2340 kg", 1234), ("1,2 kilos", 1200),
        ("1 kg 250 g", 1250), ("1kg250", 1250), ("1 kg 050", 1050), ("1'450 g", 1450), ("1\u202f450 g", 1450),
        ("1\xa0450,0 g", 1450), ("1.450.000 g", 1_450_000), ("3 oz", 85), ("14,8 oz", 420), ("1 lb", 454),
        ("1 lb 3 oz", 539), ("1 pound, 3 ounces", 539), ("2.5 lbs", 1134), ("420 g gewogen", 420),
        ("420 g (weighed)", 420), ("420 g, pesé", 420), ("je 62 g", 62), ("62 g each", 62), ("62 g/Stk", 62),
        ("62 g pro Stück", 62), ("62 g la pièce", 62),
    ],
)  # fmt: skip
def test_masses_as_they_are_written(cell, grams):
    # Pound and ounce: international avoirdupois (NIST SP 811); the ways of writing: common practice, no source.
    assert one("mass_g", "g", cell) == grams


@pytest.mark.parametrize(
    "cell",
    [
        "", " ", "?", "-", "–", "—", "n/a", "NA", "n.a.", "k.A.", "keine Angabe", "unbekannt", "unknown", "inconnu",
        "tbd", "offen", "leer", "…", "#N/A",
    ],
)  # fmt: skip
def test_not_known_is_nothing_and_no_doubt(cell):
    reading = read("mass_g", "", [cell])
    assert (reading.values, reading.doubts, reading.remarks) == ((None,), (), ())


@pytest.mark.parametrize(
    "cell",
    [
        "ca. 420 g", "ca 420", "~420", "~ 420 g", "≈420", "approx. 420", "about 420 g", "circa 420", "env. 420 g",
        "environ 420 g", "etwa 420 g", "rund 420 g", "ungefähr 420", "+/- 420 g", "±420", "420 g ?", "420?",
        "420 g (est.)", "420 g (geschätzt)", "420 g estimé", "420 g guess", "ca. 420 g ?", "je ca. 420 g",
    ],
)  # fmt: skip
def test_rough_figures_are_guesses(cell):
    reading = read("mass_g", "g", [cell, "7"])
    assert reading.values == (420, 7)
    assert reading.guesses == {0}


@pytest.mark.parametrize(
    "cell",
    [
        "x", "3 m", "420 mAh", "2 x 62 g", "2x62g", "400-450 g", "<500", ">400 g", "max 500", "-5", "½", "1/2", "½ x",
        "1e3", "0x1F", "１２", "٤٢٠", "(420 g)", "420 €", "42 %", "420 g *", "420 g + bag", "about", "1 Pfund", "2 livres",
        "4 20", "1,5 kg 200 g", "1 kg 1200 g", "1 lb 17 oz", "1 kg 3 oz", "1 g 250 kg", "420 g total",
        "420 g 420 g", "1.2.2020", "ca. ?", "g", "420 g" + " " * 200 + "x",
    ],
)  # fmt: skip
def test_what_says_nothing_that_could_be_taken(cell):
    reading = read("mass_g", "g", [cell])
    assert (reading.values, reading.guesses) == ((None,), frozenset())
    assert [doubt.question for doubt in reading.doubts] == [Question.UNREAD]


def test_a_mass_of_all_pieces_is_not_given_for_each():
    assert one("mass_all", "g", "62 g each") is Question.UNREAD
    assert one("mass_all", "g", "124 g") == 124


def test_the_unit_in_the_cell_goes_before_that_of_the_row_and_that_before_the_headings():
    reading = read("mass_g", "kg", ["1", "1", "1 lb"], units=["g", "", "oz"])
    assert reading.values == (1, 1000, 454)


def test_without_a_unit_anywhere_it_is_asked_for_and_other_cells_prove_nothing():
    reading = read("mass_g", "", ["420 g", "380", "0"])
    assert reading.values == (420, None, 0)
    (doubt,) = reading.doubts
    assert (doubt.at, doubt.question) == (1, Question.MASS_UNIT)
    assert dict(doubt.readings) == {"g": "380 g", "kg": "380 kg", "oz": "380 oz", "lb": "380 lb"}


@pytest.mark.parametrize(("answer", "grams"), [("g", 3), ("kg", 3000), ("oz", 85), ("lb", 1361)])
def test_the_answer_gives_the_unit(answer, grams):
    assert one("mass_g", "", "3", {"mass_unit": answer}) == grams


def test_the_unit_is_asked_first_and_the_mark_then():
    assert one("mass_g", "", "1.450") is Question.MASS_UNIT
    assert one("mass_g", "", "1.450", {"mass_unit": "g"}) is Question.DECIMAL
    assert one("mass_g", "", "1.450", {"mass_unit": "g", "decimal": "comma"}) == 1450
    assert one("mass_g", "", "1.450", {"mass_unit": "kg"}) == 1450


def test_left_not_known_on_wish():
    reading = read("mass_g", "g", ["1.450", "x", "7"], {"decimal": "empty", "unread": "empty"})
    assert reading.values == (None, None, 7)
    assert [(doubt.at, doubt.emptied) for doubt in reading.doubts] == [(0, True), (1, True)]


def test_one_cell_decides_the_mark_for_the_column():
    reading = read("mass_g", "g", ["1.450", "420", "1.200", "1.450", "85,0"])
    assert reading.values == (1450, 420, 1200, 1450, 85)
    assert remarks(reading) == [("table.decided_decimal", {"mark": "comma", "cells": 3, "example": "85,0"})]


def test_a_figure_finer_than_a_gram_is_rounded_and_said_and_shows_the_mark():
    reading = read("mass_g", "g", ["1.450", "85,5"])
    assert reading.values == (1450, 86)
    assert ("table.rounded", {"cells": 1, "example": "85,5"}) in remarks(reading)
    assert read("mass_g", "kg", ["1.2345 kg"]).values == (1235,)


def test_proofs_that_contradict_each_other_decide_nothing():
    reading = read("mass_g", "g", ["1.450", "85,0", "85.0"])
    assert reading.values == (None, 85, 85)
    assert reading.remarks == ()
    assert dict(reading.doubts[0].readings) == {"comma": "1450 g", "point": "1.45 g"}


def test_nothing_decided_nothing_said():
    assert read("mass_g", "g", ["85,0", "1450"]).remarks == ()


def test_what_nobody_could_carry_is_no_reading():
    # kitlog.kit.item.MAX_PIECE_G: 200 kg.
    reading = read("mass_g", "kg", ["5.240", "12"])
    assert reading.values == (5240, 12000)
    assert remarks(reading) == [
        ("table.decided_decimal", {"mark": "point", "cells": 1, "example": "5.240", "because": "impossible"})
    ]


def test_no_other_cell_makes_a_mass_finer_than_a_gram():
    reading = read("mass_g", "", ["1.450 g", "5.240 kg"])
    assert reading.values == (None, 5240)
    assert [doubt.question for doubt in reading.doubts] == [Question.DECIMAL]


def test_what_is_possible_in_one_way_only_is_asked_about_where_others_contradict_it():
    reading = read("mass_g", "kg", ["1.250", "0,42"])
    assert reading.values == (None, 420)
    assert [(doubt.question, dict(doubt.readings)) for doubt in reading.doubts] == [
        (Question.DECIMAL, {"comma": "1250 kg", "point": "1.25 kg"})
    ]


@pytest.mark.parametrize(("answer", "grams"), [("comma", 1000), ("point", 1)])
def test_the_answer_settles_the_mark(answer, grams):
    assert one("mass_g", "g", "1.000", {"decimal": answer}) == grams


def test_our_own_files_have_a_point_and_kilograms_where_the_heading_says_so():
    reading = read("wing_max_kg", "", ["1.250", "85"], own=True)
    assert (reading.values, reading.doubts, reading.remarks) == ((1250, 85000), (), ())
    assert read("mass_g", "", ["420"], own=True).values == (420,)


def test_a_workbooks_figures_are_exact():
    cells = [Figure(Decimal("0.42"), "0,42"), Figure(Decimal("1.25"), "1,250"), Figure(Decimal(420), "420 g", "g")]
    assert read("mass_g", "kg", cells).values == (420, 1250, 420)


def test_a_formulas_figure_is_rounded_and_said():
    cells = [Figure(Decimal("419.573"), "420"), Figure(Decimal("62.5"), "63"), Figure(Decimal(7), "7")]
    reading = read("mass_g", "g", cells)
    assert reading.values == (420, 63, 7)
    assert remarks(reading) == [("table.rounded", {"cells": 2, "example": "420"})]


def test_noise_of_binary_fractions_is_none():
    reading = read("mass_g", "kg", [Figure(Decimal("0.30000000000000004"), "0.3")])
    assert (reading.values, reading.remarks) == ((300,), ())


@pytest.mark.parametrize("value", ["NaN", "sNaN", "Infinity", "-1", "1E+9999999", "0E-9999999"])
def test_figures_that_are_none(value):
    assert one("mass_g", "g", Figure(Decimal(value), "x")) is Question.UNREAD


def test_a_figure_of_another_kind():
    assert one("mass_g", "g", CalendarDay(date(2020, 5, 1), "1.5")) is Question.UNREAD
    assert one("mass_g", "g", Figure(Decimal("0.5"), "50 %", percent=True)) is Question.UNREAD
    assert one("mass_g", "g", Figure(Decimal(5), "5 €", "€")) is Question.UNREAD


_DIALECTS = [(",", "."), (".", ","), (".", "'"), (",", "\xa0"), (",", "\u202f"), (".", " "), (".", "’"), (",", "")]


def grouped(whole, mark):
    return f"{whole:,}".replace(",", mark)


@given(st.lists(st.integers(1, 199_999), min_size=1, max_size=8), st.sampled_from(_DIALECTS))
def test_grams_in_every_dialect_with_a_proof_read_back(masses, dialect):
    decimal, thousands = dialect
    cells = [f"{grouped(mass, thousands)} g" for mass in masses]
    reading = read("mass_g", "", [*cells, f"0{decimal}25 kg"])
    assert reading.values == (*masses, 250)
    assert reading.doubts == ()


@given(st.integers(1, 199_999), st.sampled_from(_DIALECTS))
def test_grams_without_a_proof_are_right_or_asked_about(mass, dialect):
    text = grouped(mass, dialect[1])
    reading = read("mass_g", "g", [text])
    if reading.doubts:
        assert reading.values == (None,)
        assert f"{mass} g" in reading.doubts[0].readings.values()
        mark = {",": "comma", ".": "point"}[dialect[0]]
        assert one("mass_g", "g", text, {"decimal": mark}) == mass
    else:
        assert reading.values == (mass,)


@given(st.integers(0, 200_000), st.sampled_from([",", "."]))
def test_kilograms_read_back_to_the_gram(mass, decimal):
    assert one("mass_g", "kg", f"{mass / 1000:.3f}".replace(".", decimal)) == mass


@given(st.integers(0, 40), st.integers(0, 159))
def test_pounds_and_ounces_are_those_of_the_handbook(pounds, tenths):
    # Outside reference: scipy.constants (NIST SP 811), in exact fractions; halves up.
    exact = Fraction(str(constants.pound)) * 1000 * (pounds + Fraction(tenths, 160))
    assert one("mass_g", "", f"{pounds} lb {tenths / 10} oz") == int(exact + Fraction(1, 2))
    assert one("mass_g", "lb", f"{pounds}") == int(Fraction(str(constants.pound)) * 1000 * pounds + Fraction(1, 2))


def test_units_of_a_column_of_units():
    reading = read("mass_unit", "", ["g", "Kilo", "", "km", "?", "lbs"])
    assert reading.values == ("g", "kg", None, None, None, "lb")
    assert [(doubt.at, doubt.question) for doubt in reading.doubts] == [(3, Question.UNREAD)]


@pytest.mark.parametrize(
    ("cell", "grams"),
    [
        ("½ lb", 227),
        ("about 1/2 lb", 227),
        ("1 1/2 lb", 680),
        ("1½ kg", 1500),
        ("¾ oz", 21),
        ("190 g ch.", 190),
        ("68 g each", 68),
        ("130 g (leer)", 130),
        ("ca. 130 g (empty)", 130),
        ("1,1 kg la paire", 1100),
    ],
)
def test_halves_and_words_behind_a_mass(cell, grams):
    """Pound and ounce as in NIST Special Publication 811, appendix B; by hand."""
    assert one("mass_g", "", cell) == grams


def test_a_fraction_proves_no_decimal_mark():
    reading = read("mass_g", "", ["1/2 lb", "1.450 g"])
    assert (reading.values, reading.remarks) == ((227, None), ())


@pytest.mark.parametrize("cell", ["1/2/3 g", "3/5 kg", "11/2 kg", "2/4/8"])
def test_what_is_no_fraction(cell):
    assert one("mass_g", "", cell) in (Question.UNREAD, Question.MASS_UNIT)
