"""How an assessment grows with the kit. A ratio of two timings of the same plan in one run."""

from dataclasses import replace
from time import process_time

import pytest
from scenario import EVENING, HISTORY, KIT, LIBRARY, O2

from kitlog.kit.item import Item
from kitlog.packing.assess import assess
from kitlog.packing.kit import Kit

MOST_RATIO = 12
"""Ten times the items may take ten times as long, and a little for what two timings differ by."""


def kit_of(count: int) -> Kit:
    """The invented kit, and copies of its items and rules up to so many; no copy is fitted to anything."""
    items, rules = list(KIT.items), list(KIT.rules)
    for number in range(count - len(items)):
        like = KIT.items[number % len(KIT.items)]
        new = {"id": f"copy{number}", "name": f"{like.name} {number}", "fitted_to": None}
        items.append(Item.model_validate({**like.model_dump(), **new}))
        own = [rule for rule in KIT.rules if rule.item_id == like.id]
        rules += [rule.model_copy(update={"id": f"{rule.id}-{number}", "item_id": new["id"]}) for rule in own]
    return replace(KIT, items=tuple(items[:count]), rules=tuple(rules))


def best_of(times: int, kit: Kit) -> float:
    taken = []
    for _ in range(times):
        start = process_time()
        assess(O2, kit, LIBRARY, HISTORY, EVENING)
        taken.append(process_time() - start)
    return min(taken)


@pytest.mark.bench
def test_ten_times_the_kit_takes_about_ten_times_as_long() -> None:
    few_s, many_s = best_of(5, kit_of(100)), best_of(3, kit_of(1_000))
    print(f"\n100 items {few_s * 1e3:.0f} ms, 1,000 items {many_s * 1e3:.0f} ms, {many_s / few_s:.1f} times")  # noqa: T201  # the figure is the point
    assert many_s / few_s <= MOST_RATIO
