"""kitlog service rule set: add a rule or change one, for an item or for every item of its model."""

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from kitlog.cli import arguments, documents
from kitlog.cli.call import DONE, Call
from kitlog.cli.parser import Parser, Verbs, json_option
from kitlog.cli.streams import say
from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.kit.item import Item
    from kitlog.kit.model_rules import Reach
    from kitlog.kit.service import ServiceRule
    from kitlog.workbench.workbench import Workbench

NONE = "none"
_GROUNDS = ("yes", "by law", "no")
_COUNTS_FROM = ("record", "first use", "bought", "made")
"""As in `kitlog.kit.service`, which is not read before it is needed."""

_FIELDS = {
    "months": "--months",
    "recommended_months": "--advised",
    "hours": "--hours",
    "launches": "--launches",
    "due_on": "--date",
    "event_days": "--event-days",
    "counts_from": "--counts-from",
    "lead_days": "--lead",
    "warn_days": "--warn",
    "grounds": "--open",
    "source": "--source",
    "events": "--after",
}
"""The option behind each field of a rule."""


def add(verbs: Verbs) -> None:
    """Add the verb."""
    parser = verbs.add("set", _("add a rule, or change what is given of one"), _set)
    parser.add_argument("item", metavar=_("ITEM"), help=_("name or id of the item"))
    parser.add_argument(
        "rule", metavar=_("RULE"), help=_("name of the rule: one that it has, a starter’s, or your own")
    )
    _limits(parser)
    _meaning(parser)
    parser.add_argument("--model", action="store_true", help=_("for every item of its model"))
    parser.add_argument("--all", action="store_true", help=_("with --model: also where an item has figures of its own"))
    json_option(parser)


def _limits(parser: Parser) -> None:
    for field, most, text in (
        ("months", 1_200, _("due so many months after the last time")),
        ("recommended_months", 1_200, _("advised after so many months")),
        ("launches", 1_000_000, _("due after so many launches")),
    ):
        option = _FIELDS[field]
        parser.add_argument(option, dest=field, metavar="N", type=_or_none(arguments.whole(option, 1, most)), help=text)
    hours = _or_none(arguments.figure("--hours", 0.1, 100_000))
    parser.add_argument("--hours", metavar="H", type=hours, help=_("due after so many hours of airtime"))
    day = _or_none(arguments.day("--date"))
    parser.add_argument("--date", dest="due_on", metavar=_("DATE"), type=day, help=_("printed date, or paid to"))
    parser.add_argument(
        "--after",
        dest="events",
        metavar=_("EVENT"),
        action="append",
        help=_(
            "due after that event: blow, water, tree …, or what kitlog service incidents lists"
            " (may be repeated; none takes them off)"
        ),
    )
    parser.add_argument("--sure", action="store_true", help=_("--after names an event of your own"))
    for option, dest, text in (
        ("--event-days", "event_days", _("within so many days of it (0: at once)")),
        ("--lead", "lead_days", _("book so many days ahead")),
        ("--warn", "warn_days", _("due soon from so many days before")),
    ):
        parser.add_argument(option, dest=dest, metavar="N", type=arguments.whole(option, 0, 3_650), help=text)
    parser.epilog = _(
        "“none” takes a limit off. What is not given stays as it is; only a source is taken off where figures change"
        " and none is given with them, since it does not vouch for the new ones."
    )


def _meaning(parser: Parser) -> None:
    parser.add_argument("--counts-from", dest="counts_from", choices=_COUNTS_FROM, help=_("what months count from"))
    parser.add_argument(
        "--ground-handling",
        dest="ground_handling",
        choices=("yes", "no"),
        help=_("whether ground handling counts as hours"),
    )
    parser.add_argument(
        "--open", dest="grounds", choices=_GROUNDS, help=_("while it is open: a stop, a stop where law asks, a look")
    )
    parser.add_argument("--source", metavar=_("TEXT"), help=_("where it comes from: manual, page"))
    parser.add_argument("--applies", choices=("yes", "no"), help=_("whether it applies to this item"))


def _or_none(read: Callable[[str], Any]) -> Callable[[str], Any]:
    return lambda text: NONE if text == NONE else read(text)


def _set(call: Call) -> int:
    if call.options.all and not call.options.model:
        raise InputFault("usage.needs", field="--all", needs="--model")
    rule, reach = call.write(lambda bench: _save(call, bench))
    with call.reading() as bench:
        names = {item.id: item.name for item in bench.items()}
        dues = [line for line in bench.due(call.doors.clock().date()) if line.rule.id == rule.id]
    if call.options.json:
        from kitlog.files.due_json import due_json

        written = [] if reach is None else [one.model_dump(mode="json") for one in reach.written]
        state = due_json(dues[0].item, dues[0].due) if dues else None
        return documents.say_json({"rule": rule.model_dump(mode="json"), "due": state, "of_model": written})
    from kitlog.wording.due_sentence import due_sentence
    from kitlog.wording.rule_lines import reach_lines, rule_line

    say([f"{names[rule.item_id]}: {rule_line(rule)}", *(due_sentence(line.due) for line in dues)])
    if reach is not None:
        say(reach_lines(*([names[one.item_id] for one in rules] for rules in reach.told)))
    return DONE


def _save(call: Call, bench: "Workbench") -> "tuple[ServiceRule, Reach | None]":
    from kitlog.cli.item_named import item_named

    item = item_named(bench, call.options.item, _("ITEM"))
    rule = _drafted(call, bench, item)
    if not call.options.model:
        bench.save_rule(rule)
        return _stored(bench, rule.id), None
    reach = bench.save_for_model(rule, all_items=call.options.all)
    own = next(one for one in reach.told[0] if one.item_id == item.id)
    return _stored(bench, own.id), reach


def _stored(bench: "Workbench", rule_id: str) -> "ServiceRule":
    return next(rule for rule in bench.rules() if rule.id == rule_id)


def _drafted(call: Call, bench: "Workbench", item: "Item") -> "ServiceRule":
    from pydantic import ValidationError

    from kitlog.kit.service import ServiceRule
    from kitlog.units.refused import refused

    before, given = _before(call, bench, item), _given(call, bench, item)
    try:
        return _sourced(before, ServiceRule.model_validate({**before, **given}), call.options.source)
    except ValidationError as error:
        fault = refused(error)
        field = _FIELDS.get(str(fault.facts.get("field", "")), _("RULE"))
        raise InputFault(fault.code, **{**fault.facts, "field": field}) from None


def _sourced(before: "dict[str, object]", rule: "ServiceRule", source: str | None) -> "ServiceRule":
    """The rule without the source of figures that it no longer has."""
    from kitlog.kit.model_rules import FIGURES

    changed = any(field in before and getattr(rule, field) != before[field] for field in FIGURES)
    return rule.model_copy(update={"source": ""}) if changed and source is None else rule


def _before(call: Call, bench: "Workbench", item: "Item") -> dict[str, object]:
    """The rule as it is: the item's own, else what is offered under that name, else only its name."""
    from kitlog.kit.model_rules import LIMIT_FIELDS, limits_of

    name = call.options.rule
    has = [rule for rule in bench.rules() if rule.item_id == item.id and name in {rule.id, rule.rule}]
    if len(has) > 1:
        raise InputFault("rule.ambiguous", field=_("RULE"), rule=name, count=len(has))
    if has:
        return has[0].model_dump()
    new = {"id": bench.new_id(), "item_id": item.id, "rule": name}
    model = next((one for one in bench.model_rules_for(item.id) if one.rule == name), None)
    if model is not None:
        return {**limits_of(model), "of_model": model.id, **new}
    starter = next((one for one in bench.starters_for(item.id) if one.name == name), None)
    if starter is None:
        return {**new, "ground_handling": item.kind == "wing" and call.options.hours not in {None, NONE}}
    told = {field: value for field, value in starter.model_dump().items() if field in LIMIT_FIELDS}
    return {**told, "source": starter.source[:200], **new}


def _given(call: Call, bench: "Workbench", item: "Item") -> dict[str, object]:
    """What was typed, by field; "none" takes a limit off."""
    options = call.options
    typed = {field: getattr(options, field) for field in _FIELDS if getattr(options, field) is not None}
    given: dict[str, object] = {field: None if value == NONE else value for field, value in typed.items()}
    if "events" in typed:
        words = [word for word in typed["events"] if word != NONE]
        given["events"] = bench.events_meant(words, item.kind, sure=options.sure)
    for field in ("ground_handling", "applies"):
        if getattr(options, field) is not None:
            given[field] = getattr(options, field) == "yes"
    return given
