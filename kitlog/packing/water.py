"""Water into the vessels of the list: water is the content of its vessel, never an item of its own."""

from collections.abc import Iterable

from kitlog.kit.kinds import Kind
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Asked, ListLine
from kitlog.packing.load import Load


def water_wanted_ml(outing: Outing, asked: Iterable[Asked]) -> int:
    """Water at launch in ml: what the pilot plans, else what the needs ask for."""
    if outing.water_ml is not None:
        return outing.water_ml
    return max((a.need.water_ml or 0 for a in asked), default=0)


def fill_vessels(load: Load, outing: Outing, asked: Iterable[Asked]) -> None:
    """Fill the vessels that go, the pinned and the larger first.

    A vessel of unknown volume takes what the pilot planned and no other holds; unplanned water is never put in it.
    """
    rest = water_wanted_ml(outing, asked)
    vessels = [line for line in load.lines.values() if line.item.kind is Kind.VESSEL and not line.in_car]
    for line in sorted(vessels, key=_order):
        content = min(rest, _capacity(line)) if _capacity(line) else 0
        load.fill(line.item.id, content)
        rest -= content
    unmarked = next((line for line in vessels if not _capacity(line)), None)
    if rest > 0 and unmarked is not None and outing.water_ml is not None:
        load.fill(unmarked.item.id, rest)


def _order(line: ListLine) -> tuple[bool, int]:
    return (not line.pinned, -_capacity(line))


def _capacity(line: ListLine) -> int:
    vessel = line.item.vessel
    return (vessel.capacity_ml or 0) * line.n if vessel else 0
