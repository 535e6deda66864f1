"""Other ways of use that a device has: the screen dark most of the time, flight mode, a lower step of the same thing.

What a way is, is read from its name: "screen on", "map" and "bright" light a screen, "screen off" leaves it dark. Two
ways are steps of the same thing if their names are the same but for figures and words such as high and low: "high" and
"low" of a glove, "transmit 5 W" and "transmit 1 W" of a radio. A name that tells nothing is left alone.
"""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal, NamedTuple

from kitlog.kit.facets import WayOfUse
from kitlog.kit.item import Item
from kitlog.kit.kinds import PhaseWay
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, Phase, Use
from kitlog.packing.draws import WayShare, known_draw, way_shares

LIT_SHARE = 0.1
"""Share of the time for which a screen is lit when it is used little (common practice, no source)."""

_FLIGHT_MODE = re.compile(r"flight mode|a(?:ero|ir)plane mode|flugmodus")
_DARK = re.compile(r"(?:screen|display) off|\bdark\b|(?:bildschirm|display) aus|\bdunkel\b")
_LIT = re.compile(r"(?:screen|display) on|\bmap\b|bright|\blit\b|(?:bildschirm|display) an\b|\bkarte\b|\bhell")
_STEP = re.compile(r"\d+(?:[.,]\d+)?|\b(?:lowest|low|medium|middle|high|highest|full|half|niedrig|mittel|hoch)\b")

Code = Literal["use_less", "flight_mode"]


@dataclass(frozen=True, slots=True)
class OtherWay:
    """What a device could do instead.

    Attributes:
        code: `use_less` or `flight_mode`; item: whose.
        way: the way it is then in, most of the time; instead: the way it is in now.
        share: how much of the time of `instead` stays with it, 0..1.
        uses: the shares of each phase that changes, whole.
    """

    code: Code
    item: str
    way: str
    instead: str
    share: float
    uses: tuple[Use, ...]

    @property
    def phases(self) -> tuple[str, ...]:
        """Names of the phases that change."""
        return tuple(dict.fromkeys(use.phase for use in self.uses))


def other_ways(item: Item, outing: Outing, library: Library) -> tuple[OtherWay, ...]:
    """What an item could do instead in the phases of an outing; only what draws less, and whose draw is known."""
    ways = item.battery.ways if item.battery else ()
    if len(ways) < 2:
        return ()
    found: dict[_Change, list[Use]] = {}
    for phase in outing.phases:
        now = way_shares(item, phase, outing, library) or ([], 0.0)
        for change in _changes(item, phase, now[0]):
            found.setdefault(change, []).extend(_uses(item, phase, change, *now))
    return tuple(
        OtherWay(change.code, item.id, change.way, change.instead, change.kept, tuple(uses))
        for change, uses in found.items()
        if uses
    )


class _Change(NamedTuple):
    """As in `OtherWay`; kept: share of the phase that stays with the way in use."""

    code: Code
    way: str
    instead: str
    kept: float


def _changes(item: Item, phase: Phase, shares: list[WayShare]) -> Iterator[_Change]:
    used = [(way, share) for way, share in shares if share > 0]
    for way, share in used:
        lower = _drawing_less(way, item)
        yield from _darker(way, share, lower, used)
        yield from _lower_step(way, lower)
    if used and phase.way is PhaseWay.FLIGHT:
        most = max(used, key=lambda part: part[1])[0]
        yield from _flight_mode(most, _drawing_less(most, item))


def _drawing_less(way: WayOfUse, item: Item) -> list[WayOfUse]:
    """Ways that draw less, but not nothing; the lowest first."""
    now = known_draw(way, item)
    draws = [(other, known_draw(other, item)) for other in (item.battery.ways if item.battery else ())]
    less = [(draw.likely_w, other) for other, draw in draws if now and draw and 0 < draw.likely_w < now.likely_w]
    return [other for _, other in sorted(less, key=lambda part: part[0])]


def _darker(way: WayOfUse, share: float, lower: Iterable[WayOfUse], used: Iterable[WayShare]) -> Iterator[_Change]:
    """The screen lit for `LIT_SHARE` of the phase, for the rest the way that leaves it dark."""
    if not _is(way, _LIT) or _is(way, _FLIGHT_MODE) or share <= LIT_SHARE:
        return
    dark = [other for other in lower if _is(other, _DARK) and not _is(other, _FLIGHT_MODE)]
    in_use = {other.name for other, _ in used}
    if dark:
        best = max(dark, key=lambda other: (other.name in in_use, _alike(other, way)))
        yield _Change("use_less", best.name, way.name, LIT_SHARE)


def _alike(one: WayOfUse, other: WayOfUse) -> int:
    """Words that two names have in common."""
    return len(set(one.name.casefold().split()) & set(other.name.casefold().split()))


def _lower_step(way: WayOfUse, lower: Iterable[WayOfUse]) -> Iterator[_Change]:
    steps = [other for other in lower if _stem(other) == _stem(way) and _is(other, _STEP) and _is(way, _STEP)]
    if steps:
        yield _Change("use_less", steps[0].name, way.name, 0.0)


def _flight_mode(way: WayOfUse, lower: Iterable[WayOfUse]) -> Iterator[_Change]:
    """Of several, the one that does most: it still records."""
    modes = [other for other in lower if _is(other, _FLIGHT_MODE)]
    if modes and not _is(way, _FLIGHT_MODE):
        yield _Change("flight_mode", modes[-1].name, way.name, 0.0)


def _is(way: WayOfUse, words: re.Pattern[str]) -> bool:
    return words.search(way.name.casefold()) is not None


def _stem(way: WayOfUse) -> str:
    return " ".join(_STEP.sub(" ", way.name.casefold()).split())


def _uses(item: Item, phase: Phase, change: _Change, now: list[WayShare], off: float) -> list[Use]:
    """The shares of a phase with the time of one way given to another; none where a rest is off and no way says so."""
    shares: defaultdict[str, float] = defaultdict(float)
    for way, share in now:
        shares[way.name] += 0.0 if change.code == "flight_mode" else share
    if change.code == "flight_mode":
        shares[change.way] = 1.0 - off
    else:
        shares[change.way] += shares[change.instead] - change.kept
        shares[change.instead] = change.kept
    rest = _off_way(item) if off > 0 else ""
    if rest is None:
        return []
    shares[rest] += off
    return [
        Use(item=item.id, phase=phase.name, way=name, share=min(share, 1.0)) for name, share in shares.items() if share
    ]


def _off_way(item: Item) -> str | None:
    """A way of use that draws nothing."""
    draws = ((way.name, known_draw(way, item)) for way in (item.battery.ways if item.battery else ()))
    return next((name for name, draw in draws if draw is not None and draw.high_w == 0), None)
