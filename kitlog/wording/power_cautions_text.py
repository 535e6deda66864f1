"""Cautions about power, and batteries on a journey by air, as words."""

from collections.abc import Callable, Mapping
from datetime import date

from kitlog.budget.result import Finding
from kitlog.wording.figures import day_text, number_text, percent_text, with_unit
from kitlog.wording.power_plan_text import absent_text, phases_text
from kitlog.wording.translate import N_, _, ngettext

Names = Mapping[str, str]
Parts = tuple[str, str, str]


def _name(finding: Finding, names: Names, at: int = 0) -> str:
    return names.get(finding.items[at], finding.items[at])


def _named(finding: Finding, names: Names) -> str:
    return ", ".join(names.get(item, item) for item in finding.items)


def _fact(finding: Finding, name: str) -> float:
    value = finding.facts[name]
    assert isinstance(value, int | float)  # noqa: S101  # put there by the cautions
    return float(value)


def _temp(temp_c: float | None) -> str:
    return with_unit(temp_c or 0.0, "°C")


def _charge(finding: Finding, names: Names) -> Parts:
    text = _(
        "plugged into {bank} in {phase}, but under {limit} its cell takes no charge; the bank only carries its load"
    )
    if finding.code == "power.charge_hot":
        text = _(
            "plugged into {bank} in {phase}, but over {limit} its cell takes no charge; the bank only carries its load"
        )
    sentence = text.format(
        bank=_name(finding, names, 1), phase=_(finding.phase), limit=_temp(_fact(finding, "limit_c"))
    )
    return _name(finding, names), _temp(finding.figure), sentence


def _range(finding: Finding, names: Names) -> Parts:
    sentence = _("in use in {phase} outside {low} to {high}, where most cells may be discharged; look at its manual")
    return (
        _name(finding, names),
        _temp(finding.figure),
        sentence.format(
            phase=_(finding.phase), low=_temp(_fact(finding, "low_c")), high=_temp(_fact(finding, "high_c"))
        ),
    )


def _worn(finding: Finding, names: Names) -> Parts:
    least = percent_text(_fact(finding, "least_pct"))
    sentence = _("is all the health of its battery that is left; under {least} it counts as worn").format(least=least)
    return _name(finding, names), percent_text(finding.figure), sentence


def _no_reserve(finding: Finding, names: Names) -> Parts:
    text = _(
        "lasts, but less than {keep} of its energy can still be used at the end; after the cold the figure reads high"
    )
    if finding.facts["cause"] == "radio":
        text = _(
            "lasts, but less than {keep} of its energy can still be used at the end; bursts of transmitting cost more"
            " than their mean"
        )
    sentence = text.format(keep=percent_text(_fact(finding, "keep_pct")))
    return _name(finding, names), percent_text(finding.figure), sentence


def _cable_missing(finding: Finding, names: Names) -> Parts:
    text = _("no cable on the list fits between it and {bank}")
    if finding.code == "power.cables_short":
        text = _("the cables that fit between it and {bank} are all taken in {phase}")
    return _name(finding, names), "", text.format(bank=_name(finding, names, 1), phase=_(finding.phase))


def _cable_not_known(finding: Finding, names: Names) -> Parts:
    sentence = _("not known whether a cable fits for {items}: not all connectors are on record")
    return _("Cables"), "", sentence.format(items=_named(finding, names))


def _ports(finding: Finding, names: Names) -> Parts:
    plugs = int(_fact(finding, "plugs"))
    few = _("its ports are not on record, so one is reckoned with")
    if finding.facts["ports"] is not None:
        ports = int(_fact(finding, "ports"))
        few = ngettext("it has {n} port", "it has {n} ports", ports).format(n=ports)
    sentence = _("{n} devices at a time in {phase}, but {few}; reckoned as if it did not feed {items}").format(
        n=plugs, phase=_(finding.phase), few=few, items=", ".join(names.get(item, item) for item in finding.items[1:])
    )
    return _name(finding, names), "", sentence


def _plug_idle(finding: Finding, names: Names) -> Parts:
    idle = finding.facts["idle"]
    assert isinstance(idle, tuple)  # noqa: S101  # put there by the plug findings
    parts = [
        _("{bank} ({phases})").format(bank=absent_text(names.get(bank, bank), reason), phases=phases_text(phases))
        for bank, reason, phases in idle
    ]
    sentence = _("its plug is without effect: {banks}; reckoned without it").format(banks="; ".join(parts))
    return _name(finding, names), "", sentence


def _air(finding: Finding, names: Names) -> Parts:
    if finding.code == "power.air_not_known":
        return _name(finding, names), "", _("by air: its Wh are not on record, so no limit can be looked at")
    free, most = (with_unit(_fact(finding, name), "Wh") for name in ("free_wh", "approval_wh"))
    text = {
        "power.air_forbidden": _("by air: over {most} it may not travel as baggage ({source})"),
        "power.air_approval": _("by air: over {free} the airline has to approve it ({source})"),
        "power.air_allowed": _("by air: up to {free} no approval is asked for ({source})"),
    }[finding.code]
    figure = with_unit(finding.figure or 0.0, "Wh", 1)
    return _name(finding, names), figure, text.format(free=free, most=most, source=_(finding.source))


def _air_many(finding: Finding, _names: Names) -> Parts:
    facts = finding.facts
    what, most = str(facts["what"]), int(_fact(finding, "most"))
    since = facts["banks_from"]
    text = _("by air: at most {most} a person ({source})")
    if what == "bank":
        text = _("by air: at most {most} a person since {day} ({source})")
    day = day_text(since) if isinstance(since, date) else ""
    sentence = text.format(most=most, day=day, source=_(finding.source))
    return _(_COUNTED[what]), number_text(finding.figure or 0.0), sentence


_COUNTED = {
    "bank": N_("Power banks"),
    "spare": N_("Spare batteries"),
    "device": N_("Devices with a battery"),
    "with approval": N_("Batteries that need approval"),
}


def _air_cabin(finding: Finding, names: Names) -> Parts:
    facts = finding.facts
    free, most = (with_unit(_fact(finding, name), "Wh") for name in ("free_wh", "approval_wh"))
    since = facts["banks_from"]
    day = day_text(since) if isinstance(since, date) else ""
    sentences = [
        _("by air: hand luggage only, contacts covered"),
        _("each up to {free} without asking, to {most} with the airline's approval and then {n} a person").format(
            free=free, most=most, n=facts["most_with_approval"]
        ),
        _("{spares} spare batteries and {devices} devices a person ({source})").format(
            spares=facts["most_spares"], devices=facts["most_devices"], source=_(finding.source)
        ),
    ]
    if facts["banks"] and facts["banks_apart"]:
        sentences.append(
            _("{n} power banks a person since {day}, not to be charged on board ({source})").format(
                n=facts["most_banks"], day=day, source=_(str(facts["banks_source"]))
            )
        )
    return _named(finding, names), "", "; ".join([*sentences, _("an airline may be stricter")])


SAY: dict[str, Callable[[Finding, Names], Parts]] = {
    "power.charge_cold": _charge,
    "power.charge_hot": _charge,
    "power.cell_range": _range,
    "power.worn": _worn,
    "power.no_reserve": _no_reserve,
    "power.cable_missing": _cable_missing,
    "power.cables_short": _cable_missing,
    "power.cable_not_known": _cable_not_known,
    "power.ports_short": _ports,
    "power.plug_idle": _plug_idle,
    "power.air_forbidden": _air,
    "power.air_approval": _air,
    "power.air_allowed": _air,
    "power.air_not_known": _air,
    "power.air_too_many": _air_many,
    "power.air_cabin": _air_cabin,
}
"""What is said of each code."""
