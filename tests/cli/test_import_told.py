"""What an import says of cells that it leaves not known, of columns it does not read, and of wrong options."""

import openpyxl
import pytest
from calling import Kitlog, one_line


@pytest.fixture
def table(tmp_path):
    def write(text: str) -> str:
        path = tmp_path / "kit.csv"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return write


def test_a_cell_left_not_known_is_told_with_all_it_can_mean(kitlog: Kitlog, table) -> None:
    file = table("Name;Gewicht (g);Gekauft;Akku;Volt\nRetter;1.250;Mai 2020;;\nBank;360;;10000 mAh;5 V\n")
    said = " ".join(kitlog("kit", "import", file, "--doubtful", "empty").out.split())
    assert "“1.250” can be 1250 g, 1.25 g" in said
    assert "“Mai 2020” names no day (2020-05-01, 2020-05-31)" in said
    assert "no single cell has 5 V: 10000 mAh, ? V, 10000 mAh × 5 V = 50 Wh" in said


def test_every_cell_of_a_doubt_about_several_is_named(kitlog: Kitlog, table) -> None:
    file = table("Name,Wh,Capacity,Volts\nBank,,10000 mAh,5 V\nLamp,50,10000 mAh,3.7 V\n")
    refused = kitlog("kit", "import", file).err
    assert "row 2, Capacity | Volts: 5 V stands beside mAh" in refused
    assert "row 3, Wh | Capacity | Volts: Wh and mAh x V disagree" in refused
    said = " ".join(kitlog("kit", "import", file, "--doubtful", "empty").out.split())
    assert "row 2, Capacity | Volts: “10000 mAh | 5 V” was left not known" in said
    assert "row 3, Wh | Capacity | Volts: “50 | 10000 mAh | 3.7 V” was left not known" in said


def test_a_chosen_column_takes_the_place_of_the_one_that_stood_for_the_same(kitlog: Kitlog, table) -> None:
    file = table(
        "Name,Bought,Last check\nWing,2020-01-02,2024-05-06\nHarness,2020-01-03,\nVario,13/13/2020,2021-01-01\n"
    )
    said = kitlog("kit", "import", file, "--map", "Last check=bought_on")
    assert "“Bought” (column B) says the same as another column; its 3 cells were left out" in " ".join(
        said.out.split()
    )
    days = {item["name"]: item["bought_on"] for item in kitlog("kit", "list", "--json").json}
    assert days == {"Wing": "2024-05-06", "Harness": None, "Vario": "2021-01-01"}


@pytest.mark.parametrize("more", [(), ("--doubtful", "empty")])
def test_a_heading_may_say_the_order_of_days(kitlog: Kitlog, table, more) -> None:
    file = table("Name,Bought (DD/MM/YYYY),First used (mm/dd/yyyy)\nWing,03/04/2021,05/06/2021\n")
    assert kitlog("kit", "import", file, *more).code == 0
    [wing] = kitlog("kit", "list", "--json").json
    assert (wing["bought_on"], wing["first_used_on"]) == ("2021-04-03", "2021-05-06")


RANGES = {
    "one column": "Gegenstand;Zul. Startgewicht\nSchirm;85-105 kg\nGurtzeug;60-110 kg\nRetter;70-120 kg\nSitz;bis 100 kg\n",
    "two columns": "Gegenstand;Startgewicht von (kg);Startgewicht bis (kg)\nSchirm;85;105\nGurtzeug;60;110\nRetter;70;120\n",
}


@pytest.mark.parametrize("text", RANGES.values(), ids=RANGES)
def test_the_load_in_a_row_is_of_what_the_row_is_about(kitlog: Kitlog, table, text) -> None:
    said = kitlog("kit", "import", table(text))
    assert "of a harness only the greatest load is kept; the least was left out (row 3)" in " ".join(said.out.split())
    wing, harness, reserve = kitlog("kit", "list", "--json").json[:3]
    assert (wing["wing"]["min_g"], wing["wing"]["max_g"]) == (85_000, 105_000)
    assert (harness["wing"], harness["harness"]["max_g"]) == (None, 110_000)
    assert (reserve["wing"], reserve["reserve"]["min_g"], reserve["reserve"]["max_g"]) == (None, 70_000, 120_000)


def test_days_that_have_not_been_yet_are_told(kitlog: Kitlog, table) -> None:
    # The clock of these tests stands at 8 May 2026.
    file = table("Name,Bought\nWing,2026-05-08\nHarness,19/02/28\n")
    said = " ".join(kitlog("kit", "import", file).out.split())
    assert "Days that have not been yet: 2028-02-19 (row 3)." in said
    assert "Days that have not been yet" not in kitlog("kit", "import", file, "--dates", "ymd", "--existing", "add").out


def test_a_table_beside_is_read_and_told(kitlog: Kitlog, table) -> None:
    file = table("Name,Weight g,,Name,Weight g\nWing,4850,,Tent,1450\nHelmet,,,Stove,95\n")
    assert "Another table begins in column D; its rows were read" in kitlog("kit", "import", file).out
    masses = {item["name"]: item["mass_g"] for item in kitlog("kit", "list", "--json").json}
    assert masses == {"Wing": 4850, "Helmet": None, "Tent": 1450, "Stove": 95}


def test_a_table_on_its_side_is_refused_with_what_to_do(kitlog: Kitlog, table) -> None:
    line = one_line(
        kitlog("kit", "import", table("Name,Wing,Helmet\nWeight g,4850,420\nBought,2021-05-13,2022-07-08\n"))
    )
    assert "lies on its side: its headings stand below each other (Weight g, Bought). Turn it" in line


def test_a_workbook_with_its_cover_in_front_names_the_sheets_behind(kitlog: Kitlog, tmp_path) -> None:
    book = openpyxl.Workbook()
    book.active.append(["My list. See the next sheet."])
    book.create_sheet("Gear").append(["Name", "Weight g"])
    book.create_sheet("Old").append(["x"])
    book["Old"].sheet_state = "hidden"
    book.save(tmp_path / "kit.xlsx")
    line = one_line(kitlog("kit", "import", tmp_path / "kit.xlsx"))
    assert "no row of headings was found on the sheet in front (not read: Gear, Old)" in line


def test_hidden_sheets_are_named_too(kitlog: Kitlog, tmp_path) -> None:
    book = openpyxl.Workbook()
    for row in (["Name", "Weight g"], ["Wing", 4850]):
        book.active.append(row)
    book.create_sheet("Old").append(["x"])
    book["Old"].sheet_state = "hidden"
    book.save(tmp_path / "kit.xlsx")
    assert "The sheet “Sheet” was read; not read: Old (hidden)." in kitlog("kit", "import", tmp_path / "kit.xlsx").out


def test_a_broad_category_leaves_the_kind_to_the_name(kitlog: Kitlog, table) -> None:
    file = table("Kategorie;Gegenstand\nFliegen;Gleitschirm\nElektronik;Vario\nSicherheit;Dingsda\nFrobel;Helm\n")
    said = " ".join(kitlog("kit", "import", file).out.split())
    assert "Kinds guessed from the names: Gleitschirm (wing), Vario (instrument)." in said
    assert "“Sicherheit” is no kind that kitlog knows: taken as other (row 4)." in said
    assert "“Frobel” is no kind that kitlog knows: taken as other (row 5)." in said
    assert "No kind is given" not in said
    assert [item["kind"] for item in kitlog("kit", "list", "--json").json] == ["wing", "instrument", "other", "other"]


@pytest.mark.parametrize("heading", ["Energy", "Energie", "Énergie"])
def test_energies_with_their_unit_in_the_cell_are_read_and_held_against_the_rest(
    kitlog: Kitlog, table, heading
) -> None:
    file = table(f"Name;Kapazität;Spannung;{heading}\nBank;20000 mAh;3,7 V;74 Wh\nLampe;10000 mAh;3,7 V;50 Wh\n")
    assert f"row 3, {heading} | Kapazität | Spannung: Wh and mAh x V disagree" in kitlog("kit", "import", file).err
    assert kitlog("kit", "import", file, "--energy", "wh").code == 0
    assert [item["battery"]["wh"] for item in kitlog("kit", "list", "--json").json] == [74, 50]


def test_a_figure_without_a_unit_says_how_to_give_one(kitlog: Kitlog, table) -> None:
    file = table("Name,Capacity,Volts,Energy\nLamp,2500,3.7 V,\nBank,74 Wh,,12\n")
    said = kitlog("kit", "import", file).err
    assert 'row 2, Capacity: “2500” is a figure without a unit. Say it with --map "Capacity=battery_mah:mAh"' in said
    assert 'row 3, Energy: “12” is a figure without a unit. Say it with --map "Energy=battery_wh:Wh"' in said
    told = kitlog("kit", "import", file, "--map", "Capacity=battery_mah:mAh", "--map", "Energy=battery_wh:Wh").err
    assert "Capacity: “2500”" not in told
    assert "Energy: “12”" not in told


@pytest.fixture
def workbook(tmp_path):
    book = openpyxl.Workbook()
    book.active.title = "Kit"
    book.active.append(["Name", "Weight (g)"])
    book.active.append(["Vario", 120])
    spares = book.create_sheet("Spares")
    spares.append(["Name", "Weight (g)"])
    spares.append(["Old helmet", 480])
    path = tmp_path / "kit.xlsx"
    book.save(path)
    return str(path)


def unwrapped(text: str) -> str:
    return " ".join(text.split())


def names_of(kitlog: Kitlog) -> list[str]:
    return [item["name"] for item in kitlog("kit", "list", "--json").json]


def test_a_sheet_that_was_not_read_is_named_and_can_be_asked_for(kitlog: Kitlog, workbook) -> None:
    said = unwrapped(kitlog("kit", "import", workbook).out)
    assert "he sheet “Kit” was read; not read: Spares. Each can be read on its own (kit import --sheet NAME)" in said
    assert names_of(kitlog) == ["Vario"]
    told = kitlog("kit", "import", workbook, "--sheet", "spares", "--json").json
    assert told["sheets"] == {"read": "Spares", "not_read": ["Kit"], "hidden": []}
    assert names_of(kitlog) == ["Vario", "Old helmet"]


def test_a_sheet_that_is_not_there_is_refused_with_those_that_are(kitlog: Kitlog, workbook, table) -> None:
    said = kitlog("kit", "import", workbook, "--sheet", "Gear")
    assert said.code == 2
    assert "it has no sheet “Gear”. There are: Kit, Spares." in unwrapped(said.err)
    said = kitlog("kit", "import", table("Name\nVario\n"), "--sheet", "Gear")
    assert "it is no workbook, so that it has no sheet “Gear”" in unwrapped(said.err)


def test_things_of_one_name_are_told_once(kitlog: Kitlog, table) -> None:
    said = unwrapped(kitlog("kit", "import", table("Name;Weight (g)\nHelm;500\nHelm;500\nDings;1\nDings;2\n")).out)
    assert "names: Helm (helmet)." in said
    assert "taken as other: Dings." in said


def test_days_of_service_are_named_with_what_to_do(kitlog: Kitlog, table) -> None:
    said = unwrapped(kitlog("kit", "import", table("Name;Gewicht;Letzte Kontrolle\nSchirm;4 kg;15.03.2025\n")).out)
    assert "he heading “Letzte Kontrolle” (column C) is about checks or packing" in said
    assert "enter each in Service" in said
    [wing] = kitlog("kit", "list", "--json").json
    assert (wing["bought_on"], wing["made_on"], wing["first_used_on"]) == (None, None, None)


def test_a_mass_without_a_unit_is_told_in_grams_for_each_answer(kitlog: Kitlog, table) -> None:
    """14 oz and 14 lb: 28.349523125 g and 453.59237 g each (NIST SP 811, appendix B)."""
    file = table("Name;Gewicht\nPfeife;14\nLampe;5,62\n")
    refused = " ".join(kitlog("kit", "import", file).err.split())
    assert "“14” is a mass without a unit (g: 14 g, kg: 14 000 g, oz: 397 g, lb: 6 350 g)" in refused
    assert "“5,62” is a mass without a unit (g: 6 g, kg: 5 620 g, oz: 159 g, lb: 2 549 g)" in refused
    [first, _second] = kitlog("kit", "import", file, "--dry-run", "--json", "--doubtful", "empty").json["left_open"]
    assert [" ".join(text.split()) for text in first["readings"].values()] == ["14 g", "14 000 g", "397 g", "6 350 g"]
    assert kitlog("kit", "import", file, "--mass-unit", "oz").code == 0
    assert [item["mass_g"] for item in kitlog("kit", "list", "--json").json] == [397, 159]
