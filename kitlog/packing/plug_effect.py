"""Plugs of a plan that the simulated day is played through without, and why: retired, lent, swollen ..."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from kitlog.kit.item import Item
from kitlog.outing.outing import PlugPlan
from kitlog.packing.assessment import Assessment

GONE, NONE_LEFT, NOT_ON_LIST = "gone", "none left", "not on the list"
SWOLLEN, NOT_KNOWN = "swollen", "not known"
"""Why a thing takes no part in the day, besides the states of an item that is not at hand."""


@dataclass(frozen=True, slots=True)
class IdlePlug:
    """A plug without effect; thing: the device or bank that takes no part; reason: why, as above or an item's state."""

    plug: PlugPlan
    thing: str
    reason: str


def idle_plugs(plugs: Iterable[PlugPlan], assessment: Assessment, kit: Mapping[str, Item]) -> Iterator[IdlePlug]:
    """The plugs that name what takes no part in the simulated day; none where there is no such day.

    Args:
        plugs: of the plan.
        assessment: of the outing with this plan.
        kit: all items by id.
    """
    day = assessment.power.planned
    if day is None:
        return
    devices, banks = ({part.id for part in parts} for parts in (day.devices, day.banks))
    for plug in plugs:
        if plug.bank not in banks:
            yield IdlePlug(plug, plug.bank, why_absent(plug.bank, assessment, kit))
        elif plug.device not in devices:
            yield IdlePlug(plug, plug.device, why_absent(plug.device, assessment, kit))


def why_absent(name: str, assessment: Assessment, kit: Mapping[str, Item]) -> str:
    """Why a thing, by id, takes no part in the day of the power; what goes along is not known or swollen."""
    item = kit.get(name)
    if item is None:
        return GONE
    if not item.usable:
        return item.state.value if item.quantity else NONE_LEFT
    if all(line.item.id != name or line.in_car for line in assessment.lines):
        return NOT_ON_LIST
    return SWOLLEN if name in assessment.power.swollen else NOT_KNOWN
