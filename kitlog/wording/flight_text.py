"""The log on a terminal."""

from collections.abc import Iterator, Mapping, Sequence

from kitlog.kit.flights import Flight
from kitlog.wording.columns import table
from kitlog.wording.figures import days_text, hours_text
from kitlog.wording.translate import _, ngettext


def flight_lines(flights: Sequence[Flight], names: Mapping[str, str]) -> Iterator[str]:
    """One row a flight, with the sum below."""
    if not flights:
        yield _("The log is empty. Enter a flight with: kitlog flights add")
        return
    heads = (_("day"), _("airtime"), _("launches"), _("site"), _("flown"))
    rows = [
        (
            days_text(flight.on, flight.last_day),
            hours_text(flight.airtime_min / 60),
            str(flight.launches),
            flight.site,
            ", ".join(names.get(item, item) for item in flight.flown),
        )
        for flight in flights
    ]
    yield from table([heads, *rows], (False, True, True, False, False))
    yield ""
    total = hours_text(sum(flight.airtime_min for flight in flights) / 60)
    yield ngettext("{n} entry, {total}", "{n} entries, {total}", len(flights)).format(n=len(flights), total=total)


def entered_line(flight: Flight) -> str:
    """What was entered, and whether anything got the airtime."""
    text = _("entered: {days}, {airtime}").format(
        days=days_text(flight.on, flight.last_day), airtime=hours_text(flight.airtime_min / 60)
    )
    return text if flight.flown else _("{entered}; booked on nothing of the kit").format(entered=text)


def changed_line(flight: Flight) -> str:
    """What an entry is after a change."""
    return _("changed: {entry}").format(entry=_entry(flight))


def deleted_line(flight: Flight) -> str:
    """What was taken out."""
    return _("deleted: {entry}").format(entry=_entry(flight))


def _entry(flight: Flight) -> str:
    return f"{days_text(flight.on, flight.last_day)}, {hours_text(flight.airtime_min / 60)}"
