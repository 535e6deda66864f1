"""Kinds by their words and by the heads of names. The words are common practice of the trade, no source."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.files.resources import load_library, resources_folder
from kitlog.files.table.kind_words import is_broad, kind_guessed, kind_of
from kitlog.files.table.vocabulary import load_vocabulary
from kitlog.kit.kinds import Kind

WORDS = load_vocabulary(resources_folder())

KINDS = {
    Kind.WING: "wing, Wing, WING, Gleitschirm, Schirm, aile, voile, Parapente, Ailes, Gleitschirme, 1. Wing",
    Kind.HARNESS: "harness, Gurtzeug, sellette, Sellettes",
    Kind.RESERVE: "reserve, Retter, Notschirm, Rettungsgerät, Rettungsgeraet, Rettungsschirm, parachute de secours, secours",
    Kind.HELMET: "Helm, Helme, casque, Helm / Kopfschutz, Helmet / head protection, Helm (integral)",
    Kind.CARABINER: "Karabiner, carabiners, mousquetons",
    Kind.SPEED_SYSTEM: "speed_system, Beschleuniger, accélérateur, accelerateur, Speedbar",
    Kind.INSTRUMENT: "Vario, GPS, Vario/GPS, Instrumente, Instruments, Elektronik: Vario, Électronique / vario",
    Kind.RADIO: "Funk, Funke, Funkgerät, talkie, Radio, Talkies-walkies",
    Kind.POWER_BANK: "power bank, power_bank, Powerbank, batterie externe",
    Kind.BEACON: "PLB, balise, Notsender",
    Kind.TRACKER: "Tracker, satellite messenger, traceur, Balise GPS",
    Kind.GARMENT: "Bekleidung, Kleidung, Clothing, vêtements, Jacke, Bekleidung: Jacke, Softshelljacke",
    Kind.GLOVES: "Handschuhe, gloves, gants, Handschuhe (warm), Winterhandschuhe",
    Kind.VESSEL: "gourde, Trinkblase, water bottle, poche à eau",
    Kind.FIRST_AID: "first aid, First-Aid, Erste Hilfe, Erste-Hilfe-Set, trousse de secours, pharmacie",
    Kind.SHELTER: "Biwaksack, tent, sac de couchage, Isomatte",
    Kind.BUOYANCY: "Schwimmweste, Rettungsweste, life jacket, gilet de sauvetage",
    Kind.BAG: "Rucksack, Packsack, sac à dos, bags",
    Kind.WIND_METER: "Windmesser, wind-meter, anémomètre",
    Kind.OTHER: "other",
}

NO_KIND = (
    "electronics, Elektronik, safety, Sicherheit, Sonstiges, divers, misc, Rescue, Emergency, Tragegurt, Batterie, "
    "Akku, Wasser, Flugausrüstung, Gurtzeug / Retter, 17, ?"
)

HEADS = {
    Kind.BAG: "helmet bag, Helmtasche, sac à sellette, Camera bag, sac radio, Housse de casque, Rucksack 80 l, Grand sac",
    Kind.CABLE: "phone cable, câble téléphone, Radio cable, cable radio, USB-C Kabel 1m, Ladekabel kurz, Cable for phone",
    Kind.CHARGER: "Radio charger, Charger 20 W, Chargeur",
    Kind.WING: "Wing A, My wing, Tandem wing, Schirm M, Aile A, Parapente léger, Delta 5 wing, Tandem-Gleitschirm",
    Kind.RESERVE: "Rettungsschirm 120, Rettungs-Schirm, Reserve, Reserve B, Voile de secours, Retter 100, Reserve (square)",
    Kind.HARNESS: "Harness with airbag, Sellette Longreach M, Pod harness L, Gurtzeug M",
    Kind.HELMET: "Full-face helmet, Helm (M), Casque noir",
    Kind.CAMERA: "Helmet camera, Helmkamera, Actioncam",
    Kind.GLOVES: "Pair of gloves, Gants d'hiver, Winterhandschuhe dünn, Reserve gloves, Gants de rechange",
    Kind.GARMENT: "Summit jacket, T-Shirt Merino, Hose lang, Down jacket, Coupe-vent, Hardshell",
    Kind.FOOTWEAR: "Hiking boots size 43, Bergschuhe, Chaussures de marche",
    Kind.POWER_BANK: "Powerbank 10.000 mAh, Batterie externe 10000 mAh",
    Kind.FIRST_AID: "First aid kit, Erste-Hilfe-Set, Trousse de secours",
    Kind.SHELTER: "Sac de couchage, Sleeping bag, Bivouac bag, Couverture de survie",
    Kind.PAPERS: '"Papers, cash and card", Carte d\'identité, Licence & insurance',
    Kind.TOOL: "Hook knife, Kappmesser, Wing repair kit, Couteau suisse",
    Kind.INSTRUMENT: "Audio vario, Solarvario, Vario GPS, Höhenmesser",
    Kind.WIND_METER: "Windmesser, Wind meter",
}

NO_HEAD = (
    "Funkgerät-Akku, Vario Gehäuse, Reserve handle, spare batteries, Delta 5, Handschuhe Reserve, "
    "Support téléphone, Coque téléphone, Halterung Vario, Halterung Handy, Antenne radio, Poignée de secours, "
    "Casque audio, Regenschirm, Tragegurte, Tasche Helm, Kabel Vario, Schneeschuhe, Kabelbinder, Tent poles, "
    "Avalanche beacon, Drinking hose, Camera spare battery, Wing inspection, Tree kit and whistle, Helm & Brille, "
    "Karte, Map, Bin bags, Wing insurance, Retter-Innencontainer, Handyhülle, 42, -, ()"
)


def _cases(kinds: dict[Kind, str]) -> list[tuple[Kind, str]]:
    quoted = [(kind, line.split('"')) for kind, line in kinds.items()]
    found = [(kind, part) for kind, parts in quoted for part in parts[1::2]]
    plain = [(kind, word) for kind, parts in quoted for part in parts[::2] for word in part.split(",")]
    return [(kind, word.strip()) for kind, word in found + plain if word.strip()]


@pytest.mark.parametrize(("kind", "word"), _cases(KINDS))
def test_a_word_of_a_column_of_kinds_is_understood(kind: Kind, word: str) -> None:
    assert kind_of(word, WORDS) is kind


@pytest.mark.parametrize("kind", Kind)
def test_our_own_words_are_understood(kind: Kind) -> None:
    library = load_library(resources_folder())
    labels = [one.label for one in library.kinds if one.kind is kind]
    for word in (kind.value, kind.value.upper(), kind.name, kind.name.lower(), *labels):
        assert kind_of(word, WORDS) is kind


@pytest.mark.parametrize("word", [word.strip() for word in NO_KIND.split(",")])
def test_a_broad_category_or_a_strange_word_is_no_kind(word: str) -> None:
    assert kind_of(word, WORDS) is None


@pytest.mark.parametrize(("kind", "name"), _cases(HEADS))
def test_the_head_of_a_name_tells_the_kind(kind: Kind, name: str) -> None:
    assert kind_guessed(name, WORDS) is kind


@pytest.mark.parametrize("name", [name.strip() for name in NO_HEAD.split(",")])
def test_where_the_head_says_nothing_no_kind_is_guessed(name: str) -> None:
    assert kind_guessed(name, WORDS) is None


NAMED = {
    Kind.HELMET: "Helm Roc, Helmet Aria M, Casque Roc, Casque Brise noir, HELM ROC, My Helmet Aria",
    Kind.WING: "Gleitschirm Wolkenspur, Gleitschirm Wolkenspur 3, Glider Skylark 4 (M), Schirm Milan 2, Aile Brise",
    Kind.HARNESS: "Harness Tern, Liegegurtzeug Talwind, Sellette Brume L",
    Kind.RESERVE: "Retter Petrel 110, Rettungsgerät Firn, Parachute de secours Nuage",
    Kind.INSTRUMENT: "Vario Chirp, GPS Steigwert G5",
    Kind.POWER_BANK: "Power bank Ox, Powerbank Zellwerk 20",
    Kind.RADIO: "Radio Corrie, Funkgerät Talfunk X2",
    Kind.GLOVES: "Gloves Fell, Winterhandschuhe Firn, Mitaines, Reserve Handschuhe",
}

FITTINGS = (
    "Helm Innenfutter, Gleitschirm Leinensatz, Vario Halterung, Jacket liner, Jacket Liner, Phone Case, Phone Tripod, "
    "Reserve Handle, Harness Airbag, Helm Kinnriemen, Gurtzeug Sitzbrett, Reserve Zwieback, Reserve Akku, "
    "Vario Software Update, Gleitschirm Wartung, Gleitschirm Kurs, Casque Visière, Casque Bluetooth, Helmet Intercom, "
    "Camera Gimbal, Gurtzeug Protektor, Harness Speedbag, Wing Trimming, Handschuh Wärmer, Schuh Trockner, Radio PTT, "
    "Vario Saugnapf, Handy Hülle, helm roc, Helm innen, Helm und Roc, Roc, Gleitschirm Befestigung, Helmet Chin Straps"
)


@pytest.mark.parametrize(("kind", "name"), _cases(NAMED))
def test_a_kinds_word_before_a_proper_name_tells_the_kind(kind: Kind, name: str) -> None:
    assert kind_guessed(name, WORDS) is kind


@pytest.mark.parametrize("name", [name.strip() for name in FITTINGS.split(",")])
def test_a_kinds_word_before_an_ordinary_word_does_not(name: str) -> None:
    assert kind_guessed(name, WORDS) is None


def test_what_belongs_to_a_thing_is_of_its_own_kind() -> None:
    names = ("Funkgerät Ladekabel", "Gleitschirm-Packsack", "Radio Charger", "Vario Pouch")
    assert [kind_guessed(name, WORDS) for name in names] == [Kind.CABLE, Kind.BAG, Kind.CHARGER, Kind.BAG]


@pytest.mark.parametrize("part", ["handle", "bridle", "container", "Griff", "Innencontainer", "Akku", "poignée", "pin"])
@pytest.mark.parametrize("thing", ["reserve", "Retter", "Rettungsschirm", "wing", "helmet"])
def test_a_part_is_never_the_thing_itself(thing: str, part: str) -> None:
    assert kind_guessed(f"{thing} {part}", WORDS) is None
    assert kind_guessed(f"{part} {thing}", WORDS) is None


def test_no_word_means_two_kinds() -> None:
    kinds = WORDS.kinds
    both = {word for word in kinds.last if word in kinds.first and kinds.first[word] is not kinds.last[word]}
    assert both == set()
    assert set(kinds.alone).isdisjoint(kinds.last)
    assert set(kinds.alone).isdisjoint(kinds.first)
    assert kinds.never.isdisjoint(kinds.last)


def test_a_broad_category_is_no_kind_but_for_clothes_and_bags() -> None:
    known = [WORDS.kinds.last.get(word) or WORDS.kinds.first.get(word) for word in WORDS.kinds.broad]
    assert {kind for kind in known if kind} == {Kind.GARMENT, Kind.BAG}


def test_broad_categories_are_told_from_strange_words() -> None:
    assert [is_broad(word, WORDS) for word in ("Elektronik", "2. Safety", "divers")] == [True] * 3
    assert [is_broad(word, WORDS) for word in ("Kleidung", "Helm", "Tragegurt", "", "xyz")] == [False] * 5


@given(st.text(max_size=200))
def test_any_text_is_looked_at(text: str) -> None:
    assert kind_of(text, WORDS) in {None, *Kind}
    assert kind_guessed(text, WORDS) in {None, *Kind}


def test_clothes_and_the_gear_of_flight_in_german_are_no_strange_words() -> None:
    assert kind_of("Kleider", WORDS) is Kind.GARMENT
    assert is_broad("Fluggerät", WORDS)
    assert is_broad("Biwak", WORDS)
    assert {"kleider", "fluggeraet", "biwak"} <= WORDS.layout.sections | WORDS.layout.things


@pytest.mark.parametrize(
    ("word", "kind"),
    [("Sack", Kind.BAG), ("Balise GPS", Kind.TRACKER), ("Helmet light", Kind.LIGHT), ("Balise", Kind.BEACON)],
)
def test_a_word_that_holds_that_of_another_kind(word: str, kind: Kind) -> None:
    assert (kind_of(word, WORDS), kind_guessed(word, WORDS)) == (kind, kind)
