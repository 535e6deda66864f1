"""Why an item that could meet a need is not on the list."""

from collections.abc import Mapping

from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS, Zone
from kitlog.outing.outing import Outing
from kitlog.packing.chosen_set import SetChoice
from kitlog.packing.fitness import Fitness

NONE_OWNED = "none owned"
NOT_CHOSEN = "not chosen"
NO_WATER = "no water planned"
WAITS_FOR_SET = "waits for the set"

OPEN_CHOICE = frozenset({NOT_CHOSEN, WAITS_FOR_SET})
"""Reasons that are an open question to the pilot: whether the need is met is not known yet."""

_NEAREST = (
    NOT_CHOSEN,
    WAITS_FOR_SET,
    "left out",
    "left in the car",
    "not of the set",
    "heavier",
    "overdue",
    "stop open",
    "swollen",
    "fitted elsewhere",
    "lent",
    "away",
    "used up",
    "lost",
    "retired",
)


def nearest(other: tuple[str, str]) -> int:
    """For sorting pairs of reason and item: what is easiest to change first."""
    return _NEAREST.index(other[0])


def why_not(fit: Fitness, outing: Outing, chosen: SetChoice, fitness: Mapping[str, Fitness]) -> str:
    """The reason, the first that holds; ``heavier`` where nothing else speaks against it."""
    item = fit.item
    reasons = (
        (item.quantity == 0, "used up"),
        (not item.usable, item.state.value),
        (item.id in outing.left_out, "left out"),
        (fit.swollen, "swollen"),
        (fit.open_stop is not None, "stop open"),
        (_stays_in_car(item, outing), "left in the car"),
        (item.kind in chosen.open, NOT_CHOSEN),
        (item.kind in SET_KINDS, "not of the set"),
        (_waits(item, chosen, fitness), WAITS_FOR_SET),
        (fitted_elsewhere(item, chosen, fitness), "fitted elsewhere"),
        (fit.overdue, "overdue"),
    )
    return next((reason for holds, reason in reasons if holds), "heavier")


def fitted_elsewhere(item: Item, chosen: SetChoice, fitness: Mapping[str, Fitness]) -> bool:
    """Whether it is fitted to a wing, harness, reserve or helmet that is not the chosen one."""
    partner = _partner(item, fitness)
    return partner is not None and chosen.chosen.get(partner.kind) != partner


def _waits(item: Item, chosen: SetChoice, fitness: Mapping[str, Fitness]) -> bool:
    partner = _partner(item, fitness)
    return partner is not None and partner.kind in chosen.open


def _partner(item: Item, fitness: Mapping[str, Fitness]) -> Item | None:
    fit = fitness.get(item.fitted_to) if item.fitted_to else None
    return fit.item if fit is not None and fit.item.kind in SET_KINDS else None


def _stays_in_car(item: Item, outing: Outing) -> bool:
    pinned = next((pin.zone for pin in outing.pinned if pin.item == item.id), None)
    return (pinned or item.zone) is Zone.LEFT_IN_CAR
