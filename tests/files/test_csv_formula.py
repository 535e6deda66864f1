"""Cells that a spreadsheet would run.

Which: OWASP ASVS 5.0, requirement 1.2.10 (= + - @ TAB NUL as the first character get a single quote in front, quoting as in RFC
4180 sections 2.6 and 2.7) and CWE-1236, potential mitigations (= + - @). Carriage return, line feed and full-width forms:
OWASP's page "CSV Injection", from memory.
"""

import csv
import io
import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.files.csv_formula import defuse, undefuse
from kitlog.files.csv_kit import read_kit
from kitlog.files.csv_kit_export import write_kit
from kitlog.kit.facets import Battery
from kitlog.kit.item import Item

ASVS_1_2_10 = ["=", "+", "-", "@", "\t", "\0"]
CWE_1236 = ["=", "+", "-", "@"]
OWASP_PAGE = ["=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠"]
FORMULAS = ["=1+1", "+1", "-2+3", "@SUM(A1)", '=HYPERLINK("http://x","y")', "=cmd|' /C calc'!A0", "＝1+1"]


@pytest.mark.parametrize("first", sorted({*ASVS_1_2_10, *CWE_1236, *OWASP_PAGE}))
def test_each_listed_first_character_gets_an_apostrophe(first: str) -> None:
    assert defuse(f"{first}A1") == f"'{first}A1"


@pytest.mark.parametrize("text", ["", "a=b", "tree kit", "'tis", "5", "(x)", "–5", "  "])
def test_other_texts_stay_as_they_are(text: str) -> None:
    assert defuse(text) == text


def test_blanks_in_front_do_not_hide_a_formula() -> None:
    assert defuse("  =1") == "'  =1"


def test_a_text_with_an_apostrophe_of_its_own_gets_a_second() -> None:
    assert defuse("'=1") == "''=1"
    assert undefuse("''=1") == "'=1"


@given(st.text(alphabet="'=+-@\t\n ＝a1", max_size=8) | st.text())
def test_what_is_defused_reads_back(text: str) -> None:
    assert undefuse(defuse(text)) == text


@given(st.text(alphabet="'=+-@\t\n ＝a1", max_size=8) | st.text())
def test_nothing_defused_starts_as_a_formula(text: str) -> None:
    assert not defuse(text).lstrip(" ").startswith(tuple({*ASVS_1_2_10, *OWASP_PAGE}))


@pytest.mark.parametrize("text", FORMULAS)
def test_no_cell_of_an_export_starts_as_a_formula(text: str) -> None:
    item = Item(
        id="1",
        name=text,
        maker=text,
        model=text,
        serial=text,
        colour=text,
        notes=text,
        serves=(text,),
        battery=Battery(connector=text),
    )
    other = Item(id="2", name="Pair", fitted_to="1")
    data = write_kit([item, other]).data
    cells = [cell for row in csv.reader(io.StringIO(data.decode(), newline="")) for cell in row]
    assert sum(text in cell or text.replace("+", r"\+") in cell for cell in cells) == 9
    assert not [cell for cell in cells if cell.startswith(tuple(OWASP_PAGE))]
    count = itertools.count(1)
    assert read_kit(data, "kit.csv", (), lambda: str(next(count))).items == (item, other)
