"""What would help, and which charger is in the way: each is the night planned anew."""

import sys
from pathlib import Path

import pytest

from kitlog.budget.charging.evening import Evening
from kitlog.budget.charging.remedies import bottleneck, remedies

sys.path.insert(0, str(Path(__file__).parent))  # importmode=importlib finds no neighbours
from evenings import planned, raw_evening, raw_thing

SHORT = {"bed_h": 22.0, "up_h": 22.0, "leave_h": 22.0}


def found(raw):
    return remedies(Evening.model_validate(raw))


def test_none_is_needed_where_all_is_full():
    assert found(raw_evening([raw_thing()], 10)) == ()
    assert bottleneck(()) is None


def test_one_more_port_where_two_wait_for_one():
    kinds = {remedy.kind: remedy for remedy in found(raw_evening([raw_thing(), raw_thing("radio")], 10, **SHORT))}
    assert kinds["one_more_port"].all_full
    assert kinds["one_more_port"].full == 2
    assert kinds["one_more_port"].first_gain == "radio"
    assert "no_total_limit" not in kinds


def test_a_total_that_is_too_small_is_named():
    raw = raw_evening([raw_thing(start=0), raw_thing("radio", start=0)], 10, 10, total_w=7, **SHORT | {"leave_h": 23.0})
    kinds = {remedy.kind: remedy for remedy in found(raw)}
    assert kinds["no_total_limit"].gained_wh > 0
    assert "one_more_port" not in kinds  # it has nothing to give
    assert bottleneck(found(raw)) == "wall"


def test_the_gain_is_the_difference_of_two_nights():
    raw = raw_evening([raw_thing(start=0), raw_thing("radio", start=0)], 10, **SHORT)
    remedy = next(each for each in found(raw) if each.kind == "one_more_port")
    more = planned(raw_evening([raw_thing(start=0), raw_thing("radio", start=0)], 10, 10, **SHORT))
    short_wh = [sum(thing.missing_wh for thing in result.things) for result in (planned(raw), more)]
    assert remedy.gained_wh == pytest.approx(short_wh[0] - short_wh[1])


def test_the_latest_start_at_which_all_is_full():
    raw = raw_evening([raw_thing(), raw_thing("radio")], 10, **SHORT)
    start = next(each for each in found(raw) if each.kind == "start_earlier")
    assert start.all_full
    assert planned(raw | {"from_h": start.from_h}).all_full
    assert not planned(raw | {"from_h": start.from_h + 0.25}).all_full


def test_a_cell_that_takes_too_little_is_no_charger_s_fault():
    raw = raw_evening([raw_thing(start=0, cell_Wh=100, charge_max_W=2)], 10, **SHORT)
    assert bottleneck(found(raw)) is None
    assert [remedy.kind for remedy in found(raw)] == ["start_earlier"]
    assert not found(raw)[0].all_full


class TestPlugs:
    def kinds(self, things, **keys):
        return {(each.kind, each.connectors): each for each in found(raw_evening(things, **keys))}

    def test_without_a_charger_one_with_the_right_plug_is_named(self):
        remedy = self.kinds([raw_thing(connector="USB-C")])["charger_with_plug", ("USB-C",)]
        assert (remedy.all_full, remedy.power_w, remedy.charger) == (True, 7, None)
        assert remedy.gained_wh == pytest.approx(15 * (0.995 - 0.4))

    def test_where_no_plug_is_known_none_is_named(self):
        assert self.kinds([raw_thing()]).keys() == {("charger_with_plug", ())}

    def test_a_cable_by_its_two_ends(self):
        chargers = [{"id": "wall", "ports": [{"id": "a", "connector": "USB-A"}, {"id": "c", "connector": "USB-C"}]}]
        cables = [{"connectors": ["USB-A", "USB-C"], "count": 2}]
        things = [raw_thing(connector="USB-C"), raw_thing("vario", connector="micro-USB")]
        kinds = self.kinds(things, chargers=chargers, cables=cables)
        assert kinds.keys() == {("one_more_cable", ("USB-A", "micro-USB")), ("one_more_cable", ("USB-C", "micro-USB"))}
        assert all(remedy.all_full for remedy in kinds.values())

    def test_one_more_of_a_cable_for_which_two_wait(self):
        chargers = [{"id": "wall", "ports": [{"id": "a", "connector": "USB-A"}, {"id": "b", "connector": "USB-A"}]}]
        cables = [{"connectors": ["USB-A", "USB-C"]}]
        things = [raw_thing(connector="USB-C"), raw_thing("radio", connector="USB-C")]
        kinds = self.kinds(things, chargers=chargers, cables=cables, **SHORT)
        assert kinds["one_more_cable", ("USB-A", "USB-C")].all_full
        assert ("one_more_port", ()) not in kinds

    def test_a_fixed_plug_that_fits_nothing(self):
        chargers = [{"id": "wall", "ports": [{"id": "p", "connector": "barrel", "fixed_cable": True}]}]
        kinds = self.kinds([raw_thing(connector="USB-C")], chargers=chargers, sockets=1)
        assert kinds["charger_with_plug", ("USB-C",)].all_full

    def test_nothing_helps_a_swollen_cell(self):
        assert self.kinds([raw_thing(swollen=True)]) == {}


class TestSockets:
    """What helps is a socket, not a charger that finds none."""

    def found(self, sockets, chargers, things=2):
        ports = [{"id": "p", "limit_W": 10}]
        named = [{"id": f"block {number}", "ports": ports} for number in range(chargers)]
        return found(raw_evening([raw_thing(f"t{n}") for n in range(things)], chargers=named, sockets=sockets, **SHORT))

    def kinds(self, *asked):
        return {(each.kind, each.sockets): each for each in self.found(*asked)}

    def test_without_a_free_socket_only_sockets_help(self):
        remedies_found = self.found(0, 1, 1)
        assert [(each.kind, each.sockets, each.all_full) for each in remedies_found] == [("more_sockets", 1, True)]
        assert bottleneck(remedies_found) is None

    def test_as_many_as_there_are_chargers_where_one_is_not_enough(self):
        kinds = self.kinds(0, 2)
        assert kinds["more_sockets", 2].all_full
        assert not kinds["more_sockets", 1].all_full
        assert {kind for kind, _ in kinds} == {"more_sockets"}

    def test_one_more_socket_for_the_charger_that_finds_none(self):
        kinds = self.kinds(1, 2)
        assert kinds["more_sockets", 1].all_full
        assert kinds["one_more_port", 0].all_full
        assert "one_more_charger" not in {kind for kind, _ in kinds}

    @pytest.mark.parametrize(("sockets", "more"), [(1, 1), (2, 0), (None, 0)])
    def test_one_more_charger_says_whether_it_wants_a_socket(self, sockets, more):
        assert self.kinds(sockets, 1)["one_more_charger", more].all_full

    def test_a_charger_with_the_missing_plug_wants_one_too(self):
        (remedy,) = found(raw_evening([raw_thing(connector="USB-C")], sockets=0))
        assert (remedy.kind, remedy.sockets, remedy.all_full) == ("charger_with_plug", 1, True)
