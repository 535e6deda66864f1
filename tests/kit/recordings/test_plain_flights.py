"""Two hundred days of plain flights, drawn by chance, whose truth is known: airtime, launches, no doubts."""

import random
from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta

import pytest
from recordings import Day, flight, utc

from kitlog.files.recordings.read_recording import read_recording
from kitlog.kit.recordings.found import FlightFound
from kitlog.kit.recordings.judge import judge

HOUR_S = 3_600


def thermals(day: Day, chance: random.Random) -> None:
    flight(day, chance.randint(5, 60))


def ridge(day: Day, chance: random.Random) -> None:
    day.glide(20).soar(chance.randint(300, 3_000), chance.uniform(7, 10), chance.randint(40, 150)).glide(40, 8, -1.2)


def sled(day: Day, chance: random.Random) -> None:
    speed = chance.uniform(8, 12)
    day.glide(chance.randint(180, 500), speed, -chance.uniform(0.11, 0.18) * speed)


def weak_lift(day: Day, chance: random.Random) -> None:
    day.glide(40)
    for _ in range(chance.randint(2, 8)):
        day.circle(chance.randint(60, 300), 8.5, chance.uniform(0.0, 0.6), 35, chance.uniform(0, 3))
        day.glide(chance.randint(30, 150), 9.0, chance.uniform(-1.3, -0.9))


def strong_wind(day: Day, chance: random.Random) -> None:
    """Hardly any speed over ground for up to a quarter of an hour, up or down."""
    day.glide(40)
    for _ in range(chance.randint(1, 4)):
        day.glide(chance.randint(60, 900), chance.uniform(0.5, 4), chance.choice([-1, 1]) * chance.uniform(0.3, 0.8))
        day.glide(60, 13, -1.5)
    day.glide(60, 8, -1.2)


KINDS: tuple[Callable[[Day, random.Random], None], ...] = (thermals, thermals, ridge, sled, weak_lift, strong_wind)


def drawn(seed: int) -> Day:
    """A day somewhere, with one to three flights, walks and rests between them."""
    chance = random.Random(seed)
    begins = utc("2026-01-01T00:00") + timedelta(minutes=chance.randrange(500_000))
    lat, lon, height = chance.uniform(-60, 60), chance.uniform(-179.9, 179.9), chance.uniform(-50, 2_500)
    day = Day(begins, lat=lat, lon=lon, height=height)
    chance.choice([day.stand, day.stand, day.walk])(chance.randint(90, 900))
    if chance.random() < 0.2:
        day.handle(chance.randint(300, 900), seed).stand(90)
    for _ in range(chance.choice([1, 1, 1, 2, 3])):
        chance.choice(KINDS)(day, chance)
        if chance.random() < 0.6:
            day.stand(chance.randint(70, 600))
        else:
            day.walk(chance.randint(240, 900), chance.uniform(0.7, 1.4), chance.uniform(-0.15, 0.2))
        day.course = chance.uniform(0, 6.28)
    return day


def with_wrong_clock(day: Day, seed: int) -> tuple[Day, int]:
    """A few fixes at the begin or inside whose clock is hours or minutes off."""
    chance = random.Random(-seed - 1)
    count = chance.randint(1, 8)
    first = chance.choice([0, chance.randrange(20, len(day.samples) - 100)])
    by_s = (
        chance.choice([-1, 1]) * chance.randint(HOUR_S + 60, 11 * HOUR_S) if not first else chance.choice([-900, 7_200])
    )
    wrong = {sample.at_s for sample in day.samples[first : first + count]}
    return day.changed(lambda s: replace(s, at_s=s.at_s + by_s) if s.at_s in wrong else s), count


def is_plain(truth: Day, result: object) -> None:
    assert isinstance(result, FlightFound)
    assert result.launches == len(truth.flown)
    assert abs(result.airtime_min - truth.airtime_min) <= 1
    assert abs((result.takeoff_at - truth.takeoff).total_seconds()) <= 60
    assert (result.doubts, result.left_out) == ((), ())


SEEDS = [pytest.param(seed, marks=[] if seed < 20 else pytest.mark.slow) for seed in range(200)]


@pytest.mark.parametrize("seed", SEEDS)
def test_airtime_within_a_minute(seed: int) -> None:
    chance = random.Random(seed)
    day = drawn(seed)
    recorded = day.noisy(chance.choice([0.0, 1.0, 2.0, 3.0]), seed)
    recording = read_recording(recorded.igc(every=chance.choice([1, 1, 2, 4, 8, 10])), "x.igc")
    assert recording.out_of_order == 0
    is_plain(day, judge(recording.fixes))


@pytest.mark.parametrize("seed", SEEDS)
def test_with_a_few_wrong_clocks_as_well(seed: int) -> None:
    day = drawn(seed)
    wrong, count = with_wrong_clock(day, seed)
    first = f"{day.begins:%d%m%y}"
    recording = read_recording(wrong.igc(date_line=f"HFDTE{first}"), "x.igc")
    assert recording.out_of_order == count
    is_plain(day, judge(recording.fixes))
