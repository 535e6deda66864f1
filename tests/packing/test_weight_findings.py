import pytest
from scenario import KIT, O1, changed, judged, of_code, stops, the, with_item
from small_kit import HARNESS, NEW, PILOT, RESERVE, WING, but, item, kit, other, outing, plus

from kitlog.budget.result import Finding, State, Sure
from kitlog.kit.item import Item
from kitlog.outing.outing import Outing
from kitlog.outing.pilot import BodyRole, Pilot
from kitlog.packing.assessment import Assessment
from kitlog.packing.kit import Kit

TAKE_OFF_G = 90_260
TOLERANCE_G = judged(outing(), plus(), NEW).mass.tolerance_g


def with_range(low_g: int | None, high_g: int | None, plan: Outing | None = None, **fields: object) -> Assessment:
    wing = other(WING, wing={"min_g": low_g, "max_g": high_g, **fields})
    return judged(plan or outing(), but("wing", instead=[wing]), NEW)


def take_off(assessment: Assessment) -> Finding:
    return the(assessment, "weight.takeoff_range")


def codes(finding: Finding) -> list[str]:
    return [remedy.code for remedy in finding.remedies]


class TestRange:
    @pytest.mark.parametrize(
        ("low_g", "high_g", "state"),
        [
            (80_000, 100_000, State.FINE),
            (80_000, TAKE_OFF_G + 2_000, State.FINE),
            (80_000, TAKE_OFF_G + 500, State.LOOK),
            (80_000, TAKE_OFF_G, State.LOOK),
            (80_000, TAKE_OFF_G - 500, State.LOOK),
            (70_000, TAKE_OFF_G - 5_000, State.STOP),
            (TAKE_OFF_G, 110_000, State.LOOK),
            (TAKE_OFF_G + 500, 110_000, State.LOOK),
            (TAKE_OFF_G + 5_000, 110_000, State.STOP),
            (None, 110_000, State.NOT_KNOWN),
            (80_000, None, State.NOT_KNOWN),
            (None, None, State.NOT_KNOWN),
        ],
    )
    def test_a_tolerance_that_reaches_over_or_in_is_a_look(
        self, low_g: int | None, high_g: int | None, state: State
    ) -> None:
        assert 1_000 < TOLERANCE_G < 2_000
        assert take_off(with_range(low_g, high_g)).state is state

    def test_the_landing_has_its_own_finding(self) -> None:
        heavy_water = outing(water_ml=5_000)
        bag = item("bag", "vessel", 50, vessel={"capacity_ml": 5_000})
        kit = but("wing", "bottle", instead=[other(WING, wing={"min_g": 92_000, "max_g": 110_000}), bag])
        assessment = judged(heavy_water, kit, NEW)
        assert take_off(assessment).state is State.FINE
        assert the(assessment, "weight.landing_range").state is State.STOP

    def test_nothing_fine_is_offered_a_remedy(self) -> None:
        assert codes(take_off(with_range(80_000, 100_000))) == []


class TestMassNotKnown:
    def assessed(self, high_g: int, *unweighed: Item) -> Assessment:
        wing = other(WING, wing={"min_g": 60_000, "max_g": high_g})
        things = unweighed or (item("tripod", mass_g=None),)
        kit = but("wing", instead=[wing, *things])
        return judged(outing(pinned=[one.id for one in things]), kit, NEW)

    def test_is_not_known_and_says_at_least(self) -> None:
        up = take_off(self.assessed(120_000))
        assert (up.state, up.figure, up.sure) == (State.NOT_KNOWN, None, Sure.NOT_KNOWN)
        assert up.facts["known_g"] == TAKE_OFF_G
        assert up.facts["unknown"] == ("tripod",)

    def test_asks_for_the_weighing(self) -> None:
        (weigh,) = take_off(self.assessed(120_000)).remedies
        assert (weigh.code, weigh.items) == ("weigh", ("tripod",))

    def test_what_is_known_may_be_over_already(self) -> None:
        assert take_off(self.assessed(TAKE_OFF_G - 5_000)).state is State.STOP
        assert take_off(self.assessed(TAKE_OFF_G - 500)).state is State.LOOK

    def test_the_landing_counts_what_is_gone_by_then(self) -> None:
        """500 g of water: known 90,260 g at take-off, 89,760 g at the landing."""
        assessment = self.assessed(TAKE_OFF_G - 200)
        assert take_off(assessment).state is State.LOOK
        landing = the(assessment, "weight.landing_range")
        assert (landing.state, landing.facts["known_g"]) == (State.NOT_KNOWN, TAKE_OFF_G - 500)

    def test_harness_and_reserve_may_be_over_already(self) -> None:
        light = [other(HARNESS, harness={"max_g": 70_000}), other(RESERVE, reserve={"max_g": 70_000})]
        plan = outing(pinned=["tripod"])
        assessment = judged(plan, but("harness", "reserve", instead=[*light, item("tripod", mass_g=None)]), NEW)
        assert {"weight.harness", "weight.reserve"} <= stops(assessment)

    def test_without_a_body_mass_the_pilot_is_asked(self) -> None:
        nobody = kit(pilot=None)
        up = take_off(judged(outing(), nobody, NEW))
        assert (up.state, codes(up)) == (State.NOT_KNOWN, ["weigh_body"])
        assert up.facts["known_g"] == TAKE_OFF_G - 75_000

    def test_a_body_mass_taken_after_the_outing_is_not_known_on_it(self) -> None:
        masses = [{"taken_on": "2026-06-01", "mass_g": 75_000}]
        later = Pilot.model_validate({"id": "p", "name": "Ines", "masses": masses})
        assert take_off(judged(outing(), kit(pilot=later), NEW)).state is State.NOT_KNOWN

    def test_without_a_wing_there_is_no_take_off_mass(self) -> None:
        assessment = judged(outing(), but("wing"), NEW)
        assert assessment.mass.take_off_g is None
        assert take_off(assessment).state is State.NOT_KNOWN
        assert codes(take_off(assessment)) == []


class TestHarnessAndReserve:
    @pytest.mark.parametrize(
        ("most_g", "state"),
        [
            (110_000, State.FINE),
            (85_500, State.LOOK),
            (85_000, State.LOOK),
            (80_000, State.STOP),
            (None, State.NOT_KNOWN),
        ],
    )
    def test_harness(self, most_g: int | None, state: State) -> None:
        """Without the wing 85,260 g hang in it."""
        assessment = judged(outing(), but("harness", instead=[other(HARNESS, harness={"max_g": most_g})]), NEW)
        found = the(assessment, "weight.harness")
        assert (found.state, found.figure) == (state, 85_260)
        assert codes(found) == ([] if most_g else ["enter_harness_limit"])

    @pytest.mark.parametrize(
        ("low_g", "high_g", "state"),
        [
            (60_000, 100_000, State.FINE),
            (60_000, 88_000, State.LOOK),
            (60_000, 85_500, State.LOOK),
            (60_000, 80_000, State.STOP),
            (86_000, 100_000, State.LOOK),
            (None, 100_000, State.FINE),
            (60_000, None, State.NOT_KNOWN),
        ],
    )
    def test_reserve(self, low_g: int | None, high_g: int | None, state: State) -> None:
        """With the wing 90,260 g, without it 85,260 g: over with the wing only is a look, so is under the printed least."""
        reserve = other(RESERVE, reserve={"min_g": low_g, "max_g": high_g})
        assert the(judged(outing(), but("reserve", instead=[reserve]), NEW), "weight.reserve").state is state


class TestTandem:
    """What hangs in the pilot's harness is the pilot's: the passenger hangs in another (a wing's range and the reserve
    count both)."""

    PASSENGER = Pilot.model_validate(
        {
            "id": "q",
            "name": "Leda",
            "role": BodyRole.PASSENGER,
            "masses": [{"taken_on": "2026-05-09", "mass_g": 70_000}],
        }
    )
    PLAN = outing(flight_types=["tandem"])

    def test_both_bodies_count_for_the_wing(self) -> None:
        assessment = judged(self.PLAN, Kit(PILOT, plus().items, passenger=self.PASSENGER), NEW)
        assert assessment.mass.take_off_g == TAKE_OFF_G + 70_000
        assert the(assessment, "weight.reserve").figure == 85_260 + 70_000

    def test_one_hangs_in_the_harness(self) -> None:
        assessment = judged(self.PLAN, Kit(PILOT, plus().items, passenger=self.PASSENGER), NEW)
        assert the(assessment, "weight.harness").figure == 85_260

    def test_a_passenger_is_not_carried_uphill(self) -> None:
        plan = outing(flight_types=["tandem", "hike and fly"])
        share = the(judged(plan, Kit(PILOT, plus().items, passenger=self.PASSENGER), NEW), "weight.pack_share")
        assert share.figure is not None
        assert share.figure < 40

    def test_a_passenger_who_was_not_weighed_leaves_it_not_known(self) -> None:
        assessment = judged(self.PLAN, plus(), NEW)
        assert assessment.mass.unknown == ("passenger",)
        assert take_off(assessment).state is State.NOT_KNOWN


class TestRemedies:
    CHAIR = item("chair", "other", 4_000)
    TRIPOD = item("tripod", "other", 2_000)

    def over(self, plan: Outing, *more: Item) -> Finding:
        wing = other(WING, wing={"min_g": 70_000, "max_g": 88_000})
        return take_off(judged(plan, but("wing", instead=[wing, *more]), NEW))

    def offered(self, finding: Finding) -> list[str]:
        return [remedy.items[0] for remedy in finding.remedies if remedy.code == "leave_at_home"]

    def test_the_two_heaviest_that_nothing_needs_can_stay(self) -> None:
        light = item("book", "other", 300)
        plan = outing(pinned=["chair", "tripod", "book"])
        assert self.offered(self.over(plan, self.CHAIR, self.TRIPOD, light)) == ["chair", "tripod"]

    def test_last_resort_is_never_offered(self) -> None:
        """Pinned on a dry day over open ground: nothing needs a tree kit or a vest then."""
        names = ("beacon", "tree kit", "vest", "second first aid", "rescue knife", "spare whistle", "space blanket")
        more = [
            item("tree kit", "tree kit", 900),
            item("vest", "buoyancy", 900),
            item("second first aid", "first aid", 900),
            item("rescue knife", "tool", 900),
            item("spare whistle", "signal", 900),
            item("space blanket", "shelter", 900),
        ]
        offered = self.offered(self.over(outing(pinned=list(names)), *more))
        assert not set(names) & set(offered)

    def test_half_a_pair_is_never_offered(self) -> None:
        camera, cell = item("camera", "camera", 900), item("cell", "camera", 900, fitted_to="camera")
        assert self.offered(self.over(outing(pinned=["camera", "cell"]), camera, cell)) == []

    def test_needed_things_are_never_offered(self) -> None:
        assert self.offered(self.over(outing())) == []

    def under(self, plan: Outing, **reserve: object) -> Finding:
        wing = other(WING, wing={"min_g": TAKE_OFF_G + 3_000, "max_g": 120_000})
        kit = but("wing", "reserve", instead=[wing, other(RESERVE, reserve={"max_g": 110_000} | reserve)])
        return take_off(judged(plan, kit, NEW))

    def test_too_light_is_offered_ballast(self) -> None:
        (ballast,) = [r for r in self.under(outing()).remedies if r.code == "ballast"]
        assert ballast.facts["mass_g"] == pytest.approx(3_000 + TOLERANCE_G, abs=1)

    def test_no_ballast_over_water(self) -> None:
        over_water = outing(conditions={"water": True, "no signal": False, "forest": False, "airspace": False})
        assert "ballast" not in codes(self.under(over_water))
        assert "ballast" not in codes(self.under(outing(conditions={})))

    def test_no_ballast_that_another_limit_forbids(self) -> None:
        assert "ballast" not in codes(self.under(outing(), max_g=86_500))

    def test_ballast_is_a_look_where_the_course_wants_none(self) -> None:
        bag = plus(item("ballast bag", "ballast", 100))
        plan = outing(flight_types=["over-water course"], pinned=["ballast bag"])
        assert the(judged(plan, bag, NEW), "weight.no_ballast").state is State.LOOK
        assert not of_code(judged(outing(pinned=["ballast bag"]), bag, NEW), "weight.no_ballast")


class TestHowSure:
    @pytest.mark.parametrize(
        ("source", "sure"),
        [("kitchen scale", Sure.MEASURED), ("maker's figure", Sure.MAKER), ("guess", Sure.GUESS)],
    )
    def test_as_sure_as_its_least_sure_mass(self, source: str, sure: Sure) -> None:
        weighed = tuple(other(one, mass_source="kitchen scale") for one in plus().items if one.name != "whistle")
        whistle = item("whistle", "signal", 10, mass_source=source)
        assert take_off(judged(outing(), Kit(PILOT, (*weighed, whistle)), NEW)).sure is sure

    def test_the_one_figure_that_would_sharpen_most_is_named(self) -> None:
        guessed = with_item("Harness A", KIT, mass_source="guess")
        near = with_item("Wing A", guessed, wing={"min_g": 85_000, "max_g": 97_000})
        (weigh,) = [r for r in take_off(judged(changed(O1), near)).remedies if r.code == "weigh"]
        assert weigh.items == (next(one.id for one in KIT.items if one.name == "Harness A"),)
