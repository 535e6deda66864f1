"""The kit on a terminal: the list, what an import brought, what an export could not hold."""

from collections.abc import Iterator, Sequence

from kitlog.kit.due import DueState
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, Zone
from kitlog.kit.model_rules import GONE
from kitlog.outing.words import plain, says
from kitlog.wording.columns import WIDTH, table, wrapped
from kitlog.wording.figures import kg_text, mass_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import word

MOST_NAMED = 10
"""Of what an export could not hold, so many are named."""


def kit_lines(rows: Sequence[tuple[Item, Zone, DueState]]) -> Iterator[str]:
    """One row an item, with the sum of what is known below; what is retired or lost has a sum of its own."""
    if not rows:
        yield _("The kit is empty. Begin with: kitlog kit import FILE.csv")
        return
    heads = (_("item"), _("kind"), _("mass each"), _("taken by"), _("zone"), _("service"))
    yield from table([heads, *(_row(*row) for row in rows)], (False, False, True, False, False, False))
    yield ""
    items = [item for item, _zone, _due in rows]
    yield _sum([item for item in items if item.state not in GONE])
    if gone := [item for item in items if item.state in GONE]:
        yield _("retired or lost: {sum}").format(sum=_sum(gone))


def _row(item: Item, zone: Zone, due: DueState) -> tuple[str, ...]:
    name = item.name if item.quantity == 1 else f"{item.name}, {item.quantity}"
    source = "" if item.mass_g is None else word(item.mass_source.value)
    return name, word(item.kind.value), mass_text(item.mass_g), source, word(zone.value), word(due.value)


def _sum(items: Sequence[Item]) -> str:
    known = sum(item.all_mass_g or 0 for item in items)
    unknown = sum(item.all_mass_g is None for item in items)
    text = ngettext("{n} item, {mass}", "{n} items, {mass}", len(items)).format(n=len(items), mass=kg_text(known, 2))
    return text + (_("; mass of {n} not known").format(n=unknown) if unknown else "")


def doubts(
    implausible: Sequence[tuple[Item, int, tuple[int, int]]], twins: Sequence[tuple[int, ...]], items: Sequence[Item]
) -> Iterator[str]:
    """What was taken but is asked about.

    Args:
        implausible: items with a mass outside what is usual, with their row and that band in g.
        twins: rows that are the same throughout.
        items: all that came in: those of kind other meet hardly any need.
    """
    for item, row, (low, high) in implausible:
        yield _("row {row}, {item}: {mass} is unusual for its kind ({low} to {high}). Sure?").format(
            row=row, item=item.name, mass=mass_text(item.mass_g), low=mass_text(low), high=mass_text(high)
        )
    for rows in twins:
        listed = ", ".join(map(str, rows))
        yield _("rows {rows} are the same throughout; each is an item of its own. Meant so?").format(rows=listed)
    yield from _kindless([item for item in items if item.kind is Kind.OTHER])


def _kindless(items: Sequence[Item]) -> Iterator[str]:
    if not items:
        return
    named = ", ".join(_with_kind(item) for item in items[:MOST_NAMED])
    text = _("of kind other, so hardly any need counts on it: {named}{more}.").format(named=named, more=_more(items))
    yield from wrapped(text, WIDTH)
    kinds = ", ".join(kind.value for kind in Kind)
    yield from wrapped(_("Kinds for the column kind: {kinds}.").format(kinds=kinds), WIDTH)


def _more(names: Sequence[object]) -> str:
    n = len(names) - MOST_NAMED
    return ngettext("; and {n} more", "; and {n} more", n).format(n=n) if n > 0 else ""


def _with_kind(item: Item) -> str:
    """The item, and the kind that its name suggests."""
    name = plain(item.name)
    meant = next((kind for kind in Kind if kind is not Kind.OTHER and says(name, plain(kind.value))), None)
    return item.name if meant is None else _("{item} ({kind}?)").format(item=item.name, kind=meant.value)


def lost_line(file: str, lost: Sequence[tuple[str, str, str]]) -> str:
    """What a CSV file does not hold, the first few named."""
    named = "; ".join(", ".join(part for part in parts if part) for parts in lost[:MOST_NAMED])
    text = _("{file} has no columns for: {named}{more}. A backup holds everything.")
    return text.format(file=file, named=named, more=_more(lost))
