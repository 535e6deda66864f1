"""kitlog service season, kitlog service stops: before the season, and before a day."""

from typing import TYPE_CHECKING, Any

from kitlog.cli import arguments, documents
from kitlog.cli.call import DONE, STOPPED, Call
from kitlog.cli.parser import Verbs, json_option, strict_option
from kitlog.cli.streams import say
from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.kit.item import Item
    from kitlog.packing.what_stops import StopLine
    from kitlog.workbench.season_commands import SeasonStart
    from kitlog.workbench.workbench import Workbench


def add(verbs: Verbs) -> None:
    """Add both verbs."""
    season = verbs.add("season", _("what nobody has looked at since the last season, one thing at a time"), _season)
    season.add_argument(
        "--since",
        metavar=_("DATE"),
        type=arguments.day("--since"),
        help=_("a look since then counts (default: since the longest pause in the log, else 1 October)"),
    )
    season.add_argument("--looked", metavar=_("ITEM"), help=_("record that it was looked at today"))
    season.add_argument(
        "--done",
        metavar=_("RULE"),
        action="append",
        default=[],
        help=_("with --looked: this rule was done by that (may be repeated)"),
    )
    season.add_argument("--note", metavar=_("TEXT"), default="", help=_("with --looked: what was seen"))
    json_option(season)
    stops = verbs.add("stops", _("what stops you on a day, planned or not"), _stops)
    stops.add_argument("--on", metavar=_("DATE"), type=arguments.day("--on"), help=_("that day (default: today)"))
    stops.add_argument("--law", action="store_true", help=_("law, school or event asks for service on that day"))
    json_option(stops)
    strict_option(stops)


def _season(call: Call) -> int:
    options = call.options
    if options.looked is None and (options.done or options.note):
        raise InputFault("usage.needs", field="--done" if options.done else "--note", needs="--looked")
    if options.looked is not None:
        call.write(lambda bench: _looked_at(call, bench))
    with call.reading() as bench:
        start = bench.season_start(options.since)
    if options.json:
        return documents.say_json(_season_json(start))
    from kitlog.wording.season_text import season_lines

    say(season_lines(start.since, start.lines))
    return DONE


def _looked_at(call: Call, bench: "Workbench") -> None:
    from kitlog.cli.item_named import item_named

    item = item_named(bench, call.options.looked, "--looked")
    bench.looked_at(item.id, [_rule_id(bench, item, name) for name in call.options.done], call.options.note)


def _rule_id(bench: "Workbench", item: "Item", name: str) -> str:
    from kitlog.units.strict_json import shown

    found = [rule.id for rule in bench.rules() if rule.item_id == item.id and name in {rule.id, rule.rule}]
    if not found:
        raise InputFault("rule.unknown", field="--done", rule=shown(name))
    return found[0]


def _season_json(start: "SeasonStart") -> dict[str, Any]:
    from kitlog.files.due_json import due_json

    return {
        "since": str(start.since),
        "items": [
            {
                "item": line.item.name,
                "item_id": line.item.id,
                "looked_on": None if line.looked_on is None else str(line.looked_on),
                "not_looked": line.not_looked,
                "charge_to_look_at": line.lies,
                "rules": [{"why": ask.why.value, **due_json(line.item, ask.due)} for ask in line.asks],
            }
            for line in start.lines
        ],
    }


def _stops(call: Call) -> int:
    today = call.doors.clock().date()
    on = call.options.on or today
    with call.reading() as bench:
        lines = bench.what_stops(on, by_law=call.options.law)
    if call.options.json:
        documents.say_json([_stop_json(line) for line in lines])
    else:
        from kitlog.wording.season_text import stops_lines

        say(stops_lines(lines, on, today))
    return STOPPED if call.options.strict and any(line.state.value == "stop" for line in lines) else DONE


def _stop_json(line: "StopLine") -> dict[str, Any]:
    from kitlog.files.due_json import due_json
    from kitlog.wording.season_text import stop_sentence

    judged = {} if line.due is None else due_json(line.item, line.due)
    return {
        **judged,
        "item": line.item.name,
        "item_id": line.item.id,
        "stops": line.state.value,
        "stop_where_law_asks": line.asks_law,
        "foreseen": line.due is not None and line.due.foreseen,
        "why": stop_sentence(line),
    }
