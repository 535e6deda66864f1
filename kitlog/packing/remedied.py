"""An outing with a remedy taken: what the pilot would plan instead, to be judged before it is offered."""

from collections.abc import Callable, Mapping

from kitlog.budget.result import Remedy
from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Assessment
from kitlog.packing.plan_edits import ballasted, left_out, swapped, taken_along
from kitlog.packing.power_replanned import replanned


def remedied(judged: Assessment, remedy: Remedy, items: Mapping[str, Item], library: Library) -> Outing | None:
    """The outing with a remedy taken, None for a remedy that changes nothing in its plan.

    Args:
        judged: the outing as it stands, with its list.
        remedy: one of its remedies.
        items: the whole kit by id.
        library: usual zones, places and phases of use.
    """
    outing = judged.outing
    ways: dict[str, Callable[[], Outing]] = {
        "swap": lambda: swapped(outing, *remedy.items),
        "leave_at_home": lambda: left_out(outing, remedy.items[0]),
        "take_along": lambda: taken_along(outing, items[remedy.items[0]], library),
        "ballast": lambda: ballasted(outing, int(str(remedy.facts["mass_g"]))),
    }
    return ways[remedy.code]() if remedy.code in ways else replanned(judged, remedy, items, library)
