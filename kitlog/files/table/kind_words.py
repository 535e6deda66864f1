"""The kind that a word of a column of kinds means, and the kind that a name tells by its head.

The rules of the head are common practice of the three languages, no source: in English and German the last noun says
what a thing is ("helmet bag"), in French the first ("sac à sellette").
"""

import re
from functools import lru_cache

from kitlog.files.table.name_heads import head_kind
from kitlog.files.table.proper_names import named_kind
from kitlog.files.table.vocabulary import Vocabulary
from kitlog.files.table.word_forms import form
from kitlog.files.table.word_sets import KindVocabulary
from kitlog.kit.kinds import Kind

_MEMBERS = {form(kind.value): kind for kind in Kind}
_NUMBER = re.compile(r"\s*(?:\d{1,3}(?:\.\d{1,3})*|[A-Za-z])[.):]\s+|\s*\d{1,3}\s*[-–]?\s+(?=[^\W\d])")
_SEPARATORS = re.compile(r"\s*[/:;,|+&()\[\]>–—]\s*|\s-\s|\s(?:und|and|et|or|oder|ou)\s", re.IGNORECASE)
_CUT = re.compile(r"[,;|:]|\s[-–—]+\s|[–—]")
_BRACKETS = re.compile(r"\([^()]*\)?|\[[^\[\]]*\]?")
_JOINS = re.compile(r"\s*[/&+]\s*|\s(?:und|and|et|u\.)\s", re.IGNORECASE)
_LONGEST = 120
"""Letters beyond which a text is no name of a kind."""


@lru_cache(maxsize=4096)
def kind_of(word: str, words: Vocabulary) -> Kind | None:
    """The kind that a cell of a column of kinds means; None = not understood, or no single kind ("electronics")."""
    if len(word) > _LONGEST:
        return None
    text = _NUMBER.sub("", word, count=1)
    known = words.kinds
    whole = form(text)
    found = _word(whole, known)
    if found is not None or whole in known.broad:
        return found
    parts = [part for part in _SEPARATORS.split(text) if part.strip()]
    if len(parts) < 2:
        return head_kind(text, known)
    kinds = {_part(part, known) for part in parts if not _says_nothing(form(part), known)}
    return kinds.pop() if len(kinds) == 1 else None


def is_broad(word: str, words: Vocabulary) -> bool:
    """Whether a cell of a column of kinds is a broad category ("electronics"), so that the name may tell the kind."""
    said = form(_NUMBER.sub("", word[:_LONGEST], count=1))
    return said in words.kinds.broad and _word(said, words.kinds) is None


def _word(word: str, known: KindVocabulary) -> Kind | None:
    if word in _MEMBERS:
        return _MEMBERS[word]
    if word in known.never:
        return None
    return known.alone.get(word) or known.last.get(word) or known.first.get(word)


def _part(part: str, known: KindVocabulary) -> Kind | None:
    return _word(form(part), known) or head_kind(part, known)


def _says_nothing(part: str, known: KindVocabulary) -> bool:
    """A broad category, or looks and sizes alone."""
    if part in known.broad:
        return _word(part, known) is None
    return part not in known.alone and all(word in known.adjectives or not word.isalpha() for word in part.split())


@lru_cache(maxsize=4096)
def kind_guessed(name: str, words: Vocabulary) -> Kind | None:
    """The kind that a name's head tells, or a kind's word before a proper name; a guess, None where none is plain."""
    text = _CUT.split(_BRACKETS.sub(" ", name[:_LONGEST]).strip(), maxsplit=1)[0]
    known = words.kinds
    if _JOINS.search(text) is None:
        return head_kind(text, known) or named_kind(text, known)
    whole = known.last.get(form(text))
    if whole is not None:
        return whole
    kinds = {head_kind(part, known) for part in _JOINS.split(text) if part.strip()}
    return kinds.pop() if len(kinds) == 1 else None
