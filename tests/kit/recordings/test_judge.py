"""Airtime, launches and doubts against synthetic recordings whose truth is known (tests/recordings.py)."""

from dataclasses import replace
from datetime import timedelta
from math import pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from recordings import Day, Sample, flight, utc

from kitlog.files.recordings.read_recording import read_recording
from kitlog.kit.recordings.found import Because, FlightFound, LooksLike, NoFlight
from kitlog.kit.recordings.judge import judge
from kitlog.sky.zone import local_time

MINUTE = timedelta(minutes=1)


def looked_at(day: Day, every: int = 1) -> FlightFound | NoFlight:
    return judge(read_recording(day.igc(every=every), "x.igc").fixes)


def found(day: Day, every: int = 1) -> FlightFound:
    result = looked_at(day, every)
    assert isinstance(result, FlightFound)
    return result


def is_true(day: Day, result: FlightFound) -> None:
    """Within a minute of the truth."""
    assert result.launches == len(day.flown)
    assert abs(result.airtime_min - day.airtime_min) <= 1
    assert abs(result.takeoff_at - day.takeoff) <= MINUTE
    assert abs(result.landing_at - day.landing) <= MINUTE


def begun(text: str = "2026-04-05T09:00", **more: float) -> Day:
    return Day(utc(text), **more)


def to_and_fro(day: Day) -> Day:
    """A wing kited along a beach in a strong wind, at a run."""
    for _ in range(4):
        day.glide(15, 6.5, 0.0)
        day.course += pi
    return day


WORKED = [
    # begins UTC, minutes, place, local day and clock of take-off; the project's worked season, flights F1 to F6
    ("2026-01-10T23:40", 255, (-36.7, 147.0), "2026-01-11 10:40"),
    ("2026-03-14T12:05", 85, (47.0, 12.0), "2026-03-14 13:05"),
    ("2026-03-29T10:20", 160, (47.0, 12.0), "2026-03-29 12:20"),
    ("2026-04-05T09:50", 255, (47.0, 12.0), "2026-04-05 11:50"),
    ("2026-04-12T07:10", 35, (47.3, 11.4), "2026-04-12 09:10"),
    ("2026-04-18T10:00", 230, (47.0, 12.0), "2026-04-18 12:00"),
]


@pytest.mark.parametrize(("takeoff", "minutes", "place", "local"), WORKED)
@pytest.mark.parametrize("every", [1, 4])
def test_the_worked_season(takeoff: str, minutes: int, place: tuple[float, float], local: str, every: int) -> None:
    lat, lon = place
    day = Day(utc(takeoff) - timedelta(minutes=10), lat=lat, lon=lon)
    flight(day.stand(600), minutes).stand(300)
    result = found(day, every)
    is_true(day, result)
    assert day.airtime_min == minutes
    clock = local_time(result.takeoff_at, result.takeoff_lat_deg, result.takeoff_lon_deg)
    assert clock.date().isoformat() == local[:10]
    assert abs(clock.replace(tzinfo=None) - utc(local.replace(" ", "T")).replace(tzinfo=None)) <= MINUTE


@pytest.mark.parametrize("sigma_m", [0.0, 2.0, 5.0])
@pytest.mark.parametrize("every", [1, 2, 10, 20])
def test_noise_and_interval(sigma_m: float, every: int) -> None:
    day = flight(begun().stand(400), 47).stand(400)
    is_true(day, found(day.noisy(sigma_m), every))


@pytest.mark.parametrize(
    "day",
    [
        begun().stand(200).glide(400).stand(200),
        begun().stand(200).soar(3_600).stand(200),
        flight(begun().walk(3_600, 1.1, 0.25), 35).walk(900),
        flight(begun().handle(1_800).stand(120), 85).stand(100),
        flight(begun(height=-30.0).stand(200), 30).stand(200),
        flight(begun(lat=-16.8, lon=179.99).stand(200), 60).stand(200),
        begun().stand(100).soar(600).glide(400, 3.0, 0.0).soar(600).stand(200),
        begun().stand(100).glide(300, 1.5, -1.3).stand(200),
    ],
    ids=["sled", "ridge", "hike-and-fly", "handling-first", "negative", "date-line", "against-wind", "strong-wind"],
)
def test_kinds_of_flight(day: Day) -> None:
    result = found(day)
    is_true(day, result)
    assert result.doubts == ()
    assert result.max_altitude_m == day.top


class TestLandings:
    @pytest.mark.parametrize(("rest_s", "launches"), [(40, 1), (55, 1), (65, 2), (300, 2)])
    def test_at_rest_for_a_minute_is_a_landing(self, rest_s: int, launches: int) -> None:
        day = flight(flight(begun().stand(300), 20).stand(rest_s), 20).stand(200)
        result = found(day)
        assert result.launches == launches
        assert abs(result.airtime_min - 40) <= 1

    def test_walking_back_up_is_a_landing_without_a_rest(self) -> None:
        day = flight(flight(begun().stand(300), 20).walk(600, 1.0, 0.2), 20).stand(200)
        is_true(day, found(day))

    def test_many_hops_from_a_training_slope(self) -> None:
        day = begun().stand(120)
        for _ in range(6):
            day.glide(45, 9.0, -1.4).stand(90).walk(400, 1.0, 0.15).stand(90)
        is_true(day, found(day))


class TestParkedInTheWind:
    @pytest.mark.parametrize("climb", [0.3, -0.3, 0.4])
    @pytest.mark.parametrize("change", [{}, {"pressure": False}, {"gnss": False}], ids=["both", "gnss", "pressure"])
    def test_slow_with_a_clear_change_of_height_is_in_the_air(self, climb: float, change: dict[str, bool]) -> None:
        day = flight(begun().stand(300), 10).glide(1_200, 1.0, climb)
        flight(day, 10).stand(300)
        is_true(day, found(day.noisy(1.5).changed(lambda s: replace(s, **change))))

    def test_up_and_down_in_the_lift_too(self) -> None:
        day = flight(begun().stand(300), 10)
        for n in range(12):
            day.glide(130, 1.2, 0.4 if n % 2 else -0.4)
        is_true(day, found(flight(day, 10).stand(300)))

    @pytest.mark.parametrize("climb", [0.0, 0.1, 0.2, -0.2])
    def test_a_walk_is_on_the_ground(self, climb: float) -> None:
        day = flight(flight(begun().stand(300), 20).walk(900, 1.0, climb), 20).stand(200)
        is_true(day, found(day.noisy(1.5)))

    def test_a_walk_after_it_is_a_landing(self) -> None:
        day = flight(begun().stand(300), 10).glide(600, 1.0, 0.3).glide(60, 8.0, -1.2).walk(400)
        is_true(day, found(flight(day, 10).stand(300)))


class TestGaps:
    def day(self) -> Day:
        return flight(begun().stand(600), 60).stand(600)

    def test_a_gap_in_the_air_is_flown(self) -> None:
        result = found(self.day().without(1_500, 900))
        is_true(self.day(), result)
        assert (result.legs[0].gaps, round(result.legs[0].gaps_s / 60)) == (1, 15)

    def test_a_gap_on_the_ground_changes_nothing(self) -> None:
        day = flight(flight(begun().stand(300), 20).stand(1_200), 20).stand(300)
        is_true(day, found(day.without(1_600, 900)))

    def test_a_gap_over_the_landing_ends_the_flight_at_the_last_fix(self) -> None:
        result = found(self.day().without(3_600, 900))
        assert (result.launches, round(result.airtime_min)) == (1, 50)
        assert result.ends_in_air

    def test_a_recording_that_starts_in_the_air_says_so(self) -> None:
        day = self.day()
        result = found(day.without(0, 1_200))
        assert (result.starts_in_air, result.ends_in_air, round(result.airtime_min)) == (True, False, 50)
        assert result.takeoff_at == day.takeoff + timedelta(minutes=10)

    def test_a_recording_that_ends_in_the_air_says_so(self) -> None:
        day = self.day()
        result = found(day.without(3_001, 9_999))
        assert (result.starts_in_air, result.ends_in_air, round(result.airtime_min)) == (False, True, 40)
        assert result.landing_at == day.takeoff + timedelta(minutes=40)

    def test_v_fixes_are_no_places(self) -> None:
        def lost(s: Sample) -> Sample:
            return replace(s, valid=False, x=0.0, y=-900_000.0, h=9_000) if 100 < s.at_s % 600 < 300 else s

        is_true(self.day(), found(self.day().changed(lost)))


class TestSpikes:
    @pytest.mark.parametrize("period", [17, 97, 600])
    def test_of_place_and_height(self, period: int) -> None:
        day = flight(begun().stand(400), 30).stand(400)
        spiked = day.changed(lambda s: replace(s, x=s.x + 5_000, h=9_000) if s.at_s % period == 3 else s)
        result = found(spiked)
        is_true(day, result)
        assert result.max_altitude_m is not None
        assert abs(result.max_altitude_m - day.top) <= 3

    def test_on_the_ground_make_no_flight(self) -> None:
        day = begun().stand(3_600).changed(lambda s: replace(s, y=s.y + 400, h=-500) if s.at_s % 60 < 4 else s)
        assert isinstance(looked_at(day), NoFlight)


class TestHeights:
    day = flight(begun().stand(300), 30).stand(300)

    def test_both_are_kept_and_that_by_satellite_goes_first(self) -> None:
        result = found(self.day)
        assert (result.gnss_max_m, result.max_altitude_m) == (self.day.top, self.day.top)
        assert result.pressure_max_m is not None
        assert abs(result.pressure_max_m - (self.day.top - 40)) <= 1

    def test_by_pressure_where_no_other_is_recorded(self) -> None:
        result = found(self.day.changed(lambda s: replace(s, gnss=False)))
        is_true(self.day, result)
        assert (result.gnss_max_m, result.max_altitude_m) == (None, result.pressure_max_m)

    def test_none_at_all(self) -> None:
        result = found(self.day.changed(lambda s: replace(s, gnss=False, pressure=False)))
        assert result.max_altitude_m is None
        assert abs(result.airtime_min - 30) <= 1


class TestNoFlight:
    @pytest.mark.parametrize(
        "day",
        [
            begun().stand(3_600).noisy(4),
            begun().walk(7_200, 1.1, 0.25).noisy(3),
            begun().walk(3_600, 1.6, -0.3).noisy(3),
            begun().handle(1_800),
            begun().stand(3),
        ],
        ids=["rest", "hike", "hike-down", "handling", "four-fixes"],
    )
    def test_on_the_ground(self, day: Day) -> None:
        assert isinstance(looked_at(day), NoFlight)

    def test_one_fix(self) -> None:
        assert looked_at(begun().stand(1).without(1, 9)) == NoFlight(
            utc("2026-04-05T09:00"), utc("2026-04-05T09:00"), 1
        )


class TestDoubts:
    @pytest.mark.parametrize(
        ("day", "looks_like", "because"),
        [
            (begun().stand(100).cable(500), LooksLike.CABLE_CAR, Because.CLIMBS_STRAIGHT),
            (begun().stand(100).cable(300, 7.0, -2.5).stand(99), LooksLike.CABLE_CAR, Because.SINKS_STRAIGHT),
            (begun().stand(100).drive(1_800).stand(99), LooksLike.CAR, Because.FAST_AND_LEVEL),
            (begun().drive(1_800, 15.0, stop_every=150).stand(99), LooksLike.CAR, Because.STOPS),
            (begun().stand(100).drive(900, 10.0, 0.8, bend=0.05).stand(99), LooksLike.CAR, Because.ONLY_CLIMBS),
            (
                to_and_fro(begun().stand(99)).stand(99),
                LooksLike.GROUND_HANDLING,
                Because.LOW_AND_NEAR,
            ),
            (begun().stand(100).drive(1_500, 16.0, 0.25, bend=0.012).stand(99), LooksLike.CAR, Because.ONLY_CLIMBS),
            (begun(height=0.0).stand(100).sail(1_800).stand(99), LooksLike.GROUND_RIDE, Because.LEVEL),
            (begun().stand(100).cycle(1_800).stand(99), LooksLike.GROUND_RIDE, Because.FOLLOWS_GROUND),
        ],
        ids=["cable-car", "cable-car-down", "car", "traffic", "car-uphill", "handling", "pass-road", "boat", "bicycle"],
    )
    def test_alone_it_is_proposed_with_its_doubt(self, day: Day, looks_like: LooksLike, because: Because) -> None:
        (doubt,) = found(day).doubts
        assert (doubt.looks_like, doubt.because) == (looks_like, because)

    @pytest.mark.parametrize("gnss", [True, False])
    @pytest.mark.parametrize("sigma_m", [0.0, 3.0])
    def test_rides_are_told_with_one_height_and_noise(self, gnss: bool, sigma_m: float) -> None:
        for ride in (begun().stand(100).sail(1_800).stand(99), begun().stand(100).cycle(1_800).stand(99)):
            day = ride.noisy(sigma_m).changed(lambda s: replace(s, gnss=gnss, pressure=not gnss))
            assert [doubt.looks_like for doubt in found(day).doubts] == [LooksLike.GROUND_RIDE]

    @pytest.mark.parametrize(
        "day",
        [
            begun().stand(100).soar(1_800, 7.0).stand(99),
            begun().stand(100).glide(600, 10.0, -0.5).stand(99),
            flight(begun().stand(100).circle(900, climb=0.5), 20).stand(99),
            begun().stand(100).soar(600).glide(900, 9.0, 0.0).soar(600).glide(300).stand(99),
        ],
        ids=["ridge", "float", "weak-thermal", "level-in-between"],
    )
    def test_quiet_flights_are_no_rides(self, day: Day) -> None:
        result = found(day.noisy(2.0))
        assert (result.doubts, result.left_out) == ((), ())

    def test_beside_a_flight_it_is_left_out(self) -> None:
        day = flight(begun().stand(100).cable(500).walk(600), 35).stand(300).drive(1_200).stand(99)
        result = found(day)
        is_true(day, result)
        assert [leg.doubt and leg.doubt.looks_like for leg in result.left_out] == [LooksLike.CABLE_CAR, LooksLike.CAR]


@st.composite
def days(draw: st.DrawFn) -> Day:
    day = begun().stand(draw(st.integers(90, 300)))
    for minutes in draw(st.lists(st.integers(4, 15), min_size=1, max_size=3)):
        flight(day, minutes).stand(draw(st.integers(75, 300)))
    return day


class TestProperties:
    @settings(max_examples=15, deadline=None)
    @given(days(), st.sampled_from([1, 3, 8]))
    def test_within_a_minute_of_the_truth(self, day: Day, every: int) -> None:
        result = found(day, every)
        assert result.launches == len(day.flown)
        assert abs(result.airtime_min - day.airtime_min) <= len(day.flown)
        assert abs(result.takeoff_at - day.takeoff) <= MINUTE

    @settings(max_examples=10, deadline=None)
    @given(days(), st.integers(-400_000, 400_000), st.integers(-900, 900))
    def test_later_and_higher_changes_nothing_but_time_and_height(self, day: Day, later_s: int, higher_m: int) -> None:
        before = found(day)
        fixes = read_recording(day.igc(), "x.igc").fixes
        moved = [
            fix._replace(
                at_s=fix.at_s + later_s,
                gnss_m=(fix.gnss_m or 0) + higher_m,
                pressure_m=(fix.pressure_m or 0) + higher_m,
            )
            for fix in fixes
        ]
        after = judge(moved)
        assert isinstance(after, FlightFound)
        shift = timedelta(seconds=later_s)
        assert [(leg.takeoff_at - shift, leg.landing_at - shift) for leg in after.legs] == [
            (leg.takeoff_at, leg.landing_at) for leg in before.legs
        ]
        assert after.max_altitude_m == (before.max_altitude_m or 0) + higher_m
        assert [leg.doubt is None for leg in after.legs] == [leg.doubt is None for leg in before.legs]
