"""Which eight-bit encoding a text was written in: by where its letters and marks stand.

The library that tells encodings apart needs some hundred letters to be sure; a list of kit may hold one ("Größe"). So
the letters of German and French come first, and the library decides over the rest.
"""

import re
from collections.abc import Iterable, Iterator

_OTHERS = ("cp850", "mac_roman")
_SAMPLE = 8_000
"""Bytes of lines with odd characters that the library weighs; weighing is slow."""

_SMALL = frozenset("äöüßéèêëàâçîïôûùœæÿ")
_CAPITALS = frozenset("ÄÖÜÉÈÊËÀÂÇÎÏÔÛÙŒÆ")
_WORDS = frozenset("àÀÔ")
"""Letters that are words by themselves."""
_BETWEEN = frozenset("’‘–—·\u00ad\u00a0")
"""Marks that may stand between two letters: l’aile, Wi–Fi."""
_OPENING = frozenset("„‚«‹“‘")
_MARKS = frozenset("”›»…€£§±½¼¾•†µ×°²³®™©‰¹º")
_ODD = re.compile(r"[^\x00-\x7f]")


def another_encoding(data: bytes) -> str | None:
    """The encoding that fits bytes better than Windows-1252 does; None where that fits, empty where none does."""
    text = _read(data, "cp1252")
    if text is not None and not any(_misfits(text)):
        return None
    for other in _OTHERS:
        reading = _read(data, other)
        if reading is not None and not any(_misfits(reading)):
            return other
    found = _weighed(data)
    return None if found == "cp1252" and text is not None and _mostly_fits(text) else found.replace("cp1252", "")


def _read(data: bytes, encoding: str) -> str | None:
    try:
        return data.decode(encoding)
    except UnicodeDecodeError:
        return None


def _misfits(text: str) -> Iterable[bool]:
    """For each place of an odd character whether German, French and English never put it there."""
    return (not _fits(*place) for place in set(_places(text)))


def _places(text: str) -> Iterator[tuple[str, str, str]]:
    """Each odd character with its neighbours."""
    for match in _ODD.finditer(text):
        at = match.start()
        yield text[max(at - 1, 0) : at], match.group(), text[at + 1 : at + 2]


def _mostly_fits(text: str) -> bool:
    """The same with the letters of other languages allowed, and one misfit in ten."""
    wrong = [not _fits(*place, strictly=False) for place in _places(text)]
    return sum(wrong) * 10 <= len(wrong)


def _fits(before: str, char: str, after: str, *, strictly: bool = True) -> bool:
    if char in _SMALL or char in _CAPITALS or (not strictly and char.isalpha()):
        return _fits_letter(before, char, after)
    if char in _BETWEEN:
        return True
    if before.isalpha() and after.isalpha():
        return False
    if char in _OPENING:
        return _fits_opening(before, char, after)
    return char in _MARKS


def _fits_opening(before: str, char: str, after: str) -> bool:
    """A mark that opens; one closes in German what it opens in English, and in French a blank follows one."""
    if char == "“" and not after.isalnum():
        return True
    return not before.isalnum() and (char == "«" or bool(after.strip()))


def _fits_letter(before: str, char: str, after: str) -> bool:
    """A letter in a word: no capital in the midst of small letters, nothing behind a figure, and seldom alone."""
    if before.isdigit() or (char.isupper() and before.isalpha() and (before.islower() or after.islower())):
        return False
    return before.isalpha() or after.isalpha() or char in _WORDS


def _weighed(data: bytes) -> str:
    """What the library says, empty if nothing."""
    from charset_normalizer import from_bytes

    lines = [line for line in data[: 50 * _SAMPLE].splitlines() if not line.isascii()]
    best = from_bytes(b"\n".join(lines)[:_SAMPLE], cp_isolation=["cp1252", *_OTHERS]).best()
    return best.encoding if best else ""
