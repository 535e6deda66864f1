"""What can be done to outings: plan, answers, overrides, ticks."""

from collections.abc import Callable

from kitlog.fault import InputFault
from kitlog.outing.conditions import Condition
from kitlog.outing.outing import Answer, Outing, Override, Phase
from kitlog.outing.ticks import Step, Tick
from kitlog.packing.naming import with_ids
from kitlog.packing.plan_edits import left_out, swapped, taken_along
from kitlog.store.writer import Writer
from kitlog.workbench.reads import WORKING_ON
from kitlog.workbench.service_commands import ServiceCommands


class OutingCommands(ServiceCommands):
    """Writes to outings and their repack."""

    def save_outing(self, outing: Outing) -> str:
        """Add or change an outing; overrides that are on record stay there as they are.

        Raises:
            InputFault: an unknown or ambiguous item is named.
        """
        known = self.outing(outing.id)
        plan = with_ids(outing, self.items())
        if known is not None:
            on_record = {(o.finding, o.at): o for o in known.overrides}
            given = {(o.finding, o.at): o for o in plan.overrides}
            plan = plan.model_copy(update={"overrides": tuple((on_record | given | on_record).values())})
        code = "outing.add" if known is None else "outing.edit"
        self._write(code, lambda w: w.put(plan), {"name": plan.name})
        return plan.id

    def change_phase(self, outing_id: str, number: int, phase: Phase) -> None:
        """Put another phase in place of one, as with other hours; `number` from 0.

        Raises:
            InputFault: ``outing.unknown``.
        """
        outing = self._planned(outing_id)
        phases = (*outing.phases[:number], phase, *outing.phases[number + 1 :])
        hours = {"low_h": phase.low_h, "likely_h": phase.likely_h, "high_h": phase.high_h}
        self._write("outing.phase", self._putting(outing, phases=phases), {"phase": phase.name, **hours})

    def delete_outing(self, outing_id: str) -> None:
        """Delete an outing with its ticks; its overrides stay on record, struck through."""
        outing = self._planned(outing_id)
        self._write("outing.delete", lambda w: w.remove(Outing, outing_id, now=self.now()), {"name": outing.name})

    def work_on(self, outing_id: str) -> None:
        """Choose the outing being worked on; it is no step to undo."""
        self._write("outing.work_on", lambda w: w.put_preference(WORKING_ON, outing_id), undo=False)

    def answer(self, outing_id: str, check: str, value: str, source: str = "") -> None:
        """Answer a check of an outing now; an earlier answer to it is replaced."""
        outing = self._planned(outing_id)
        answer = Answer(check=check, value=value, source=source, at=self.now())
        answers = (*(a for a in outing.answers if a.check != check), answer)
        self._write("outing.answer", self._putting(outing, answers=answers), {"check": check})

    def tick_condition(self, outing_id: str, condition: str, holds: bool | None) -> None:  # noqa: FBT001  # yes, no, open
        """Tick a condition yes or no, or leave it open again (None).

        Raises:
            InputFault: ``field.not_in_list`` with ``value`` and ``expected``.
        """
        outing = self._planned(outing_id)
        try:
            named = Condition(condition)
        except ValueError:
            known = ", ".join(Condition)
            raise InputFault("field.not_in_list", field="conditions", value=condition, expected=known) from None
        kept = {c: h for c, h in outing.conditions.items() if c is not named}
        conditions = kept | ({} if holds is None else {named: holds})
        self._write("outing.condition", self._putting(outing, conditions=conditions), {"condition": named.value})

    def override(self, outing_id: str, finding: str, reason: str) -> None:
        """Close a stop with a written reason; it stays on record.

        Raises:
            InputFault: ``override.no_reason``.
        """
        if not reason.strip():
            raise InputFault("override.no_reason", finding=finding)
        outing = self._planned(outing_id)
        entry = Override(finding=finding, reason=reason.strip(), at=self.now())
        self._write(
            "outing.override", self._putting(outing, overrides=(*outing.overrides, entry)), {"finding": finding}
        )

    def tick(self, tick: Tick) -> None:
        """Set a tick of the repack; that of the last step closes it."""
        code = "repack.close" if tick.step is Step.CLOSE else "tick"
        self._write(code, lambda w: w.put(tick), {"line": tick.line, "step": tick.step.value})

    def untick(self, outing_id: str, step: Step, line: str) -> None:
        """Take a tick away; without that of the last step the repack is open again."""
        self._write(
            "repack.reopen" if step is Step.CLOSE else "untick",
            lambda w: w.remove(Tick, outing_id, step.value, line, now=self.now()),
            {"line": line, "step": step.value},
        )

    def swap(self, outing_id: str, item_id: str, instead_id: str) -> None:
        """Let one item go instead of another on an outing."""
        item, instead = self._known(item_id), self._known(instead_id)
        outing = swapped(self._planned(outing_id), item_id, instead_id)
        self._put("outing.swap", (outing,), {"name": item.name, "instead": instead.name})

    def leave_out(self, outing_id: str, item_id: str) -> None:
        """Leave an item at home on an outing."""
        item = self._known(item_id)
        self._put("outing.leave_out", (left_out(self._planned(outing_id), item_id),), {"name": item.name})

    def take_along(self, outing_id: str, item_id: str) -> None:
        """Pin an item to an outing, in the air even if it usually waits in the car."""
        item = self._known(item_id)
        outing = taken_along(self._planned(outing_id), item, self.library)
        self._put("outing.take_along", (outing,), {"name": item.name})

    def _putting(self, outing: Outing, **update: object) -> Callable[[Writer], object]:
        changed = outing.model_copy(update=update)
        return lambda writer: writer.put(changed)

    def _planned(self, outing_id: str) -> Outing:
        outing = self.outing(outing_id)
        if outing is None:
            raise InputFault("outing.unknown", name=outing_id)
        return outing
