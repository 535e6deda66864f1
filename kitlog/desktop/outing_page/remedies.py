"""What a remedy does when it is pressed; one that is advice alone does nothing and is shown as a line."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from kitlog.budget.result import Finding, Remedy
from kitlog.kit.kinds import SET_KINDS, Kind
from kitlog.outing.outing import Outing, Role
from kitlog.packing.remedied import remedied
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from kitlog.desktop.desk import Desk

EDITS_ITEM = {
    "weigh": "mass_g",
    "enter_range": "wing.min_g",
    "enter_harness_limit": "harness.max_g",
    "enter_reserve_limit": "reserve.max_g",
    "enter_battery": "battery.wh",
    "enter_use": "battery.ways",
    "enter_volume": "vessel.capacity_ml",
    "enter_connector": "battery.connector",
    "enter_ports": "bank.ports",
    "name_cable": "battery.connector",
    "replace_battery": "battery.health_pct",
    "carry_warmer": "battery.place",
    "fetch": "state",
}
"""Remedies whose figure is entered in the editor of the item, and the field that is meant."""

REPLANS = (
    "bank_instead",
    "add_bank",
    "plug_too",
    "plug_below",
    "use_less",
    "flight_mode",
    "start_full",
    "leave_off",
)
"""Computed changes of the power that the plan can take."""


class Remedies:
    """Remedies of one outing.

    Args:
        desk: where they act.
        over: the page that dialogs stand over.
        edit_plan: opens the plan.
    """

    def __init__(self, desk: "Desk", over: "QWidget", edit_plan: Callable[[], object]) -> None:
        self._desk, self._over, self._edit_plan = desk, over, edit_plan

    def act(self, outing: Outing, remedy: Remedy, finding: Finding) -> Callable[[], object] | None:
        """What to do when the remedy is pressed, None if it is advice alone."""
        if remedy.code in EDITS_ITEM and remedy.items:
            return lambda: self.edit_item(remedy.items[0], EDITS_ITEM[remedy.code])
        made = _ACTS.get(remedy.code)
        return None if made is None else lambda: made(self, outing, remedy, finding)

    def change_power(self, outing: Outing, remedy: Remedy) -> Callable[[], object] | None:
        """What to do when a computed change of the power is pressed, None if it is advice alone."""
        if remedy.code in REPLANS:
            return lambda: self._take_change(outing, remedy)
        field = EDITS_ITEM.get(remedy.code)
        return None if field is None else lambda: self.edit_item(remedy.items[0], field)

    def edit_item(self, item_id: str, field: str) -> None:
        """Edit an item where one stands, from a field on."""
        from kitlog.desktop.kit_page.item_editor import ItemEditor

        item = self._desk.bench.item(item_id)
        if item is not None:
            editor = ItemEditor(self._desk, item, self._over)
            editor.begin_at(field)
            editor.exec()

    def leave_out(self, outing: Outing, item_id: str) -> None:
        """Leave an item at home."""
        self._desk.perform(lambda: self._desk.bench.leave_out(outing.id, item_id))

    def take_along(self, outing: Outing, item_id: str) -> None:
        """Let an item go."""
        self._desk.perform(lambda: self._desk.bench.take_along(outing.id, item_id))

    def tell(self, outing: Outing, name: str) -> None:
        """Note that a contact was told now; kitlog itself tells nobody."""
        now = self._desk.bench.now()
        people = tuple(
            person.model_copy(update={"told_at": now}) if (person.name, person.role) == (name, Role.CONTACT) else person
            for person in outing.people
        )
        self._save(outing, people=people)

    def _swap(self, outing: Outing, remedy: Remedy, _finding: Finding) -> None:
        self._desk.perform(lambda: self._desk.bench.swap(outing.id, *remedy.items))

    def _leave(self, outing: Outing, remedy: Remedy, _finding: Finding) -> None:
        self.leave_out(outing, remedy.items[0])

    def _take(self, outing: Outing, remedy: Remedy, _finding: Finding) -> None:
        self.take_along(outing, remedy.items[0])

    def _tell(self, outing: Outing, remedy: Remedy, _finding: Finding) -> None:
        self.tell(outing, str(remedy.facts["name"]))

    def _record(self, _outing: Outing, remedy: Remedy, _finding: Finding) -> None:
        from kitlog.desktop.service_page.record_dialog import RecordDialog

        item, rules = remedy.items[0], self._desk.bench.rules()
        rule = next((r.id for r in rules if (r.item_id, r.rule) == (item, remedy.facts.get("rule"))), "")
        RecordDialog(self._desk, item, rule, self._over).exec()

    def _service(self, _outing: Outing, remedy: Remedy, _finding: Finding) -> None:
        self._desk.show("service", remedy.items[0])

    def _rules(self, _outing: Outing, remedy: Remedy, _finding: Finding) -> None:
        from kitlog.desktop.service_page.starters_dialog import StartersDialog

        StartersDialog(self._desk, self._desk.bench.item(remedy.items[0]), self._over).exec()

    def _weigh_body(self, _outing: Outing, _remedy: Remedy, _finding: Finding) -> None:
        from kitlog.desktop.pilot_dialog import PilotDialog

        PilotDialog(self._desk, self._over).exec()

    def _borrow(self, _outing: Outing, _remedy: Remedy, _finding: Finding) -> None:
        from kitlog.desktop.kit_page.item_editor import ItemEditor

        ItemEditor(self._desk, None, self._over).exec()

    def _answer(self, outing: Outing, remedy: Remedy, finding: Finding) -> None:
        from kitlog.desktop.outing_page.answer_dialog import check_dialog

        title = _(str(finding.facts.get("label", "")))
        check_dialog(self._desk, outing, str(remedy.facts["check"]), title, self._over).exec()

    def _choose(self, outing: Outing, remedy: Remedy, _finding: Finding) -> None:
        from kitlog.desktop.outing_page.answer_dialog import PickDialog, SetDialog

        items = [item for item in map(self._desk.bench.item, remedy.items) if item is not None]
        kinds = {item.kind for item in items}
        if len(kinds) == 1 and next(iter(kinds)) in SET_KINDS:
            SetDialog(self._desk, outing, Kind(next(iter(kinds))), self._over, remedy.items).exec()
        elif items:
            bench = self._desk.bench
            answers = [(i.name, lambda name=i.id: bench.take_along(outing.id, name)) for i in items]
            PickDialog(_("Choose one"), _("Several could go."), answers, self._over).exec()

    def _plan(self, _outing: Outing, _remedy: Remedy, _finding: Finding) -> None:
        self._edit_plan()

    def _plan_plugs(self, outing: Outing, _remedy: Remedy, _finding: Finding) -> None:
        from kitlog.desktop.outing_page.power_plan import PowerPlan

        PowerPlan(self._desk, outing, self._over).exec()

    def _replan(self, outing: Outing, remedy: Remedy, _finding: Finding) -> None:
        self._take_change(outing, remedy)

    def _take_change(self, outing: Outing, remedy: Remedy) -> None:
        """Take a computed change of the power into the plan."""
        bench = self._desk.bench
        items = {item.id: item for item in bench.items()}
        plan = remedied(bench.assess(outing), remedy, items, bench.library)
        if plan is not None:
            self._desk.perform(lambda: bench.save_outing(plan))

    def _save(self, outing: Outing, **update: object) -> None:
        self._desk.perform(lambda: self._desk.bench.save_outing(outing.model_copy(update=update)))


_ACTS: dict[str, Callable[[Remedies, Outing, Remedy, Finding], None]] = {
    "swap": Remedies._swap,  # noqa: SLF001  # the table belongs to the class
    "leave_at_home": Remedies._leave,  # noqa: SLF001
    "take_along": Remedies._take,  # noqa: SLF001
    "tell_contact": Remedies._tell,  # noqa: SLF001
    "record_service": Remedies._record,  # noqa: SLF001
    "close_service": Remedies._service,  # noqa: SLF001
    "take_rules": Remedies._rules,  # noqa: SLF001
    "weigh_body": Remedies._weigh_body,  # noqa: SLF001
    "borrow_or_buy": Remedies._borrow,  # noqa: SLF001
    "answer": Remedies._answer,  # noqa: SLF001
    "choose": Remedies._choose,  # noqa: SLF001
    "enter_phases": Remedies._plan,  # noqa: SLF001
    "carry_water": Remedies._plan,  # noqa: SLF001
    "plan_plugs": Remedies._plan_plugs,  # noqa: SLF001
    "name_person": Remedies._plan,  # noqa: SLF001
    **dict.fromkeys(REPLANS, Remedies._replan),  # noqa: SLF001
}

CODES = frozenset(_ACTS) | frozenset(EDITS_ITEM)
"""Remedies that can be pressed."""
