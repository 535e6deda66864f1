"""How much oftener the day would last with a change: both days are drawn with the same random numbers.

With numbers in common, a difference shows long before it would between two separate draws.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from math import sqrt

from kitlog.budget.power.chance import Odds, least_soc, odds_of, too_seldom
from kitlog.budget.power.changes.candidate import Candidate
from kitlog.budget.power.check_query import check_query
from kitlog.budget.power.checks import check_day
from kitlog.budget.power.day import Day, Device, Modes
from kitlog.budget.power.forecast_draws import Uncertain
from kitlog.budget.power.question import Chance, Target, Triple
from kitlog.budget.power.targets import lasts

FEW_DAYS = 500
"""Days drawn for a first estimate: its standard error is at most 0.022."""


SURELY = 2.0
"""A gain in chance of so many standard errors is taken for one (95 times of 100)."""


@dataclass(frozen=True, slots=True)
class OddsGain:
    """The chance that all devices that matter last, as planned and with a change, on the same days.

    Attributes:
        before, after: with the change, those given up are not asked.
        devices: by device that matters and is not given up: before and after.
        least_soc: by device that matters, the charge asked for at the end, 0..1.
        gain: after less before; gain_error: its standard error, from the days on which only one of the two lasts.
    """

    candidate: Candidate
    before: Odds
    after: Odds
    devices: Mapping[str, tuple[Odds, Odds]]
    least_soc: Mapping[str, float]
    gain: float
    gain_error: float

    @property
    def surely(self) -> float:
        """The gain, or 0 where so few days drawn may as well have made it."""
        return self.gain if abs(self.gain) > SURELY * self.gain_error else 0.0


@dataclass(frozen=True, slots=True)
class PlannedOdds:
    """How often the day lasts as planned: all devices that matter together, and each of them.

    `least_soc`: by device that matters, the charge asked for at the end, 0..1.
    """

    all_last: Odds
    devices: Mapping[str, Odds]
    least_soc: Mapping[str, float]

    @property
    def seldom(self) -> frozenset[str]:
        """Devices that last on too few of the days drawn, whether they last in the likely case or not."""
        return too_seldom(self.devices)


def planned_odds(day: Day, query: Chance, targets: Iterable[Target], days: int = FEW_DAYS) -> PlannedOdds:
    """Draw the day as planned: the same days that `each_odds` draws for each candidate.

    Raises:
        InputFault: the day or the question contradicts itself (`checks`).
    """
    least = _checked(day, query, targets)
    held = list(_held(day, query, least, days))
    return PlannedOdds(
        all_last=odds_of(sum(all(one.values()) for one in held), days),
        devices={name: odds_of(sum(one[name] for one in held), days) for name in held[0]},
        least_soc=least,
    )


def odds(
    day: Day, tried: Iterable[Candidate], query: Chance, targets: Iterable[Target], days: int = FEW_DAYS
) -> tuple[OddsGain, ...]:
    """The gain of each candidate, as `each_odds` gives them.

    Raises:
        InputFault: the day or the question contradicts itself (`checks`), or a candidate makes such a day.
    """
    return tuple(each_odds(day, tried, query, targets, days))


def each_odds(
    day: Day, tried: Iterable[Candidate], query: Chance, targets: Iterable[Target], days: int = FEW_DAYS
) -> Iterator[OddsGain]:
    """Draw `days` days (the `n` of the query is not used) with the seed of the query, for each candidate the same ones.

    The day as planned is drawn when the first gain is asked for, each candidate when its own is.

    Raises:
        InputFault: at once: the day or the question contradicts itself (`checks`); later: a candidate makes such a day.
    """
    return _each(day, tried, query, _checked(day, query, targets), days)


def _checked(day: Day, query: Chance, targets: Iterable[Target]) -> Mapping[str, float]:
    """The charge with which each device that matters must end."""
    check_day(day)
    check_query(query, day)
    return {target.device: target.min_soc for target in targets} or {
        device.id: least_soc(query, device.id) for device in day.devices
    }


def _each(
    day: Day, tried: Iterable[Candidate], query: Chance, least: Mapping[str, float], days: int
) -> Iterator[OddsGain]:
    before = list(_held(day, query, least, days))
    for candidate in tried:
        yield _gain(candidate, before, _changed(day, candidate, query, least, days), least)


Held = dict[str, bool]
"""Which devices lasted on one day."""


def _held(day: Day, query: Chance, least: Mapping[str, float], days: int) -> Iterator[Held]:
    index = {device.id: at for at, device in enumerate(day.devices)}
    for run in Uncertain(day, query).days(days, query.seed):
        yield {name: lasts(run, index[name], min_soc) for name, min_soc in least.items()}


def _changed(day: Day, candidate: Candidate, query: Chance, least: Mapping[str, float], days: int) -> list[Held]:
    changed = candidate.make(day)
    check_day(changed)
    asked = {name: min_soc for name, min_soc in least.items() if name not in candidate.gives_up}
    return list(_held(changed, query_after(query, day, changed), asked, days))


def _gain(candidate: Candidate, before: list[Held], after: list[Held], least: Mapping[str, float]) -> OddsGain:
    days = len(before)
    was, now = [all(held.values()) for held in before], [all(held.values()) for held in after]
    pairs = list(zip(was, now, strict=True))
    won, lost = pairs.count((False, True)), pairs.count((True, False))
    gain = (won - lost) / days
    return OddsGain(
        candidate=candidate,
        before=odds_of(sum(was), days),
        after=odds_of(sum(now), days),
        devices={
            name: (odds_of(sum(one[name] for one in before), days), odds_of(sum(one[name] for one in after), days))
            for name in after[0]
        },
        least_soc={name: least[name] for name in after[0]},
        gain=gain,
        gain_error=sqrt(max(0.0, (won + lost) / days - gain * gain) / days),
    )


def query_after(query: Chance, before: Day, after: Day) -> Chance:
    """The question for the changed day: as many figures in the same order, so that each draw meets the same figure.

    An uncertain draw that was changed is uncertain in the same proportion about the new one; one that was switched off
    is certainly nothing. A start that was changed, or that of another bank, is certain.
    """
    old = {device.id: device for device in before.devices}
    draws = {
        device.id: {
            phase: _scaled(triple, _load_w(old[device.id], phase), _load_w(device, phase))
            for phase, triple in query.draws[device.id].items()
        }
        for device in after.devices
        if device.id in query.draws
    }
    start = {}
    for was, now in zip((*before.devices, *before.banks), (*after.devices, *after.banks), strict=False):
        if was.id in query.start:
            same = (was.id, was.start) == (now.id, now.start)
            start[now.id] = query.start[was.id] if same else (now.start,) * 3
    return query.model_copy(update={"draws": draws, "start": start})


def _load_w(device: Device, phase: str) -> float:
    draw = device.draw_W.get(phase, 0.0)
    return draw.mean_w if isinstance(draw, Modes) else draw


def _scaled(triple: Triple, was_w: float, now_w: float) -> Triple:
    if was_w == now_w:
        return triple
    if was_w == 0.0:
        return (now_w, now_w, now_w)
    low, likely, high = (watts * now_w / was_w for watts in triple)
    return (low, likely, high)
