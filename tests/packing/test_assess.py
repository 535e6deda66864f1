"""The assessment as a whole: what every assessment keeps to, the safety rules of the product, and edges."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from scenario import EVENING, KIT, LIBRARY, O1, O2, O3, changed, going, judged, missing, of_code, stops, the
from small_kit import NEW, PILOT, WHOLE, but, item, outing, plus
from strategies import items, plans

from kitlog.budget.result import SEVERITY, State, Topic
from kitlog.fault import InputFault
from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS, Kind, Zone
from kitlog.outing.needs import Strength
from kitlog.outing.outing import Outing
from kitlog.packing.assess import assess
from kitlog.packing.assessment import Assessment
from kitlog.packing.kit import History, Kit

ANY = settings(max_examples=50, deadline=None, suppress_health_check=[HealthCheck.too_slow])
Plan = tuple[Outing, Kit, History]

MAY_STOP = {
    "need.missing",
    "people.missing",
    "people.nobody_told",
    "service.overdue",
    "weight.takeoff_range",
    "weight.landing_range",
    "weight.harness",
    "weight.reserve",
    "power.caller",
    "power.phone_at_landing",
}
"""An essential need unmet (a contact and the phone's charge are such), an open stop rule in use, certified range, harness,
reserve without the wing, no caller alive, nobody told while alone. All else is a look."""


class TestAnyPlan:
    @ANY
    @given(plans())
    def test_is_assessed_or_refused_with_a_code(self, plan: Plan) -> None:
        outing, kit, history = plan
        try:
            assessment = judged(outing, kit, history)
        except InputFault as fault:
            assert fault.code in {"plug.twice", "id.unknown", "draw.shares"}  # noqa: PT017  # either is right
        else:
            self.keeps_its_word(assessment, kit)

    def keeps_its_word(self, assessment: Assessment, kit: Kit) -> None:
        states = [SEVERITY.index(finding.state) for finding in assessment.findings]
        assert states == sorted(states)
        keys = [finding.key for finding in assessment.findings]
        assert len(keys) == len(set(keys))
        assert {f.code for f in assessment.findings if f.state is State.STOP} <= MAY_STOP
        self.stops_are_essential(assessment)
        self.lines_are_whole(assessment, kit)
        self.sums_agree(assessment)

    def stops_are_essential(self, assessment: Assessment) -> None:
        strength = {one.need.id: one.strength for one in assessment.asked}
        for finding in assessment.findings:
            if finding.state is State.STOP and finding.code in {"need.missing", "people.missing"}:
                assert strength[finding.subject] is Strength.ESSENTIAL

    def lines_are_whole(self, assessment: Assessment, kit: Kit) -> None:
        by_id = {one.id: one for one in kit.items}
        listed = [line.item.id for line in assessment.lines]
        assert len(listed) == len(set(listed))
        pinned = {pin.item for pin in assessment.outing.pinned}
        for line in assessment.lines:
            assert line.item == by_id[line.item.id]
            assert line.item.usable
            assert 1 <= line.n <= line.item.quantity
            assert line.pinned or line.item.id not in assessment.outing.left_out
            if line.item.kind in SET_KINDS and line.item.id not in pinned:
                assert assessment.chosen[line.item.kind] == line.item
        assert set(assessment.stays_home) == {one.id for one in kit.items if one.usable} - set(listed)

    def sums_agree(self, assessment: Assessment) -> None:
        in_air = [line for line in assessment.lines if not line.in_car]
        own = sum(o.mass_g or 0 for o in assessment.outing.own_lines if o.zone is not Zone.LEFT_IN_CAR)
        carried = sum(line.item.mass_g * line.n if line.item.mass_g else 0 for line in in_air)
        water = sum(line.content_ml for line in in_air)
        assert sum(assessment.mass.by_zone.values()) == carried + water + own
        assert assessment.mass.known_landing_g <= assessment.mass.known_g
        up, down = assessment.mass.take_off_g, assessment.mass.landing_g
        assert (up is None) == (down is None) == bool(assessment.mass.unknown)
        if up is not None and down is not None:
            assert down <= up

    @ANY
    @given(plans())
    def test_is_the_same_twice(self, plan: Plan) -> None:
        try:
            assert judged(*plan) == judged(*plan)
        except InputFault as fault:
            assert fault.code  # noqa: PT017  # refused twice alike, by the first

    @ANY
    @given(plans(), st.data())
    def test_a_spare_that_is_not_chosen_never_adds_a_stop(self, plan: Plan, data: st.DataObject) -> None:
        outing, kit, history = plan
        spare = data.draw(items("spare", tuple(one.id for one in kit.items)))
        try:
            before = judged(outing, kit, history)
            after = judged(outing, replace(kit, items=(*kit.items, spare)), history)
        except InputFault:
            return
        if after.line("spare") is None:
            # a second wing makes the first one an open question, and a wing that calls for help waits with it
            waiting = {"power.caller"} if spare.kind in SET_KINDS else set()
            assert stops(after) - waiting <= stops(before)

    @ANY
    @given(plans(), st.permutations(list(range(12))))
    def test_the_order_of_the_kit_never_changes_the_stops(self, plan: Plan, order: list[int]) -> None:
        outing, kit, history = plan
        mixed = replace(kit, items=tuple(kit.items[n] for n in order if n < len(kit.items)))
        try:
            assert {f.code for f in judged(outing, kit, history).findings} == {
                f.code for f in judged(outing, mixed, history).findings
            }
        except InputFault as fault:
            assert fault.code  # noqa: PT017


class TestUnknownIsNeverGood:
    def test_an_empty_kit_misses_every_essential_need(self) -> None:
        assessment = judged(outing(), Kit(), NEW)
        essential = {a.need.id for a in assessment.asked if a.strength is Strength.ESSENTIAL and a.need.wants_item}
        assert {f.subject for f in of_code(assessment, "need.missing") if f.state is State.STOP} == essential
        assert the(assessment, "weight.takeoff_range").state is State.NOT_KNOWN
        assert the(assessment, "power.caller").state is State.STOP
        assert assessment.mass.take_off_g is None
        assert set(assessment.mass.unknown) == {"pilot", "wing", "harness"}
        assert not assessment.lines

    @pytest.mark.parametrize("plan", [O1, O2, O3], ids=lambda plan: plan.name)
    def test_an_empty_kit_on_the_days_of_the_example(self, plan: Outing) -> None:
        bare = changed(plan, set={}, pinned=[], left_out=[], uses=[], starts=[], plugs=None)
        assessment = judged(bare, Kit(), NEW)
        assert assessment.counts.stop > 10
        assert {f.code for f in assessment.findings if f.state is State.FINE} <= {"people.there", "people.told"}

    def test_nothing_is_counted_fine(self) -> None:
        assessment = judged(O1)
        counts = assessment.counts
        states = [finding.state for finding in assessment.findings]
        assert not hasattr(counts, "fine")
        assert counts.stop + counts.look + counts.not_known == len(states) - states.count(State.FINE)


class TestOverrides:
    STOP = "people.nobody_told"

    def overridden(self, **fields: Any) -> Assessment:
        override = {"finding": self.STOP, "reason": "told by radio", "at": EVENING} | fields
        return judged(changed(O2, overrides=[override]))

    def test_the_reason_stays_on_the_finding_and_it_stays_a_stop(self) -> None:
        finding = the(self.overridden(), self.STOP)
        assert (finding.state, finding.override) == (State.STOP, "told by radio")
        assert self.overridden().counts == judged(O2).counts

    def test_the_newest_reason_is_shown(self) -> None:
        two = [
            {"finding": self.STOP, "reason": reason, "at": EVENING + timedelta(minutes=minutes)}
            for reason, minutes in (("later", 5), ("earlier", 0))
        ]
        assert the(judged(changed(O2, overrides=two)), self.STOP).override == "later"

    def test_a_struck_reason_closes_nothing(self) -> None:
        assert the(self.overridden(struck_at=EVENING), self.STOP).override == ""

    def test_a_blank_reason_closes_nothing(self) -> None:
        assert the(self.overridden(reason="  "), self.STOP).override == ""

    def test_one_of_several_findings_of_a_code_is_meant(self) -> None:
        key = next(f.key for f in judged(O3).findings if f.code == "service.overdue" and f.state is State.STOP)
        override = {"finding": key, "reason": "borrowed one on site", "at": EVENING}
        closed = [f for f in judged(changed(O3, overrides=[override])).findings if f.override]
        assert [f.key for f in closed] == [key]


class TestNewcomer:
    """Eight things, a guess for each (design: a useful answer in the first five minutes)."""

    EIGHT = tuple(
        item(name, kind, mass_g, mass_source="guess")
        for name, kind, mass_g in (
            ("my wing", "wing", 5_000),
            ("my harness", "harness", 5_000),
            ("my reserve", "reserve", 1_500),
            ("my helmet", "helmet", 500),
            ("my phone", "phone", 200),
            ("my vario", "instrument", 150),
            ("my radio", "radio", 250),
            ("my water", "vessel", 1_500),
        )
    )
    PLAN = Outing.model_validate({"name": "first day", "flight_types": ["local thermals"], "first_day": "2026-05-09"})
    FIRST = judged(PLAN, Kit(items=EIGHT), NEW)

    def test_all_eight_go(self) -> None:
        assert going(self.FIRST) == {one.name for one in self.EIGHT}

    def test_the_stops_name_what_is_missing(self) -> None:
        labels = {str(f.facts["label"]) for f in self.FIRST.findings if f.state is State.STOP}
        assert {"pair of carabiners", "footwear, ankle high", "gloves", "contact named"} <= labels
        assert not labels & {"wing", "harness", "reserve", "helmet", "phone", "water", "radio"}
        codes = {f.code for f in self.FIRST.findings if f.state is State.STOP}
        assert codes <= {"need.missing", "people.missing"}

    def test_what_only_the_pilot_can_say_is_asked(self) -> None:
        asked = {q.id for q in self.FIRST.questions}
        assert {"condition.water", "condition.no signal", "condition.forest", "condition.airspace"} <= asked
        assert {f.code for f in self.FIRST.findings if f.state is State.NOT_KNOWN} >= {
            "weight.takeoff_range",
            "power.not_known",
            "power.no_phases",
            "water.not_known",
        }

    def test_each_figure_makes_it_sharper(self) -> None:
        weighed = judged(self.PLAN, Kit(PILOT, self.EIGHT), NEW)
        assert weighed.mass.take_off_g == 75_000 + sum(one.mass_g or 0 for one in self.EIGHT)
        ranged = [
            one
            if one.kind is not Kind.WING
            else Item.model_validate(one.model_dump() | {"wing": {"min_g": 80_000, "max_g": 100_000}})
            for one in self.EIGHT
        ]
        found = the(judged(self.PLAN, Kit(PILOT, tuple(ranged)), NEW), "weight.takeoff_range")
        assert found.state is State.FINE


class TestTandem:
    def test_needs_of_a_passenger(self) -> None:
        assessment = judged(outing(flight_types=["tandem"]), plus(), NEW)
        unmet = {one.asked.need.id for one in assessment.missing if one.state is State.STOP}
        assert {"tandem wing", "tandem reserve", "passenger harness", "spreader bars", "passenger helmet"} <= unmet

    def test_a_second_helmet_is_taken_along_when_pinned(self) -> None:
        kit = plus(item("second helmet", "helmet", 400))
        plan = outing(flight_types=["tandem"], set={"helmet": "helmet"})
        finding = the(judged(plan, kit, NEW), "need.missing", "passenger helmet")
        assert [(r.code, r.items) for r in finding.remedies] == [("take_along", ("second helmet",))]
        pinned = judged(changed(plan, pinned=["second helmet"]), kit, NEW)
        assert missing(pinned, "passenger helmet") is None


class TestNoCrash:
    @pytest.mark.parametrize(
        "plan",
        [
            outing(phases=[]),
            outing(phases=[{"name": "f", "way": "flight", "likely_h": 0}]),
            outing(phases=[{"name": "f", "way": "flight", "likely_h": 1}]),
            outing(people=[]),
            outing(last_day="2026-05-30"),
            outing(flight_types=[flight_type.name for flight_type in LIBRARY.flight_types]),
        ],
    )
    def test_sparse_and_crowded_plans(self, plan: Outing) -> None:
        for kit in (Kit(), plus(), KIT):
            assert judged(plan, kit, NEW).findings

    def test_items_without_any_figure(self) -> None:
        bare = tuple(Item(id=kind.value, name=kind.value, kind=kind) for kind in Kind)
        for flight_type in LIBRARY.flight_types:
            assessment = judged(outing(flight_types=[flight_type.name]), Kit(items=bare), NEW)
            assert assessment.mass.take_off_g is None

    def test_fitted_to_something_that_is_gone(self) -> None:
        assert judged(outing(), plus(item("strap", fitted_to="gone long ago")), NEW).lines

    def test_fitted_in_a_circle(self) -> None:
        circle = [item("a", fitted_to="b"), item("b", fitted_to="a")]
        assert {"a", "b"} <= going(judged(outing(pinned=["a"]), plus(*circle), NEW))


def test_every_topic_of_the_board_finds_its_findings() -> None:
    assessment = judged(O1)
    assert sum(len(assessment.of(topic)) for topic in Topic) == len(assessment.findings)


def test_the_clock_changes_nothing_but_answers_and_charges_on_hand() -> None:
    """A charge that was seen counts for a day; here none is on record."""
    items = [
        one.model_copy(update={"battery": one.battery.model_copy(update={"on_hand_pct": None, "on_hand_at": None})})
        if one.battery
        else one
        for one in KIT.items
    ]
    kit = replace(KIT, items=tuple(items))
    early, late = (assess(O1, kit, LIBRARY, History(), EVENING + timedelta(days=d)) for d in (0, 300))
    early_said, late_said = (
        [(one.code, one.state, one.subject, one.figure, one.margin) for one in said.findings] for said in (early, late)
    )
    assert early_said == late_said


def test_a_kit_that_is_whole_has_no_stop_on_a_ridge() -> None:
    assert stops(judged(outing(), plus(), NEW)) == set()
    assert stops(judged(outing(), but("speed bar"), NEW)) == set()
    assert len(WHOLE) == 19
