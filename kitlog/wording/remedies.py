"""Remedies as sentences."""

from collections.abc import Callable, Mapping

from kitlog.budget.result import Remedy
from kitlog.kit.facets import MAH_AT_PORT
from kitlog.wording.battery_text import REMEDIES as BATTERIES
from kitlog.wording.figures import kg_text, litres_text, mass_text
from kitlog.wording.findings import Names, say
from kitlog.wording.power_plan_text import phases_text
from kitlog.wording.power_remedies_text import SAY as POWER
from kitlog.wording.reasons import reason_text
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import N_, _


def remedy_text(remedy: Remedy, names: Names) -> str:
    """What would help, as an imperative."""
    text = _SAY[remedy.code](remedy, [names.get(item, item) for item in remedy.items])
    cautions = cautions_text(remedy, names)
    return _("{text}; but look at {cautions}").format(text=text, cautions=cautions) if cautions else text


def cautions_text(remedy: Remedy, names: Names) -> str:
    """What a computed remedy brings to look at; empty without any. A cable that is not known stands with its mass."""
    cautions = remedy.facts.get("cautions", ())
    assert isinstance(cautions, tuple)  # noqa: S101  # put there where remedies are checked
    told_at_mass = {"power.cable_not_known"} if remedy.facts.get("mass_g") is None else set()
    said = [say(one, names) for one in cautions if one.code not in told_at_mass]
    return ", ".join(f"{one.title} ({one.sentence})" for one in said)


def _first(items: list[str]) -> str:
    return items[0] if items else ""


def _g(facts: Mapping[str, object], name: str) -> float | None:
    value = facts.get(name)
    return float(value) if isinstance(value, int | float) else None


def _swap(_remedy: Remedy, items: list[str]) -> str:
    return _("Swap for {item}").format(item=items[1])


def _leave(remedy: Remedy, items: list[str]) -> str:
    mass = _g(remedy.facts, "mass_g")
    less = "" if mass is None else _(", {mass} less").format(mass=mass_text(mass))
    return _("Leave {item} at home{less}").format(item=_first(items), less=less)


def _record(remedy: Remedy, items: list[str]) -> str:
    rule = rule_text(str(remedy.facts["rule"]))
    return _("Have it done and record it: {rule} of {item}").format(rule=rule, item=_first(items))


def _choose(_remedy: Remedy, items: list[str]) -> str:
    return _("Choose one: {items}").format(items=", ".join(items))


def _take_along(_remedy: Remedy, items: list[str]) -> str:
    return _("Take {item} along after all").format(item=_first(items))


def _close_service(_remedy: Remedy, items: list[str]) -> str:
    return _("Close the service of {item} first").format(item=_first(items))


def _borrow(remedy: Remedy, _items: list[str]) -> str:
    return _("Enter it in Kit if you have it; else see to it: {label}").format(label=_(str(remedy.facts["label"])))


def _fetch(remedy: Remedy, items: list[str]) -> str:
    return _("Get {item} back: {state}").format(item=_first(items), state=reason_text(str(remedy.facts["reason"])))


def _weigh(remedy: Remedy, items: list[str]) -> str:
    by_g = _g(remedy.facts, "by_g")
    narrows = "" if by_g is None else _(": take-off mass narrows by {mass}").format(mass=mass_text(by_g))
    return _("Weigh {items}{narrows}").format(items=", ".join(items), narrows=narrows)


def _weigh_body(remedy: Remedy, _items: list[str]) -> str:
    by_g = _g(remedy.facts, "by_g")
    narrows = "" if by_g is None else _(": take-off mass narrows by {mass}").format(mass=mass_text(by_g))
    return _("Enter your body mass of today{narrows}").format(narrows=narrows)


def _ballast(remedy: Remedy, _items: list[str]) -> str:
    mass = _g(remedy.facts, "mass_g")
    return _("About {mass} of water ballast, within harness and reserve limits").format(mass=kg_text(mass))


def _carry_water(remedy: Remedy, _items: list[str]) -> str:
    more = litres_text(_g(remedy.facts, "more_ml") or 0.0)
    return _("Carry {more} more, in a vessel that holds it").format(more=more)


def _enter_battery(remedy: Remedy, items: list[str]) -> str:
    if remedy.facts.get("given") == "mAh":
        return _("Enter the volts, or the Wh, of {item}").format(item=_first(items))
    if remedy.facts.get("given") == MAH_AT_PORT:
        return _("Say what the mAh of {item} are of: its cell, or its 5 V port").format(item=_first(items))
    return _("Enter Wh and draw of {item}").format(item=_first(items))


def _enter_use(remedy: Remedy, items: list[str]) -> str:
    text = _("Say what {item} does in {phases}: the share of a way of use, 0 where it is off")
    return text.format(item=_first(items), phases=phases_text(remedy.facts["left_open"]))


def _answer(_remedy: Remedy, _items: list[str]) -> str:
    return _("Answer it, or say that it does not apply")


def _tell(remedy: Remedy, _items: list[str]) -> str:
    return _("Tell {name} the route and the times").format(name=str(remedy.facts["name"]))


def _name_person(remedy: Remedy, _items: list[str]) -> str:
    return _("Name someone: {role}").format(role=_(str(remedy.facts["role"])))


def _plain(text: str) -> Callable[[Remedy, list[str]], str]:
    return lambda _remedy, items: _(text).format(item=_first(items))


def _less(_remedy: Remedy, items: list[str]) -> str:
    return _("Draw less with {item}, or take it warmer").format(item=_first(items))


_SAY: dict[str, Callable[[Remedy, list[str]], str]] = {
    "swap": _swap,
    "leave_at_home": _leave,
    "record_service": _record,
    "choose": _choose,
    "take_along": _take_along,
    "close_service": _close_service,
    "borrow_or_buy": _borrow,
    "fetch": _fetch,
    "weigh": _weigh,
    "weigh_body": _weigh_body,
    "ballast": _ballast,
    "take_rules": _plain(N_("Look at the starter rules of {item}, and at its manual")),
    "enter_range": _plain(N_("Enter the certified range of {item}")),
    "enter_harness_limit": _plain(N_("Enter the greatest load of {item}")),
    "enter_reserve_limit": _plain(N_("Enter the printed load of {item}")),
    "enter_battery": _enter_battery,
    "enter_use": _enter_use,
    "carry_water": _carry_water,
    "enter_volume": _plain(N_("Enter the volume of {item}, or the water you plan")),
    "enter_phases": _plain(N_("Give the outing its phases: how long, how cold")),
    "draw_less": _less,
    "take_caller": _plain(N_("Take something charged that can call for help")),
    "load_bank": _plain(N_("Plug in something that draws more, or charge from {item} on the ground only")),
    "answer": _answer,
    "tell_contact": _tell,
    "name_person": _name_person,
    **POWER,
    **BATTERIES,
}

CODES = frozenset(_SAY)
"""Every code that has a sentence."""
