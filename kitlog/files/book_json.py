"""The service book of one item, and the inventory, as JSON."""

from collections.abc import Collection
from typing import Any

from kitlog.files.due_json import due_json
from kitlog.kit.inventory import Inventory
from kitlog.kit.item_book import Entry, ItemBook
from kitlog.kit.service import Event


def book_json(book: ItemBook, lacking: Collection[str] = ()) -> dict[str, Any]:
    """All that is on record about one item; names and units of the models.

    Args:
        book: what is on record.
        lacking: hashes of papers whose bytes are missing or damaged.
    """
    total, used = book.total, book.logged
    return {
        "item": book.item.model_dump(mode="json"),
        "judged_on": str(book.on),
        "owner": book.owner,
        "fitted_to": book.host or None,
        "carries": list(book.guests),
        "airtime_h": total.airtime_h,
        "airtime_known": total.hours_known,
        "launches": total.launches,
        "launches_known": total.launches_known,
        "ground_h": total.ground_h,
        "log": {
            "begins_on": None if book.log_begins_on is None else str(book.log_begins_on),
            "flights": book.flights,
            "from_recordings": book.recorded,
            "airtime_h": used.airtime_h,
            "launches": used.launches,
            "ground_h": used.ground_h,
            "years": [
                {
                    "year": year.year,
                    "flights": year.flights,
                    "shared_totals": year.shared,
                    "airtime_h": year.used.airtime_h,
                    "launches": year.used.launches,
                    "ground_h": year.used.ground_h,
                }
                for year in book.years
            ],
        },
        "rules": [
            judged.rule.model_dump(mode="json") | {"judged": due_json(book.item, judged.due)} for judged in book.rules
        ],
        "history": [_entry(entry) for entry in book.history],
        "papers_missing": sorted(lacking),
    }


def _entry(entry: Entry) -> dict[str, Any]:
    what = "event" if isinstance(entry.what, Event) else "record"
    return {
        "what": what,
        "on": str(entry.on),
        "struck": entry.struck,
        "airtime_h": entry.hours,
        "airtime_by_log": entry.by_log and entry.hours is not None,
        what: entry.what.model_dump(mode="json"),
    }


def inventory_json(listed: Inventory, currency: str = "", lacking: Collection[str] = ()) -> dict[str, Any]:
    """The inventory; the sum is of the pilot's own things that have a value, None where none has.

    Args:
        listed: what.
        currency: of the values, as the pilot named it.
        lacking: hashes of papers whose bytes are missing or damaged.
    """
    return {
        "listed_on": str(listed.on),
        "owner": listed.owner,
        "currency": currency,
        "value": listed.value,
        "without_value": [item.name for item in listed.without_value],
        "left_out": listed.left_out,
        "items": [item.model_dump(mode="json") for item in listed.own],
        "of_others": [item.model_dump(mode="json") for item in listed.others],
        "papers_missing": sorted(lacking),
    }
