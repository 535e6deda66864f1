"""Any column, whatever is in it."""

import csv
import io
import time
from datetime import date
from decimal import Decimal

import pytest
from column_reads import read
from hypothesis import given
from hypothesis import strategies as st

from kitlog.files.table.cells import CalendarDay, Figure, Shows
from kitlog.files.table.doubt import CHOICES, Answers, Question
from kitlog.files.table.read_column import read_column
from kitlog.files.table.targets import TARGETS, Way
from kitlog.files.table.units import UNITS

_WAYS = frozenset({Way.DAY, Way.COUNT, Way.MASS, Way.FIGURE, Way.ELECTRIC, Way.MASS_RANGE, Way.MASS_UNIT})
_NAMES = sorted(name for name, target in TARGETS.items() if target.way in _WAYS)

_BITS = st.sampled_from(
    ["1", "12", "450", "2023", "05", ".", ",", "'", " ", "-", "/", ":", "kg", "g", "lb", "oz", "mAh", "V", "Wh", "h", "%", "ca.",
     "?", "je", "Mai", "Jun", "mar", "x", "€", "(", ")", "m2", "\xa0", "½", "٣", "～", "T", "Z", "+", "bis", "max", "…"]
)  # fmt: skip
_TEXTS = st.text(max_size=30) | st.lists(_BITS, max_size=9).map("".join)
_FIGURES = st.builds(
    Figure, st.decimals(), st.text(max_size=8), st.sampled_from(["", "g", "€", "km", "%"]), st.booleans()
)
_DAYS = st.builds(CalendarDay, st.dates(), st.text(max_size=8), st.sampled_from(Shows))
_ANSWERS = st.fixed_dictionaries(
    {}, optional={question: st.sampled_from([*choices, "empty"]) for question, choices in CHOICES.items()}
).map(Answers)


@given(
    st.sampled_from(_NAMES),
    st.sampled_from(["", *UNITS]),
    st.lists(_TEXTS | _FIGURES | _DAYS, max_size=8),
    _ANSWERS,
    st.booleans(),
)
def test_nothing_breaks_it_and_each_cell_is_read_nothing_or_doubtful(name, unit, cells, answers, own):
    reading = read_column(TARGETS[name], unit, cells, answers, own=own)
    assert len(reading.values) == len(cells)
    doubtful = [doubt.at for doubt in reading.doubts]
    assert doubtful == sorted(set(doubtful))
    assert all(reading.values[at] is None for at in doubtful)
    assert all(reading.values[at] is not None for at in reading.guesses)
    for doubt in reading.doubts:
        assert doubt.emptied == (answers.to(doubt.question) == "empty")
        assert set(doubt.readings) <= set(CHOICES[doubt.question])


@given(st.sampled_from(_NAMES), st.lists(_TEXTS, min_size=1, max_size=6), st.randoms())
def test_the_order_of_the_cells_does_not_matter(name, cells, random):
    shuffled = list(enumerate(cells))
    random.shuffle(shuffled)
    plain = read(name, "", cells)
    other = read(name, "", [cell for _, cell in shuffled])
    assert [plain.values[at] for at, _ in shuffled] == list(other.values)


@given(st.lists(_TEXTS, min_size=1, max_size=6))
def test_row_units_change_nothing_where_they_are_the_headings(cells):
    assert read("mass_g", "kg", cells) == read("mass_g", "", cells, units=["kg"] * len(cells))


def test_other_columns_are_not_read_here():
    with pytest.raises(KeyError):
        read_column(TARGETS["name"], "", ["x"], Answers())


def test_an_answer_to_one_question_leaves_the_others():
    reading = read("made_on", "", ["03/04/2025", "2018"], {"dates": "dmy"})
    assert reading.values == (date(2025, 4, 3), None)
    assert [doubt.question for doubt in reading.doubts] == [Question.MONTHS]


def test_a_figure_equal_to_another_keeps_its_own_text():
    cells = [Figure(Decimal(1), "1"), Figure(Decimal("1.0"), "1.0")]
    assert read("mass_g", "g", cells).values == (1, 1)


def _timed(work):
    best = 9.0
    for _ in range(5):
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best


@pytest.mark.bench
def test_plain_columns_take_a_few_times_what_csv_needs_for_the_table():
    rows = "\n".join(",".join(str(row * column) for column in range(12)) for row in range(2000))
    base = _timed(lambda: list(csv.reader(io.StringIO(rows))))
    columns = {
        ("mass_g", "g"): [str(n % 900) for n in range(2000)],
        ("mass_g", ""): [f"{n % 900} g" for n in range(2000)],
        ("wing_max_kg", "kg"): [f"{n % 150}.5" for n in range(2000)],
        ("made_on", ""): [f"{n % 28 + 1:02}.{n % 12 + 1:02}.{2000 + n % 25}" for n in range(2000)],
        ("quantity", ""): [str(n % 9) for n in range(2000)],
    }
    spent = sum(_timed(lambda key=key: read(*key, columns[key])) for key in columns)
    assert spent < 8 * base
