"""The chance that the phone can still call at the end of the retrieve, as words."""

from collections.abc import Callable, Mapping

from kitlog.budget.power.chance import Odds
from kitlog.budget.result import Finding, State
from kitlog.wording.chance_text import error_text, odds_text
from kitlog.wording.figures import hours_text, number_text
from kitlog.wording.translate import N_, _

Names = Mapping[str, str]
Parts = tuple[str, str, str]


def _named(finding: Finding, names: Names) -> str:
    return ", ".join(names.get(item, item) for item in finding.items)


def _phone(finding: Finding, names: Names) -> Parts:
    if finding.state is State.NOT_KNOWN:
        text = _("whether it can still call at the end is not known: its Wh or its draw is not on record")
        return _named(finding, names), "", text
    title = _("{phone} can still call at the end of the retrieve")
    title = title if finding.facts["retrieve"] else _("{phone} can still call at the end of the day")
    return title.format(phone=_named(finding, names)), odds_text(_odds(finding)), _sentence(finding)


def _any(finding: Finding, names: Names) -> Parts:
    title = _("Something can still call for help at the end")
    text = _("at least one of {devices}: {rest}").format(devices=_named(finding, names), rest=_sentence(finding))
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


SAY: dict[str, Callable[[Finding, Names], Parts]] = {
    "power.phone_can_call": _phone,
    "power.any_can_call": _any,
}
"""What is said of each code."""
