import pytest
from scenario import O1, O3, changed, judged

from kitlog.kit.kinds import Zone
from kitlog.packing.stowing import stowed, stowed_in


@pytest.mark.parametrize(
    ("zone", "on_foot", "expected"),
    [
        (Zone.OVERHEAD, Zone.RUCKSACK, Zone.RUCKSACK),
        (Zone.HARNESS, Zone.RUCKSACK, Zone.RUCKSACK),
        (Zone.HARNESS, None, Zone.HARNESS),
        (Zone.COCKPIT, Zone.RUCKSACK, Zone.COCKPIT),
        (Zone.WORN, Zone.WORN, Zone.WORN),
        (Zone.LEFT_IN_CAR, Zone.LEFT_IN_CAR, Zone.LEFT_IN_CAR),
    ],
)
def test_where_a_thing_lies_in_the_packed_bag(zone: Zone, on_foot: Zone | None, expected: Zone) -> None:
    assert stowed_in(zone, on_foot) is expected


def test_every_line_lies_in_one_zone_and_the_car_comes_last() -> None:
    for outing in (O1, O3):
        assessment = judged(outing)
        groups = stowed(assessment)
        assert sum(len(group.lines) for group in groups) == len(assessment.lines)
        assert groups[-1].zone is Zone.LEFT_IN_CAR
        flying = sum(group.mass_g for group in groups if group.zone is not Zone.LEFT_IN_CAR)
        assert flying + 74_000 == assessment.mass.take_off_g


def test_wing_and_harness_lie_in_the_rucksack() -> None:
    rucksack = next(group for group in stowed(judged(O1)) if group.zone is Zone.RUCKSACK)
    assert {line.item.name for line in rucksack.lines} == {"Wing A", "Harness A", "Carabiners A", "Speed bar A"}
    assert rucksack.mass_g == 5_240 + 5_620 + 124 + 140


def test_own_lines_stand_in_their_zone() -> None:
    own = [{"text": "Borrowed flask", "mass_g": 300, "zone": "cockpit"}, {"text": "Flag", "zone": "cockpit"}]
    before = next(group for group in stowed(judged(O1)) if group.zone is Zone.COCKPIT)
    after = next(group for group in stowed(judged(changed(O1, own_lines=own))) if group.zone is Zone.COCKPIT)
    assert [line.text for line in after.own] == ["Borrowed flask", "Flag"]
    assert (after.count - before.count, after.mass_g - before.mass_g, after.unknown) == (2, 300, 1)
