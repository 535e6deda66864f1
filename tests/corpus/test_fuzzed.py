"""Damaged and senseless tables end in a preview or in a sentence, never in anything else."""

import itertools
import random
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kitlog.fault import InputFault
from kitlog.files.csv_columns import KIT
from kitlog.files.csv_problems import Spot
from kitlog.files.resources import resources_folder
from kitlog.files.table.cells import CalendarDay, Cell, Figure, Grid, GridRow, Shows
from kitlog.files.table.doubt import EMPTY, Answers, Question, Settled
from kitlog.files.table.kit_items import Existing
from kitlog.files.table.open_grid import read_grid
from kitlog.files.table.vocabulary import load_vocabulary
from kitlog.wording.faults import fault_text
from kitlog.wording.import_text import remark_text
from kitlog.workbench.kit_preview import ImportChoices, KitPreview, KitSource, preview_kit

HERE = Path(__file__).parent
SHEETS = sorted(path for path in HERE.glob("*/*") if path.suffix in {".csv", ".xlsx", ".ods"})
WORDS = load_vocabulary(resources_folder())
LEAVE = ImportChoices(settled=Settled(Answers(dict.fromkeys(Question, EMPTY))), existing=Existing.ADD, leave_out=True)


def looked_at(grid: Grid, choices: ImportChoices) -> KitPreview:
    count = itertools.count(1)
    source = KitSource((), WORDS, lambda: str(next(count)), {}, lambda _item: None)
    return preview_kit(source, grid, "x.csv", choices)


def said_of(fault: InputFault) -> None:
    assert fault_text(fault).what != fault.code


def ends_well(grid: Grid) -> None:
    """Everything can be said, and when all that is doubtful is left out, the rest can be written."""
    try:
        first = looked_at(grid, ImportChoices())
    except InputFault as fault:
        said_of(fault)
        return
    refusal = first.refusal()
    if refusal is not None:
        said = fault_text(refusal)
        assert len(said.more) == len(refusal.problems)
    for remark in first.remarks:
        assert remark_text(remark.code, remark.facts)
    left = looked_at(grid, LEAVE)
    assert left.refusal() is None
    assert len({item.id for item in left.new}) == len(left.new)


def damaged(data: bytes, chance: random.Random) -> bytes:
    """One of the ways in which files come to harm."""
    at, length = chance.randrange(len(data)), chance.randrange(1, 40)
    match chance.randrange(5):
        case 0:
            return data[:at]
        case 1:
            return data[:at] + bytes(chance.randrange(256) for _ in range(length)) + data[at + length :]
        case 2:
            return data[:at] + data[at + length :]
        case 3:
            return data[:at] + data[at : at + length] * 3 + data[at + length :]
    return data[:at] + chance.choice([b"\0", b'"', b";", b"\t", b"\r", b"\xff\xfe", b",,,,", b"1.250"]) + data[at:]


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_a_damaged_sheet_ends_in_a_preview_or_a_sentence(sheet: Path) -> None:
    chance = random.Random(sheet.name)
    data = sheet.read_bytes()
    for _ in range(25 if sheet.suffix == ".csv" else 8):
        try:
            grid = read_grid(damaged(data, chance), sheet.name)
        except InputFault as fault:
            said_of(fault)
        else:
            ends_well(grid)


NASTY = [
    "", " ", "-", "?", "0", "-1", "1.250", "1,250", "85,5", "1e9", "999999999", "420 g", "ca. 4 kg", "1 lb 3 oz", "5 V", "10000 mAh",
    "38 Wh", "10000 mAh 5 V", "03/04/2025", "31.02.2024", "06/2018", "45000", "2 Stk", "1/2", "Helm", "wing", "Total", "Summe",
    "~3 kg", "≈ 2,5", "ca. 3,5 kg", "3.4 kg?", "Sous-total", "Total (sans eau)", "Secours", "½ lb", "1,1 kg la paire", "4,500 mAh",
    "verkauft", "Cockpit", "a\nb", "'=1+1", "\u202e", "x" * 250, "Zelt+Matte", "100 %", "0.95", "85-105 kg", "#REF!", "nan",
]  # fmt: skip
HEADS = [
    *KIT.headings, "Gewicht", "Weight (g)", "Poids en kg", "Akku", "Total", "Regal", "", "Typ", "Stück", "Startgewicht",
    "Gesamtgewicht", "Einheit", "Verbrauch mA", "Kapazität mAh", "Was",
]  # fmt: skip
CELLS: st.SearchStrategy[Cell] = (
    st.sampled_from(NASTY)
    | st.text(max_size=12)
    | st.decimals(allow_nan=False, allow_infinity=False, places=3, min_value=-10, max_value=100_000).map(
        lambda value: Figure(Decimal(value), str(value))
    )
    | st.sampled_from(["g", "kg", "%", "Wh", "zz"]).map(lambda unit: Figure(Decimal(7), f"7 {unit}", unit))
    | st.sampled_from(Shows).map(lambda shows: CalendarDay(date(2018, 6, 1), "2018-06-01", shows))
    | st.just(Figure(Decimal("0.9"), "90 %", percent=True))
)


@given(
    st.lists(st.sampled_from(HEADS), min_size=1, max_size=9),
    st.lists(st.lists(CELLS, max_size=10), max_size=8),
    st.booleans(),
)
@settings(max_examples=400)
def test_any_cells_under_any_headings_end_in_a_preview_or_a_sentence(
    heads: list[str], rows: list[list[Cell]], own: bool
) -> None:
    grid = Grid([GridRow(Spot(at, at), row) for at, row in enumerate([heads, *rows], 1)], own_form=own)
    ends_well(grid)


LIST_HEADS = [
    "Weight",
    "Gewicht (kg)",
    "Price",
    "Stück",
    "Akku",
    "State",
    "Notes",
    "Bought",
    "Total weight",
    "Weight (lb)",
]
SUM_WORDS = [
    "Total",
    "Sous-total",
    "Total général",
    "Summe (ohne Wasser)",
    "All-up",
    "Secours",
    "Habits",
    "Elektronik gesamt",
]


@given(
    st.lists(st.sampled_from(LIST_HEADS), min_size=1, max_size=5),
    st.lists(
        st.tuples(
            st.sampled_from(SUM_WORDS) | st.sampled_from(["Vario", "Helm", "Seil", "Stöcke"]),
            st.lists(CELLS, max_size=5),
            st.integers(1, 2),
        ),
        min_size=1,
        max_size=9,
    ),
)
@settings(max_examples=400)
def test_sums_and_sections_of_any_figures_end_in_a_preview_or_a_sentence(
    heads: list[str], rows: list[tuple[str, list[Cell], int]]
) -> None:
    lines = [GridRow(Spot(1, 1), ["Item", *heads])]
    for name, cells, step in rows:
        at = lines[-1].spot.row + step
        lines.append(GridRow(Spot(at, at), [name, *cells]))
    ends_well(Grid(lines))
