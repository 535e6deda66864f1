"""kitlog service event, incidents, strike: what happened to the kit, and what follows from it."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from kitlog.cli import arguments, documents
from kitlog.cli.call import DONE, Call
from kitlog.cli.parser import Verbs, json_option
from kitlog.cli.streams import note, say
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.kit.incidents import FollowUp, Incident
    from kitlog.outing.library import Library
    from kitlog.workbench.incident_commands import Logged
    from kitlog.workbench.workbench import Workbench


def add(verbs: Verbs) -> None:
    """Add the verbs."""
    event = verbs.add("event", _("log what happened to one or several items, and open what follows from it"), _event)
    event.add_argument("what", metavar=_("WHAT"), help=_("what happened: kitlog service incidents lists it"))
    event.add_argument("items", metavar=_("ITEM"), nargs="+", help=_("names or ids of what it happened to"))
    event.add_argument("--on", metavar=_("DATE"), type=arguments.day("--on"), help=_("that day (default: today)"))
    event.add_argument("--note", metavar=_("TEXT"), default="", help=_("anything else"))
    event.add_argument("--dry-run", action="store_true", help=_("only say what it would open"))
    json_option(event)
    json_option(verbs.add("incidents", _("list what can be logged, and what each opens"), _incidents))
    strike = verbs.add("strike", _("strike through a record or event entered by mistake; it stays on record"), _strike)
    strike.add_argument("id", metavar=_("ID"), help=_("its id, as --json tells it"))


def _event(call: Call) -> int:
    if call.options.dry_run:
        with call.reading() as bench:
            return _say(call, bench, _judged(call, bench), written=False)
    logged = call.write(lambda bench: _log(call, bench))
    with call.reading() as bench:
        return _say(call, bench, logged, written=True)


def _log(call: Call, bench: "Workbench") -> "Logged":
    incident, ids = _named(call, bench)
    return bench.log_incident(incident, ids, _day(call), call.options.note)


def _judged(call: Call, bench: "Workbench") -> "Logged":
    from kitlog.workbench.incident_commands import Logged

    incident, ids = _named(call, bench)
    return Logged(incident, (), bench.incident_follow_ups(incident, ids, _day(call)))


def _named(call: Call, bench: "Workbench") -> "tuple[Incident, tuple[str, ...]]":
    from kitlog.cli.item_named import item_named
    from kitlog.fault import InputFault
    from kitlog.units.strict_json import shown

    ids = tuple(dict.fromkeys(item_named(bench, name, _("ITEM")).id for name in call.options.items))
    try:
        return bench.incident(call.options.what), ids
    except InputFault as fault:
        raise InputFault(fault.code, **{**fault.facts, "name": shown(call.options.what)}) from None


def _day(call: Call) -> Any:
    return call.options.on or call.doors.clock().date()


def _say(call: Call, bench: "Workbench", logged: "Logged", *, written: bool) -> int:
    names = {item.id: item.name for item in bench.items()}
    struck = [one.item_id for one in logged.follow_ups]
    fitted = bench.fitted_too(logged.incident, struck, _day(call))
    if call.options.json:
        entry = {
            "incident": logged.incident.name,
            "on": str(_day(call)),
            "note": call.options.note,
            "written": written,
            "items": [_item_json(one, logged, names, bench.library) for one in logged.follow_ups],
            "fitted_too": [
                {"item": guest.name, "item_id": guest.id, "fitted_to": host.name, "fitted_to_id": host.id}
                for guest, host in fitted
            ],
        }
        return documents.say_json(entry)
    from kitlog.wording.incident_text import fitted_lines, incident_lines

    say(incident_lines(logged.incident, logged.follow_ups, names, bench.library, _day(call), written=written))
    for line in fitted_lines(logged.incident, fitted):
        note(line)
    return DONE


def _item_json(one: "FollowUp", logged: "Logged", names: dict[str, str], library: "Library") -> dict[str, Any]:
    from kitlog.wording.incident_text import opened

    return {
        "item": names[one.item_id],
        "item_id": one.item_id,
        "event": one.event,
        "event_id": next((event.id for event in logged.events if event.item_id == one.item_id), None),
        "opens": [
            {
                "rule": line.rule,
                "how": line.how,
                "within_days": line.within_days,
                "grounds": line.grounds.value,
                "source": line.source,
            }
            for line in opened(one, library)
        ],
        "does_not_apply": [rule.rule for rule in one.silent],
        "answered_already": [{"rule": rule.rule, "on": str(record.done_on)} for rule, record in one.answered],
    }


def _incidents(call: Call) -> int:
    known, library = _known(call)
    if call.options.json:
        return documents.say_json([incident.model_dump(mode="json") for incident in known])
    from kitlog.wording.incident_text import known_lines

    say(known_lines(known, library))
    return DONE


def _known(call: Call) -> "tuple[Sequence[Incident], Library]":
    """What can be logged; without a data file what anybody can log, as one that was named must be there."""
    if call.options.data is None and not call.data_file.exists():
        return call.rehearse(lambda bench: (bench.incidents(), bench.library))
    with call.reading() as bench:
        return bench.incidents(), bench.library


def _strike(call: Call) -> int:
    name = call.options.id

    def strike(bench: "Workbench") -> str:
        event = next((event for event in bench.events() if event.id == name), None)
        if event is not None:
            bench.strike_event(name)
            return event.item_id
        bench.strike_record(name)
        return next(record.item_id for record in bench.records() if record.id == name)

    with call.reading():
        pass
    item_id = call.write(strike)
    with call.reading() as bench:
        item = bench.item(item_id)
    say([_("Struck through; it stays in the history of {item}.").format(item=item.name if item else item_id)])
    return DONE
