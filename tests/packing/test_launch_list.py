"""The order is the library's: what is hidden later comes first (an international federation's list)."""

from scenario import LIBRARY, O1, changed, judged

from kitlog.packing.launch_list import launch_list


def ids(outing=O1):
    return [launch.check.id for launch in launch_list(judged(outing), LIBRARY)]


def test_leg_straps_come_before_all_that_hides_them() -> None:
    found = ids()
    assert found[0] == "launch.look"
    assert found[-1] == "launch.final"
    assert found.index("launch.legs") < found.index("launch.chest") < found.index("launch.frontcontainer")


def test_only_launch_checks_of_the_day() -> None:
    assert not {name for name in ids() if not name.startswith("launch.")}
    assert "launch.snow" not in ids()
    assert "launch.snow" in ids(changed(O1, conditions={**O1.conditions, "snow": True}))


def test_a_passenger_brings_own_checks_and_makes_others_critical() -> None:
    tandem = changed(O1, people=[*O1.people, {"name": "Guest", "role": "passenger"}])
    assert {"passenger.straps", "passenger.hook_in", "passenger.briefing"} <= set(ids(tandem))
    critical = {launch.check.id for launch in launch_list(judged(tandem), LIBRARY) if launch.critical}
    alone = {launch.check.id for launch in launch_list(judged(O1), LIBRARY) if launch.critical}
    assert "launch.partner" in critical - alone
