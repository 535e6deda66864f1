"""Needs of the worked example's cross-country day, with nothing pinned: what is met, missing, not known, not asked.

Source: the list of needs of the worked example, worked by hand from the tables of flight types and conditions. Strengths
are common practice from instruction, no source.
"""

import pytest
from scenario import IDS, KIT, O1, changed, going, judged, meeting, missing, of_code, the, with_item

from kitlog.budget.result import State
from kitlog.outing.conditions import Condition
from kitlog.outing.needs import Strength

UNPINNED = changed(O1, set={"wing": "Wing A", "harness": "Harness A"}, pinned=[], left_out=[])
DAY = judged(UNPINNED)
ASKED = {one.need.id: one for one in DAY.asked}


def test_conditions() -> None:
    true = {"cold", "airspace", "no pickup", "late", "high"}
    assert {truth.condition.value for truth in DAY.truths if truth.holds} == true


@pytest.mark.parametrize(
    ("need", "by"),
    [
        ("wing", {"Wing A"}),
        ("harness", {"Harness A"}),
        ("reserve", {"Reserve A"}),
        ("helmet", {"Helmet B"}),
        ("carabiners", {"Carabiners A"}),
        ("phone", {"Phone"}),
        ("water", {"Bladder 2 l"}),
        ("papers", {"Papers, cash and card"}),
        ("wind layer", {"Shell jacket"}),
        ("map instrument", {"Flight computer"}),
        ("second position", {"Flight computer", "Phone"}),
        ("power bank", {"Power bank"}),
        ("cable", {"Cables"}),
        ("insulation", {"Down jacket"}),
        ("warm gloves", {"Heated gloves"}),
        ("light", {"Headlamp"}),
        ("cash", {"Papers, cash and card"}),
        ("bag", {"Rucksack 80 l"}),
    ],
)
def test_essential_and_met(need: str, by: set[str]) -> None:
    assert ASKED[need].strength is Strength.ESSENTIAL
    assert meeting(DAY, need) == by


@pytest.mark.parametrize(
    ("need", "one_of"), [("footwear", {"Boots", "Trail shoes"}), ("gloves", {"Heated gloves", "Thin gloves"})]
)
def test_essential_and_met_by_one_of_several(need: str, one_of: set[str]) -> None:
    assert ASKED[need].strength is Strength.ESSENTIAL
    assert meeting(DAY, need) & one_of


@pytest.mark.parametrize(
    ("need", "raised_by"),
    [
        ("wind layer", Condition.COLD),
        ("warm gloves", Condition.COLD),
        ("second position", Condition.AIRSPACE),
        ("light", Condition.LATE),
        ("cash", Condition.NO_PICKUP),
    ],
)
def test_the_condition_that_makes_it_essential_is_named(need: str, raised_by: Condition) -> None:
    assert ASKED[need].raised_by is raised_by


def test_the_contact() -> None:
    assert the(DAY, "people.there", "contact").state is State.FINE


def test_the_thin_pair_is_the_spare() -> None:
    assert meeting(DAY, "spare gloves") == {"Heated gloves", "Thin gloves"}
    assert ASKED["spare gloves"].strength is Strength.ADVISED


def test_missing() -> None:
    assert {one.asked.need.id: one.state for one in DAY.missing} == {"relief": State.LOOK, "sun cream": State.FINE}
    assert the(DAY, "need.missing").subject == "relief"


def test_not_known() -> None:
    unknown = {finding.subject for finding in DAY.findings if finding.state is State.NOT_KNOWN}
    assert unknown == {"medicine", "retrieve plan"}


def test_medicine_that_does_not_apply_is_answered() -> None:
    at = DAY.now.isoformat()
    answered = changed(UNPINNED, answers=[{"check": "medicine", "value": "does not apply", "at": at}])
    assert not of_code(judged(answered), "check.not_answered", "medicine")
    assert missing(judged(answered), "medicine") is None


@pytest.mark.parametrize("need", ["land map", "tree kit", "buoyancy"])
def test_not_asked(need: str) -> None:
    assert need not in ASKED


def test_the_whistle_comes_with_the_tree_kit() -> None:
    assert meeting(DAY, "whistle") == {"Tree kit and whistle"}


def test_the_choice_trap() -> None:
    """Dropping jacket, fleece and beacon would be lighter."""
    assert meeting(DAY, "insulation") == {"Down jacket"}
    assert {"Down jacket", "Fleece", "Locator beacon"} <= going(DAY)
    assert ASKED["beacon"].strength is Strength.COMFORT


def test_what_is_fitted_to_the_harness_goes_along_and_the_other_pair_stays() -> None:
    assert {"Reserve A", "Carabiners A", "Speed bar A"} <= going(DAY)
    assert going(DAY).isdisjoint({"Reserve B", "Carabiners B", "Wing B", "Harness B", "Helmet A"})


def test_no_more_than_the_needs_ask_for_goes_along() -> None:
    assert going(DAY).isdisjoint(
        {"Life vest", "Sleeping bag", "Ballast bag", "Action camera", "Camera spare battery", "Dry clothes"}
    )
    food = [line for line in DAY.lines if "food" in line.needs]
    assert 2 <= sum(line.n for line in food) <= 4


def test_why_the_grounded_helmet_stays_is_told() -> None:
    assert {(one.item.name, one.reason) for one in DAY.passed_over if one.need == "helmet"} == {
        ("Helmet A", "stop open")
    }


def test_water_is_what_was_planned() -> None:
    (bladder,) = [line for line in DAY.lines if line.item.name == "Bladder 2 l"]
    assert bladder.content_ml == 2_000


def test_water_without_a_plan_is_the_least_that_is_needed() -> None:
    (bladder,) = [line for line in judged(changed(UNPINNED, water_ml=None)).lines if line.item.name == "Bladder 2 l"]
    assert bladder.content_ml == 1_500


def test_lighter_is_chosen_where_both_would_do() -> None:
    lighter_boots = with_item("Boots", mass_g=500)
    assert meeting(judged(UNPINNED, lighter_boots), "footwear") == {"Boots"}
    assert meeting(judged(UNPINNED, KIT), "footwear") == {"Trail shoes"}


def test_what_stays_home_is_everything_else_that_is_at_hand() -> None:
    listed = {line.item.id for line in DAY.lines}
    assert set(DAY.stays_home) == set(IDS.values()) - listed
