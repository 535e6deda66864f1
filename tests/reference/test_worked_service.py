"""Service of the worked example: states on each outing, and what is offered.

Source: the table of due states of the worked example, worked by hand from its dates. The intervals in it are makers' or
common practice (named in the rules themselves).
"""

from datetime import timedelta

import pytest
from scenario import EVENING, IDS, NAMES, O1, O2, O3, changed, judged, missing, of_code, service, stops, the

from kitlog.budget.result import State
from kitlog.kit.due import DueState
from kitlog.packing.assessment import Assessment
from kitlog.wording.remedies import remedy_text

J1, J2, J3 = judged(O1), judged(O2), judged(O3)
WITH_HELMET_A = changed(O1, set={**O1.set.model_dump(), "helmet": "Helmet A"}, pinned=[], left_out=[])


@pytest.mark.parametrize(
    ("assessment", "item", "rule", "state", "days"),
    [
        (J1, "Harness A", "harness.protector", State.LOOK, -60),
        (J1, "Reserve A", "reserve.repack", State.LOOK, 114),
        (J1, "Power bank", "any.capacity", State.LOOK, -19),
        (J1, "First aid kit", "firstaid.check", State.LOOK, -1),
        (J2, "Harness B", "harness.visual", State.NOT_KNOWN, None),
        (J2, "Reserve B", "reserve.repack", State.LOOK, 162),
        (J2, "Power bank", "any.capacity", State.LOOK, -62),
        (J2, "First aid kit", "firstaid.check", State.LOOK, -44),
        (J2, "Satellite messenger", "tracker.subscription", State.STOP, -6),
        (J3, "Wing A", "wing.full", State.LOOK, -108),
        (J3, "Harness A", "harness.protector", State.LOOK, -179),
        (J3, "Reserve A", "reserve.repack", State.LOOK, -5),
        (J3, "Carabiners A", "carabiner.age", State.LOOK, -82),
        (J3, "Life vest", "buoyancy.service", State.STOP, -63),
        (J3, "First aid kit", "firstaid.check", State.LOOK, -120),
        (J3, "Satellite messenger", "tracker.subscription", State.STOP, -82),
    ],
)
def test_what_is_open(assessment: Assessment, item: str, rule: str, state: State, days: int | None) -> None:
    finding = service(assessment, item, rule)
    assert finding is not None
    assert finding.state is state
    assert finding.figure == days


@pytest.mark.parametrize(
    ("assessment", "count"),
    [(J1, 4), (J2, 5), (J3, 7)],
)
def test_nothing_else_is_said_about_service(assessment: Assessment, count: int) -> None:
    assert sum(finding.code.startswith("service.") for finding in assessment.findings) == count


@pytest.mark.parametrize(
    ("item", "rule"),
    [("Wing A", "wing.full"), ("Carabiners A", "carabiner.age"), ("Speed bar A", "speed.line")],
)
def test_due_soon_is_no_finding_of_an_outing(item: str, rule: str) -> None:
    assert service(J1, item, rule) is None


def test_stops_of_the_three_days() -> None:
    lapsed = f"service.overdue:{IDS['Satellite messenger']}:tracker.subscription"
    vest = f"service.overdue:{IDS['Life vest']}:buoyancy.service"
    assert stops(J1) == set()
    assert stops(J2) == {lapsed, "people.nobody_told"}
    assert stops(J3) == {lapsed, vest}


def test_the_messenger_can_stay_at_home_where_nothing_needs_it() -> None:
    finding = service(J3, "Satellite messenger", "tracker.subscription")
    assert finding is not None
    assert "Leave Satellite messenger at home" in [remedy_text(remedy, NAMES) for remedy in finding.remedies]


def test_the_messenger_cannot_stay_at_home_where_alone_without_signal() -> None:
    finding = service(J2, "Satellite messenger", "tracker.subscription")
    assert finding is not None
    assert {remedy.code for remedy in finding.remedies} == {"record_service"}


def test_without_the_messenger_the_stop_of_the_course_is_gone_and_none_comes() -> None:
    left = judged(changed(O3, left_out=(*O3.left_out, "Satellite messenger"), pinned=_but(O3.pinned)))
    assert stops(left) == stops(J3) - {f"service.overdue:{IDS['Satellite messenger']}:tracker.subscription"}


def _but(pinned: tuple[object, ...]) -> list[object]:
    return [pin for pin in pinned if getattr(pin, "item", None) != IDS["Satellite messenger"]]


def test_the_life_vest_is_a_stop_that_nothing_in_the_kit_mends() -> None:
    finding = service(J3, "Life vest", "buoyancy.service")
    assert finding is not None
    assert {remedy.code for remedy in finding.remedies} == {"record_service"}


def test_the_knocked_helmet_is_a_stop_and_the_other_one_the_remedy() -> None:
    assessment = judged(WITH_HELMET_A)
    finding = service(assessment, "Helmet A", "helmet.event")
    assert finding is not None
    assert finding.state is State.STOP
    assert "Swap for Helmet B" in [remedy_text(remedy, NAMES) for remedy in finding.remedies]


def test_the_knocked_helmet_is_never_taken_by_itself() -> None:
    unchosen = changed(O1, set={"wing": "Wing A", "harness": "Harness A"}, pinned=[], left_out=[])
    assert {line.item.name for line in judged(unchosen).lines if line.item.kind == "helmet"} == {"Helmet B"}


def test_a_course_or_school_that_demands_it_makes_the_overdue_reserve_a_stop() -> None:
    demanded = judged(changed(O3, demanded=["school"]))
    for item, rule in (("Reserve A", "reserve.repack"), ("Wing A", "wing.full"), ("Carabiners A", "carabiner.age")):
        finding = service(demanded, item, rule)
        assert finding is not None
        assert finding.state is State.STOP
    for item, rule in (("Harness A", "harness.protector"), ("First aid kit", "firstaid.check")):
        finding = service(demanded, item, rule)
        assert finding is not None
        assert finding.state is State.LOOK


def test_what_answered_the_larch_is_closed() -> None:
    assert service(J1, "Wing A", "wing.event") is None
    assert service(J1, "Harness A", "harness.event") is None


def test_a_state_belongs_to_a_date() -> None:
    the_day_before = changed(O1, first_day=EVENING.date(), last_day=EVENING.date())
    assert service(judged(the_day_before), "First aid kit", "firstaid.check") is None
    assert service(J1, "First aid kit", "firstaid.check") is not None
    on_the_last_day = changed(O2, first_day="2026-06-15", last_day="2026-06-15")
    assert service(judged(on_the_last_day), "Satellite messenger", "tracker.subscription") is None


def test_the_last_day_of_the_outing_governs() -> None:
    over_the_date = changed(O2, first_day="2026-06-15", last_day="2026-06-16")
    finding = service(judged(over_the_date), "Satellite messenger", "tracker.subscription")
    assert finding is not None
    assert (finding.state, finding.figure) == (State.STOP, -1)
    assert judged(over_the_date).judged_on == O2.last_day.replace(day=16)


def test_the_due_state_is_on_the_finding() -> None:
    finding = service(J1, "Reserve A", "reserve.repack")
    assert finding is not None
    due = finding.facts["due"]
    assert getattr(due, "state", None) is DueState.RECOMMENDED_PASSED
    assert getattr(due, "due_on", None) == O1.first_day + timedelta(days=114)


def test_nobody_told_is_a_stop_only_when_alone() -> None:
    assert the(J1, "people.nobody_told").state is State.LOOK
    assert the(J2, "people.nobody_told").state is State.STOP
    assert the(J3, "people.nobody_told").state is State.LOOK


def test_whether_the_protector_floats_is_a_question_of_the_course() -> None:
    asked = the(J3, "check.not_answered", "floating position")
    assert asked.state is State.NOT_KNOWN
    assert missing(J3, "floating position") is None
    assert not of_code(J1, "check.not_answered", "floating position")
