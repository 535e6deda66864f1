"""What due states need of an item, without all the rest of it: lists of thousands are judged from a few columns."""

from datetime import date
from typing import NamedTuple, Protocol

from kitlog.kit.kinds import ItemState, Kind


class Serviced(Protocol):
    """Anything that has service rules: an `Item`, or its few columns."""

    @property
    def id(self) -> str:
        """Its stable name inside the data file."""

    @property
    def made_on(self) -> date | None:
        """Day of make."""

    @property
    def bought_on(self) -> date | None:
        """Day of purchase."""

    @property
    def first_used_on(self) -> date | None:
        """Day of first use."""

    @property
    def opening_h(self) -> float | None:
        """Airtime (h) before the log begins, None = not known."""

    @property
    def opening_launches(self) -> int | None:
        """Launches before the log begins, None = not known."""

    @property
    def opening_ground_h(self) -> float | None:
        """Ground handling (h) before the log begins, None = not known."""


class ServicedItem(NamedTuple):
    """The columns of an item that a service list shows or is reckoned from; named as in `Item`."""

    id: str
    name: str
    kind: Kind
    state: ItemState
    made_on: date | None
    bought_on: date | None
    first_used_on: date | None
    opening_h: float | None
    opening_launches: int | None
    opening_ground_h: float | None
    belongs_to: str
    lent_to: str
    back_by: date | None

    @property
    def kept(self) -> bool:
        """Whether it is still the pilot's to look after: neither retired nor lost."""
        return self.state not in {ItemState.RETIRED, ItemState.LOST}
