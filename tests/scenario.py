"""The worked example as tests use it: the invented season, the starter library, and small ways to ask and to change.

The figures that tests hold it to come from sums by hand beside the table of the invented kit (see each test file).
"""

from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from itertools import count
from typing import Any

from kitlog.budget.result import Finding, State
from kitlog.files.demo import Demo, load_demo
from kitlog.files.resources import load_library, resources_folder
from kitlog.kit.item import Item
from kitlog.kit.kinds import Zone
from kitlog.outing.outing import Outing
from kitlog.packing.assess import assess
from kitlog.packing.assessment import Assessment, Missing
from kitlog.packing.kit import History, Kit

LIBRARY = load_library(resources_folder())

EVENING = datetime(2026, 5, 8, 18, 30, tzinfo=UTC)
"""The evening before the cross-country day."""


def numbered() -> Callable[[], str]:
    """Ids that are the same in each run."""
    numbers = count(1)
    return lambda: f"id{next(numbers):03d}"


DEMO: Demo = load_demo(resources_folder() / "demo", numbered())
KIT = Kit(DEMO.pilot, DEMO.items, DEMO.rules)
HISTORY = History(DEMO.records, DEMO.events, DEMO.flights, DEMO.outings)
O1, O2, O3 = DEMO.outings
"""Cross-country, hike and fly with a night out, over-water course."""

NAMES = {item.id: item.name for item in DEMO.items}
IDS = {item.name: item.id for item in DEMO.items}


def changed(outing: Outing, **fields: Any) -> Outing:
    """The outing with other fields, looked at by its model."""
    return Outing.model_validate({**outing.model_dump(), **fields})


def with_item(name: str, kit: Kit = KIT, **fields: Any) -> Kit:
    """The kit with one item changed."""
    assert any(item.name == name for item in kit.items)
    items = (Item.model_validate({**i.model_dump(), **fields}) if i.name == name else i for i in kit.items)
    return replace(kit, items=tuple(items))


def without(*names: str, kit: Kit = KIT) -> Kit:
    """The kit without some items, and their rules."""
    gone = {item.id for item in kit.items if item.name in names}
    assert len(gone) == len(names)
    return replace(
        kit,
        items=tuple(item for item in kit.items if item.id not in gone),
        rules=tuple(rule for rule in kit.rules if rule.item_id not in gone),
    )


def judged(outing: Outing, kit: Kit = KIT, history: History = HISTORY, now: datetime = EVENING) -> Assessment:
    """The assessment of an outing."""
    return assess(outing, kit, LIBRARY, history, now)


def of_code(assessment: Assessment, code: str, subject: str | None = None) -> list[Finding]:
    """The findings of a code, and subject if one is given."""
    return [f for f in assessment.findings if f.code == code and (subject is None or f.subject == subject)]


def the(assessment: Assessment, code: str, subject: str | None = None) -> Finding:
    """The one finding of a code."""
    (finding,) = of_code(assessment, code, subject)
    return finding


def service(assessment: Assessment, item: str, rule: str) -> Finding | None:
    """What is said about a rule of an item, None if nothing is."""
    subject = f"{IDS[item]}:{rule}"
    found = [f for f in assessment.findings if f.code.startswith("service.") and f.subject == subject]
    assert len(found) <= 1
    return found[0] if found else None


def missing(assessment: Assessment, need: str) -> Missing | None:
    """What is said about an unmet need, None if it is not unmet."""
    found = [one for one in assessment.missing if one.asked.need.id == need]
    assert len(found) <= 1
    return found[0] if found else None


def going(assessment: Assessment) -> set[str]:
    """Names of what leaves the ground."""
    return {line.item.name for line in assessment.lines if line.zone is not Zone.LEFT_IN_CAR}


def stops(assessment: Assessment) -> set[str]:
    """Keys of the stops."""
    return {finding.key for finding in assessment.findings if finding.state is State.STOP}


def meeting(assessment: Assessment, need: str) -> set[str]:
    """Names of the lines that meet a need."""
    return {line.item.name for line in assessment.lines if need in line.needs}


def hours_before(hours: float, now: datetime = EVENING) -> datetime:
    """A moment some hours before."""
    return now - timedelta(hours=hours)


def answers(outing: Outing, given: Iterable[tuple[str, str]], at: datetime = EVENING) -> Outing:
    """The outing with checks answered."""
    return changed(outing, answers=[{"check": check, "value": value, "at": at} for check, value in given])
