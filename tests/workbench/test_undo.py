"""Each command: one step, taken back and done again without a trace; history keeps struck-through entries."""

from collections.abc import Callable
from datetime import timedelta

import pytest
from reads import all_reads
from scenario import EVENING, LIBRARY, changed

from kitlog.fault import SystemFault
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, Kind, Zone
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.outing.outing import Outing
from kitlog.outing.pilot import BodyMass, Pilot
from kitlog.outing.ticks import Step, Tick
from kitlog.workbench.undo_list import DEPTH
from kitlog.workbench.workbench import Workbench

TODAY = EVENING.date()


def item_called(bench: Workbench, name: str) -> Item:
    return next(item for item in bench.items() if item.name == name)


def id_of(bench: Workbench, name: str) -> str:
    return item_called(bench, name).id


def first(bench: Workbench) -> Outing:
    return bench.outings()[0]


def edited(bench: Workbench, name: str, **fields: object) -> Item:
    return Item.model_validate({**item_called(bench, name).model_dump(), **fields})


def rule_of(bench: Workbench, item: str, rule: str) -> ServiceRule:
    item_id = id_of(bench, item)
    return next(r for r in bench.rules() if (r.item_id, r.rule) == (item_id, rule))


def record_of(bench: Workbench) -> ServiceRecord:
    rule = rule_of(bench, "First aid kit", "firstaid.check")
    return ServiceRecord(id="rec", item_id=rule.item_id, rules=(rule.id,), done_on=TODAY, who="Ines")


def with_draw(bench: Workbench) -> Item:
    phone = item_called(bench, "Phone")
    assert phone.battery is not None
    ways = [{**way.model_dump(), "power_w": way.power_w + 1, "high_w": None} for way in phone.battery.ways]
    return edited(bench, "Phone", battery={**phone.battery.model_dump(), "ways": ways})


def preview(bench: Workbench) -> None:
    data = b"name,kind,mass_g,fitted_to\nTripod,other,900,\nHead,other,200,Tripod\nStrap,other,20,Harness A\n"
    bench.import_kit(bench.preview_kit(data, "more.csv"))


FRESH = Item(id="fresh", name="Tripod", kind=Kind.OTHER, mass_g=900)
FLOWN = Flight.model_validate({"id": "flown", "on": "2026-05-07", "airtime_min": 60})

COMMANDS: dict[str, Callable[[Workbench], object]] = {
    "add_item": lambda b: b.add_item(FRESH),
    "edit_items": lambda b: b.edit_items([edited(b, "Fleece", mass_g=300), edited(b, "Boots", notes="resoled")]),
    "edit_items, ways of use": lambda b: b.edit_items([with_draw(b)]),
    "duplicate_item": lambda b: b.duplicate_item(id_of(b, "Phone")),
    "delete_items": lambda b: b.delete_items([id_of(b, "Cables"), id_of(b, "Headlamp")]),
    "delete_items, with a rule": lambda b: b.delete_items([id_of(b, "Locator beacon")]),
    "set_state": lambda b: b.set_state([id_of(b, "Wing B"), id_of(b, "Harness B")], ItemState.LENT),
    "set_zone": lambda b: b.set_zone([id_of(b, "Fleece")], Zone.BACK_POCKET, Zone.RUCKSACK),
    "save_pilot": lambda b: b.save_pilot(Pilot(id="friend", name="Leda")),
    "add_body_mass": lambda b: b.add_body_mass(BodyMass(taken_on=TODAY, mass_g=73_500)),
    "add_flight": lambda b: b.add_flight(FLOWN),
    "add_flight, with kit": lambda b: b.add_flight(FLOWN.model_copy(update={"flown": (b.items()[0].id,)})),
    "edit_flight": lambda b: b.edit_flight(Flight.model_validate({**b.flights()[-1].model_dump(), "note": "again"})),
    "delete_flight": lambda b: b.delete_flight(b.flights()[0].id),
    "save_rule": lambda b: b.save_rule(ServiceRule(id="own", item_id=id_of(b, "Boots"), rule="resole", months=24)),
    "save_rule, changed": lambda b: b.save_rule(
        ServiceRule.model_validate({**rule_of(b, "Wing A", "wing.full").model_dump(), "months": 12})
    ),
    "delete_rule": lambda b: b.delete_rule(rule_of(b, "Helmet B", "helmet.age").id),
    "take_starters": lambda b: b.take_starters(id_of(b, "Hook knife"), ["knife.blade"]),
    "strike_event": lambda b: b.strike_event(b.events()[0].id),
    "strike_record": lambda b: b.strike_record(b.records()[0].id),
    "save_outing, new": lambda b: b.save_outing(changed(first(b), id="more", name="another day")),
    "save_outing, changed": lambda b: b.save_outing(changed(first(b), water_ml=1_500, pinned=[], people=[])),
    "delete_outing": lambda b: b.delete_outing(first(b).id),
    "answer": lambda b: b.answer(first(b).id, "am.weather", "quiet", "forecast"),
    "tick_condition": lambda b: b.tick_condition(first(b).id, "border", holds=True),
    "tick_condition, open again": lambda b: b.tick_condition(first(b).id, "forest", holds=None),
    "tick": lambda b: b.tick(Tick(outing_id=first(b).id, step=Step.STOW, line=id_of(b, "Phone"), at=EVENING)),
    "tick, closing": lambda b: b.tick(Tick(outing_id=first(b).id, step=Step.CLOSE, line="repack", at=EVENING)),
    "swap": lambda b: b.swap(first(b).id, id_of(b, "Helmet B"), id_of(b, "Helmet A")),
    "leave_out": lambda b: b.leave_out(first(b).id, id_of(b, "Action camera")),
    "take_along": lambda b: b.take_along(first(b).id, id_of(b, "Ballast bag")),
    "import_kit": preview,
}

HISTORY: dict[str, Callable[[Workbench], object]] = {
    "add_record": lambda b: b.add_record(record_of(b)),
    "log_event": lambda b: b.log_event(Event(id="ev", item_id=id_of(b, "Helmet B"), on=TODAY, kind="blow")),
    "log_incident": lambda b: b.log_incident(
        b.incident("hard landing"), [id_of(b, "Harness A"), id_of(b, "Phone")], TODAY
    ),
    "override": lambda b: b.override(first(b).id, "people.nobody_told", "told by radio"),
    "edit_items, new pairing": lambda b: b.edit_items([edited(b, "Reserve A", fitted_to=id_of(b, "Harness B"))]),
}
"""Commands that enter something an inspector or buyer reads."""


@pytest.mark.parametrize("name", COMMANDS)
class TestCommand:
    def test_undo_and_redo_leave_no_trace(self, bench: Workbench, another: Workbench, name: str) -> None:
        before = all_reads(bench)
        COMMANDS[name](bench)
        after = all_reads(bench)
        assert after != before
        for _ in range(2):
            assert bench.undo() is not None
            assert all_reads(bench) == all_reads(another) == before
            assert bench.redo() is not None
            assert all_reads(bench) == all_reads(another) == after

    def test_is_one_step(self, bench: Workbench, name: str) -> None:
        assert bench.undoable is None
        COMMANDS[name](bench)
        step = bench.undoable
        assert step is not None
        assert bench.undo() == step
        assert (bench.undoable, bench.redoable) == (None, step)
        assert bench.undo() is None

    def test_tells_what_changed_each_time(self, bench: Workbench, name: str) -> None:
        heard = []
        stop = bench.on_change(heard.append)
        COMMANDS[name](bench)
        bench.undo()
        bench.redo()
        stop()
        bench.undo()
        assert len(heard) == 3
        assert heard[0] == heard[1] == heard[2]
        assert heard[0].kinds
        assert heard[0].ids


@pytest.mark.parametrize("name", HISTORY)
class TestHistory:
    def test_undo_leaves_a_struck_entry_and_redo_clears_it(self, bench: Workbench, clock, name: str) -> None:
        before = all_reads(bench)
        HISTORY[name](bench)
        after = all_reads(bench)
        clock.at = EVENING + timedelta(minutes=5)
        bench.undo()
        struck = all_reads(bench)
        assert struck != before
        assert without_struck(struck) == without_struck(before)
        bench.redo()
        assert all_reads(bench) == after

    def test_what_is_struck_counts_for_nothing(self, bench: Workbench, name: str) -> None:
        before = bench.assess(first(bench)).findings
        HISTORY[name](bench)
        bench.undo()
        assert bench.assess(first(bench)).findings == before


def without_struck(reads: dict[str, object]) -> dict[str, object]:
    """The reads as a person who does not look at struck entries has them."""
    outings = tuple(
        outing.model_copy(update={"overrides": tuple(o for o in outing.overrides if o.struck_at is None)})
        for outing in reads["outings"]  # type: ignore[attr-defined]
    )
    kept = {name: tuple(one for one in reads[name] if one.struck_at is None) for name in ("records", "events")}  # type: ignore[attr-defined]
    return {**reads, **kept, "outings": outings}


class TestList:
    def test_a_new_step_makes_redo_impossible(self, bench: Workbench) -> None:
        bench.add_item(FRESH)
        bench.undo()
        bench.set_state([id_of(bench, "Wing B")], ItemState.LENT)
        assert bench.redoable is None
        assert bench.redo() is None

    def test_steps_are_taken_back_in_turn(self, bench: Workbench) -> None:
        states = [all_reads(bench)]
        for name in ("add_item", "set_state", "answer", "swap"):
            COMMANDS[name](bench)
            states.append(all_reads(bench))
        for state in reversed(states[:-1]):
            bench.undo()
            assert all_reads(bench) == state
        for state in states[1:]:
            bench.redo()
            assert all_reads(bench) == state

    def test_goes_so_deep_and_no_deeper(self, bench: Workbench) -> None:
        for n in range(DEPTH + 5):
            bench.add_item(Item(id=f"many {n}", name=f"many {n}"))
        undone = 0
        while bench.undo() is not None:
            undone += 1
        assert undone == DEPTH
        assert [item.name for item in bench.items()][-1] == "many 4"

    def test_a_command_that_changes_nothing_is_no_step_and_tells_nobody(self, bench: Workbench) -> None:
        heard = []
        bench.on_change(heard.append)
        bench.edit_items([item_called(bench, "Phone")])
        bench.set_zone([id_of(bench, "Phone")], None)
        bench.save_outing(first(bench))
        bench.untick(first(bench).id, Step.STOW, "nothing")
        assert bench.undoable is None
        assert heard == []

    def test_preferences_and_the_outing_being_worked_on_are_no_steps(self, bench: Workbench) -> None:
        bench.set_preference("units", "metric")
        bench.work_on(bench.outings()[1].id)
        assert bench.undoable is None
        assert bench.preference("units") == "metric"

    def test_nothing_is_put_over_what_somebody_else_wrote(self, bench: Workbench, another: Workbench) -> None:
        bench.edit_items([edited(bench, "Fleece", mass_g=300)])
        another.edit_items([edited(another, "Fleece", mass_g=280)])
        with pytest.raises(SystemFault) as refused:
            bench.undo()
        assert refused.value.code == "undo.moved_on"
        assert item_called(bench, "Fleece").mass_g == 280

    def test_the_first_outing_is_of_the_library(self, bench: Workbench) -> None:
        assert all(LIBRARY.flight_type(name) for outing in bench.outings() for name in outing.flight_types)
