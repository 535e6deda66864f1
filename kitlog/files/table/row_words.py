"""What the words of a row say of it: a sum, a section, a note, or nothing of the kind."""

import re
from collections.abc import Sequence

from kitlog.files.table.choice_words import choice_of
from kitlog.files.table.heading_units import unit_word
from kitlog.files.table.kind_words import kind_of
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


class RowWords:
    """Looks at the words of single rows; `capitals`: names are mostly in capitals, so that these say nothing."""

    def __init__(self, words: Vocabulary, *, capitals: bool) -> None:
        self._all, self._words, self._capitals = words, words.layout, capitals

    def is_figure(self, text: str) -> bool:
        """A number with or without a unit, or a unit alone."""
        rest = _FIGURE.sub("", text, count=1).strip(" €$£")
        return not rest or bool(unit_word(rest)) or rest.casefold() in self._words.unit_cells

    def is_sum(self, filled: Sequence[tuple[int, str]]) -> bool:
        """A word for a sum, with nothing but figures beside it."""
        texts = [text for _at, text in filled]
        words = [text for text in texts if not self.is_figure(text)]
        return bool(words) and all(map(self._names_sum, words))

    def is_no_item(self, filled: Sequence[tuple[int, str]]) -> bool:
        """A figure of the pilot or the wing beside its name ("Body weight 75 kg")."""
        words = [text for _at, text in filled if not self.is_figure(text)]
        return len(words) == 1 and self._bare(words[0]) in self._words.no_items

    def _names_sum(self, text: str) -> bool:
        said = self._bare(text)
        if said.partition(" ")[0] not in self._words.beginnings:
            return False
        if said in self._words.totals or said in self._words.part_totals:
            return True
        for begin in self._words.part_totals | self._words.named_totals:
            rest = said.removeprefix(f"{begin} ")
            if rest != said and (begin in self._words.part_totals or self._is_group(rest)):
                return True
        return False

    @staticmethod
    def _bare(text: str) -> str:
        """The words of a text without figures and units."""
        return " ".join(word for word in form(text).split() if not word[0].isdigit() and not unit_word(word))

    def _is_group(self, said: str) -> bool:
        """A category, a kind or a zone."""
        if said in self._all.kinds.broad or choice_of("zone", said, self._all) is not None:
            return True
        return kind_of(said, self._all) is not None

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
        said = form(_NUMBERED.sub("", text))
        if text.endswith(":") or _DRAWN.match(text) or said in self._words.sections:
            return True
        if above and said in self._words.things:
            return True
        letters = sum(map(str.isalpha, text))
        return text.isupper() and letters >= _LEAST_CAPITALS and not self._capitals
