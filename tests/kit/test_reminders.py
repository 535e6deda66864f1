"""How the entries of one calendar file follow those of the last."""

from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from kitlog.kit.due import Due, DueState
from kitlog.kit.foresight import RunOut
from kitlog.kit.reminder import Reminder
from kitlog.kit.reminders import Entry, Wanted, back_soon, back_uid, day_of, entries, service_uid, stem_of
from kitlog.kit.service import Event, Grounds, Result, ServiceRecord
from kitlog.kit.serviced import ServicedItem

TODAY = date(2026, 5, 8)
SOON = date(2026, 6, 15)


def wanted(uid: str = "r.0@kitlog", on: date = SOON, summary: str = "Due: wing") -> Wanted:
    return Wanted(uid, on, 45, summary, "Due 15 Jun 2026.")


def told(*these: Wanted, old: tuple[Reminder, ...] = (), today: date = TODAY) -> tuple[Entry, ...]:
    return entries(these, old, today, {"r": "Due: wing"}, "No longer due")[0]


def remembered(*these: Wanted, old: tuple[Reminder, ...] = (), today: date = TODAY) -> tuple[Reminder, ...]:
    """All rows as they lie after the file was written."""
    new = {row.id: row for row in entries(these, old, today, {}, "No longer due")[1]}
    return tuple(({row.id: row for row in old} | new).values())


class TestSequence:
    def test_a_new_entry_begins_at_nought(self) -> None:
        (entry,) = told(wanted())
        assert (entry.sequence, entry.changed, entry.cancelled) == (0, True, False)

    def test_what_says_the_same_keeps_its_number_and_is_not_remembered_anew(self) -> None:
        old = remembered(wanted())
        (entry,) = told(wanted(), old=old)
        assert (entry.sequence, entry.changed) == (0, False)
        assert entries([wanted()], old, TODAY, {}, "")[1] == ()

    def test_another_day_or_other_words_raise_it_by_one(self) -> None:
        old = remembered(wanted())
        for other in (wanted(on=SOON + timedelta(days=1)), wanted(summary="Due: Wing A")):
            (entry,) = told(other, old=old)
            assert (entry.sequence, entry.changed) == (1, True)

    @given(st.lists(st.none() | st.integers(0, 2), min_size=1, max_size=8))
    def test_it_never_falls_and_rises_with_each_change(self, says: list[int | None]) -> None:
        """A calendar takes the entry with the higher SEQUENCE (RFC 5546 2.1.4)."""
        old: tuple[Reminder, ...] = ()
        last: tuple[int, object] | None = None
        for what in says:
            these = () if what is None else (wanted(summary=f"Due {what}"),)
            for entry in told(*these, old=old):
                said = (entry.cancelled, entry.wanted.summary)
                if last is not None:
                    assert entry.sequence == last[0] + (said != last[1])
                last = (entry.sequence, said)
            old = remembered(*these, old=old)


class TestTakenBack:
    def test_what_is_done_is_cancelled_with_a_raised_number(self) -> None:
        old = remembered(wanted())
        gone, new = told(wanted("r.20260508@kitlog", date(2027, 5, 8)), old=old)
        assert (gone.wanted.uid, gone.sequence, gone.cancelled) == ("r.0@kitlog", 1, True)
        assert (gone.wanted.on, gone.wanted.summary) == (SOON, "Due: wing")
        assert (new.wanted.uid, new.sequence, new.cancelled) == ("r.20260508@kitlog", 0, False)

    def test_it_is_told_again_with_the_same_number_for_60_days_after_its_day(self) -> None:
        old = remembered(old=remembered(wanted()))
        for today in (SOON, SOON + timedelta(days=60)):
            (again,) = told(old=old, today=today)
            assert (again.sequence, again.cancelled, again.changed, again.wanted.on) == (1, True, False, SOON)
        assert told(old=old, today=SOON + timedelta(days=61)) == ()

    def test_one_whose_day_is_long_past_is_told_again_as_well(self) -> None:
        old = remembered(wanted(on=date(2026, 1, 10)))
        assert [(entry.cancelled, entry.wanted.on) for entry in told(old=old)] == [(True, TODAY)]
        taken_back = remembered(old=old)
        (again,) = told(old=taken_back, today=TODAY + timedelta(days=60))
        assert (again.sequence, again.cancelled, again.changed, again.wanted.on) == (1, True, False, TODAY)
        assert told(old=taken_back, today=TODAY + timedelta(days=61)) == ()

    def test_a_struck_record_brings_it_back(self) -> None:
        old = remembered(old=remembered(wanted()))
        (entry,) = told(wanted(), old=old)
        assert (entry.sequence, entry.cancelled) == (2, False)

    def test_one_whose_rule_is_gone_has_a_title_all_the_same(self) -> None:
        (entry,) = entries([], remembered(wanted()), TODAY, {}, "No longer due")[0]
        assert entry.wanted.summary == "No longer due"


def test_a_uid_is_of_the_rule_and_of_the_day_it_was_last_done() -> None:
    assert service_uid("a.b", None) == "a.b.0@kitlog"
    assert service_uid("a.b", date(2025, 8, 31)) == "a.b.20250831@kitlog"
    assert {stem_of(service_uid("a.b", day)) for day in (None, TODAY)} == {"a.b"}
    assert stem_of(back_uid("i1")) == "back-i1"


def due(state: DueState = DueState.IN_DATE, **facts: object) -> Due:
    return Due("i", "r", "wing.full", Grounds.YES, state, TODAY, **facts)


class TestDay:
    def test_the_first_of_calendar_and_hours(self) -> None:
        runs_out = RunOut(date(2026, 6, 1), date(2026, 7, 1), None)
        assert day_of(due(due_on=SOON, runs_out=runs_out), None) == SOON
        assert day_of(due(due_on=date(2026, 8, 1), runs_out=runs_out), None) == date(2026, 7, 1)

    def test_a_day_foreseen_beyond_five_years_is_none(self) -> None:
        far = RunOut(None, TODAY + timedelta(days=5 * 365 + 1), None)
        near = RunOut(None, TODAY + timedelta(days=5 * 365), None)
        assert day_of(due(runs_out=far), None) is None
        assert day_of(due(runs_out=near), None) == near.likely

    def test_nothing_is_asked_of_a_rule_that_does_not_apply_or_has_no_record(self) -> None:
        assert day_of(due(DueState.DOES_NOT_APPLY, due_on=SOON), None) is None
        assert day_of(due(DueState.NO_RECORD), None) is None

    def test_what_is_open_stands_on_the_day_it_opened(self) -> None:
        event = Event(id="e", item_id="i", on=date(2026, 4, 18), kind="blow")
        failed = ServiceRecord(id="s", item_id="i", rules=("r",), done_on=date(2026, 5, 1), result=Result.FAILED)
        assert day_of(due(DueState.OVERDUE, event=event, due_on=event.on), None) == event.on
        assert day_of(due(DueState.OVERDUE, last=failed, due_on=date(2027, 1, 1)), None) == failed.done_on
        assert day_of(due(DueState.OVERDUE, due_on=date(2026, 5, 7)), None) == date(2026, 5, 7)

    def test_used_up_hours_stay_on_the_day_that_was_told(self) -> None:
        """Their day by the calendar still lies ahead; today would change the entry in each file."""
        open_by_hours = due(DueState.OVERDUE, hours_left=-1.0, due_on=SOON)
        before = Reminder(id="r.0@kitlog", on=date(2026, 5, 2), content="0" * 64)
        assert day_of(open_by_hours, None) == TODAY
        assert day_of(open_by_hours, before) == date(2026, 5, 2)
        assert day_of(open_by_hours, before.model_copy(update={"on": SOON})) == TODAY

    def test_a_day_beyond_the_calendar_is_none(self) -> None:
        assert day_of(due(due_on=date(2101, 1, 1)), None) is None


def thing(name: str, back_by: date | None, state: str = "lent") -> ServicedItem:
    return ServicedItem(name, name, "wing", state, None, None, None, None, None, None, "", "", back_by)  # type: ignore[arg-type]


def test_what_goes_back_within_a_week_or_should_have() -> None:
    things = [thing("a", TODAY + timedelta(days=7)), thing("b", TODAY + timedelta(days=8)), thing("c", None)]
    things += [thing("d", date(2026, 1, 1)), thing("e", TODAY, "lost")]
    assert [item.id for item in back_soon(things, TODAY)] == ["d", "a"]
