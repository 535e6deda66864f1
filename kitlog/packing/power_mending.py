"""What would mend the power of a plan: each change to hand, run, tried on the whole outing, drawn over many days."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field, replace

from kitlog.budget.power.chance import too_seldom
from kitlog.budget.power.changes.odds import FEW_DAYS, SURELY, OddsGain
from kitlog.budget.power.changes.ranking import rank_by_chance
from kitlog.budget.power.changes.weigh import Planned, Weighed
from kitlog.budget.power.forecast import Forecast, forecasts
from kitlog.budget.result import Finding, Remedy
from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Assessment
from kitlog.packing.checked_remedies import brought, cautions_brought, with_cautions
from kitlog.packing.computed_remedies import LEAST_H
from kitlog.packing.own_banks import carried
from kitlog.packing.power_changes import change_odds, planned_power, weighed_changes
from kitlog.packing.power_question import SEED, forecast_query
from kitlog.packing.power_remedies import power_remedy
from kitlog.packing.remedied import remedied

SLICE_DAYS = 25
"""Days drawn between two answers: so often whoever asks can look whether anybody still wants to know."""


_HOURS = frozenset({"off", "off_at_end", "off_longer"})
"""Troubles that are told in hours: one of them that ends is a help where hours are gained."""


@dataclass(frozen=True, slots=True)
class PowerAsked:
    """A plan of which something is asked, with all that the answer needs; may be handed to another thread.

    Attributes:
        judge: assesses other plans of the same outing (`assess.judge_of`).
    """

    assessment: Assessment
    items: tuple[Item, ...]
    library: Library
    judge: Callable[[Outing], Assessment] = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Mend:
    """One change.

    Attributes:
        remedy: the same, as findings offer it, with its cautions.
        brings: what it would make worse elsewhere in the outing; such a change is shown, and not offered.
        odds: how much oftener the day lasts; None: not drawn yet.
    """

    weighed: Weighed
    remedy: Remedy
    brings: tuple[Finding, ...] = ()
    odds: OddsGain | None = None

    @property
    def gains(self) -> bool:
        """Whether it saves hours, ends a trouble or lets the day last oftener; as long as that is not known, yes.

        What goes off later and is then off for longer in all has gained no hours.
        """
        one = self.weighed
        gained_h = max((max(device.gain_h, device.gain_high_h or 0.0) for device in one.devices.values()), default=0.0)
        saves = min(gained_h, max(one.cut_h, one.cut_high_h or 0.0)) >= LEAST_H
        if saves or any(mend.code not in _HOURS for mend in one.mends) or self.odds is None:
            return True
        return self.odds.surely > 0 or any(
            after.probability - before.probability > SURELY * (before.standard_error + after.standard_error)
            for before, after in self.odds.devices.values()
        )


@dataclass(frozen=True, slots=True)
class Mending:
    """What would help, as far as it is known.

    Attributes:
        planned: the day as planned with the charge to keep of each device; None: nothing was simulated.
        odds: the chance as planned, on the first of the days that a forecast draws; None: not drawn yet.
        seldom: devices that last on too few of the days drawn, whether they last in the likely and high case or not.
        mends: the changes, best first; complete: all of them drawn, and sorted by what came of it.
    """

    planned: Planned | None
    odds: Forecast | None = None
    seldom: frozenset[str] = frozenset()
    mends: tuple[Mend, ...] = ()
    complete: bool = False

    @property
    def troubled(self) -> frozenset[str]:
        """Devices that do not last in a case, or too seldom."""
        return self.seldom | (self.planned.trouble if self.planned else frozenset())

    @property
    def nothing_to_mend(self) -> bool:
        """Whether all that could be reckoned lasts in both cases and by chance, and every bank stays awake."""
        drawn = self.planned is not None and self.odds is not None and self.odds.is_final
        return drawn and not self.troubled and not (self.planned and self.planned.sleepy)

    @property
    def drawn(self) -> int:
        """How many of the changes have been drawn."""
        return sum(one.odds is not None for one in self.mends)


def power_mending(asked: PowerAsked, *, days: int = FEW_DAYS, seed: int = SEED) -> Iterator[Mending]:
    """What would help, better known each time; the last one is complete. Not for the window's thread.

    Sorted by `weigh` until all are drawn. Then first what makes nothing else worse, then what makes all last in both
    cases, then in the likely one, what gives nothing up, what harms least, what surely makes the day last oftener, by
    how much; else as before, by hours and grams.

    Args:
        asked: the plan.
        days: how many are drawn, as planned and with each change.
        seed: the same seed gives the same days.

    Raises:
        InputFault: the day contradicts itself.
    """
    planned = planned_power(asked.assessment)
    if planned is None:
        yield Mending(None, complete=True)
        return
    found = Mending(planned)
    for odds in _as_planned(asked, days, seed):
        found = replace(found, odds=odds)
        yield found
    found = replace(found, seldom=_seldom(found.odds))
    weighed = weighed_changes(asked.assessment, asked.items, asked.library, found.seldom)
    yield from _drawn(replace(found, mends=tuple(_mend(one, asked) for one in weighed)), asked, days, seed)


def _as_planned(asked: PowerAsked, days: int, seed: int) -> Iterator[Forecast]:
    assessment, power = asked.assessment, asked.assessment.power
    items = carried(assessment)
    assert power.planned is not None  # noqa: S101  # asked by the caller, told to the type checker
    query = forecast_query(assessment.outing, power, items, asked.library, days=days, seed=seed)
    return forecasts(power.planned, query.model_copy(update={"fan_steps": None}), SLICE_DAYS, SLICE_DAYS)


def _seldom(odds: Forecast | None) -> frozenset[str]:
    return too_seldom({name: device.lasts for name, device in odds.devices.items()} if odds else {})


def _mend(weighed: Weighed, asked: PowerAsked) -> Mend:
    remedy = power_remedy(weighed)
    plan = remedied(asked.assessment, remedy, {item.id: item for item in asked.items}, asked.library)
    if plan is None:
        return Mend(weighed, remedy)
    after = asked.judge(plan)
    brings = brought(asked.assessment, after)
    cautions = () if brings else cautions_brought(asked.assessment, after)
    return Mend(weighed, with_cautions(remedy, cautions), brings)


def _drawn(found: Mending, asked: PowerAsked, days: int, seed: int) -> Iterator[Mending]:
    yield found
    mends = list(found.mends)
    gains = change_odds(asked.assessment, asked.library, [one.weighed for one in mends], days=days, seed=seed)
    for place, gain in enumerate(gains):
        mends[place] = replace(mends[place], odds=gain)
        yield replace(found, mends=tuple(mends))
    yield replace(found, mends=_distinct(sorted(mends, key=_rank)), complete=True)


def _distinct(mends: Iterable[Mend]) -> tuple[Mend, ...]:
    """Of changes of one sort to the same things, from which the same comes to 0.1 h: the first."""
    return tuple({_came_of(one): one for one in reversed([*mends])}.values())[::-1]


def _came_of(one: Mend) -> tuple[object, ...]:
    weighed, odds = one.weighed, one.odds
    gain = None if odds is None else (odds.gain, odds.after)
    hours = tuple((round(d.gain_h, 1), round(d.gain_high_h or 0.0, 1)) for d in weighed.devices.values())
    candidate = weighed.candidate
    facts = {name: fact for name, fact in candidate.facts.items() if name != "phases"}
    return candidate.code, candidate.ids, repr(facts), candidate.mass_g, hours, gain, bool(one.brings)


def _rank(one: Mend) -> tuple[float, ...]:
    return bool(one.brings), *rank_by_chance(one.weighed, one.odds)
