"""Masses of the worked example.

Source of the figures: sums worked by hand beside the table of the invented kit, not by this program. Tolerances by
source of a mass, roots of squares and the 60 days of a body mass: common practice, no source.
"""

import pytest
from scenario import DEMO, KIT, O1, O2, O3, judged, of_code, the

from kitlog.budget.result import State, Topic
from kitlog.kit.kinds import Zone
from kitlog.outing.pilot import BodyMass, Pilot
from kitlog.packing.kit import Kit

DAYS = {1: O1, 2: O2, 3: O3}
JUDGED = {number: judged(outing) for number, outing in DAYS.items()}


def body(*masses: BodyMass) -> Kit:
    pilot = Pilot.model_validate({**DEMO.pilot.model_dump(), "masses": masses})
    return Kit(pilot, KIT.items, KIT.rules)


@pytest.mark.parametrize(
    ("number", "take_off_g", "landing_g", "position", "landing_position"),
    [
        (1, 96_200, 93_790, 56.0, 44.0),
        (2, 87_902, 85_682, 89.5, 78.4),
        (3, 92_625, 91_405, 38.1, 32.0),
    ],
)
def test_take_off_landing_and_place_in_the_range(
    number: int, take_off_g: int, landing_g: int, position: float, landing_position: float
) -> None:
    up, down = the(JUDGED[number], "weight.takeoff_range"), the(JUDGED[number], "weight.landing_range")
    assert (JUDGED[number].mass.take_off_g, JUDGED[number].mass.landing_g) == (take_off_g, landing_g)
    assert (up.figure, down.figure) == (take_off_g, landing_g)
    assert (up.state, down.state) == (State.FINE, State.FINE)
    assert up.facts["position_pct"] == pytest.approx(position, abs=0.05)
    assert down.facts["position_pct"] == pytest.approx(landing_position, abs=0.05)


@pytest.mark.parametrize(
    ("number", "above_min_g", "below_max_g"), [(1, 11_200, 8_800), (2, 17_902, 2_098), (3, 7_625, 12_375)]
)
def test_margin_is_the_nearer_limit(number: int, above_min_g: int, below_max_g: int) -> None:
    up = the(JUDGED[number], "weight.takeoff_range")
    assert up.margin == min(above_min_g, below_max_g)


@pytest.mark.parametrize(("number", "squares_g", "plain_g"), [(1, 1_007, 1_418), (2, 1_006, 1_325), (3, 1_005, 1_301)])
def test_tolerances(number: int, squares_g: int, plain_g: int) -> None:
    mass = JUDGED[number].mass
    assert round(mass.tolerance_g) == squares_g
    assert round(mass.tolerance_sum_g) == plain_g


@pytest.mark.parametrize(
    ("number", "rows", "pieces", "kit_g"), [(1, 37, 42, 20_200), (2, 30, 34, 11_902), (3, 23, 27, 17_625)]
)
def test_rows_pieces_and_kit(number: int, rows: int, pieces: int, kit_g: int) -> None:
    lines = [line for line in JUDGED[number].lines if not line.in_car]
    assert len(lines) == rows
    assert sum(line.n for line in lines) == pieces
    assert sum((line.mass_g or 0) - line.content_ml for line in lines) == kit_g


@pytest.mark.parametrize(
    ("number", "sums"),
    [
        (
            1,
            {
                Zone.OVERHEAD: 5_240,
                Zone.HARNESS: 5_884,
                Zone.UNDER_SEAT: 1_680,
                Zone.WORN: 4_323,
                Zone.COCKPIT: 1_224,
                Zone.SIDE_POCKET: 151,
                Zone.BACK_POCKET: 1_698 + 2_000,
            },
        ),
        (
            2,
            {
                Zone.OVERHEAD: 3_080,
                Zone.HARNESS: 2_376,
                Zone.FRONT_CONTAINER: 1_090,
                Zone.WORN: 2_186,
                Zone.COCKPIT: 622,
                Zone.SIDE_POCKET: 93,
                Zone.BACK_POCKET: 2_455 + 2_000,
            },
        ),
        (
            3,
            {
                Zone.OVERHEAD: 5_240,
                Zone.HARNESS: 5_884,
                Zone.UNDER_SEAT: 1_680,
                Zone.WORN: 3_579,
                Zone.COCKPIT: 748,
                Zone.SIDE_POCKET: 38,
                Zone.BACK_POCKET: 456 + 1_000,
            },
        ),
    ],
)
def test_zones(number: int, sums: dict[Zone, int]) -> None:
    assert JUDGED[number].mass.by_zone == sums


@pytest.mark.parametrize(
    ("number", "with_wing_g", "without_g", "state"),
    [(1, 96_200, 90_960, State.LOOK), (2, 87_902, 84_822, State.FINE), (3, 92_625, 87_385, State.FINE)],
)
def test_reserve(number: int, with_wing_g: int, without_g: int, state: State) -> None:
    load = the(JUDGED[number], "weight.reserve")
    assert (load.facts["with_wing_g"], load.facts["without_wing_g"]) == (with_wing_g, without_g)
    assert load.state is state


@pytest.mark.parametrize(
    ("number", "hanging_g", "less_harness_g", "most_g"),
    [(1, 90_960, 85_340, 120_000), (2, 84_822, 82_682, 100_000), (3, 87_385, 81_765, 120_000)],
)
def test_harness(number: int, hanging_g: int, less_harness_g: int, most_g: int) -> None:
    load = the(JUDGED[number], "weight.harness")
    assert (load.figure, load.facts["without_harness_g"], load.facts["high_g"]) == (hanging_g, less_harness_g, most_g)
    assert load.state is State.FINE
    assert load.margin == most_g - hanging_g


def test_walk_up() -> None:
    share = the(JUDGED[2], "weight.pack_share")
    assert JUDGED[2].mass.pack_g == 12_154
    assert share.figure == pytest.approx(16.4, abs=0.05)
    assert share.state is State.FINE


def test_the_share_carried_is_asked_only_of_who_walks_up() -> None:
    assert not of_code(JUDGED[1], "weight.pack_share")
    assert not of_code(JUDGED[3], "weight.pack_share")


def test_old_body_mass_reaches_over_the_limit() -> None:
    old = body(BodyMass.model_validate({"taken_on": "2026-04-01", "mass_g": 74_000}))
    up = the(judged(O2, old), "weight.takeoff_range")
    assert up.facts["tolerance_g"] == pytest.approx(2_503, abs=0.5)
    assert up.figure == 87_902
    assert up.state is State.LOOK


def test_the_age_of_a_body_mass_is_counted_to_the_outing() -> None:
    first = body(DEMO.pilot.masses[0])
    assert the(judged(O1, first), "weight.takeoff_range").facts["tolerance_g"] == pytest.approx(1_007, abs=0.5)
    assert the(judged(O2, first), "weight.takeoff_range").facts["tolerance_g"] == pytest.approx(1_006, abs=0.5)
    late = judged(O3, first).mass
    assert late.tolerance_g == pytest.approx(2_502, abs=0.5)
    assert late.tolerance_sum_g == pytest.approx(2_801, abs=0.5)


def test_middle_of_the_range_is_wanted_over_water_and_ballast_is_no_remedy() -> None:
    middle = the(JUDGED[3], "weight.mid_range")
    assert (middle.facts["low_pct"], middle.facts["high_pct"]) == (40, 80)
    assert middle.figure == pytest.approx(38.1, abs=0.05)
    assert middle.state is State.LOOK
    assert "ballast" not in {remedy.code for finding in JUDGED[3].findings for remedy in finding.remedies}


def test_nothing_of_the_weight_of_the_example_is_a_stop() -> None:
    for assessment in JUDGED.values():
        assert State.STOP not in {finding.state for finding in assessment.of(Topic.WEIGHT)}
