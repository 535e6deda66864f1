"""kitlog service record: that a service was done."""

from pathlib import Path
from typing import TYPE_CHECKING, Any

from kitlog.cli import arguments, documents
from kitlog.cli.call import DONE, Call
from kitlog.cli.parser import Parser, Verbs, json_option
from kitlog.cli.streams import say
from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.kit.item import Item
    from kitlog.kit.measurement import Measurement
    from kitlog.kit.service import ServiceRecord
    from kitlog.workbench.reads import DueLine
    from kitlog.workbench.workbench import Workbench

_RESULTS = ("passed", "passed with remarks", "failed")
"""As in `kitlog.kit.service.Result`, which is not read before it is needed."""

_OPTIONS = {
    "done_on": "--on",
    "next_due_on": "--next-due",
    "next_within_h": "--next-within",
    "remarks": "--remarks",
    "who": "--who",
    "currency": "--currency",
    "measurements": "--measured",
}
"""The option behind a field of the model; what the model says of a record as a whole is said of its next day."""


def add(verbs: Verbs) -> None:
    """Add the verb."""
    record = verbs.add("record", _("enter that a service was done"), _record)
    record.add_argument("item", metavar=_("ITEM"), help=_("name or id of the item"))
    record.add_argument(
        "--rule",
        metavar=_("RULE"),
        action="append",
        required=True,
        help=_("the rule that was done, by name or id (may be repeated: one record may satisfy several)"),
    )
    record.add_argument("--on", metavar=_("DATE"), type=arguments.day("--on"), help=_("that day (default: today)"))
    record.add_argument("--who", metavar=_("NAME"), default="", help=_("who did it"))
    record.add_argument("--result", choices=_RESULTS, help=_("how it ended; failed leaves the rules open"))
    _figures(record)
    record.add_argument("--currency", metavar=_("CODE"), default="", help=_("of the cost"))
    record.add_argument("--remarks", metavar=_("TEXT"), default="", help=_("anything else"))
    record.add_argument(
        "--next-due",
        metavar=_("DATE"),
        type=arguments.day("--next-due"),
        help=_("next time as the inspector set it; stands over the rule's own interval"),
    )
    record.add_argument(
        "--measured",
        metavar=_("TEXT"),
        action="append",
        default=[],
        help=_('a measured value, as in "porosity 182 s, GAUGE, PLACE" (may be repeated); never converted'),
    )
    record.add_argument(
        "--paper", metavar=_("FILE"), action="append", default=[], help=_("PDF or photo to keep with it")
    )
    record.add_argument("--sure", action="store_true", help=_("it is so, though the hours run backwards"))
    json_option(record)


def _figures(record: Parser) -> None:
    hours = arguments.figure("--hours", 0, 1e6)
    record.add_argument("--hours", metavar=_("H"), type=hours, help=_("airtime of the item on that day, in all"))
    launches = arguments.whole("--launches", 0, 10_000_000)
    record.add_argument("--launches", metavar=_("N"), type=launches, help=_("its launches on that day, in all"))
    record.add_argument("--cost", metavar=_("N"), type=arguments.figure("--cost", 0, 1e9), help=_("what it cost"))
    within = arguments.figure("--next-within", 0.1, 100_000)
    record.add_argument(
        "--next-within", metavar=_("H"), type=within, help=_("and within so many hours, as the inspector set it")
    )


def _record(call: Call) -> int:
    record = call.write(lambda bench: _enter(call, bench))
    with call.reading() as bench:
        item = bench.item(record.item_id)
        stored = next(one for one in bench.records() if one.id == record.id)
        today = call.doors.clock().date()
        lines = [line for line in bench.due(today) if line.rule.id in record.rules]
    name = item.name if item else record.item_id
    if call.options.json:
        return documents.say_json(_json(name, stored, lines))
    from kitlog.wording.record_lines import recorded_lines

    say(recorded_lines(name, stored, [line.due for line in lines]))
    return DONE


def _json(item: str, record: "ServiceRecord", lines: "list[DueLine]") -> dict[str, Any]:
    from kitlog.files.due_json import due_json

    entry = record.model_dump(mode="json")
    return {"item": item, **entry, "due": [due_json(line.item, line.due) for line in lines]}


def _enter(call: Call, bench: "Workbench") -> "ServiceRecord":
    from kitlog.cli.item_named import item_named

    item = item_named(bench, call.options.item, _("ITEM"))
    record = _typed(call, bench, item)
    if call.options.paper:
        papers = tuple(bench.attach(Path(name)) for name in call.options.paper)
        record = record.model_copy(update={"papers": papers})
    bench.add_record(record, sure=call.options.sure)
    return record


def _typed(call: Call, bench: "Workbench", item: "Item") -> "ServiceRecord":
    from pydantic import ValidationError

    from kitlog.kit.service import Result, ServiceRecord
    from kitlog.units.refused import refused

    options = call.options
    rules = tuple(dict.fromkeys(_rule_id(bench, item, name) for name in options.rule))
    measurements = tuple(_measurement(text) for text in options.measured)
    try:
        return ServiceRecord(
            id=bench.new_id(),
            item_id=item.id,
            rules=rules,
            done_on=options.on or call.doors.clock().date(),
            hours=options.hours,
            launches=options.launches,
            who=options.who,
            result=Result(options.result) if options.result else None,
            cost=options.cost,
            currency=options.currency,
            remarks=options.remarks,
            next_due_on=options.next_due,
            next_within_h=options.next_within,
            measurements=measurements,
        )
    except ValidationError as error:
        fault = refused(error)
        field = _OPTIONS.get(str(fault.facts["field"]), "--next-due")
        raise InputFault(fault.code, **{**fault.facts, "field": field}) from None


def _measurement(text: str) -> "Measurement":
    from pydantic import ValidationError

    from kitlog.kit.measured_text import parse_measurement
    from kitlog.units.refused import refused
    from kitlog.units.strict_json import shown

    try:
        return parse_measurement(text)
    except ValidationError as error:
        fault = refused(error)
        raise InputFault(fault.code, **{**fault.facts, "field": "--measured"}) from None
    except InputFault as fault:
        raise InputFault(fault.code, field="--measured", value=shown(text)) from None


def _rule_id(bench: "Workbench", item: "Item", name: str) -> str:
    from kitlog.units.strict_json import shown

    found = [rule.id for rule in bench.rules() if rule.item_id == item.id and name in {rule.id, rule.rule}]
    if not found:
        raise InputFault("rule.unknown", field="--rule", rule=shown(name))
    if len(found) > 1:
        raise InputFault("rule.ambiguous", field="--rule", rule=shown(name), count=len(found))
    return found[0]
