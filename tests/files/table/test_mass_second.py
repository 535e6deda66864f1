"""Two columns of masses in one table: parts of one figure, or two figures of the same thing."""

import itertools

import pytest

from kitlog.files.resources import resources_folder
from kitlog.files.table.doubt import Answers, Question, Settled
from kitlog.files.table.open_grid import read_grid
from kitlog.files.table.targets import Meaning
from kitlog.files.table.vocabulary import load_vocabulary
from kitlog.kit.kinds import MassSource
from kitlog.wording.faults import fault_text
from kitlog.workbench.kit_preview import ImportChoices, KitPreview, KitSource, preview_kit

WORDS = load_vocabulary(resources_folder())


def looked_at(text: str) -> KitPreview:
    count = itertools.count(1)
    source = KitSource((), WORDS, lambda: str(next(count)), {}, lambda _item: None)
    preview = preview_kit(source, read_grid(text.encode(), "kit.csv"), "kit.csv", ImportChoices())
    assert (preview.doubts, preview.problems) == ((), ())
    return preview


def masses(preview: KitPreview) -> list[int | None]:
    return [item.mass_g for item in preview.new]


def codes(preview: KitPreview) -> set[str]:
    return {remark.code for remark in preview.remarks}


@pytest.mark.parametrize(
    ("text", "grams"),
    [
        ("Item,lb,oz\nWing,6,12.6\nCase,0,13.4\nRope,1,\nPin,,3\n", [3079, 380, 454, 85]),
        ("Teil;kg;g\nSchirm;4;850\nHelm;0;640\n", [4850, 640]),
    ],
)
def test_pounds_and_ounces_beside_each_other_are_one_mass(text: str, grams: list[int]) -> None:
    preview = looked_at(text)
    assert masses(preview) == grams
    assert "table.mass_parts" in codes(preview)


def test_the_same_mass_in_two_units_is_no_sum() -> None:
    preview = looked_at("Item,Weight (g),Weight (oz)\nHelmet,420,14.8\nRope,95,3.35\n")
    assert masses(preview) == [420, 95]
    assert not codes(preview) & {"table.mass_parts", "table.mass_two"}


def test_what_was_weighed_goes_before_what_the_maker_says_and_both_are_told() -> None:
    preview = looked_at("Teil;Herstellerangabe (g);Gewogen (g)\nSchirm;4800;4910\nHelm;400;\nSeil;50;50\n")
    assert masses(preview) == [4910, 400, 50]
    assert [item.mass_source for item in preview.new] == [MassSource.GUESS, MassSource.MAKERS_FIGURE, MassSource.GUESS]
    told = {remark.code: remark.facts["rows"] for remark in preview.remarks if remark.code.startswith("table.mass_")}
    assert told == {"table.mass_two": (2,), "table.mass_from_second": (3,)}


def test_a_mass_of_all_pieces_is_divided_and_that_is_said() -> None:
    preview = looked_at("Item,Qty,Total weight (g)\nCarabiner,2,124\nTape,3,100\nRope,1,95\n")
    assert masses(preview) == [62, 33, 95]
    (said,) = [remark for remark in preview.remarks if remark.code == "table.mass_divided"]
    assert said.facts["rows"] == (2, 3)


def test_a_rounded_total_raises_no_alarm_and_a_missing_row_does() -> None:
    rows = "Item,Weight (g)\nWing,4850\nHarness,5620\nReserve,1680\n"
    assert "table.total_differs" not in codes(looked_at(rows + "Total,12.2 kg\n"))
    assert "table.total_differs" in codes(looked_at(rows + "Total,12.9 kg\n"))


def test_a_running_number_is_left_out_and_that_is_said() -> None:
    preview = looked_at("Nr.,Item,Weight (g)\n1,Wing,4850\n2,Helmet,420\n")
    assert masses(preview) == [4850, 420]
    assert "table.of_no_use" in codes(preview)


def test_a_total_that_fits_neither_reading_proves_nothing() -> None:
    preview = looked_at("Item;Qty;Weight (g)\nWing;1;4850\nBuckle;2;68\nTotal;3;4900\n")
    assert masses(preview) == [4850, 68]
    assert {"table.mass_taken_each", "table.total_differs"} <= codes(preview)
    assert "table.mass_of_all" not in codes(preview)


@pytest.mark.parametrize(
    ("total", "one"), [("4918", 34), ("4.918 kg", 34), ("4,92 kg", 34), ("4986", 68), ("5 kg", 68), ("~4.9 kg", 34)]
)
def test_a_total_is_evidence_within_its_last_digit_and_for_one_reading_alone(total: str, one: int) -> None:
    preview = looked_at(f"Item;Qty;Weight (g)\nWing;1;4850\nBuckle;2;68\nTotal;3;{total}\n")
    assert masses(preview) == [4850, one]
    assert ("table.mass_of_all" in codes(preview)) == (one == 34)
    assert "table.total_differs" not in codes(preview)


@pytest.mark.parametrize("said", ["each", "je", "la pièce", "red, each", "Stück", "ea."])
def test_a_note_that_a_mass_is_of_one_piece_is_evidence(said: str) -> None:
    preview = looked_at(f'Item;Qty;Weight (g);Notes\nWing;1;4850;\nBuckle;2;68;"{said}"\nTotal;3;4918;\n')
    assert masses(preview) == [4850, 68]
    assert "table.total_differs" in codes(preview)
    assert "table.mass_taken_each" not in codes(preview)


def test_a_heading_or_a_cell_that_says_of_one_piece_is_evidence() -> None:
    for text in (
        "Item;Qty;Weight each (g)\nWing;1;4850\nBuckle;2;68\nTotal;3;4918\n",
        "Item;Qty;Weight\nWing;1;4850 g\nBuckle;2;68 g ch.\nTotal;3;4918 g\n",
    ):
        assert masses(looked_at(text)) == [4850, 68]


def test_the_mass_of_a_pair_is_halved_for_two_pieces_alone() -> None:
    preview = looked_at(
        "Objet;Nombre;Poids\nChaussures;1;1,1 kg la paire\nGants;2;190 g la paire\nBottes;;900 g (Paar)\n"
    )
    assert masses(preview) == [1100, 95, 900]
    (said,) = [remark for remark in preview.remarks if remark.code == "table.mass_of_pair"]
    assert said.facts["rows"] == (3,)


def test_the_mass_of_a_pair_among_four_pieces_is_not_taken() -> None:
    count = itertools.count(1)
    source = KitSource((), WORDS, lambda: str(next(count)), {}, lambda _item: None)
    grid = read_grid(b"Item;Qty;Weight\nLinks;4;60 g per pair\nRope;1;95 g\n", "kit.csv")
    (doubt,) = preview_kit(source, grid, "kit.csv", ImportChoices()).doubts
    assert (doubt.spot.row, doubt.text) == (2, "60 g per pair")


def previewed(text: str, choices: ImportChoices = ImportChoices()) -> KitPreview:  # noqa: B008  # frozen
    count = itertools.count(1)
    source = KitSource((), WORDS, lambda: str(next(count)), {}, lambda _item: None)
    return preview_kit(source, read_grid(text.encode(), "kit.csv"), "kit.csv", choices)


TWO = "Item;Weight;Weight (lb)\nWing;4.85 kg;10.7\nHelmet;450 g;2\nRope;1.0 kg;2\n"


def test_two_masses_that_disagree_are_asked_about_with_the_figures_of_both() -> None:
    preview = previewed(TWO)
    [doubt] = preview.doubts
    assert (doubt.question, doubt.spot.row, doubt.text) == (Question.TWO_MASSES, 3, "450 g | 2")
    assert dict(doubt.readings) == {"first": "Weight: 450 g", "second": "Weight (lb): 907 g"}
    refusal = preview.refusal()
    assert refusal is not None
    [said] = fault_text(refusal).more
    assert "450 g" in said
    assert "907 g" in said
    assert '--map "Weight (lb)=-" or --map "Weight=-"' in said


@pytest.mark.parametrize(("answer", "grams"), [("first", 450), ("second", 907), ("empty", None)])
def test_an_answer_settles_two_masses(answer: str, grams: int | None) -> None:
    answers = Answers({Question.TWO_MASSES: answer})
    assert masses(previewed(TWO, ImportChoices(Settled(answers)))) == [4850, grams, 1000]
    assert masses(previewed(TWO, ImportChoices(by_heading={"Weight (lb)": Meaning("")}))) == [4850, 450, 1000]


def test_two_columns_of_one_heading_are_told_apart_by_their_letters() -> None:
    text = "Item;Weight;Weight\nHelmet;450 g;2 lb\n"
    [doubt] = previewed(text).doubts
    assert (doubt.heading, dict(doubt.readings)["second"]) == ("Weight [B] | Weight [C]", "Weight [C]: 907 g")
    assert masses(previewed(text, ImportChoices(by_heading={"Weight [C]": Meaning("")}))) == [450]
    assert masses(previewed(text, ImportChoices(by_heading={"weight [b]": Meaning("")}))) == [907]
