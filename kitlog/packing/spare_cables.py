"""Whether one more cable has to come along if a device is plugged into a bank, and which."""

from collections.abc import Iterable
from dataclasses import dataclass

from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.packing.assessment import Assessment
from kitlog.packing.cable_cautions import cable_ends, item_connectors
from kitlog.packing.cables import Ends, Fit, Wanted, fits
from kitlog.packing.own_banks import carried


@dataclass(frozen=True, slots=True)
class CableNeed:
    """What a new plug asks for.

    Attributes:
        known: whether it is known that a cable fits.
        cable: the cable from home that has to come along; None: one that goes along will do, or nothing is known.
    """

    known: bool
    cable: Item | None = None

    @property
    def mass_g(self) -> int | None:
        """What the cable adds to the load, in g; None: not known."""
        if not self.known:
            return None
        return 0 if self.cable is None else self.cable.all_mass_g


def cable_need(device: Item, bank: Item, assessment: Assessment, items: Iterable[Item]) -> CableNeed:
    """What is needed to hang a device on a bank, beside all that hangs on banks already.

    A cable that goes along counts where it is free in each phase. Of those at home, the lightest that fits.
    """
    along = carried(assessment)
    wanted = _wanted(device, bank)
    cables = [*cable_ends(along)]
    served = [fits([*others, wanted], cables)[device.id] for others in _hanging(assessment, device, along)]
    if all(fit is Fit.FITS for fit in served):
        return CableNeed(known=True)
    if Fit.NOT_KNOWN in served:
        return CableNeed(known=False)
    there = {item.id for item in along}
    fitting = [item for item in items if item.id not in there and item.usable and _joins(item, wanted)]
    lightest = min(fitting, key=lambda item: (item.mass_g is None, item.mass_g or 0), default=None)
    return CableNeed(known=lightest is not None, cable=lightest)


def _hanging(assessment: Assessment, device: Item, along: Iterable[Item]) -> list[list[Wanted]]:
    """What else hangs on banks at the same time, once for each set of plugs."""
    day, by_id = assessment.power.planned, {item.id: item for item in along}
    if day is None:
        return [[]]
    sets = {
        tuple((plug.device, plug.bank) for plug in day.plugs if plug.phase == phase.id and plug.device != device.id)
        for phase in day.phases
        if phase.hours > 0
    }
    return [[_wanted(by_id[name], by_id[bank]) for name, bank in plugs] for plugs in sorted(sets)] or [[]]


def _wanted(device: Item, bank: Item) -> Wanted:
    return Wanted(device.id, bank.id, item_connectors(bank), item_connectors(device))


def _joins(item: Item, wanted: Wanted) -> bool:
    joined: list[Ends] = [cable for cable in cable_ends((item,)) if cable is not None]
    return item.kind is Kind.CABLE and any(wanted.takes(cable) for cable in joined)
