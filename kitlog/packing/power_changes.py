"""What would help the power of an outing: each change that is to hand, run in the likely and the high case."""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import replace

from kitlog.budget.power.changes.candidate import Candidate
from kitlog.budget.power.changes.generate import MOST_CANDIDATES, candidates
from kitlog.budget.power.changes.given import ToHand
from kitlog.budget.power.changes.odds import FEW_DAYS, OddsGain, each_odds
from kitlog.budget.power.changes.weigh import Planned, Weighed, plan, weigh
from kitlog.budget.power.day import Day
from kitlog.budget.power.question import Target
from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment
from kitlog.packing.other_uses import OtherWay, other_ways
from kitlog.packing.own_banks import carried
from kitlog.packing.power_findings import KEEP_AT_END_PCT
from kitlog.packing.power_question import SEED, forecast_query
from kitlog.packing.spare_cables import cable_need
from kitlog.packing.to_hand import to_hand, use_key


def power_targets(items: Iterable[Item], day: Day) -> tuple[Target, ...]:
    """Every device of the day: never off, and at its end the charge to keep (phone 10 %, radio 20 %; no source)."""
    kinds = {item.id: item.kind for item in items}
    return tuple(
        Target(device=device.id, min_soc=KEEP_AT_END_PCT.get(kinds[device.id], 0.0) / 100 if has_cell else 0.0)
        for device in day.devices
        for has_cell in [bool((device.label_wh or 0.0) * device.health)]
    )


def weighed_changes(
    assessment: Assessment, items: Iterable[Item], library: Library, helped: Collection[str] = ()
) -> tuple[Weighed, ...]:
    """The changes that are to hand, run and sorted best first; at most 60 runs of the day.

    Empty where every device lasts with its charge to keep and every bank stays awake, and where nothing was simulated.

    Args:
        assessment: the outing.
        items: the whole kit.
        library: places and kinds.
        helped: devices to be helped though they last.
    """
    planned = planned_power(assessment)
    if planned is None:
        return ()
    trouble = planned.trouble | frozenset(helped)
    if not trouble and not planned.sleepy:
        return ()
    kit = tuple(items)
    hand = to_hand(assessment, kit, library)
    tried = _tried(planned, hand, trouble)
    told = _Told(assessment, kit, library, hand)
    return weigh(planned, (told.of(candidate) for candidate in tried))


def _tried(planned: Planned, hand: ToHand, trouble: Collection[str]) -> tuple[Candidate, ...]:
    """On the ground first; then, where the hands reach a plug in flight, the same plugs there too."""
    day, grounded = planned.likely.day, hand.model_copy(update={"also_plugged": {}})
    on_ground = candidates(day, grounded, trouble, planned.sleepy)
    known = {(one.code, one.ids, one.facts.get("phases")) for one in on_ground}
    in_air = (
        one
        for one in candidates(day, hand, trouble, planned.sleepy)
        if one.code in _PLUGGING and (one.code, one.ids, one.facts["phases"]) not in known
    )
    return (*on_ground, *in_air)[:MOST_CANDIDATES]


_PLUGGING = frozenset({"plug_too", "add_bank"})
_OF_BANKS = _PLUGGING | {"bank_instead"}


def planned_power(assessment: Assessment) -> Planned | None:
    """The likely and the high day with what must last in them; None: nothing was simulated."""
    power = assessment.power
    if power.planned is None:
        return None
    return plan(power.planned, power.longest, power_targets(carried(assessment), power.planned))


def change_odds(
    assessment: Assessment,
    library: Library,
    changes: Iterable[Weighed],
    *,
    devices: Collection[str] = (),
    days: int = FEW_DAYS,
    seed: int = SEED,
) -> Iterator[OddsGain]:
    """How much oftener the day lasts with each change, one after the other, on the same `days` days drawn.

    Lasting is never being off, as in a forecast; the charge to keep is judged in the likely and the high case.
    About as long for each as a forecast of so many days: not for the window's thread. Stop taking, and no more is run.

    Args:
        assessment: the outing.
        library: what can call for help.
        changes: what is asked about.
        devices: those that are to last, all of them on the same day; empty: all of the day.
        days: how many are drawn; the standard error of the gain falls with their root.
        seed: the same seed gives the same days.

    Raises:
        InputFault: the day contradicts itself.
    """
    day = assessment.power.planned
    if day is None:
        return iter(())
    items = carried(assessment)
    query = forecast_query(assessment.outing, assessment.power, items, library, days=days, seed=seed)
    targets = [Target(device=device.id) for device in day.devices if not devices or device.id in devices]
    return each_odds(day, (one.candidate for one in changes), query, targets, days)


class _Told:
    """Completes a candidate: the pilot's own words for a way of use, the mass of the very cable."""

    def __init__(self, assessment: Assessment, kit: tuple[Item, ...], library: Library, hand: ToHand) -> None:
        self._assessment, self._kit = assessment, kit
        self._items: Mapping[str, Item] = {item.id: item for item in kit}
        self._unknown_starts = {start.item for start in assessment.outing.starts if start.is_unknown}
        self._bank_g = {spare.bank.id: spare.mass_g for spare in hand.spare_banks}
        self._ways: dict[tuple[str, str], OtherWay] = {
            (item.id, use_key(way)): way
            for item in carried(assessment)
            for way in other_ways(item, assessment.outing, library)
        }

    def of(self, candidate: Candidate) -> Candidate:
        """The candidate with all that its sentence needs."""
        way = self._ways.get((candidate.ids[0], str(candidate.facts.get("use", ""))))
        if way is not None:
            said = {"use": way.way, "instead": way.instead, "share": way.share, "phases": way.phases}
            return replace(candidate, facts=said)
        if candidate.code in _PLUGGING:
            candidate = replace(candidate, mass_g=self._mass_g(candidate), facts=self._with_least(candidate))
        if candidate.code in _OF_BANKS and candidate.ids[1] in self._unknown_starts:
            return replace(candidate, facts={**candidate.facts, "start_unknown": True})
        return candidate

    def _with_least(self, candidate: Candidate) -> Mapping[str, object]:
        """The facts, with `least_g` where the mass of the bank is known and that of its cable is not."""
        bank_g = self._bank_g.get(candidate.ids[1]) if candidate.code == "add_bank" else None
        if bank_g is None or self._mass_g(candidate) is not None:
            return candidate.facts
        return {**candidate.facts, "least_g": bank_g}

    def _mass_g(self, candidate: Candidate) -> float | None:
        device, bank = (self._items[name] for name in candidate.ids)
        cable_g = cable_need(device, bank, self._assessment, self._kit).mass_g
        if candidate.code == "plug_too" or cable_g is None:
            return cable_g
        bank_g = self._bank_g[bank.id]
        return None if bank_g is None else bank_g + cable_g
