"""The list as it grows: lines taken so far, changed only here."""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from kitlog.kit.item import Item
from kitlog.kit.kinds import Zone
from kitlog.outing.library import Library
from kitlog.outing.needs import Need, Strength
from kitlog.packing.assessment import ListLine
from kitlog.packing.serving import serving
from kitlog.packing.suited import Suited


@dataclass(slots=True)
class Load:
    """Lines by item id, in the order in which they were taken."""

    library: Library
    suited: Suited
    lines: dict[str, ListLine] = field(default_factory=dict)

    def take(self, item: Item, n: int, *, pinned: bool = False, fitted: bool = False) -> None:
        """Take `n` pieces of an item, or raise the pieces of a line that is there."""
        there = self.lines.get(item.id)
        if there is not None:
            self.lines[item.id] = replace(there, n=max(there.n, n), pinned=there.pinned or pinned)
            return
        zone, zone_on_foot = usual_zones(item, self.library)
        self.lines[item.id] = ListLine(
            item=item,
            n=n,
            zone=zone,
            zone_on_foot=zone_on_foot,
            pinned=pinned,
            fitted=fitted,
            guessed=serving(item, self.library).guessed,
        )

    def ride(self, item_id: str, zone: Zone | None, zone_on_foot: Zone | None) -> None:
        """Let a line ride elsewhere on this outing."""
        line = self.lines[item_id]
        foot = zone_on_foot or (Zone.LEFT_IN_CAR if zone is Zone.LEFT_IN_CAR else line.zone_on_foot)
        self.lines[item_id] = replace(line, zone=zone or line.zone, zone_on_foot=foot)

    def fill(self, item_id: str, content_ml: int) -> None:
        """Put water into a vessel's line."""
        self.lines[item_id] = replace(self.lines[item_id], content_ml=content_ml)

    def meeting(self, need: Need) -> list[ListLine]:
        """The lines in the air that are of the right sort for a need."""
        right = self.suited.to(need)
        return [line for line in self.lines.values() if not line.in_car and line.item.id in right]

    def serve(self, need: Need, strength: Strength, lines: Iterable[ListLine]) -> None:
        """Note that lines meet a need."""
        for item_id in [line.item.id for line in lines]:
            line = self.lines[item_id]
            strongest = strength if line.strength is None or strength.rank < line.strength.rank else line.strength
            needs = line.needs if need.id in line.needs else (*line.needs, need.id)
            self.lines[item_id] = replace(line, needs=needs, strength=strongest)


def usual_zones(item: Item, library: Library) -> tuple[Zone, Zone]:
    """Where an item rides in the air and on foot: its own zones, else those of its kind.

    A thing that the pilot wears or leaves in the car by choice does so on foot too, unless said otherwise.
    """
    facts = library.facts(item.kind)
    follows = item.zone in {Zone.WORN, Zone.LEFT_IN_CAR}
    on_foot = item.zone if follows and item.zone is not None else facts.zone_on_foot
    return item.zone or facts.zone, item.zone_on_foot or on_foot
