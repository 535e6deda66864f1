"""kitlog flights edit and delete: one entry of the log."""

from typing import TYPE_CHECKING, Any

from kitlog.cli import arguments
from kitlog.cli.call import DONE, Call
from kitlog.cli.item_names import ids_of
from kitlog.cli.parser import Parser, Verbs
from kitlog.cli.streams import say
from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.kit.flights import Flight
    from kitlog.workbench.workbench import Workbench

OPTIONS = {
    "airtime_min": "--airtime",
    "ground_handling_min": "--ground-handling",
    "launches": "--launches",
    "until": "--until",
    "site": "--site",
    "note": "--note",
}
"""The option behind a field of the model; what the model says of a flight as a whole is said of its airtime."""

_MOST_MIN = 10_000_000


def add(verbs: Verbs) -> None:
    """Add the two verbs."""
    which = _("its day, day and take-off as in “2026-05-09 11:20”, or its id (list --json)")
    editing = verbs.add("edit", _("change an entry; what is not given stays as it is"), _edit)
    editing.add_argument("flight", metavar=_("FLIGHT"), help=which)
    editing.add_argument("--on", metavar=_("DATE"), type=arguments.day("--on"), help=_("local day of the take-off"))
    _figures(editing)
    for option, text in (("--flown", _("what gets the airtime")), ("--carried", _("what only rode along"))):
        editing.add_argument(option, metavar=_("NAMES"), help=text)
    editing.add_argument("--site", help=_("where"))
    editing.add_argument("--note", help=_("anything else"))
    for option, text in (("--takeoff", _("take-off, local time")), ("--landing", _("landing, local time"))):
        editing.add_argument(option, metavar=_("HH:MM"), type=arguments.clock(option), help=text)
    editing.add_argument("--sure", action="store_true", help=_("it is so, though it is asked about"))
    deleting = verbs.add("delete", _("take an entry out of the log"), _delete)
    deleting.add_argument("flight", metavar=_("FLIGHT"), help=which)


def _figures(parser: Parser) -> None:
    for option, text in (("--airtime", _("minutes in the air")), ("--ground-handling", _("minutes on the ground"))):
        parser.add_argument(option, metavar=_("MIN"), type=arguments.figure(option, 0, _MOST_MIN), help=text)
    launches = arguments.whole("--launches", 0, 100_000)
    parser.add_argument("--launches", metavar=_("N"), type=launches, help=_("take-offs"))
    until = arguments.day("--until")
    parser.add_argument("--until", metavar=_("DATE"), type=until, help=_("last day of a typed total"))


def _edit(call: Call) -> int:
    from kitlog.wording.flight_text import changed_line

    with call.reading() as bench:
        flight = _changed(call, bench, _named(call.options.flight, bench))
        bench.edit_flight(flight, sure=call.options.sure)
    say([changed_line(flight)])
    return DONE


def _delete(call: Call) -> int:
    from kitlog.wording.flight_text import deleted_line

    with call.reading() as bench:
        flight = _named(call.options.flight, bench)
        bench.delete_flight(flight.id)
    say([deleted_line(flight)])
    return DONE


def _named(text: str, bench: "Workbench") -> "Flight":
    """The one flight that is meant; of several on a day the choice is shown."""
    from kitlog.units.strict_json import shown

    typed = " ".join(text.split())
    log = bench.flights()
    found = [flight for flight in log if flight.id == text or typed in (flight.on.isoformat(), _at(flight))]
    if not found:
        raise InputFault("flight.unknown", name=shown(text))
    if len(found) > 1:
        known = ", ".join(_at(flight) if _is_alone(flight, found) else flight.id for flight in found)
        raise InputFault("flight.ambiguous", name=typed, count=len(found), known=known)
    return found[0]


def _is_alone(flight: "Flight", found: "list[Flight]") -> bool:
    return bool(_at(flight)) and sum(_at(other) == _at(flight) for other in found) == 1


def _at(flight: "Flight") -> str:
    """Day and take-off on local clocks, empty where the take-off is not known."""
    from kitlog.kit.flight_times import clock_of

    clock = clock_of(flight.takeoff_at, flight.time_zone)
    return f"{flight.on.isoformat()} {clock:%H:%M}" if clock else ""


def _changed(call: Call, bench: "Workbench", flight: "Flight") -> "Flight":
    from pydantic import ValidationError

    from kitlog.kit.flights import Flight
    from kitlog.units.refused import refused

    options = call.options
    given: dict[str, Any] = {
        "airtime_min": options.airtime,
        "ground_handling_min": options.ground_handling,
        "launches": options.launches,
        "until": options.until,
        "site": options.site,
        "note": options.note,
        "flown": None if options.flown is None else ids_of(options.flown, bench, "--flown"),
        "carried": None if options.carried is None else ids_of(options.carried, bench, "--carried"),
    }
    changes = {field: value for field, value in given.items() if value is not None} | _times(call, bench, flight)
    if not changes:
        raise InputFault("flight.nothing_changed")
    try:
        return Flight.model_validate({**dict(flight), **changes})
    except ValidationError as error:
        fault = refused(error)
        field = OPTIONS.get(str(fault.facts["field"]), "--until" if flight.until or options.until else "--airtime")
        raise InputFault(fault.code, **{**fault.facts, "field": field}) from None


def _times(call: Call, bench: "Workbench", flight: "Flight") -> dict[str, Any]:
    """Day and times, what is not given of them as before on the clocks of the place; nothing where none is given."""
    from zoneinfo import ZoneInfo

    from kitlog.kit.flight_times import clock_of, moments_of

    options = call.options
    if options.on is None and options.takeoff is None and options.landing is None:
        return {}
    on = options.on or flight.on
    zone = flight.time_zone if flight.takeoff_at else bench.zone_on(on, options.site or flight.site)
    takeoff = options.takeoff or clock_of(flight.takeoff_at, zone)
    landing = options.landing or clock_of(flight.landing_at, zone)
    if options.landing is not None and takeoff is None:
        raise InputFault("usage.needs", field="--landing", needs="--takeoff")
    takeoff_at, landing_at = moments_of(on, takeoff, landing, ZoneInfo(zone) if zone else None)
    return {"on": on, "takeoff_at": takeoff_at, "landing_at": landing_at, "time_zone": zone if takeoff_at else ""}
