from datetime import date

from kitlog.kit.incidents import FollowUp, Incident, Strike, follow_ups, widened
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.kit.service import ServiceRecord, ServiceRule

WATER = Incident(
    name="water",
    label="bath",
    event="water",
    source="here",
    strikes=(
        Strike(kinds=(Kind.WING,), event="water", rules=("wing.event", "any.dry")),
        Strike(kinds=(Kind.HELMET,), event="soaked", rules=("any.dry",)),
    ),
)
WING = Item(id="w", name="Wing", kind=Kind.WING)


def rule(name: str, *events: str, item: str = "w", **fields: object) -> ServiceRule:
    given = {"id": f"{item} {name}", "item_id": item, "rule": name, "events": events, "months": 12, **fields}
    return ServiceRule.model_validate(given)


def one(*rules: ServiceRule, item: Item = WING) -> FollowUp:
    (found,) = follow_ups(WATER, [item], rules)
    return found


def test_without_rules_the_starters_are_taken() -> None:
    assert one() == FollowUp("w", "water", takes=("wing.event", "any.dry"))


def test_a_rule_that_answers_opens_and_is_not_taken_again() -> None:
    known = rule("wing.event", "tree", "Water")
    assert one(known) == FollowUp("w", "water", opens=(known,), takes=("any.dry",))


def test_a_rule_of_the_name_that_does_not_answer_is_widened() -> None:
    narrow = rule("wing.event", "tree", of_model="m")
    assert one(narrow) == FollowUp("w", "water", widens=(narrow,), takes=("any.dry",))
    wide = widened(narrow, "water")
    assert (wide.events, wide.of_model) == (("tree", "water"), None)


def test_an_own_rule_opens_beside_them() -> None:
    own = rule("wash it", "water")
    assert one(own).opens == (own,)
    assert one(own).takes == ("wing.event", "any.dry")


def test_what_does_not_apply_stays_silent_and_is_told() -> None:
    off = rule("wing.event", "water", applies=False)
    assert one(off) == FollowUp("w", "water", takes=("any.dry",), silent=(off,))


def test_rules_of_other_items_and_other_events_do_not_count() -> None:
    assert one(rule("wing.event", "water", item="x"), rule("full", "tree")).takes == ("wing.event", "any.dry")


def test_each_kind_has_its_event() -> None:
    helmet = Item(id="h", name="Helmet", kind=Kind.HELMET)
    assert one(item=helmet) == FollowUp("h", "soaked", takes=("any.dry",))


def test_a_thing_that_is_not_named_gets_the_event_and_nothing_more() -> None:
    phone = Item(id="p", name="Phone", kind=Kind.PHONE)
    found = one(item=phone)
    assert found == FollowUp("p", "water")
    assert found.nothing


def test_each_item_once_in_their_order() -> None:
    helmet = Item(id="h", name="Helmet", kind=Kind.HELMET)
    assert [f.item_id for f in follow_ups(WATER, [helmet, WING, helmet], ())] == ["h", "w"]


def test_a_later_record_has_answered_it_already() -> None:
    known = rule("wing.event", "water")
    record = ServiceRecord(id="r", item_id="w", rules=(known.id,), done_on=date(2026, 4, 27))
    (before,) = follow_ups(WATER, [WING], [known], [record], date(2026, 4, 26))
    assert (before.opens, before.answered, before.takes) == ((), ((known, record),), ("any.dry",))
    assert not before.nothing
    failed = ServiceRecord.model_validate({**record.model_dump(), "result": "failed"})
    for records, on in (([record], date(2026, 4, 27)), ([failed], date(2026, 4, 26))):
        (found,) = follow_ups(WATER, [WING], [known], records, on)
        assert (found.opens, found.answered) == ((known,), ())
