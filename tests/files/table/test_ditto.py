"""Marks that repeat the cell above. Which marks pilots write is common practice, no source."""

import pytest

from kitlog.files.resources import resources_folder
from kitlog.files.table.kit_reading import Choices, KitReading, read_kit_grid
from kitlog.files.table.open_grid import read_pasted
from kitlog.files.table.vocabulary import load_vocabulary

WORDS = load_vocabulary(resources_folder())


def read(*rows: str) -> KitReading:
    return read_kit_grid(read_pasted("\n".join(rows)), WORDS, Choices())


def values(reading: KitReading, target: str) -> list[object]:
    return [row.values.get(target) for row in reading.rows]


@pytest.mark.parametrize("mark", ["''", "„", "″", "dito", "Dito", "DITO", "ditto", "idem", "Idem", '- " -', "wie oben"])
def test_a_mark_repeats_the_cell_above_and_that_is_said(mark: str) -> None:
    reading = read("Name\tBrand\tWeight\tBought", "Wing\tLarkspur\t4 kg\t2021-05-03", f"Sack\t{mark}\t{mark}\t{mark}")
    assert values(reading, "maker") == ["Larkspur"] * 2
    assert values(reading, "mass_g") == [4000] * 2
    assert len(set(values(reading, "bought_on"))) == 1
    assert [remark.facts for remark in reading.remarks if remark.code == "table.ditto"] == [
        {"heading": heading, "text": mark, "rows": (3,)} for heading in ("Brand", "Weight", "Bought")
    ]


def test_marks_one_below_the_other_repeat_the_same_cell_also_beyond_a_section() -> None:
    reading = read("Name\tBrand\tQty", "A\tLarkspur\t1", "B\tdito\t1", "Elektronik\t\t", "C\tdito\t1")
    assert values(reading, "maker") == ["Larkspur"] * 3


def test_a_mark_with_nothing_above_says_nothing() -> None:
    assert values(read("Name\tBrand\tQty", "A\tdito\t1", "B\t\t2", "C\tidem\t3"), "maker") == [None] * 3


def test_a_kind_is_repeated_too_and_a_lone_quotation_mark_is_such_a_mark() -> None:
    reading = read("Name\tKind\tBrand", "A\tHelm\tRoc", 'B\tdito\t""""', "C\tElektronik\tX", "Vario\tdito\tY")
    assert values(reading, "kind")[:2] == ["helmet"] * 2
    assert values(reading, "kind")[3] == "instrument"
    assert values(reading, "maker") == ["Roc", "Roc", "X", "Y"]


def test_words_that_hold_a_mark_are_left_as_they_are() -> None:
    reading = read("Name\tBrand\tNotes", 'Dito A\tIdem Co\t27"', "B\tX\tdito, but red")
    assert values(reading, "maker") == ["Idem Co", "X"]
    assert values(reading, "notes") == ['27"', "dito, but red"]
