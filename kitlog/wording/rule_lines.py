"""Service rules on a terminal: those of items with where they come from, those of models, and what is offered."""

from collections.abc import Iterable, Iterator, Sequence

from kitlog.kit.service import Limits, ModelRule, ServiceRule
from kitlog.outing.library import StarterRule
from kitlog.wording.columns import WIDTH, paragraph, wrapped
from kitlog.wording.rule_limits import WHILE_OPEN, limits_of
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import N_, _, ngettext
from kitlog.wording.words import STANCE

CAUTION = N_(
    "Figures come from the maker’s manual of the very model, or from national rules; those override every starter. "
    "Nothing is due until a rule says so."
)


def model_text(rule: ModelRule) -> str:
    """Maker and model that a rule is about."""
    return " ".join(part for part in (rule.maker, rule.model) if part)


def figures_text(rule: Limits | StarterRule) -> str:
    """What a rule asks for, what it means while open, and where it comes from."""
    limits = ", ".join(limits_of(rule)) or _("a date or figure that you type")
    source = _(rule.source) if rule.source else _("no source given")
    parts = (limits, _("open: {what}").format(what=_(WHILE_OPEN[rule.grounds])), *_more(rule), source)
    return "; ".join(part for part in parts if part)


def _more(rule: Limits | StarterRule) -> Iterator[str]:
    if rule.hours is not None and rule.ground_handling:
        yield _("ground handling counts")
    if rule.lead_days:
        yield ngettext("book {n} day ahead", "book {n} days ahead", rule.lead_days).format(n=rule.lead_days)


def rule_line(rule: ServiceRule) -> str:
    """One rule of an item: its name, its figures, and whether it follows its model."""
    whose = _("follows the rule of its model") if rule.of_model else ""
    applies = "" if rule.applies else _("does not apply")
    return "; ".join(part for part in (f"{rule_text(rule.rule)}: {figures_text(rule)}", whose, applies) if part)


def rules_lines(
    rules: Sequence[tuple[str, Sequence[ServiceRule]]],
    models: Sequence[ModelRule],
    offered: Sequence[ModelRule | StarterRule] | None = None,
) -> Iterator[str]:
    """The rules on record.

    Args:
        rules: name of each item, and its rules.
        models: rules by model.
        offered: what could be taken for the one item that was asked about; None = nothing was asked.
    """
    if not rules and not models:
        yield _("No service rule is on record, so nothing is known about service.")
    for name, own in rules:
        yield name
        for rule in own:
            yield from paragraph(rule_line(rule), 2)
    if models:
        yield from _models(models)
    if offered is not None:
        yield from _offered(offered)
    yield ""
    yield from wrapped(_(CAUTION), WIDTH)
    yield from wrapped(_(STANCE), WIDTH)


def _models(models: Iterable[ModelRule]) -> Iterator[str]:
    yield ""
    yield _("For every item of a model:")
    for rule in models:
        yield from paragraph(f"{model_text(rule)}, {rule_text(rule.rule)}: {figures_text(rule)}", 2)


def _offered(offered: Sequence[ModelRule | StarterRule]) -> Iterator[str]:
    yield ""
    if not offered:
        yield _("Nothing else is offered for it; a rule of your own is always possible.")
        return
    yield _("Offered, and put on only if you take it:")
    for rule in offered:
        name = rule.rule if isinstance(rule, ModelRule) else rule.name
        own = _("of its model") if isinstance(rule, ModelRule) else _("starter")
        yield from paragraph(f"{name} ({own}): {rule_text(name)}, {figures_text(rule)}", 2)


def names_text(names: Sequence[str], most: int = 6) -> str:
    """Names of items, the first few of many."""
    if len(names) <= most:
        return ", ".join(names)
    more = len(names) - most
    return ngettext("{names} and {n} more", "{names} and {n} more", more).format(names=", ".join(names[:most]), n=more)


def reach_lines(written: Sequence[str], own: Sequence[str], loosened: Sequence[str]) -> Iterator[str]:
    """What saving a rule of a model does, or did: names of the items with its figures, with their own, of others."""
    if written:
        text = ngettext("For {n} item: {names}.", "For {n} items: {names}.", len(written))
        yield text.format(n=len(written), names=names_text(written))
    if own:
        yield _("Figures of its own, kept as they are: {names}.").format(names=names_text(own))
    if loosened:
        yield _("Of another model by now, its rule stays as its own: {names}.").format(names=names_text(loosened))
