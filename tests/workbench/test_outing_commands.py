from datetime import timedelta

import pytest
from scenario import EVENING, changed

from kitlog.fault import InputFault
from kitlog.kit.kinds import Zone
from kitlog.outing.conditions import Condition
from kitlog.outing.outing import Outing
from kitlog.outing.ticks import Step, Tick, TickMark
from kitlog.workbench.workbench import Workbench


def first(bench: Workbench) -> Outing:
    return bench.outings()[0]


def id_of(bench: Workbench, name: str) -> str:
    return next(item.id for item in bench.items() if item.name == name)


class TestSaving:
    def test_items_may_be_named(self, bench: Workbench) -> None:
        bench.save_outing(changed(first(bench), pinned=["Phone"], left_out=["Fleece"], set={"wing": "Wing B"}))
        saved = first(bench)
        assert saved.pinned[0].item == id_of(bench, "Phone")
        assert saved.left_out == (id_of(bench, "Fleece"),)
        assert saved.set.wing == id_of(bench, "Wing B")

    def test_an_unknown_item_is_refused(self, bench: Workbench) -> None:
        before = first(bench)
        with pytest.raises(InputFault) as refused:
            bench.save_outing(changed(before, pinned=["kite"]))
        assert refused.value.code == "outing.unknown_item"
        assert first(bench) == before

    def test_other_hours_of_a_phase_are_one_step_that_says_all_three(self, bench: Workbench) -> None:
        before = first(bench)
        longer = before.phases[1].model_copy(update={"low_h": 1.0, "likely_h": 1.5, "high_h": 7.0})
        bench.change_phase(before.id, 1, longer)
        assert first(bench).phases == (before.phases[0], longer, *before.phases[2:])
        step = bench.undoable
        assert step is not None
        assert step.code == "outing.phase"
        assert step.facts == {"phase": longer.name, "low_h": 1.0, "likely_h": 1.5, "high_h": 7.0}
        bench.undo()
        assert first(bench) == before

    def test_deleting_takes_its_ticks(self, bench: Workbench) -> None:
        outing = first(bench)
        bench.tick(Tick(outing_id=outing.id, step=Step.STOW, line="x", at=EVENING))
        bench.delete_outing(outing.id)
        assert bench.outing(outing.id) is None
        assert bench.ticks(outing.id) == ()

    def test_unknown_outings_are_refused(self, bench: Workbench) -> None:
        acts = (
            lambda: bench.delete_outing("x"),
            lambda: bench.change_phase("x", 0, first(bench).phases[0]),
            lambda: bench.answer("x", "am.weather", "quiet"),
            lambda: bench.override("x", "people.nobody_told", "reason"),
            lambda: bench.leave_out("x", id_of(bench, "Phone")),
        )
        for act in acts:
            with pytest.raises(InputFault) as refused:
                act()
            assert refused.value.code == "outing.unknown"


class TestOverrides:
    KEY = "people.nobody_told"

    def test_carry_the_time_and_reach_the_assessment(self, bench: Workbench) -> None:
        bench.override(first(bench).id, self.KEY, "  told by radio  ")
        (override,) = first(bench).overrides
        assert (override.reason, override.at, override.struck_at) == ("told by radio", EVENING, None)
        found = next(f for f in bench.assess(first(bench)).findings if f.key == self.KEY)
        assert found.override == "told by radio"

    @pytest.mark.parametrize("reason", ["", "   ", "\n"])
    def test_want_a_reason(self, bench: Workbench, reason: str) -> None:
        with pytest.raises(InputFault) as refused:
            bench.override(first(bench).id, self.KEY, reason)
        assert refused.value.code == "override.no_reason"

    def test_stay_when_the_outing_is_saved_without_them(self, bench: Workbench) -> None:
        draft = first(bench)
        bench.override(draft.id, self.KEY, "told by radio")
        bench.save_outing(changed(draft, water_ml=1_000))
        assert [o.reason for o in first(bench).overrides] == ["told by radio"]
        assert first(bench).water_ml == 1_000

    def test_cannot_be_rewritten(self, bench: Workbench) -> None:
        bench.override(first(bench).id, self.KEY, "told by radio")
        (override,) = first(bench).overrides
        nicer = override.model_copy(update={"reason": "all well"})
        bench.save_outing(first(bench).model_copy(update={"overrides": (nicer,)}))
        assert [o.reason for o in first(bench).overrides] == ["told by radio"]

    def test_a_draft_from_before_does_not_bring_a_struck_one_back(self, bench: Workbench) -> None:
        bench.override(first(bench).id, self.KEY, "told by radio")
        draft = first(bench)
        bench.undo()
        bench.save_outing(changed(draft, water_ml=1_000))
        assert [o.struck_at for o in first(bench).overrides] == [EVENING]

    def test_several_of_one_finding_stand_in_turn(self, bench: Workbench, clock) -> None:
        for minutes, reason in ((0, "first"), (5, "second")):
            clock.at = EVENING + timedelta(minutes=minutes)
            bench.override(first(bench).id, self.KEY, reason)
        assert [o.reason for o in first(bench).overrides] == ["first", "second"]
        found = next(f for f in bench.assess(first(bench)).findings if f.key == self.KEY)
        assert found.override == "second"

    def test_two_at_the_same_moment_are_both_kept(self, bench: Workbench) -> None:
        for reason in ("first", "second"):
            bench.override(first(bench).id, self.KEY, reason)
        assert [o.reason for o in first(bench).overrides] == ["first", "second"]

    def test_are_struck_and_not_erased_when_the_outing_is_deleted_and_brought_back(self, bench: Workbench) -> None:
        bench.override(first(bench).id, self.KEY, "told by radio")
        outing = first(bench)
        bench.delete_outing(outing.id)
        bench.undo()
        assert first(bench) == outing


class TestAnswers:
    def test_carry_value_source_and_time(self, bench: Workbench) -> None:
        bench.answer(first(bench).id, "am.weather", "front at 18:00", "forecast of 7:00")
        (answer,) = first(bench).answers
        assert (answer.check, answer.value, answer.source, answer.at) == (
            "am.weather",
            "front at 18:00",
            "forecast of 7:00",
            EVENING,
        )

    def test_the_newer_one_replaces_the_older(self, bench: Workbench, clock) -> None:
        for minutes, value in ((0, "quiet"), (30, "gusty")):
            clock.at = EVENING + timedelta(minutes=minutes)
            bench.answer(first(bench).id, "am.weather", value)
        assert [a.value for a in first(bench).answers] == ["gusty"]


class TestConditions:
    @pytest.mark.parametrize("name", ["no signal", "no_signal", "NoSignal"])
    def test_ticked_in_any_spelling(self, bench: Workbench, name: str) -> None:
        bench.tick_condition(first(bench).id, name, holds=True)
        assert first(bench).conditions[Condition.NO_SIGNAL] is True

    @pytest.mark.parametrize("name", ["no signal", "no_signal"])
    def test_left_open_again(self, bench: Workbench, name: str) -> None:
        bench.tick_condition(first(bench).id, name, holds=None)
        assert Condition.NO_SIGNAL not in first(bench).conditions
        assert f"condition.{Condition.NO_SIGNAL.value}" in {q.id for q in bench.assess(first(bench)).questions}

    def test_one_that_is_not_there_is_refused(self, bench: Workbench) -> None:
        with pytest.raises(InputFault) as refused:
            bench.tick_condition(first(bench).id, "windy", holds=True)
        assert refused.value.code == "field.not_in_list"


class TestTicks:
    def tick(self, bench: Workbench, **fields: object) -> Tick:
        return Tick.model_validate({"outing_id": first(bench).id, "step": "stow", "line": "x", "at": EVENING} | fields)

    def test_ticked_and_unticked(self, bench: Workbench) -> None:
        bench.tick(self.tick(bench))
        assert bench.ticks(first(bench).id) == (self.tick(bench),)
        bench.untick(first(bench).id, Step.STOW, "x")
        assert bench.ticks(first(bench).id) == ()

    def test_one_tick_a_step_and_line(self, bench: Workbench) -> None:
        bench.tick(self.tick(bench))
        bench.tick(self.tick(bench, mark="missing", reason="left at the site"))
        bench.tick(self.tick(bench, step="charge"))
        marks = {(t.step, t.line): t.mark for t in bench.ticks(first(bench).id)}
        assert marks == {(Step.STOW, "x"): TickMark.MISSING, (Step.CHARGE, "x"): TickMark.DONE}

    def test_survive_closing_the_window(self, bench: Workbench, another: Workbench) -> None:
        bench.tick(self.tick(bench))
        bench.close()
        assert another.ticks(another.outings()[0].id) == (self.tick(another),)

    def test_of_an_unknown_outing_are_refused(self, bench: Workbench) -> None:
        with pytest.raises(InputFault):
            bench.tick(self.tick(bench, outing_id="nowhere"))


class TestTheList:
    def test_swap(self, bench: Workbench) -> None:
        old, new = id_of(bench, "Helmet B"), id_of(bench, "Helmet A")
        bench.swap(first(bench).id, old, new)
        outing = first(bench)
        assert outing.set.helmet == new
        assert old in outing.left_out
        assert new not in outing.left_out
        assert new in {pin.item for pin in outing.pinned}
        assert old not in {pin.item for pin in outing.pinned}

    def test_swap_there_and_back_goes_the_same_set(self, bench: Workbench) -> None:
        before = bench.assess(first(bench))
        old, new = id_of(bench, "Helmet B"), id_of(bench, "Helmet A")
        bench.swap(first(bench).id, old, new)
        bench.swap(first(bench).id, new, old)
        after = bench.assess(first(bench))
        assert {line.item.id for line in after.lines} == {line.item.id for line in before.lines}
        assert after.chosen == before.chosen

    def test_leave_out_and_take_along(self, bench: Workbench) -> None:
        camera = id_of(bench, "Action camera")
        bench.leave_out(first(bench).id, camera)
        assert bench.assess(first(bench)).line(camera) is None
        bench.take_along(first(bench).id, camera)
        line = bench.assess(first(bench)).line(camera)
        assert line is not None
        assert line.pinned

    def test_what_waits_in_the_car_is_taken_into_the_air(self, bench: Workbench) -> None:
        clothes = id_of(bench, "Dry clothes")
        bench.take_along(first(bench).id, clothes)
        line = bench.assess(first(bench)).line(clothes)
        assert line is not None
        assert line.zone is not Zone.LEFT_IN_CAR

    def test_unknown_items_are_refused(self, bench: Workbench) -> None:
        for act in (bench.leave_out, bench.take_along):
            with pytest.raises(InputFault) as refused:
                act(first(bench).id, "nobody")
            assert refused.value.code == "item.unknown"
