"""The words around a figure: not known, rough, weighed, each. Common ways of writing, no source."""

import re
import unicodedata
from dataclasses import dataclass

MAX_TEXT = 120
"""Letters beyond which a text is a note, not a figure."""

_BLANKS = re.compile(r"[ \t\r\n\u00a0\u2002-\u200a\u202f]+")
_APOSTROPHES = str.maketrans("’ʼ`´", "''''")

_NOT_KNOWN = re.compile(
    r"|\?{1,3}|-{1,3}|[–—…]|\.{3}|#?n/a|na|n\. ?a\.|ka|k\. ?a\.|keine angaben?|unbekannt|nicht bekannt"
    r"|unknown|not known|inconnue?|non connue?|tb[dca]|t\.b\.d\.|offen|leer"
)

_ROUGH_BEFORE = re.compile(
    r"(?:(?:ca?|circa|zirka|approx|approximately|about|around|roughly|env|environ|etwa|rund|ungef|ungefähr|est|estimated"
    r"|gesch|geschätzt|estimée?)(?:\. ?| |(?=[0-9~]))|[~≈∼≃] ?|(?:±|\+/-) ?)"
)
_ROUGH_AFTER = re.compile(
    r" ?(?:\(\?+\)|\?+|(?: |\()(?:ca|circa|approx|approximately|about|roughly|env|environ|ungefähr|est|estimated"
    r"|estimate|gesch|geschätzt|schätzung|geraten|estimée?s?|guess|guessed)\.?\)?)$"
)
_MEASURED_AFTER = re.compile(
    r"(?: |, ?| ?\()(?:(?:selbst |self-|self )?(?:gewogen|weighed|gemessen|measured|pesée?s?|mesurée?s?))\)?$"
)
_EACH_BEFORE = re.compile(r"(?:je|jeweils|à) ")
_EACH_AFTER = re.compile(
    r"(?: (?:je|jeweils|each|ea|apiece|chacune?|ch)\.?"
    r"| ?(?:/|pro |per |par |la |p\. ?)(?:stk|stück|st|pcs?|pce|piece|pièce|unité)\.?)$"
)
_PAIR_AFTER = re.compile(
    r"(?:,? ?\(? ?(?:la |per |par |pro |the |a |das |/ ?)|,? ?\( ?| )(?:paire|pair|paar)\.? ?\)?$"
    r"|,? \(?(?:les|for|pour|für) (?:les )?(?:deux|both|beide|2)\)?$"
)
_EMPTY_AFTER = re.compile(r" \(? ?(?:leer|empty|vide|à vide|trocken|dry|netto|net)\)?$")


@dataclass(frozen=True, slots=True)
class Phrase:
    """A text without the words around its figure.

    Attributes:
        core: what is left: small letters, single plain blanks, plain apostrophes.
        rough: it was called rough, guessed or doubtful.
        measured: it was called weighed or measured.
        each: it was said to hold for one piece; pair: for two together.
    """

    core: str
    rough: bool = False
    measured: bool = False
    each: bool = False
    pair: bool = False

    @property
    def nothing(self) -> bool:
        """Whether the text says nothing, or that nothing is known."""
        return not self.rough and _NOT_KNOWN.fullmatch(self.core) is not None


def tidy(text: str) -> str:
    """A text in small composed letters, with single plain blanks and plain apostrophes."""
    if not text.isascii():
        text = unicodedata.normalize("NFC", text.translate(_APOSTROPHES))
    return _BLANKS.sub(" ", text).strip().casefold()


def phrase(text: str) -> Phrase | None:
    """A text parted from the words around its figure; None for one too long to be a figure."""
    if len(text) > MAX_TEXT:
        return None
    core = tidy(text)
    if _NOT_KNOWN.fullmatch(core):
        return Phrase(core)
    core, measured = _without(core, None, _MEASURED_AFTER)
    core, rough = _without(core, _ROUGH_BEFORE, _ROUGH_AFTER)
    core, each = _without(core, _EACH_BEFORE, _EACH_AFTER)
    core, pair = (core, False) if each else _without(core, None, _PAIR_AFTER)
    core, _empty = _without(core, None, _EMPTY_AFTER)
    if not rough:
        core, rough = _without(core, _ROUGH_BEFORE, _ROUGH_AFTER)
    return Phrase(core, rough, measured, each, pair)


def _without(core: str, before: re.Pattern[str] | None, after: re.Pattern[str]) -> tuple[str, bool]:
    """The text without one word in front and one behind, and whether there was any."""
    start = before.match(core) if before else None
    rest = core[start.end() :] if start else core
    end = after.search(rest)
    return (rest[: end.start()] if end else rest), bool(start or end)
