"""What became of recordings, one line a file, and what came of them together."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import UTC, datetime, tzinfo
from itertools import islice
from zoneinfo import ZoneInfo

from kitlog.kit.recordings.found import FlightFound
from kitlog.kit.recordings.outcome import Outcome, Reason, Status
from kitlog.packing.flown_set import ChosenBy, FlownSet
from kitlog.units.clock import nearest_minute
from kitlog.wording.figures import day_text, hours_text, number_text
from kitlog.wording.recording_text import out_of_order_text, reason_text, remarks_on
from kitlog.wording.translate import N_, _, ngettext

STATUS = {
    Status.PROPOSED: N_("found"),
    Status.IMPORTED: N_("imported"),
    Status.DUPLICATE: N_("duplicate"),
    Status.REFUSED: N_("refused"),
}

RULE = (
    N_(
        "In the air is what shows, over 30 s, a speed over ground of 4.5 m/s (16 km/h) or a climb or sink of 1 m/s: "
        "nobody does that on foot. The take-off is the first quick step of it, the landing the last."
    ),
    N_(
        "A landing is seen at rest for 60 s (within 15 m), or at no more than a walk for 180 s, without climbing or "
        "sinking more than a walk does. Time on the ground between two launches is not airtime."
    ),
    N_(
        "A gap counts as flown if it begins and ends in the air. A recording that starts or ends in the air counts "
        "from its first or to its last fix."
    ),
    N_(
        "The figures are kitlog's own choice. Cable cars, rides by car, boat or bicycle and ground handling look like "
        "flights: what looks like one of them is asked about."
    ),
)
"""The take-off rule in short; the whole of it stands in `kitlog.kit.recordings.judge`."""


def status_word(status: Status) -> str:
    """Where a recording stands, in one word."""
    return _(STATUS[status])


def local_times(flight: FlightFound, zone: str) -> str:
    """Take-off and landing on the clocks of the place, or in UTC where its zone is not known."""
    clocks: tzinfo = ZoneInfo(zone) if zone else UTC
    begins, ends = (_clock(at, clocks) for at in (flight.takeoff_at, flight.landing_at))
    said = _("{begins} to {ends}").format(begins=begins, ends=ends)
    return said if zone else _("{times} UTC").format(times=said)


def _clock(at: datetime, clocks: tzinfo) -> str:
    return f"{nearest_minute(at.astimezone(clocks)):%H:%M}"


def flight_line(outcome: Outcome) -> str:
    """When and how long a flight was, its launches and its top; empty where none was found."""
    flight, day = outcome.flight, outcome.local_day
    if flight is None or day is None:
        return ""
    parts = [
        day_text(day),
        local_times(flight, outcome.zone),
        hours_text(flight.airtime_min / 60),
        ngettext("{n} launch", "{n} launches", flight.launches).format(n=flight.launches),
    ]
    if flight.max_altitude_m is not None:
        parts.append(_("top {height} m").format(height=number_text(flight.max_altitude_m)))
    return ", ".join(parts)


def booked_line(booked: FlownSet, names: Mapping[str, str]) -> str:
    """What a flight is booked on, and why on that."""
    if not booked.flown:
        return _("booked on nothing of the kit: no item gets these hours")
    flown = ", ".join(names.get(item_id, item_id) for item_id in booked.flown)
    said = _("booked on {flown}").format(flown=flown)
    why = set_text(booked)
    text = _("{said} ({why})").format(said=said, why=why) if why else said
    if not booked.carried:
        return text
    count = len(booked.carried)
    return text + ngettext("; carried: {n} item", "; carried: {n} items", count).format(n=count)


def set_text(booked: FlownSet) -> str:
    """Why this was proposed as flown; empty for what was named."""
    words = {
        ChosenBy.OUTING: _("outing {name}").format(name=booked.name),
        ChosenBy.LAST_FLIGHT: _("as on {day}").format(day=day_text(booked.day) if booked.day else ""),
        ChosenBy.ONLY_ONES: _("the only ones"),
    }
    return words.get(booked.by, "")


def said_of(reason: Reason) -> str:
    """What is asked or told about a recording, with what to do."""
    said = reason_text(reason)
    return f"{said.what}. {said.remedy}"


def told_text(outcome: Outcome, notes: Iterable[Reason]) -> str:
    """All that is said of a file, without what to do: the reasons, what it lacks, what should be known besides."""
    said = (*(reason_text(reason).what for reason in (*outcome.reasons, *notes)), *remarks(outcome))
    return "; ".join(dict.fromkeys(said))


def outcome_lines(
    outcome: Outcome, booked: FlownSet, notes: Iterable[Reason], names: Mapping[str, str]
) -> Iterator[str]:
    """A file in words: one line, and under it what should be known."""
    found = flight_line(outcome)
    head = f"{outcome.file}: {status_word(outcome.status)}"
    yield f"{head}: {found}" if found else head
    if outcome.flight is not None and outcome.status in {Status.PROPOSED, Status.IMPORTED}:
        yield f"  {booked_line(booked, names)}"
    for reason in outcome.reasons:
        yield f"  {said_of(reason)}"
    yield from (f"  {remark}" for remark in remarks(outcome))
    yield from (f"  {said_of(note)}" for note in notes)


def remarks(outcome: Outcome) -> Iterator[str]:
    """What should be known about a flight besides what is asked about it, one line each."""
    if outcome.flight is None or outcome.status is Status.DUPLICATE:
        return
    asked = any(reason.code == "recording.looks_like" for reason in outcome.reasons)
    yield from islice(remarks_on(outcome.flight), len(outcome.flight.doubts) if asked else 0, None)
    if outcome.out_of_order:
        yield out_of_order_text(outcome.out_of_order)


def counts_line(outcomes: Iterable[Outcome]) -> str:
    """How many files became what."""
    stands = [outcome.status for outcome in outcomes]
    said = [(status, stands.count(status)) for status in Status if status in stands]
    files = ngettext("{n} file", "{n} files", len(stands)).format(n=number_text(len(stands)))
    return f"{files}: " + ", ".join(f"{number_text(count)} {status_word(status)}" for status, count in said)
