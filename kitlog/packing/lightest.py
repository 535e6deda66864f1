"""Which of the pilot's own banks is the lightest that does on an outing, and why the others do not."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from kitlog.budget.power.day import Day, Plug
from kitlog.budget.power.lightest_bank import (
    MOST_CHOICES,
    BankChoice,
    BankTrial,
    LightestBank,
    TargetMargin,
    lightest_bank,
)
from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment
from kitlog.packing.capacity import is_bank
from kitlog.packing.own_banks import carried, spare_banks, why_not_bank
from kitlog.packing.power_cells import bank_cell
from kitlog.packing.power_changes import power_targets
from kitlog.packing.power_day import default_plugs

MOST_G = 100_000
"""Stands for a mass that is not known: such a bank is the last, and is never called the lightest."""


@dataclass(frozen=True, slots=True)
class OwnBank:
    """One of the pilot's banks on the plugs of the outing; the day is run in the likely and the high case.

    Attributes:
        bank: id of the item; None: no bank at all in that place.
        mass_g: None: not known.
        meets, meets_high: whether all that hangs on it lasts and ends with its charge to keep.
        why: empty where it does in both cases; ``off`` (a device goes off), ``under`` (one ends with too little),
            ``too few ports``; or, of one that was not run, `own_banks.why_not_bank`, ``goes along too`` or ``too many``
            (only the lightest 100 are run).
        margins, margins_high: by device that hangs on it.
        in_hand_wh: what its ports could still give at the end of the high case.
    """

    bank: str | None
    mass_g: int | None
    meets: bool
    meets_high: bool
    why: str
    margins: Mapping[str, TargetMargin]
    margins_high: Mapping[str, TargetMargin]
    in_hand_wh: float | None = None


@dataclass(frozen=True, slots=True)
class MyLightest:
    """The answer.

    Attributes:
        place: the bank that goes as planned, or the first of those at home where none goes.
        lightest: the lightest of known mass that does in both cases; its `bank` None: none is needed. None: none does.
        lightest_likely: the same for the likely case alone.
        tried: all that were run, lightest first, those of unknown mass last, no bank at all before all.
        not_tried: those that cannot go or cannot be reckoned with.
        devices: what hangs on the bank: these have to last.
    """

    place: str
    lightest: OwnBank | None
    lightest_likely: OwnBank | None
    tried: tuple[OwnBank, ...]
    not_tried: tuple[OwnBank, ...]
    devices: tuple[str, ...]


def my_lightest_bank(
    assessment: Assessment, items: Iterable[Item], library: Library, place: str = ""
) -> MyLightest | None:
    """Run the day with each of the pilot's banks in the place of the one that goes.

    Where none goes, each stands on the plugs that are usual: the phone on the ground after the last flight.

    Args:
        assessment: the outing.
        items: the whole kit.
        library: places and kinds.
        place: id of the bank that is to be replaced; empty: the one on which most hangs.

    Returns:
        None where there is nothing to ask: nothing was simulated, or nothing hangs on a bank.
    """
    kit = tuple(items)
    days = _Days(assessment, kit, library)
    name = place or days.place
    if not name or not days.hanging(name):
        return None
    there = {bank.id for bank in days.likely.banks} - {name}
    own = [item for item in kit if is_bank(item)]
    why = {item.id: "goes along too" if item.id in there else why_not_bank(item, assessment) for item in own}
    able = sorted((item for item in own if not why[item.id]), key=_mass_key)
    why |= {item.id: "too many" for item in able[MOST_CHOICES:]}
    tried = days.tried(name, able[:MOST_CHOICES])
    return MyLightest(
        place=name,
        lightest=next((one for one in tried if one.meets and one.meets_high and _weighed(one)), None),
        lightest_likely=next((one for one in tried if one.meets and _weighed(one)), None),
        tried=tried,
        not_tried=tuple(_untried(item, why[item.id]) for item in own if why[item.id]),
        devices=days.hanging(name),
    )


def _mass_key(item: Item) -> int:
    return MOST_G if item.all_mass_g is None else min(item.all_mass_g, MOST_G)


def _weighed(one: OwnBank) -> bool:
    return one.bank is None or one.mass_g is not None


def _untried(item: Item, why: str) -> OwnBank:
    return OwnBank(item.id, item.all_mass_g, meets=False, meets_high=False, why=why, margins={}, margins_high={})


class _Days:
    """The likely and the high day, with a bank in them on which something hangs."""

    def __init__(self, assessment: Assessment, kit: tuple[Item, ...], library: Library) -> None:
        self._outing, self._library = assessment.outing, library
        self._items = {item.id: item for item in kit}
        power = assessment.power
        self.likely, self.high = power.planned or _NO_DAY, power.longest or _NO_DAY
        spare = next(iter(spare_banks(assessment, kit)), None)
        if self.likely.devices and not self.likely.banks and spare is not None:
            self.likely, self.high = (
                self._with_usual_plugs(day, spare, assessment) for day in (self.likely, self.high)
            )

    def _with_usual_plugs(self, day: Day, bank: Item, assessment: Assessment) -> Day:
        there = {device.id for device in day.devices}
        plans = default_plugs(self._outing, (bank, *carried(assessment)))
        plugs = [Plug(phase=p.phase, device=p.device, bank=p.bank) for p in plans if p.device in there]
        return day.model_copy(update={"banks": (bank_cell(bank, self._outing, self._library),), "plugs": tuple(plugs)})

    @property
    def place(self) -> str:
        """The bank on which most hangs, empty without one."""
        counts = [(len(self.hanging(bank.id)), bank.id) for bank in self.likely.banks]
        return max(counts, default=(0, ""), key=lambda pair: pair[0])[1]

    def hanging(self, bank: str) -> tuple[str, ...]:
        """Devices that hang on a bank in some phase."""
        return tuple(dict.fromkeys(plug.device for plug in self.likely.plugs if plug.bank == bank))

    def tried(self, place: str, able: list[Item]) -> tuple[OwnBank, ...]:
        """Each bank in that place, and none, in both cases."""
        hanging = self.hanging(place)
        targets = [target for target in power_targets(self._items.values(), self.likely) if target.device in hanging]
        choices = [
            BankChoice(bank=bank_cell(item, self._outing, self._library), mass_g=_mass_key(item)) for item in able
        ]
        query = LightestBank(place=place, choices=tuple(choices), targets=tuple(targets))
        likely = {trial.bank: trial for trial in lightest_bank(self.likely, query).tried}
        return tuple(self._own(likely[trial.bank], trial) for trial in lightest_bank(self.high, query).tried)

    def _own(self, likely: BankTrial, high: BankTrial) -> OwnBank:
        mass_g = 0 if high.bank is None else self._items[high.bank].all_mass_g
        return OwnBank(
            bank=high.bank,
            mass_g=mass_g,
            meets=likely.meets,
            meets_high=high.meets,
            why=_why(high) or _why(likely),
            margins=likely.margins,
            margins_high=high.margins,
            in_hand_wh=high.in_hand_wh,
        )


_NO_DAY = Day.model_validate({"phases": [{"id": "none", "hours": 0, "ambient_C": 0}]})


def _why(trial: BankTrial) -> str:
    if trial.meets:
        return ""
    if trial.too_few_ports:
        return "too few ports"
    return "off" if any(margin.first_off_h is not None for margin in trial.margins.values()) else "under"
