"""What could go instead of a line: what a remedy offers, else what meets the same needs; each tried before it is shown.

Wing, harness, reserve and helmet are never offered for their mass: only where a remedy proposes them.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS
from kitlog.packing.assessment import Assessment, ListLine
from kitlog.packing.plan_edits import swapped
from kitlog.packing.serving import meets
from kitlog.wording.figures import mass_text
from kitlog.wording.lines import needs_by_id
from kitlog.wording.translate import _
from kitlog.workbench.workbench import Workbench

MOST = 5
"""So many are tried at most."""


@dataclass(frozen=True, slots=True)
class Swap:
    """An item that could go instead, and by how many g it is lighter (negative: heavier; None = not known)."""

    item: Item
    lighter_g: int | None

    @property
    def note(self) -> str:
        """Its mass, and how that compares."""
        mass = mass_text(self.item.all_mass_g)
        if self.lighter_g is None or self.lighter_g == 0:
            return mass if self.lighter_g is None else _("{mass}, as heavy").format(mass=mass)
        text = _("{mass}, {by} lighter") if self.lighter_g > 0 else _("{mass}, {by} heavier")
        return text.format(mass=mass, by=mass_text(abs(self.lighter_g)))


def swaps(line: ListLine, assessment: Assessment, bench: Workbench) -> Iterator[Swap]:
    """The swaps that leave no more stops and nothing more unknown, the proposed one first, then the lightest."""
    for item in candidates(line, assessment, bench)[:MOST]:
        draft = swapped(assessment.outing, line.item.id, item.id)
        counts, before = bench.assess(draft).counts, assessment.counts
        if counts.stop <= before.stop and counts.not_known <= before.not_known:
            mass = item.all_mass_g
            known = line.mass_g is not None and mass is not None
            yield Swap(item, (line.mass_g or 0) - (mass or 0) if known else None)


def candidates(line: ListLine, assessment: Assessment, bench: Workbench) -> list[Item]:
    """Items at hand that are not on the list and are of the right sort, not tried yet."""
    proposed = [
        remedy.items[1]
        for finding in assessment.findings
        for remedy in finding.remedies
        if remedy.code == "swap" and remedy.items[0] == line.item.id
    ]
    if line.item.kind in SET_KINDS:
        return [item for item in bench.items() if item.id in proposed]
    going = {one.item.id for one in assessment.lines}
    needs = [need for name, need in needs_by_id(assessment).items() if name in line.needs]
    found = [
        item
        for item in bench.items()
        if item.usable
        and not (item.battery and item.battery.swollen_on)
        and item.id not in going
        and item.kind not in SET_KINDS
        and (all(meets(item, need, bench.library) for need in needs) if needs else item.kind is line.item.kind)
    ]
    return sorted(found, key=lambda item: (item.id not in proposed, item.mass_g is None, item.mass_g or 0))
