"""When an action can be done: named rules on a snapshot of where the window stands."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Standing:
    """What there is, and what is selected on the pages that are open.

    Attributes:
        items, rules, outings: how many there are.
        demo: whether a demo kit can be opened.
        selected_items, selected_rules, selected_flights: how many are selected.
        outing: whether an outing is worked on.
        repack_line: whether a line of the repack can be ticked now.
    """

    items: int = 0
    rules: int = 0
    outings: int = 0
    demo: bool = False
    undoable: bool = False
    redoable: bool = False
    outing: bool = False
    selected_items: int = 0
    selected_rules: int = 0
    selected_flights: int = 0
    repack_line: bool = False


RULES: Mapping[str, Callable[[Standing], bool]] = {
    "": lambda _: True,
    "items": lambda s: s.items > 0,
    "one item": lambda s: s.selected_items == 1,
    "some items": lambda s: s.selected_items > 0,
    "rules": lambda s: s.rules > 0,
    "one rule": lambda s: s.selected_rules == 1,
    "outing": lambda s: s.outing,
    "outings": lambda s: s.outings > 0,
    "one flight": lambda s: s.selected_flights == 1,
    "repack line": lambda s: s.repack_line,
    "undoable": lambda s: s.undoable,
    "redoable": lambda s: s.redoable,
    "demo": lambda s: s.demo,
}
"""By the names that the action table uses."""
