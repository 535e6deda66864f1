"""The pilot's own banks: which could be taken on an outing, and why others not."""

from collections.abc import Iterable

from kitlog.fault import InputFault
from kitlog.kit.item import Item
from kitlog.packing.assessment import Assessment
from kitlog.packing.capacity import energy_wh, is_bank, is_swollen, refuse_more_out_than_in


def why_not_bank(item: Item, assessment: Assessment) -> str:
    """Why a bank cannot be taken or reckoned with, empty if it can.

    ``not at hand``, ``swollen``, ``stop open`` (on a day of the outing), ``energy not known`` or ``no port``.
    """
    if not item.usable:
        return "not at hand"
    if is_swollen(item):
        return "swollen"
    if item.id in assessment.grounded:
        return "stop open"
    if not _known_wh(item):
        return "energy not known"
    return "no port" if item.bank is not None and item.bank.ports == 0 else ""


def _known_wh(item: Item) -> bool:
    try:
        refuse_more_out_than_in(item)
    except InputFault:  # its label contradicts itself, which is said where it is entered
        return False
    return bool(energy_wh(item))


def carried(assessment: Assessment) -> tuple[Item, ...]:
    """What goes along, without what waits in the car."""
    return tuple(line.item for line in assessment.lines if not line.in_car)


def spare_banks(assessment: Assessment, items: Iterable[Item]) -> tuple[Item, ...]:
    """Banks that do not go as planned and could be taken; one that waits in the car is one of them."""
    there = {item.id for item in carried(assessment)}
    return tuple(
        item for item in items if is_bank(item) and item.id not in there and not why_not_bank(item, assessment)
    )
