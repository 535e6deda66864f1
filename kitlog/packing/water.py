"""Water into the vessels of the list: water is the content of its vessel, never an item of its own.

How much the hours ask for is the water budget's business; here it is whether what is planned is there at all.
"""

from collections.abc import Iterable

from kitlog.budget.result import Finding, Remedy, State, Sure, Topic
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
    vessels = _vessels(load.lines.values())
    for line in sorted(vessels, key=_order):
        content = min(rest, _capacity(line)) if _capacity(line) else 0
        load.fill(line.item.id, content)
        rest -= content
    unmarked = next((line for line in vessels if not _capacity(line)), None)
    if rest > 0 and unmarked is not None and outing.water_ml is not None:
        load.fill(unmarked.item.id, rest)


def water_findings(lines: Iterable[ListLine], outing: Outing, asked: Iterable[Asked]) -> list[Finding]:
    """Whether the vessels that go hold what is planned, and the least that the needs ask for."""
    vessels = _vessels(lines)
    held = sum(line.content_ml for line in vessels)
    least = max((a.need.water_ml or 0 for a in asked), default=0)
    planned = outing.water_ml
    if not vessels or planned == 0:
        return []
    if held == 0 and least:
        return [_not_known(vessels[0])]
    if planned is not None and planned > held:
        return [_short("water.no_room", held, planned)]
    return [_short("water.less", held, least)] if held < least else []


def _not_known(vessel: ListLine) -> Finding:
    return Finding(
        code="water.not_known",
        topic=Topic.WATER,
        state=State.NOT_KNOWN,
        unit="ml",
        sure=Sure.NOT_KNOWN,
        items=(vessel.item.id,),
        source="kit",
        remedies=(Remedy("enter_volume", (vessel.item.id,)),),
    )


def _short(code: str, held_ml: int, wanted_ml: int) -> Finding:
    return Finding(
        code=code,
        topic=Topic.WATER,
        state=State.LOOK,
        figure=float(held_ml),
        unit="ml",
        margin=float(held_ml - wanted_ml),
        source="outing",
        facts={"wanted_ml": wanted_ml},
        remedies=(Remedy("carry_water", (), {"more_ml": wanted_ml - held_ml}),),
    )


def _vessels(lines: Iterable[ListLine]) -> list[ListLine]:
    return [line for line in lines if line.item.kind is Kind.VESSEL and not line.in_car]


def _order(line: ListLine) -> tuple[bool, int]:
    return (not line.pinned, -_capacity(line))


def _capacity(line: ListLine) -> int:
    vessel = line.item.vessel
    return (vessel.capacity_ml or 0) * line.n if vessel else 0
