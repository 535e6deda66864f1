"""Two windows on one data file, listeners, and reads that are kept."""

import pytest
from reads import all_reads
from scenario import EVENING

from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState
from kitlog.workbench.change import EVERYTHING, Change
from kitlog.workbench.workbench import Workbench

FRESH = Item(id="fresh", name="Tripod")


class TestLookAgain:
    def test_nothing_new_is_told_to_nobody(self, bench: Workbench) -> None:
        heard: list[Change] = []
        bench.on_change(heard.append)
        assert bench.look_again() is False
        assert heard == []

    def test_own_writes_are_nothing_new(self, bench: Workbench) -> None:
        bench.add_item(FRESH)
        assert bench.look_again() is False
        assert bench.undoable is not None

    def test_another_writer_is_noticed_once(self, bench: Workbench, another: Workbench) -> None:
        heard: list[Change] = []
        bench.on_change(heard.append)
        another.add_item(FRESH)
        assert bench.look_again() is True
        assert heard == [Change(frozenset({EVERYTHING}), frozenset())]
        assert heard[0].touches("item")
        assert bench.look_again() is False

    def test_undo_and_redo_are_forgotten(self, bench: Workbench, another: Workbench) -> None:
        bench.add_item(Item(id="a", name="a"))
        bench.add_item(Item(id="b", name="b"))
        bench.undo()
        another.add_item(FRESH)
        bench.look_again()
        assert (bench.undoable, bench.redoable) == (None, None)
        assert bench.undo() is None
        assert bench.redo() is None

    def test_an_own_write_in_between_does_not_hide_the_other(self, bench: Workbench, another: Workbench) -> None:
        another.add_item(FRESH)
        bench.set_preference("units", "metric")
        assert bench.look_again() is True


class TestMoved:
    def test_a_read_that_meets_what_another_wrote_says_so_once(self, bench: Workbench, another: Workbench) -> None:
        moved: list[int] = []
        bench.items()
        stop = bench.on_moved(lambda: moved.append(1))
        bench.items()
        assert moved == []
        another.add_item(FRESH)
        bench.items()
        bench.outings()
        assert moved == [1]
        assert bench.look_again() is True
        bench.items()
        assert moved == [1]
        stop()
        another.delete_items(["fresh"])
        bench.items()
        assert moved == [1]

    def test_what_was_told_before_it_was_read_is_no_news(self, bench: Workbench, another: Workbench) -> None:
        moved: list[int] = []
        bench.on_moved(lambda: moved.append(1))
        another.add_item(FRESH)
        bench.look_again()
        bench.items()
        assert moved == []


class TestReads:
    def test_are_fresh_after_another_wrote_even_before_looking(self, bench: Workbench, another: Workbench) -> None:
        for which in (bench, another):
            all_reads(which)
        another.add_item(FRESH)
        assert bench.item("fresh") == FRESH

    def test_a_write_keeps_what_another_wrote(self, bench: Workbench, another: Workbench) -> None:
        outing = bench.outings()[0]
        another.answer(outing.id, "am.weather", "quiet")
        bench.answer(outing.id, "am.pilot", "well")
        assert {a.check for a in another.outings()[0].answers} == {"am.weather", "am.pilot"}

    def test_an_item_that_another_changed_is_not_put_back(self, bench: Workbench, another: Workbench) -> None:
        wing = bench.items()[0]
        another.edit_items([wing.model_copy(update={"notes": "checked"})])
        bench.set_state([wing.id], ItemState.LENT)
        now = bench.item(wing.id)
        assert now is not None
        assert (now.notes, now.state) == ("checked", ItemState.LENT)

    def test_are_kept_until_something_changes(self, bench: Workbench) -> None:
        items, outings = bench.items(), bench.outings()
        assert bench.items() is items
        bench.add_item(FRESH)
        assert bench.items() is not items
        assert bench.outings() is outings

    def test_a_write_that_fails_leaves_them_as_they_were(self, bench: Workbench) -> None:
        before = all_reads(bench)
        heard: list[Change] = []
        bench.on_change(heard.append)
        with pytest.raises(Exception, match=r"data_file\.dangling"):
            bench.add_item(Item(id="x", name="x", fitted_to="nobody"))
        assert all_reads(bench) == before
        assert bench.undoable is None
        assert heard == []


class TestListeners:
    def test_kinds_and_ids(self, bench: Workbench) -> None:
        heard: list[Change] = []
        bench.on_change(heard.append)
        bench.add_item(FRESH)
        assert heard == [Change(frozenset({"item"}), frozenset({"fresh"}))]
        assert heard[0].touches("item", "flight")
        assert not heard[0].touches("flight")

    def test_rules_and_records_by_their_short_names(self, bench: Workbench) -> None:
        heard: list[Change] = []
        bench.on_change(heard.append)
        bench.strike_record(bench.records()[0].id)
        bench.take_starters(next(i.id for i in bench.items() if i.name == "Hook knife"), ["knife.blade"])
        assert [change.kinds for change in heard] == [frozenset({"record"}), frozenset({"rule"})]

    def test_a_listener_may_read_and_leave(self, bench: Workbench) -> None:
        seen: list[int] = []

        def hear(_change: Change) -> None:
            seen.append(len(bench.items()))
            stop()

        stop = bench.on_change(hear)
        bench.add_item(FRESH)
        bench.undo()
        assert seen == [50]

    def test_one_that_leaves_does_not_silence_the_next(self, bench: Workbench) -> None:
        seen: list[str] = []
        stop = bench.on_change(lambda _change: (seen.append("first"), stop()))
        bench.on_change(lambda _change: seen.append("second"))
        bench.add_item(FRESH)
        bench.undo()
        assert seen == ["first", "second", "second"]


def test_the_file_can_be_named_and_closed_twice(bench: Workbench) -> None:
    assert bench.path.name == "demo.kitlog"
    bench.close()
    bench.close()


def test_the_clock_is_the_one_given(bench: Workbench) -> None:
    assert bench.now() == EVENING
