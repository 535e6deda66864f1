"""A service rule named on the command line: an item, and the name or id of one of its rules."""

import argparse
from typing import TYPE_CHECKING

from kitlog.cli.item_named import item_named
from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.kit.item import Item
    from kitlog.kit.service import ModelRule, ServiceRule
    from kitlog.workbench.workbench import Workbench


def rule_named(bench: "Workbench", options: argparse.Namespace) -> "tuple[Item, ServiceRule]":
    """The item and its rule.

    Raises:
        InputFault: ``item.unknown``, ``item.ambiguous``; ``rule.unknown`` or ``rule.ambiguous`` with ``rule``.
    """
    from kitlog.units.strict_json import shown

    item = item_named(bench, options.item, _("ITEM"))
    rules = [rule for rule in bench.rules() if rule.item_id == item.id]
    found = [rule for rule in rules if rule.id == options.rule] or [r for r in rules if r.rule == options.rule]
    if not found:
        raise InputFault("rule.unknown", field=_("RULE"), rule=shown(options.rule))
    if len(found) > 1:
        raise InputFault("rule.ambiguous", field=_("RULE"), rule=shown(options.rule), count=len(found))
    return item, found[0]


def model_rule_named(bench: "Workbench", options: argparse.Namespace) -> "ModelRule":
    """The rule of that name of the item's model.

    Raises:
        InputFault: ``item.unknown``, ``item.ambiguous``; ``rule.none_of_model`` with ``rule`` and ``name``.
    """
    from kitlog.kit.model_rules import model_of
    from kitlog.units.strict_json import shown

    item = item_named(bench, options.item, _("ITEM"))
    model = model_of(item)
    rules = [rule for rule in bench.model_rules() if model is not None and model_of(rule) == model]
    found = next((rule for rule in rules if options.rule in {rule.id, rule.rule}), None)
    if found is None:
        raise InputFault("rule.none_of_model", rule=shown(options.rule), name=item.name)
    return found
