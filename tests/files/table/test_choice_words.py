"""Words of closed lists. The words are common practice, no source."""

from enum import StrEnum

import pytest

from kitlog.files.resources import resources_folder
from kitlog.files.table.choice_words import choice_of
from kitlog.files.table.vocabulary import load_vocabulary
from kitlog.kit.kinds import ItemState, Layer, MassSource, Zone

WORDS = load_vocabulary(resources_folder())

MEMBERS = {"zone": Zone, "zone_on_foot": Zone, "state": ItemState, "mass_source": MassSource, "garment_layer": Layer}


@pytest.mark.parametrize(
    ("target", "member"), [(target, member) for target, members in MEMBERS.items() for member in members]
)
def test_our_own_words_in_any_case_are_understood(target: str, member: StrEnum) -> None:
    for word in (member.value, member.value.upper(), member.value.replace(" ", "_"), member.name, f" {member.value} "):
        assert choice_of(target, word, WORDS) is member


@pytest.mark.parametrize(
    ("target", "word", "member"),
    [
        ("zone", "im Cockpit", Zone.COCKPIT),
        ("zone", "Seitentasche", Zone.SIDE_POCKET),
        ("zone", "Cockpit (links)", Zone.COCKPIT),
        ("zone", "Rückenfach", Zone.BACK_POCKET),
        ("zone", "Rueckenfach", Zone.BACK_POCKET),
        ("zone", "poche dorsale", Zone.BACK_POCKET),
        ("zone", "Unter dem Sitz", Zone.UNDER_SEAT),
        ("zone", "am Körper", Zone.WORN),
        ("zone", "sur moi", Zone.WORN),
        ("zone_on_foot", "sac à dos", Zone.RUCKSACK),
        ("zone_on_foot", "bleibt im Auto", Zone.LEFT_IN_CAR),
        ("state", "verliehen", ItemState.LENT),
        ("state", "prêté", ItemState.LENT),
        ("state", "emprunté", ItemState.BORROWED),
        ("state", "verkauft", ItemState.RETIRED),
        ("state", "in Reparatur", ItemState.AWAY),
        ("state", "OK", ItemState.IN_SERVICE),
        ("mass_source", "Küchenwaage", MassSource.KITCHEN_SCALE),
        ("mass_source", "laut Hersteller", MassSource.MAKERS_FIGURE),
        ("mass_source", "geschätzt", MassSource.GUESS),
        ("mass_source", "pèse-personne", MassSource.PERSON_SCALE),
        ("garment_layer", "première couche", Layer.BASE),
        ("garment_layer", "Isolation", Layer.INSULATION),
        ("garment_layer", "hardshell", Layer.WIND),
    ],
)
def test_words_of_pilots_are_understood(target: str, word: str, member: StrEnum) -> None:
    assert choice_of(target, word, WORDS) is member


@pytest.mark.parametrize(
    ("target", "word"),
    [
        ("zone", "Keller"),
        ("zone", "x"),
        ("zone", ""),
        ("state", "gut"),
        ("state", "on loan"),
        ("state", "ausgeliehen"),
        ("state", "defekt"),
        ("mass_source", "ja"),
        ("garment_layer", "4"),
    ],
)
def test_what_may_mean_anything_is_not_understood(target: str, word: str) -> None:
    assert choice_of(target, word, WORDS) is None
