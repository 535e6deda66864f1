"""A remedy is offered only if, taken, it brings no stop and no more to look at than it closes."""

from collections.abc import Iterable
from dataclasses import replace

import pytest
from scenario import LIBRARY, judged
from small_kit import NEW, WHOLE, item, outing, plus

from kitlog.budget.result import Finding, Remedy, State, Topic
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Assessment
from kitlog.packing.checked_remedies import with_checked_remedies

PLAN = outing(set={"wing": "wing"}, pinned=["chair"])
CHAIR = item("chair", "other", 4_000)
ITEMS = {one.id: one for one in (*WHOLE, CHAIR)}
STANDING = judged(PLAN, plus(CHAIR), NEW)

STAY = Remedy("leave_at_home", ("chair",), {"mass_g": 4_000})
OTHER_WING = Remedy("swap", ("wing", "chair"))
WEIGH = Remedy("weigh", ("chair",))


def finding(code: str, state: State, *remedies: Remedy) -> Finding:
    return Finding(code=code, topic=Topic.KIT, state=state, remedies=remedies)


def of(findings: Iterable[Finding]) -> Assessment:
    return replace(STANDING, findings=tuple(findings))


def offered(remedy: Remedy, before: dict[str, State], after: dict[str, State]) -> bool:
    plans: list[Outing] = []

    def judge(plan: Outing) -> Assessment:
        plans.append(plan)
        return of(finding(code, state) for code, state in after.items())

    standing = of([finding("asks", State.LOOK, remedy), *(finding(code, state) for code, state in before.items())])
    checked = with_checked_remedies(standing, judge, ITEMS, LIBRARY)
    assert all(plan != PLAN for plan in plans)
    return bool(checked[0].remedies)


STOP, LOOK, NOT_KNOWN = State.STOP, State.LOOK, State.NOT_KNOWN


@pytest.mark.parametrize(
    ("before", "after", "helps"),
    [
        ({}, {"asks": LOOK}, True),
        ({}, {}, True),
        ({}, {"asks": LOOK, "b": LOOK}, False),
        ({}, {"asks": LOOK, "b": NOT_KNOWN}, False),
        ({}, {"b": STOP}, False),
        ({"a": STOP}, {"b": STOP}, False),
        ({"a": STOP}, {"a": STOP}, True),
        ({"a": STOP}, {"b": LOOK, "c": LOOK, "d": LOOK}, True),
        ({"a": STOP, "b": LOOK}, {"a": STOP, "b": STOP}, False),
    ],
)
def test_what_helps(before: dict[str, State], after: dict[str, State], helps: bool) -> None:
    assert offered(STAY, before, after) is helps


@pytest.mark.parametrize(
    ("before", "after", "helps"),
    [
        ({"a": STOP}, {"a": STOP}, False),
        ({"a": STOP}, {}, True),
        ({"a": STOP}, {"b": NOT_KNOWN}, False),
        ({"a": STOP}, {"b": LOOK, "c": LOOK, "d": LOOK}, True),
        ({"a": STOP, "b": STOP}, {"c": STOP}, False),
    ],
)
def test_a_swap_of_the_set_must_close_a_stop_and_hide_nothing(
    before: dict[str, State], after: dict[str, State], helps: bool
) -> None:
    assert offered(OTHER_WING, before, after) is helps


def test_what_changes_nothing_that_goes_along_is_always_offered() -> None:
    assert offered(WEIGH, {}, {"b": STOP})
