"""What can be done about charging: the evening before, charges on hand, swollen batteries, what is stored."""

from collections.abc import Mapping, Sequence

from kitlog.fault import InputFault
from kitlog.kit.facets import Battery
from kitlog.kit.item import Item
from kitlog.outing.outing import Evening, Outing
from kitlog.packing.assessment import Assessment
from kitlog.packing.capacity import is_bank
from kitlog.packing.charging import CHARGED
from kitlog.packing.evening_asked import AskedEvening, asked_evening
from kitlog.packing.evening_plan import EveningPlan, planned, start_charges, with_help
from kitlog.packing.storage_due import StorageLine, storage_due
from kitlog.workbench.outing_commands import OutingCommands


class EveningCommands(OutingCommands):
    """Reads and writes about charging; each write is one transaction and one undo step."""

    def asked_evening(self, assessment: Assessment) -> AskedEvening:
        """What the plan of an evening is made from; quick. `planned` and `with_help` may run on another thread."""
        return asked_evening(assessment, self.items(), self.library)

    def evening_plan(self, outing: Outing) -> EveningPlan:
        """The charging before an outing, with what would help; may take seconds.

        Raises:
            InputFault: as `assess`.
        """
        asked = self.asked_evening(self.assess(outing))
        return with_help(asked, planned(asked))

    def storage_due(self, *, season_over: bool = False) -> tuple[StorageLine, ...]:
        """What lies unused, or everything at the end of the season, and to which charge it is brought."""
        return storage_due(self.items(), self.flights(), self.now(), season_over=season_over)

    def note_on_hand(self, charges: Mapping[str, float | None]) -> None:
        """Note the charge in per cent with which things are seen now, by the id of the item; None: not known any more.

        Raises:
            InputFault: ``item.unknown``; ``item.no_battery`` with ``name``; a charge outside 0 to 100 is refused by
                the model (`pydantic.ValidationError`).
        """
        now = self.now()
        items = [
            self._with_battery(name, on_hand_pct=pct, on_hand_at=None if pct is None else now)
            for name, pct in charges.items()
        ]
        self._put("item.on_hand", items, _named(items))

    def note_swollen(self, item_id: str, *, swollen: bool = True) -> None:
        """Note that a battery was seen swollen today, or take that back.

        Raises:
            InputFault: ``item.unknown``; ``item.no_battery`` with ``name``.
        """
        item = self._with_battery(item_id, swollen_on=self.now().date() if swollen else None)
        self._put("item.swollen" if swollen else "item.not_swollen", (item,), _named((item,)))

    def set_evening(self, outing_id: str, evening: Evening | None) -> None:
        """Set the hours and the place of the evening before an outing; None: not told."""
        outing = self._planned(outing_id)
        self._write("outing.evening", self._putting(outing, evening=evening), {"name": outing.name})

    def start_as_planned(self, outing_id: str, plan: EveningPlan) -> None:
        """Let an outing begin with the charges that a plan of the evening ends with."""
        outing = self._planned(outing_id)
        starts = start_charges(plan, outing)
        self._write("outing.starts", self._putting(outing, starts=starts), {"name": outing.name})

    def _with_battery(self, item_id: str, **update: object) -> Item:
        """The item with other figures of its battery; what has one by its kind gets one."""
        item = self._known(item_id)
        if item.battery is None and not is_bank(item) and item.kind not in CHARGED:
            raise InputFault("item.no_battery", name=item.name)
        fields = (item.battery or Battery()).model_dump()
        return item.model_copy(update={"battery": Battery.model_validate({**fields, **update})})


def _named(items: Sequence[Item]) -> dict[str, object]:
    return {"name": items[0].name if items else "", "count": len(items)}
