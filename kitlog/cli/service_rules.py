"""kitlog service rules, kitlog service rule ...: what must be done to an item, or to every item of a model."""

from typing import TYPE_CHECKING, Any

from kitlog.cli import arguments, documents, service_rule_set
from kitlog.cli.call import DONE, Call
from kitlog.cli.parser import Verbs, json_option
from kitlog.cli.rule_named import model_rule_named, rule_named
from kitlog.cli.streams import say
from kitlog.wording.translate import _, ngettext

if TYPE_CHECKING:
    from kitlog.kit.service import ModelRule
    from kitlog.outing.library import StarterRule
    from kitlog.workbench.workbench import Workbench


def add(verbs: Verbs) -> None:
    """Add the verbs."""
    rules = verbs.add("rules", _("list the service rules, and what is offered for an item"), _rules)
    rules.add_argument("--item", metavar=_("ITEM"), help=_("only of that item, with what is offered for it"))
    json_option(rules)
    own = Verbs(verbs.add("rule", _("a service rule: take, set, follow, delete")))
    take = own.add("take", _("take rules that are offered, as they are"), _take)
    take.add_argument("item", metavar=_("ITEM"), help=_("name or id of the item"))
    take.add_argument("rule", metavar=_("RULE"), nargs="+", help=_("as kitlog service rules --item names it"))
    take.add_argument("--model", action="store_true", help=_("for every item of its model"))
    service_rule_set.add(own)
    follow = own.add("follow", _("let a rule with figures of its own follow the rule of its model"), _follow)
    _named(follow)
    delete = own.add("delete", _("delete a rule; one with records can only be marked as not applying"), _delete)
    _named(delete)
    delete.add_argument(
        "--model", action="store_true", help=_("the rule of its model; the rules of its items stay, as their own")
    )
    delete.add_argument(
        "--items-too", action="store_true", help=_("with --model: those of the items too, except with records")
    )
    _notices(verbs)


def _named(parser: Any) -> None:
    parser.add_argument("item", metavar=_("ITEM"), help=_("name or id of the item"))
    parser.add_argument("rule", metavar=_("RULE"), help=_("name or id of the rule"))


def _notices(verbs: Verbs) -> None:
    notices = verbs.add("notices", _("enter that you looked for the maker’s safety notices on a model"), _looked)
    notices.add_argument("item", metavar=_("ITEM"), help=_("any item of the model: one look serves them all"))
    notices.add_argument("--on", metavar=_("DATE"), type=arguments.day("--on"), help=_("that day (default: today)"))
    notices.add_argument("--who", metavar=_("NAME"), default="", help=_("who looked"))
    notices.add_argument("--found", metavar=_("TEXT"), default="", help=_("where you looked, and what there was"))
    json_option(notices)


def _rules(call: Call) -> int:
    with call.reading() as bench:
        items = sorted(bench.items(), key=lambda item: item.name.casefold())
        models, offered = bench.model_rules(), None
        if call.options.item is not None:
            from kitlog.cli.item_named import item_named

            one = item_named(bench, call.options.item, "--item")
            items, offered = [one], _offered(bench, one.id)
            held = {rule.of_model for rule in bench.rules() if rule.item_id == one.id}
            models = tuple(model for model in models if model.id in held)
        by_item = [(item, [rule for rule in bench.rules() if rule.item_id == item.id]) for item in items]
    if call.options.json:
        return documents.say_json(
            {
                "rules": [{"item": item.name, **rule.model_dump(mode="json")} for item, own in by_item for rule in own],
                "models": [model.model_dump(mode="json") for model in models],
                **({} if offered is None else {"offered": [rule.model_dump(mode="json") for rule in offered]}),
            }
        )
    from kitlog.wording.rule_lines import rules_lines

    say(rules_lines([(item.name, own) for item, own in by_item if own], models, offered))
    return DONE


def _offered(bench: "Workbench", item_id: str) -> "tuple[ModelRule | StarterRule, ...]":
    return (*bench.model_rules_for(item_id), *bench.starters_for(item_id))


def _take(call: Call) -> int:
    call.write(lambda bench: _take_named(call, bench))
    return DONE


def _take_named(call: Call, bench: "Workbench") -> None:
    from kitlog.cli.item_named import item_named
    from kitlog.fault import InputFault
    from kitlog.kit.service import ModelRule
    from kitlog.units.strict_json import shown

    item = item_named(bench, call.options.item, _("ITEM"))
    known = {rule.rule if isinstance(rule, ModelRule) else rule.name for rule in _offered(bench, item.id)}
    for name in call.options.rule:
        if name not in known:
            raise InputFault("rule.not_offered", field=_("RULE"), rule=shown(name), name=item.name)
    bench.take_starters(item.id, call.options.rule, for_model=call.options.model)


def _follow(call: Call) -> int:
    return call.write(lambda bench: _follow_named(call, bench))


def _follow_named(call: Call, bench: "Workbench") -> int:
    from kitlog.fault import InputFault

    item, rule = rule_named(bench, call.options)
    if not bench.follow_model(rule.id):
        raise InputFault("rule.none_of_model", rule=rule.rule, name=item.name)
    return DONE


def _delete(call: Call) -> int:
    return call.write(lambda bench: _delete_named(call, bench))


def _delete_named(call: Call, bench: "Workbench") -> int:
    from kitlog.fault import InputFault

    if call.options.items_too and not call.options.model:
        raise InputFault("usage.needs", field="--items-too", needs="--model")
    if not call.options.model:
        bench.delete_rule(rule_named(bench, call.options)[1].id)
        return DONE
    gone = bench.delete_model_rule(model_rule_named(bench, call.options).id, with_rules=call.options.items_too)
    kept = ngettext("{n} rule of an item stays, as its own.", "{n} rules of items stay, as their own.", len(gone.kept))
    say([kept.format(n=len(gone.kept))])
    return DONE


def _looked(call: Call) -> int:
    ids = call.write(lambda bench: _look(call, bench))
    with call.reading() as bench:
        names = {item.id: item.name for item in bench.items()}
        records = [record for record in bench.records() if record.id in ids]
    if call.options.json:
        return documents.say_json([record.model_dump(mode="json") for record in records])
    from kitlog.wording.rule_lines import names_text

    text = ngettext("Entered for {n} item: {names}.", "Entered for {n} items: {names}.", len(ids))
    say([text.format(n=len(ids), names=names_text([names[record.item_id] for record in records]))])
    return DONE


def _look(call: Call, bench: "Workbench") -> tuple[str, ...]:
    from kitlog.cli.item_named import item_named
    from kitlog.fault import InputFault
    from kitlog.kit.service import ServiceRecord
    from kitlog.workbench.rule_commands import NOTICES

    options = call.options
    item = item_named(bench, options.item, _("ITEM"))
    rule = next((rule for rule in bench.rules() if (rule.item_id, rule.rule) == (item.id, NOTICES)), None)
    if rule is None:
        raise InputFault("rule.no_notices", name=item.name)
    on = options.on or call.doors.clock().date()
    texts = {"who": options.who, "remarks": options.found}
    record = ServiceRecord(id=bench.new_id(), item_id=item.id, rules=(rule.id,), done_on=on, **texts)
    return bench.record_for_model(record)
