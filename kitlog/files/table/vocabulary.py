"""What the words of other people's lists mean: the word lists of the resources, ready to be looked up in."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from pathlib import Path
from typing import TypeVar

from kitlog.files.table.word_forms import english_plurals, form, forms, french_plurals, german_plurals
from kitlog.files.table.word_lists import (
    HeadingLists,
    HeadingWords,
    KindLists,
    KindWords,
    OtherLists,
    Words,
    read_lists,
)
from kitlog.files.table.word_sets import KindVocabulary, LayoutVocabulary
from kitlog.kit.kinds import ItemState, Kind, Layer, MassSource, Zone

_SIGNS = str.maketrans({"#": " number ", "€": " eur ", "£": " gbp ", "$": " usd "})

E = TypeVar("E", bound=StrEnum)


@dataclass(frozen=True, slots=True, eq=False)
class Vocabulary:
    """All words; equal only to itself, so that results can be kept by it.

    Attributes:
        headings: meanings of headings by their words, without the little words of `ignored`; joined: the same by the
            words written as one.
        choices: members of the closed lists by target and word.
        service: words for checks and packing; service_beside: those that may stand beside them in a heading.
        dittos: cells that repeat the one above, in small letters, with a capital, and in capitals.
    """

    headings: Mapping[str, tuple[HeadingWords, ...]]
    joined: Mapping[str, str]
    ignored: frozenset[str]
    besides: frozenset[str]
    currencies: frozenset[str]
    rough: frozenset[str]
    lowest: frozenset[str]
    highest: frozenset[str]
    service: frozenset[str]
    service_beside: frozenset[str]
    dittos: frozenset[str]
    kinds: KindVocabulary
    choices: Mapping[str, Mapping[str, StrEnum]]
    layout: LayoutVocabulary

    def key(self, text: str, kept: frozenset[str] = frozenset()) -> str:
        """The words of a heading without the little ones, but for those of `kept`."""
        said = form(text.translate(_SIGNS))
        return " ".join(word for word in said.split() if word in kept or word not in self.ignored)


def load_vocabulary(folder: Path) -> Vocabulary:
    """The words from ``tables/`` in the folder of the resources; read once.

    Raises:
        SystemFault: ``resources.broken`` with ``file``, ``where`` and ``problem``.
    """
    return _loaded(folder)


@cache
def _loaded(folder: Path) -> Vocabulary:
    tables = folder / "tables"
    headings = read_lists(tables / "headings.toml", HeadingLists)
    kinds = read_lists(tables / "kinds.toml", KindLists)
    other = read_lists(tables / "words.toml", OtherLists)
    ignored = _set(headings.ignored)
    by_key = _headings(headings.headings, ignored)
    joined = {key.replace(" ", ""): key for key in by_key if len(key) >= _JOINED}
    names = frozenset(word.casefold() for entry in headings.headings if entry.target == "name" for word in entry.words)
    layout = _layout(other, kinds.broad, names)
    return Vocabulary(
        headings=by_key,
        joined=joined,
        ignored=ignored,
        besides=_set(headings.besides),
        currencies=_set(headings.currencies),
        rough=_set(headings.rough),
        lowest=_set(headings.lowest),
        highest=_set(headings.highest),
        service=_set(headings.service),
        service_beside=_set(headings.service_beside),
        dittos=frozenset(one for word in other.dittos for one in (word, word.capitalize(), word.upper())),
        kinds=_kinds(kinds, other),
        choices=_choices(other),
        layout=layout,
    )


_JOINED = 6
"""Letters of a heading from which on its words may be written as one."""


def _set(words: Words) -> frozenset[str]:
    return frozenset(one for word in words for one in forms(word))


def _headings(lists: Iterable[HeadingWords], ignored: frozenset[str]) -> dict[str, tuple[HeadingWords, ...]]:
    found: dict[str, tuple[HeadingWords, ...]] = {}
    for entry in lists:
        for word in entry.words:
            for one in forms(word):
                key = " ".join(part for part in one.split() if part not in ignored)
                if entry not in found.get(key, ()):
                    found[key] = (*found.get(key, ()), entry)
    return found


def _kinds(lists: KindLists, other: OtherLists) -> KindVocabulary:
    last: dict[str, Kind] = {}
    first: dict[str, Kind] = {}
    for entry in lists.kinds:
        last |= dict.fromkeys(_spread((*entry.any, *entry.en), english_plurals), entry.kind)
        last |= dict.fromkeys(_spread((*entry.any, *entry.de), german_plurals), entry.kind)
        first |= dict.fromkeys(_spread((*entry.any, *entry.fr), french_plurals), entry.kind)
    alone = {one: entry.kind for entry in lists.kinds for word in entry.alone for one in forms(word)}
    ends = dict(_ends(lists.kinds))
    named = {one: entry.kind for entry in lists.kinds for word in entry.named for one in forms(word)}
    fittings = frozenset(_in_all_languages((*lists.parts, *lists.fittings)))
    endings = frozenset((*lists.noun_endings, *(word for word in fittings if len(word) >= _ENDING)))
    return KindVocabulary(
        last,
        first,
        alone,
        ends,
        broad=_set(lists.broad),
        either=_set(lists.either),
        never=_set(lists.never),
        parts=_set(lists.parts),
        adjectives=_set(other.adjectives),
        after=_set(other.after),
        named=named,
        fittings=fittings,
        endings=endings,
    )


_ENDING = 5
"""Letters of a fitting from which on a word that ends so is a compound of it ("Innenfutter")."""


def _in_all_languages(words: Words) -> Iterator[str]:
    for plurals in (english_plurals, german_plurals, french_plurals):
        yield from _spread(words, plurals)


def _spread(words: Words, plurals: Callable[[str], Iterable[str]]) -> Iterator[str]:
    for word in words:
        for one in forms(word):
            yield from (*plurals(one), one)


def _ends(entries: Iterable[KindWords]) -> Iterator[tuple[str, Kind]]:
    for entry in entries:
        for end in entry.ends:
            for one in forms(end):
                yield from ((spelt, entry.kind) for spelt in (one, *german_plurals(one)))


def _choices(lists: OtherLists) -> dict[str, dict[str, StrEnum]]:
    zones = _members(Zone, lists.zone)
    return {
        "zone": zones,
        "zone_on_foot": zones,
        "state": _members(ItemState, lists.state),
        "mass_source": _members(MassSource, lists.mass_source),
        "garment_layer": _members(Layer, lists.garment_layer),
    }


def _members(members: type[E], words: Mapping[E, Words]) -> dict[str, StrEnum]:
    said: dict[str, StrEnum] = {one: member for member, said in words.items() for word in said for one in forms(word)}
    return said | {form(member.value): member for member in members}


def _beginnings(lists: OtherLists) -> Iterator[str]:
    for word in (*lists.totals, *lists.part_totals, *lists.named_totals, *lists.no_items, *lists.notes):
        for one in (word.casefold(), *forms(word)):
            yield from (f"{first}{colon}" for first in one.split()[:1] for colon in ("", ":", ",", "*"))


def _layout(lists: OtherLists, broad: Words, names: frozenset[str]) -> LayoutVocabulary:
    things = _set(lists.things)
    return LayoutVocabulary(
        totals=_set(lists.totals),
        part_totals=_set(lists.part_totals),
        named_totals=_set(lists.named_totals),
        of_totals=_set(lists.of_totals),
        last_totals=_set(lists.last_totals),
        no_items=_set(lists.no_items),
        notes=tuple(word.casefold() for word in lists.notes),
        sections=_set(broad) - things,
        things=things,
        mass_words=_set(lists.mass_words),
        unit_cells=frozenset(word.casefold() for word in lists.unit_cells),
        names=names,
        beginnings=frozenset(_beginnings(lists)),
        openers=names | {word.casefold() for word in broad},
    )
