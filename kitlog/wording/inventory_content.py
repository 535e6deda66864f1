"""The inventory in words: what an insurer asks for, item by item, and what nobody has entered yet."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from datetime import datetime

from kitlog.kit.inventory import Inventory
from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS
from kitlog.wording.book_parts import (
    BookContent,
    BookEntry,
    Chapter,
    Fact,
    given,
    made_text,
    money_text,
    papers_line,
    photos_of,
)
from kitlog.wording.figures import day_text, number_text
from kitlog.wording.item_facts import figures, whereabouts
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import first_upper, word

MOST_NAMED = 10
"""So many items without a value or without a photo are named."""


@dataclass(frozen=True, slots=True)
class InventoryShown:
    """What of an inventory is shown: photos as pictures, the pilot's currency, papers whose bytes are missing."""

    photos: bool = True
    currency: str = ""
    lacking: Collection[str] = ()


def inventory_content(listed: Inventory, made_at: datetime, shown: InventoryShown) -> BookContent:
    """The words of an inventory.

    Args:
        listed: what.
        made_at: when it is made, aware.
        shown: what of it is shown.
    """
    chapters = [_sum(listed, shown), _items(_("Items"), listed.own, shown)]
    if listed.others:
        chapters.append(_items(_("Belongs to others"), listed.others, shown, _("not in the sum")))
    kept = _("list of {owner}").format(owner=listed.owner) if listed.owner else _("list of the owner")
    return BookContent(
        title=_("Inventory"),
        name=_("Flying kit"),
        about=first_upper(_("{kept}, {day}").format(kept=kept, day=day_text(listed.on))),
        made=made_text(made_at),
        chapters=(*(chapter for chapter in chapters if chapter.entries or chapter.facts), _claim()),
    )


def _sum(listed: Inventory, shown: InventoryShown) -> Chapter:
    count = ngettext("{n} item", "{n} items", len(listed.items)).format(n=number_text(len(listed.items)))
    known = len(listed.own) - len(listed.without_value)
    value = _("not known") if listed.value is None else money_text(listed.value, shown.currency)
    facts = (
        (_("Listed"), count),
        (_("Sum of the values"), _("{value}, of {n} with a value").format(value=value, n=number_text(known))),
    )
    return Chapter(_("Sum"), _("values as the owner entered them, for all pieces of a line"), facts, said=_gaps(listed))


def _gaps(listed: Inventory) -> tuple[str, ...]:
    """What is missing, so that it can be filled in before it is needed."""
    gaps = (
        (_("Without a value: {names}."), listed.without_value),
        (_("Without a serial number: {names}."), tuple(i for i in listed.own if not i.serial and i.value)),
        (_("Without a photo or bill: {names}."), tuple(i for i in listed.own if not i.papers)),
    )
    said = [text.format(names=_named(items)) for text, items in gaps if items]
    if listed.left_out:
        text = ngettext(
            "{n} retired or used-up item is not listed.",
            "{n} retired or used-up items are not listed.",
            listed.left_out,
        )
        said.append(text.format(n=listed.left_out))
    return tuple(said)


def _named(items: tuple[Item, ...]) -> str:
    names = ", ".join(item.name for item in items[:MOST_NAMED])
    more = len(items) - MOST_NAMED
    return names + (ngettext("; and {n} more", "; and {n} more", more).format(n=more) if more > 0 else "")


def _items(title: str, items: tuple[Item, ...], shown: InventoryShown, remark: str = "") -> Chapter:
    return Chapter(title, remark, entries=tuple(_entry(item, shown) for item in items))


def _entry(item: Item, shown: InventoryShown) -> BookEntry:
    name = item.name if item.quantity == 1 else _("{name}, {n} pieces").format(name=item.name, n=item.quantity)
    value = "" if item.value is None else money_text(item.value, shown.currency)
    photos = photos_of(item.papers, shown.lacking) if shown.photos else ()
    return BookEntry(name, "", value, tuple(_said(item, shown)), photos=photos)


def _said(item: Item, shown: InventoryShown) -> Iterator[str]:
    made = " ".join(part for part in (item.maker, item.model) if part)
    value = _("value not entered") if item.value is None else ""
    parts = (word(item.kind.value), made, item.colour, _serial(item), value)
    yield first_upper(", ".join(part for part in parts if part))
    facts: tuple[Fact, ...] = given(*_days(item), *figures(item), *whereabouts(item))
    if facts:
        yield "; ".join(f"{label}: {figure}" for label, figure in facts)
    papers = papers_line(item.papers, shown.lacking)
    if papers:
        yield first_upper(papers)


def _serial(item: Item) -> str:
    """The serial number; that there is none on record is said where one is to be expected."""
    if item.serial:
        return _("serial number {serial}").format(serial=item.serial)
    return _("serial number not on record") if item.value is not None or item.kind in SET_KINDS else ""


def _days(item: Item) -> Iterator[Fact]:
    for label, day in (
        (_("Made on"), item.made_on),
        (_("Bought on"), item.bought_on),
        (_("First used on"), item.first_used_on),
    ):
        yield label, day_text(day) if day else ""


def _claim() -> Chapter:
    asked = (_("Policy and claim number"), _("What happened, where and when"), _("Place, day and signature"))
    return Chapter(_("For the claim"), _("to be filled in by hand"), to_write=asked)
