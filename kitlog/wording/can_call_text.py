"""Whether something can still call for help at the end, in the cases and by chance, as words."""

from collections.abc import Callable, Mapping

from kitlog.budget.power.chance import Odds
from kitlog.budget.result import Finding, State
from kitlog.packing.power_day import NO_PHASES
from kitlog.wording.chance_text import error_text, odds_text
from kitlog.wording.figures import hours_text, number_text
from kitlog.wording.translate import N_, _

Names = Mapping[str, str]
Parts = tuple[str, str, str]


def _named(finding: Finding, names: Names) -> str:
    return ", ".join(names.get(item, item) for item in finding.items)


_PHONE = {
    "retrieve": N_("{phone} can still call at the end of the retrieve"),
    "landing": N_("{phone} can still call at the landing, where the plan ends"),
    "day": N_("{phone} can still call at the end of the day"),
}
"""The title, by what the plan ends with."""


def _phone(finding: Finding, names: Names) -> Parts:
    if finding.state is State.NOT_KNOWN:
        return _named(finding, names), "", _(_WHY_NOT[str(finding.facts.get("not_counted", ""))])
    return (
        _(_PHONE[str(finding.facts["ends"])]).format(phone=_named(finding, names)),
        odds_text(_odds(finding)),
        _sentence(finding),
    )


_WHY_NOT = {
    "": N_("whether it can still call at the end is not known: its Wh or its draw in each phase is not on record"),
    "swollen": N_("not counted on to call: its battery was seen swollen, do not take it"),
    "stop open": N_("not counted on to call: its service has a stop open on the day"),
}
"""Why nothing is known of a phone's call."""


def _any(finding: Finding, names: Names) -> Parts:
    title = _("Something can still call for help at the end")
    text = _("at least one of {devices}: {rest}") if len(finding.items) > 1 else _("{devices}: {rest}")
    text = text.format(devices=_named(finding, names), rest=_sentence(finding))
    return title, odds_text(_odds(finding)), text


def _odds(finding: Finding) -> Odds:
    odds = finding.facts["odds"]
    assert isinstance(odds, Odds)  # noqa: S101  # put there by the chance findings
    return odds


_GRADES = {
    "good": N_("{share}"),
    "thin": N_("{share}: not to be relied on"),
    "bad": N_("{share}: too few. Reckon with a dark phone"),
}


def _sentence(finding: Finding) -> str:
    facts = finding.facts
    grade = _(_GRADES[str(facts["grade"])])
    if finding.code != "power.phone_can_call" and facts["grade"] == "bad":
        grade = _("{share}: too few. Reckon with nothing that calls")
    said = grade.format(share=_share(_odds(finding)))
    first = "" if facts["final"] else _("first estimate, ")
    off_h = facts["off_by_5_pct_h"]
    off = ""
    if isinstance(off_h, float):
        off = _(". One day in twenty it is off by {hours}").format(hours=hours_text(off_h))
    return f"{first}{said}{off}{_rests_on(facts)}"


def _share(odds: Odds) -> str:
    days, error = number_text(odds.days), error_text(odds)
    if not error:
        return _("{share}, as all {days} days drawn agree").format(share=odds_text(odds), days=days)
    return _("on {share} of {days} days drawn ({error})").format(share=odds_text(odds), days=days, error=error)


def _rests_on(facts: Mapping[str, object]) -> str:
    """What went in that has been neither measured nor told."""
    parts = []
    if facts["not_measured"]:
        parts.append(_("the draw in {phases}").format(phases=_phases(facts["not_measured"])))
    if facts["start_assumed"]:
        parts.append(_("the charge at the start, taken as full"))
    if facts["fixed"]:
        parts.append(_("a range of hours for {phases}").format(phases=_phases(facts["fixed"])))
    if facts["air_assumed"]:
        parts.append(_("the air temperature"))
    return _(". Not measured or not told: {what}").format(what="; ".join(parts)) if parts else ""


def _phases(phases: object) -> str:
    assert isinstance(phases, tuple)  # noqa: S101  # put there by the chance findings
    return ", ".join(_(phase) for phase in phases)


def _caller(finding: Finding, names: Names) -> Parts:
    title = _("A call for help at the end of the day")
    return title, "", _caller_sentence(finding, names) + _not_counted(finding, names)


def _caller_sentence(finding: Finding, names: Names) -> str:
    if finding.facts["reason"] == NO_PHASES and finding.state is State.NOT_KNOWN:
        return _("not known: the outing has no phases with durations yet, so no end")
    if finding.state is State.NOT_KNOWN:
        text = _("not known: energy or draw not on record: {names}")
        return text.format(names=_listed_by_name(finding.facts["unknown"], names))
    if not finding.facts["likely"]:
        return _("nothing on the list that could call for help is alive at the end")
    listed = _listed_by_name(finding.facts["likely"], names)
    if finding.state is State.LOOK:
        return _("{names} in the likely case, none on a high day").format(names=listed)
    return _("{names} alive at the end").format(names=listed)


def _not_counted(finding: Finding, names: Names) -> str:
    said = ""
    if finding.facts["swollen"]:
        said += _("; not counted, swollen: {names}").format(names=_listed_by_name(finding.facts["swollen"], names))
    if finding.facts["stopped"]:
        said += _("; not counted, stop open: {names}").format(names=_listed_by_name(finding.facts["stopped"], names))
    return said


def _listed_by_name(items: object, names: Names) -> str:
    assert isinstance(items, tuple)  # noqa: S101  # put there by the power findings
    return ", ".join(names.get(name, name) for name in items)


SAY: dict[str, Callable[[Finding, Names], Parts]] = {
    "power.phone_can_call": _phone,
    "power.any_can_call": _any,
    "power.caller": _caller,
}
"""What is said of each code."""
