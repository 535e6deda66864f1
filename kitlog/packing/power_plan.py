"""Shares, plugs and start charges as a pilot plans them: what an outing says of one item, and the outing with another.

What an outing does not say of an item and a phase is as usual for the item; both are given as shares that add up to 1,
with the time in which the item is off named as `OFF_WAY`.
"""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from kitlog.budget.power.checks import SHARES_TOLERANCE
from kitlog.budget.power.describe_presets import RADIO_5_5_90, RADIO_5_25_70, SharePreset
from kitlog.kit.facets import WayOfUse
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, Phase, StartCharge, Use
from kitlog.packing.draws import OFF_WAY, way_shares

Shares = Mapping[str, float]
"""Way of use -> share of the time in a phase, 0..1."""

PRESETS: Mapping[Kind, tuple[SharePreset, ...]] = {Kind.RADIO: (RADIO_5_5_90, RADIO_5_25_70)}
"""Shares that are commonly planned with, by kind."""

_SAYS = {
    "transmit": re.compile(r"\btransmi|\btalk|\bsend"),
    "receive": re.compile(r"\breceiv|\blisten|\bempf[aä]ng"),
    "standby": re.compile(r"\bstand-?by\b|\bbereit"),
}
"""By what a way of use is known for the one that a preset means, in English and German."""


def usual_shares(item: Item, phase: Phase, outing: Outing, library: Library) -> Shares:
    """What the item does in a phase if the outing says nothing of it; empty: not known."""
    return _with_off(way_shares(item, phase, outing.model_copy(update={"uses": ()}), library))


def planned_shares(item: Item, phase: Phase, outing: Outing) -> Shares | None:
    """What the outing says of the item in a phase, ways that the item no longer has included; None: as usual."""
    shares: dict[str, float] = {}
    for use in outing.uses:
        if (use.item, use.phase) == (item.id, phase.name):
            shares[use.way] = shares.get(use.way, 0.0) + use.share
    if shares and not any(shares.values()):
        return {OFF_WAY: 1.0}
    return shares or None


def adds_up(item: Item, outing: Outing) -> bool:
    """Whether what the outing says of the item adds up to 1 in each phase, in ways of use that it has."""
    known = {way.name for way in item.battery.ways} | {OFF_WAY} if item.battery else {OFF_WAY}
    planned = [shares for phase in outing.phases if (shares := planned_shares(item, phase, outing)) is not None]
    return all(abs(sum(shares.values()) - 1) <= SHARES_TOLERANCE and shares.keys() <= known for shares in planned)


def with_shares(outing: Outing, item: str, phase: str, shares: Shares | None) -> Outing:
    """The outing with other shares of an item in a phase; None takes back what it said of them."""
    kept = (use for use in outing.uses if (use.item, use.phase) != (item, phase))
    new = (Use(item=item, phase=phase, way=way, share=share) for way, share in (shares or {}).items() if share)
    return outing.model_copy(update={"uses": (*kept, *new)})


def with_start(outing: Outing, item: str, start: StartCharge | None) -> Outing:
    """The outing with another charge at the start of an item; None is full."""
    starts = [one for one in outing.starts if one.item != item]
    at = next((at for at, one in enumerate(outing.starts) if one.item == item), len(starts))
    if start is not None:
        starts.insert(at, start)
    return outing.model_copy(update={"starts": tuple(starts)})


def with_phases_renamed(outing: Outing, renamed: Mapping[str, str]) -> Outing:
    """The outing whose shares and plugs follow its phases; those of a phase that is gone go with it.

    Args:
        outing: with its phases as they are called now.
        renamed: name now by name before, of each phase that is still there.
    """
    uses = (use.model_copy(update={"phase": renamed[use.phase]}) for use in outing.uses if use.phase in renamed)
    plugs = outing.plugs
    if plugs is not None:
        plugs = tuple(p.model_copy(update={"phase": renamed[p.phase]}) for p in plugs if p.phase in renamed)
    return outing.model_copy(update={"uses": tuple(uses), "plugs": plugs})


@dataclass(frozen=True, slots=True)
class PresetShares:
    """A preset in the words of one item: shares by the names of its own ways; lead: the one that tells it apart."""

    preset: SharePreset
    shares: Shares
    lead: str


def preset_shares(item: Item) -> tuple[PresetShares, ...]:
    """The presets of an item's kind that its ways of use allow, one for each way to transmit."""
    ways = item.battery.ways if item.battery else ()
    return tuple(
        PresetShares(preset, _fitted(preset, lead, ways), lead.name)
        for preset in PRESETS.get(item.kind, ())
        if not lacking_ways(item)
        for lead in _saying(ways, next(iter(preset.shares)))
    )


def lacking_ways(item: Item) -> tuple[str, ...]:
    """What the presets of an item's kind ask for, and no way of use of the item is."""
    ways = item.battery.ways if item.battery else ()
    asked = {word: None for preset in PRESETS.get(item.kind, ()) for word in preset.shares}
    return tuple(word for word in asked if not _saying(ways, word))


def _with_off(known: tuple[Sequence[tuple[WayOfUse, float]], float] | None) -> Shares:
    parts, off = known or ((), 0.0)
    shares: dict[str, float] = {}
    for way, share in parts:
        shares[way.name] = shares.get(way.name, 0.0) + share
    if off > 0:
        shares[OFF_WAY] = shares.get(OFF_WAY, 0.0) + off
    return shares


def _fitted(preset: SharePreset, lead: WayOfUse, ways: Iterable[WayOfUse]) -> Shares:
    """The preset's shares by the ways that go best with the way to transmit: "receive 1 W" with "transmit 1 W"."""
    words = set(lead.name.casefold().split())
    best = {
        word: max(_saying(ways, word), key=lambda way: len(words & set(way.name.casefold().split())))
        for word in list(preset.shares)[1:]
    }
    named = {word: way.name for word, way in best.items()}
    return {named.get(word, lead.name): share for word, share in preset.shares.items()}


def _saying(ways: Iterable[WayOfUse], word: str) -> list[WayOfUse]:
    return [way for way in ways if _SAYS[word].search(way.name.casefold())]
