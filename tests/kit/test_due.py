"""Due states: what the record says of a rule on a day."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.kit.due import Due, DueState, due_states
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook
from kitlog.units.days import add_months

MAY = date(2026, 5, 8)
WING = Item(id="wing", name="Wing", opening_h=0, opening_launches=0)


def rule(**limits: object) -> ServiceRule:
    return ServiceRule.model_validate({"id": "rule", "item_id": "wing", "rule": "wing.full", **limits})


def record(done_on: date, **more: object) -> ServiceRecord:
    given = {"id": f"record {done_on}", "item_id": "wing", "rules": ("rule",), "done_on": done_on}
    return ServiceRecord.model_validate({**given, **more})


def event(on: date, kind: str = "tree", **more: object) -> Event:
    return Event.model_validate({"id": f"event {on}", "item_id": "wing", "on": on, "kind": kind, **more})


def flight(on: date, hours: float, **more: object) -> Flight:
    return Flight.model_validate(
        {"id": f"flight {on}", "on": on, "airtime_min": hours * 60, "flown": ("wing",), "launches": 1, **more}
    )


def judged(
    wanted: ServiceRule,
    *told: ServiceRecord | Event | Flight,
    item: Item = WING,
    on: date = MAY,
) -> Due:
    book = ServiceBook(
        rules=(wanted,),
        records=tuple(one for one in told if isinstance(one, ServiceRecord)),
        events=tuple(one for one in told if isinstance(one, Event)),
        flights=tuple(one for one in told if isinstance(one, Flight)),
    )
    return due_states(item, book, on)[0]


class TestCalendar:
    @pytest.mark.parametrize(
        ("days_after_due", "state"),
        [(-46, DueState.IN_DATE), (-45, DueState.DUE_SOON), (0, DueState.DUE_SOON), (1, DueState.OVERDUE)],
    )
    def test_the_due_date_itself_is_still_in_date(self, days_after_due: int, state: DueState) -> None:
        done_on = date(2025, 5, 8)
        due = judged(rule(months=12), record(done_on), on=date(2026, 5, 8) + timedelta(days=days_after_due))
        assert (due.state, due.due_on, due.days_left) == (state, date(2026, 5, 8), -days_after_due)
        assert due.open is (state is DueState.OVERDUE)

    # Recommended at six months, due at twelve: printed in one reserve maker's manual (secondary source).
    @pytest.mark.parametrize(
        ("on", "state"),
        [
            (date(2026, 2, 28), DueState.IN_DATE),
            (date(2026, 3, 1), DueState.RECOMMENDED_PASSED),
            (date(2026, 7, 16), DueState.RECOMMENDED_PASSED),
            (date(2026, 7, 17), DueState.DUE_SOON),
            (date(2026, 8, 31), DueState.DUE_SOON),
            (date(2026, 9, 1), DueState.OVERDUE),
        ],
    )
    def test_two_stages(self, on: date, state: DueState) -> None:
        due = judged(rule(months=12, recommended_months=6), record(date(2025, 8, 31)), on=on)
        assert due.state is state
        assert (due.recommended_on, due.due_on) == (date(2026, 2, 28), date(2026, 8, 31))

    def test_due_soon_looks_at_the_due_date_not_at_the_recommended_one(self) -> None:
        due = judged(rule(months=12, recommended_months=6), record(date(2025, 8, 31)), on=date(2026, 2, 20))
        assert due.state is DueState.IN_DATE

    def test_the_newest_record_known_on_the_day_counts(self) -> None:
        older, newer = record(date(2024, 1, 1)), record(date(2026, 5, 9))
        assert judged(rule(months=12), older, newer, on=MAY).state is DueState.OVERDUE
        assert judged(rule(months=12), older, newer, on=date(2026, 5, 9)).state is DueState.IN_DATE

    def test_a_struck_record_and_one_of_another_rule_do_not_count(self) -> None:
        struck = record(date(2026, 5, 1), struck_at="2026-05-02T08:00:00Z")
        other = record(date(2026, 5, 1), rules=("another rule",))
        assert judged(rule(months=12), struck, other).state is DueState.NO_RECORD

    def test_one_record_may_answer_several_rules(self) -> None:
        book = ServiceBook(
            rules=(rule(months=12), rule(id="other", months=24)), records=(record(MAY, rules=("rule", "other")),)
        )
        assert [due.due_on for due in due_states(WING, book, MAY)] == [date(2027, 5, 8), date(2028, 5, 8)]

    @pytest.mark.parametrize(
        ("counts_from", "start"),
        [("record", "2025-05-05"), ("first use", "2024-03-03"), ("bought", "2024-02-02"), ("made", "2023-01-01")],
    )
    def test_an_interval_counts_from_its_own_date(self, counts_from: str, start: str) -> None:
        dates = {"made_on": "2023-01-01", "bought_on": "2024-02-02", "first_used_on": "2024-03-03"}
        item = Item.model_validate({**WING.model_dump(), **dates})
        due = judged(rule(months=12, counts_from=counts_from), record(date(2025, 5, 5)), item=item)
        assert due.counted_from == date.fromisoformat(start)

    def test_without_record_it_counts_from_first_use_then_purchase_then_make(self) -> None:
        dates: dict[str, str] = {}
        for name, day in (("made_on", "2023-01-01"), ("bought_on", "2024-02-02"), ("first_used_on", "2024-03-03")):
            dates[name] = day
            item = Item.model_validate({**WING.model_dump(), **dates})
            assert judged(rule(months=12), item=item).counted_from == date.fromisoformat(day)

    def test_without_any_date_it_is_not_known(self) -> None:
        due = judged(rule(months=12))
        assert (due.state, due.due_on, due.days_left) == (DueState.NO_RECORD, None, None)

    def test_a_typed_date_needs_no_record(self) -> None:
        assert judged(rule(due_on=date(2026, 6, 15)), on=date(2026, 4, 30)).state is DueState.IN_DATE
        assert judged(rule(due_on=date(2026, 6, 15)), on=date(2026, 6, 16)).state is DueState.OVERDUE

    def test_the_earliest_limit_governs(self) -> None:
        due = judged(rule(months=12, due_on=date(2026, 6, 1)), record(date(2026, 5, 1)))
        assert due.due_on == date(2026, 6, 1)

    def test_book_by_is_the_due_day_less_the_lead_time(self) -> None:
        assert judged(rule(months=24, lead_days=21), record(date(2024, 5, 20))).book_by == date(2026, 4, 29)

    def test_the_warning_time_is_the_rules_own(self) -> None:
        assert judged(rule(months=12, warn_days=10), record(date(2025, 5, 18))).state is DueState.DUE_SOON
        assert judged(rule(months=12, warn_days=9), record(date(2025, 5, 18))).state is DueState.IN_DATE

    def test_the_pilots_word_that_it_does_not_apply_comes_first(self) -> None:
        assert judged(rule(months=12, applies=False), record(date(2020, 1, 1))).state is DueState.DOES_NOT_APPLY


class TestHours:
    @pytest.mark.parametrize(
        ("flown_h", "left", "state"),
        [
            (89.5, 10.5, DueState.IN_DATE),
            (90, 10, DueState.DUE_SOON),
            (100, 0, DueState.DUE_SOON),
            (100.1, -0.1, DueState.OVERDUE),
        ],
    )
    def test_a_limit_just_reached_is_not_overdue(self, flown_h: float, left: float, state: DueState) -> None:
        old = flight(date(2020, 1, 1), flown_h, until=date(2020, 12, 31))
        due = judged(rule(hours=100), old)
        assert (due.hours_left, due.state) == (pytest.approx(left), state)

    def test_a_limit_reached_in_thirds_of_an_hour_is_reached(self) -> None:
        thirds = [flight(date(2020, 1, 1) + timedelta(days=n), 1 / 3) for n in range(30)]
        due = judged(rule(hours=10), *thirds)
        assert (due.hours_left, due.state) == (0, DueState.DUE_SOON)

    def test_hours_since_the_record_come_from_the_log(self) -> None:
        log = (flight(date(2026, 1, 1), 4), flight(date(2026, 2, 1), 5), flight(date(2026, 5, 9), 7))
        assert judged(rule(hours=100), record(date(2026, 1, 1)), *log).hours_left == 95

    def test_totals_typed_with_the_record_bridge_the_time_before_the_log(self) -> None:
        item = WING.model_copy(update={"opening_h": 60.0})
        done = record(date(2025, 1, 1), hours=48)
        assert judged(rule(hours=100), done, flight(date(2026, 1, 1), 3), item=item).hours_left == 85

    def test_totals_that_contradict_each_other_never_add_hours(self) -> None:
        item = WING.model_copy(update={"opening_h": 10.0, "opening_launches": 3})
        done = record(date(2025, 1, 1), hours=48, launches=40)
        due = judged(rule(hours=100, launches=100), done, item=item)
        assert (due.hours_left, due.launches_left) == (100, 100)

    def test_without_record_all_hours_count_and_unknown_hours_are_not_known(self) -> None:
        item = WING.model_copy(update={"opening_h": 60.0})
        assert judged(rule(hours=100), flight(date(2026, 1, 1), 3), item=item).hours_left == 37
        unknown = judged(rule(hours=100), item=WING.model_copy(update={"opening_h": None}))
        assert (unknown.hours_left, unknown.state) == (None, DueState.NO_RECORD)

    # Makers' manuals count ground handling into the interval of a wing (several manuals, secondary source).
    def test_ground_handling_counts_where_the_rule_says_so(self) -> None:
        day = flight(date(2026, 3, 1), 2, ground_handling_min=30)
        assert judged(rule(hours=100), day).hours_left == 98
        assert judged(rule(hours=100, ground_handling=True), day).hours_left == 97.5

    def test_the_predicted_day_is_at_the_rate_of_the_last_365_days(self) -> None:
        # By hand: 36.5 h in 365 days are 0.1 h a day; 8.05 h last 80.5 days, rounded down.
        due = judged(rule(hours=44.55), flight(date(2026, 5, 1), 36.5, until=date(2026, 5, 1)))
        assert due.hours_left == pytest.approx(8.05)
        assert due.predicted_on == MAY + timedelta(days=80)
        assert due.days_left == 80

    @pytest.mark.parametrize("hours", [1e-9, 1e-300])
    def test_nothing_is_predicted_beyond_the_calendar(self, hours: float) -> None:
        assert judged(rule(hours=100), record(date(2025, 5, 8)), flight(MAY, hours)).predicted_on is None

    def test_nothing_is_predicted_once_used_up_or_without_use(self) -> None:
        assert judged(rule(hours=10), flight(date(2026, 5, 1), 10)).predicted_on is None
        assert judged(rule(hours=10)).predicted_on is None

    def test_whichever_comes_first_governs(self) -> None:
        book = (record(date(2026, 5, 1)), flight(date(2026, 5, 2), 8.5))
        assert judged(rule(months=24, hours=100), *book).state is DueState.IN_DATE
        assert judged(rule(months=24, hours=18.5), *book).state is DueState.DUE_SOON
        assert judged(rule(months=24, hours=8), *book).state is DueState.OVERDUE


class TestLaunches:
    @pytest.mark.parametrize(
        ("launches", "left", "state"),
        [
            (89, 11, DueState.IN_DATE),
            (90, 10, DueState.DUE_SOON),
            (100, 0, DueState.DUE_SOON),
            (101, -1, DueState.OVERDUE),
        ],
    )
    def test_states(self, launches: int, left: int, state: DueState) -> None:
        item = WING.model_copy(update={"opening_launches": launches - 2})
        due = judged(rule(launches=100), flight(date(2026, 5, 1), 1, launches=2), item=item)
        assert (due.launches_left, due.state) == (left, state)

    def test_unknown_launches_are_not_known(self) -> None:
        item = WING.model_copy(update={"opening_launches": None})
        assert judged(rule(launches=100), item=item).state is DueState.NO_RECORD


class TestEvents:
    EVENT_RULE = rule(events=("tree", "Water"))

    def test_an_open_event_is_overdue_at_once(self) -> None:
        due = judged(self.EVENT_RULE, event(MAY))
        assert (due.state, due.event) == (DueState.OVERDUE, event(MAY))

    def test_the_case_of_a_word_does_not_matter(self) -> None:
        assert judged(self.EVENT_RULE, event(MAY, "WATER")).open

    def test_before_it_happened_nothing_is_asked(self) -> None:
        due = judged(self.EVENT_RULE, event(MAY), on=MAY - timedelta(days=1))
        assert (due.state, due.event) == (DueState.DOES_NOT_APPLY, None)

    def test_a_record_since_then_answers_it_and_a_later_event_opens_it_again(self) -> None:
        story = (event(date(2026, 4, 18)), record(date(2026, 4, 27)), event(date(2026, 5, 2)))
        days = (date(2026, 4, 26), date(2026, 4, 27), date(2026, 5, 1), date(2026, 5, 2))
        states = [judged(self.EVENT_RULE, *story, on=day).state for day in days]
        assert states == [DueState.OVERDUE, DueState.IN_DATE, DueState.IN_DATE, DueState.OVERDUE]

    @pytest.mark.parametrize(
        "other", [event(MAY, "blow"), event(MAY, item_id="helmet"), event(MAY, struck_at="2026-05-08T20:00:00Z")]
    )
    def test_other_events_do_not_count(self, other: Event) -> None:
        assert judged(self.EVENT_RULE, other).state is DueState.DOES_NOT_APPLY

    def test_an_event_outweighs_a_date_that_is_far_off(self) -> None:
        due = judged(rule(months=24, events=("tree",)), record(date(2026, 4, 1)), event(date(2026, 4, 18)))
        assert (due.state, due.due_on) == (DueState.OVERDUE, date(2026, 4, 18))

    def test_a_day_typed_for_an_event_rule_is_answered_by_a_record_since(self) -> None:
        typed = rule(events=("blow",), due_on=date(2026, 4, 18))
        assert judged(typed).open
        assert judged(typed, record(date(2026, 4, 17))).open
        assert judged(typed, record(date(2026, 4, 18))).state is DueState.IN_DATE


days = st.dates(date(2023, 1, 1), date(2026, 5, 8))
logs = st.lists(
    st.builds(
        lambda on, hours, ground, launches: flight(on, hours, ground_handling_min=ground, launches=launches),
        days,
        st.floats(0, 12),
        st.floats(0, 300),
        st.integers(0, 20),
    ),
    max_size=8,
)


@given(log=logs, more=logs, done_on=st.none() | days, opening_h=st.floats(0, 80), ground=st.booleans())
def test_more_flights_never_leave_more(
    log: list[Flight], more: list[Flight], done_on: date | None, opening_h: float, ground: bool
) -> None:
    item = WING.model_copy(update={"opening_h": opening_h})
    wanted = rule(hours=100, launches=100, ground_handling=ground)
    done = () if done_on is None else (record(done_on),)
    begun = flight(date(2022, 12, 31), 0, flown=("another",))  # the log tells of every day since
    told = (*done, begun, *log)
    less, greater = judged(wanted, *told, item=item), judged(wanted, *told, *more, item=item)
    assert less.hours_left is not None
    assert greater.hours_left is not None
    assert greater.hours_left <= less.hours_left + 1e-9
    assert less.launches_left is not None
    assert greater.launches_left is not None
    assert greater.launches_left <= less.launches_left


@given(done_on=days, months=st.integers(1, 60), on=st.dates(date(2026, 5, 8), date(2035, 1, 1)))
def test_a_rule_is_overdue_exactly_after_its_month_clipped_date(done_on: date, months: int, on: date) -> None:
    due = judged(rule(months=months), record(done_on), on=on)
    assert due.open is (on > add_months(done_on, months))


STATES_AS_TIME_PASSES = [DueState.IN_DATE, DueState.RECOMMENDED_PASSED, DueState.DUE_SOON, DueState.OVERDUE]


@given(done_on=days, stages=st.tuples(st.integers(1, 30), st.integers(1, 30)), wait=st.integers(0, 900))
def test_waiting_alone_never_makes_it_better(done_on: date, stages: tuple[int, int], wait: int) -> None:
    wanted = rule(months=max(stages), recommended_months=min(stages))
    early, late = (judged(wanted, record(done_on), on=MAY + timedelta(days=n)) for n in (0, wait))
    assert STATES_AS_TIME_PASSES.index(late.state) >= STATES_AS_TIME_PASSES.index(early.state)


class TestWhatTheLogDoesNotTell:
    """Between a record and the first day of the log anything may have been flown."""

    def test_the_opening_balance_is_the_most_that_can_have_been_flown(self) -> None:
        item = WING.model_copy(update={"opening_h": 30.0})
        due = judged(rule(hours=100), record(date(2024, 1, 1)), flight(date(2026, 1, 1), 5), item=item)
        assert (due.hours_left, due.use_sure, due.state) == (65, False, DueState.IN_DATE)

    def test_where_even_that_may_be_too_much_nothing_is_known(self) -> None:
        item = WING.model_copy(update={"opening_h": 97.0})
        due = judged(rule(hours=100), record(date(2024, 1, 1)), flight(date(2026, 1, 1), 5), item=item)
        assert (due.hours_left, due.state) == (None, DueState.NO_RECORD)

    @pytest.mark.parametrize("told", [(), (flight(date(2026, 1, 1), 5),)])
    def test_without_an_opening_balance_nothing_is_known(self, told: tuple[Flight, ...]) -> None:
        item = WING.model_copy(update={"opening_h": None})
        due = judged(rule(hours=100), record(date(2024, 1, 1)), *told, item=item)
        assert (due.hours_left, due.state) == (None, DueState.NO_RECORD)

    def test_the_total_on_the_paper_settles_it(self) -> None:
        item = WING.model_copy(update={"opening_h": 97.0})
        due = judged(rule(hours=100), record(date(2024, 1, 1), hours=60), flight(date(2026, 1, 1), 5), item=item)
        assert (due.hours_left, due.use_sure) == (58, True)

    def test_the_total_on_the_paper_is_airtime_and_ground_handling_counts_besides(self) -> None:
        item = WING.model_copy(update={"opening_h": 60.0, "opening_ground_h": 9.0})
        told = (
            flight(date(2026, 1, 1), 8, ground_handling_min=30),
            flight(date(2026, 4, 1), 2, ground_handling_min=60),
        )
        due = judged(rule(hours=100, ground_handling=True), record(date(2026, 2, 1), hours=68), *told, item=item)
        assert due.hours_left == 97

    def test_what_was_done_today_leaves_the_whole_limit(self) -> None:
        item = WING.model_copy(update={"opening_h": None})
        assert judged(rule(hours=100), record(MAY), item=item).hours_left == 100


class TestInspector:
    def test_a_failed_look_leaves_the_rule_open_until_it_passes(self) -> None:
        failed = record(date(2026, 3, 1), result="failed")
        assert judged(rule(months=24), failed).state is DueState.OVERDUE
        assert judged(rule(months=24), failed, record(date(2026, 3, 9), result="passed")).state is DueState.IN_DATE

    def test_a_failure_resets_nothing(self) -> None:
        due = judged(rule(months=24), record(date(2025, 1, 1)), record(date(2026, 3, 1), result="failed"))
        assert (due.due_on, due.counted_from) == (date(2027, 1, 1), date(2025, 1, 1))

    def test_the_next_day_that_the_inspector_set_stands_over_the_months(self) -> None:
        due = judged(rule(months=24, recommended_months=6), record(date(2026, 1, 1), next_due_on="2026-07-01"))
        assert (due.due_on, due.recommended_on) == (date(2026, 7, 1), None)

    # A workshop's next interval by porosity: 70 to 110 s means 6 months or 60 h (secondary source).
    def test_so_do_the_hours(self) -> None:
        done = record(date(2026, 1, 1), next_due_on="2026-07-01", next_within_h=60)
        due = judged(rule(months=24, hours=150), done, flight(date(2026, 1, 1), 2), flight(date(2026, 2, 1), 12.5))
        assert due.hours_left == 47.5

    def test_a_rule_that_waits_for_an_event_gets_no_day_from_a_record_of_others_too(self) -> None:
        done = record(date(2026, 1, 1), rules=("rule", "other"), next_due_on="2026-07-01")
        assert judged(rule(events=("tree",)), done, on=date(2026, 8, 1)).state is DueState.IN_DATE
        alone = record(date(2026, 1, 1), next_due_on="2026-07-01")
        assert judged(rule(events=("tree",)), alone, on=date(2026, 8, 1)).state is DueState.OVERDUE


class TestEventsByName:
    def test_what_happened_on_the_day_of_the_record_is_answered_by_name_alone(self) -> None:
        happened, wanted = event(date(2026, 4, 18)), rule(events=("tree",))
        assert judged(wanted, happened, record(date(2026, 4, 18))).state is DueState.OVERDUE
        assert judged(wanted, happened, record(date(2026, 4, 18), answers=(happened.id,))).state is DueState.IN_DATE

    @pytest.mark.parametrize(("days", "state"), [(0, "due soon"), (1, "due soon"), (2, "overdue")])
    def test_some_follow_ups_have_a_day(self, days: int, state: str) -> None:
        due = judged(
            rule(events=("water",), event_days=1),
            event(date(2026, 4, 18), "water"),
            on=date(2026, 4, 18) + timedelta(days=days),
        )
        assert (due.state, due.due_on) == (state, date(2026, 4, 19))


class TestHoursForeseen:
    def test_for_a_day_to_come_the_usual_hours_are_taken_off(self) -> None:
        # 36.5 h in the last 365 days are a tenth of an hour a day; 5 h left last 50 days.
        book = ServiceBook(rules=(rule(hours=41.5),), flights=(flight(date(2026, 1, 1), 36.5, until=date(2026, 1, 1)),))
        now, later, last = (due_states(WING, book, MAY + timedelta(days=d), today=MAY)[0] for d in (0, 50, 51))
        assert (now.hours_left, now.hours_then) == (5, None)
        assert later.hours_then == pytest.approx(0, abs=1e-9)
        assert (later.state, last.state, last.foreseen) == (DueState.DUE_SOON, DueState.OVERDUE, True)

    def test_planned_hours_count_where_they_are_more(self) -> None:
        book = ServiceBook(rules=(rule(hours=4),))
        due = due_states(WING, book, MAY, today=MAY, planned_h=4.5)[0]
        assert (due.hours_left, due.hours_then, due.state, due.foreseen) == (4, -0.5, DueState.OVERDUE, True)

    def test_the_span_comes_from_the_quieter_and_the_busier_half(self) -> None:
        # 30 h in the older half of 183 days, 10 h in the newer of 182.
        told = (flight(date(2025, 8, 1), 30, until=date(2025, 8, 1)), flight(date(2026, 3, 1), 10))
        due = judged(rule(hours=50), *told)
        assert due.runs_out is not None
        found = [
            (day - MAY).days if day else None for day in (due.runs_out.early, due.runs_out.likely, due.runs_out.late)
        ]
        assert found == [61, 91, 182]  # 10 h / (30 h / 183 d), 10 h / (40 h / 365 d), 10 h / (10 h / 182 d)
