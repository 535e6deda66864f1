"""Calendar files, read back by the `icalendar` library and looked at as RFC 5545 has them (sections named)."""

from datetime import UTC, date, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st
from icalendar import Calendar, Event

from kitlog.files.calendar_file import calendar_bytes, is_own
from kitlog.kit.reminders import Entry, Wanted

PLAIN = st.characters(exclude_categories=("Cc", "Cs", "Zl", "Zp"))
LINE = st.text(PLAIN, min_size=1, max_size=200).filter(str.strip)
"""What a name in the data file may hold (`kitlog.units.text`)."""

NOTE = st.lists(LINE, max_size=5).map("\n".join)

NOW = datetime(2026, 5, 8, 20, 0, 7, 250_000, tzinfo=UTC)
SAID = Wanted("r1.0@kitlog", date(2026, 5, 20), 45, "Due: Wing A, full inspection", "Due 20 May 2026.\nRule: x; y, z")


def only(entry: Entry) -> Event:
    (event,) = Calendar.from_ical(calendar_bytes([entry], NOW)).walk("VEVENT")
    return event


def test_an_all_day_event_with_an_exclusive_end() -> None:
    """3.6.1: DTSTART as a DATE; DTEND is the day after."""
    event = only(Entry(SAID, 3, changed=True))
    assert (event.decoded("dtstart"), event.decoded("dtend")) == (date(2026, 5, 20), date(2026, 5, 21))
    assert event["dtstart"].to_ical() == b"20260520"
    assert (str(event["uid"]), event["sequence"], str(event["status"])) == ("r1.0@kitlog", 3, "CONFIRMED")
    assert (str(event["summary"]), str(event["description"])) == (SAID.summary, SAID.text)
    assert str(event["transp"]) == "TRANSPARENT"


def test_stamps_are_in_utc_and_whole_seconds() -> None:
    """3.8.7.2: DTSTAMP in UTC; 3.8.7.3: LAST-MODIFIED where it was."""
    event = only(Entry(SAID, 0, changed=True))
    assert event.decoded("dtstamp") == event.decoded("last-modified") == NOW.replace(microsecond=0)
    assert event["dtstamp"].to_ical() == b"20260508T200007Z"
    assert "last-modified" not in only(Entry(SAID, 0, changed=False))


def test_it_rings_at_nine_on_a_day_ahead() -> None:
    """3.8.6.3: a trigger counts from the beginning, which for an all-day event is midnight."""
    (alarm,) = only(Entry(SAID, 0, changed=True)).walk("VALARM")
    assert alarm.decoded("trigger") == timedelta(days=-45, hours=9)
    assert (str(alarm["action"]), str(alarm["description"])) == ("DISPLAY", SAID.summary)


def test_what_is_taken_back_is_cancelled_and_does_not_ring() -> None:
    event = only(Entry(SAID, 1, changed=True, cancelled=True))
    assert str(event["status"]) == "CANCELLED"
    assert event.walk("VALARM") == []


@given(
    st.lists(
        st.builds(
            Wanted,
            st.uuids().map(str),
            st.dates(date(1970, 1, 1), date(2100, 12, 31)),
            st.integers(0, 3650),
            LINE,
            NOTE,
        )
    )
)
def test_any_words_come_back_in_lines_of_75_octets_that_end_with_cr_lf(said: list[Wanted]) -> None:
    """3.1: lines of at most 75 octets without the break; 3.3.11: commas, semicolons, backslashes and breaks escaped."""
    data = calendar_bytes([Entry(one, 0, changed=True) for one in said], NOW)
    assert data.endswith(b"END:VCALENDAR\r\n")
    physical = data.split(b"\r\n")
    assert max(map(len, physical)) <= 75
    assert not any(b"\n" in line or b"\r" in line for line in physical)
    back = Calendar.from_ical(data).walk("VEVENT")
    assert [(str(e["uid"]), str(e["summary"]), str(e.get("description", ""))) for e in back] == [
        (one.uid, one.summary, one.text) for one in said
    ]


def test_an_empty_calendar_is_one_too() -> None:
    """3.6: VERSION and PRODID."""
    calendar = Calendar.from_ical(calendar_bytes([], NOW))
    assert str(calendar["version"]) == "2.0"
    assert str(calendar["prodid"]).startswith("-//kitlog//")
    assert "method" not in calendar, "RFC 5546 3.2.1 would want an organizer then"


def test_its_own_files_are_known_by_their_heads() -> None:
    assert is_own(calendar_bytes([], NOW)[:400])
    assert is_own(b"")
    assert not is_own(b"BEGIN:VCALENDAR\r\nPRODID:-//Someone//Else//EN\r\n")
    assert not is_own(b"SQLite format 3\0")
