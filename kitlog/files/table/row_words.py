"""What the words of a row say of it: a sum, a section, a note, or nothing of the kind."""

import re
from collections.abc import Sequence

from kitlog.files.table.choice_words import choice_of
from kitlog.files.table.heading_units import unit_word
from kitlog.files.table.phrases import phrase
from kitlog.files.table.title_unit import unit_in
from kitlog.files.table.vocabulary import Vocabulary
from kitlog.files.table.word_forms import form

_NOTE_LETTERS = 40
_LONG = 80
_NOTE_WORDS = 4
_LEAST_CAPITALS = 5
_MARKS = frozenset("*†‡¹")
_NUMBERED = re.compile(r"\s*(?:\d{1,2}|[A-Z]|[IVX]{1,4})[.)]\s+")
_DRAWN = re.compile(r"\s*(?:[-–—=*_~#]{2,}|[^\w\s]+\s*$)")
"""A line drawn with signs, or one before the name of a section."""
_FIGURE = re.compile(r"[-+~±≈<>]?\s*[\d.,'’\s]*\d[\d.,'’\s]*")
_PARTS = re.compile(r"[\s/,;()\[\]€$£+–—.-]+")
"""What may stand between and around figures, their units and currencies ("CHF 4350.-", "3.1 kg / 6.8 lb")."""
_NO_WORDS = re.compile(r"\([^()]*\)?|\[[^\[\]]*\]?|[*:=→]+")
"""What may stand behind the words of a sum: a bracket, a mark."""


def bare_title(text: str) -> str:
    """The name of a section without its number ("1. Cockpit")."""
    return _NUMBERED.sub("", text)


class RowWords:
    """Looks at the words of single rows; `capitals`: names are mostly in capitals, so that these say nothing."""

    def __init__(self, words: Vocabulary, *, capitals: bool) -> None:
        self._all, self._words, self._capitals = words, words.layout, capitals

    def is_figure(self, text: str) -> bool:
        """Numbers with or without units or currencies, rough or not, a unit alone, or a sign that nothing is known."""
        said = phrase(text)
        if said is None:
            return False
        parts = [part for part in _PARTS.split(_FIGURE.sub(" ", said.core)) if part]
        return said.nothing or all(part in self._words.unit_cells or unit_word(part) for part in parts)

    def is_sum(self, filled: Sequence[tuple[int, str]], name: int | None = None) -> bool:
        """A row whose first words, or those in the column of names, are a sum's; one note beside them at most.

        Fuller ones are things that are called so.
        """
        words = [(at, text) for at, text in filled if not self.is_figure(text)]
        telling = [text for place, (at, text) in enumerate(words) if not place or at == name]
        others = [text for _at, text in words if not self._names_sum(text)]
        return len(others) <= 1 and any(map(self._names_sum, telling))

    def is_no_item(self, filled: Sequence[tuple[int, str]]) -> bool:
        """A figure of the pilot or the wing beside its name ("Body weight 75 kg")."""
        words = [text for _at, text in filled if not self.is_figure(text)]
        return len(words) == 1 and self._bare(words[0]) in self._words.no_items

    def _names_sum(self, text: str) -> bool:
        if len(text) > _LONG:
            return False
        said = self._bare(_NO_WORDS.sub(" ", text)) or self._bare(text)
        parts = said.split()
        return any(self._is_sum_of(" ".join(parts[:end]), parts[end:]) for end in range(len(parts), 0, -1)) or (
            len(parts) > 1 and parts[-1] in self._words.last_totals and self._is_group(" ".join(parts[:-1]))
        )

    def _is_sum_of(self, begin: str, rest: Sequence[str]) -> bool:
        """Words of a sum, with what it is of after them: nothing, "without water", "for the rucksack", a section."""
        if begin in self._words.part_totals:
            return True
        if begin not in self._words.totals:
            return False
        if not rest or rest[0] in self._words.of_totals or rest[0] in self._all.kinds.after:
            return True
        return begin in self._words.named_totals and self._is_group(" ".join(rest))

    @staticmethod
    def _bare(text: str) -> str:
        """The words of a text without figures and units."""
        return " ".join(word for word in form(text).split() if not word[0].isdigit() and not unit_word(word))

    def _is_group(self, said: str) -> bool:
        """A category, a kind or a zone."""
        if said in self._all.kinds.broad or choice_of("zone", said, self._all) is not None:
            return True
        known = self._all.kinds
        return said in known.last or said in known.first or said in known.alone

    def begins_note(self, text: str) -> bool:
        """Whether a text begins as a note below a table does."""
        small = text.casefold()
        return small[:1] in _MARKS or any(
            small.startswith(word) and not small[len(word) : len(word) + 1].isalnum() for word in self._words.notes
        )

    def is_note(self, filled: Sequence[tuple[int, str]], *, gap: bool) -> bool:
        """A note at the end: by its first word, or a single long text; `gap` = an empty row stands above."""
        text = filled[0][1]
        if self.begins_note(text):
            return len(filled) == 1 or ":" in text
        if len(filled) > 1:
            return False
        words = len(text.split())
        long = len(text) > _LONG or (gap and len(text) > _NOTE_LETTERS and words > _NOTE_WORDS)
        return long or unit_in(text, self._all) != ""

    def is_section(self, text: str, *, above: bool) -> bool:
        """The name of a section: with a colon, a broad category, or in capitals; `above` = an empty row stands there.

        What is a kind as well ("Helmet", "GPS") is an item, unless it is written in long capitals.
        """
        said = form(bare_title(text))
        if text.endswith(":") or _DRAWN.match(text) or said in self._words.sections:
            return True
        if above and said in self._words.things:
            return True
        letters = sum(map(str.isalpha, text))
        return text.isupper() and letters >= _LEAST_CAPITALS and not self._capitals
