"""What the zone drawing shows: how much of each zone's mass is stowed, and the words."""

from dataclasses import dataclass

from kitlog.paint.checked import finite
from kitlog.paint.mark import Mark


@dataclass(frozen=True, slots=True)
class ZoneFill:
    """One zone.

    Attributes:
        zone: its word, such as "cockpit" or "rucksack"; a zone without a place in the drawing is not drawn.
        title: its name.
        note: mass and what of it is stowed, in words.
        mass_g: mass of all that belongs there.
        stowed_g: mass of what is in it already.
        detail: what is still out, in words.
        mass: its mass alone, in words, for the bars.
        mark: *look* or *stop* if something in it is wrong.
    """

    zone: str
    title: str
    note: str
    mass_g: float
    stowed_g: float
    detail: str = ""
    mass: str = ""
    mark: Mark = Mark.NONE

    def __post_init__(self) -> None:
        finite(mass_g=self.mass_g, stowed_g=self.stowed_g)
        if not 0 <= self.stowed_g <= self.mass_g:
            raise ValueError("what is stowed lies between nothing and the zone's mass")

    @property
    def share(self) -> float | None:
        """Stowed share of the mass; None for an empty zone."""
        return self.stowed_g / self.mass_g if self.mass_g > 0 else None


@dataclass(frozen=True, slots=True)
class ZoneFlag:
    """What is wrong with the carabiners: a state and its word."""

    mark: Mark
    text: str


@dataclass(frozen=True, slots=True)
class ZoneLine:
    """A line beside the rucksack: what, how much (a figure is set as one), and a note under it."""

    title: str
    text: str
    note: str = ""
    is_figure: bool = False


@dataclass(frozen=True, slots=True)
class ZonePicture:
    """The drawing with its words.

    Attributes:
        title: of the drawing; empty if it stands elsewhere.
        stowed: legend of the solid ground.
        to_stow: legend of the hatch.
        zones: in any order.
        carabiner: the flag at the carabiners, if something is wrong with them.
        lines: beside the rucksack, under its own words.
    """

    title: str
    stowed: str
    to_stow: str
    zones: tuple[ZoneFill, ...]
    carabiner: ZoneFlag | None = None
    lines: tuple[ZoneLine, ...] = ()

    def fill(self, zone: str) -> ZoneFill | None:
        """The zone of that word, if it is shown."""
        return next((fill for fill in self.zones if fill.zone == zone), None)
