from hypothesis import example, given
from hypothesis import strategies as st

from kitlog.wording.columns import WIDTH, Column, row, shown_width, table, wrapped

WORDS = st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs", "Zl", "Zp"]), max_size=300)


def test_width_of_wide_and_of_combining_letters() -> None:
    # East Asian wide letters take two columns, combining marks none (Unicode Standard Annex 11).
    assert shown_width("Flügel") == 6
    assert shown_width("u\u0308") == 1
    assert shown_width("翼") == 2
    assert shown_width("a\u2009b\u00a0c") == 5


@given(WORDS, st.integers(2, 60))
def test_no_line_is_wider_than_its_column(text: str, width: int) -> None:
    lines = wrapped(text, width)
    assert lines
    assert all(shown_width(line) <= width for line in lines)


@given(WORDS, st.integers(2, 60))
def test_wrapping_loses_no_letter(text: str, width: int) -> None:
    def letters(words: str) -> str:
        return "".join(words.split())

    assert letters("".join(wrapped(text, width))) == letters(text)


@given(st.lists(st.tuples(WORDS, WORDS, WORDS), min_size=1, max_size=4))
@example([("", "6 wide", "0" * 70)])
def test_a_table_fits_the_terminal(rows: list[tuple[str, str, str]]) -> None:
    assert all(shown_width(line) <= WIDTH for line in table(rows, (False, True, False)))


def test_figures_stand_under_each_other() -> None:
    assert list(table([("wing", "5 240 g"), ("foil blanket", "58 g")], (False, True))) == [
        "wing          5 240 g",
        "foil blanket     58 g",
    ]


def test_a_long_cell_hangs_in_its_column() -> None:
    columns = (Column(5), Column(4, right=True), Column(8))
    assert list(row(("a", "12", "one two three"), columns, indent=1)) == [
        " a        12  one two",
        "              three",
    ]
