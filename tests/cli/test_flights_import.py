"""kitlog flights import, on a real data file: one row a file, what is confirmed, what is asked about, exit codes."""

from datetime import timedelta
from pathlib import Path

import pytest
from calling import Kitlog, Said
from recordings import Day, flight, utc

KEYS = [
    "file",
    "date",
    "takeoff_utc",
    "landing_utc",
    "airtime_min",
    "launches",
    "max_altitude_m",
    "status",
    "reason",
]
"""What scripts may count on."""


def put(folder: Path, name: str, day: Day, **more: object) -> Path:
    path = folder / name
    path.write_bytes(day.igc(every=4, **more))  # type: ignore[arg-type]
    return path


def flown(begins: str = "2026-05-02T09:00", minutes: int = 30) -> Day:
    return flight(Day(utc(begins)).stand(200), minutes).stand(200)


def count(kitlog: Kitlog, data: Path) -> int:
    return len(kitlog("--data", data, "flights", "list", "--json").json)


def statuses(said: Said) -> list[str]:
    return [row["status"] for row in said.json]


def test_one_row_a_file(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    day = flown(minutes=45)
    path = put(tmp_path, "a.igc", day)
    said = kitlog("--data", demo, "flights", "import", path, "--yes", "--json")
    (row,) = said.json
    assert (said.code, list(row)) == (0, KEYS)
    assert (row["file"], row["date"], row["launches"]) == (str(path), "2026-05-02", 1)
    assert (row["status"], row["reason"]) == ("imported", None)
    assert row["airtime_min"] == pytest.approx(45, abs=0.5)
    assert abs(utc(row["takeoff_utc"].removesuffix("Z")) - day.takeoff) <= timedelta(seconds=15)
    assert abs(utc(row["landing_utc"].removesuffix("Z")) - day.landing) <= timedelta(seconds=15)
    assert row["max_altitude_m"] == pytest.approx(day.top, abs=5)
    entry = kitlog("--data", demo, "flights", "list", "--json").json[-1]
    assert entry["airtime_min"] == pytest.approx(row["airtime_min"], abs=0.01)
    assert {"Wing A", "Harness A", "Reserve A", "Helmet A", "Carabiners A"} <= set(entry["flown"])
    assert entry["max_gnss_m"] == row["max_altitude_m"]
    assert entry["max_pressure_m"] == pytest.approx(day.top - 40, abs=5)


def test_nothing_comes_in_without_yes(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    before = demo.read_bytes()
    path = put(tmp_path, "a.igc", flown())
    said = kitlog("--data", demo, "flights", "import", path)
    assert said.code == 2
    assert "found: 2\u00a0May\u00a02026" in said.out
    assert "booked on Wing A" in said.out
    assert "--yes" in said.err
    assert statuses(kitlog("--data", demo, "flights", "import", path, "--json")) == ["refused"]
    dry = kitlog("--data", demo, "flights", "import", path, "--dry-run", "--yes", "--json")
    assert (dry.code, statuses(dry)) == (0, ["proposed"])
    assert demo.read_bytes() == before


def test_where_nothing_was_found_there_is_nothing_to_confirm(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    said = kitlog("--data", demo, "flights", "import", tmp_path / "gone.igc")
    assert (said.code, said.err) == (2, "")
    waiting = kitlog("--data", demo, "flights", "import", put(tmp_path, "a.igc", flown()))
    assert (waiting.code, "--yes" in waiting.err) == (2, True)


def test_one_bad_file_does_not_stop_the_rest(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    good, again = put(tmp_path, "a.igc", flown()), put(tmp_path, "b.igc", flown())
    second = put(tmp_path, "c.igc", flown().noisy(3))
    bad, missing = tmp_path / "d.igc", tmp_path / "none.igc"
    bad.write_bytes(b"\0\1\2")
    walk = put(tmp_path, "e.igc", Day(utc("2026-05-03T09:00")).walk(900))
    later = put(tmp_path, "f.igc", flown("2026-05-04T09:00"))
    files = (good, again, second, bad, missing, walk, later)
    said = kitlog("--data", demo, "flights", "import", *files, "--yes", "--json")
    assert said.code == 2
    assert statuses(said) == ["imported", "duplicate", "duplicate", "refused", "refused", "refused", "imported"]
    assert all(row["reason"] for row in said.json if row["status"] != "imported")
    assert count(kitlog, demo) == 8 + 2
    again_said = kitlog("--data", demo, "flights", "import", *files, "--yes", "--json")
    assert statuses(again_said) == ["duplicate"] * 3 + ["refused"] * 3 + ["duplicate"]
    assert count(kitlog, demo) == 8 + 2


def test_a_folder(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    card = tmp_path / "card"
    (card / "2026").mkdir(parents=True)
    put(card, "b.IGC", flown())
    put(card / "2026", "a.igc", flown("2026-05-04T09:00"))
    (card / "readme.txt").write_text("no recording")
    said = kitlog("--data", demo, "flights", "import", card, "--yes", "--json")
    assert (said.code, statuses(said)) == (0, ["imported", "imported"])


def test_a_file_without_a_date(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    path = put(tmp_path, "a.igc", flown(), date_line="")
    refused = kitlog("--data", demo, "flights", "import", path, "--yes", "--json")
    assert (refused.code, statuses(refused)) == (2, ["refused"])
    said = kitlog("--data", demo, "flights", "import", path, "--yes", "--date", "2026-05-02", "--json")
    assert (said.code, said.json[0]["date"]) == (0, "2026-05-02")


def test_what_looks_like_no_flight_needs_a_word_more(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    cable = put(tmp_path, "a.igc", Day(utc("2026-05-02T09:00"), height=800).stand(100).cable(400).stand(100))
    said = kitlog("--data", demo, "flights", "import", cable, "--yes")
    assert said.code == 2
    assert "cable car" in said.out
    assert "--sure" in said.err
    assert count(kitlog, demo) == 8
    assert kitlog("--data", demo, "flights", "import", cable, "--yes", "--sure").code == 0
    assert count(kitlog, demo) == 9


def test_flown_by_name(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    path = put(tmp_path, "a.igc", flown())
    unknown = kitlog("--data", demo, "flights", "import", path, "--yes", "--flown", "Wing Z")
    assert (unknown.code, unknown.out) == (2, "")
    assert "Wing Z" in unknown.err
    said = kitlog("--data", demo, "flights", "import", path, "--yes", "--flown", "Wing B, Harness B")
    assert "booked on Wing B, Harness B" in said.out
    assert kitlog("--data", demo, "flights", "list", "--json").json[-1]["flown"] == ["Wing B", "Harness B"]


def test_a_kit_of_which_nobody_knows_what_was_flown(kitlog: Kitlog, nothing: Path, tmp_path: Path) -> None:
    table = tmp_path / "kit.csv"
    table.write_text("name,kind\nOne,wing\nTwo,wing\n", encoding="utf-8")
    assert kitlog("--data", nothing, "kit", "import", table).code == 0
    path = put(tmp_path, "a.igc", flown())
    said = kitlog("--data", nothing, "flights", "import", path, "--yes", "--json")
    assert (said.code, statuses(said)) == (2, ["refused"])
    assert "what was flown" in said.json[0]["reason"]
    assert kitlog("--data", nothing, "flights", "import", path, "--yes", "--flown", "One").code == 0


def test_no_data_file_is_made_by_a_mistyped_name(kitlog: Kitlog, nothing: Path, tmp_path: Path) -> None:
    path = put(tmp_path, "a.igc", flown())
    said = kitlog("--data", nothing, "flights", "import", path, "--yes")
    due = kitlog("--data", nothing, "due")
    assert (said.code, said.out, said.err) == (due.code, "", due.err)
    assert not nothing.exists()


def test_the_log_may_begin_before_the_kit(kitlog: Kitlog, nothing: Path, tmp_path: Path) -> None:
    kitlog("--data", nothing, "pilot", "--body-mass", "70")
    said = kitlog("--data", nothing, "flights", "import", put(tmp_path, "a.igc", flown()), "--yes")
    assert (said.code, "booked on nothing of the kit" in said.out) == (0, True)
    assert count(kitlog, nothing) == 1


def test_json_says_all_that_the_text_says(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    whole = flown("2026-05-02T09:00", 60)
    gap = put(tmp_path, "gap.igc", whole.without(1_000, 600))
    cable = Day(utc("2026-05-03T07:00"), height=800).stand(300).cable(500).walk(600)
    ride = put(tmp_path, "ride.igc", flight(cable, 30).stand(300))
    total = put(tmp_path, "total.igc", flown("2025-06-01T09:00"))
    plain = put(tmp_path, "plain.igc", flown("2026-05-05T09:00"))
    files = (gap, ride, total, plain)
    more = ("--yes", "--sure", "--json")
    said = kitlog("--data", demo, "flights", "import", *files, *more, "--flown", "Wing A,Harness A")
    reasons = [row["reason"] or "" for row in said.json]
    assert statuses(said) == ["imported"] * 4
    assert "1 gap of 10 min counts as flown" in reasons[0]
    assert "left out, 8 min: looks like a cable car" in reasons[1]
    assert "reaches over its day" in reasons[2]
    assert said.json[3]["reason"] is None


def test_a_second_recording_of_what_was_not_entered_is_refused_with_it(
    kitlog: Kitlog, demo: Path, tmp_path: Path
) -> None:
    ride = Day(utc("2026-05-02T09:00"), height=800).stand(100).cable(400).stand(100)
    files = put(tmp_path, "a.igc", ride), put(tmp_path, "b.igc", ride.noisy(1))
    said = kitlog("--data", demo, "flights", "import", *files, "--yes", "--json")
    assert (said.code, statuses(said)) == (2, ["refused", "refused"])
    assert "a.igc, which was not entered" in said.json[1]["reason"]
    sure = kitlog("--data", demo, "flights", "import", *files, "--yes", "--sure", "--json")
    assert (sure.code, statuses(sure)) == (0, ["imported", "duplicate"])


def test_longer_than_a_day_is_refused_and_the_others_are_in(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    long_day = flight(Day(utc("2026-04-28T06:00")).stand(200), 26 * 60).stand(200)
    long_path = tmp_path / "long.igc"
    long_path.write_bytes(long_day.igc(every=20))
    good = put(tmp_path, "a.igc", flown())
    said = kitlog("--data", demo, "flights", "import", long_path, good, "--yes", "--sure", "--json")
    assert (said.code, statuses(said)) == (2, ["refused", "imported"])


def test_by_hand_what_overlaps_needs_a_word(kitlog: Kitlog, demo: Path) -> None:
    add = ("flights", "add", "--on", "2026-05-01", "--flown", "Wing A", "--airtime")
    assert kitlog("--data", demo, *add, "800").code == 0
    asked = kitlog("--data", demo, *add, "700")
    assert (asked.code, "25 h" in asked.err, "--sure" in asked.err) == (2, True, True)
    assert kitlog("--data", demo, *add, "700", "--sure").code == 0
