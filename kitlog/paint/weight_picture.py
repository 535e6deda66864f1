"""What the weight picture shows: take-off and landing mass against the certified range, the reserve, the zones."""

from dataclasses import dataclass

from kitlog.paint.checked import finite
from kitlog.paint.mark import Mark


@dataclass(frozen=True, slots=True)
class TakeOff:
    """The mass at take-off: kg, its tolerance in kg, and the words "Take-off", "87.5", "± 1.0 kg"."""

    kg: float
    tolerance_kg: float
    label: str
    figure: str
    tolerance: str

    def __post_init__(self) -> None:
        finite(take_off_kg=self.kg, tolerance_kg=self.tolerance_kg)
        if self.tolerance_kg < 0:
            raise ValueError("a tolerance is no less than nothing")


@dataclass(frozen=True, slots=True)
class Pointer:
    """A mass in kg on a ruler, what it is called with its figure, and a second line."""

    kg: float
    text: str
    note: str = ""

    def __post_init__(self) -> None:
        finite(pointer_kg=self.kg)


@dataclass(frozen=True, slots=True)
class Range:
    """A range printed by a maker.

    Attributes:
        low_kg: low limit; None together with `high_kg` if the range is not known.
        high_kg: high limit.
        low_text: words at the low limit.
        high_text: words at the high limit.
        mark: the state of what is measured against it.
    """

    low_kg: float | None
    high_kg: float | None
    low_text: str = ""
    high_text: str = ""
    mark: Mark = Mark.NONE

    def __post_init__(self) -> None:
        finite(low_kg=self.low_kg, high_kg=self.high_kg)
        if (self.low_kg is None) != (self.high_kg is None):
            raise ValueError("a range has both limits or none")
        if self.low_kg is not None and self.high_kg is not None and self.low_kg > self.high_kg:
            raise ValueError("the low limit lies above the high limit")

    @property
    def limits(self) -> tuple[float, float] | None:
        """Both limits in kg, None if the range is not known."""
        return None if self.low_kg is None or self.high_kg is None else (self.low_kg, self.high_kg)


@dataclass(frozen=True, slots=True)
class ReserveBar:
    """The reserve's printed load with the masses that are held against it."""

    title: str
    caption: str
    range: Range
    pointers: tuple[Pointer, ...] = ()


@dataclass(frozen=True, slots=True)
class ZoneSums:
    """Masses by zone as ready-made texts: (name, figure) each, and their sum."""

    title: str
    caption: str
    cells: tuple[tuple[str, str], ...]
    total: tuple[str, str]


@dataclass(frozen=True, slots=True)
class WeightPicture:
    """The weight ruler with all that belongs to it.

    Attributes:
        title: of the picture; empty if it stands elsewhere.
        caption: what is measured against what.
        range: the certified range of the wing.
        take_off: mass at take-off; None if it is not known.
        landing: mass with all water and food gone.
        ballast: where an optional ballast would lead, with its words.
        out: word for what lies outside the range.
        middle: word for the middle of the range; empty to leave it out.
        not_known: words for a range that is not known.
        reserve: the bar below.
        zones: the row at the foot.
    """

    title: str
    caption: str
    range: Range
    take_off: TakeOff | None
    landing: Pointer | None = None
    ballast: Pointer | None = None
    out: str = ""
    middle: str = ""
    not_known: str = ""
    reserve: ReserveBar | None = None
    zones: ZoneSums | None = None

    @property
    def masses_kg(self) -> list[float]:
        """All masses that must be seen on the ruler."""
        found = [pointer.kg for pointer in (self.landing, self.ballast) if pointer is not None]
        if self.take_off is not None:
            found += [self.take_off.kg - self.take_off.tolerance_kg, self.take_off.kg + self.take_off.tolerance_kg]
        return found
