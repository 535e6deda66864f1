"""What is said of an evening of charging."""

import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from source_walk import calls, modules, strings, text

from kitlog.budget.charging.result import NOT_TONIGHT
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.packing.evening_asked import Note, Piece
from kitlog.packing.evening_plan import ChargeLine, Hang
from kitlog.packing.on_hand import OnHand
from kitlog.wording.charge_text import CODES, LEFT_OUT, clock_of, hangs_text, note_text, on_hand_text

NOW = datetime(2026, 5, 8, 20, 0, tzinfo=UTC)


def test_each_note_has_words_and_no_words_are_dead() -> None:
    ours = {
        code
        for path in modules("packing")
        if path.name == "evening_asked.py"
        for call in calls([path], "Note", "_named")
        if (code := text(call.args[0])) is not None
    }
    budget = {code for call in calls(modules("budget/charging"), "Caution") if (code := text(call.args[0]))}
    assert len(budget) > 5
    assert ours | budget == CODES


def test_each_reason_has_words() -> None:
    assert set(NOT_TONIGHT) | {"no_charger"} == set(LEFT_OUT)


def test_notes_leave_no_blank() -> None:
    for code in CODES:
        said = note_text(Note(code, ("a",), 61.0, 60.0, "source"), {"a": "Phone"})
        assert said
        assert not re.search(r"[{}]", said)


@pytest.mark.parametrize(
    ("hour", "up", "said"),
    [
        (19, False, "19:00"),
        (30.5, False, "06:30"),
        (21.97281, True, "21:59"),
        (22.0, True, "22:00"),
        (24, False, "00:00"),
    ],
)
def test_hours_of_the_night_as_times(hour: float, up: bool, said: str) -> None:  # a table of cases
    assert clock_of(hour, up=up) == said


@pytest.mark.parametrize(
    ("seen", "said"),
    [
        (OnHand(62, NOW - timedelta(hours=1), known=True), "62 % on hand, seen 19:00"),
        (OnHand(None, None, known=False), "charge on hand not known, reckoned from 0 %"),
        (
            OnHand(40, NOW - timedelta(days=7), known=False),
            "charge on hand not known, reckoned from 0 %; 40 % on 1 May",
        ),
    ],
)
def test_a_charge_that_is_not_known_is_never_shown_as_known(seen: OnHand, said: str) -> None:
    assert on_hand_text(seen, NOW).replace("\u00a0", " ") == said


def test_the_walk_finds_strings() -> None:
    assert "charge_not_known" in strings(modules("packing"))


def test_a_port_is_named_once_for_its_stays() -> None:
    """The second stay on the same port was cut off at the end of its row."""
    wall, phone = (Piece(Item(id=name, name=name, kind=Kind.OTHER)) for name in ("Wall charger", "Phone"))
    stays = (Hang(wall, 1, 20.5, 22.5, False), Hang(wall, 1, 30.5, 31.0, True), Hang(wall, 2, 31.0, 32.0, False))
    seen = OnHand(40.0, NOW, True)
    line = ChargeLine(phone, seen, 100.0, 31.9, 0.0, "", stays)
    said = "Wall charger, port 1, 20:30 to 22:30, 06:30 to 07:00 overnight; Wall charger, port 2, 07:00 to 08:00"
    assert hangs_text(line) == said
    assert hangs_text(replace(line, hangs=())) == ""
