import pytest
from scenario import IDS, O1, changed, going, judged, missing, of_code, the
from small_kit import HARNESS, NEW, RESERVE, WHOLE, WING, but, item, other, outing, plus

from kitlog.budget.result import State
from kitlog.kit.kinds import Kind
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Assessment
from kitlog.packing.kit import History, Kit

LIGHT_WING = item("light wing", "wing", 2_000, wing={"min_g": 80_000, "max_g": 100_000})
LIGHT_HARNESS = item("light harness", "harness", 1_000, harness={"max_g": 110_000})


def flown(plan: Outing, kit: Kit, history: History = NEW) -> dict[Kind, str]:
    return {kind: one.name for kind, one in judged(plan, kit, history).chosen.items()}


class TestWays:
    def test_the_only_ones_are_the_set(self) -> None:
        names = {Kind.WING: "wing", Kind.HARNESS: "harness", Kind.RESERVE: "reserve", Kind.HELMET: "helmet"}
        assert flown(outing(), plus()) == names

    def test_what_was_said_comes_first(self) -> None:
        plan = outing(set={"wing": "light wing"}, pinned=["wing"])
        assert flown(plan, plus(LIGHT_WING))[Kind.WING] == "light wing"

    def test_then_what_is_pinned(self) -> None:
        assert flown(outing(pinned=["wing"]), plus(LIGHT_WING))[Kind.WING] == "wing"

    def test_then_what_is_fitted_to_the_harness(self) -> None:
        second = item("other reserve", "reserve", 500, fitted_to="light harness")
        plan = outing(set={"harness": "harness"})
        assert flown(plan, plus(LIGHT_HARNESS, second))[Kind.RESERVE] == "reserve"

    def test_then_the_set_of_the_last_outing_of_that_type(self) -> None:
        earlier = (
            outing(id="a", first_day="2026-04-01", set={"wing": "light wing"}),
            outing(id="b", first_day="2026-04-20", set={"wing": "wing"}),
            outing(id="c", first_day="2026-05-01", flight_types=["coast"], set={"wing": "light wing"}),
            outing(id="d", first_day="2026-06-01", set={"wing": "light wing"}),
        )
        assert flown(outing(), plus(LIGHT_WING), History(outings=earlier))[Kind.WING] == "wing"

    def test_a_pinned_wing_of_the_last_outing_counts_too(self) -> None:
        earlier = (outing(id="a", first_day="2026-04-01", pinned=["light wing"]),)
        assert flown(outing(), plus(LIGHT_WING), History(outings=earlier))[Kind.WING] == "light wing"


class TestNeverByMass:
    @pytest.mark.parametrize(
        "second",
        [
            LIGHT_WING,
            LIGHT_HARNESS,
            item("light helmet", "helmet", 200),
            item("light reserve", "reserve", 900, reserve={"max_g": 100_000}),
        ],
        ids=lambda second: second.kind.value,
    )
    def test_a_second_one_is_an_open_question(self, second: object) -> None:
        kit = but("reserve", instead=[other(RESERVE, fitted_to=None), second])
        assessment = judged(outing(), kit, NEW)
        kind = getattr(second, "kind", Kind.WING)
        assert kind not in assessment.chosen
        assert [q.id for q in assessment.questions if q.kind == "set"] == [f"set.{kind.value}"]
        finding = the(assessment, "need.not_chosen", kind.value)
        assert finding.state is State.NOT_KNOWN
        assert [remedy.code for remedy in finding.remedies] == ["choose"]
        assert assessment.counts.stop == 0

    def test_the_mass_without_it_is_not_a_take_off_mass(self) -> None:
        mass = judged(outing(), plus(LIGHT_WING), NEW).mass
        assert mass.take_off_g is None
        assert mass.unknown == ("wing",)
        assert mass.known_g == 90_260 - 5_000

    def test_what_is_fitted_to_either_waits_for_the_choice(self) -> None:
        fitted = item("carabiners", "carabiner", 60, quantity=2, fitted_to="harness")
        kit = but("carabiners", instead=[fitted, LIGHT_HARNESS])
        waiting = the(judged(outing(), kit, NEW), "need.not_chosen", "carabiners")
        assert (waiting.state, waiting.facts["reason"], waiting.items) == (
            State.NOT_KNOWN,
            "waits for the set",
            ("carabiners",),
        )


class TestAChoiceThatCannotStand:
    def test_left_out_and_chosen_is_an_open_question(self) -> None:
        assessment = judged(outing(set={"wing": "wing"}, left_out=["wing"]), plus(LIGHT_WING), NEW)
        assert Kind.WING not in assessment.chosen
        assert the(assessment, "need.not_chosen", "wing").items == ("light wing",)

    def test_of_another_kind_is_an_open_question(self) -> None:
        assessment = judged(outing(set={"wing": "harness"}), plus(), NEW)
        assert Kind.WING not in assessment.chosen
        assert the(assessment, "need.not_chosen", "wing").items == ("wing",)

    def test_away_is_missing_and_no_other_goes_instead(self) -> None:
        away = other(WING, state="away")
        assessment = judged(outing(set={"wing": "wing"}), but("wing", instead=[away, LIGHT_WING]), NEW)
        found = missing(assessment, "wing")
        assert found is not None
        assert found.state is State.STOP
        assert "light wing" not in going(assessment)


class TestReserve:
    """A reserve in another harness than its own is a new pairing, which wants a compatibility check (an association's
    order of 1997)."""

    OTHER = item("other reserve", "reserve", 900, fitted_to="light harness", reserve={"max_g": 100_000})

    def assessed(self, **fields: object) -> Assessment:
        stays = other(RESERVE, state="away")
        return judged(outing(**fields), but("reserve", instead=[stays, self.OTHER, LIGHT_HARNESS]), NEW)

    def test_one_fitted_elsewhere_is_never_taken_by_itself(self) -> None:
        assessment = self.assessed(set={"harness": "harness"})
        found = missing(assessment, "reserve")
        assert found is not None
        assert (found.state, found.reason) == (State.STOP, "not of the set")
        assert "other reserve" not in going(assessment)

    def test_chosen_by_the_pilot_it_goes_and_is_a_look(self) -> None:
        assessment = self.assessed(set={"harness": "harness", "reserve": "other reserve"})
        assert "other reserve" in going(assessment)
        apart = the(assessment, "pair.apart")
        assert (apart.state, apart.items) == (State.LOOK, ("other reserve", "light harness"))


def test_the_set_and_what_is_fitted_to_it_go_whole() -> None:
    fitted = [item(name, "other", fitted_to="harness") for name in ("pod fairing", "cockpit")]
    assessment = judged(outing(), plus(*fitted), NEW)
    assert {"pod fairing", "cockpit", "reserve"} <= going(assessment)


def test_a_reserve_that_is_away_does_not_come_with_its_harness() -> None:
    away = but("reserve", instead=[other(RESERVE, state="away")])
    for chosen in ({}, {"reserve": "reserve"}):
        assessment = judged(outing(set=chosen), away, NEW)
        found = missing(assessment, "reserve")
        assert found is not None
        assert (found.state, found.reason) == (State.STOP, "away")
        assert "reserve" not in going(assessment)


def test_in_the_worked_example_nothing_is_open() -> None:
    assert not of_code(judged(O1), "need.not_chosen")
    unchosen = changed(O1, set={"harness": "Harness A"}, pinned=[], left_out=[])
    chosen = judged(unchosen).chosen
    assert chosen[Kind.RESERVE].id == IDS["Reserve A"]
    assert chosen[Kind.HELMET].id == IDS["Helmet B"]


def test_a_set_alone_has_a_harness_without_a_reserve() -> None:
    bare = judged(outing(), Kit(items=tuple(one for one in WHOLE if one.kind is not Kind.RESERVE)), NEW)
    found = missing(bare, "reserve")
    assert found is not None
    assert (found.state, found.reason) == (State.STOP, "none owned")
    assert bare.chosen[Kind.HARNESS] == HARNESS
