"""kitlog flights edit and delete, on a real data file."""

from pathlib import Path
from typing import Any

from calling import Kitlog, one_line

ADD = ("flights", "add", "--on", "2026-05-01", "--flown", "Wing A", "--airtime")


def entries(kitlog: Kitlog, data: Path) -> list[dict[str, Any]]:
    return list(kitlog("--data", data, "flights", "list", "--json").json)


def test_what_is_not_given_stays(kitlog: Kitlog, demo: Path) -> None:
    kitlog("--data", demo, *ADD, "90", "--takeoff", "11:00", "--landing", "12:30", "--site", "Skarnock")
    before = entries(kitlog, demo)[-1]
    said = kitlog("--data", demo, "flights", "edit", "2026-05-01", "--airtime", "80", "--carried", "Phone")
    assert (said.code, said.out) == (0, "changed: 1\u00a0May\u00a02026, 1:20\u00a0h\n")
    after = entries(kitlog, demo)[-1]
    assert after["carried"] == ["Phone"]
    assert {key for key in after if after[key] != before[key]} == {"airtime_min", "carried", "carried_ids"}


def test_the_times_move_with_the_day(kitlog: Kitlog, demo: Path) -> None:
    kitlog("--data", demo, *ADD, "90", "--takeoff", "11:00", "--landing", "12:30")
    assert kitlog("--data", demo, "flights", "edit", "2026-05-01 11:00", "--on", "2026-05-03").code == 0
    entry = entries(kitlog, demo)[-1]
    assert (entry["on"], entry["takeoff_at"][:10], entry["landing_at"][:10]) == ("2026-05-03",) * 3
    assert kitlog("--data", demo, "flights", "edit", "2026-05-03 11:00", "--takeoff", "10:45").code == 0


def test_delete_gives_the_hours_back(kitlog: Kitlog, demo: Path) -> None:
    before = entries(kitlog, demo)
    kitlog("--data", demo, *ADD, "90")
    said = kitlog("--data", demo, "flights", "delete", entries(kitlog, demo)[-1]["id"])
    assert (said.code, said.out) == (0, "deleted: 1\u00a0May\u00a02026, 1:30\u00a0h\n")
    assert entries(kitlog, demo) == before


def test_of_two_on_a_day_the_choice_is_shown(kitlog: Kitlog, demo: Path) -> None:
    kitlog("--data", demo, *ADD, "60", "--takeoff", "11:00")
    kitlog("--data", demo, *ADD, "30", "--takeoff", "15:00")
    line = one_line(kitlog("--data", demo, "flights", "delete", "2026-05-01"))
    assert "Say which one: 2026-05-01 11:00, 2026-05-01 15:00" in line
    assert kitlog("--data", demo, "flights", "delete", "2026-05-01 15:00").code == 0


def test_refused(kitlog: Kitlog, demo: Path, nothing: Path) -> None:
    kitlog("--data", demo, *ADD, "60")
    edit = ("--data", demo, "flights", "edit")
    assert "kitlog flights list" in one_line(kitlog(*edit, "2026-05-02", "--airtime", "5"))
    assert "nothing says what should change" in one_line(kitlog(*edit, "2026-05-01"))
    assert "Wing A was both flown and carried" in one_line(kitlog(*edit, "2026-05-01", "--carried", "Wing A"))
    assert "2 wings were flown" in one_line(kitlog(*edit, "2026-05-01", "--flown", "Wing A,Wing B"))
    assert "--airtime: 1500" in one_line(kitlog(*edit, "2026-05-01", "--airtime", "1500"))
    assert "--takeoff" in one_line(kitlog(*edit, "2026-05-01", "--landing", "12:00"))
    assert kitlog("--data", nothing, "flights", "delete", "2026-05-01").code == 3
    assert not nothing.exists()
