"""Layouts of other people's lists: headings, titles, units, sums, sections, notes. Common practice, no source."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.fault import InputFault
from kitlog.files.csv_columns import KIT
from kitlog.files.csv_problems import Spot
from kitlog.files.resources import resources_folder
from kitlog.files.table.cells import Cell, Figure, Grid, GridRow
from kitlog.files.table.layout import Layout, find_layout
from kitlog.files.table.vocabulary import load_vocabulary

WORDS = load_vocabulary(resources_folder())


def _grid(text: str, *, own_form: bool = False) -> Grid:
    """A grid of a drawing: a line is a row, bars part the cells, empty lines are left out as the readers do."""
    rows = []
    for number, line in enumerate(text.strip("\n").split("\n"), 1):
        cells: list[Cell] = [cell.strip() for cell in line.split("|")]
        if any(cells):
            rows.append(GridRow(Spot(number, number), cells))
    return Grid(rows, own_form=own_form)


def _layout(text: str) -> Layout:
    return find_layout(_grid(text), WORDS)


def _names(text: str) -> list[str]:
    """The first filled cells of the rows that are items."""
    grid = _grid(text)
    layout = find_layout(grid, WORDS)
    return [next(str(cell) for cell in grid.rows[index].cells if cell) for index in layout.data]


def _reasons(text: str) -> list[str]:
    return [reason for _index, reason in _layout(text).left_out]


HEAD = "Gegenstand|Gewicht|Anzahl|Bemerkung|Fach\n"
ITEMS = "Vario|120|1||Cockpit\nHelm|500|1|blau|\n"


def test_headings_are_found_below_titles_whose_sentence_names_the_unit() -> None:
    layout = _layout(f"Meine Ausrüstung 2025\nAlle Gewichte in Gramm\n\n{HEAD}{ITEMS}")
    assert layout.heading_row == 2
    assert layout.headings == ("Gegenstand", "Gewicht", "Anzahl", "Bemerkung", "Fach")
    assert layout.left_out == ((0, "title"), (1, "title"))
    assert layout.data == (3, 4)
    assert layout.title_unit == "g"


def test_forty_rows_of_titles_are_no_hindrance() -> None:
    titles = "".join(f"Zeile {number} eines langen Vorworts\n" for number in range(40))
    assert _layout(titles + HEAD + ITEMS).heading_row == 40


def test_what_is_written_about_the_pilot_above_is_no_row_of_headings() -> None:
    above = "Name|Ines Maravel\nSchirm|Merlar 3 ML|Gewicht|85-105\nDatum|8.5.2026\n\n"
    layout = _layout(f"{above}Gegenstand|Gewicht|Besitzer|Zweck\nVario|120|ich|Höhe\n")
    assert layout.heading_row == 3


@pytest.mark.parametrize(
    ("sentence", "unit"),
    [
        ("All weights in grams", "g"),
        ("Poids en kg", "kg"),
        ("Kit list (weights in oz)", "oz"),
        ("Gewichtsangaben: g", "g"),
        ("Gesamtgewicht: 12 kg", ""),
        ("Kit in kg", ""),
        ("Gewichte in g, Gewichte in kg", ""),
        ("Weight in kit", ""),
    ],
)
def test_only_a_sentence_about_all_weights_names_their_unit(sentence: str, unit: str) -> None:
    assert _layout(f"{sentence}\n{HEAD}{ITEMS}").title_unit == unit
    assert _layout(f"{HEAD}{ITEMS}\n{sentence}").title_unit in {unit, ""}


def test_a_note_below_names_the_unit_too() -> None:
    layout = _layout(f"{HEAD}{ITEMS}\nAlle Gewichte in Gramm")
    assert (layout.title_unit, layout.left_out[-1][1]) == ("g", "note")


def test_a_row_of_units_goes_into_the_headings() -> None:
    layout = _layout("Item|Weight|Battery|Qty|Bought\n|(g)|[mAh]|pcs|dd.mm.yyyy\nVario|120|900|1|")
    assert layout.headings == ("Item", "Weight (g)", "Battery (mAh)", "Qty", "Bought")
    assert (layout.unit_row, layout.data) == (1, (2,))


def test_limits_below_or_a_group_above_belong_to_their_heading() -> None:
    below = _layout("Item|Weight|Startgewicht||Note\n||min|max|\n|g|kg|kg|\nWing A|5000|85|105|")
    assert below.headings == ("Item", "Weight (g)", "Startgewicht min (kg)", "Startgewicht max (kg)", "Note")
    assert below.data == (3,)
    above = _layout("||PTV||\nNom|Poids|min|max|Notes\nAile|5000|85|105|")
    assert above.headings == ("Nom", "Poids", "PTV min", "PTV max", "Notes")


@pytest.mark.parametrize(
    "total",
    [
        "Summe|620|||",
        "Total|620|||",
        "Total weight:|620|||",
        "|620|||",
        "Gesamtgewicht: 620 g||||",
        "Somme|620|||",
        "TOTAL|620 g|2||",
        "|Summe|620||",
        "Sum|620|||",
        "Zwischensumme|620|||",
        "Subtotal electronics|620|||",
        "Total cockpit|620|||",
        "Total items: 2|Total weight: 620 g|||",
        "Σ|620|||",
        "Poids total|620|||",
        "Total|~620 g|||",
        "Sous-total|≈ 620|||",
        "Total général|env. 620 g|||",
        "Total|ca. 0,6 kg|||",
        "Total|approx. 1.4 lb|||",
        "Total|620 g?|||",
        "Total|620 g||incl. pouch|",
        "Total|620 g|CHF 4'350.-||",
        "Total|620 g|Fr. 4350||",
        "Total|620 g|~ € 1.234,50||",
        "TOTAL (sans eau)|620 g|||",
        "TOTAL(sans eau)|620 g|||",
        "Total with water|620 g|2||",
        "Total weight without water|620 g|2||",
        "Gesamt ohne Wasser|620 g|2||",
        "Gesamtgewicht mit Wasser|620 g|2|geschätzt|",
        "Poids total avec eau|620 g|2||",
        "Total hors eau|620 g|2||",
        "Alles zusammen|620 g|2||",
        "All-up|620 g|2||",
        "Total take-off|620 g|2||",
        "En tout|620 g|2||",
        "Elektronik gesamt|620 g|2||",
        "Total|620 g / 1.4 lb|2 Stk||",
        "|Total|620|2|mit Beutel",
        "Total|?|2||",
    ],
)
def test_a_row_of_sums_is_no_item(total: str) -> None:
    layout = _layout(HEAD + ITEMS + total)
    assert layout.data == (1, 2)
    assert layout.totals == (3,)
    assert layout.left_out == ((3, "totals"),)


@pytest.mark.parametrize(
    "item",
    [
        "Total station|300|1||",
        "Summit jacket|300|1|rot|",
        "Total|300|1|ein Vario dieses Namens|Cockpit",
        "Sumatra coffee|20|1||",
        "Gesamtpaket Baumrettung|300|1||",
        "Overall|900|1||",
        "Restposten Kabel|30|1||",
        "Total Merlar vario|30|1||",
        "Alles-Kleber|30|1|offen|",
        "Loader jacket|300|1|Total|",
    ],
)
def test_an_item_whose_name_begins_as_a_sum_is_one(item: str) -> None:
    assert _names(HEAD + ITEMS + item + "\nMap||||")[2:] == [item.split("|", maxsplit=1)[0], "Map"]


def test_subtotals_by_their_figures_alone_are_sums_above_or_below_the_rows() -> None:
    below = "Item|Weight|Kind|Note\nVario|120|x|\nRadio|210|x|\n|330||\nHelmet|500|x|\nKnife|40|x|\n|540||\n|870||\n"
    assert _names(below) == ["Vario", "Radio", "Helmet", "Knife"]
    above = "Item|Weight (g)\nElectronics|330\nVario|120\nRadio|210\nSafety|540\nHelmet|500\nKnife|40\n"
    assert _names(above) == ["Vario", "Radio", "Helmet", "Knife"]
    assert len(_layout(above).totals) == 2


def test_a_row_without_a_name_that_is_no_sum_is_read() -> None:
    assert _layout(f"{HEAD}Vario|120|||\n|77|||\nHelm|500|||\n").data == (1, 2, 3)


@pytest.mark.parametrize(
    "row", ["Körpergewicht|75 kg|||", "Startgewicht|96,2 kg|||", "PTV|96,2|||", "Pilot weight|75|||"]
)
def test_figures_of_the_pilot_are_no_items(row: str) -> None:
    assert _reasons(HEAD + ITEMS + "Summe|620|||\n" + row) == ["totals", "note"]


@pytest.mark.parametrize(
    "section",
    ["ELEKTRONIK", "Cockpit:", "Elektronik", "Safety", "== Cockpit ==", "1. Sicherheit", "HARNESS", "Helm:", "----"],
)
def test_the_name_of_a_section_is_no_item(section: str) -> None:
    layout = _layout(f"{HEAD}{section}||||\n{ITEMS}")
    assert layout.left_out == ((1, "section"),)
    assert _reasons(f"{HEAD}{ITEMS}{section}||||\nFunk|210|1||") == ["section"]


def test_a_section_in_a_column_of_its_own_is_no_item() -> None:
    assert _names("Bereich|Name|Gewicht\nCockpit||\n|Vario|120\n|Radio|210") == ["Vario", "Radio"]


NAMES_ALONE = [
    "Helmet",
    "Map",
    "GPS",
    "PLB",
    "Secours",
    "First aid",
    "Reserve",
    "Habits",
    "Food",
    "Instruments",
    "Radio",
]


@pytest.mark.parametrize("name", [*NAMES_ALONE, "Kleinkram", "Odds and ends", "In the cockpit", "2. Retter", "HELMET"])
@pytest.mark.parametrize("gap", ["", "\n"])
def test_nothing_but_a_name_above_fuller_rows_is_a_heading_where_all_items_have_figures(name: str, gap: str) -> None:
    layout = _layout(f"{HEAD}{ITEMS}{gap}{name}||||\nFunk|210|1||")
    assert layout.data == (1, 2, 4)
    [(index, reason)] = layout.left_out
    assert (index, reason) in {(3, "heading of rows"), (3, "section")}


@pytest.mark.parametrize("name", NAMES_ALONE)
def test_nothing_but_a_name_in_the_last_row_is_an_item(name: str) -> None:
    assert _names(f"{HEAD}{ITEMS}{name}||||") == ["Vario", "Helm", name]


def test_several_names_one_below_the_other_are_items() -> None:
    assert _names(f"{HEAD}{ITEMS}Mappe||||\nStift||||\nBlock||||\nFunk|210|1||")[2:5] == ["Mappe", "Stift", "Block"]


def test_where_many_items_have_nothing_but_a_name_all_do() -> None:
    text = f"{HEAD}{ITEMS}Stift||||\nFunk|210|1||\nBlock||||\nMappe||||\nSeil|95|1||\n"
    assert _names(text) == ["Vario", "Helm", "Stift", "Funk", "Block", "Mappe", "Seil"]


def test_where_items_have_no_figures_a_name_alone_is_one() -> None:
    text = "Was|Farbe|Ort\nVario|rot|Kiste\nStift||\nHelm|blau|Kiste\nSeil|rot|Dose\n"
    assert _names(text) == ["Vario", "Stift", "Helm", "Seil"]


def test_a_name_with_a_figure_in_it_is_no_heading() -> None:
    assert "Funk 2 m" in _names(f"{HEAD}{ITEMS}Funk 2 m||||\nKabel|21|1||")


def test_headings_printed_again_are_left_out() -> None:
    assert _reasons(HEAD + ITEMS + HEAD + "Funk|210|1||") == ["heading again"]
    assert _names(HEAD + ITEMS + HEAD.upper() + "Funk|210|1||") == ["Vario", "Helm", "Funk"]


def test_a_second_table_of_other_headings_is_left_out_from_there_on() -> None:
    layout = _layout(f"{HEAD}{ITEMS}\nName|Kaufdatum|Preis\nVario|1.5.2021|300\nHelm|1.5.2022|200")
    assert layout.data == (1, 2)
    assert {reason for _index, reason in layout.left_out} == {"other table"}


@pytest.mark.parametrize(
    "note",
    [
        "* geschätzt",
        "Stand: Mai 2025",
        "Stand: Mai 2025|||ohne Gewähr|",
        "NB weights were taken in the kitchen",
        "Dernière mise à jour : mai 2025",
        "Diese Liste habe ich im Mai auf der Küchenwaage meiner Tante gewogen",
    ],
)
def test_notes_at_the_end_are_no_items(note: str) -> None:
    assert _reasons(f"{HEAD}{ITEMS}\n{note}") == ["note"]


@pytest.mark.parametrize("item", ["Standschraube", "Notebook", "Sourdough bread", "Standlicht|40|1||"])
def test_an_item_that_begins_as_a_note_does_is_one(item: str) -> None:
    assert len(_names(f"{HEAD}{ITEMS}{item}")) == 3


def test_a_list_of_names_alone_is_read() -> None:
    layout = _layout("Gegenstand\nHelm\nKarte\nCOCKPIT\nFunk")
    assert (layout.heading_row, layout.data) == (0, (1, 2, 3, 4))


def test_without_headings_nothing_is_read() -> None:
    assert _layout("Vario|120\nHelm|500") == Layout(None)
    assert find_layout(Grid([]), WORDS) == Layout(None)


def test_the_row_that_the_pilot_chose_holds() -> None:
    grid = _grid(f"foo|bar|baz\n{HEAD}{ITEMS}")
    assert find_layout(grid, WORDS, 0).headings == ("foo", "bar", "baz")
    assert find_layout(grid, WORDS, 0).data == (1, 2, 3)
    assert find_layout(grid, WORDS, 99) == Layout(None)


def test_in_our_own_form_every_row_is_an_item() -> None:
    text = "name|mass_g\nTotal|300\nCOCKPIT|\nname|mass_g"
    assert find_layout(_grid(text, own_form=True), WORDS).data == (1, 2, 3)


def test_foreign_headings_in_a_plain_csv_are_not_our_own_form() -> None:
    assert find_layout(_grid("Item|Weight (g)\nVario|120\nTotal|120", own_form=True), WORDS).totals == (2,)


def test_figures_of_a_workbook_are_figures() -> None:
    head: list[Cell] = ["Item", "Weight", "Note"]
    rows: list[list[Cell]] = [
        head,
        ["Vario", Figure(Decimal(120), "120"), ""],
        ["Total", Figure(Decimal(120), "120"), ""],
    ]
    grid = Grid([GridRow(Spot(number, number), row) for number, row in enumerate(rows, 1)])
    layout = find_layout(grid, WORDS)
    assert (layout.heading_row, layout.data, layout.totals) == (0, (1,), (2,))


_CELLS = st.one_of(
    st.sampled_from(
        ["", "", "Name", "Gewicht", "Total", "Cockpit:", "g", "12", "Helm", "* x", "ELEKTRONIK", *KIT.headings]
    ),
    st.text(max_size=12),
)


@given(st.lists(st.lists(_CELLS, max_size=5), max_size=12))
def test_every_row_of_any_grid_is_said_to_be_something(rows: list[list[Cell]]) -> None:
    grid = Grid([GridRow(Spot(number, number), row) for number, row in enumerate(rows, 1) if any(row)])
    layout = find_layout(grid, WORDS)
    if layout.heading_row is not None:
        left = [index for index, _reason in layout.left_out]
        assert sorted([layout.heading_row, *layout.data, *left]) == list(range(len(grid.rows)))
        assert set(layout.totals) <= set(left)


@pytest.mark.parametrize(
    "text",
    [
        "wing\nharness\nreserve\nhelmet\n",
        "Wing|4900 g|Acme\nHarness|3200 g|Acme\nHelmet|420 g|Cap\n",
        "Schirm|Föhn|blau\nGurtzeug|Föhn|rot\nHelm|Kopf|weiß\n",
        "Voile|4,9 kg\nSellette|3,2 kg\nCasque|420 g\n",
    ],
)
def test_a_first_item_is_no_row_of_headings(text: str) -> None:
    assert _layout(text).heading_row is None


def test_the_word_for_a_kind_may_head_the_names_of_such_things() -> None:
    assert _layout("Schirm|kg\nCirro 3 M|4,9\nAlter Schirm|5,2\n").heading_row == 0


@pytest.mark.parametrize(
    "text",
    [
        "Name|Wing|Harness|Helmet\nWeight g|4850|3200|420\nBought|2021-05-13|2021-05-13|2022-07-08\n",
        "Gegenstand|Schirm|Helm\nHersteller|Föhn|Kopf\nGewicht (kg)|4,85|0,42\n",
    ],
)
def test_a_table_on_its_side_is_refused(text: str) -> None:
    with pytest.raises(InputFault) as fault:
        _layout(text)
    assert fault.value.code == "table.on_its_side"
    assert find_layout(_grid(text), WORDS, 0).heading_row == 0  # unless the pilot says so


def test_things_named_like_headings_are_things() -> None:
    assert _names("Name|Weight g\nBattery|80\nNotes|40\n") == ["Battery", "Notes"]
    assert _names("Name|Farbe\nBattery|rot\nVario|blau\n") == ["Battery", "Vario"]


def test_the_title_of_another_table_below_is_no_item() -> None:
    text = "Item|Weight g|Bought\nWing|4800|2021-05-01\nHelmet|420|\n\nCamping gear||\nItem|Price|Weight g\nTent|299|1450\n"
    assert _names(text) == ["Wing", "Helmet"]
    assert _reasons(text) == ["other table"] * 3


PARTED = HEAD + ITEMS + "\nWarm stuff||||\nWeste|300|1||\n\nBits and bobs||||\nPfeife|9|1||\n"


def test_what_heads_rows_does_so_beside_a_name_alone_at_the_end() -> None:
    assert _names(PARTED) == ["Vario", "Helm", "Weste", "Pfeife"]
    assert _names(PARTED + "\nKarten||||\n") == ["Vario", "Helm", "Weste", "Pfeife", "Karten"]
    assert _names(PARTED + "Dings||||\nBums|1|1||\n") == ["Vario", "Helm", "Weste", "Pfeife", "Bums"]


@pytest.mark.parametrize("heads", ["Gear|Weight|Box||", "Gear|Weight|||", "Gear|Weight|Qty||"])
def test_a_second_table_of_which_a_heading_is_strange_is_none_of_the_items(heads: str) -> None:
    text = f"{PARTED}\nSpares at home||||\n{heads}\nOld helmet|480|A||\n"
    assert _names(text) == ["Vario", "Helm", "Weste", "Pfeife"]
    assert sorted(_reasons(text)) == [*["heading of rows"] * 2, *["other table"] * 3]


def test_a_thing_called_as_a_heading_is_an_item() -> None:
    names = _names(HEAD + ITEMS + "\nMaterial|500|1|Akku|\nWing|4000|1||\nGear||||Cockpit\n")
    assert names == ["Vario", "Helm", "Material", "Wing", "Gear"]


@pytest.mark.parametrize(
    "head",
    [
        "Electronics|Capacity (Wh)|||",
        "Electronics|Akku|||",
        "Strom|Kapazität mAh|Spannung V||",
        "Item|Capacity (Wh)|||",
        "Dinge|Kaufdatum|Preis||",
    ],
)
@pytest.mark.parametrize("title", ["", "Second list||||\n"])
def test_a_second_table_below_is_none_of_the_items_whatever_heads_its_names(head: str, title: str) -> None:
    layout = _layout(f"{HEAD}{ITEMS}\n\n{title}{head}\nPhone|15|1||\nVario|4|1||")
    assert layout.data == (1, 2)
    assert {reason for _index, reason in layout.left_out} == {"other table"}


def test_the_same_headings_beside_the_title_of_a_section_are_headings_once_more() -> None:
    layout = _layout(f"{HEAD}{ITEMS}\nElectronics|Gewicht|Anzahl||\nFunk|210|1||")
    assert (layout.data, layout.left_out) == ((1, 2, 4), ((3, "heading again"),))
