"""What would help, as lines: what to do - what it gains in hours and probability - what it weighs in grams."""

from collections.abc import Collection, Iterator, Mapping

from kitlog.budget.power.chance import too_seldom
from kitlog.budget.power.changes.effect import Effect
from kitlog.budget.power.changes.odds import OddsGain
from kitlog.budget.power.changes.outcome import Fare
from kitlog.budget.power.changes.weigh import Planned, Weighed
from kitlog.budget.power_ask.answers import ChangesFound
from kitlog.budget.result import Remedy
from kitlog.wording.chance_text import odds_text
from kitlog.wording.columns import paragraph
from kitlog.wording.figures import hours_text, mass_text, number_text
from kitlog.wording.power_chance_text import odds_with_error
from kitlog.wording.power_lasting_text import all_last_text, lasts_text, under_text
from kitlog.wording.power_remedies_text import SAY
from kitlog.wording.translate import _

Names = Mapping[str, str]
NO_NAMES: Names = {}
"""Things are called by their ids."""


def changes_lines(found: ChangesFound) -> Iterator[str]:
    """The day as planned, then each change with what it does besides."""
    for text in (*as_planned_texts(found.planned, seldom=found.seldom), *_seldom_texts(found)):
        yield from paragraph(text)
    if not found.weighed and (found.troubled or found.planned.sleepy):
        yield _("Nothing that is to hand would change that.")
    for place, one in enumerate(found.weighed):
        yield from paragraph(_change(one, found, found.gains[place] if found.gains else None))
        for effect in one.harms:
            yield from paragraph(_("but then {harm}").format(harm=effect_text(effect)), 2)


def _seldom_texts(found: ChangesFound) -> Iterator[str]:
    """What lasts too seldom by chance, as planned."""
    for name in sorted(found.seldom):
        text = _("As planned: {device} {lasts} on {share} of {n} days drawn: too seldom to rely on")
        if found.odds is not None:
            odds, lasts = found.odds.devices[name], lasts_text(found.odds.least_soc[name])
            yield text.format(device=name, lasts=lasts, share=odds_with_error(odds), n=number_text(odds.days))


def as_planned_texts(planned: Planned, names: Names = NO_NAMES, seldom: Collection[str] = frozenset()) -> Iterator[str]:
    """What is in trouble as planned, each in the cases in which it is, or that nothing is.

    `seldom`: devices that last too seldom by chance; they are told elsewhere, and then nothing is said to be well.
    """
    if not planned.trouble and not planned.sleepy:
        yield first_planned_text(planned, is_seldom=bool(seldom))
    for case, outcome in planned.cases.items():
        troubles = [_trouble(names.get(name, name), fare) for name, fare in outcome.fares.items() if not fare.lasts]
        asleep = _("{bank} switches itself off under its least load")
        troubles += [asleep.format(bank=names.get(bank, bank)) for bank in sorted(outcome.sleepy)]
        yield from (_("As planned: {trouble}").format(trouble=_in_case(text, case)) for text in troubles)


def first_planned_text(planned: Planned, *, is_seldom: bool) -> str:
    """That all lasts as planned in the cases that were run; where it does so too seldom, no more than that."""
    lasts = all_last_text(fare.least_soc for fare in planned.likely.fares.values())
    text = _("As planned {all_lasts}; nothing needs changing.")
    if is_seldom:
        text = _("As planned {all_lasts} on the likely and on the high day")
        text = _("As planned {all_lasts} on the likely day") if planned.high is None else text
    return text.format(all_lasts=lasts)


def _trouble(name: str, fare: Fare) -> str:
    if fare.first_off_h is None:
        return f"{name} {under_text(fare.least_soc)}"
    text = _("{device} goes off at {at}, {short} short")
    return text.format(device=name, at=hours_text(fare.first_off_h), short=hours_text(fare.short_h))


def _in_case(text: str, case: str) -> str:
    return _("{text} in the high case").format(text=text) if case == "high" else text


def _change(one: Weighed, found: ChangesFound, gain: OddsGain | None) -> str:
    candidate = one.candidate
    what = SAY[candidate.code](Remedy(candidate.code, candidate.ids, candidate.facts), list(candidate.ids))
    odds = [] if gain is None else [odds_gain_text(gain)]
    parts = [what, _hours(one, found.troubled, gain), *odds, mass_change_text(candidate.mass_g)]
    return " – ".join(parts)


def _hours(one: Weighed, troubled: Collection[str], gain: OddsGain | None) -> str:
    gains = [
        f"{name} {_signed(gain.gain_h)}"
        for name, gain in one.devices.items()
        if name in troubled and abs(gain.gain_h) > 1 / 120
    ]
    lasting = lasting_text(one, gain)
    return "; ".join([", ".join(gains) or _("no hours gained"), *([lasting] if lasting else [])])


def lasting_text(one: Weighed, gain: OddsGain | None) -> str:
    """In which case all last with a change; empty where they do in none. Not without the case if too seldom by chance.

    `gain`: None: the chance was not drawn.
    """
    if not one.all_last:
        return ""
    least_socs = (device.likely.least_soc for device in one.devices.values())
    rest = all_last_text(least_socs, but_some=bool(one.candidate.gives_up))
    if not one.all_last_high and (one.all_last_high is False or _is_seldom(gain)):
        return _("{rest} on the likely day").format(rest=rest)
    return _("{rest} on the likely and on the high day").format(rest=rest) if _is_seldom(gain) else rest


def _is_seldom(gain: OddsGain | None) -> bool:
    return gain is not None and bool(too_seldom({"": gain.after}))


def _signed(hours: float) -> str:
    return f"+{hours_text(hours)}" if hours > 0 else hours_text(hours)


def odds_gain_text(gain: OddsGain) -> str:
    """The chance that all last with a change and without it, and the gain with its standard error in points."""
    all_last = _("all last with their charge to keep") if any(gain.least_soc.values()) else _("all last")
    if not gain.gain and not gain.gain_error:
        return _("{all_last} {after} as before").format(all_last=all_last, after=odds_with_error(gain.after))
    text = _("{all_last} {after} instead of {before} ({points} ± {error} points)")
    points = f"{'+' if gain.gain > 0 else ''}{number_text(100 * gain.gain, 1)}"
    return text.format(
        all_last=all_last,
        after=odds_with_error(gain.after),
        before=odds_text(gain.before),
        points=points,
        error=number_text(100 * gain.gain_error, 1),
    )


def mass_change_text(mass_g: float | None) -> str:
    """What a change adds to the load, with its sign."""
    if mass_g is None:
        return _("mass not known")
    return f"{'+' if mass_g > 0 else ''}{mass_text(mass_g)}"


def effect_text(effect: Effect, names: Names = NO_NAMES) -> str:
    """What goes off, runs low or falls asleep, and in which case."""
    text = {
        "off": _("{name} goes off at {at}"),
        "off_at_end": _("{name} is off at the end, {longer} longer in all"),
        "off_longer": _("{name} is off {longer} longer in all"),
        "under": f"{{name}} {under_text(effect.least_soc)}",
        "empty": _("{name} runs empty at {at}") if effect.at_h else _("{name} is empty from the start"),
        "asleep": _("{name} switches itself off under its least load"),
    }[effect.code]
    at, longer = hours_text(effect.at_h or 0.0), hours_text(effect.longer_h or 0.0)
    return _in_case(text.format(name=names.get(effect.id, effect.id), at=at, longer=longer), effect.case)
