"""What one heading stands for by itself: its words, the unit beside them, several languages at once."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from kitlog.files.csv_columns import KIT
from kitlog.files.table.heading_units import unit_readings
from kitlog.files.table.targets import TARGETS, Meaning, Way
from kitlog.files.table.units import dimension_of
from kitlog.files.table.vocabulary import Vocabulary
from kitlog.kit.kinds import MassSource

_MASSES = frozenset({"mass_g", "mass_all"})
_ALTERNATIVES = re.compile(r"\s*[/|\n]\s*|\s+-\s+|[(\[]|[)\]]|\s(?:or|oder|ou)\s")
_LINKS = frozenset({"in", "en"})
_LONGEST = 80
"""Letters beyond which a text is no heading."""
_RUNNING = frozenset({"#", "№", "n°", "nº", "no.", "nr."})
_HOW_MANY = frozenset(
    {"no. of", "no of", "nr. of", "nr of", "num. of", "number of", "# of", "nb de", "nb. de", "nbre de"}
)
"""Headings of pieces whose little word is all that parts them from a running number."""
_TOGETHER = {
    frozenset({"maker", "model"}): "model",
    frozenset({"name", "model"}): "name",
    frozenset({"name", "kind"}): "name",
    frozenset({"name", "maker"}): "name",
    frozenset({"wing_min_kg", "wing_max_kg"}): "wing_range",
    frozenset({"reserve_min_kg", "reserve_max_kg"}): "reserve_range",
}
"""What a column with two things in one cell stands for."""


@dataclass(frozen=True, slots=True)
class Found:
    """What a heading stands for, and how that was found.

    Attributes:
        meaning: None = not understood, or another column stands for the same.
        how: ``ours`` (a heading of kit.csv as kitlog writes it), ``word``, ``part`` (some words beside it do not
            matter, or it is the weaker of two meanings), ``double`` (another column fits better), empty.
        source: how the masses were taken, where the heading tells ("ca." makes a guess).
        weak: would give way to another column for the same; otherwise: what it would then stand for.
    """

    meaning: Meaning | None = None
    how: str = ""
    source: MassSource | None = None
    weak: bool = False
    otherwise: str = ""


NOT_UNDERSTOOD = Found()


@lru_cache(maxsize=4096)
def find(heading: str, words: Vocabulary) -> Found:
    """What one heading stands for by itself, and how that was found."""
    text = heading.strip()
    if text in KIT.by_heading:
        return Found(Meaning(text, _own_unit(text)), "ours")
    if text.casefold() in _HOW_MANY:
        return Found(Meaning("quantity"), "word")
    if text.casefold() in _RUNNING:
        return Found(Meaning(""), "word")
    if not text or len(text) > _LONGEST:
        return NOT_UNDERSTOOD
    found = _first(_readings(text, words))
    return found or _of_alternatives(text, words) or NOT_UNDERSTOOD


def _own_unit(heading: str) -> str:
    target = TARGETS[heading]
    return "kg" if target.way is Way.MASS and heading.endswith("_kg") else target.unit


def _first(found: Iterator[Found | None]) -> Found | None:
    return next((one for one in found if one is not None), None)


def _readings(text: str, words: Vocabulary) -> Iterator[Found | None]:
    """By the words beside a unit, by all of them, then without the words that do not matter.

    A unit beside the words is never dropped: "Capacity (l)" is not "Capacity".
    """
    apart = [(words.key(rest), unit) for rest, unit in unit_readings(text)]
    whole = words.key(text, frozenset(unit.casefold() for _rest, unit in apart))
    readings = apart if "%" in text else [*apart, (whole, "")]
    for look in (_look_up, _limit_of_range, _without):
        for key, unit in readings:
            yield look(key, unit, words)


def _look_up(key: str, unit: str, words: Vocabulary) -> Found | None:
    entries = words.headings.get(key) or words.headings.get(words.joined.get(key.replace(" ", ""), "\n"), ())
    fitting = [entry for entry in entries if unit in entry.units] if unit else []
    fitting = fitting or [entry for entry in entries if not entry.units and _takes(entry.target, unit)]
    if not fitting:
        return None
    best = min(fitting, key=lambda entry: entry.weak)
    return Found(Meaning(best.target, unit), "word", best.source, best.weak, best.otherwise)


def _takes(target: str, unit: str) -> bool:
    """Whether figures of a target may have a unit."""
    if not unit or target == "":
        return not unit
    if target in {"draw_w", "charge_max_w"} and unit in {"mA", "A"}:
        return True
    return dimension_of(unit) == dimension_of(TARGETS[target].unit) != ""


def _limit_of_range(key: str, unit: str, words: Vocabulary) -> Found | None:
    """The words of a range of masses with one that makes it a limit: "min. zulässiges Startgewicht"."""
    parts = key.split()
    rest = [part for part in parts if part not in words.lowest | words.highest]
    low, high = (not side.isdisjoint(parts) for side in (words.lowest, words.highest))
    found = _look_up(" ".join(rest), unit, words) if rest and (low or high) else None
    target = found.meaning.target if found and found.meaning else ""
    if target not in {"wing_range", "reserve_range"}:
        return None
    limit = target if low and high else target.replace("range", "min_kg" if low else "max_kg")
    return Found(Meaning(limit, unit), "word")


def _without(key: str, unit: str, words: Vocabulary) -> Found | None:
    """Without what may stand beside the words: anywhere, beside prices (money), or beside masses ("ca.": a guess)."""
    parts = key.split()
    kept = [part for part in parts if part not in words.besides]
    priced = _without_money(kept, words)
    exact = [part for part in priced if part not in words.rough]
    if len(exact) == len(parts) or not (exact or unit):
        return None
    found = _look_up(" ".join(exact), unit, words)
    target = found.meaning.target if found and found.meaning else ""
    if found is None or (len(priced) < len(kept) and target != "value"):
        return None
    if len(exact) == len(priced):
        return replace(found, how="part")
    return replace(found, how="part", source=MassSource.GUESS) if target in _MASSES else None


def _without_money(parts: Sequence[str], words: Vocabulary) -> list[str]:
    """Without the signs of money, and an "in" before one."""
    money = [part in words.currencies for part in parts]
    return [
        part
        for at, part in enumerate(parts)
        if not (money[at] or (part in _LINKS and at + 1 < len(parts) and money[at + 1]))
    ]


def _of_alternatives(text: str, words: Vocabulary) -> Found | None:
    """Of headings in several languages or for two things ("Gewicht / Weight (g)"): all of them must be understood."""
    for rest, unit in (*unit_readings(text), (text, "")):
        parts = [part for part in _ALTERNATIVES.split(rest) if words.key(part)]
        found = [_first(_readings_with(part, unit, words)) for part in parts]
        if len(parts) > 1 and all(found):
            return _common([one for one in found if one is not None])
    return None


def _readings_with(part: str, unit: str, words: Vocabulary) -> Iterator[Found | None]:
    if unit:
        yield _look_up(words.key(part), unit, words)
    yield from _readings(part, words)


def _common(found: Sequence[Found]) -> Found | None:
    """The one meaning of several alternatives; None where they are of different things."""
    meanings = [one.meaning for one in found if one.meaning is not None]
    targets = frozenset(meaning.target for meaning in meanings)
    units = {meaning.unit for meaning in meanings if meaning.unit}
    target = next(iter(targets)) if len(targets) == 1 else _TOGETHER.get(targets)
    if target is None or len(units) > 1:
        return None
    weak = all(one.weak for one in found)
    source = next((one.source for one in found if one.source), None)
    return Found(
        Meaning(target, units.pop() if units else ""), "part", source, weak, found[0].otherwise if weak else ""
    )
