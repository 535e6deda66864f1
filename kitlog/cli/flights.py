"""kitlog flights: the log, by hand and from recordings."""

from typing import TYPE_CHECKING

from kitlog.cli import arguments, documents, flights_change, flights_import
from kitlog.cli.call import DONE, Call
from kitlog.cli.flights_change import OPTIONS
from kitlog.cli.item_names import ids_of
from kitlog.cli.parser import Parser, Verbs, json_option
from kitlog.cli.streams import say
from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.kit.flights import Flight
    from kitlog.workbench.workbench import Workbench

_MOST_MIN = 10_000_000


def add(verbs: Verbs) -> None:
    """Add the verb and its own."""
    own = Verbs(verbs.add("flights", _("enter flights into the log, change and list them")))
    adding = own.add("add", _("enter a flight, or a typed total over several days"), _add)
    _day(adding, "--on", _("local day of the take-off"), required=True)
    _minutes(adding, "--airtime", _("minutes in the air"), required=True)
    _minutes(adding, "--ground-handling", _("minutes of ground handling, booked apart"))
    launches = arguments.whole("--launches", 0, 100_000)
    adding.add_argument("--launches", metavar=_("N"), type=launches, help=_("take-offs (1)"))
    adding.add_argument("--flown", metavar=_("NAMES"), help=_("what gets the airtime, names with commas between them"))
    adding.add_argument("--carried", metavar=_("NAMES"), default="", help=_("what only rode along"))
    adding.add_argument("--site", default="", help=_("where"))
    adding.add_argument("--note", default="", help=_("anything else"))
    _day(adding, "--until", _("last day of a typed total"))
    for option, text in (("--takeoff", _("take-off, local time")), ("--landing", _("landing, local time"))):
        adding.add_argument(option, metavar=_("HH:MM"), type=arguments.clock(option), help=text)
    zone = _("time zone of both, such as Europe/Vienna (of that day's outing, of the site, else of this computer)")
    adding.add_argument("--zone", metavar=_("NAME"), default="", help=zone)
    sure = _("it is so, though it is asked about (overlaps, totals, two wings, more than a day)")
    adding.add_argument("--sure", action="store_true", help=sure)
    flights_change.add(own)
    flights_import.add(own)
    json_option(own.add("list", _("list the log"), _list))


def _day(parser: Parser, option: str, text: str, *, required: bool = False) -> None:
    parser.add_argument(option, metavar=_("DATE"), type=arguments.day(option), required=required, help=text)


def _minutes(parser: Parser, option: str, text: str, *, required: bool = False) -> None:
    read = arguments.figure(option, 0, _MOST_MIN)
    parser.add_argument(option, metavar=_("MIN"), type=read, required=required, default=0.0, help=text)


def _add(call: Call) -> int:
    def enter(bench: "Workbench") -> "Flight":
        flight = _flight(call, bench)
        bench.add_flight(flight, sure=call.options.sure)
        return flight

    flight = call.write(enter)
    from kitlog.wording.flight_text import entered_line

    say([entered_line(flight)])
    return DONE


def _flight(call: Call, bench: "Workbench") -> "Flight":
    from zoneinfo import ZoneInfo

    from pydantic import ValidationError

    from kitlog.kit.flight_times import moments_of
    from kitlog.kit.flights import Flight
    from kitlog.units.refused import refused

    options = call.options
    if options.landing is not None and options.takeoff is None:
        raise InputFault("usage.needs", field="--landing", needs="--takeoff")
    zone = _zone(options.zone) or bench.zone_on(options.on, options.site)
    takeoff_at, landing_at = moments_of(options.on, options.takeoff, options.landing, ZoneInfo(zone) if zone else None)
    try:
        return Flight(
            id=bench.new_id(),
            on=options.on,
            until=options.until,
            takeoff_at=takeoff_at,
            landing_at=landing_at,
            time_zone=zone if takeoff_at else "",
            airtime_min=options.airtime,
            ground_handling_min=options.ground_handling,
            launches=_launches(call),
            site=options.site,
            note=options.note,
            flown=_flown(call, bench),
            carried=ids_of(options.carried, bench, "--carried"),
        )
    except ValidationError as error:
        fault = refused(error)
        field = OPTIONS.get(str(fault.facts["field"]), "--until" if options.until else "--airtime")
        raise InputFault(fault.code, **{**fault.facts, "field": field}) from None


def _zone(name: str) -> str:
    from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

    try:
        return name and ZoneInfo(name).key
    except (ZoneInfoNotFoundError, ValueError, OSError):
        raise InputFault("outing.unknown_time_zone", field="--zone", zone=name) from None


def _launches(call: Call) -> int:
    """One for a flight; a total over several days has to say it."""
    if call.options.launches is None and call.options.until is not None:
        raise InputFault("usage.needs", field="--until", needs="--launches")
    return 1 if call.options.launches is None else int(call.options.launches)


def _flown(call: Call, bench: "Workbench") -> tuple[str, ...]:
    """What gets the airtime; it has to be said, for hours that are booked nowhere make a service date look far away.

    ``--flown ""`` says that nothing of the kit was flown.
    """
    if call.options.flown is None and bench.items():
        last = tuple(item.name for item_id in bench.usual_set() if (item := bench.item(item_id)) is not None)
        raise InputFault("flight.nothing_flown", field="--flown", last=",".join(last) or _("none"))
    return ids_of(call.options.flown or "", bench, "--flown")


def _list(call: Call) -> int:
    with call.reading() as bench:
        flights = sorted(bench.flights(), key=lambda flight: flight.on)
        names = {item.id: item.name for item in bench.items()}
    if call.options.json:
        return documents.say_json([_entry(flight, names) for flight in flights])
    from kitlog.wording.flight_text import flight_lines

    say(flight_lines(flights, names))
    return DONE


def _entry(flight: "Flight", names: dict[str, str]) -> dict[str, object]:
    tree: dict[str, object] = flight.model_dump(mode="json")
    for part in ("flown", "carried"):
        ids = getattr(flight, part)
        tree |= {part: [names.get(item, item) for item in ids], f"{part}_ids": list(ids)}
    return tree
