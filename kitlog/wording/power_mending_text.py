"""What would mend the power of a plan, as words: what to do, hours and chance gained, grams, and what it harms."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from kitlog.budget.power.changes.candidate import Candidate
from kitlog.budget.power.changes.weigh import DeviceGain, Planned
from kitlog.budget.result import Finding, Remedy
from kitlog.packing.assessment import PowerDay
from kitlog.packing.computed_remedies import LEAST_H
from kitlog.packing.power_day import NO_PHASES
from kitlog.packing.power_mending import Mend, Mending
from kitlog.wording.chance_text import odds_text
from kitlog.wording.figures import MINUS, NO_BREAK, mass_text, number_text, with_unit
from kitlog.wording.findings import say
from kitlog.wording.power_chance_text import odds_with_error
from kitlog.wording.power_changes_text import (
    as_planned_texts,
    effect_text,
    first_planned_text,
    lasting_text,
    odds_gain_text,
)
from kitlog.wording.power_lasting_text import all_last_text, charge_text
from kitlog.wording.power_remedies_text import MOST_H, SAY, unknown_mass_text, unknown_start_text
from kitlog.wording.remedies import cautions_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import first_upper

Names = Mapping[str, str]

MOST_BROUGHT = 2
"""So much of what a change would make worse is told."""


@dataclass(frozen=True, slots=True)
class MendWords:
    """One change.

    Attributes:
        what: what to do; hours: gained; chance: gained, or that it is being drawn; mass: what it adds.
        but: what it harms, or what forbids to offer it; empty for nothing.
    """

    what: str
    hours: str
    chance: str
    mass: str
    but: str = ""

    @property
    def said(self) -> str:
        """All but what to do."""
        parts = [self.hours, self.chance, self.mass, self.but]
        return ". ".join(first_upper(part) for part in parts if part) + "."


def mend_words(one: Mend, mending: Mending, names: Names) -> MendWords:
    """What a change does for the devices in trouble, and for the day."""
    return MendWords(
        what=what_text(one, names),
        hours=_hours(one, mending, names),
        chance=_chance(one, mending, names),
        mass=_mass(one.weighed.candidate),
        but=_but(one, names),
    )


def what_text(one: Mend, names: Names) -> str:
    """What to do, as an imperative."""
    candidate = one.weighed.candidate
    bare = Remedy(candidate.code, candidate.ids, candidate.facts)
    return SAY[candidate.code](bare, [names.get(item, item) for item in candidate.ids])


def _hours(one: Mend, mending: Mending, names: Names) -> str:
    gains = [
        _gain(names.get(name, name), gain) for name, gain in one.weighed.devices.items() if name in mending.troubled
    ]
    mended = [
        _("{bank} stays awake").format(bank=names.get(mend.id, mend.id))
        for mend in one.weighed.mends
        if mend.code == "asleep"
    ]
    parts = [*(gain for gain in gains if gain), *dict.fromkeys(mended)]
    said = ", ".join(parts) or _("no hours gained")
    lasting = lasting_text(one.weighed, one.odds)
    return f"{said}; {lasting}" if lasting else said


def _gain(name: str, gain: DeviceGain) -> str:
    likely_h, high_h = gain.gain_h, gain.gain_high_h or 0.0
    if max(abs(likely_h), abs(high_h)) < LEAST_H:
        return ""
    text = _("{device} {likely} on the likely day, {high} on the high day")
    return text.format(device=name, likely=_signed_h(likely_h), high=_signed_h(high_h))


def _signed_h(hours: float) -> str:
    """Hours with their sign, no closer than a tenth and no further than a day."""
    size = min(abs(hours), MOST_H)
    if size < LEAST_H:
        return with_unit(0, "h")
    text = _("over {hours}") if abs(hours) > MOST_H else "{hours}"
    sign = "+" if hours > 0 else MINUS
    return text.format(hours=f"{sign}{with_unit(size, 'h', 0 if size == MOST_H else 1)}")


def _chance(one: Mend, mending: Mending, names: Names) -> str:
    if one.odds is None:
        return _("the chance is still being drawn")
    own = [
        _("{device} lasts on {after} of the days instead of {before}").format(
            device=names.get(name, name), after=odds_text(after), before=odds_text(before)
        )
        for name, (before, after) in one.odds.devices.items()
        if name in mending.troubled and before != after
    ]
    return "; ".join([odds_gain_text(one.odds), *own]).replace(" ±", f"{NO_BREAK}±").replace("± ", f"±{NO_BREAK}")


def _mass(candidate: Candidate) -> str:
    mass_g = candidate.mass_g
    if mass_g is None:
        return unknown_mass_text(candidate.code, candidate.facts) or _("what it weighs is not known")
    if round(mass_g) == 0:
        return _("adds no weight")
    return f"{'+' if mass_g > 0 else MINUS}{mass_text(abs(mass_g))}"


def _but(one: Mend, names: Names) -> str:
    if one.brings:
        return _("not offered, as it would bring: {what}").format(what=_brought(one.brings, names))
    harms = [effect_text(effect, names) for effect in one.weighed.harms]
    candidate = one.weighed.candidate
    unknown = [candidate.ids[1]] if "start_unknown" in candidate.facts else []
    said = [unknown_start_text(names.get(bank, bank)) for bank in unknown]
    said += [_("but then {harms}").format(harms="; ".join(harms))] if harms else []
    if cautions := cautions_text(one.remedy, names):
        said.append(_("look at {cautions}").format(cautions=cautions))
    return "; ".join(said)


def _brought(findings: tuple[Finding, ...], names: Names) -> str:
    said = [say(finding, names) for finding in findings[:MOST_BROUGHT]]
    parts = [f"{one.title} ({one.sentence})" if one.sentence else one.title for one in said]
    if left := len(findings) - len(said):
        parts.append(ngettext("{n} more", "{n} more", left).format(n=left))
    return ", ".join(parts)


def planned_texts(mending: Mending, names: Names) -> Iterator[str]:
    """How it stands as planned: cases, chance, and what could not be reckoned with."""
    if mending.planned is None:
        yield _("Nothing could be simulated, so nothing was tried.")
        return
    if mending.planned.trouble or mending.planned.sleepy:
        yield from (f"{text}." for text in as_planned_texts(mending.planned, names))
    elif not mending.nothing_to_mend:
        yield f"{first_planned_text(mending.planned, is_seldom=True)}."
    if keep := _keep(mending.planned, names):
        yield _("Charge to keep at the end: {devices}.").format(devices=keep)
    if mending.odds is None:
        return
    text = _("All devices last on {odds} of {n}.")
    days = ngettext("{n} day drawn", "{n} days drawn", mending.odds.days).format(n=number_text(mending.odds.days))
    yield text.format(odds=odds_with_error(mending.odds.all_last), n=days)
    if seldom := mending.seldom - mending.planned.trouble:
        text = _("Too seldom to rely on: {devices}.")
        yield text.format(devices=", ".join(sorted(names.get(name, name) for name in seldom)))


def _keep(planned: Planned, names: Names) -> str:
    kept = [
        f"{names.get(target.device, target.device)} {charge_text(target.min_soc)}"
        for target in planned.targets
        if target.min_soc
    ]
    return ", ".join(kept)


def verdict_text(mending: Mending) -> str:
    """Whether there is anything to mend, and with what; empty while that is being found out."""
    if mending.nothing_to_mend and mending.planned is not None:
        lasts = all_last_text(fare.least_soc for fare in mending.planned.likely.fares.values())
        text = _(
            "Nothing to mend in what was simulated: {all_lasts}, on the high day too; over the days drawn it lasts "
            "often enough."
        )
        return text.format(all_lasts=lasts)
    if not mending.complete or mending.planned is None:
        return ""
    if not any(one.gains for one in mending.mends):
        return _("Nothing that is to hand would help.")
    return ""


def vain_text(mending: Mending, names: Names) -> str:
    """Changes that were tried and gain nothing; empty without any."""
    vain = [what_text(one, names) for one in mending.mends if not one.gains]
    return _("Tried too, without gain: {what}.").format(what="; ".join(vain)) if vain else ""


def unknown_text(power: PowerDay, names: Names) -> str:
    """What could not or must not be reckoned with; empty without any."""
    said = (
        (power.unknown, _("Not known, and in none of these answers: {devices}.")),
        (power.swollen, _("Swollen, not to be taken, and in none of these answers: {devices}.")),
    )
    return " ".join(
        text.format(devices=", ".join(names.get(item, item) for item in items)) for items, text in said if items
    )


def not_simulated_text(power: PowerDay) -> str:
    """Why nothing could be simulated."""
    if power.reason == NO_PHASES:
        return _("The outing has no phases with durations yet: nothing can be simulated.")
    return _("Nothing on the list that counts has a battery with its figures: nothing can be simulated.")
