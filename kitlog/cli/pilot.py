"""kitlog pilot: the pilot's name and dated body masses."""

from typing import TYPE_CHECKING, Any

from kitlog.cli import arguments, documents
from kitlog.cli.call import DONE, Call
from kitlog.cli.parser import Verbs, json_option
from kitlog.cli.streams import say
from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.outing.pilot import BodyMass, Pilot
    from kitlog.workbench.workbench import Workbench

_FIELDS = {"name": "--name", "how": "--how", "taken_on": "--taken-on", "mass_g": "--body-mass"}


def add(verbs: Verbs) -> None:
    """Add the verb."""
    parser = verbs.add(
        "pilot", _("show or enter the pilot's name and body mass; every take-off mass needs one"), _pilot
    )
    parser.add_argument("--name", help=_("the pilot's name"))
    parser.add_argument(
        "--body-mass", metavar=_("KG"), type=arguments.figure("--body-mass", 20, 250), help=_("body mass in kg")
    )
    parser.add_argument(
        "--taken-on", metavar=_("DATE"), type=arguments.day("--taken-on"), help=_("the day it was taken (today)")
    )
    parser.add_argument("--how", metavar=_("TEXT"), help=_("how it was taken: naked, morning"))
    json_option(parser)


def _pilot(call: Call) -> int:
    options = call.options
    if options.body_mass is None:
        for option, given in (("--taken-on", options.taken_on), ("--how", options.how)):
            if given is not None:
                raise InputFault("usage.needs", field=option, needs="--body-mass")
    if options.body_mass is None and options.name is None:
        with call.reading() as bench:
            pilot = bench.pilot()
    else:
        pilot = call.write(lambda bench: _entered(call, bench))
    if options.json:
        return documents.say_json(None if pilot is None else pilot.model_dump(mode="json"))
    from kitlog.wording.pilot_text import pilot_lines

    say(pilot_lines(pilot))
    return DONE


def _entered(call: Call, bench: "Workbench") -> "Pilot":
    from pydantic import ValidationError

    from kitlog.outing.pilot import Pilot
    from kitlog.units.refused import refused

    known, options = bench.pilot(), call.options
    fields: dict[str, Any] = known.model_dump() if known else {"id": bench.new_id(), "name": _("Pilot")}
    if options.name is not None:
        fields["name"] = options.name
    try:
        if options.body_mass is not None:
            mass = _mass(call)
            kept = [old for old in (known.masses if known else ()) if old.taken_on != mass.taken_on]
            fields["masses"] = tuple(sorted([*kept, mass], key=lambda m: m.taken_on))
        pilot = Pilot.model_validate(fields)
    except ValidationError as error:
        fault = refused(error)
        field = _FIELDS.get(str(fault.facts["field"]), "--body-mass")
        raise InputFault(fault.code, **{**fault.facts, "field": field}) from None
    bench.save_pilot(pilot)
    return pilot


def _mass(call: Call) -> "BodyMass":
    """The mass as typed; one of the same day is replaced by it."""
    from kitlog.outing.pilot import BodyMass
    from kitlog.units.mass import g_from_kg

    today = call.doors.clock().date()
    taken_on = call.options.taken_on or today
    if taken_on > today:
        raise InputFault("record.in_future", field="--taken-on", day=taken_on)
    return BodyMass(taken_on=taken_on, mass_g=g_from_kg(call.options.body_mass), how=call.options.how or "")
