"""What an open, recommended or unrecorded service of something that goes means for an outing."""

from typing import Any

import pytest
from scenario import judged, of_code, stops, the
from small_kit import NEW, item, other, outing, plus

from kitlog.budget.result import Finding, State
from kitlog.kit.item import Item
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.outing.outing import Outing
from kitlog.packing.kit import History, Kit

DAY = outing()


def rule(item_id: str = "whistle", grounds: str = "no", **fields: Any) -> ServiceRule:
    return ServiceRule.model_validate(
        {"id": f"{item_id} rule", "item_id": item_id, "rule": "check"} | fields | {"grounds": grounds}
    )


def record(day: str, item_id: str = "whistle") -> ServiceRecord:
    return ServiceRecord.model_validate(
        {"id": f"{item_id} {day}", "item_id": item_id, "rules": [f"{item_id} rule"], "done_on": day}
    )


def found(
    service_rule: ServiceRule, *records: ServiceRecord, plan: Outing = DAY, kit: Kit | None = None
) -> list[Finding]:
    whole = kit or plus()
    assessment = judged(plan, Kit(whole.pilot, whole.items, (service_rule,)), History(records=records))
    codes = {"service.overdue", "service.recommended_passed", "service.no_record"}
    return [finding for finding in assessment.findings if finding.code in codes]


class TestStates:
    @pytest.mark.parametrize(
        ("grounds", "demanded", "state"),
        [
            ("yes", [], State.STOP),
            ("by law", [], State.LOOK),
            ("by law", ["law"], State.STOP),
            ("by law", ["school"], State.STOP),
            ("by law", ["event"], State.STOP),
            ("no", [], State.LOOK),
            ("no", ["law", "school", "event"], State.LOOK),
        ],
    )
    def test_overdue(self, grounds: str, demanded: list[str], state: State) -> None:
        """The harness goes whatever its service: the set is chosen, not picked."""
        plan = outing(demanded=demanded, set={"harness": "harness"})
        (finding,) = found(rule("harness", grounds, due_on="2026-05-08"), plan=plan)
        assert (finding.code, finding.state, finding.figure) == ("service.overdue", state, -1)

    @pytest.mark.parametrize("grounds", ["yes", "by law", "no"])
    def test_no_record_is_not_known_and_never_a_stop(self, grounds: str) -> None:
        (finding,) = found(rule("harness", grounds, months=12), plan=outing(demanded=["law"]))
        assert (finding.code, finding.state) == ("service.no_record", State.NOT_KNOWN)

    @pytest.mark.parametrize("due_on", ["2026-05-09", "2026-05-20", "2027-05-09"])
    def test_due_soon_and_in_date_are_no_finding(self, due_on: str) -> None:
        assert not found(rule("harness", "yes", due_on=due_on))

    def test_recommended_date_passed_is_a_look(self) -> None:
        (finding,) = found(rule(months=12, recommended_months=6), record("2025-10-01"))
        assert (finding.code, finding.state) == ("service.recommended_passed", State.LOOK)

    def test_it_stays_a_look_when_the_due_date_comes_near(self) -> None:
        """Eleven and a half months after: due soon, and recommended long ago."""
        (finding,) = found(rule(months=12, recommended_months=6), record("2025-05-25"))
        assert (finding.code, finding.state) == ("service.recommended_passed", State.LOOK)

    def test_on_the_recommended_date_it_is_still_in_date(self) -> None:
        assert not found(rule(months=12, recommended_months=6), record("2025-11-09"))

    def test_what_does_not_apply_is_no_finding(self) -> None:
        assert not found(rule("harness", "yes", months=12, applies=False))

    def test_what_stays_at_home_is_no_finding(self) -> None:
        assert not found(rule("beacon", "yes", due_on="2026-05-01"))

    def test_what_stays_in_the_car_is_no_finding(self) -> None:
        in_car = outing(pinned=[{"item": "whistle", "zone": "left in the car"}])
        assert not found(rule(due_on="2026-05-01"), plan=in_car)


class TestSeveralDays:
    TRIP = outing(last_day="2026-05-12", set={"harness": "harness"})

    def test_due_on_the_second_day_is_overdue_on_the_last(self) -> None:
        (finding,) = found(rule("harness", "yes", due_on="2026-05-10"), plan=self.TRIP)
        assert (finding.state, finding.figure) == (State.STOP, -2)

    def test_due_on_the_last_day_is_still_in_date(self) -> None:
        assert not found(rule("harness", "yes", due_on="2026-05-12"), plan=self.TRIP)

    def test_a_service_on_the_way_does_not_open_the_first_day(self) -> None:
        """Overdue on the first day, recorded on the second: it flies the first day open."""
        (finding,) = found(
            rule("harness", "yes", months=1),
            *[record(d, "harness") for d in ("2026-04-01", "2026-05-10")],
            plan=self.TRIP,
        )
        assert finding.state is State.STOP


class TestRemedies:
    def remedies(self, *more: Item, of: str = "whistle", grounds: str = "no", **fields: Any) -> list[tuple[str, ...]]:
        plan = outing(**fields)
        (finding,) = found(rule(of, grounds, due_on="2026-05-01"), plan=plan, kit=plus(*more))
        return [(remedy.code, *remedy.items) for remedy in finding.remedies]

    def test_record_it(self) -> None:
        assert self.remedies() == [("record_service", "whistle")]

    def test_swap_for_a_spare(self) -> None:
        spare = item("spare whistle", "signal", 300)
        assert ("swap", "whistle", "spare whistle") in self.remedies(spare, pinned=["whistle"])

    def test_a_spare_on_the_list_is_no_spare(self) -> None:
        spare = item("spare whistle", "signal", 300)
        assert self.remedies(spare, pinned=["whistle", "spare whistle"]) == [("record_service", "whistle")]

    def test_a_spare_must_do_all_that_the_first_does(self) -> None:
        spare = item("signal mirror", "signal", 30)
        assert self.remedies(spare, pinned=["whistle"]) == [("record_service", "whistle")]

    def test_a_spare_must_have_the_pieces(self) -> None:
        single, pair = item("carabiner", "carabiner", 60), item("pair", "carabiner", 60, quantity=2)
        assert not [r for r in self.remedies(single, of="carabiners", pinned=["carabiners"]) if r[0] == "swap"]
        assert ("swap", "carabiners", "pair") in self.remedies(pair, of="carabiners", pinned=["carabiners"])

    def test_a_pair_is_never_broken_for_a_swap(self) -> None:
        harness = item("second harness", "harness", 4_000)
        pair = item("pair", "carabiner", 60, quantity=2, fitted_to="second harness")
        offered = self.remedies(harness, pair, of="carabiners", pinned=["carabiners"], set={"harness": "harness"})
        assert offered == [("record_service", "carabiners")]

    def test_what_nothing_needs_can_stay(self) -> None:
        drone = item("drone", "other", 500)
        assert ("leave_at_home", "drone") in self.remedies(drone, of="drone", grounds="yes", pinned=["drone"])

    @pytest.mark.parametrize("of", ["beacon", "whistle"])
    def test_last_resort_is_never_left(self, of: str) -> None:
        assert not [r for r in self.remedies(of=of, pinned=[of]) if r[0] == "leave_at_home"]

    def test_nothing_is_left_that_something_needs(self) -> None:
        assert not [r for r in self.remedies(of="phone", pinned=["phone"]) if r[0] == "leave_at_home"]

    def test_the_set_is_swapped_only_to_close_a_stop(self) -> None:
        second = item("second wing", "wing", 4_000, wing={"min_g": 80_000, "max_g": 100_000})
        chosen = {"set": {"wing": "wing"}}
        assert ("swap", "wing", "second wing") in self.remedies(second, of="wing", grounds="yes", **chosen)
        assert self.remedies(second, of="wing", grounds="by law", **chosen) == [("record_service", "wing")]

    def test_a_swap_of_the_set_that_opens_another_stop_is_not_offered(self) -> None:
        small = item("small wing", "wing", 4_000, wing={"min_g": 50_000, "max_g": 70_000})
        offered = self.remedies(small, of="wing", grounds="yes", set={"wing": "wing"})
        assert offered == [("record_service", "wing")]

    def test_a_reserve_is_swapped_only_within_its_harness(self) -> None:
        free = item("second reserve", "reserve", 1_400, reserve={"max_g": 110_000})
        chosen = {"set": {"reserve": "reserve"}}
        assert self.remedies(free, of="reserve", grounds="yes", **chosen) == [("record_service", "reserve")]
        fitted = other(free, fitted_to="harness")
        offered = self.remedies(fitted, of="reserve", grounds="yes", left_out=["second reserve"], **chosen)
        assert ("swap", "reserve", "second reserve") in offered


def test_an_event_stays_open_until_a_record_follows() -> None:
    blow = Event.model_validate({"id": "e", "item_id": "helmet", "on": "2026-04-18", "kind": "blow"})
    knocked = rule("helmet", "yes", events=("blow",))
    kit = Kit(plus().pilot, plus().items, (knocked,))
    plan = outing(set={"helmet": "helmet"})
    assert stops(judged(plan, kit, History(events=(blow,)))) == {"service.overdue:helmet:check"}
    seen = History(events=(blow,), records=(record("2026-04-20", "helmet"),))
    assert not stops(judged(plan, kit, seen))


def test_a_grounded_helmet_that_is_not_chosen_is_missing() -> None:
    knocked = rule("helmet", "yes", due_on="2026-05-01")
    assessment = judged(outing(), Kit(plus().pilot, plus().items, (knocked,)), NEW)
    finding = the(assessment, "need.missing", "helmet")
    assert (finding.state, finding.facts["reason"]) == (State.STOP, "stop open")
    assert [remedy.code for remedy in finding.remedies] == ["close_service"]


def test_each_rule_of_an_item_has_its_own_finding() -> None:
    rules = tuple(
        ServiceRule.model_validate({"id": name, "item_id": "harness", "rule": name, "due_on": "2026-05-01"})
        for name in ("straps", "protector")
    )
    assessment = judged(outing(), Kit(plus().pilot, plus().items, rules), NEW)
    assert {f.subject for f in of_code(assessment, "service.overdue")} == {"harness:straps", "harness:protector"}


def test_nothing_is_known_of_a_set_without_rules() -> None:
    kit = plus()
    (finding,) = of_code(judged(DAY, Kit(kit.pilot, kit.items)), "service.no_rules")
    assert finding.state is State.NOT_KNOWN
    assert {the_kind(kit, name) for name in finding.items} == {"wing", "harness", "reserve"}


def the_kind(kit: Kit, item_id: str) -> str:
    return next(item.kind.value for item in kit.items if item.id == item_id)
