"""Words in the form in which they are compared, and the plurals made by rule."""

from collections.abc import Iterator

from kitlog.outing.words import plain

_SIGNS = str.maketrans({"º": " ", "°": " ", "№": " no ", "'": " ", "’": " "})
_UMLAUTS = {"ä": "ae", "ö": "oe", "ü": "ue"}


def form(text: str) -> str:
    """Small, without accents, signs as single blanks; German ``Maß`` (a size) stays apart from ``Masse`` (a mass)."""
    small = text.casefold() if text.isascii() else text.lower().replace("maß", "masz").translate(_SIGNS)
    return plain(small)


def forms(word: str) -> tuple[str, ...]:
    """The forms of a word of the lists: as it stands, and with ae, oe, ue for the umlauts it has."""
    small = word.casefold() if word.isascii() else word.lower()
    other = small
    for letter, letters in _UMLAUTS.items():
        other = other.replace(letter, letters)
    return (form(word),) if other == small else (form(word), form(other))


def english_plurals(word: str) -> Iterator[str]:
    """The plural of the last word."""
    if word.endswith(("s", "x", "ch", "sh")):
        yield word + "es"
    elif word.endswith("y") and word[-2:-1] not in "aeiou":
        yield word[:-1] + "ies"
    else:
        yield word + "s"


def german_plurals(word: str) -> Iterator[str]:
    """The plurals without change of vowel."""
    for ending in ("e", "n", "en", "er", "s"):
        yield word + ending


def french_plurals(word: str) -> Iterator[str]:
    """The plural of the first word, of the first two, and of all."""
    words = word.split()
    for count in {1, min(2, len(words)), len(words)}:
        yield " ".join([*map(_french_plural, words[:count]), *words[count:]])


def _french_plural(word: str) -> str:
    if word.endswith(("s", "x", "z")):
        return word
    if word.endswith(("eau", "au", "eu")):
        return word + "x"
    return word[:-2] + "aux" if word.endswith("al") else word + "s"
