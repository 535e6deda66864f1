"""Who has a thing and when it is back; what stands in the way of a day that is about the thing itself."""

from datetime import date

import pytest
from small_kit import item

from kitlog.budget.result import State
from kitlog.packing.what_stops import StopLine
from kitlog.wording.season_text import custody_text, season_lines, stop_sentence, stop_title, stops_lines

BACK = date(2026, 6, 1)
TODAY = date(2026, 5, 8)


@pytest.mark.parametrize(
    ("fields", "text"),
    [
        ({}, ""),
        ({"state": "lent"}, "lent"),
        ({"state": "lent", "lent_to": "Bero", "back_by": BACK}, "lent to Bero, back by 1 Jun 2026"),
        ({"state": "borrowed", "belongs_to": "the club"}, "belongs to the club"),
        ({"state": "borrowed", "back_by": BACK}, "borrowed, back by 1 Jun 2026"),
        ({"state": "away"}, "away"),
    ],
)
def test_who_has_it(fields: dict[str, object], text: str) -> None:
    assert custody_text(item("wing", "wing", **fields)).replace("\u00a0", " ") == text


def test_what_is_about_the_thing_itself() -> None:
    used_up = item("wing", "wing", state="lent", lent_to="Bero")
    assert stop_title(StopLine(used_up, State.LOOK, why="away")) == "wing"
    assert stop_sentence(StopLine(used_up, State.LOOK, why="away")) == "not at hand: lent to Bero"
    assert "nothing is known" in stop_sentence(StopLine(used_up, State.NOT_KNOWN, why="no rules"))
    borrowed = item("vest", "buoyancy", state="borrowed", belongs_to="the club", back_by=BACK)
    said = stop_sentence(StopLine(borrowed, State.LOOK, why="goes back")).replace("\u00a0", " ")
    assert said == "belongs to the club, back by 1 Jun 2026: has to be back before"


def test_nothing_is_never_said_as_good() -> None:
    said = " ".join(" ".join(stops_lines((), TODAY, TODAY)).split())
    assert "Nothing on record is a stop" in said
    assert "last word" in said
    assert "as far as the records tell" in " ".join(season_lines(TODAY, ()))
