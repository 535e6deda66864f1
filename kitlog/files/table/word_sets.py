"""Words for kinds, and words that tell rows without items, as they are looked up."""

from collections.abc import Mapping
from dataclasses import dataclass

from kitlog.kit.kinds import Kind


@dataclass(frozen=True, slots=True, eq=False)
class KindVocabulary:
    """Words for kinds, in the forms of `form`.

    Attributes:
        last: words that tell the kind where a name ends with them (English, German), first: where it begins with them
            (French), alone: where it is nothing else; ends: endings of German compounds.
        named: words that tell the kind before a proper name, of those that else stand alone.
        broad, either, never, parts, adjectives, after: as told in the lists.
        fittings: with plurals; endings: those of ordinary words, the long fittings and parts among them.
    """

    last: Mapping[str, Kind]
    first: Mapping[str, Kind]
    alone: Mapping[str, Kind]
    ends: Mapping[str, Kind]
    broad: frozenset[str]
    either: frozenset[str]
    never: frozenset[str]
    parts: frozenset[str]
    adjectives: frozenset[str]
    after: frozenset[str]
    named: Mapping[str, Kind]
    fittings: frozenset[str]
    endings: frozenset[str]


@dataclass(frozen=True, slots=True, eq=False)
class LayoutVocabulary:
    """Words that tell rows without items, in the forms of `form`; `notes` and `unit_cells` as written, small.

    Attributes:
        sections: broad categories; things: those that may be things as well.
        of_totals: words after those of a sum that tell what it is of; last_totals: words that make one of a group's.
        names: headings of columns of names; openers: these and the broad categories; both small, as written.
        beginnings: first words of sums, notes and figures of the pilot, small, as written and as forms, a colon too.
    """

    totals: frozenset[str]
    part_totals: frozenset[str]
    named_totals: frozenset[str]
    of_totals: frozenset[str]
    last_totals: frozenset[str]
    no_items: frozenset[str]
    notes: tuple[str, ...]
    sections: frozenset[str]
    things: frozenset[str]
    mass_words: frozenset[str]
    unit_cells: frozenset[str]
    names: frozenset[str]
    openers: frozenset[str]
    beginnings: frozenset[str]
