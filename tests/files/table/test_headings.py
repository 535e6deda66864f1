"""Headings of other people's lists. The words are common practice of pilots' lists, no source."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.files.csv_columns import KIT
from kitlog.files.resources import resources_folder
from kitlog.files.table.headings import meaning_of, meanings
from kitlog.files.table.one_heading import find
from kitlog.files.table.targets import TARGETS, Meaning
from kitlog.files.table.vocabulary import load_vocabulary
from kitlog.kit.kinds import MassSource

WORDS = load_vocabulary(resources_folder())

UNDERSTOOD = {
    "name": "Name, Item, Gear, Gegenstand, Was, Ausrüstung, Bezeichnung, Bez., Teil, Objet, Matériel, Désignation, Nom",
    "kind": "Kategorie, Category, Cat., Catégorie, Rubrik, Typ, Type, Art, Gruppe",
    "quantity": "Anzahl, Anz., Stück, Stk., Menge, Qty, Qty., # of pieces, Quantité, Qté, Nombre, Nb, Anzahl (Stk)",
    "mass_g": "Weight, Gewicht, Poids, Masse, GEWICHT, Gewicht pro Stück, Unit weight, Poids unitaire, Gew.",
    "mass_all": "Total weight, Gesamtgewicht, Poids total, Gewicht gesamt, Weight total",
    "mass_source": "How weighed, Waage, Gewogen mit, Source du poids",
    "zone": "Pocket, Fach, Poche, Zone (Flug), Tasche, Verstaut in",
    "zone_on_foot": "On foot, Zu Fuß, zu Fuss, À pied",
    "fitted_to": "Fitted to, Montiert an, Monté sur",
    "state": "Status, Statut, State",
    "maker": "Brand, Maker, Hersteller, Marke, Marque, Fabricant",
    "model": "Model, Modell, Modèle, Modell/Größe, Modèle / taille, Marke/Modell, Hersteller & Modell, Make & Model, Size / model",
    "serial": "Serial, S/N, Serial #, Serien-Nr., Seriennr., Seriennummer, N° de série, Numéro de série",
    "made_on": "Baujahr, Made on, Date of manufacture, Herstellungsdatum, Date de fabrication",
    "bought_on": "Bought, Purchase date, Gekauft am, Kaufdatum (TT.MM.JJJJ), Kaufdatum, Date d'achat, Acheté le",
    "first_used_on": "First flight, Erstflug, In use since, in Gebrauch seit, Première utilisation, 1er vol, Date de 1ère utilisation",
    "opening_h": "Flugstunden, Hours, Hours flown, Heures de vol, Airtime",
    "opening_ground_h": "Ground handling, Groundhandling (Std), Bodenhandling, Heures de gonflage",
    "belongs_to": "Belongs to, Borrowed from, Geliehen von, Appartient à",
    "lent_to": "Lent to, Verliehen an, Emprunteur",
    "back_by": "Back by, Return date, Zurück bis, Rückgabe, À rendre le",
    "opening_launches": "Flights, Starts, Flüge, Anzahl Flüge, Nb de vols, Décollages",
    "colour": "Farbe, Color, Colour, Couleur",
    "value": "Preis (€), Preis CHF, Price, Wert, Prix d'achat, Valeur, Neupreis in Euro, Preis in Euro",
    "notes": "Notes, Bemerkung, Bemerkungen / Remarks, Commentaires, Notiz, Kommentar",
    "wing_range": "Startgewicht, PTV, Weight range, Gewichtsbereich, zul. Startgewicht, Fourchette de poids",
    "wing_min_kg": "PTV min, Startgewicht von, min. Startgewicht, zulässiges Startgewicht min., Wing min",
    "wing_max_kg": "PTV maxi, Startgewicht bis, Max. Startgewicht, Wing max",
    "wing_flat_m2": "Flat area, Fläche, Surface à plat, Fläche (ausgelegt)",
    "wing_projected_m2": "Projected area, Fläche projiziert, Surface projetée",
    "harness_max_kg": "Harness max, Gurtzeug max., Charge max sellette",
    "reserve_max_kg": "max. Anhängelast, Reserve max, Charge max secours",
    "battery": "Battery, Akku, Batterie, Kapazität, Capacité",
    "battery_v": "Voltage, Spannung, Volt",
    "draw_w": "Power draw, Verbrauch, Consommation",
    "charge_max_w": "Charging power, Ladeleistung, Puissance de charge",
    "connector": "Connector, Stecker, Anschluss, Connecteur, Laden mit",
    "clo": "clo-Wert, Clo value",
    "garment_layer": "Layer, Schicht, Couche",
    "volume_ml": "Packed volume, Packvolumen, Volume plié",
}

WITH_UNIT = {
    "Weight (g)": ("mass_g", "g"),
    "Gewicht [g]": ("mass_g", "g"),
    "Gewicht in g": ("mass_g", "g"),
    "Gewicht in Gramm": ("mass_g", "g"),
    "Poids en grammes": ("mass_g", "g"),
    "Weight/g": ("mass_g", "g"),
    "Gewicht g": ("mass_g", "g"),
    "Gewicht, kg": ("mass_g", "kg"),
    "Gewicht\n(kg)": ("mass_g", "kg"),
    "weight_kg": ("mass_g", "kg"),
    "Gewicht (g/Stk)": ("mass_g", "g"),
    "Gewicht / Weight (g)": ("mass_g", "g"),
    "Weight (oz)": ("mass_g", "oz"),
    "WEIGHT (LBS)": ("mass_g", "lb"),
    "kg": ("mass_g", "kg"),
    "Gramm": ("mass_g", "g"),
    "Total (g)": ("mass_all", "g"),
    "Gesamtgewicht (kg)": ("mass_all", "kg"),
    "Akku mAh": ("battery_mah", "mAh"),
    "mAh": ("battery_mah", "mAh"),
    "Capacity (Wh)": ("battery_wh", "Wh"),
    "Wh": ("battery_wh", "Wh"),
    "Énergie (Wh)": ("battery_wh", "Wh"),
    "V": ("battery_v", "V"),
    "Leistung W": ("draw_w", "W"),
    "Verbrauch (mA)": ("draw_w", "mA"),
    "Startgewicht (kg)": ("wing_range", "kg"),
    "PTV min (kg)": ("wing_min_kg", "kg"),
    "Fläche m²": ("wing_flat_m2", "m2"),
    "Trimm km/h": ("wing_trim_kmh", "km/h"),
    "min. Sinken m/s": ("wing_sink_ms", "m/s"),
    "Flugstunden (h)": ("opening_h", "h"),
    "Battery health %": ("battery_health_pct", "%"),
    "Capacity (ml)": ("vessel_ml", "ml"),
    "Volume (l)": ("volume_ml", "l"),
}

NOT_UNDERSTOOD = (
    "Weight limit, Max. Gewicht, Max weight (kg), Min kg, Last check, Next repack, Check fällig, Nächster Check, "
    "Sitz-Gewicht, Körpergewicht, Gewicht Tasche, Lagerort, Location, Keller, Rangement, Größe, Size, Taille, Maße, "
    "Maße (cm), Zustand, Condition, État, Owner, Besitzer, Year, Jahr, Made in, Gekauft bei, Bought at, Akku %, "
    "Capacity (l), Weight (€), Charge max, Laufzeit, Link, Packed?, ✓, Kcal, Retter gepackt am, Assurance, Ø"
)


@pytest.mark.parametrize("heading", KIT.headings)
def test_each_of_our_own_headings_is_itself(heading: str) -> None:
    found = find(heading, WORDS)
    assert found.meaning is not None
    assert (found.meaning.target, found.how) == (heading, "ours")


def test_all_our_own_headings_together_are_themselves() -> None:
    found = meanings(KIT.headings, WORDS)
    assert [one.meaning.target for one in found if one.meaning] == list(KIT.headings)


@pytest.mark.parametrize(
    ("target", "heading"), [(target, word.strip()) for target, line in UNDERSTOOD.items() for word in line.split(",")]
)
def test_what_pilots_write_is_understood(target: str, heading: str) -> None:
    meaning = meaning_of(heading, WORDS)
    assert meaning is not None
    assert meaning.target == target


@pytest.mark.parametrize(("heading", "meant"), WITH_UNIT.items())
def test_a_unit_beside_the_words_is_taken_off(heading: str, meant: tuple[str, str]) -> None:
    assert meaning_of(heading, WORDS) == Meaning(*meant)


@pytest.mark.parametrize("heading", [word.strip() for word in NOT_UNDERSTOOD.split(",")])
def test_a_weak_hint_is_not_taken(heading: str) -> None:
    assert meaning_of(heading, WORDS) is None


@pytest.mark.parametrize("heading", ["Nr.", "#", "Pos.", "No.", "N°", "Lfd. Nr."])
def test_running_numbers_are_of_no_use(heading: str) -> None:
    assert meaning_of(heading, WORDS) == Meaning("")


@pytest.mark.parametrize("heading", ["", "  ", "x" * 500, "()", "/"])
def test_what_is_no_heading_is_not_understood(heading: str) -> None:
    assert meaning_of(heading, WORDS) is None


@pytest.mark.parametrize(
    ("heading", "source"),
    [
        ("Gewicht ca. (g)", MassSource.GUESS),
        ("Est. weight (g)", MassSource.GUESS),
        ("Poids estimé", MassSource.GUESS),
        ("Gewicht laut Hersteller (g)", MassSource.MAKERS_FIGURE),
        ("Poids constructeur", MassSource.MAKERS_FIGURE),
        ("Gewicht", None),
    ],
)
def test_a_heading_that_says_how_the_masses_were_taken_is_heard(heading: str, source: MassSource | None) -> None:
    found = find(heading, WORDS)
    assert found.meaning is not None
    assert (found.meaning.target, found.source) == ("mass_g", source)


def _targets(*headings: str) -> list[tuple[str | None, str]]:
    return [(one.meaning and one.meaning.target, one.how) for one in meanings(headings, WORDS)]


def test_of_two_columns_for_one_thing_ours_goes_first_then_the_one_with_a_unit_then_the_left_one() -> None:
    assert _targets("Gewicht", "mass_g") == [(None, "double"), ("mass_g", "ours")]
    assert _targets("Gewicht", "Gewicht (g)") == [(None, "double"), ("mass_g", "word")]
    assert _targets("Item", "Gear") == [("name", "word"), (None, "double")]


def test_weighed_masses_go_before_the_makers_and_before_guesses() -> None:
    assert _targets("Gewicht laut Hersteller (g)", "Gewicht (g)") == [(None, "double"), ("mass_g", "word")]
    assert _targets("Gewicht ca. (g)", "Gewicht (g)") == [(None, "double"), ("mass_g", "word")]


def test_a_weaker_column_stands_for_what_else_it_may() -> None:
    assert _targets("Name", "Beschreibung") == [("name", "word"), ("notes", "part")]
    assert _targets("Beschreibung", "Gewicht") == [("name", "word"), ("mass_g", "word")]
    assert _targets("Kategorie", "Typ") == [("kind", "word"), ("model", "part")]
    assert _targets("Name", "Hersteller", "Typ")[2] == ("model", "part")
    assert _targets("Name", "Typ")[1] == ("kind", "word")


def test_the_cells_tell_whether_types_are_kinds_or_models() -> None:
    headings = ["Name", "Typ"]
    kinds = meanings(headings, WORDS, [["Wing A"], ["Gleitschirm", "Helm"]])
    models = meanings(headings, WORDS, [["Wing A"], ["Merlar 3 ML", "Tarn S"]])
    assert kinds[1].meaning == Meaning("kind")
    assert models[1].meaning == Meaning("model")


def test_bare_limits_belong_to_the_wing_or_reserve_on_their_left() -> None:
    assert [target for target, _how in _targets("PTV min", "max")] == ["wing_min_kg", "wing_max_kg"]
    assert [target for target, _how in _targets("Schirm", "min kg", "max kg")] == ["name", "wing_min_kg", "wing_max_kg"]
    assert [target for target, _how in _targets("Retter min", "max (kg)")] == ["reserve_min_kg", "reserve_max_kg"]
    assert [target for target, _how in _targets("Name", "Gewicht", "min", "max")][2:] == [None, None]


def test_a_bare_unit_column_is_of_masses_that_name_none() -> None:
    assert _targets("Name", "Gewicht", "Einheit")[2] == ("mass_unit", "word")
    assert _targets("Name", "Gewicht (g)", "Einheit")[2] == (None, "")
    assert _targets("Name", "Anzahl", "Einheit")[2] == (None, "")


@given(st.lists(st.one_of(st.sampled_from([*WITH_UNIT, *KIT.headings, "Typ", "Beschreibung", "max"]), st.text())))
def test_no_thing_is_stood_for_twice(headings: list[str]) -> None:
    targets = [one.meaning.target for one in meanings(headings, WORDS) if one.meaning and one.meaning.target]
    assert len(targets) == len(set(targets))
    assert set(targets) <= set(TARGETS)


def test_no_word_of_the_lists_stands_for_two_things() -> None:
    for key, entries in WORDS.headings.items():
        for one, other in itertools.combinations(entries, 2):
            same_units = set(one.units) & set(other.units) or (not one.units and not other.units)
            assert one.target == other.target or not same_units or one.weak is not other.weak, key


def test_every_target_of_the_lists_is_one() -> None:
    entries = [entry for found in WORDS.headings.values() for entry in found]
    assert {entry.target for entry in entries} | {entry.otherwise for entry in entries} <= set(TARGETS) | {""}


@pytest.mark.parametrize("heading", ["No. of", "Number of", "# of", "Nb de", "no of"])
def test_the_number_of_things_is_no_running_number(heading: str) -> None:
    assert meaning_of(heading, WORDS) == Meaning("quantity")


@pytest.mark.parametrize("heading", ["#", "Nr.", "No.", "N°", "Pos."])
@pytest.mark.parametrize(
    "numbers", [["1", "2", "3", "4"], ["1", "2", "3", "1", "2"], ["101", "104", "120"], ["7", "7"]]
)
def test_numbers_that_run_on_are_of_no_use(heading: str, numbers: list[str]) -> None:
    [found, _] = meanings([heading, "Name"], WORDS, [numbers, ["x"] * len(numbers)])
    assert found.meaning == Meaning("")


@pytest.mark.parametrize(("heading", "means"), [("#", Meaning("quantity")), ("Nr.", None), ("N°", None)])
@pytest.mark.parametrize("numbers", [["1", "1", "2", "1"], ["2", "1", "4", "2"], ["1", "1", "1", "1"]])
def test_numbers_that_come_again_are_no_running_ones(heading: str, means: Meaning | None, numbers: list[str]) -> None:
    [found, _] = meanings([heading, "Name"], WORDS, [numbers, ["x"] * 4])
    assert found.meaning == means


def test_a_second_count_is_not_made_of_them() -> None:
    found = meanings(["#", "Name", "Qty"], WORDS, [["4", "1", "1", "1"], ["x"] * 4, ["1"] * 4])
    assert [one.meaning and one.meaning.target for one in found] == [None, "name", "quantity"]


@pytest.mark.parametrize(
    ("heading", "target"),
    [
        ("Appareil", "name"),
        ("Device", "name"),
        ("Piece of kit", "name"),
        ("SNr.", "serial"),
        ("Mis en service", "first_used_on"),
        ("Mise en service le", "first_used_on"),
        ("Sort", "kind"),
    ],
)
def test_more_words_of_pilots_are_understood(heading: str, target: str) -> None:
    assert meaning_of(heading, WORDS) == Meaning(target)
