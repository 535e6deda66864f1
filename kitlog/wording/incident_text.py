"""What happened to the kit, and what it opens, in words."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from kitlog.kit.incidents import FollowUp, Incident
from kitlog.kit.item import Item
from kitlog.kit.service import Grounds
from kitlog.outing.library import Library
from kitlog.wording.columns import WIDTH, paragraph, wrapped
from kitlog.wording.figures import day_text
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import N_, _, ngettext
from kitlog.wording.words import STANCE, word

EVENTS = (
    N_("activated"),
    N_("bent"),
    N_("blow"),
    N_("container opened"),
    N_("crash"),
    N_("damp"),
    N_("dropped on rock"),
    N_("embers"),
    N_("fall"),
    N_("gate not closing"),
    N_("impact"),
    N_("knock"),
    N_("line cut"),
    N_("line knotted"),
    N_("manoeuvre course"),
    N_("new pairing"),
    N_("overload"),
    N_("power line"),
    N_("reserve repacked"),
    N_("reserve thrown"),
    N_("rock"),
    N_("sand"),
    N_("sand or salt"),
    N_("solvent"),
    N_("taken out"),
    N_("tree"),
    N_("unsure repair"),
)
"""Events that can be logged; marked here so that translators see them."""

UNTIL_DONE = {
    Grounds.YES: N_("a stop until it is done"),
    Grounds.BY_LAW: N_("a stop where law, school or event asks for it"),
    Grounds.NO: N_("a look until it is done"),
}

ON_RECORD, TAKEN, WIDENED = "on record", "taken", "widened"
"""Where an opened rule comes from: it was there; it is a starter that the item takes; its events get one more."""


@dataclass(frozen=True, slots=True)
class Opened:
    """One rule that is opened."""

    rule: str
    how: str
    within_days: int
    grounds: Grounds
    source: str


def opened(one: FollowUp, library: Library) -> tuple[Opened, ...]:
    """The rules that a follow-up opens, what was on record first."""
    held = [(rule, ON_RECORD) for rule in one.opens] + [(rule, WIDENED) for rule in one.widens]
    starters = [library.starter(name) for name in one.takes]
    return (
        *(Opened(rule.rule, how, rule.event_days, rule.grounds, rule.source) for rule, how in held),
        *(Opened(rule.name, TAKEN, rule.event_days, rule.grounds, rule.source) for rule in starters),
    )


def incident_label(incident: Incident) -> str:
    """What happened, as a person reads it."""
    return _(incident.label)


def within_text(days: int) -> str:
    """How soon it is to be done."""
    return ngettext("within {n} day", "within {n} days", days).format(n=days) if days else _("at once")


def opened_text(one: Opened) -> str:
    """One rule that is opened: what, how soon, what it means while it is open."""
    return _("{rule}: {within}, {grounds}").format(
        rule=rule_text(one.rule), within=within_text(one.within_days), grounds=_(UNTIL_DONE[one.grounds])
    )


def origin_text(one: Opened, event: str) -> str:
    """Where the rule comes from, if it was not on record as it is; else empty."""
    if one.how == TAKEN:
        return _("new rule, from the starters: {source}").format(source=_(one.source))
    if one.how == WIDENED:
        return _("the rule on record did not name such an event; “{event}” is added to it").format(event=word(event))
    return ""


def not_opened(one: FollowUp) -> Iterator[str]:
    """What is not opened, and why: answered already, does not apply, or nothing there that answers."""
    for rule, record in one.answered:
        text = _("{rule}: answered already by the record of {day}")
        yield text.format(rule=rule_text(rule.rule), day=day_text(record.done_on))
    names = ", ".join(rule_text(rule.rule) for rule in one.silent)
    if names:
        yield _("does not apply, as you said: {rules}").format(rules=names)
    if one.nothing:
        yield _("opens nothing; it stays in the history")


_WET = frozenset({"water", "damp"})


def fitted_text(incident: Incident, guest: str, host: str) -> str:
    """What stands beside a thing that can be ticked and is fitted to a struck one, by their names."""
    text = N_("{guest} is fitted to {host}: tick it if it was struck too.")
    wet = N_("{guest} is fitted to {host}: tick it if it got wet too.")
    return _(wet if incident.name in _WET else text).format(guest=guest, host=host)


def fitted_lines(incident: Incident, fitted: Iterable[tuple[Item, Item]]) -> Iterator[str]:
    """What is fitted to struck things and was not named, a line each of these: only the pilot knows what it took."""
    hosts: dict[str, list[str]] = {}
    for guest, host in fitted:
        hosts.setdefault(host.name, []).append(guest.name)
    for host_name, guests in hosts.items():
        text = ngettext(
            "{guests} is fitted to {host}: add it if it was struck too.",
            "Fitted to {host}: {guests}. Add what was struck too.",
            len(guests),
        )
        wet = ngettext(
            "{guests} is fitted to {host}: add it if it got wet too.",
            "Fitted to {host}: {guests}. Add what got wet too.",
            len(guests),
        )
        yield (wet if incident.name in _WET else text).format(guests=", ".join(guests), host=host_name)


def incident_lines(
    incident: Incident,
    found: Sequence[FollowUp],
    names: Mapping[str, str],
    library: Library,
    on: date,
    *,
    written: bool,
) -> Iterator[str]:
    """What was logged, or would be, on a terminal."""
    text = _("Logged: {what}, {day}") if written else _("Would be logged: {what}, {day}")
    yield from wrapped(text.format(what=incident_label(incident), day=day_text(on)), WIDTH)
    yield ""
    for one in found:
        yield from paragraph(names.get(one.item_id, one.item_id))
        for line in opened(one, library):
            yield from paragraph(opened_text(line), indent=2)
            origin = origin_text(line, one.event)
            if origin:
                yield from paragraph(origin, indent=4)
        for said in not_opened(one):
            yield from paragraph(said, indent=2)
    yield ""
    yield from wrapped(_(STANCE), WIDTH)


def known_lines(incidents: Sequence[Incident], library: Library) -> Iterator[str]:
    """Everything that can be logged, with what it opens, on a terminal."""
    labels = {facts.kind: _(facts.label) for facts in library.kinds}
    for incident in incidents:
        label = incident_label(incident)
        yield from paragraph(label if label == incident.name else f"{incident.name}: {label}")
        for strike in incident.strikes:
            kinds = ", ".join(labels[kind] for kind in strike.kinds)
            rules = [library.starter(name) for name in strike.rules]
            said = "; ".join(opened_text(Opened(r.name, TAKEN, r.event_days, r.grounds, r.source)) for r in rules)
            struck = kinds if strike.usual else _("{kinds}, if struck").format(kinds=kinds)
            yield from paragraph(f"{struck}: {said}", indent=2)
    yield ""
    yield from wrapped(_(STANCE), WIDTH)
