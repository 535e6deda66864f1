"""The head of a name: which of its words says what the thing is."""

import re

from kitlog.files.table.heading_units import unit_word
from kitlog.files.table.word_forms import form
from kitlog.files.table.word_sets import KindVocabulary
from kitlog.kit.kinds import Kind

_FRENCH = re.compile(r"[éèêëàâçîïôûœ]|(?:\b(?:de|du|des|à|a|en|pour|avec|sans|et|aux|au)\b|\b[dl]['’])", re.IGNORECASE)
_GERMAN = re.compile(r"[äöüß]", re.IGNORECASE)
_CARRIERS = frozenset({Kind.BAG, Kind.CABLE, Kind.CHARGER})
"""What is often named with the thing that it is for, in any order of the words."""
_SETS_OF = frozenset({"pair", "pairs", "set", "paar", "spare"})
ARTICLES = frozenset({"de", "d", "du", "des", "la", "le", "les", "l", "un", "une", "my", "mein", "meine", "the", "a"})
_SIZES = frozenset({"xxs", "xs", "sm", "ml", "xl", "xxl", "xxxl"})
"""Sizes of clothes and wings; those of one letter go without."""
_PART_LETTERS = 5
"""Letters from which on a part's word counts as the end of a compound ("Ersatzakku", "Handyhalterung")."""


def head_kind(text: str, known: KindVocabulary) -> Kind | None:
    """The kind that the head of one thing's name tells; None where none or two are told."""
    tokens = _own_tokens(form(text).split(), known)
    if not tokens:
        return None
    last, first = _by_last(tokens, known), _by_first(tokens, known, french=bool(_FRENCH.search(text)))
    if last is None or first is None or last is first:
        return last or first
    if bool(_FRENCH.search(text)) != bool(_GERMAN.search(text)):
        return first if _FRENCH.search(text) else last
    carriers = [kind for kind in (last, first) if kind in _CARRIERS]
    return carriers[0] if len(carriers) == 1 else None


def _own_tokens(tokens: list[str], known: KindVocabulary) -> list[str]:
    """The words up to what the thing is for or goes with, the other side of "pair of", without looks at both ends."""
    end = next((at for at, word in enumerate(tokens) if at and word in known.after), len(tokens))
    own = tokens[:end]
    if "of" in own[1:]:
        at = own.index("of", 1)
        own = own[at + 1 :] if set(own[:at]) <= _SETS_OF | known.adjectives else own[:at]
    while own and not _is_phrase(own, known) and says_nothing(own[-1], known):
        own = own[:-1]
    while own and not _is_phrase(own, known) and (says_nothing(own[0], known) or own[0] in ARTICLES):
        own = own[1:]
    return own


def _is_phrase(tokens: list[str], known: KindVocabulary) -> bool:
    whole = " ".join(tokens)
    return whole in known.last or whole in known.first or whole in known.alone


def says_nothing(word: str, known: KindVocabulary) -> bool:
    """Looks, sizes, numbers and single letters."""
    return (
        len(word) == 1
        or word in known.adjectives
        or word in _SIZES
        or bool(unit_word(word))
        or any(sign.isdigit() for sign in word)
    )


def _by_last(tokens: list[str], known: KindVocabulary) -> Kind | None:
    """What the last words tell, as in English and German; words written apart may be one ("Rettungs-Schirm")."""
    whole = " ".join(tokens)
    if whole in known.alone:
        return known.alone[whole]
    for start in range(len(tokens)):
        for tail in (" ".join(tokens[start:]), "".join(tokens[start:])):
            if tail in known.never:
                return None
            kind = known.last.get(tail) or (known.alone.get(tail) if start == 0 else None)
            if kind is not None:
                return _unless_part(kind, tokens[:start], known)
    kind = ending_kind(tokens[-1], known)
    return _unless_part(kind, tokens[:-1], known)


def ending_kind(word: str, known: KindVocabulary) -> Kind | None:
    """What a German compound ends as."""
    if word in known.never:
        return None
    return next((kind for at in range(2, len(word)) if (kind := known.ends.get(word[at:]))), None)


def _by_first(tokens: list[str], known: KindVocabulary, *, french: bool) -> Kind | None:
    """What the first words tell, as in French; of words that the other languages have as well only in a French name."""
    for end in range(len(tokens), 0, -1):
        head = " ".join(tokens[:end])
        if head in known.never:
            return None
        kind = known.first.get(head)
        if kind is not None:
            shared = head in known.last and end < len(tokens) and not french and kind not in _CARRIERS
            return None if shared else _unless_part(kind, [], known)
    return None


def _unless_part(kind: Kind | None, others: list[str], known: KindVocabulary) -> Kind | None:
    """The kind, unless another word says that it is a part or fitting of such a thing."""
    if kind in _CARRIERS or not any(_is_part(word, known) or _carries(word, known) for word in others):
        return kind
    return None


def _carries(word: str, known: KindVocabulary) -> bool:
    """A bag, cable or charger: "Tasche Helm" is no helmet."""
    return (known.last.get(word) or ending_kind(word, known)) in _CARRIERS


def _is_part(word: str, known: KindVocabulary) -> bool:
    if word in known.parts:
        return True
    return any(word[at:] in known.parts for at in range(1, len(word) - _PART_LETTERS + 1))
