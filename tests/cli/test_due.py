"""Dates and days of the demo: worked by hand beside the table of the invented kit, not by this program."""

from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from calling import NOW, Kitlog, one_line

from kitlog.app import App
from kitlog.kit.item import Item

FIELDS = {
    *("item", "item_id", "rule", "rule_label", "due_on", "recommended_on", "hours_left", "launches_left"),
    *("predicted_on", "state", "days_left", "book_by", "grounds"),
    *("use_sure", "predicted_low_on", "predicted_high_on", "hours_foreseen", "foreseen", "last_done_on", "failed"),
    *("event", "event_on", "off_season"),
}


def rule(lines: list[dict[str, Any]], item: str, name: str) -> dict[str, Any]:
    (found,) = [line for line in lines if (line["item"], line["rule"]) == (item, name)]
    return found


def test_json_on_the_day_of_the_outing(kitlog: Kitlog, demo: Path) -> None:
    said = kitlog("--data", demo, "due", "--on", "2026-05-09", "--json")
    lines = said.json
    assert said.code == 0
    assert all(set(line) == FIELDS for line in lines)
    full = rule(lines, "Wing A", "wing.full")
    assert (full["due_on"], full["state"], full["days_left"]) == ("2026-05-20", "due soon", 11)
    assert full["hours_left"] == pytest.approx(22.083, abs=0.001)
    assert (full["book_by"], full["rule_label"]) == ("2026-04-29", "full inspection")
    assert rule(lines, "First aid kit", "firstaid.check")["days_left"] == -1
    assert rule(lines, "Speed bar A", "speed.line")["launches_left"] == 4
    assert rule(lines, "Harness B", "harness.visual")["state"] == "no record"
    reserve = rule(lines, "Reserve A", "reserve.repack")
    assert (reserve["recommended_on"], reserve["due_on"]) == ("2026-02-28", "2026-08-31")
    assert reserve["state"] == "recommended date passed"


def test_today_is_the_default(kitlog: Kitlog, demo: Path) -> None:
    lines = kitlog("--data", demo, "due", "--json").json
    first_aid = rule(lines, "First aid kit", "firstaid.check")
    assert (first_aid["state"], first_aid["days_left"]) == ("due soon", 0)


def test_within_hides_nothing_that_is_overdue_or_not_known(kitlog: Kitlog, demo: Path) -> None:
    lines = kitlog("--data", demo, "due", "--on", "2026-05-09", "--within", "11", "--json").json
    found = {(line["item"], line["rule"]) for line in lines}
    assert ("Harness A", "harness.protector") in found
    assert ("Harness B", "harness.visual") in found
    assert ("Reserve A", "reserve.repack") in found
    assert ("Wing A", "wing.full") in found
    assert ("Speed bar A", "speed.line") in found
    assert ("Carabiners A", "carabiner.age") not in found
    assert ("Wing B", "wing.full") not in found
    nearer = kitlog("--data", demo, "due", "--on", "2026-05-09", "--within", "10", "--json").json
    assert ("Wing A", "wing.full") not in {(line["item"], line["rule"]) for line in nearer}


def test_strict_tells_a_stop_by_the_code(kitlog: Kitlog, demo: Path) -> None:
    assert kitlog("--data", demo, "due", "--on", "2026-05-09", "--strict").code == 1
    assert kitlog("--data", demo, "due", "--on", "2026-05-09").code == 0
    before_the_knock = kitlog("--data", demo, "due", "--on", "2026-04-17", "--strict", "--json")
    grounded = [line for line in before_the_knock.json if line["state"] == "overdue" and line["grounds"] == "yes"]
    assert before_the_knock.code == 0
    assert grounded == []


def test_text_says_state_by_word_and_shape_in_80_columns(kitlog: Kitlog, demo: Path) -> None:
    said = kitlog("--data", demo, "due", "--on", "2026-05-09")
    assert "■ overdue           Harness A: protector" in said.out
    assert "○ no record         Harness B: visual check" in said.out
    assert "have the last word." in said.out
    assert all(len(line) <= 80 for line in said.out.splitlines())


def test_no_rule_at_all_is_not_good_news(kitlog: Kitlog, nothing: Path) -> None:
    kitlog("--data", nothing, "pilot", "--body-mass", "70")
    assert "nothing is known about service" in kitlog("--data", nothing, "due").out


def test_what_lies_ahead_is_told_on_the_day_itself(kitlog: Kitlog, demo: Path) -> None:
    today, later = kitlog("--data", demo, "due").out, kitlog("--data", demo, "due", "--on", "2026-05-09").out
    assert "Next outing: Skarnock cross-country, 9\u00a0May\u00a02026" in today
    assert today.replace("\n", " ").count("the next outing") == 1, "the first aid kit runs out in between"
    assert "booking day 29 Apr 2026 has passed" in _third_column(today)
    assert "in Feb 2027 it costs 2 months of interval and no flying day" in _third_column(today)
    assert "Next outing" not in later


def _third_column(said: str) -> str:
    return " ".join(" ".join(line[51:] for line in said.splitlines()).split())


def test_a_check_can_be_moved_out_of_the_season(kitlog: Kitlog, demo: Path) -> None:
    """The log knows February 2026 by days, without a flight; the trim of wing A is due on 27 April 2027."""
    trim = rule(kitlog("--data", demo, "due", "--json").json, "Wing A", "wing.trim")
    assert trim["off_season"] == {"month": "2027-02", "costs_months": 2}


def test_loans_have_their_rows(kitlog: Kitlog, demo: Path) -> None:
    with closing(App(clock=lambda: NOW).bench(demo, create=False)) as bench:
        wing = next(item for item in bench.items() if item.name == "Wing B")
        lent = {"state": "lent", "lent_to": "Ines", "back_by": "2026-05-07"}
        bench.edit_items([Item.model_validate({**wing.model_dump(), **lent})])
    said = " ".join(kitlog("--data", demo, "due").out.split())
    assert "■ on loan Comes back: Wing B back by 7 May 2026; lent to Ines" in said


class TestCalendar:
    def test_it_is_written_and_told_on_the_side(self, kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
        file = tmp_path / "kit.ics"
        said = kitlog("--data", demo, "due", "--json", "--ics", file)
        assert said.code == 0
        assert len(said.json) > 17
        assert f"written: {file} (17 entries)" in said.err
        assert "2 rules have no known day" in said.err, "the harness without a record, and launches left"
        assert file.read_bytes().startswith(b"BEGIN:VCALENDAR\r\n")

    def test_it_holds_all_whatever_the_list_shows(self, kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
        one, other = tmp_path / "one.ics", tmp_path / "other.ics"
        kitlog("--data", demo, "due", "--within", "0", "--on", "2026-05-20", "--ics", one)
        kitlog("--data", demo, "due", "--ics", other)
        assert one.read_bytes().replace(b"LAST-MODIFIED:20260508T180000Z\r\n", b"") == other.read_bytes()

    def test_it_takes_the_place_of_nothing_but_its_own_older_file(
        self, kitlog: Kitlog, demo: Path, tmp_path: Path
    ) -> None:
        note = tmp_path / "note.txt"
        note.write_text("milk", encoding="utf-8")
        before = demo.read_bytes()
        for file in (note, demo):
            assert "no calendar that kitlog wrote" in one_line(kitlog("--data", demo, "due", "--json", "--ics", file))
        assert (note.read_text(encoding="utf-8"), demo.read_bytes()) == ("milk", before)

    def test_a_folder_that_is_not_there_leaves_nothing_remembered(
        self, kitlog: Kitlog, demo: Path, tmp_path: Path
    ) -> None:
        before = demo.read_bytes()
        assert kitlog("--data", demo, "due", "--ics", tmp_path / "no" / "kit.ics").code == 2
        assert demo.read_bytes() == before
        assert list(tmp_path.glob("*.ics")) == []

    def test_strict_goes_with_it(self, kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
        assert kitlog("--data", demo, "due", "--strict", "--ics", tmp_path / "kit.ics").code == 1
