"""What is said of flights found in recordings (tests/recordings.py)."""

from dataclasses import replace

import pytest
from recordings import Day, flight, utc

from kitlog.files.recordings.read_recording import read_recording
from kitlog.kit.recordings.found import Because, Doubt, FlightFound, LooksLike
from kitlog.kit.recordings.judge import judge
from kitlog.kit.recordings.outcome import Reason
from kitlog.kit.recordings.sieve import Sieve
from kitlog.wording.recording_report import remarks
from kitlog.wording.recording_text import doubt_text, reason_text, remarks_on


def said(day: Day) -> list[str]:
    result = judge(read_recording(day.igc(), "x.igc").fixes)
    assert isinstance(result, FlightFound)
    return list(remarks_on(result))


def begun() -> Day:
    return Day(utc("2026-04-05T09:00")).stand(300)


def test_of_a_plain_flight_nothing() -> None:
    assert said(flight(begun(), 30).stand(300)) == []


def test_what_is_left_out_and_why() -> None:
    (line,) = said(flight(begun().cable(500).walk(600), 30).stand(300))
    assert line.startswith("left out, 8 min: looks like a cable car: it climbs ")


def test_a_gap_and_an_end_in_the_air() -> None:
    lines = said(flight(begun(), 60).without(1_000, 600))
    assert lines == [
        "the recording ends in the air: counted to its last fix there",
        "1 gap of 10 min counts as flown",
    ]


@pytest.mark.parametrize("because", Because)
@pytest.mark.parametrize("looks_like", LooksLike)
def test_every_doubt_has_its_words(looks_like: LooksLike, because: Because) -> None:
    text = doubt_text(Doubt(looks_like, because, 15.0, 120.0, 80.0, 90.0, 3))
    assert text.startswith("looks like ")
    assert "{" not in text


class TestReasons:
    def test_what_it_looks_like_is_said_with_what_to_do(self) -> None:
        flight = judge(read_recording(begun().cable(500).stand(100).igc(), "x").fixes)
        assert isinstance(flight, FlightFound)
        told = reason_text(Reason("recording.looks_like", {"doubt": flight.doubts[0]}))
        assert told.what == "it may be no flight: it looks like a cable car: it climbs 1000 m on a straight line"
        assert told.remedy == "Confirm it if it was flown, else leave it out."

    def test_others_are_named(self) -> None:
        told = reason_text(Reason("recording.overlaps", {"of": "b.igc", "minutes": 15}))
        assert told.what == "15 min of it are also in b.igc, and nobody flies twice at a time"


def test_fixes_whose_time_jumps_are_counted_and_told() -> None:
    day = flight(begun(), 30).stand(300)
    first_s = day.samples[0].at_s
    wrong = day.changed(lambda s: replace(s, at_s=s.at_s + 7_200) if 900 <= s.at_s - first_s < 903 else s)
    (outcome,) = [Sieve().outcome(read_recording(wrong.igc(), "x.igc"))]
    assert list(remarks(outcome)) == ["3 fixes left out: their time does not go on from those about them"]
    assert outcome.flight is not None
    assert abs(outcome.flight.airtime_min - day.airtime_min) < 1
