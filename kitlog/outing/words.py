"""Words in names: whether a name says something, whatever its case, accents and hyphens, compounds included."""

import unicodedata

WHOLE_WORD_LETTERS = 4
"""Words up to this length must stand alone ("map" is not in "Dokumentenmappe"); longer ones may be part of one."""


def plain(text: str) -> str:
    """The text in lower case without accents, everything but letters and digits as single blanks."""
    if not text.isascii():
        letters = unicodedata.normalize("NFD", text.casefold())
        text = "".join(letter for letter in letters if not unicodedata.combining(letter))
    return " ".join("".join(c if c.isalnum() else " " for c in text.casefold()).split())


def says(name: str, word: str) -> bool:
    """Whether a name contains a word; both as `plain` gives them."""
    if len(word) <= WHOLE_WORD_LETTERS:
        return f" {word} " in f" {name} "
    return word in name
