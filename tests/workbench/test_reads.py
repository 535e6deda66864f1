"""What the workbench can be asked, on the invented season (its dates and sums: worked by hand beside its tables)."""

from datetime import date, timedelta

import pytest
from scenario import EVENING, changed, judged

from kitlog.kit.due import DueState
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, Zone
from kitlog.workbench.reads import KitRow
from kitlog.workbench.workbench import Workbench

TODAY = EVENING.date()


def row(bench: Workbench, name: str) -> KitRow:
    return next(one for one in bench.kit_rows() if one.item.name == name)


class TestCurrentOuting:
    def test_there_is_none_in_a_new_file(self, empty: Workbench) -> None:
        assert empty.current_outing() is None

    def test_the_choice_of_the_pilot(self, bench: Workbench) -> None:
        second = bench.outings()[1]
        bench.work_on(second.id)
        assert bench.current_outing() == second

    def test_else_the_next_one_else_the_last_one(self, bench: Workbench, clock) -> None:
        bench.work_on("")
        for day, number in (
            (date(2026, 5, 9), 0),
            (date(2026, 5, 10), 1),
            (date(2026, 6, 21), 1),
            (date(2027, 1, 1), 2),
        ):
            clock.at = EVENING.replace(year=day.year, month=day.month, day=day.day)
            assert bench.current_outing() == bench.outings()[number]

    def test_a_deleted_choice_falls_back(self, bench: Workbench) -> None:
        bench.work_on(bench.outings()[1].id)
        bench.delete_outing(bench.outings()[1].id)
        assert bench.current_outing() == bench.outings()[0]

    def test_the_choice_is_kept_in_the_file(self, bench: Workbench, another: Workbench) -> None:
        bench.work_on(bench.outings()[2].id)
        assert another.current_outing() == bench.outings()[2]


class TestKitRows:
    def test_one_a_thing(self, bench: Workbench) -> None:
        assert [one.item for one in bench.kit_rows()] == list(bench.items())

    @pytest.mark.parametrize(
        ("name", "state"),
        [
            ("Wing A", DueState.DUE_SOON),
            ("Harness A", DueState.OVERDUE),
            ("Harness B", DueState.NO_RECORD),
            ("Reserve A", DueState.RECOMMENDED_PASSED),
            ("Helmet A", DueState.OVERDUE),
            ("Carabiners B", DueState.IN_DATE),
            ("First aid kit", DueState.DUE_SOON),
            ("Phone", DueState.NO_RULE),
        ],
    )
    def test_the_worst_of_its_rules_today(self, bench: Workbench, name: str, state: DueState) -> None:
        assert row(bench, name).due_state is state

    def test_last_carried(self, bench: Workbench) -> None:
        assert row(bench, "Wing A").last_carried == date(2026, 4, 18)
        assert row(bench, "Foil blanket").last_carried == date(2026, 4, 18)
        assert row(bench, "Wing B").last_carried == date(2026, 4, 12)
        assert row(bench, "Life vest").last_carried is None

    def test_usual_zones_are_filled_in(self, empty: Workbench) -> None:
        empty.add_item(Item(id="j", name="jacket", kind=Kind.GARMENT))
        empty.add_item(Item(id="h", name="helmet", kind=Kind.HELMET))
        zones = {one.item.name: (one.zone, one.zone_on_foot) for one in empty.kit_rows()}
        assert zones == {"jacket": (Zone.WORN, Zone.WORN), "helmet": (Zone.WORN, Zone.RUCKSACK)}

    def test_zones_are_those_of_the_list(self, bench: Workbench) -> None:
        """What is worn or left in the car by choice is so on foot too: table and list say the same."""
        bench.add_item(Item(id="x", name="belt", kind=Kind.OTHER, zone=Zone.WORN))
        line = bench.assess(changed(bench.outings()[0], pinned=["belt"])).line("x")
        assert line is not None
        assert (row(bench, "belt").zone, row(bench, "belt").zone_on_foot) == (line.zone, line.zone_on_foot)

    def test_said_and_guessed(self, bench: Workbench) -> None:
        bench.add_item(Item(id="k", name="Line cutter", kind=Kind.TOOL))
        assert (row(bench, "Line cutter").serves, row(bench, "Line cutter").guessed) == ({"hook knife"}, True)
        assert row(bench, "Hook knife").guessed is False


class TestImplausible:
    @pytest.mark.parametrize(
        ("kind", "mass_g", "asked"),
        [
            (Kind.WING, 5_240, False),
            (Kind.WING, 52, True),
            (Kind.HELMET, 380, False),
            (Kind.HELMET, 3_800, True),
            (Kind.PHONE, None, False),
        ],
    )
    def test_outside_the_usual_masses_it_asks(
        self, bench: Workbench, kind: Kind, mass_g: int | None, asked: bool
    ) -> None:
        thing = Item(id="x", name="x", kind=kind, mass_g=mass_g)
        assert (bench.implausible(thing) is not None) is asked

    def test_a_bank_by_its_energy(self, bench: Workbench) -> None:
        """3.5 to 12 g per Wh (from memory of handling banks): 37 Wh weigh 130 to 444 g."""

        def bank(mass_g: int) -> Item:
            return Item.model_validate(
                {"id": "x", "name": "x", "kind": "power bank", "mass_g": mass_g, "battery": {"wh": 37}}
            )

        assert bench.implausible(bank(200)) is None
        assert bench.implausible(bank(500)) == (130, 444)

    def test_it_refuses_nothing(self, bench: Workbench) -> None:
        bench.add_item(Item(id="x", name="feather wing", kind=Kind.WING, mass_g=52))
        assert row(bench, "feather wing").implausible
        assert not any(one.implausible for one in bench.kit_rows() if one.item.id != "x")


class TestDue:
    def test_the_most_pressing_first(self, bench: Workbench) -> None:
        lines = bench.due(TODAY)
        states = [line.due.state for line in lines]
        order = [DueState.OVERDUE, DueState.DUE_SOON, DueState.RECOMMENDED_PASSED, DueState.NO_RECORD, DueState.IN_DATE]
        ranks = [order.index(state) for state in states if state in order]
        assert ranks == sorted(ranks)
        overdue = [line.due.days_left for line in lines if line.due.state is DueState.OVERDUE]
        assert overdue == sorted(overdue)  # type: ignore[type-var]

    def test_every_rule_has_its_line(self, bench: Workbench) -> None:
        assert {line.rule.id for line in bench.due(TODAY)} == {rule.id for rule in bench.rules()}

    def test_what_is_lost_or_retired_is_not_due(self, bench: Workbench) -> None:
        helmet = next(item for item in bench.items() if item.name == "Helmet A")
        bench.set_state([helmet.id], "retired")  # type: ignore[arg-type]
        assert helmet.id not in {line.item.id for line in bench.due(TODAY)}

    def test_a_state_belongs_to_a_day(self, bench: Workbench) -> None:
        def first_aid(on: date) -> DueState:
            return next(line.due.state for line in bench.due(on) if line.item.name == "First aid kit")

        assert first_aid(TODAY) is DueState.DUE_SOON
        assert first_aid(TODAY + timedelta(days=1)) is DueState.OVERDUE


class TestUsage:
    def test_airtime_of_the_log(self, bench: Workbench) -> None:
        """Five flights of 16.417 h and the typed totals of 52.0 h."""
        wing = next(item for item in bench.items() if item.name == "Wing A")
        assert bench.usage(wing.id, TODAY).airtime_h == pytest.approx(16.417 + 52.0, abs=0.001)
        assert bench.usage("nobody", TODAY).airtime_h == 0

    def test_the_usual_set_is_the_last_flown(self, bench: Workbench) -> None:
        names = {item.id: item.name for item in bench.items()}
        assert {names[one] for one in bench.usual_set()} >= {"Wing A", "Harness A", "Helmet A"}

    def test_a_new_file_has_none(self, empty: Workbench) -> None:
        assert empty.usual_set() == ()


class TestAssess:
    def test_is_the_same_as_without_a_file(self, bench: Workbench) -> None:
        outing = bench.outings()[0]
        stored = bench.assess(outing)
        assert stored.counts == judged(outing).counts
        assert stored.mass.take_off_g == 96_200

    def test_a_draft_is_not_written(self, bench: Workbench, another: Workbench) -> None:
        draft = changed(bench.outings()[0], water_ml=0)
        assert bench.assess(draft).counts.stop == 1
        assert bench.outings()[0].water_ml == 2_000
        assert another.look_again() is False

    def test_an_outing_that_was_never_saved(self, bench: Workbench) -> None:
        draft = changed(bench.outings()[0], id="never saved", pinned=["Wing A"], left_out=[])
        assert bench.assess(draft).lines


class TestPilots:
    def test_pilot_and_passenger_are_told_apart(self, empty: Workbench) -> None:
        assert empty.pilot() is None
        empty.save_pilot(_person("q", "passenger"))
        assert empty.pilot() is None
        empty.save_pilot(_person("p", "pilot"))
        assert empty.pilot() == _person("p", "pilot")
        assert empty.kit().passenger == _person("q", "passenger")


def _person(id_: str, role: str) -> object:
    from kitlog.outing.pilot import Pilot

    return Pilot.model_validate({"id": id_, "name": id_, "role": role})
