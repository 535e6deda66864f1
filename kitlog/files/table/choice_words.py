"""The member of a closed list that a word means: zone, state, how a mass was taken, layer."""

import re
from enum import StrEnum
from functools import lru_cache

from kitlog.files.table.vocabulary import Vocabulary
from kitlog.files.table.word_forms import form

_BEFORE = frozenset(
    {"in", "im", "into", "inside", "the", "der", "dem", "den", "die", "das", "dans", "le", "la", "les", "l", "du", "my"}
)
_BRACKETS = re.compile(r"\([^()]*\)|\[[^\[\]]*\]")


@lru_cache(maxsize=4096)
def choice_of(target: str, word: str, words: Vocabulary) -> StrEnum | None:
    """The member of the list of `target` (zone, zone_on_foot, state, mass_source, garment_layer) that a word means.

    Case, accents, hyphens, underscores and a bracket do not matter, nor a preposition before it; None = not understood.
    """
    said = words.choices[target]
    for text in (word, _BRACKETS.sub(" ", word)):
        parts = form(text).split()
        found = said.get(" ".join(parts))
        while found is None and parts and parts[0] in _BEFORE:
            parts = parts[1:]
            found = said.get(" ".join(parts))
        if found is not None:
            return found
    return None
