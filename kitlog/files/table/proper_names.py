"""A thing's kind before its proper name: "Helm Roc" is a helmet, while "Helm Innenfutter" is none.

Common practice of pilots' lists, no source. The rule is narrow, since a name is no proof: the kind's word comes first,
every word behind it begins with a capital, and none is an ordinary word that could make a part or a fitting of it.
"""

import re

from kitlog.files.table.name_heads import ARTICLES, ending_kind, says_nothing
from kitlog.files.table.word_forms import form
from kitlog.files.table.word_sets import KindVocabulary
from kitlog.kit.kinds import Kind

_WORD = re.compile(r"[^\W_]+")
_LONGEST = 4
"""Words of a kind's name."""


def named_kind(text: str, known: KindVocabulary) -> Kind | None:
    """The kind that the first words of a name tell, where only proper names, looks, sizes and numbers follow."""
    words = _WORD.findall(text)
    tokens = [form(word) for word in words]
    start = next((at for at, token in enumerate(tokens) if not _leads(token, known)), len(tokens))
    for end in range(min(start + _LONGEST, len(tokens) - 1), start, -1):
        head = tokens[start:end]
        kind = _kind(head, known)
        if kind is not None:
            return kind if _are_proper(words[end:], head, known) else None
    return None


def _leads(token: str, known: KindVocabulary) -> bool:
    return token in ARTICLES or says_nothing(token, known)


def _kind(head: list[str], known: KindVocabulary) -> Kind | None:
    said = " ".join(head)
    found = known.last.get(said) or known.first.get(said) or known.named.get(said)
    return found or (ending_kind(said, known) if len(head) == 1 else None)


def _are_proper(words: list[str], head: list[str], known: KindVocabulary) -> bool:
    """Whether the words behind the head are proper names, one at least; with the head they say no other thing."""
    tokens = [form(word) for word in words]
    proper = [at for at, token in enumerate(tokens) if not says_nothing(token, known)]
    phrases = (" ".join([*head, *tokens][at:]) for at in range(len(head) + len(tokens)))
    if not proper or any(phrase in known.never for phrase in phrases):
        return False
    return all(words[at][0].isupper() and not _is_ordinary(tokens[at], known) for at in proper)


def _is_ordinary(token: str, known: KindVocabulary) -> bool:
    if token in known.fittings or token in known.broad or token in known.never or token in known.after:
        return True
    if token in known.last or token in known.first or token in known.alone or token in ARTICLES:
        return True
    ends = (token[at:] for at in range(1, len(token)))
    return not known.endings.isdisjoint(ends) or ending_kind(token, known) is not None
