"""Remedies of power findings, computed: the changes that help, in the place of what could be advised of any day."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import inf

from kitlog.budget.power.changes.weigh import Weighed
from kitlog.budget.power.day import Day
from kitlog.budget.power.result import DayResult
from kitlog.budget.power.simulate import simulate
from kitlog.budget.result import Finding, Remedy, State
from kitlog.kit.item import Item
from kitlog.kit.kinds import PhaseWay
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment
from kitlog.packing.landing_charge import landing_pct
from kitlog.packing.power_changes import weighed_changes
from kitlog.packing.power_remedies import is_computed, power_remedy

MOST = 3
"""Remedies of one finding. A choice: more is a list to be studied."""

LEAST_H = 0.05
"""A change that gains less, h, is not worth a sentence. A choice: three minutes."""

LEAST_SHARE = 0.1
"""One that does not make a device last takes at least so much off what it is short. A choice."""

LEAST_POINTS = 1.0
"""The same for the charge at the landing, in points of charge."""

_DEVICE_CODES = frozenset({"power.device", "power.no_reserve"})
_GENERIC = frozenset({"draw_less", "load_bank"})

Rank = tuple[float, ...]
Told = Mapping[str, object]


def with_power_changes(judged: Assessment, items: Iterable[Item], library: Library) -> tuple[Finding, ...]:
    """The findings, those about power that are no good news with computed remedies before their others.

    Changes are run only where something is in trouble: at most 60 runs of the day, and as many more for a phone that is
    low at the landing.
    """
    helped = {name for finding in judged.findings for name in _helped(finding, judged)}
    sleepy = any(finding.code == "power.bank_sleeps" for finding in judged.findings)
    if not helped and not sleepy:
        return judged.findings
    made = _Remedies(judged, weighed_changes(judged, items, library, helped))
    return tuple(
        replace(finding, remedies=(*made.of(finding), *finding.remedies))
        if finding.state is not State.FINE
        else finding
        for finding in judged.findings
    )


def settled(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """The findings without general advice where a computed remedy is left."""
    return tuple(
        replace(finding, remedies=tuple(one for one in finding.remedies if one.code not in _GENERIC))
        if any(is_computed(one) for one in finding.remedies)
        else finding
        for finding in findings
    )


def _helped(finding: Finding, judged: Assessment) -> tuple[str, ...]:
    """Devices of the day that a finding wants helped."""
    if finding.state is State.FINE or judged.power.planned is None:
        return ()
    there = {device.id for device in judged.power.planned.devices}
    named = {"power.phone_at_landing": finding.items}.get(
        finding.code, (finding.subject,) if finding.code in _DEVICE_CODES else ()
    )
    return tuple(name for name in named if name in there)


@dataclass(frozen=True, slots=True)
class _Option:
    """A change, how it ranks for a finding (least is best), and what it does for it."""

    rank: Rank
    weighed: Weighed
    told: Told


class _Remedies:
    def __init__(self, judged: Assessment, weighed: Sequence[Weighed]) -> None:
        self._judged, self._weighed = judged, weighed
        self._flights = frozenset(p.name for p in judged.outing.phases if p.way is PhaseWay.FLIGHT)

    def of(self, finding: Finding) -> list[Remedy]:
        """The best computed remedies of a finding, of each sort and device one."""
        options: Callable[[Finding], Iterable[_Option | None]] | None = {
            "power.device": self._for_device,
            "power.no_reserve": self._for_device,
            "power.phone_at_landing": self._for_landing,
            "power.bank_sleeps": self._for_bank,
            "power.caller": self._for_callers,
        }.get(finding.code)
        found = [] if options is None else [option for option in options(finding) if option is not None]
        best: dict[tuple[str, str], _Option] = {}
        for option in sorted(found, key=lambda one: one.rank):
            best.setdefault((option.weighed.candidate.code, option.weighed.candidate.ids[0]), option)
        return [power_remedy(option.weighed, option.told) for option in [*best.values()][:MOST]]

    def _for_device(self, finding: Finding) -> Iterable[_Option | None]:
        return (_for_device(one, finding, self._cost(one)) for one in self._weighed)

    def _for_callers(self, finding: Finding) -> Iterable[_Option | None]:
        """Those that let something that calls last."""
        callers = [one for one in self._judged.findings if one.code == "power.device" and one.subject in finding.items]
        for caller in callers:
            for option in self._for_device(caller):
                if option is not None and option.told["lasts"]:
                    yield replace(option, told={**option.told, "caller": caller.subject})

    def _for_bank(self, finding: Finding) -> Iterable[_Option | None]:
        for one in self._weighed:
            if any(mend.code == "asleep" and mend.id == finding.subject for mend in one.mends):
                yield _Option((len(one.harms), *self._cost(one)), one, {"awake": finding.subject})

    def _for_landing(self, finding: Finding) -> Iterable[_Option | None]:
        power = self._judged.power
        if power.planned is None or power.longest is None:
            return
        for one in self._weighed:
            likely_pct = self._landing_pct(one, power.planned, finding, "likely_h")
            high_pct = self._landing_pct(one, power.longest, finding, "high_h")
            yield _for_landing(one, finding, (likely_pct, high_pct), self._cost(one))

    def _cost(self, one: Weighed) -> Rank:
        """What a change costs: a device, being followed in the air, a plug in the air, then grams (unknown: last)."""
        candidate = one.candidate
        phases = candidate.facts.get("phases", ())
        plugs = candidate.code in {"plug_too", "add_bank"} and isinstance(phases, tuple)
        in_air = plugs and not self._flights.isdisjoint(phases if isinstance(phases, tuple) else ())
        unseen = candidate.code == "flight_mode"
        return (bool(candidate.gives_up), unseen, in_air, inf if candidate.mass_g is None else candidate.mass_g)

    def _landing_pct(self, one: Weighed, day: Day, finding: Finding, case: str) -> float:
        result: DayResult = simulate(one.candidate.make(day))
        return landing_pct(finding.items, result, self._judged.outing.phases, case)


def _for_device(one: Weighed, finding: Finding, cost: Rank) -> _Option | None:
    """Those that make it last, the cheapest first; then the others, by what they gain in the case in trouble."""
    gain = one.devices.get(finding.subject)
    if gain is None or gain.high is None:
        return None
    likely = _in_trouble_likely(finding)
    gain_h = gain.gain_h if likely else gain.gain_high_h or 0.0
    fare = gain.likely if likely else gain.high
    if gain_h < max(LEAST_H, 0.0 if fare.lasts else LEAST_SHARE * fare.short_h):
        return None
    told = {
        "gain_h": gain_h,
        "in_case": "likely" if likely else "high",
        "lasts": gain.likely.lasts,
        "lasts_high": gain.high.lasts,
        "least_soc": fare.least_soc,
        "still_short_h": fare.short_h,
        "end_pct": None if fare.soc_end is None else 100 * fare.soc_end,
    }
    order = (*cost, -gain_h) if fare.lasts else (-round(gain_h, 3), *cost)
    return _Option(
        (not (gain.likely.lasts and gain.high.lasts), not gain.likely.lasts, len(one.harms), *order), one, told
    )


def _in_trouble_likely(finding: Finding) -> bool:
    """Whether the likely case is in trouble already, or all that the finding is about."""
    if finding.code != "power.device":
        return True
    facts = finding.facts
    end_pct, keep_pct = facts["end_pct_likely"], facts["keep_pct"]
    low = isinstance(end_pct, float) and isinstance(keep_pct, float) and end_pct < keep_pct
    return facts["off_h_likely"] is not None or low


def _for_landing(one: Weighed, finding: Finding, charges: tuple[float, float], cost: Rank) -> _Option | None:
    """Those with which it is high enough at the landing, the cheapest first; then by the charge shown."""
    likely_pct, high_pct = charges
    was_high = finding.facts["high_pct"]
    gained = likely_pct - (finding.figure or 0.0) + high_pct - (was_high if isinstance(was_high, float) else 0.0)
    if gained < LEAST_POINTS or likely_pct <= 0:
        return None
    least, least_high = (float(str(finding.facts[name])) for name in ("least_pct", "least_high_pct"))
    enough, enough_high = likely_pct >= least, high_pct >= least_high
    told = {"landing_pct": likely_pct, "landing_high_pct": high_pct}
    order = (*cost, -likely_pct) if enough else (-likely_pct, *cost)
    return _Option((not (enough and enough_high), not enough, len(one.harms), *order), one, told)
