"""What is written reads back as it was: over arbitrary items and rules."""

import string
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st
from kit_tables import DAY, GRAMS, LINE, NAME, NOTE, ids, kits, maybe, number

from kitlog.files.csv_kit import read_kit
from kitlog.files.csv_kit_export import write_kit
from kitlog.files.csv_service import counts_ground_handling, read_service
from kitlog.files.csv_service_export import write_service
from kitlog.kit.facets import Harness
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.kit.service import CountsFrom, Grounds, Result, ServiceRecord, ServiceRule
from kitlog.units.days import LAST_DAY


@given(kits())
@settings(max_examples=300)
def test_items_read_back_as_they_were_written(items: list[Item]) -> None:
    export = write_kit(items)
    assert export.lost == ()
    assert read_kit(export.data, "kit.csv", (), ids()).items == tuple(items)


@given(kits())
def test_a_second_export_is_the_same_file(items: list[Item]) -> None:
    data = write_kit(items).data
    assert write_kit(read_kit(data, "kit.csv", (), ids()).items).data == data


@given(GRAMS)
def test_every_whole_gram_survives_kilograms(grams: int) -> None:
    item = Item(id="1", name="X", harness=Harness(max_g=grams))
    assert read_kit(write_kit([item]).data, "kit.csv", (), ids()).items == (item,)


LIMITS = {
    "months": st.integers(1, 1_200),
    "hours": number(0.001, 100_000),
    "launches": st.integers(1, 1_000_000),
    "due_on": DAY,
    "events": st.lists(NAME, min_size=1, max_size=3).map(tuple),
}
RULE = {
    "event_days": st.integers(0, 3_650),
    "counts_from": st.sampled_from(CountsFrom),
    "lead_days": st.integers(0, 3_650),
    "warn_days": st.integers(0, 3_650),
    "grounds": st.sampled_from(Grounds),
    "source": LINE,
}
LAST = st.fixed_dictionaries(
    {"done_on": DAY},
    optional={
        "hours": number(0, 1_000_000),
        "launches": st.integers(0, 10_000_000),
        "who": LINE,
        "result": st.sampled_from(Result),
        "cost": number(0, 1e9),
        "currency": LINE,
        "remarks": NOTE,
        "next_within_h": number(0.001, 100_000),
    },
)
ITEMS = (
    Item(id="w", name="'=Wing+", kind=Kind.WING),
    Item(id="r", name="Reserve, red", kind=Kind.RESERVE),
)


@st.composite
def books(draw: st.DrawFn) -> tuple[list[ServiceRule], list[ServiceRecord]]:
    """Rules with ids in the order in which a reader gives them, each name once for an item, some with a record."""
    rules: list[ServiceRule] = []
    records: list[ServiceRecord] = []
    new_id = ids()
    names = draw(st.lists(NAME.map(str.strip), max_size=4, unique_by=lambda name: Item(id="x", name=name).name))
    for name in names:
        item = draw(st.sampled_from(ITEMS))
        needed = draw(st.sampled_from(sorted(LIMITS)))
        rest = {name: strategy for name, strategy in (LIMITS | RULE).items() if name != needed}
        fields: dict[str, Any] = draw(st.fixed_dictionaries({needed: LIMITS[needed]}, optional=rest))
        if "months" in fields and draw(st.booleans()):
            fields["recommended_months"] = draw(st.integers(1, fields["months"]))
        handling = counts_ground_handling(item.kind, fields.get("hours"))
        rules.append(ServiceRule(id=new_id(), item_id=item.id, rule=name, ground_handling=handling, **fields))
        last = draw(maybe(LAST))
        if last:
            if draw(st.booleans()):
                last["next_due_on"] = draw(st.dates(last["done_on"], LAST_DAY))
            records.append(ServiceRecord(id=new_id(), item_id=item.id, rules=(rules[-1].id,), **last))
    return rules, records


@given(books())
@settings(max_examples=200)
def test_rules_and_records_read_back_as_they_were_written(
    book: tuple[list[ServiceRule], list[ServiceRecord]],
) -> None:
    rules, records = book
    export = write_service(ITEMS, rules, records)
    assert export.lost == ()
    table = read_service(export.data, "service.csv", ITEMS, ids())
    assert (table.rules, table.records) == (tuple(rules), tuple(records))


def test_all_printable_ascii_survives_in_a_note() -> None:
    item = Item(id="1", name="X", notes=string.printable.replace("\r", "").replace("\x0b", "").replace("\x0c", ""))
    assert read_kit(write_kit([item]).data, "kit.csv", (), ids()).items == (item,)
