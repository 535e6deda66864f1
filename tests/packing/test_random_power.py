"""Whatever is odd about a kit: what is offered can be said and taken, brings no stop, and keeps what it promises."""

import sys
from pathlib import Path
from random import Random

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scenario import LIBRARY, judged, stops
from small_kit import NEW

from kitlog.budget.power.changes.weigh import Weighed
from kitlog.fault import InputFault
from kitlog.packing.assessment import Assessment
from kitlog.packing.kit import Kit
from kitlog.packing.lightest import my_lightest_bank
from kitlog.packing.power_changes import weighed_changes
from kitlog.packing.power_inverse import longest_retrieve, lowest_start_pct, smallest_bank_wh
from kitlog.packing.power_remedies import is_computed, power_remedy
from kitlog.packing.remedied import remedied
from kitlog.wording.findings import say
from kitlog.wording.remedies import remedy_text

sys.path.insert(0, str(Path(__file__).parent))  # importmode=importlib finds no neighbours
from random_power import random_kit, random_outing

picks = st.integers(0, 10**9).map(Random)


def standing(pick: Random) -> tuple[Assessment, Kit]:
    """A random outing; one whose plan or carried banks contradict themselves is another matter."""
    kit = random_kit(pick)
    try:
        return judged(random_outing(pick, kit), kit, NEW), kit
    except InputFault as fault:
        assume(fault.code != "cell.gives_more")
        raise


@settings(max_examples=40, deadline=None)
@given(picks)
def test_what_is_offered_can_be_said_and_taken_and_brings_no_stop(pick: Random) -> None:
    before, kit = standing(pick)
    items = {one.id: one for one in kit.items}
    for finding in before.findings:
        assert say(finding, {}).title
        for remedy in finding.remedies:
            assert "{" not in remedy_text(remedy, {})
            plan = remedied(before, remedy, items, LIBRARY) if is_computed(remedy) else None
            assert plan is None or stops(judged(plan, kit, NEW)) <= stops(before)


@settings(max_examples=40, deadline=None)
@given(picks)
def test_what_is_run_is_what_is_planned(pick: Random) -> None:
    before, kit = standing(pick)
    items = {one.id: one for one in kit.items}
    for one in weighed_changes(before, kit.items, LIBRARY):
        plan = remedied(before, power_remedy(one), items, LIBRARY)
        if plan is not None and not before.power.unplugged:
            assert_kept(one, judged(plan, kit, NEW))


def assert_kept(one: Weighed, after: Assessment) -> None:
    for case in ("likely", "high"):
        day = getattr(after.power, case)
        for device, gain in one.devices.items():
            found, fare = day.devices.get(device) if day else None, getattr(gain, case)
            if found is None:  # it draws nothing and no longer hangs on a bank that stays at home: it has no part
                assert fare.first_off_h is None
                continue
            assert found.first_off_h == pytest.approx(fare.first_off_h)
            assert found.soc_end == pytest.approx(fare.soc_end, abs=1e-6)


@settings(max_examples=25, deadline=None)
@given(picks)
def test_every_question_has_an_answer(pick: Random) -> None:
    before, kit = standing(pick)
    my_lightest_bank(before, kit.items, LIBRARY)
    longest_retrieve(before, 10)
    day = before.power.planned
    for device in day.devices[:2] if day else ():
        lowest_start_pct(before, kit.items, device.id)
    for bank in day.banks[:1] if day else ():
        smallest_bank_wh(before, kit.items, bank.id)
