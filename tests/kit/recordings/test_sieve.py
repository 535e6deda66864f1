"""What becomes of recordings beside each other and beside the log; all from days whose truth is known."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest
from recordings import Day, Sample, flight, utc

from kitlog.kit.recordings.fix import Fix, Recording
from kitlog.kit.recordings.outcome import Outcome, Status
from kitlog.kit.recordings.sieve import Logged, Sieve

MORNING = utc("2026-04-05T09:00")


def hour(begins: datetime = MORNING, minutes: int = 60) -> Day:
    return flight(Day(begins).stand(300), minutes).stand(300)


def recording(day: Day, file: str, content: str = "") -> Recording:
    rows = ((sample, *day.at(sample)) for sample in day.samples)
    fixes = tuple(Fix(s.at_s, lat, lon, round(s.h), round(s.h) - 40, valid=True) for s, lat, lon in rows)
    return Recording(file, fixes, content or file)


def outcomes(*recordings: Recording, logged: tuple[Logged, ...] = ()) -> list[Outcome]:
    sieve = Sieve(logged)
    return [sieve.outcome(one) for one in recordings]


def told(found: list[Outcome]) -> list[tuple[Status, list[str], str]]:
    return [(one.status, [reason.code for reason in one.reasons], one.same_as) for one in found]


def part(day: Day, start_s: int, end_s: int) -> Day:
    """A recorder that runs for some of it."""
    begin = day.samples[0].at_s
    return day.changed(lambda s: s if start_s <= s.at_s - begin <= end_s else None)


def in_log(day: Day, content: str = "", **more: object) -> Logged:
    flown = tuple((datetime.fromtimestamp(a, UTC), datetime.fromtimestamp(b, UTC)) for a, b in day.flown)
    return replace(Logged("f1", "5 April", (content,) if content else (), flown), **more)


def test_a_plain_flight_is_proposed_with_its_local_day() -> None:
    far = flight(Day(utc("2026-01-10T23:30"), lat=-36.7, lon=147.0).stand(60), 40).stand(120)
    (one,) = outcomes(recording(far, "a"))
    assert (one.status, one.reasons, one.is_asked) == (Status.PROPOSED, (), False)
    assert (one.local_day, one.zone) == (date(2026, 1, 11), "Australia/Melbourne")  # Victoria, south of the Murray
    assert one.flight is not None
    assert abs(one.flight.airtime_min - far.airtime_min) < 1


def test_nothing_is_imported_before_the_pilot_says_so() -> None:
    days = [hour(), Day(MORNING).stand(100).cable(400).stand(100), Day(MORNING).handle(900)]
    found = [outcomes(recording(day, "a"))[0] for day in days]
    assert Status.IMPORTED not in {one.status for one in found}
    assert found[0].confirmed().status is Status.IMPORTED
    assert told([found[0].declined()]) == [(Status.REFUSED, ["recording.not_confirmed"], "")]


def test_only_proposals_can_be_confirmed_or_declined() -> None:
    found = outcomes(recording(hour(), "a"), recording(hour(), "b"), recording(Day(MORNING).stand(900), "c"))
    for one in found[1:]:
        assert one.confirmed() == one == one.declined()


class TestAsked:
    @pytest.mark.parametrize(
        ("day", "looks_like"),
        [
            (Day(MORNING).stand(100).cable(500).stand(100), "cable_car"),
            (Day(MORNING).stand(100).drive(1_500, 20.0).stand(100), "car"),
        ],
    )
    def test_what_only_looks_like_a_flight(self, day: Day, looks_like: str) -> None:
        (one,) = outcomes(recording(day, "a"))
        assert one.is_asked
        assert [reason.facts["doubt"].looks_like for reason in one.reasons] == [looks_like]  # type: ignore[attr-defined]

    def test_the_car_home_after_a_flight_asks_nothing(self) -> None:
        (one,) = outcomes(recording(hour().walk(300).drive(1_200, 20.0).stand(100), "a"))
        assert one.reasons == ()
        assert one.flight is not None
        assert len(one.flight.left_out) == 1

    def test_longer_than_a_day(self) -> None:
        day = flight(flight(Day(MORNING), 30).stand(86_400), 30).stand(100)
        assert told(outcomes(recording(day, "a"))) == [(Status.PROPOSED, ["recording.longer_than_a_day"], "")]

    def test_a_part_in_common(self) -> None:
        later = MORNING + timedelta(minutes=45)
        found = outcomes(recording(hour(), "a"), recording(hour(later), "b"))
        assert told(found) == [(Status.PROPOSED, [], ""), (Status.PROPOSED, ["recording.overlaps"], "")]
        assert found[1].reasons[0].facts == {"of": "a", "minutes": 15}

    def test_a_part_in_common_with_the_log(self) -> None:
        (one,) = outcomes(recording(hour(MORNING + timedelta(minutes=45)), "a"), logged=(in_log(hour()),))
        assert told([one]) == [(Status.PROPOSED, ["recording.overlaps"], "")]
        assert one.reasons[0].facts["of"] == "5 April"

    def test_a_flight_is_not_swallowed_by_what_may_be_none(self) -> None:
        cable = Day(MORNING).stand(300).cable(1_500).stand(60)
        found = outcomes(recording(cable, "a"), recording(hour(), "b"), recording(hour(), "c"))
        assert [one.status for one in found] == [Status.PROPOSED, Status.PROPOSED, Status.DUPLICATE]
        assert [reason.code for reason in found[1].reasons] == ["recording.overlaps"]
        assert found[2].same_as == "b"

    def test_one_that_overlaps_does_not_swallow_what_touches_nothing_else(self) -> None:
        """Clocks 32 and 61 min late: the second is asked about, and so is the third, for it alone may be right."""
        days = [hour(MORNING + timedelta(minutes=minutes)) for minutes in (0, 32, 61.5)]
        found = outcomes(*(recording(day, name) for day, name in zip(days, "abc", strict=True)))
        assert told(found) == [
            (Status.PROPOSED, [], ""),
            (Status.PROPOSED, ["recording.overlaps"], ""),
            (Status.PROPOSED, ["recording.overlaps"], ""),
        ]
        assert found[2].reasons[0].facts["of"] == "b"

    def test_but_its_own_second_instrument_is_a_duplicate_of_it(self) -> None:
        late = hour(MORNING + timedelta(minutes=32))
        found = outcomes(recording(hour(), "a"), recording(late, "b"), recording(late.noisy(3.0), "c"))
        assert told(found)[2] == (Status.DUPLICATE, ["recording.same_flight"], "b")

    def test_on_the_other_side_of_the_world_at_the_same_time(self) -> None:
        far = flight(Day(MORNING, lat=-36.7, lon=147.0).stand(300), 60).stand(300)
        found = outcomes(recording(hour(), "a"), recording(far, "b"))
        assert told(found)[1] == (Status.PROPOSED, ["recording.overlaps"], "")


class TestTheWrongZone:
    @pytest.mark.parametrize("minutes", [-120, -60, 60, 330])
    def test_the_same_track_hours_apart_is_asked_about(self, minutes: int) -> None:
        late = hour(MORNING + timedelta(minutes=minutes)).noisy(3.0)
        found = outcomes(recording(hour(), "a"), recording(late, "b"))
        assert told(found)[1] == (Status.PROPOSED, ["recording.same_track"], "")
        assert found[1].reasons[0].facts == {"of": "a", "minutes": pytest.approx(abs(minutes), abs=1)}

    def test_another_track_or_an_odd_time_asks_nothing(self) -> None:
        elsewhere = flight(Day(MORNING + timedelta(hours=2), lat=47.01).stand(300), 60).stand(300)
        longer = hour(MORNING + timedelta(hours=2), 63)
        odd = hour(MORNING + timedelta(minutes=127))
        for other in (elsewhere, longer, odd):
            assert outcomes(recording(hour(), "a"), recording(other, "b"))[1].reasons == ()

    def test_against_the_log_by_times_and_height(self) -> None:
        (found,) = outcomes(recording(hour(), "a"))
        assert found.flight is not None
        span = (found.flight.takeoff_at, found.flight.landing_at)
        logged = Logged("f1", "5 April", ("x",), (span,), found.flight.max_altitude_m)
        late = recording(hour(MORNING + timedelta(hours=1)), "b")
        (asked,) = outcomes(late, logged=(logged,))
        assert told([asked]) == [(Status.PROPOSED, ["recording.same_track"], "")]
        (plain,) = outcomes(late, logged=(replace(logged, top_m=100),))
        assert plain.reasons == ()


class TestDuplicates:
    def test_by_content_whatever_the_name(self) -> None:
        found = outcomes(recording(hour(), "a", "x"), recording(hour(), "b", "x"), recording(hour(), "c", "x"))
        assert told(found)[1:] == [(Status.DUPLICATE, ["recording.same_content"], "a")] * 2
        assert found[1].flight == found[0].flight

    def test_by_content_in_the_log_even_if_its_times_were_corrected(self) -> None:
        logged = in_log(hour(MORNING + timedelta(days=9)), "x")
        found = outcomes(recording(hour(), "a", "x"), recording(hour(), "b", "x"), logged=(logged,))
        assert told(found) == [(Status.DUPLICATE, ["recording.same_content"], "f1")] * 2
        assert [(one.in_log, one.reasons[0].facts["of"], one.file) for one in found] == [
            (True, "5 April", "a"),
            (True, "5 April", "b"),
        ]

    def test_a_second_instrument(self) -> None:
        shaken = hour().noisy(3.0).changed(lambda s: s if s.at_s % 4 == 0 else None)
        found = outcomes(recording(hour(), "a"), recording(shaken, "b"))
        assert told(found)[1] == (Status.DUPLICATE, ["recording.same_flight"], "a")

    def test_a_second_instrument_of_a_flight_in_the_log(self) -> None:
        (one,) = outcomes(recording(hour(), "a"), logged=(in_log(hour()),))
        assert (told([one]), one.in_log) == ([(Status.DUPLICATE, ["recording.same_flight"], "f1")], True)

    def test_a_copy_of_the_second_instruments_file_is_of_the_same_flight(self) -> None:
        second = recording(hour().noisy(3.0), "b")
        found = outcomes(recording(hour(), "a"), second, replace(second, file="c"))
        assert told(found)[2] == (Status.DUPLICATE, ["recording.same_content"], "a")

    def test_one_whose_battery_died_is_the_same_and_what_it_lacks_is_said(self) -> None:
        found = outcomes(recording(part(hour(), 0, 1_500), "a"), recording(hour(), "b"))
        assert told(found)[1] == (Status.DUPLICATE, ["recording.same_flight_longer"], "a")
        assert found[1].reasons[0].facts["minutes"] == pytest.approx(40, abs=1)

    def test_two_flights_stay_two_beside_one_recording_of_both(self) -> None:
        both = flight(hour().stand(3_600), 60).stand(300)
        morning, noon = part(both, 0, 4_300), part(both, 7_000, 99_999)
        apart = [recording(morning, "a"), recording(noon, "b")]
        assert [one.status for one in outcomes(*apart, recording(both, "c"))] == [
            Status.PROPOSED,
            Status.PROPOSED,
            Status.DUPLICATE,
        ]
        assert told(outcomes(recording(both, "c"), *apart))[1:] == [
            (Status.DUPLICATE, ["recording.same_flight"], "c"),
            (Status.DUPLICATE, ["recording.same_flight"], "c"),
        ]

    def test_flights_one_after_the_other_are_apart(self) -> None:
        days = [hour(MORNING + timedelta(minutes=77 * n)) for n in range(5)]
        found = outcomes(*(recording(day, str(n)) for n, day in enumerate(days)))
        assert told(found) == [(Status.PROPOSED, [], "")] * 5

    def test_flights_of_the_log_without_times_are_held_against_nothing(self) -> None:
        (one,) = outcomes(recording(hour(), "a"), logged=(in_log(hour(), flown=()),))
        assert one.status is Status.PROPOSED


class TestNoFlight:
    def test_it_is_refused_each_time(self) -> None:
        ground = Day(MORNING).stand(600).walk(600)
        found = outcomes(recording(ground, "a", "x"), recording(ground, "b", "x"))
        assert told(found) == [(Status.REFUSED, ["recording.no_flight"], "")] * 2
        assert [one.file for one in found] == ["a", "b"]
        assert found[0].reasons[0].facts["valid"] == len(ground.samples)

    def test_v_fixes_alone_are_no_flight(self) -> None:
        def lost(s: Sample) -> Sample:
            return replace(s, valid=False)

        day = hour().changed(lost)
        fixes = tuple(fix._replace(valid=False) for fix in recording(day, "a").fixes)
        assert told(outcomes(Recording("a", fixes, "x"))) == [(Status.REFUSED, ["recording.no_flight"], "")]
