"""One thing the pilot owns or has borrowed, or a counted set of the same."""

from typing import Annotated

from pydantic import Field

from kitlog.kit.facets import Bank, Battery, Charger, Garment, Harness, Reserve, Vessel, Wing
from kitlog.kit.kinds import USABLE_STATES, ItemState, Kind, MassSource, Zone
from kitlog.kit.paper import Paper
from kitlog.units.days import Day
from kitlog.units.model import Frozen
from kitlog.units.text import Line, Name, Note

MAX_PIECE_G = 200_000
MAX_QUANTITY = 10_000


class Item(Frozen):
    """An item of the kit.

    Attributes:
        id: stable name inside the data file.
        quantity: pieces, 0 = used up; `mass_g` is the mass of one piece in whole grams, None = not known.
        zone, zone_on_foot: where it rides in the air and on foot; None = usual for its kind.
        fitted_to: id of the item it moves with (this reserve in that harness).
        serves: what it can do, in the pilot's own word; empty = guessed from kind and name, and shown as a guess.
        opening_h, opening_launches: airtime (h) and launches before the log begins; None = not known.
        opening_ground_h: hours of ground handling before the log begins; None = not known.
        belongs_to: whose it is, if borrowed; lent_to: who has it, if lent; back_by: when it goes back or comes back.
        value: what it cost, in the pilot's currency.
        volume_ml: packed volume of one piece.
        papers: photos and papers of the item itself: bill, manual, what it looks like.
    """

    id: Name
    name: Name
    kind: Kind = Kind.OTHER
    quantity: Annotated[int, Field(ge=0, le=MAX_QUANTITY)] = 1
    mass_g: Annotated[int, Field(ge=0, le=MAX_PIECE_G)] | None = None
    mass_source: MassSource = MassSource.GUESS
    zone: Zone | None = None
    zone_on_foot: Zone | None = None
    fitted_to: Name | None = None
    serves: tuple[Name, ...] = ()
    state: ItemState = ItemState.IN_SERVICE
    maker: Line = ""
    model: Line = ""
    serial: Line = ""
    made_on: Day | None = None
    bought_on: Day | None = None
    first_used_on: Day | None = None
    opening_h: Annotated[float, Field(ge=0, le=100_000)] | None = None
    opening_launches: Annotated[int, Field(ge=0, le=1_000_000)] | None = None
    opening_ground_h: Annotated[float, Field(ge=0, le=100_000)] | None = None
    belongs_to: Line = ""
    lent_to: Line = ""
    back_by: Day | None = None
    colour: Line = ""
    value: Annotated[float, Field(ge=0, le=1e9)] | None = None
    volume_ml: Annotated[int, Field(ge=0, le=1_000_000)] | None = None
    notes: Note = ""
    papers: tuple[Paper, ...] = ()
    wing: Wing | None = None
    harness: Harness | None = None
    reserve: Reserve | None = None
    battery: Battery | None = None
    bank: Bank | None = None
    charger: Charger | None = None
    garment: Garment | None = None
    vessel: Vessel | None = None

    @property
    def usable(self) -> bool:
        """Whether it is at hand: in service or borrowed, and not used up."""
        return self.state in USABLE_STATES and self.quantity > 0

    @property
    def all_mass_g(self) -> int | None:
        """Mass of all its pieces in g, None where one piece's mass is not known."""
        return None if self.mass_g is None else self.mass_g * self.quantity


FACETS = ("wing", "harness", "reserve", "battery", "bank", "charger", "garment", "vessel")
"""Names of the facet fields of `Item`."""
