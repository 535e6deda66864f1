"""Rules by model: which items a rule of the maker's manual is about, and what it does to their own rules."""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, Kind
from kitlog.kit.meeting import folded
from kitlog.kit.service import Limits, ModelRule, ServiceRule

LIMIT_FIELDS = tuple(Limits.model_fields)
"""What a rule says of itself, whoever it is about."""

FIGURES = ("months", "recommended_months", "hours", "launches", "due_on", "events", "event_days", "counts_from")
"""What the source of a rule vouches for."""

GONE = frozenset({ItemState.RETIRED, ItemState.LOST})
"""An item in such a state gets no new rule; one that it has is changed all the same."""


@dataclass(frozen=True, slots=True)
class Model:
    """What makes two items of one model: kind, maker and model, without regard to capitals and blanks."""

    kind: Kind
    maker: str
    model: str


@dataclass(frozen=True, slots=True)
class Reach:
    """What saving a rule of a model does to the rules of items.

    Attributes:
        follows: rules with the new figures: those that followed the rule of the model before, and those that are to.
        new: rules of items of the model that had none of that name.
        own: rules of that name with figures of their own; they stay as they are.
        loosened: rules that followed it, of items that are of another model now; they stay, as the item's own.
    """

    follows: tuple[ServiceRule, ...] = ()
    new: tuple[ServiceRule, ...] = ()
    own: tuple[ServiceRule, ...] = ()
    loosened: tuple[ServiceRule, ...] = ()

    @property
    def told(self) -> tuple[tuple[ServiceRule, ...], ...]:
        """Rules with the new figures, those that keep their own, and those let go: what the pilot is told."""
        return (*self.follows, *self.new), self.own, self.loosened

    @property
    def written(self) -> tuple[ServiceRule, ...]:
        """Every rule that is another afterwards."""
        return (*self.follows, *self.new, *self.loosened)


def model_of(thing: Item | ModelRule) -> Model | None:
    """Which model an item or a rule is of; None where no model is given: nothing is alike for that."""
    return _model(thing.kind, thing.maker, thing.model) if thing.model else None


@lru_cache(maxsize=4096)
def _model(kind: Kind, maker: str, model: str) -> Model | None:
    """Thousands of items are of few models."""
    same = folded(model)
    return Model(kind, folded(maker), same) if same else None


def items_like(item: Item, items: Iterable[Item]) -> tuple[Item, ...]:
    """All items of the same model, the item itself first; it alone where no model is given."""
    model = model_of(item)
    others = (other for other in items if other.id != item.id and model_of(other) == model)
    return (item, *others) if model is not None else (item,)


def limits_of(rule: Limits) -> dict[str, object]:
    """What a rule says, without whom it is about."""
    return {name: getattr(rule, name) for name in LIMIT_FIELDS}


def says_the_same(one: Limits, other: Limits) -> bool:
    """Whether two rules have the same name, figures, grounds and source."""
    return limits_of(one) == limits_of(other)


def following(model: ModelRule, item_id: str, rule_id: str) -> ServiceRule:
    """The rule of one item that follows the rule of its model."""
    return ServiceRule.model_validate({"id": rule_id, "item_id": item_id, "of_model": model.id, **limits_of(model)})


def with_figures_of(model: ModelRule, rule: ServiceRule) -> ServiceRule:
    """A rule that is there already, following the rule of the model from now on; whether it applies stays its own."""
    return rule.model_copy(update={**limits_of(model), "of_model": model.id})


def reach(
    model: ModelRule,
    items: Iterable[Item],
    rules: Iterable[ServiceRule],
    *,
    replacing: Collection[str] = (),
    new_ids: Iterator[str],
) -> Reach:
    """What saving a rule of a model does.

    Args:
        model: the rule as it will be.
        items: the kit.
        rules: all rules as they are.
        replacing: ids of rules of the same name, with other figures, that are to follow it from now on.
        new_ids: ids for rules of items that have none of that name.
    """
    items, of = tuple(items), model_of(model)
    alike = frozenset(item.id for item in items if model_of(item) == of)
    had: dict[str, list[ServiceRule]] = {item_id: [] for item_id in alike}
    for rule in rules:
        if rule.of_model == model.id or rule.item_id in alike:
            had.setdefault(rule.item_id, []).append(rule)
    concerned = [item for item in items if item.id in had]
    parts = [_reach_of(model, item, had[item.id], replacing, new_ids) for item in concerned]
    return Reach(
        follows=tuple(rule for part in parts for rule in part.follows),
        new=tuple(rule for part in parts for rule in part.new),
        own=tuple(rule for part in parts for rule in part.own),
        loosened=tuple(rule for part in parts for rule in part.loosened),
    )


def _reach_of(
    model: ModelRule, item: Item, had: Iterable[ServiceRule], replacing: Collection[str], new_ids: Iterator[str]
) -> Reach:
    followed = [rule for rule in had if rule.of_model == model.id]
    if model_of(item) != model_of(model):
        return Reach(loosened=tuple(rule.model_copy(update={"of_model": None}) for rule in followed))
    named = [rule for rule in had if _named(rule, model) and rule not in followed]
    taken = [*followed, *(rule for rule in named if rule.id in replacing)]
    own = tuple(rule for rule in named if rule not in taken)
    wanted = not followed and not named and item.state not in GONE
    new = (following(model, item.id, next(new_ids)),) if wanted else ()
    return Reach(tuple(with_figures_of(model, rule) for rule in taken), new, own)


def offered(item: Item, models: Iterable[ModelRule], rules: Iterable[ServiceRule]) -> tuple[ModelRule, ...]:
    """Rules of an item's model that it has no rule for; never put on by themselves."""
    had = [rule for rule in rules if rule.item_id == item.id]
    model = model_of(item)
    return tuple(
        rule
        for rule in models
        if model is not None
        and model_of(rule) == model
        and not any(own.of_model == rule.id or _named(own, rule) for own in had)
    )


def same_rule(rule: ModelRule, models: Iterable[ModelRule]) -> ModelRule | None:
    """A rule that says something about the same thing to do on the same model, under another id."""
    return next(
        (one for one in models if one.id != rule.id and model_of(one) == model_of(rule) and _named(one, rule)), None
    )


def _named(one: Limits, other: Limits) -> bool:
    return folded(one.rule) == folded(other.rule)
