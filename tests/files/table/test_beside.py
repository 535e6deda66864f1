"""Tables beside each other on one sheet. Common practice, no source."""

import pytest

from kitlog.files.csv_problems import Spot
from kitlog.files.resources import resources_folder
from kitlog.files.table.beside import below_each_other
from kitlog.files.table.cells import Grid, GridRow
from kitlog.files.table.vocabulary import load_vocabulary

WORDS = load_vocabulary(resources_folder())


def _grid(text: str) -> Grid:
    lines = [line.split("|") for line in text.strip("\n").split("\n")]
    return Grid(
        [GridRow(Spot(number, number), [cell.strip() for cell in line]) for number, line in enumerate(lines, 1)]
    )


def _read(text: str) -> tuple[list[tuple[int, tuple[object, ...]]], list[str]]:
    grid = below_each_other(_grid(text), WORDS)
    return [(row.spot.row, tuple(row.cells)) for row in grid.rows], [remark.code for remark in grid.remarks]


def test_a_table_of_the_same_headings_is_read_below_the_first() -> None:
    text = "Flying|||Camping||\nName|Weight g||Name|Weight g\nWing|4850||Tent|1450\nHelmet|420||Stove|95\n||||\n|||Mug|60\n"
    rows, codes = _read(text)
    assert codes == ["table.beside_read"]
    assert [(number, cells[:2]) for number, cells in rows[2:]] == [
        (3, ("Wing", "4850")), (4, ("Helmet", "420")), (3, ("Tent", "1450")), (4, ("Stove", "95")), (6, ("Mug", "60")),
    ]  # fmt: skip


def test_its_headings_may_stand_in_another_order_and_be_fewer() -> None:
    rows, codes = _read("Name|kg|Maker|Name|Maker\nWing|4,85|Acme|Tent|Ruck\n")
    assert (rows[-1], codes) == ((2, ("Tent", "", "Ruck")), ["table.beside_read"])


@pytest.mark.parametrize(
    "text", ["Name|kg||Name|Price\nWing|4,85||Tent|300\n", "Name|Mass||Name|Mass\n|kg|||g\nWing|4,85||Tent|1450\n"]
)
def test_a_table_of_other_headings_or_units_is_left_out_and_told(text: str) -> None:
    rows, codes = _read(text)
    assert codes == ["table.beside_not_read"]
    assert all(len(cells) <= 3 for _number, cells in rows)
    assert "Tent" not in str(rows)


@pytest.mark.parametrize(
    "text",
    ["Name|kg|kg\nWing|4,85|4,9\n", "Name|Name|g|kg\nWing|Blue|4850|4,85\n", "Name|kg|Note|Note\nWing|4,85|a|b\n"],
)
def test_what_is_one_table_stays_one(text: str) -> None:
    assert below_each_other(_grid(text), WORDS) == _grid(text)
