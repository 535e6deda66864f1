"""From recordings to the log: what was flown, what is asked, one undo step; on a real data file."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest
from recordings import Day, flight, utc

from kitlog.fault import InputFault
from kitlog.kit.flight_times import clock_of
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, Kind
from kitlog.kit.recordings.outcome import Status
from kitlog.outing.outing import Outing
from kitlog.packing.flown_set import ChosenBy
from kitlog.workbench.flight_import import Confirmed, Proposal, read_flights
from kitlog.workbench.workbench import Workbench

SATURDAY = utc("2026-05-02T09:00")
LATER = datetime(2026, 5, 12, 18, 0, tzinfo=UTC)


def flown(begins: datetime, minutes: int = 30) -> Day:
    return flight(Day(begins).stand(200), minutes).stand(200)


def put(folder: Path, name: str, day: Day, **more: object) -> Path:
    path = folder / name
    path.write_bytes(day.igc(every=4, **more))  # type: ignore[arg-type]
    return path


def read(bench: Workbench, *paths: Path, **more: object) -> list[Proposal]:
    return list(read_flights(bench.flight_source(), paths, **more))  # type: ignore[arg-type]


def names(bench: Workbench, ids: Sequence[str]) -> set[str]:
    return {item.name for item in bench.items() if item.id in ids}


def confirm(bench: Workbench, proposals: Sequence[Proposal]) -> tuple[Flight, ...]:
    return bench.import_flights([Confirmed(one) for one in proposals if one.flight], proposals)


class TestWhatWasFlown:
    def test_the_set_of_that_days_outing_with_what_is_fitted_and_the_rest_of_its_list_carried(
        self, bench: Workbench, clock, tmp_path: Path
    ) -> None:
        clock.at = LATER
        (one,) = read(bench, put(tmp_path, "a.igc", flown(utc("2026-05-09T10:00"))))
        assert (one.booked.by, one.booked.name) == (ChosenBy.OUTING, bench.outings()[0].name)
        assert names(bench, one.booked.flown) >= {"Wing A", "Harness A", "Reserve A", "Carabiners A"}
        assert not names(bench, one.booked.flown) & {"Wing B", "Harness B", "Reserve B", "Carabiners B"}
        assert {"Phone", "Foil blanket"} <= names(bench, one.booked.carried)
        assert not set(one.booked.flown) & set(one.booked.carried)

    def test_else_those_of_the_last_flight_up_to_that_day(self, bench: Workbench, tmp_path: Path) -> None:
        on_b, on_a = read(
            bench,
            put(tmp_path, "a.igc", flown(utc("2026-04-14T10:00"))),
            put(tmp_path, "b.igc", flown(SATURDAY)),
        )
        assert (on_b.booked.by, on_b.booked.day) == (ChosenBy.LAST_FLIGHT, date(2026, 4, 12))
        assert "Wing B" in names(bench, on_b.booked.flown)
        assert "Wing A" in names(bench, on_a.booked.flown)
        assert on_a.booked.carried == ()

    def test_names_that_were_given_go_before_all(self, bench: Workbench, clock, tmp_path: Path) -> None:
        clock.at = LATER
        wing = next(item.id for item in bench.items() if item.name == "Wing B")
        (one,) = read(bench, put(tmp_path, "a.igc", flown(utc("2026-05-09T10:00"))), flown=(wing,))
        assert (one.booked.by, one.booked.flown) == (ChosenBy.NAMED, (wing,))
        assert "Wing A" in names(bench, one.booked.carried)  # it was on the list of the day

    def test_a_set_that_is_partly_gone_is_a_question(self, bench: Workbench, tmp_path: Path) -> None:
        wing = next(item.id for item in bench.items() if item.name == "Wing A")
        bench.set_state([wing], ItemState.RETIRED)
        (one,) = read(bench, put(tmp_path, "a.igc", flown(SATURDAY)))
        assert one.booked.by is not ChosenBy.LAST_FLIGHT

    def test_the_only_ones_where_the_log_is_empty(self, empty: Workbench, tmp_path: Path) -> None:
        for name, kind, host in (
            ("w", "wing", None),
            ("h", "harness", None),
            ("r1", "reserve", "h"),
            ("r2", "reserve", "h"),
        ):
            empty.add_item(Item(id=name, name=name, kind=Kind(kind), fitted_to=host))
        path = put(tmp_path, "a.igc", flown(SATURDAY))
        (one,) = read(empty, path)
        assert (one.booked.by, set(one.booked.flown)) == (ChosenBy.ONLY_ONES, {"w", "h", "r1", "r2"})
        empty.add_item(Item(id="w2", name="w2", kind=Kind.WING))
        assert read(empty, path)[0].booked.by is ChosenBy.NOTHING

    def test_the_site_is_the_nearest_known_one(self, bench: Workbench, clock, tmp_path: Path) -> None:
        clock.at = LATER
        outing = bench.outings()[0]
        site = outing.site
        assert site.lat_deg is not None
        assert site.lon_deg is not None
        there = Day(SATURDAY, lat=site.lat_deg + 0.01, lon=site.lon_deg)
        near = put(tmp_path, "a.igc", flight(there.stand(200), 20).stand(200))
        far = put(tmp_path, "b.igc", flight(Day(utc("2026-05-03T09:00"), lat=46.5).stand(200), 20).stand(200))
        assert [one.site for one in read(bench, near, far)] == [site.name, ""]


class TestWriting:
    def test_one_undo_step_for_all(self, bench: Workbench, tmp_path: Path) -> None:
        before = bench.flights()
        day, next_day = flown(SATURDAY, 45), flown(SATURDAY + timedelta(days=1), 30)
        proposals = read(bench, put(tmp_path, "a.igc", day), put(tmp_path, "b.igc", next_day))
        assert bench.flights() == before
        first, second = confirm(bench, proposals)
        assert first.airtime_min == pytest.approx(day.airtime_min, abs=0.5)
        assert (first.on, first.time_zone) == (date(2026, 5, 2), "Europe/Rome")
        assert first.found_airtime_min == first.airtime_min
        assert first.takeoff_at is not None
        assert abs((first.takeoff_at - day.takeoff).total_seconds()) <= 15
        assert first.max_gnss_m == pytest.approx(day.top, abs=5)
        assert first.max_pressure_m == pytest.approx(day.top - 40, abs=5)
        assert second.launches == 1
        assert set(bench.flights()) == {*before, first, second}
        bench.undo()
        assert bench.flights() == before
        bench.redo()
        assert set(bench.flights()) == {*before, first, second}

    def test_what_was_flown_gets_the_hours(self, bench: Workbench, tmp_path: Path) -> None:
        wing = next(item for item in bench.items() if item.name == "Wing A")
        before = bench.usage(wing.id, date(2026, 5, 8))
        confirm(bench, read(bench, put(tmp_path, "a.igc", flown(SATURDAY, 60))))
        after = bench.usage(wing.id, date(2026, 5, 8))
        assert after.airtime_h - before.airtime_h == pytest.approx(1.0, abs=0.01)
        assert after.launches - before.launches == 1

    def test_a_corrected_airtime_stands_beside_what_was_found(self, bench: Workbench, tmp_path: Path) -> None:
        (one,) = read(bench, put(tmp_path, "a.igc", flown(SATURDAY, 30)))
        (written,) = bench.import_flights([Confirmed(one, airtime_min=25, launches=2)])
        assert (written.airtime_min, written.launches) == (25, 2)
        assert written.found_airtime_min == pytest.approx(30, abs=0.5)

    def test_ground_handling_is_booked_apart(self, bench: Workbench, tmp_path: Path) -> None:
        (one,) = read(bench, put(tmp_path, "a.igc", flown(SATURDAY, 30)))
        (written,) = bench.import_flights([Confirmed(one, on_ground=True)])
        assert (written.airtime_min, written.launches) == (0, 0)
        assert written.ground_handling_min == pytest.approx(30, abs=0.5)

    def test_an_airtime_longer_than_a_day_is_refused_with_its_file(self, bench: Workbench, tmp_path: Path) -> None:
        (one,) = read(bench, put(tmp_path, "a.igc", flown(SATURDAY)))
        before = bench.flights()
        with pytest.raises(InputFault) as fault:
            bench.import_flights([Confirmed(one, airtime_min=1_500)])
        assert fault.value.code == "flight.longer_than_a_day"
        assert str(fault.value.facts["file"]).endswith("a.igc")
        assert bench.flights() == before


class TestTheSameFlight:
    def test_twice_comes_in_once_whatever_the_file_is_called(self, bench: Workbench, tmp_path: Path) -> None:
        path = put(tmp_path, "a.igc", flown(SATURDAY))
        confirm(bench, read(bench, path))
        count = len(bench.flights())
        again = read(bench, path.rename(tmp_path / "other.igc"))
        assert [one.outcome.status for one in again] == [Status.DUPLICATE]
        confirm(bench, again)
        assert len(bench.flights()) == count

    def test_a_second_recorder_is_remembered_with_the_flight_of_the_batch(
        self, bench: Workbench, tmp_path: Path
    ) -> None:
        day = flown(SATURDAY, 40)
        first, second = put(tmp_path, "a.igc", day), put(tmp_path, "b.igc", day.noisy(3).without(0, 90))
        proposals = read(bench, first, second)
        assert [one.outcome.status for one in proposals] == [Status.PROPOSED, Status.DUPLICATE]
        (written,) = confirm(bench, proposals)
        assert written.recordings == tuple(one.outcome.content for one in proposals)
        assert [one.outcome.reasons[0].code for one in read(bench, second)] == ["recording.same_content"]
        clock = clock_of(written.takeoff_at, written.time_zone)
        assert clock is not None
        named = str(read(bench, second)[0].outcome.reasons[0].facts["of"])
        assert named.startswith(f"{written.on} {clock:%H:%M}")

    def test_and_with_a_flight_of_the_log(self, bench: Workbench, tmp_path: Path) -> None:
        day = flown(SATURDAY, 40)
        (written,) = confirm(bench, read(bench, put(tmp_path, "a.igc", day)))
        second = read(bench, put(tmp_path, "b.igc", day.noisy(3)))
        assert second[0].outcome.same_as == written.id
        assert confirm(bench, second) == ()
        after = next(one for one in bench.flights() if one.id == written.id)
        assert after.recordings == (*written.recordings, second[0].outcome.content)
        bench.undo()
        assert next(one for one in bench.flights() if one.id == written.id) == written

    def test_what_another_window_imported_meanwhile_does_not_come_in_twice(
        self, bench: Workbench, another: Workbench, tmp_path: Path
    ) -> None:
        path = put(tmp_path, "a.igc", flown(SATURDAY))
        here, there = read(bench, path), read(another, path)
        confirm(another, there)
        count = len(another.flights())
        assert confirm(bench, here) == ()
        assert len(bench.flights()) == count


class TestAsked:
    def test_an_entry_by_hand_of_that_day(self, bench: Workbench, tmp_path: Path) -> None:
        bench.add_flight(Flight(id="f", on=date(2026, 5, 2), airtime_min=31, flown=bench.usual_set()))
        (one,) = read(bench, put(tmp_path, "a.igc", flown(SATURDAY)))
        assert [reason.code for reason in one.outcome.reasons] == ["flight.entered_by_hand"]
        assert not one.is_plain

    def test_an_entry_by_hand_with_a_take_off_alone_is_asked_about_where_its_airtime_meets_the_recording(
        self, bench: Workbench, tmp_path: Path
    ) -> None:
        path = put(tmp_path, "a.igc", flown(SATURDAY, 60))
        wing = next(item.id for item in bench.items() if item.name == "Wing A")
        entry = Flight(id="f", on=date(2026, 5, 2), takeoff_at=SATURDAY, airtime_min=60, flown=(wing,))
        bench.add_flight(entry)
        assert [reason.code for reason in read(bench, path)[0].outcome.reasons] == ["flight.entered_by_hand"]
        bench.edit_flight(entry.model_copy(update={"takeoff_at": SATURDAY + timedelta(hours=5)}))
        assert read(bench, path)[0].is_plain

    def test_a_typed_total_over_that_day(self, bench: Workbench, tmp_path: Path) -> None:
        path = put(tmp_path, "a.igc", flown(utc("2025-06-01T09:00")))
        total = next(flight for flight in bench.flights() if flight.until and flight.on <= date(2025, 6, 1))
        (one,) = read(bench, path, flown=total.flown)
        assert [reason.code for reason in one.outcome.reasons] == ["flight.in_a_total"]
        bench.add_item(Item(id="other", name="Other wing", kind=Kind.WING))
        assert read(bench, path, flown=("other",))[0].is_plain

    def test_two_wings(self, bench: Workbench, tmp_path: Path) -> None:
        wings = tuple(item.id for item in bench.items() if item.kind is Kind.WING)[:2]
        (one,) = read(bench, put(tmp_path, "a.igc", flown(SATURDAY)), flown=wings)
        assert [reason.code for reason in one.outcome.reasons] == ["flight.two_wings"]

    def test_what_was_flown_and_carried_is_refused(self, bench: Workbench, tmp_path: Path) -> None:
        (one,) = read(bench, put(tmp_path, "a.igc", flown(SATURDAY)))
        both = replace(one.booked, carried=one.booked.flown[:1])
        with pytest.raises(InputFault) as fault:
            bench.import_flights([Confirmed(one, booked=both)])
        assert fault.value.code == "flight.flown_and_carried"

    def test_a_wing_that_was_bought_later_is_told(self, bench: Workbench, tmp_path: Path) -> None:
        wing = next(item for item in bench.items() if item.name == "Wing A")
        bench.edit_items([wing.model_copy(update={"bought_on": date(2026, 5, 3)})])
        before, after = read(
            bench,
            put(tmp_path, "a.igc", flown(SATURDAY)),
            put(tmp_path, "b.igc", flown(SATURDAY + timedelta(days=1))),
        )
        assert [note.code for note in before.notes] == ["flight.before_bought"]
        assert before.notes[0].facts["name"] == "Wing A"
        assert after.notes == ()

    def test_a_flight_that_has_not_been_yet_is_refused(self, bench: Workbench, tmp_path: Path) -> None:
        (one,) = read(bench, put(tmp_path, "a.igc", flown(utc("2026-05-20T09:00"))))
        assert (one.outcome.status, one.outcome.reasons[0].code) == (Status.REFUSED, "flight.in_future")

    def test_a_car_ride(self, bench: Workbench, tmp_path: Path) -> None:
        (one,) = read(bench, put(tmp_path, "a.igc", Day(SATURDAY).stand(120).drive(1_500, stop_every=200).stand(120)))
        assert one.outcome.status is not Status.PROPOSED or one.outcome.is_asked


class TestByHand:
    def of(self, bench: Workbench, name: str, hour: int, minutes: float = 90) -> Flight:
        wing = next(item.id for item in bench.items() if item.name == "Wing A")
        start = datetime(2026, 5, 2, hour, tzinfo=UTC)
        landing = start + timedelta(minutes=minutes)
        return Flight(
            id=name, on=date(2026, 5, 2), takeoff_at=start, landing_at=landing, airtime_min=minutes, flown=(wing,)
        )

    def test_a_wing_in_the_air_twice_at_a_time_is_asked_about(self, bench: Workbench) -> None:
        bench.add_flight(self.of(bench, "f", 9))
        with pytest.raises(InputFault) as fault:
            bench.add_flight(self.of(bench, "g", 10))
        assert (fault.value.code, fault.value.facts["minutes"]) == ("flight.overlaps", 30)
        bench.add_flight(self.of(bench, "g", 10), sure=True)
        bench.add_flight(self.of(bench, "h", 12))
        bench.edit_flight(self.of(bench, "h", 13))

    def test_a_day_of_one_wing_has_24_hours(self, bench: Workbench) -> None:
        wing = next(item.id for item in bench.items() if item.name == "Wing A")
        bench.add_flight(Flight(id="f", on=date(2026, 5, 2), airtime_min=800, flown=(wing,)))
        with pytest.raises(InputFault) as fault:
            bench.add_flight(Flight(id="g", on=date(2026, 5, 2), airtime_min=700, flown=(wing,)))
        assert (fault.value.code, fault.value.facts["hours"]) == ("flight.day_over_full", 25)

    def test_one_of_the_day_of_a_recording_without_times_is_asked_about(self, bench: Workbench, tmp_path: Path) -> None:
        confirm(bench, read(bench, put(tmp_path, "a.igc", flown(SATURDAY, 45))))
        by_hand = self.of(bench, "g", 9).model_copy(update={"takeoff_at": None, "landing_at": None})
        with pytest.raises(InputFault) as fault:
            bench.add_flight(by_hand)
        assert (fault.value.code, fault.value.facts["minutes"]) == ("flight.same_day", 45)
        bench.add_flight(by_hand, sure=True)
        bench.edit_flight(by_hand.model_copy(update={"note": "what was asked is not asked again"}))

    def test_an_item_flown_and_carried_is_refused_even_if_sure(self, bench: Workbench) -> None:
        flight = self.of(bench, "g", 9)
        with pytest.raises(InputFault) as fault:
            bench.add_flight(flight.model_copy(update={"carried": flight.flown}), sure=True)
        assert (fault.value.code, fault.value.facts["name"]) == ("flight.flown_and_carried", "Wing A")

    def test_more_airtime_than_there_is_between_take_off_and_landing(self, bench: Workbench) -> None:
        odd = self.of(bench, "f", 9).model_copy(update={"airtime_min": 120.0})
        with pytest.raises(InputFault) as fault:
            bench.add_flight(odd)
        assert fault.value.code == "flight.airtime_over_span"


def test_outings_of_one_day_give_way_to_the_one_being_worked_on(bench: Workbench, clock, tmp_path: Path) -> None:
    clock.at = LATER
    first = bench.outings()[0]
    wing = next(item.id for item in bench.items() if item.name == "Wing B")
    other = Outing.model_validate(
        {
            **first.model_dump(),
            "id": "other",
            "name": "Evening glide",
            "set": {"wing": wing},
            "overrides": (),
            "left_out": (),
            "pinned": (),
        }
    )
    bench.save_outing(other)
    bench.work_on("other")
    (one,) = read(bench, put(tmp_path, "a.igc", flown(utc("2026-05-09T10:00"))))
    assert one.booked.name == "Evening glide"
    assert "Wing B" in names(bench, one.booked.flown)
