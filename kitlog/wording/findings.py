"""Findings as words: a title, a figure and a sentence. Codes and figures come from the floors below."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from kitlog.budget.result import Finding, State
from kitlog.kit.due import Due
from kitlog.kit.facets import MAH_AT_PORT
from kitlog.wording.battery_text import SAY as BATTERIES
from kitlog.wording.can_call_text import SAY as CAN_CALL
from kitlog.wording.due_sentence import due_sentence
from kitlog.wording.figures import (
    MINUS,
    hours_text,
    kg_text,
    litres_text,
    mass_text,
    number_text,
    percent_text,
    span_text,
    with_unit,
)
from kitlog.wording.power_cautions_text import SAY as POWER_CAUTIONS
from kitlog.wording.power_plan_text import phases_text
from kitlog.wording.power_start_text import begins_full_text, seen_text
from kitlog.wording.reasons import reason_text
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import N_, _

Names = Mapping[str, str]
"""Names of items by id."""


@dataclass(frozen=True, slots=True)
class Said:
    """A finding in words.

    Attributes:
        title: whom or what it is about; figure: the one figure, may be empty; sentence: what there is to say.
    """

    title: str
    figure: str
    sentence: str


def say(finding: Finding, names: Names) -> Said:
    """A finding in words, items by their names."""
    title, figure, sentence = _SAY[finding.code](finding, names)
    return Said(title, figure, sentence)


Parts = tuple[str, str, str]


def _item(finding: Finding, names: Names) -> str:
    return names.get(finding.items[0], finding.items[0]) if finding.items else finding.subject


def _need_missing(finding: Finding, names: Names) -> Parts:
    facts = finding.facts
    others = _named(finding.items, names)
    tail = f" ({others})" if others else ""
    some = facts["have"] and facts["reason"] == "none owned"
    counted = _("{have} of {amount} in the kit").format(have=facts["have"], amount=facts["amount"])
    sentence = _("{strength} need not met, {reason}{tail}: {why}").format(
        strength=_(str(facts["strength"])),
        reason=counted if some else reason_text(str(facts["reason"])),
        tail=tail,
        why=_(str(facts["why"])),
    )
    return _(str(facts["label"])), "", sentence + _left_open(facts)


def _left_open(facts: Mapping[str, object]) -> str:
    if not facts["open"]:
        return ""
    return _(" ({condition} is left open and counts as yes)").format(condition=_(str(facts["open"])))


def _need_not_chosen(finding: Finding, names: Names) -> Parts:
    facts, others = finding.facts, _named(finding.items, names)
    text = _("waits for the choice of the set: {others}")
    if facts["reason"] == "not chosen":
        text = _("none is chosen yet: {others}")
    return _(str(facts["label"])), "", text.format(others=others)


def _named(items: tuple[str, ...], names: Names) -> str:
    return ", ".join(names.get(item, item) for item in items)


def _check_not_answered(finding: Finding, _names: Names) -> Parts:
    sentence = _("not answered: {why}").format(why=_(str(finding.facts["why"])))
    return _(str(finding.facts["label"])), "", sentence


def _pin_not_at_hand(finding: Finding, names: Names) -> Parts:
    sentence = _("pinned to this outing, but {reason}").format(reason=reason_text(str(finding.facts["reason"])))
    return _item(finding, names), "", sentence


def _apart(finding: Finding, names: Names) -> Parts:
    host = names.get(finding.items[1], finding.items[1])
    sentence = _("goes along, but {host}, which it is fitted to, stays at home").format(host=host)
    return _item(finding, names), "", sentence


def _service(finding: Finding, names: Names) -> Parts:
    due = finding.facts["due"]
    assert isinstance(due, Due)  # noqa: S101  # put there by the service findings
    title = f"{_item(finding, names)}: {rule_text(due.rule)}"
    return title, "" if due.days_left is None else with_unit(due.days_left, "d"), due_sentence(due)


def _range(finding: Finding, names: Names) -> Parts:
    facts, when = finding.facts, _("Take-off mass") if finding.code == "weight.takeoff_range" else _("Landing mass")
    if finding.figure is None:
        least = _("at least {mass}").format(mass=kg_text(_number(facts["known_g"])))
        return when, "", f"{_mass_unknown(facts, names)}; {least}"
    if facts["low_g"] is None or facts["high_g"] is None:
        return when, kg_text(finding.figure), _("the wing's certified range is not on record")
    sentence = _("{fit}: range {low} to {high}, {tolerance}, at {position} of the range").format(
        fit=_(_FITS[str(facts["fit"])]),
        low=number_text(_number(facts["low_g"]) / 1000, 1),
        high=kg_text(_number(facts["high_g"])),
        tolerance="±" + kg_text(_number(facts["tolerance_g"])),
        position=percent_text(_number(facts["position_pct"]), 1) if facts["position_pct"] is not None else "?",
    )
    return when, kg_text(finding.figure), sentence


_FITS = {
    "inside": N_("inside"),
    "inside, tolerance reaches over": N_("inside, but the tolerance reaches over a limit"),
    "outside, tolerance reaches in": N_("outside, the tolerance reaches in"),
    "outside": N_("outside"),
    "not known": N_("not known"),
}


def _mass_unknown(facts: Mapping[str, object], names: Names) -> str:
    unknown = facts["unknown"]
    assert isinstance(unknown, tuple)  # noqa: S101  # put there by the weight findings
    listed = ", ".join(_(_BODIES[name]) if name in _BODIES else names.get(name) or _(name) for name in unknown)
    return _("mass not known: {names}").format(names=listed)


_BODIES = {"pilot": N_("body mass"), "passenger": N_("passenger's body mass")}


def _hanging_unknown(facts: Mapping[str, object]) -> str:
    known_g, high_g = _number(facts["known_g"]), _number(facts["high_g"])
    if known_g <= high_g:
        return _("take-off mass not known")
    return _("at least {mass} of at most {high}").format(mass=kg_text(known_g), high=kg_text(high_g))


def _number(value: object) -> float:
    assert isinstance(value, int | float)  # noqa: S101  # figures in facts are numbers where the code says so
    return float(value)


def _harness(finding: Finding, names: Names) -> Parts:
    title = _("Load on {harness}").format(harness=_item(finding, names))
    if finding.facts["high_g"] is None:
        return title, "", _("its greatest load is not on record")
    if finding.figure is None:
        return title, "", _hanging_unknown(finding.facts)
    high = kg_text(_number(finding.facts["high_g"]))
    return title, kg_text(finding.figure), _("of at most {high}; the wing is not counted").format(high=high)


def _reserve(finding: Finding, names: Names) -> Parts:
    facts, title = finding.facts, _("Load on {reserve}").format(reserve=_item(finding, names))
    if facts["high_g"] is None:
        return title, "", _("its printed load is not on record")
    if finding.figure is None:
        return title, "", _hanging_unknown(facts)
    sentence = _(
        "without the wing {without}, with it {with_wing}; printed {low} to {high}. Sources differ on which counts"
    ).format(
        without=kg_text(finding.figure),
        with_wing=kg_text(_number(facts["with_wing_g"])),
        low="?" if facts["low_g"] is None else number_text(_number(facts["low_g"]) / 1000, 1),
        high=kg_text(_number(facts["high_g"])),
    )
    return title, kg_text(finding.figure), sentence


def _mid_range(finding: Finding, _names: Names) -> Parts:
    sentence = _("wanted between {low} and {high} of the range: {why}").format(
        low=percent_text(_number(finding.facts["low_pct"])),
        high=percent_text(_number(finding.facts["high_pct"])),
        why=_(str(finding.facts["why"])),
    )
    return _("Position in the range"), percent_text(finding.figure, 1), sentence


def _pack_share(finding: Finding, _names: Names) -> Parts:
    sentence = _("{pack} on the back on foot, at most {high} of body mass is usual").format(
        pack=kg_text(_number(finding.facts["pack_g"])), high=percent_text(_number(finding.facts["high_pct"]))
    )
    return _("Carried uphill"), percent_text(finding.figure, 1), sentence


def _no_ballast(finding: Finding, names: Names) -> Parts:
    return _item(finding, names), "", _("no ballast here: {why}").format(why=_(str(finding.facts["why"])))


def _device(finding: Finding, names: Names) -> Parts:
    facts = finding.facts
    return _item(finding, names), _device_figure(finding), _device_sentence(facts, finding) + _assumed(finding, names)


def _device_figure(finding: Finding) -> str:
    """What it is short by, as on the tile and in its lane; of what lasts the charge at the end."""
    if finding.margin is not None and finding.margin < 0:
        return f"{MINUS}{span_text(finding.margin)}"
    return percent_text(finding.figure) if finding.figure is not None else ""


def _assumed(finding: Finding, names: Names) -> str:
    return begins_full_text(finding, names) + _air_assumed(finding.facts)


def _air_assumed(facts: Mapping[str, object]) -> str:
    return _("; no air temperature given, reckoned at 0 °C") if facts["air_assumed"] else ""


def _device_sentence(facts: Mapping[str, object], finding: Finding) -> str:
    if facts["off_h_likely"] is not None:
        return _("off after {after} in the likely case, in {phase}{short}").format(
            after=hours_text(_number(facts["off_h_likely"])),
            phase=_(finding.phase),
            short=_short(facts["short_h_likely"]),
        )
    if facts["off_h_high"] is not None:
        text = _("lasts the likely day with {left}; off after {after} on a high day{short}")
        if facts["end_pct_likely"] is None:  # no cell: it runs while a bank feeds it
            text = _("lasts the likely day; off after {after} on a high day{short}")
        return text.format(
            left="" if facts["end_pct_likely"] is None else percent_text(_number(facts["end_pct_likely"])),
            after=hours_text(_number(facts["off_h_high"])),
            short=_short(facts["short_h_high"]),
        )
    if finding.state is State.LOOK:
        keep = percent_text(_number(facts["keep_pct"]))
        return _("lasts, but ends under the {keep} to keep in hand{when}").format(keep=keep, when=_when(finding))
    high = "" if facts["end_pct_high"] is None else percent_text(_number(facts["end_pct_high"]))
    return _("lasts the high day too, with {high} left").format(high=high) if high else _("lasts the high day too")


def _when(finding: Finding) -> str:
    likely, keep = finding.facts["end_pct_likely"], _number(finding.facts["keep_pct"])
    return _(" on a high day") if likely is None or _number(likely) >= keep else ""


def _short(hours: object) -> str:
    short = _number(hours)
    return _(", {span} short").format(span=span_text(short)) if short > 0 else ""


def _phone_at_landing(finding: Finding, names: Names) -> Parts:
    facts = finding.facts
    sentence = _("likely at the landing; at least {least} wanted. On a high day {high}, at least {least_high}").format(
        least=percent_text(_number(facts["least_pct"])),
        high=percent_text(_number(facts["high_pct"])),
        least_high=percent_text(_number(facts["least_high_pct"])),
    )
    return (
        _("Phone at the landing"),
        percent_text(finding.figure),
        sentence + seen_text(finding, names) + _air_assumed(facts),
    )


def _power_not_known(finding: Finding, names: Names) -> Parts:
    if finding.facts["given"] == "mAh":
        return _item(finding, names), "", _("mAh without volts: its energy is not known")
    if finding.facts["given"] == MAH_AT_PORT:
        return _item(finding, names), "", _("mAh beside 5 V, of the cell or at the port: its energy is not known")
    if finding.facts["energy_wh"] is None:
        return _item(finding, names), "", _("the energy of its battery is not on record")
    if phases := phases_text(finding.facts.get("left_open")):
        sentence = _(
            "its draw is not known: no way of use has a share of the time in {phases}, nor is it said to be off"
        )
        return _item(finding, names), "", sentence.format(phases=phases)
    return _item(finding, names), "", _("its draw is not on record")


def _no_phases(_finding: Finding, _names: Names) -> Parts:
    return _("Power"), "", _("not known: the outing has no phases with durations yet")


def _no_way_home(_finding: Finding, _names: Names) -> Parts:
    sentence = _("not known: no phase after the last flight, so the charges end at the landing")
    return _("Charge on the way home"), "", sentence


def _no_flight(_finding: Finding, _names: Names) -> Parts:
    return _("Charge at the landing"), "", _("not known: the flight has no duration yet")


def _no_rules(finding: Finding, names: Names) -> Parts:
    listed = ", ".join(names.get(item, item) for item in finding.items)
    return (
        _("Service"),
        "",
        _("no service rule on record for {items}: nothing is known of when they are due").format(items=listed),
    )


def _sleeps(finding: Finding, names: Names) -> Parts:
    sentence = _("switches itself off after {after}: what is plugged in draws too little to keep it awake").format(
        after=hours_text(finding.figure or 0.0)
    )
    return _item(finding, names), "", sentence


def _water_not_known(finding: Finding, names: Names) -> Parts:
    return (
        _("Water"),
        "",
        _("not known: {item} has no volume and no water is planned").format(item=_item(finding, names)),
    )


def _water_short(finding: Finding, _names: Names) -> Parts:
    held = litres_text(finding.figure or 0.0)
    text = _("planned {wanted}, but what goes along holds {held}")
    if finding.code == "water.less":
        text = _("{held} at launch, at least {wanted} wanted")
    return _("Water"), held, text.format(held=held, wanted=litres_text(_number(finding.facts["wanted_ml"])))


def _told(finding: Finding, _names: Names) -> Parts:
    listed = _listed(finding.facts["names"])
    if finding.code == "people.told":
        return _("Contact"), "", _("{names} told").format(names=listed)
    alone = _(", and you fly alone") if finding.facts["alone"] else ""
    return _("Contact"), "", _("{names} not told yet{alone}").format(names=listed, alone=alone)


def _person(finding: Finding, _names: Names) -> Parts:
    label = _(str(finding.facts["label"]))
    if finding.code == "people.there":
        return label, "", _listed(finding.facts["names"])
    return label, "", _("nobody named: {why}").format(why=_(str(finding.facts["why"])))


def _listed(names: Any) -> str:
    return ", ".join(names)


_SAY: dict[str, Callable[[Finding, Names], Parts]] = {
    "need.missing": _need_missing,
    "need.not_chosen": _need_not_chosen,
    "check.not_answered": _check_not_answered,
    "pin.not_at_hand": _pin_not_at_hand,
    "pair.apart": _apart,
    "service.overdue": _service,
    "service.recommended_passed": _service,
    "service.no_record": _service,
    "weight.takeoff_range": _range,
    "weight.landing_range": _range,
    "weight.harness": _harness,
    "weight.reserve": _reserve,
    "weight.mid_range": _mid_range,
    "weight.pack_share": _pack_share,
    "weight.no_ballast": _no_ballast,
    "power.device": _device,
    "power.phone_at_landing": _phone_at_landing,
    "power.not_known": _power_not_known,
    "power.no_phases": _no_phases,
    "power.no_way_home": _no_way_home,
    "power.no_flight": _no_flight,
    "service.no_rules": _no_rules,
    "power.bank_sleeps": _sleeps,
    "water.not_known": _water_not_known,
    "water.no_room": _water_short,
    "water.less": _water_short,
    "people.told": _told,
    "people.nobody_told": _told,
    "people.there": _person,
    "people.missing": _person,
    **POWER_CAUTIONS,
    **CAN_CALL,
    **BATTERIES,
}

CODES = frozenset(_SAY)
"""Every code that has a sentence."""


def tile_figure(finding: Finding) -> str:
    """The figure of a finding for a tile: short, with its unit; empty where it has none."""
    match finding.unit:
        case "g":
            return kg_text(finding.figure)
        case "%":
            return percent_text(finding.figure)
        case "d":
            return "" if finding.figure is None else with_unit(finding.figure, "d")
        case "ml":
            return "" if finding.figure is None else litres_text(finding.figure)
        case _:
            return ""


def margin_text(finding: Finding) -> str:
    """What is left to the limit, in words; empty where there is no margin."""
    if finding.margin is None:
        return ""
    if finding.unit == "g":
        side = _("{mass} in hand") if finding.margin >= 0 else _("{mass} over")
        return side.format(
            mass=kg_text(abs(finding.margin)) if abs(finding.margin) >= 1000 else mass_text(abs(finding.margin))
        )
    if finding.code == "power.device":
        side = _("{span} more") if finding.margin >= 0 else _("{span} short")
        return side.format(span=span_text(finding.margin))
    return ""
