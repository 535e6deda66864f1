"""The items that an import would bring, one row each, with what is to be said of them."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from enum import Enum

from kitlog.files.csv_columns import KIT, Column
from kitlog.files.csv_forms import KILOGRAMS
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.outing.library import Library
from kitlog.wording.figures import day_text, kg_text, mass_text, number_text
from kitlog.wording.import_words import field_word
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper, word
from kitlog.workbench.kit_preview import KitPreview

MOST_CHANGES = 6


@dataclass(frozen=True, slots=True)
class Entry:
    """A row of the preview.

    Attributes:
        row: line of the table; item: as it would be; before: as it is, None for a new one.
        twins: lines of the rows that are the same throughout, its own included.
        band: the usual masses of its kind in g where its mass lies outside.
        undecided: it meets an item of the kit, and nobody has said what becomes of it.
    """

    row: int
    item: Item
    before: Item | None = None
    twins: tuple[int, ...] = ()
    band: tuple[int, int] | None = None
    undecided: bool = False

    @property
    def asks(self) -> bool:
        """Whether it is to be looked at."""
        return bool(self.twins or self.band)


def entries_of(preview: KitPreview) -> list[Entry]:
    """All items that would be written, and those about which nobody has decided, in the order of the table."""
    twins = {row: rows for rows in preview.twins for row in rows}
    bands = {item.id: band for item, band in preview.implausible}
    made = [
        Entry(row, item, before, twins.get(row, ()), bands.get(item.id), preview.undecided and before is not None)
        for row, item, before in (*_new(preview), *_known(preview))
    ]
    return sorted(made, key=lambda entry: entry.row)


def _new(preview: KitPreview) -> Iterator[tuple[int, Item, Item | None]]:
    for item in preview.new:
        yield preview.rows.get(item.id, 0), item, None


def _known(preview: KitPreview) -> Iterator[tuple[int, Item, Item | None]]:
    """Rows about items of the kit; while it is open what becomes of them, also those that would change nothing."""
    if preview.undecided:
        after = {change.before.id: change.after for change in preview.changed}
        for met in preview.met:
            yield met.row, after.get(met.item.id, met.item), met.item
    else:
        for change in preview.changed:
            yield preview.rows.get(change.after.id, 0), change.after, change.before


def said_of(entry: Entry, library: Library) -> str:
    """What is to be said of an item: what changes, what is unusual, which rows are the same, which have no kind."""
    parts = []
    if entry.band is not None:
        usual = _("{least} to {most}").format(least=mass_text(entry.band[0]), most=mass_text(entry.band[1]))
        kind = word(library.facts(entry.item.kind).label)
        parts.append(_("Sure? {kind} is usually {usual}.").format(kind=first_upper(kind), usual=usual))
    if entry.twins:
        others = ", ".join(str(row) for row in entry.twins if row != entry.row)
        parts.append(_("The same as row {rows}; each is an item.").format(rows=others))
    if entry.before is None and entry.item.kind is Kind.OTHER:
        parts.append(_("Of kind other: hardly any need counts on it."))
    if entry.before is not None:
        changes = changes_text(entry.before, entry.item)
        parts.append(_("In your kit already. {changes}").format(changes=changes) if entry.undecided else changes)
    return " ".join(parts)


def changes_text(before: Item, after: Item) -> str:
    """What changes in an item, figure by figure."""
    parts = [
        _("{field} {old} → {new}").format(field=field_word(column.heading), old=old, new=new)
        for column in KIT.all
        if (old := _shown(column, before)) != (new := _shown(column, after))
    ]
    shown = parts[:MOST_CHANGES]
    return first_upper("; ".join(shown)) + ("; …" if len(parts) > len(shown) else "")


def _shown(column: Column, item: Item) -> str:
    value: object = item
    for step in column.path:
        value = getattr(value, step, None)
    if value is None or value in ("", ()):
        return _("not known")
    if isinstance(value, date):
        return day_text(value)
    if isinstance(value, str | Enum):
        return word(value.value) if isinstance(value, Enum) else str(value)
    if isinstance(value, int | float):
        return _figure(column, value)
    return _several(value)


def _figure(column: Column, value: float) -> str:
    if column.heading == "mass_g":
        return mass_text(value)
    if column.form is KILOGRAMS:
        return kg_text(value, 1)
    return number_text(value, 0 if float(value).is_integer() else 2)


def _several(value: object) -> str:
    if isinstance(value, Mapping) or not isinstance(value, Iterable):
        return str(value)
    return ", ".join(str(getattr(one, "name", one)) for one in value)
