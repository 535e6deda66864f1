"""What a name says: case, accents, hyphens and compounds do not matter."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.outing.words import plain, says


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Coupe-Suspentes", "coupe suspentes"),
        ("  Höhenmesser, neu ", "hohenmesser neu"),
        ("Straßenkarte", "strassenkarte"),
        ("gants d'hiver", "gants d hiver"),
        ("Étanche (2 l)", "etanche 2 l"),
        ("---", ""),
    ],
)
def test_plain(text: str, expected: str) -> None:
    assert plain(text) == expected


@given(st.text())
def test_plain_text_stays_as_it_is(text: str) -> None:
    assert plain(plain(text)) == plain(text)


def test_a_long_word_may_be_part_of_a_compound() -> None:
    assert says(plain("Trillerpfeife"), "pfeife")


def test_a_short_word_stands_alone() -> None:
    assert says(plain("Map 1:50,000"), "map")
    assert not says(plain("Dokumentenmappe"), "map")
    assert not says(plain("Attention sign"), "tent")


def test_two_words_stand_side_by_side() -> None:
    assert says(plain("Sleeping-bag, down"), "sleeping bag")
    assert not says(plain("Bag for sleeping"), "sleeping bag")
