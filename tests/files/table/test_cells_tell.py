"""Columns that only their cells tell. Common practice of pilots' lists, no source."""

import pytest

from kitlog.files.resources import resources_folder
from kitlog.files.table.kit_reading import Choices, KitReading, read_kit_grid
from kitlog.files.table.open_grid import read_pasted
from kitlog.files.table.vocabulary import load_vocabulary

WORDS = load_vocabulary(resources_folder())


def read(*rows: str) -> KitReading:
    return read_kit_grid(read_pasted("\n".join(rows)), WORDS, Choices())


def targets(reading: KitReading) -> list[str]:
    return [column.target for column in reading.columns]


THINGS = ("Gleitschirm\tSchirm", "Helm\tHelm", "Ladekabel\tKabel", "Dings\tFunk")


def test_words_for_the_kinds_of_the_things_beside_them_are_kinds_and_that_is_told() -> None:
    reading = read("Name\tSo was", *THINGS)
    assert targets(reading) == ["name", "kind"]
    assert [row.values["kind"] for row in reading.rows] == ["wing", "helmet", "cable", "radio"]
    assert "table.told_by_cells" in {remark.code for remark in reading.remarks}


@pytest.mark.parametrize(
    "rows",
    [
        ("Gleitschirm\tGurtzeug", "Helm\tVario", "Ladekabel\tFunk", "Dings\tHelm"),  # what they are for
        ("Gleitschirm\tSchirm", "Helm\tHelm", "Ladekabel\tVario", "Akkupack\tFunk"),  # for some of them
        ("Gleitschirm\tNordwand", "Helm\tHelm", "Ladekabel\tKabel", "Dings\tMilan"),  # other words among them
        ("Dings\tSchirm", "Bums\tHelm", "Ladekabel\tKabel"),  # names that say nothing
    ],
)
def test_other_words_are_not(rows: tuple[str, ...]) -> None:
    assert targets(read("Name\tSo was", *rows)) == ["name", ""]


@pytest.mark.parametrize("text", ["-", "?", "n/a", "k.A.", "unbekannt", "—", "Unknown"])
def test_a_cell_that_says_nothing_is_no_serial_number(text: str) -> None:
    reading = read("Name\tMaker\tSerial\tNotes", f"Vario\t{text}\t{text}\t{text}", "-\tRoc\t0012\t")
    assert [sorted(row.values) for row in reading.rows] == [
        ["kind", "name", "notes"],
        ["maker", "name", "serial"],
    ]


@pytest.mark.parametrize(
    ("heading", "text"),
    [("Price", "ca. 50 €"), ("Qty", "ca. 3"), ("Bought", "~ 03.05.2021"), ("Wh", "~37"), ("Akku", "~2600 mAh")],
)
def test_a_rough_figure_that_an_item_cannot_keep_as_one_is_told(heading: str, text: str) -> None:
    reading = read(f"Name\tBrand\t{heading}", f"Vario\tRoc\t{text}", "Radio\tRoc\t")
    [said] = [remark.facts for remark in reading.remarks if remark.code == "table.rough_taken"]
    assert said == {"heading": heading, "text": text, "rows": (2,)}
