"""What a table of items and rules leaves behind in the data file: the log, and what is open."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from kitlog.kit.item import Item
from kitlog.kit.usage import Usage

if TYPE_CHECKING:
    from kitlog.workbench.reads import DueLine


@dataclass(frozen=True, slots=True)
class LeftBehind:
    """What a kit that is read from the export no longer knows.

    Attributes:
        logs: items with what the log holds of them, beyond the opening balance that the table has.
        opened: rules that are open after something that happened.
    """

    logs: "tuple[tuple[Item, Usage], ...]" = ()
    opened: "tuple[DueLine, ...]" = ()
