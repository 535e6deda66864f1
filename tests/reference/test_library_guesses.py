"""What names suggest in the three languages shipped: ordinary words of the trade, no source beyond dictionaries."""

import pytest

from kitlog.files.resources import load_library, resources_folder
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind

LIBRARY = load_library(resources_folder())


def guessed(name: str, kind: str) -> frozenset[str]:
    return LIBRARY.guessed(Item(id="i", name=name, kind=Kind(kind)))


@pytest.mark.parametrize(
    ("name", "kind", "serves"),
    [
        ("Kappmesser", "tool", "hook knife"),
        ("Coupe-suspentes", "tool", "hook knife"),
        ("Trillerpfeife", "signal", "whistle"),
        ("Sifflet", "signal", "whistle"),
        ("Bordcomputer", "instrument", "map"),
        ("Ordinateur de vol", "instrument", "position"),
        ("Regenjacke", "garment", "wind layer"),
        ("Veste coupe-vent", "garment", "wind layer"),
        ("Daunenjacke", "garment", "insulation"),
        ("Doudoune", "garment", "insulation"),
        ("Beheizte Handschuhe", "gloves", "warm"),
        ("Gants chauffants", "gloves", "warm"),
        ("Bergschuhe", "footwear", "ankle high"),
        ("Chaussures de randonnée", "footwear", "ankle high"),
        ("Rettungsdecke", "shelter", "foil blanket"),
        ("Couverture de survie", "shelter", "foil blanket"),
        ("Biwaksack", "shelter", "bivouac bag"),
        ("Schlafsack", "shelter", "sleeping bag"),
        ("Sac de couchage", "shelter", "sleeping bag"),
        ("Tente", "shelter", "shelter"),
        ("Handyhülle, wasserdicht", "other", "waterproof pouch"),
        ("Sac etanche 10 l", "bag", "dry bag"),
        ("Flugschein", "papers", "licence"),
        ("Carte d'identité", "papers", "identity"),
        ("Versicherungskarte", "papers", "insurance"),
        ("Bargeld", "papers", "cash"),
        ("Portefeuille", "papers", "cash"),
        ("Flickzeug", "tool", "repair kit"),
        ("Wasserfilter", "vessel", "water filter"),
        ("Panneau solaire", "charger", "solar panel"),
        ("Steigeisen", "footwear", "spikes"),
        ("Doppelsitzer", "wing", "tandem"),
        ("Sellette passager", "harness", "passenger"),
        ("Tandemspreize", "carabiner", "spreader bars"),
        ("Unterhemd", "garment", "base top"),
        ("Pantalon de vol", "garment", "trousers"),
        ("Lange Unterhose", "garment", "leggings"),
        ("Chaussettes", "garment", "socks"),
        ("Landkarte", "papers", "map"),
        ("Handtuch", "other", "dry clothes"),
    ],
)
def test_a_name_suggests(name: str, kind: str, serves: str) -> None:
    assert serves in guessed(name, kind)


@pytest.mark.parametrize(
    ("name", "kind", "serves"),
    [
        ("Dokumentenmappe", "papers", "map"),
        ("Audio vario", "instrument", "map"),
        ("Audio vario, solar", "instrument", "solar panel"),
        ("Trail shoes", "footwear", "ankle high"),
        ("Thin gloves", "gloves", "warm"),
        ("Fleece", "garment", "insulation"),
        ("Shell trousers", "garment", "wind layer"),
        ("Sleeping bag, down", "shelter", "insulation"),
        ("Lange Unterhose", "garment", "trousers"),
        ("Multi-tool", "tool", "hook knife"),
        ("Tree kit and whistle", "tree kit", "bag"),
        ("Licence", "papers", "identity"),
        ("Combination lock", "other", "wind layer"),
    ],
)
def test_a_name_does_not_suggest(name: str, kind: str, serves: str) -> None:
    assert serves not in guessed(name, kind)


@pytest.mark.parametrize(
    ("kind", "serves"),
    [
        ("instrument", {"audio"}),
        ("phone", {"position", "call for help"}),
        ("tracker", {"call for help", "live position"}),
        ("beacon", {"call for help"}),
        ("wing", {"bright marker"}),
        ("bag", {"bag"}),
        ("tree kit", {"tree kit"}),
        ("garment", set()),
        ("papers", set()),
    ],
)
def test_a_kind_suggests(kind: str, serves: set[str]) -> None:
    assert guessed("X", kind) == serves


def test_words_are_kept_plain_and_none_twice() -> None:
    for served in LIBRARY.served:
        assert len(served.words) == len(set(served.words)), served.name
        assert all(word == word.casefold() and word.strip() == word for word in served.words)
