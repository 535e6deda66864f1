"""What a sheet's author meant, set against what came into the kit, cell by cell.

A truth.json says of each item only what the sheet says; every other field has to keep the value of an item of which
nothing is known. A list is a choice of readings that are all right; ``may`` is what the sheet suggests without saying
it: that value or nothing. ``kind_free``: the file has no column of kinds; ``name_free``: it has no column of names.
"""

import json
import math
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from kitlog.kit.item import Item

_NOTHING_KNOWN: dict[str, Any] = Item(id="x", name="x").model_dump(mode="json", exclude={"id", "name"})
_ABOUT_THE_ROW = ("line", "name", "may")


@dataclass(frozen=True)
class Doubt:
    """A cell that may not be read without an answer; where several cells are at odds, any of them may be named."""

    line: int
    headings: tuple[str, ...]
    texts: tuple[str, ...]
    question: str


@dataclass(frozen=True)
class Truth:
    """One file of the corpus and what it says."""

    path: Path
    said: dict[str, Any]

    @property
    def items(self) -> list[dict[str, Any]]:
        return self.said["items"]

    @property
    def doubts(self) -> list[Doubt]:
        return [
            Doubt(line, tuple(heading.split("|")), tuple(text.split("|")), question)
            for line, heading, text, question in self.said["doubts"]
        ]

    @property
    def options(self) -> list[str]:
        return [
            word
            for name, value in self.said.get("options", {}).items()
            for word in ("--" + name.replace("_", "-"), value)
        ]


def truth_in(folder: Path) -> Truth:
    """The truth that lies in a folder."""
    said = json.loads((folder / "truth.json").read_text(encoding="utf-8"))
    return Truth(folder / said["file"], said)


@dataclass
class Outcome:
    """Cells read right, and those that were not, each as one line: file, row, field, expected, got."""

    right: int = 0
    wrong: list[str] = field(default_factory=list)
    missing: list[str] = field(default_factory=list)
    made_up: list[str] = field(default_factory=list)

    @property
    def plain(self) -> int:
        return self.right + len(self.wrong) + len(self.missing)

    def take(self, other: "Outcome") -> None:
        """Add the cells of another file."""
        self.right += other.right
        self.wrong += other.wrong
        self.missing += other.missing
        self.made_up += other.made_up


def compare(truth: Truth, listed: list[dict[str, Any]]) -> Outcome:
    """The items of `kit list --json` against the truth of the one file that was read into an empty kit."""
    outcome = Outcome()
    left = [_Listed(row["name"], _known(row)) for row in listed]
    for said in truth.items:
        match = _best(truth, said, left)
        if match is None:
            outcome.missing += [_line(truth, said, key, said[key], None) for key in ["name", *_fields(said)]]
            continue
        left.remove(match)
        outcome.right += 1
        for key in sorted(_fields(said).keys() | match.known.keys()):
            _judge(truth, said, key, match.known.get(key), outcome)
    outcome.made_up += [f"{truth.path.name}: an item that the sheet does not have: {more}" for more in left]
    return outcome


@dataclass(frozen=True)
class _Listed:
    name: str
    known: dict[str, Any]


def _known(row: dict[str, Any]) -> dict[str, Any]:
    """The fields that differ from an item of which nothing is known, facets with their name in front."""
    known: dict[str, Any] = {}
    for key, nothing in _NOTHING_KNOWN.items():
        value = row[key]
        if isinstance(value, dict):
            known |= {f"{key}.{inner}": held for inner, held in value.items() if held not in (None, "", [])}
        elif value != nothing:
            known[key] = value
    ways = known.get("battery.ways")
    if ways is not None and len(ways) == 1 and ways[0]["name"] == "on":
        known["draw_w"] = known.pop("battery.ways")[0]["power_w"]
    return known


def _fields(said: dict[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in said.items() if key not in _ABOUT_THE_ROW}


def _best(truth: Truth, said: dict[str, Any], left: list[_Listed]) -> _Listed | None:
    """Of the items with that name the one that fits best; of all of them where the sheet has no names."""
    free = truth.said.get("name_free", False)
    fitting = [listed for listed in left if free or _same(said["name"], listed.name)]
    return max(fitting, key=lambda listed: _fit(said, listed), default=None)


def _fit(said: dict[str, Any], listed: _Listed) -> int:
    return sum(_same(value, listed.known.get(key, _NOTHING_KNOWN.get(key))) for key, value in _fields(said).items())


def _same(meant: object, got: object) -> bool:
    if isinstance(meant, list):
        return any(_same(one, got) for one in meant)
    if isinstance(meant, int | float) and isinstance(got, int | float):
        return math.isclose(meant, got, rel_tol=1e-9)
    return meant == got


def _judge(truth: Truth, said: dict[str, Any], key: str, got: object, outcome: Outcome) -> None:
    nothing = _NOTHING_KNOWN.get(key)
    value = nothing if got is None else got
    free = key == "kind" and truth.said.get("kind_free", False)
    if key in said:
        line = _line(truth, said, key, said[key], value)
        if _same(said[key], value):
            outcome.right += 1
        elif value == nothing:
            outcome.missing.append(line)
        else:
            outcome.wrong.append(line)
    elif not free and value != nothing and not _same(said.get("may", {}).get(key), value):
        outcome.made_up.append(_line(truth, said, key, nothing, value))


def _line(truth: Truth, said: dict[str, Any], key: str, expected: object, got: object) -> str:
    where = f"{truth.path.parent.name}/{truth.path.name}, row {said['line']} ({said['name']})"
    return f"{where}, {key}: expected {expected!r}, got {got!r}"
