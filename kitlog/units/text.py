"""Text that can be shown, stored and printed: no NUL, no control characters, no bidi overrides, no lone surrogates."""

import unicodedata
from typing import Annotated

from pydantic import BeforeValidator, StringConstraints
from pydantic_core import PydanticCustomError

_BIDI = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
_BREAKS = frozenset("\n\t")
_CONTROLS = frozenset({"Cc", "Cs"})
_CONTROLS_AND_BREAKS = _CONTROLS | {"Zl", "Zp"}


def unfit_character(text: str, *, breaks: bool) -> str | None:
    """The first character that may not be stored, as ``U+XXXX``, or None.

    Args:
        text: any string.
        breaks: whether line breaks and tabs are allowed (notes) or not (names).
    """
    if text.isprintable():
        return None
    for char in text:
        if char in _BREAKS and breaks:
            continue
        if char in _BIDI or unicodedata.category(char) in (_CONTROLS if breaks else _CONTROLS_AND_BREAKS):
            return f"U+{ord(char):04X}"
    return None


def composed(text: str) -> str:
    """The text with accents and letters as one character each (Unicode NFC): one spelling for what looks the same."""
    if text.isascii() or unicodedata.is_normalized("NFC", text):
        return text
    return unicodedata.normalize("NFC", text)


def _composed(raw: object) -> object:
    """Text in composed form, before its length is measured."""
    return unicodedata.normalize("NFC", raw.replace("\r\n", "\n")) if isinstance(raw, str) else raw


def _fit(text: str, *, breaks: bool) -> str:
    bad = unfit_character(text, breaks=breaks)
    if bad is not None:
        raise PydanticCustomError("text.unfit_character", "{character}", {"character": bad})
    return text


def _line(raw: object) -> object:
    """One line, composed and without blanks around it; one step, since lists of thousands go through it."""
    if not isinstance(raw, str) or (raw.isascii() and raw.isprintable()):
        return raw
    composed = _composed(raw)
    return _fit(composed.strip(), breaks=False) if isinstance(composed, str) else composed


def _note(raw: object) -> object:
    """Text over several lines, composed."""
    if not isinstance(raw, str) or (raw.isascii() and raw.isprintable()):
        return raw
    composed = _composed(raw)
    return _fit(composed, breaks=True) if isinstance(composed, str) else composed


Name = Annotated[
    str,
    StringConstraints(strip_whitespace=True, min_length=1, max_length=200),
    BeforeValidator(_line),
]
"""One line, 1 to 200 characters."""

Line = Annotated[
    str,
    StringConstraints(strip_whitespace=True, max_length=200),
    BeforeValidator(_line),
]
"""One line, at most 200 characters, may be empty."""

Note = Annotated[str, StringConstraints(max_length=10_000), BeforeValidator(_note)]
"""Free text, at most 10,000 characters."""
