"""What can be done about service rules: of one item, of every item of a model, and looks that serve a whole model."""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass

from kitlog.fault import InputFault
from kitlog.kit.event_words import EventWords
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.kit.model_rules import (
    Reach,
    following,
    items_like,
    limits_of,
    model_of,
    offered,
    reach,
    same_rule,
    says_the_same,
    with_figures_of,
)
from kitlog.kit.service import ModelRule, ServiceRecord, ServiceRule
from kitlog.outing.library import StarterRule
from kitlog.store.writer import Writer
from kitlog.units.strict_json import shown
from kitlog.workbench.event_names import event_words
from kitlog.workbench.kit_commands import KitCommands
from kitlog.workbench.starter_rule import rule_from

NOTICES = "maker.notices"
"""The rule to look for what the maker has announced: one look serves every item of the model."""


_OF_ONE: Mapping[str, object] = {
    "hours": None,
    "launches": None,
    "cost": None,
    "currency": "",
    "measurements": (),
    "papers": (),
    "answers": (),
}
"""What a record says of one item alone."""


@dataclass(frozen=True, slots=True)
class ModelRuleGone:
    """What deleting a rule of a model did: ids of rules that stay as the item's own, and of those deleted with it."""

    kept: tuple[str, ...]
    deleted: tuple[str, ...]


class RuleCommands(KitCommands):
    """Reads and writes of service rules; each write is one transaction and one undo step."""

    def model_rules_for(self, item_id: str) -> tuple[ModelRule, ...]:
        """Rules of an item's model that it has no rule for: offered before any starter, never put on by themselves."""
        item = self.item(item_id)
        return () if item is None else offered(item, self.model_rules(), self.rules())

    def event_words(self) -> EventWords:
        """What a rule may name as an event: what can be logged, and what rules and starters answer to already."""
        return event_words(self.library, (*self.rules(), *self.model_rules()))

    def events_meant(self, words: Iterable[str], kind: Kind, *, sure: bool = False) -> tuple[str, ...]:
        """The events that words mean for a thing of some kind: an incident's name is the event that it logs of it.

        Raises:
            InputFault: ``rule.event_unknown`` with ``value`` and ``known``: nobody would ever log it (unless `sure`).
        """
        known = self.event_words()
        meant = []
        for name in words:
            event = known.event(name, kind)
            if not event and not sure:
                raise InputFault("rule.event_unknown", value=shown(name), known=known.known(kind))
            meant.append(event or name)
        return tuple(dict.fromkeys(meant))

    def starters_for(self, item_id: str) -> tuple[StarterRule, ...]:
        """Starter rules that could apply to an item and that neither it nor its model has."""
        told = {model.rule for model in self.model_rules_for(item_id)}
        return tuple(starter for starter in super().starters_for(item_id) if starter.name not in told)

    def save_rule(self, rule: ServiceRule) -> str:
        """Add or change a service rule of one item.

        One that followed the rule of its model no longer does so if it now says something else; whether it applies is
        each item's own.
        """
        model = next((m for m in self.model_rules() if m.id == rule.of_model), None)
        if model is None or not says_the_same(model, rule):
            rule = rule.model_copy(update={"of_model": None})
        self._write("rule.edit", lambda w: w.put(rule), {"rule": rule.rule})
        return rule.id

    def delete_rule(self, rule_id: str) -> None:
        """Delete a rule that no record satisfies yet; one with records can be marked as not applying.

        Raises:
            InputFault: ``rule.has_records`` with ``rule``; ``rule.unknown``.
        """
        rule = next((r for r in self.rules() if r.id == rule_id), None)
        if rule is None:
            raise InputFault("rule.unknown", rule=rule_id)
        if self._with_records([rule_id]):
            raise InputFault("rule.has_records", rule=rule.rule)
        self._write("rule.delete", lambda w: w.remove(ServiceRule, rule_id, now=self.now()), {"rule": rule.rule})

    def take_starters(self, item_id: str, names: Iterable[str], *, for_model: bool = False) -> None:
        """Put rules that were offered onto an item: those of its model first, starters for the other names.

        Those with a typed date get theirs by `save_rule`.

        Args:
            item_id: the item.
            names: names of the rules.
            for_model: make rules of the model out of starters, for every item of it that has none of that name.

        Raises:
            InputFault: ``rule.wants_a_date`` with ``rule``: a starter that is nothing but a date printed on the item;
                ``rule.no_model`` with ``name``: rules for a model, and the item names none.
        """
        wanted = frozenset(names)
        models = [model for model in self.model_rules_for(item_id) if model.rule in wanted]
        rules = [following(model, item_id, self.new_id()) for model in models]
        starters = [starter for starter in self.starters_for(item_id) if starter.name in wanted]
        taken = [rule_from(starter, item_id, self.new_id()) for starter in starters]
        written = [row for rule in taken for row in self._for_model(rule)] if for_model else taken
        self._put("rule.take", [*rules, *written], {"count": len(wanted)})

    def _for_model(self, rule: ServiceRule) -> Iterator[ModelRule | ServiceRule]:
        model = self.as_model_rule(rule)
        if model is None:
            raise InputFault("rule.no_model", name=self._known(rule.item_id).name)
        yield model
        yield from self._reach(model, (), iter(self.new_id, None)).written

    def reach_of(self, model: ModelRule, replacing: Collection[str] = ()) -> Reach:
        """What saving a rule of a model would do, without writing it.

        Rules that a starter gave and nobody has changed since follow it without being named in `replacing`.
        """
        return self._reach(self._known_rule(model), replacing, self._none_yet())

    def save_model_rule(self, model: ModelRule, replacing: Collection[str] = ()) -> Reach:
        """Add or change a rule of a model, and with it the rules of all items of that model.

        A rule of the same name that the model has already is changed, whatever the id. Rules of items keep their
        records and whether they apply; those with figures of their own stay unless they are named.

        Args:
            model: the rule.
            replacing: ids of rules with figures of their own that are to follow it from now on.
        """
        model = self._known_rule(model)
        done = self._reach(model, replacing, iter(self.new_id, None))
        self._put("rule.model", (model, *done.written), {"rule": model.rule, "name": model.model})
        return done

    def save_for_model(self, rule: ServiceRule, *, all_items: bool = False) -> Reach:
        """Make a rule of one item one for every item of its model, or change the one that there is.

        Args:
            rule: the rule of the item, with the new figures; whether it applies stays this item's own.
            all_items: also where an item has figures of its own.

        Raises:
            InputFault: ``rule.no_model`` with ``name``: the item names no model.
        """
        model = self.as_model_rule(rule)
        if model is None:
            raise InputFault("rule.no_model", name=self._known(rule.item_id).name)
        others = [one.id for one in self.reach_of(model).own] if all_items else []
        done = self._reach(model, [rule.id, *others], iter(self.new_id, None))
        own = {"applies": rule.applies}
        written = [one.model_copy(update=own) if one.item_id == rule.item_id else one for one in done.written]
        self._put("rule.model", (model, *written), {"rule": model.rule, "name": model.model})
        return done

    def follow_model(self, rule_id: str) -> bool:
        """Let a rule with figures of its own follow the rule of its model; False where the model has none.

        Raises:
            InputFault: ``rule.unknown``.
        """
        rule = next((r for r in self.rules() if r.id == rule_id), None)
        if rule is None:
            raise InputFault("rule.unknown", rule=rule_id)
        model = self.model_rule_of(rule)
        if model is None:
            return False
        followed = with_figures_of(model, rule)
        self._write("rule.edit", lambda w: w.put(followed), {"rule": rule.rule})
        return True

    def model_rule_of(self, rule: ServiceRule) -> ModelRule | None:
        """The rule of the model about the same thing to do, whether the item's rule follows it or not."""
        item = self.item(rule.item_id)
        if item is None or model_of(item) is None:
            return None
        return same_rule(self._as_model_rule(rule, item, ""), self.model_rules())

    def as_model_rule(self, rule: ServiceRule) -> ModelRule | None:
        """The rule as one for every item of the model, under the id of the one that there is; None without a model."""
        item = self.item(rule.item_id)
        if item is None or model_of(item) is None:
            return None
        known = next((m for m in self.model_rules() if m.id == rule.of_model and model_of(m) == model_of(item)), None)
        return self._known_rule(self._as_model_rule(rule, item, known.id if known else self.new_id()))

    def delete_model_rule(self, model_id: str, *, with_rules: bool = False) -> ModelRuleGone:
        """Delete a rule of a model; the rules of its items stay, as their own.

        Args:
            model_id: id of the rule.
            with_rules: delete those of the items too, except where records satisfy them.

        Raises:
            InputFault: ``rule.unknown``.
        """
        model = next((m for m in self.model_rules() if m.id == model_id), None)
        if model is None:
            raise InputFault("rule.unknown", rule=model_id)
        followed = [rule for rule in self.rules() if rule.of_model == model_id]
        told = self._with_records([rule.id for rule in followed])
        kept = [rule for rule in followed if not with_rules or rule.id in told]
        gone = [rule for rule in followed if rule not in kept]

        def work(writer: Writer) -> None:
            for rule in kept:
                writer.put(rule.model_copy(update={"of_model": None}))
            for rule in gone:
                writer.remove(ServiceRule, rule.id, now=self.now())
            writer.remove(ModelRule, model_id, now=self.now())

        self._write("rule.model_delete", work, {"rule": model.rule, "name": model.model})
        return ModelRuleGone(tuple(rule.id for rule in kept), tuple(rule.id for rule in gone))

    def record_for_model(self, record: ServiceRecord) -> tuple[str, ...]:
        """Record for every item of the model at once what was done once: that notices were looked for.

        Each item that has a rule of one of the same names gets a record of its own; hours, launches, cost,
        measurements and papers stay with the item they were taken of. One without a model stands for itself.

        Returns:
            the ids of the records, that of the given one first.

        Raises:
            InputFault: ``item.unknown``; ``record.in_future`` with ``day``; ``rule.unknown``.
        """
        item = self._known(record.item_id)
        if record.done_on > self.now().date():
            raise InputFault("record.in_future", day=record.done_on)
        names = self._names_of(record)
        records = [record, *self._alike(record, names, items_like(item, self.items())[1:])]
        self._put("record.add", records, {"item_id": record.item_id, "count": len(records)})
        return tuple(one.id for one in records)

    def _names_of(self, record: ServiceRecord) -> frozenset[str]:
        own = {rule.id: rule.rule for rule in self.rules() if rule.item_id == record.item_id}
        for rule_id in record.rules:
            if rule_id not in own:
                raise InputFault("rule.unknown", rule=rule_id)
        return frozenset(own[rule_id] for rule_id in record.rules)

    def _alike(self, record: ServiceRecord, names: frozenset[str], items: Iterable[Item]) -> Iterator[ServiceRecord]:
        for item in items:
            rules = tuple(rule.id for rule in self.rules() if rule.item_id == item.id and rule.rule in names)
            if rules:
                update: Mapping[str, object] = {"id": self.new_id(), "item_id": item.id, "rules": rules, **_OF_ONE}
                yield record.model_copy(update=update)

    def _reach(self, model: ModelRule, replacing: Collection[str], new_ids: Iterator[str]) -> Reach:
        items, rules, of = self.items(), self.rules(), model_of(model)
        alike = frozenset(item.id for item in items if model_of(item) == of)
        named = [rule for rule in rules if rule.rule == model.rule and rule.item_id in alike]
        untouched = {rule.id for rule in named if self._is_starter(rule)}
        return reach(model, items, rules, replacing=untouched | set(replacing), new_ids=new_ids)

    def _is_starter(self, rule: ServiceRule) -> bool:
        """Whether a rule says just what its starter says."""
        starter = next((s for s in self.library.starter_rules if s.name == rule.rule), None)
        if starter is None:
            return False
        try:
            return says_the_same(rule, rule_from(starter, rule.item_id, rule.id))
        except InputFault:  # it wants a date, which only the pilot can have typed
            return False

    def _known_rule(self, model: ModelRule) -> ModelRule:
        """The rule under the id of the one that the model has for the same thing to do."""
        known = same_rule(model, self.model_rules())
        return model if known is None else model.model_copy(update={"id": known.id})

    @staticmethod
    def _as_model_rule(rule: ServiceRule, item: Item, model_id: str) -> ModelRule:
        of_item = {"id": model_id or "-", "kind": item.kind, "maker": item.maker, "model": item.model}
        return ModelRule.model_validate({**of_item, **limits_of(rule)})

    def _with_records(self, rule_ids: Collection[str]) -> frozenset[str]:
        return frozenset(rule for record in self.records() for rule in record.rules if rule in rule_ids)

    @staticmethod
    def _none_yet() -> Iterator[str]:
        """Ids of rules that are only looked at."""
        number = 0
        while True:
            number += 1
            yield f"new {number}"
