"""Every refusal of kit.csv names its row and column."""

import itertools
from typing import Any

import pytest

from kitlog.fault import InputFault
from kitlog.files.csv_kit import read_kit
from kitlog.files.csv_problems import MAX_PROBLEMS, CellProblem, TableFault
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind


def refuse(data: bytes | str, known: tuple[Item, ...] = ()) -> TableFault:
    count = itertools.count(1)
    with pytest.raises(TableFault) as caught:
        read_kit(data.encode() if isinstance(data, str) else data, "kit.csv", known, lambda: str(next(count)))
    return caught.value


def problem(data: bytes | str, known: tuple[Item, ...] = ()) -> CellProblem:
    """The one problem of a file that has one."""
    fault = refuse(data, known)
    assert len(fault.problems) == 1, fault.problems
    return fault.problems[0]


# heading, cell, code, facts that must be among those given
CELLS: list[tuple[str, str, str, dict[str, Any]]] = [
    ("mass_g", "420.5", "number.not_whole", {"value": "420.5"}),
    ("mass_g", '"420,5"', "csv.decimal_comma", {"value": "420,5", "whole": True}),
    ("mass_g", "-1", "csv.too_small", {"limit": 0}),
    ("mass_g", "200001", "csv.too_large", {"limit": 200_000}),
    ("mass_g", "1e3", "number.not_whole", {}),
    ("mass_g", "1_000", "number.not_whole", {}),
    ("mass_g", "9223372036854775808", "number.too_large", {}),
    ("mass_g", "99999999999999999999999999", "number.too_large", {}),
    ("mass_g", "٤٢٠", "number.not_whole", {}),
    ("mass_g", "420 g", "number.not_whole", {"value": "420 g"}),
    ("quantity", "-1", "csv.too_small", {"limit": 0}),
    ("quantity", "1.5", "number.not_whole", {}),
    ("quantity", "10001", "csv.too_large", {"limit": 10_000}),
    ("value", '"99,50"', "csv.decimal_comma", {"meant": "99.50", "whole": False}),
    ("value", "nan", "number.not_a_number", {}),
    ("value", "inf", "number.not_a_number", {}),
    ("value", "1e400", "number.not_a_number", {}),
    ("value", '"1,234,567"', "csv.decimal_comma", {"meant": ""}),
    ("opening_h", "-0.5", "csv.too_small", {"limit": 0, "inclusive": True}),
    ("opening_launches", "x", "number.not_whole", {}),
    ("harness_max_kg", "1000.001", "csv.too_large", {"limit": 1000}),
    ("harness_max_kg", "100.0005", "csv.finer_than_a_gram", {"value": "100.0005"}),
    ("harness_max_kg", '"100,5"', "csv.decimal_comma", {"meant": "100.5"}),
    ("harness_max_kg", "-2", "csv.too_small", {"limit": 0}),
    ("wing_flat_m2", "0", "csv.too_small", {"limit": 0, "inclusive": False}),
    ("battery_cutoff_pct", "100", "csv.too_large", {"limit": 100, "inclusive": False}),
    ("battery_health_pct", "101", "csv.too_large", {"limit": 100}),
    ("draw_w", "1001", "csv.too_large", {"limit": 1000}),
    ("draw_w", "much", "number.not_a_number", {}),
    ("bank_ports", "2.0", "number.not_whole", {}),
    ("vessel_ml", "100001", "csv.too_large", {"limit": 100_000}),
    ("volume_ml", "-5", "csv.too_small", {}),
    ("made_on", "31.02.2024", "day.not_a_day", {"value": "31.02.2024"}),
    ("made_on", "2023-02-29", "day.not_a_day", {}),
    ("bought_on", "1969-12-31", "day.out_of_range", {}),
    ("first_used_on", "2101-01-01", "day.out_of_range", {}),
    ("made_on", "2024-5-1", "day.not_a_day", {}),
    ("battery_on_hand_at", "yesterday", "time.not_a_moment", {"value": "yesterday"}),
    ("battery_on_hand_at", "2026-05-08T20:30", "time.no_zone", {"value": "2026-05-08T20:30"}),
    ("battery_on_hand_at", "2101-01-01T00:00Z", "day.out_of_range", {}),
    ("battery_on_hand_pct", "101", "csv.too_large", {"limit": 100}),
    ("kind", "glider", "csv.not_in_list", {"allowed": tuple(kind.value for kind in Kind)}),
    ("state", "broken", "csv.not_in_list", {}),
    ("zone", "boot", "csv.not_in_list", {}),
    ("zone_on_foot", "boot", "csv.not_in_list", {}),
    ("mass_source", "scale", "csv.not_in_list", {}),
    ("garment_layer", "outer", "csv.not_in_list", {"allowed": ("base", "mid", "insulation", "wind")}),
    ("serves", "map++audio", "csv.empty_part", {}),
    ("serves", "map+", "csv.empty_part", {}),
    ("serves", "m" * 201, "csv.too_long", {"limit": 200}),
    ("maker", "m" * 201, "csv.too_long", {"limit": 200}),
    ("notes", "n" * 10_001, "csv.too_long", {"limit": 10_000}),
    ("maker", "a\x00b", "text.unfit_character", {"character": "U+0000"}),
    ("mass_g", "5\x00", "text.unfit_character", {"character": "U+0000"}),
    ("mass_g", '"5\n"', "text.unfit_character", {"character": "U+000A"}),
    ("mass_g", "5\x1f", "text.unfit_character", {"character": "U+001F"}),
    ("notes", "a\x07", "text.unfit_character", {"character": "U+0007"}),
    ("notes", "a\u202eb", "text.unfit_character", {"character": "U+202E"}),
    ("maker", '"a\nb"', "text.unfit_character", {"character": "U+000A"}),
    ("maker", "a\tb", "text.unfit_character", {"character": "U+0009"}),
    ("fitted_to", "Nothing", "csv.unknown_name", {"value": "Nothing"}),
    ("fitted_to", "Bad one", "csv.fitted_to_itself", {"value": "Bad one"}),
]


@pytest.mark.parametrize(("heading", "cell", "code", "facts"), CELLS, ids=lambda value: ascii(value)[:30])
def test_a_bad_cell_is_named_by_row_and_column(heading: str, cell: str, code: str, facts: dict[str, Any]) -> None:
    found = problem(f"name,{heading}\nGood one,\n\nBad one,{cell}\n")
    assert (found.file, found.row, found.record, found.column, found.code) == ("kit.csv", 4, 4, heading, code)
    assert {key: found.facts[key] for key in facts} == facts


@pytest.mark.parametrize(
    ("cells", "code"),
    [
        ("", "csv.empty_cell"),
        ("  ", "csv.empty_cell"),
        ("n" * 201, "csv.too_long"),
        ("a\u2067b", "text.unfit_character"),
        ('"a\nb"', "text.unfit_character"),
    ],
)
def test_a_bad_name(cells: str, code: str) -> None:
    found = problem(f"name,kind\n{cells},wing\n")
    assert (found.row, found.column, found.code) == (2, "name", code)


def test_watt_hours_that_contradict_the_product_are_refused_with_both() -> None:
    # 10,000 mAh x 3.7 V = 37 Wh.
    found = problem("name,battery_wh,battery_mah,battery_v\nBank,50,10000,3.7\n")
    assert (found.row, found.column, found.code) == (2, "battery_wh", "battery.contradiction")
    assert (found.facts["wh"], found.facts["product_wh"]) == (50, 37)


def test_a_bank_that_gives_more_than_its_cell_holds() -> None:
    found = problem("name,kind,battery_wh,bank_rated_mah\nX,power bank,37,10000\n")
    assert (found.column, found.code) == ("bank_rated_mah", "cell.gives_more")
    assert (found.facts["port_wh"], found.facts["cell_wh"]) == (50, 37)


@pytest.mark.parametrize("facet", ["wing", "reserve"])
def test_limits_the_wrong_way_round_are_told_in_kilograms(facet: str) -> None:
    found = problem(f"name,{facet}_min_kg,{facet}_max_kg\nX,105,85.5\n")
    assert (found.column, found.code) == (f"{facet}_min_kg", "facet.limits_reversed")
    assert (found.facts["low"], found.facts["high"]) == (105, 85.5)


@pytest.mark.parametrize(
    ("data", "row", "column", "code"),
    [
        ("kind\nwing\n", 1, "name", "csv.missing_heading"),
        ("name,weight\nA,5\n", 1, "weight", "csv.unknown_heading"),
        ("name,Kind\nA,wing\n", 1, "Kind", "csv.unknown_heading"),
        ("name, kind\nA,wing\n", 1, " kind", "csv.unknown_heading"),
        ("name,kind,name\nA,wing,B\n", 1, "name", "csv.heading_twice"),
        ("name,,kind\nA,,wing\n", 1, "", "csv.empty_heading"),
        ("name;kind\nA;wing\n", 1, "", "csv.other_separator"),
        ("name\tkind\nA\twing\n", 1, "", "csv.other_separator"),
        ("name,kind\nA,wing\nB\n", 3, "", "csv.too_few_cells"),
        ("name,kind\nA,wing,\n", 2, "", "csv.too_many_cells"),
        ("name,mass_g\nA,420,5\n", 2, "", "csv.too_many_cells"),
        ('name,notes\nA,ok\nB,"open\nC,\n', 3, "", "csv.quote_not_closed"),
        ('name,notes\nA,"shut" after\n', 2, "", "csv.text_after_quote"),
        ("name,kind\rA,wing\r", 1, "", "csv.bare_carriage_return"),
        ('name,notes\nA,ok\nB,"a\rb"\n', 3, "", "csv.bare_carriage_return"),
        ("", 0, "", "csv.empty"),
        (" \n\r\n\n", 0, "", "csv.empty"),
        ("name,notes\nA," + "x" * 1_000_000 + "\n", 2, "", "csv.line_too_long"),
        ('name,notes\nA,"' + "x\n" * 500_000 + '"\n', 2, "", "csv.cell_too_long"),
        ("name\n" + "A\n" * 20_001, 20_002, "", "csv.too_many_rows"),
        ("name\n".encode("utf-16"), 1, "", "csv.not_utf8"),
        ("name\n".encode("utf-16-le"), 1, "", "csv.not_utf8"),
        ("name\n".encode("utf-32"), 1, "", "csv.not_utf8"),
        ("name\nA\nSchäkel\n".encode("latin-1"), 3, "", "csv.not_utf8"),
        (b"name\nA\xed\xa0\x80\n", 2, "", "csv.not_utf8"),
        (b"\xef\xbb\xbfname\nA\n\xff\n", 3, "", "csv.not_utf8"),
        (b"name\n" + b"A" * 20_000_000, 0, "", "csv.file_too_large"),
    ],
    ids=lambda value: str(value)[:30].encode("unicode_escape").decode(),
)
def test_a_file_that_is_no_such_table(data: bytes | str, row: int, column: str, code: str) -> None:
    found = problem(data)
    assert (found.row, found.column, found.code) == (row, column, code)


def test_an_unknown_heading_is_told_with_its_place_and_what_was_meant() -> None:
    found = problem("name,KIND\nA,\n")
    assert (found.facts["value"], found.facts["at"], found.facts["letters"]) == ("KIND", 2, "B")
    assert found.facts["meant"] == "kind"


def test_a_file_that_is_not_utf_8_says_what_it_looks_like() -> None:
    assert problem("name\n".encode("utf-16")).facts["encoding"] == "UTF-16"
    assert problem("é".encode("latin-1")).facts["byte"] == "0xE9"


def test_a_row_below_a_cell_of_several_lines_has_its_text_line_and_its_spreadsheet_row() -> None:
    found = problem('name,notes,mass_g\nA,"one\ntwo\nthree",5\nB,,x\n')
    assert (found.row, found.record) == (5, 3)


def test_the_target_of_a_pair_must_be_one_item() -> None:
    found = problem("name,fitted_to\nHarness,\nHarness,\nReserve,Harness\n")
    assert (found.row, found.column, found.code) == (4, "fitted_to", "csv.ambiguous_name")
    assert (found.facts["rows"], found.facts["count"]) == ((2, 3), 2)


def test_a_name_in_the_file_and_in_the_kit_is_not_one_item() -> None:
    found = problem("name,fitted_to\nHarness,\nReserve,Harness\n", (Item(id="old", name="Harness"),))
    assert (found.code, found.facts["rows"], found.facts["count"]) == ("csv.ambiguous_name", (2,), 2)


@pytest.mark.parametrize(
    ("rows", "circle"),
    [
        ("A,B\nB,A\n", (2, 3)),
        ("X,A\nA,B\nB,C\nC,A\n", (3, 4, 5)),
    ],
)
def test_a_circle_of_pairs_is_told_once_with_all_its_rows(rows: str, circle: tuple[int, ...]) -> None:
    found = problem("name,fitted_to\n" + rows)
    assert (found.row, found.column, found.code) == (circle[0], "fitted_to", "csv.fitted_in_circle")
    assert found.facts["rows"] == circle


def test_all_problems_are_told_in_the_order_of_the_rows() -> None:
    fault = refuse("name,mass_g,kind,fitted_to,extra\nA,x,y,Nobody,\n,-1,bag,,\nC,1,bag,,\nD,5,bag\n")
    assert [(found.row, found.column, found.code) for found in fault.problems] == [
        (1, "extra", "csv.unknown_heading"),
        (2, "mass_g", "number.not_whole"),
        (2, "kind", "csv.not_in_list"),
        (3, "name", "csv.empty_cell"),
        (3, "mass_g", "csv.too_small"),
        (5, "", "csv.too_few_cells"),
    ]
    assert fault.more == 0


def test_a_name_that_may_stand_in_an_unread_row_is_not_called_unknown() -> None:
    assert problem("name,fitted_to\nReserve,Harness\nHarness\n").code == "csv.too_few_cells"


def test_a_name_in_a_row_with_a_bad_cell_is_still_known() -> None:
    assert problem("name,fitted_to,mass_g\nReserve,Harness,\nHarness,,x\n").column == "mass_g"


def test_a_hundred_problems_are_kept_and_the_rest_counted() -> None:
    fault = refuse("name,mass_g\n" + "A,x\n" * 250)
    assert (len(fault.problems), fault.more, fault.facts["count"]) == (MAX_PROBLEMS, 150, 250)
    assert fault.facts["at_least"] is False


def test_reading_stops_at_ten_thousand_problems() -> None:
    fault = refuse("name,mass_g\n" + "A,x\n" * 15_000)
    assert (fault.facts["count"], fault.facts["at_least"]) == (10_000, True)


def test_what_is_shown_of_a_cell_is_short_and_printable() -> None:
    value = str(problem("name,kind\nA,\x1b[31m" + "k" * 500 + "\n").facts["value"])
    assert len(value) < 100
    assert value.startswith("\\u001B[31mk")


def test_a_refusal_is_an_input_fault_with_one_fault_for_each_problem() -> None:
    fault = refuse("name,mass_g\nA,x\n")
    assert isinstance(fault, InputFault)
    assert (fault.code, fault.facts["file"], fault.facts["problems"]) == (
        "csv.refused",
        "kit.csv",
        fault.problems,
    )
    single = fault.problems[0].as_fault()
    assert (single.code, dict(single.facts)) == (
        "number.not_whole",
        {"value": "x", "file": "kit.csv", "row": 2, "record": 2, "field": "mass_g"},
    )
