import pytest
from scenario import EVENING

from kitlog.fault import InputFault
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, Zone
from kitlog.kit.service import Event
from kitlog.outing.outing import Outing
from kitlog.outing.pilot import BodyMass
from kitlog.workbench.incident_rows import NEW_PAIRING
from kitlog.workbench.workbench import Workbench


def called(bench: Workbench, name: str) -> Item:
    return next(item for item in bench.items() if item.name == name)


def edited(bench: Workbench, name: str, **fields: object) -> Item:
    return Item.model_validate({**called(bench, name).model_dump(), **fields})


def mentions(outing: Outing, item_id: str) -> bool:
    return item_id in outing.model_dump_json()


class TestEditing:
    def test_several_at_once(self, bench: Workbench) -> None:
        bench.edit_items([edited(bench, "Boots", mass_g=1_200), edited(bench, "Fleece", colour="green")])
        assert (called(bench, "Boots").mass_g, called(bench, "Fleece").colour) == (1_200, "green")

    def test_what_was_deleted_meanwhile_does_not_come_back(self, bench: Workbench) -> None:
        cables = called(bench, "Cables")
        bench.delete_items([cables.id])
        with pytest.raises(InputFault) as refused:
            bench.edit_items([cables])
        assert refused.value.code == "item.unknown"
        assert bench.item(cables.id) is None

    def test_states_and_zones_of_many(self, bench: Workbench) -> None:
        ids = [called(bench, name).id for name in ("Wing B", "Harness B")]
        bench.set_state(ids, ItemState.LENT)
        bench.set_zone(ids, None, Zone.IN_HAND)
        for name, zone in (("Wing B", Zone.OVERHEAD), ("Harness B", Zone.HARNESS)):
            item = called(bench, name)
            assert (item.state, item.zone, item.zone_on_foot) == (ItemState.LENT, zone, Zone.IN_HAND)

    def test_an_unknown_item_is_refused_and_nothing_is_written(self, bench: Workbench) -> None:
        with pytest.raises(InputFault) as refused:
            bench.set_state([called(bench, "Wing B").id, "nobody"], ItemState.LENT)
        assert refused.value.code == "item.unknown"
        assert called(bench, "Wing B").state is ItemState.IN_SERVICE


class TestPairs:
    """A changed pair of reserve and harness is an event: an authorised person checks that they fit (an association's
    order of 1997, in the project's reference)."""

    def pairings(self, bench: Workbench) -> list[str]:
        return [event.item_id for event in bench.events() if event.kind == NEW_PAIRING]

    def test_a_reserve_in_another_harness_is_an_event(self, bench: Workbench) -> None:
        harness = called(bench, "Harness B")
        bench.edit_items([edited(bench, "Reserve A", fitted_to=harness.id)])
        assert self.pairings(bench) == [called(bench, "Reserve A").id]

    def test_it_opens_the_rule_that_asks_for_the_check(self, bench: Workbench) -> None:
        reserve = called(bench, "Reserve A")
        bench.take_starters(reserve.id, ["reserve.fit"])
        bench.edit_items([edited(bench, "Reserve A", fitted_to=called(bench, "Harness B").id)])
        outing = bench.outings()[0]
        stops = {f.subject for f in bench.assess(outing).findings if f.state == "stop" and f.code == "service.overdue"}
        assert f"{reserve.id}:reserve.fit" in stops

    @pytest.mark.parametrize(
        ("name", "fields"),
        [
            ("Reserve A", {"fitted_to": None}),
            ("Reserve A", {"mass_g": 1_700}),
            ("Camera spare battery", {"fitted_to": None}),
        ],
    )
    def test_other_changes_are_none(self, bench: Workbench, name: str, fields: dict[str, object]) -> None:
        bench.edit_items([edited(bench, name, **fields)])
        assert self.pairings(bench) == []

    def test_the_first_pairing_is_none(self, bench: Workbench) -> None:
        bench.add_item(Item.model_validate({"id": "new", "name": "Reserve C", "kind": "reserve"}))
        bench.edit_items([edited(bench, "Reserve C", fitted_to=called(bench, "Harness B").id)])
        assert self.pairings(bench) == []


class TestDuplicating:
    def test_a_twin_without_history_serial_number_and_pair(self, bench: Workbench) -> None:
        bench.edit_items([edited(bench, "Carabiners A", serial="1234")])
        original = called(bench, "Carabiners A")
        twin = bench.item(bench.duplicate_item(original.id))
        assert twin is not None
        assert twin == original.model_copy(update={"id": twin.id, "serial": "", "fitted_to": None})
        assert not [rule for rule in bench.rules() if rule.item_id == twin.id]


class TestDeleting:
    @pytest.mark.parametrize("name", ["Wing A", "Foil blanket", "Helmet A", "Life vest"])
    def test_what_has_history_is_refused(self, bench: Workbench, name: str) -> None:
        """Flown, only carried, an event, a record."""
        with pytest.raises(InputFault) as refused:
            bench.delete_items([called(bench, "Cables").id, called(bench, name).id])
        assert (refused.value.code, refused.value.facts["name"]) == ("item.has_history", name)
        assert called(bench, "Cables")

    def test_an_event_alone_is_history(self, bench: Workbench) -> None:
        sandwich = called(bench, "Sandwich").id
        bench.log_event(Event(id="e", item_id=sandwich, on=EVENING.date(), kind="dropped"))
        with pytest.raises(InputFault):
            bench.delete_items([sandwich])

    def test_struck_history_is_history(self, bench: Workbench) -> None:
        record = next(r for r in bench.records() if r.item_id == called(bench, "Power bank").id)
        bench.strike_record(record.id)
        with pytest.raises(InputFault):
            bench.delete_items([called(bench, "Power bank").id])

    def test_outings_forget_it(self, bench: Workbench) -> None:
        first = bench.outings()[0]
        phone, sandwich = called(bench, "Phone").id, called(bench, "Sandwich").id
        plan = {
            **first.model_dump(),
            "uses": [{"item": phone, "phase": "flight", "way": "flight, screen on", "share": 1.0}],
            "plugs": [{"phase": "ride home", "device": phone, "bank": called(bench, "Power bank").id}],
        }
        bench.save_outing(Outing.model_validate(plan))
        assert any(mentions(outing, phone) for outing in bench.outings())
        bench.delete_items([phone, sandwich])
        assert not any(mentions(outing, one) for outing in bench.outings() for one in (phone, sandwich))
        assert bench.outings()[0].plugs == ()
        assert bench.assess(bench.outings()[0]).lines

    def test_its_rules_go_and_what_is_fitted_to_it_is_loosened(self, bench: Workbench) -> None:
        bench.add_item(Item(id="case", name="Case"))
        bench.add_item(Item(id="strap", name="Strap", fitted_to="case"))
        beacon = called(bench, "Locator beacon").id
        bench.delete_items(["case", beacon])
        assert called(bench, "Strap").fitted_to is None
        assert not [rule for rule in bench.rules() if rule.item_id == beacon]

    def test_a_chosen_wing_is_no_longer_chosen(self, bench: Workbench) -> None:
        bench.add_item(Item.model_validate({"id": "c", "name": "Wing C", "kind": "wing"}))
        bench.save_outing(Outing.model_validate({**bench.outings()[0].model_dump(), "set": {"wing": "c"}}))
        bench.delete_items(["c"])
        assert bench.outings()[0].set.wing is None


class TestBodyMass:
    def test_a_new_file_gets_a_pilot_with_the_first_mass(self, empty: Workbench) -> None:
        empty.add_body_mass(BodyMass(taken_on=EVENING.date(), mass_g=74_000), "Ines")
        pilot = empty.pilot()
        assert pilot is not None
        assert (pilot.name, [m.mass_g for m in pilot.masses]) == ("Ines", [74_000])

    def test_the_same_day_is_replaced_and_others_are_kept(self, bench: Workbench) -> None:
        for mass_g in (74_400, 73_900):
            bench.add_body_mass(BodyMass(taken_on=EVENING.date(), mass_g=mass_g))
        pilot = bench.pilot()
        assert pilot is not None
        assert pilot.name == "Ines Maravel"
        assert sorted(m.mass_g for m in pilot.masses) == [73_900, 74_000, 74_000]
