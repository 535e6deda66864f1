"""Text that can be shown, stored and printed."""

import sys
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from kitlog.units.text import Line, Name, Note, unfit_character

name, line, note = TypeAdapter(Name), TypeAdapter(Line), TypeAdapter(Note)

# Unicode Standard Annex 9, table of bidirectional classes: the explicit embeddings, overrides and isolates and their ends.
EXPLICIT_BIDI = {"LRE", "RLE", "PDF", "LRO", "RLO", "LRI", "RLI", "FSI", "PDI"}


def _unfit_by_unicode(char: str) -> bool:
    return unicodedata.category(char) in {"Cc", "Cs", "Zl", "Zp"} or unicodedata.bidirectional(char) in EXPLICIT_BIDI


def test_the_characters_refused_are_those_of_the_unicode_database() -> None:
    wrong = [
        hex(code)
        for code in range(sys.maxunicode + 1)
        if (unfit_character(chr(code), breaks=False) is not None) != _unfit_by_unicode(chr(code))
    ]
    assert wrong == []


@pytest.mark.parametrize(
    ("text", "character"),
    [
        ("a\x00b", "U+0000"),
        ("bell\x07", "U+0007"),
        ("\u202egnp", "U+202E"),
        ("x\ud800", "U+D800"),
        ("c1\x85", "U+0085"),
    ],
)
def test_the_first_unfit_character_is_named(text: str, character: str) -> None:
    assert unfit_character(text, breaks=True) == character


def test_breaks_belong_into_notes_only() -> None:
    assert note.validate_python("one\r\ntwo\tthree") == "one\ntwo\tthree"
    for adapter in (name, line):
        with pytest.raises(ValidationError) as caught:
            adapter.validate_python("one\ntwo")
        assert caught.value.errors()[0]["type"] == "text.unfit_character"
    with pytest.raises(ValidationError):
        note.validate_python("lone\rreturn")


@pytest.mark.parametrize("adapter", [name, line, note])
def test_unfit_text_is_refused_everywhere(adapter: TypeAdapter[str]) -> None:
    for text in ("a\x00b", "a\u2066b", "a\x1bb"):
        with pytest.raises(ValidationError) as caught:
            adapter.validate_python(text)
        assert caught.value.errors()[0]["type"] == "text.unfit_character"


def test_lengths() -> None:
    assert line.validate_python("  ") == ""
    assert name.validate_python("  Flügel 1 ") == "Flügel 1"
    assert len(name.validate_python("x" * 200)) == 200
    for adapter, text in ((name, " "), (name, "x" * 201), (line, "x" * 201), (note, "x" * 10_001)):
        with pytest.raises(ValidationError):
            adapter.validate_python(text)


def test_equal_looking_names_are_equal() -> None:
    # Canonical equivalence, Unicode Standard Annex 15: u and combining diaeresis compose to U+00FC.
    assert name.validate_python("Flu\u0308gel") == "Fl\u00fcgel"


@given(st.text(min_size=1, max_size=80))
def test_what_was_accepted_once_is_accepted_as_it_stands(text: str) -> None:
    try:
        stored = note.validate_python(text)
    except ValidationError:
        return
    assert note.validate_python(stored) == stored
