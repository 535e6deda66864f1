from pathlib import Path

import pytest
from calling import Kitlog, one_line

ADD = ("flights", "add", "--on", "2026-05-01", "--airtime", "90")


def test_added_hours_move_the_service_date(kitlog: Kitlog, demo: Path) -> None:
    def left() -> float:
        lines = kitlog("--data", demo, "due", "--json").json
        return next(x["hours_left"] for x in lines if (x["item"], x["rule"]) == ("Wing A", "wing.full"))

    before = left()
    said = kitlog("--data", demo, *ADD, "--ground-handling", "30", "--flown", "Wing A, Harness A", "--site", "Skarnock")
    assert (said.code, said.out) == (0, "entered: 1\u00a0May\u00a02026, 1:30\u00a0h\n")
    assert before - left() == pytest.approx(2.0)  # 90 min of flight and 30 min of ground handling
    entry = kitlog("--data", demo, "flights", "list", "--json").json[-1]
    assert entry["flown"] == ["Wing A", "Harness A"]
    assert len(entry["flown_ids"]) == 2
    assert (entry["airtime_min"], entry["launches"], entry["site"]) == (90.0, 1, "Skarnock")


def test_names_with_commas_in_them(kitlog: Kitlog, demo: Path) -> None:
    said = kitlog("--data", demo, *ADD, "--flown", "Wing A", "--carried", "Phone,Papers, cash and card,Phone")
    assert said.code == 0
    assert kitlog("--data", demo, "flights", "list", "--json").json[-1]["carried"] == ["Phone", "Papers, cash and card"]


def test_list_as_text(kitlog: Kitlog, demo: Path) -> None:
    said = kitlog("--data", demo, "flights", "list")
    # 61.0 h of typed totals less 9 h of ground handling, and 17.0 h of six flights, by hand: 69 h
    assert "8 entries, 69:00\u00a0h" in said.out
    assert "Mount Karrak" in said.out
    assert all(len(line) <= 80 for line in said.out.splitlines())


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ((), 'nothing says what was flown. Name it, as in: --flown "Wing A,Harness A" (last time: Wing A,Harness A'),
        (("--flown", "Wing Z"), "--flown: no item is called “Wing Z”"),
        (("--flown", "Wing A,,Phone"), "--flown: no item is called “”"),
        (("--flown", "Wing A", "--carried", "Rope"), "--carried: no item is called “Rope”"),
        (("--flown", "Wing A", "--launches", "-1"), "--launches: “-1” is out of range"),
        (
            ("--flown", "Wing A", "--until", "2026-04-01", "--launches", "3"),
            "--until: the flight ends before it begins",
        ),
        (("--flown", "Wing A", "--until", "2026-05-03"), "--until: it says nothing without --launches"),
        (("--flown", "Wing A", "--site", "a\tb"), "--site: it holds a character that cannot be shown (U+0009)"),
        (("--flown", "Wing A", "--site", "x" * 300), "--site: it is too long"),
        (("--flown", "Wing A", "--until", "2026-05-09", "--launches", "3"), "2026-05-09 has not been yet"),
        (("--flown", "Wing A", "--airtime", "1441"), "--airtime: 1441.0 minutes are longer than a day"),
        (("--flown", "Wing A", "--on", "2026-05-09"), "2026-05-09 has not been yet"),
    ],
)
def test_refused(kitlog: Kitlog, demo: Path, more: tuple[str, ...], words: str) -> None:
    before = demo.read_bytes()
    assert words in one_line(kitlog("--data", demo, *ADD, *more))
    assert demo.read_bytes() == before


def test_a_typed_total(kitlog: Kitlog, demo: Path) -> None:
    more = ("--until", "2026-05-07", "--launches", "9", "--airtime", "2000")
    assert kitlog("--data", demo, *ADD, *more, "--flown", "Wing B").code == 0
    assert kitlog("--data", demo, "flights", "list", "--json").json[-1]["launches"] == 9


def test_the_log_may_begin_before_the_kit(kitlog: Kitlog, nothing: Path) -> None:
    refused = kitlog("--data", nothing, *ADD, "--flown", "Wing A")
    assert (refused.code, nothing.exists()) == (2, False)
    said = kitlog("--data", nothing, *ADD)
    assert (said.code, "booked on nothing of the kit" in said.out) == (0, True)
    assert len(kitlog("--data", nothing, "flights", "list", "--json").json) == 1


def test_nothing_flown_can_be_said(kitlog: Kitlog, demo: Path) -> None:
    said = kitlog("--data", demo, *ADD, "--flown", "")
    assert (said.code, "booked on nothing of the kit" in said.out) == (0, True)


def test_an_empty_log(kitlog: Kitlog, nothing: Path) -> None:
    kitlog("--data", nothing, "pilot", "--body-mass", "70")
    assert "kitlog flights add" in kitlog("--data", nothing, "flights", "list").out


def test_take_off_and_landing_in_local_time(kitlog: Kitlog, demo: Path) -> None:
    more = ("--flown", "Wing A", "--takeoff", "11:00", "--landing", "12:30")
    assert kitlog("--data", demo, *ADD, *more).code == 0
    entry = kitlog("--data", demo, "flights", "list", "--json").json[-1]
    assert entry["takeoff_at"] < entry["landing_at"]
    overlaps = kitlog("--data", demo, *ADD, "--flown", "Wing A", "--takeoff", "12:00")
    assert "30 min of it are also in the flight of 2026-05-01" in one_line(overlaps)
    longer = kitlog("--data", demo, *ADD, "--flown", "Wing B", "--takeoff", "14:00", "--landing", "15:00")
    assert "90 min of airtime are more than the 60 min" in one_line(longer)
    assert "no time of day" in one_line(kitlog("--data", demo, *ADD, "--takeoff", "25:00"))
    assert "--takeoff" in one_line(kitlog("--data", demo, *ADD, "--flown", "Wing A", "--landing", "15:00"))


def test_the_zone_of_the_clocks_can_be_said(kitlog: Kitlog, demo: Path) -> None:
    times = ("--takeoff", "11:00", "--landing", "12:30", "--flown", "Wing A", "--zone")
    assert kitlog("--data", demo, *ADD, *times, "Pacific/Auckland").code == 0
    entry = kitlog("--data", demo, "flights", "list", "--json").json[-1]
    assert (entry["time_zone"], entry["takeoff_at"]) == ("Pacific/Auckland", "2026-04-30T23:00:00Z")
    said = kitlog("--data", demo, *ADD, *times, "Mars/Olympus")
    assert "--zone: “Mars/Olympus” is no time zone" in one_line(said)
