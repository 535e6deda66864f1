import pytest
from hypothesis import given
from hypothesis import strategies as st
from scenario import going, judged, meeting, missing, of_code, stops, the
from small_kit import NEW, PILOT, RESERVE, WHOLE, WING, but, item, other, outing, plus

from kitlog.budget.result import State
from kitlog.kit.item import Item
from kitlog.kit.kinds import Zone
from kitlog.kit.service import Event, Grounds, ServiceRule
from kitlog.outing.needs import Strength
from kitlog.packing.assessment import Assessment
from kitlog.packing.kit import History, Kit


def line_n(assessment: Assessment, name: str) -> int:
    line = assessment.line(name)
    return line.n if line else 0


def grounded(item_id: str, grounds: Grounds = Grounds.YES) -> tuple[ServiceRule, Event]:
    rule = ServiceRule(id="r", item_id=item_id, rule="check", events=("blow",), grounds=grounds)
    return rule, Event.model_validate({"id": "e", "item_id": item_id, "on": "2026-05-01", "kind": "blow"})


class TestOneOfSeveral:
    def test_the_lightest_goes(self) -> None:
        kit = plus(item("light phone", "phone", 150), item("heavy phone", "phone", 300))
        assert meeting(judged(outing(), kit, NEW), "phone") == {"light phone"}

    def test_a_mass_that_is_not_known_comes_last(self) -> None:
        kit = plus(item("unweighed phone", "phone", None))
        assert meeting(judged(outing(), kit, NEW), "phone") == {"phone"}

    def test_in_date_goes_before_overdue(self) -> None:
        rule = ServiceRule.model_validate({"id": "r", "item_id": "light phone", "rule": "x", "due_on": "2026-05-01"})
        kit = plus(item("light phone", "phone", 150), rules=(rule,))
        assert meeting(judged(outing(), kit, NEW), "phone") == {"phone"}

    def test_a_grounded_one_never_goes_by_itself(self) -> None:
        rule, event = grounded("light phone")
        kit = plus(item("light phone", "phone", 150), rules=(rule,))
        assert meeting(judged(outing(), kit, History(events=(event,))), "phone") == {"phone"}

    def test_by_law_grounds_only_where_it_is_demanded(self) -> None:
        rule, event = grounded("phone", Grounds.BY_LAW)
        kit, history = plus(rules=(rule,)), History(events=(event,))
        assert missing(judged(outing(), kit, history), "phone") is None
        found = missing(judged(outing(demanded=["law"]), kit, history), "phone")
        assert found is not None
        assert (found.state, found.reason) == (State.STOP, "stop open")

    def test_each_one_that_stays_is_told_with_its_reason(self) -> None:
        kit = plus(
            item("heavy phone", "phone", 300),
            item("lost phone", "phone", 100, state="lost"),
            item("used phone", "phone", 100, quantity=0),
            item("car phone", "phone", 100, zone="left in the car"),
            item("left phone", "phone", 100),
        )
        told = {one.item.name: one.reason for one in judged(outing(left_out=["left phone"]), kit, NEW).passed_over}
        assert told["heavy phone"] == "heavier"
        assert told["lost phone"] == "lost"
        assert told["used phone"] == "used up"
        assert told["car phone"] == "left in the car"
        assert told["left phone"] == "left out"

    def test_who_took_its_place_is_told(self) -> None:
        (passed,) = judged(outing(), plus(item("heavy phone", "phone", 300)), NEW).passed_over
        assert (passed.need, passed.taken) == ("phone", "phone")


class TestMissing:
    @pytest.mark.parametrize(
        ("fields", "reason", "remedy"),
        [
            ({"state": "away"}, "away", "fetch"),
            ({"state": "lent"}, "lent", "fetch"),
            ({"state": "lost"}, "lost", "borrow_or_buy"),
            ({"state": "retired"}, "retired", "borrow_or_buy"),
            ({"quantity": 0}, "used up", "borrow_or_buy"),
            ({"zone": "left in the car"}, "left in the car", "take_along"),
        ],
    )
    def test_says_why_and_what_to_do(self, fields: dict[str, object], reason: str, remedy: str) -> None:
        kit = but("whistle", instead=[item("whistle", "signal", 10, **fields)])
        finding = the(judged(outing(), kit, NEW), "need.missing", "whistle")
        assert (finding.state, finding.facts["reason"]) == (State.LOOK, reason)
        assert [one.code for one in finding.remedies] == [remedy]

    def test_none_owned(self) -> None:
        finding = the(judged(outing(), but("whistle"), NEW), "need.missing", "whistle")
        assert (finding.facts["reason"], finding.facts["have"], finding.margin) == ("none owned", 0, -1)
        assert [one.code for one in finding.remedies] == ["borrow_or_buy"]

    def test_left_out_can_be_taken_along_after_all(self) -> None:
        finding = the(judged(outing(left_out=["whistle"]), plus(), NEW), "need.missing", "whistle")
        assert [(one.code, one.items) for one in finding.remedies] == [("take_along", ("whistle",))]

    def test_of_several_reasons_the_one_that_is_changed_most_easily_is_told(self) -> None:
        kit = but("whistle", instead=[item("old whistle", "signal", 10, state="lost"), item("whistle", "signal", 10)])
        finding = the(judged(outing(left_out=["whistle"]), kit, NEW), "need.missing", "whistle")
        assert (finding.facts["reason"], finding.items) == ("left out", ("whistle", "old whistle"))

    def test_comfort_is_no_finding(self) -> None:
        assessment = judged(outing(), plus(), NEW)
        found = missing(assessment, "sun cream")
        assert found is not None
        assert (found.state, found.asked.strength) == (State.FINE, Strength.COMFORT)
        assert not of_code(assessment, "need.missing", "sun cream")

    def test_one_carabiner_is_no_pair(self) -> None:
        kit = but("carabiners", instead=[item("carabiner", "carabiner", 60)])
        finding = the(judged(outing(), kit, NEW), "need.missing", "carabiners")
        assert (finding.state, finding.facts["have"], finding.facts["amount"]) == (State.STOP, 1, 2)

    def test_two_single_carabiners_are_a_pair(self) -> None:
        singles = [item(f"carabiner {n}", "carabiner", 60) for n in (1, 2)]
        assert missing(judged(outing(), but("carabiners", instead=singles), NEW), "carabiners") is None


class TestCountedSets:
    def needs_food(self, *food: Item, **fields: object) -> Assessment:
        return judged(outing(flight_types=["cross-country"], **fields), plus(*food), NEW)

    @pytest.mark.parametrize(("owned", "taken"), [(0, 0), (1, 1), (2, 2), (4, 4), (6, 4)])
    def test_from_two_to_four_of_them_go(self, owned: int, taken: int) -> None:
        assessment = self.needs_food(item("bar", "food", 50, quantity=owned))
        assert line_n(assessment, "bar") == taken
        assert (missing(assessment, "food") is None) is (owned >= 2)

    def test_so_many_as_were_pinned(self) -> None:
        bars = item("bar", "food", 50, quantity=6)
        assert line_n(self.needs_food(bars, pinned=[{"item": "bar", "n": 3}]), "bar") == 3
        assert line_n(self.needs_food(bars, pinned=["bar"]), "bar") == 6
        assert line_n(self.needs_food(bars, pinned=[{"item": "bar", "n": 9}]), "bar") == 6

    def test_fewer_pinned_than_needed_are_filled_up(self) -> None:
        bars = item("bar", "food", 50, quantity=6)
        assert line_n(self.needs_food(bars, pinned=[{"item": "bar", "n": 1}]), "bar") == 4

    def test_of_the_set_one_piece_goes_and_two_where_two_fly(self) -> None:
        two = but("helmet", instead=[item("helmet", "helmet", 500, quantity=2)])
        assert line_n(judged(outing(), two, NEW), "helmet") == 1
        tandem = judged(outing(flight_types=["tandem"]), two, NEW)
        assert line_n(tandem, "helmet") == 2
        assert missing(tandem, "passenger helmet") is None

    def test_all_the_papers_go(self) -> None:
        papers = [item(name, "papers", 5) for name in ("licence", "insurance card", "passport")]
        assert {one.name for one in papers} <= going(judged(outing(), plus(*papers), NEW))


class TestPinned:
    def test_goes_though_nothing_needs_it(self) -> None:
        assessment = judged(outing(pinned=["tripod"]), plus(item("tripod", "other", 900)), NEW)
        line = assessment.line("tripod")
        assert line is not None
        assert (line.pinned, line.strength, line.needs) == (True, None, ())

    @pytest.mark.parametrize("fields", [{"state": "away"}, {"state": "lent"}, {"state": "lost"}, {"quantity": 0}])
    def test_what_is_not_at_hand_is_a_look(self, fields: dict[str, object]) -> None:
        assessment = judged(outing(pinned=["tripod"]), plus(item("tripod", **fields)), NEW)
        finding = the(assessment, "pin.not_at_hand")
        assert finding.state is State.LOOK
        assert finding.facts["reason"] == ("used up" if "quantity" in fields else fields["state"])
        assert "tripod" not in going(assessment)

    def test_pinned_twice_is_pinned_once(self) -> None:
        away = plus(item("tripod", state="away"))
        assert len(of_code(judged(outing(pinned=["tripod", "tripod"]), away, NEW), "pin.not_at_hand")) == 1

    def test_goes_even_when_left_out(self) -> None:
        both = outing(pinned=["tripod"], left_out=["tripod"])
        assert "tripod" in going(judged(both, plus(item("tripod")), NEW))

    def test_in_the_car_it_meets_nothing(self) -> None:
        in_car = outing(pinned=[{"item": "whistle", "zone": "left in the car"}])
        assessment = judged(in_car, plus(), NEW)
        line = assessment.line("whistle")
        assert line is not None
        assert (line.zone, line.zone_on_foot) == (Zone.LEFT_IN_CAR, Zone.LEFT_IN_CAR)
        assert the(assessment, "need.missing", "whistle").facts["reason"] == "left in the car"

    def test_pieces_in_the_car_are_not_taken_for_a_need(self) -> None:
        bars = plus(item("bar", "food", 50, quantity=4))
        in_car = outing(flight_types=["cross-country"], pinned=[{"item": "bar", "n": 2, "zone": "left in the car"}])
        assessment = judged(in_car, bars, NEW)
        assert line_n(assessment, "bar") == 2
        assert missing(assessment, "food") is not None

    def test_rides_where_it_was_put(self) -> None:
        plan = outing(pinned=[{"item": "glasses", "zone": "side pocket", "zone_on_foot": "in hand"}])
        line = judged(plan, plus(), NEW).line("glasses")
        assert line is not None
        assert (line.zone, line.zone_on_foot) == (Zone.SIDE_POCKET, Zone.IN_HAND)


class TestPairs:
    CAMERA = item("camera", "camera", 120)
    CELL = item("spare cell", "camera", 25, quantity=2, fitted_to="camera")

    def test_pinning_one_half_takes_the_other(self) -> None:
        for pinned in ("camera", "spare cell"):
            assessment = judged(outing(pinned=[pinned]), plus(self.CAMERA, self.CELL), NEW)
            assert {"camera", "spare cell"} <= going(assessment)
            assert line_n(assessment, "spare cell") == 2

    def test_what_is_fitted_to_the_fitted_goes_too(self) -> None:
        strap = item("strap", "other", 10, fitted_to="spare cell")
        assert "strap" in going(judged(outing(pinned=["camera"]), plus(self.CAMERA, self.CELL, strap), NEW))

    def test_the_pilot_may_leave_one_half(self) -> None:
        plan = outing(pinned=["camera"], left_out=["spare cell"])
        assert "spare cell" not in going(judged(plan, plus(self.CAMERA, self.CELL), NEW))

    def test_a_pair_left_in_the_car_takes_nothing_into_the_air(self) -> None:
        plan = outing(pinned=[{"item": "camera", "zone": "left in the car"}])
        assert "spare cell" not in going(judged(plan, plus(self.CAMERA, self.CELL), NEW))

    def test_the_pair_of_another_harness_does_not_meet_a_need(self) -> None:
        second = item("other harness", "harness", 900)
        fitted = item("carabiners", "carabiner", 60, quantity=2, fitted_to="other harness")
        kit = but("carabiners", instead=[second, fitted])
        finding = the(judged(outing(set={"harness": "harness"}), kit, NEW), "need.missing", "carabiners")
        assert (finding.state, finding.facts["reason"]) == (State.STOP, "fitted elsewhere")

    def test_a_left_out_reserve_is_a_stop(self) -> None:
        finding = the(judged(outing(left_out=["reserve"]), plus(), NEW), "need.missing", "reserve")
        assert (finding.state, finding.facts["reason"]) == (State.STOP, "left out")


class TestLastResort:
    def test_comfort_of_last_resort_goes_though_leaving_it_were_lighter(self) -> None:
        plan = outing(flight_types=["cross-country"])
        beacon = next(a for a in judged(plan, plus(), NEW).asked if a.need.id == "beacon")
        assert beacon.strength is Strength.COMFORT
        assert "beacon" in going(judged(plan, plus(), NEW))


class TestGuesses:
    def test_what_an_item_serves_is_guessed_from_its_name_and_said(self) -> None:
        line = judged(outing(), plus(), NEW).line("hook knife")
        assert line is not None
        assert line.guessed

    def test_what_the_pilot_says_counts_instead(self) -> None:
        says_no = item("hook knife", "tool", 40, serves=("repair kit",))
        assessment = judged(outing(), but("hook knife", instead=[says_no]), NEW)
        assert missing(assessment, "hook knife") is not None


class TestOwnLines:
    def test_count_where_they_have_a_mass(self) -> None:
        plan = outing(own_lines=[{"text": "sandwiches", "mass_g": 400}, "a note to myself"])
        assert judged(plan, plus(), NEW).mass.take_off_g == 90_260 + 400

    def test_in_the_car_they_do_not(self) -> None:
        plan = outing(own_lines=[{"text": "towel", "mass_g": 400, "zone": "left in the car"}])
        assert judged(plan, plus(), NEW).mass.take_off_g == 90_260


@given(st.permutations(WHOLE))
def test_the_order_of_the_kit_decides_nothing(items: list[Item]) -> None:
    mixed = judged(outing(), Kit(pilot=PILOT, items=tuple(items)), NEW)
    plain = judged(outing(), plus(), NEW)
    assert going(mixed) == going(plain)
    assert mixed.mass.take_off_g == plain.mass.take_off_g
    assert stops(mixed) == stops(plain)


def test_unusable_sets_are_missing() -> None:
    gone = [other(WING, state="retired"), other(RESERVE, quantity=0)]
    assessment = judged(outing(), but("wing", "reserve", instead=gone), NEW)
    reasons = {one.asked.need.id: one.reason for one in assessment.missing if one.state is State.STOP}
    assert reasons == {"wing": "retired", "reserve": "used up"}
