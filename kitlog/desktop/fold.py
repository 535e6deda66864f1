"""Where the layout folds: by the width and height there are, measured in the scale of the font."""

from dataclasses import dataclass

WIDE_PX, MIDDLE_PX, LOW_PX = 1200, 1000, 700


@dataclass(frozen=True, slots=True)
class Fold:
    """How much room the window gives.

    Attributes:
        middle: rail of icons only, plan and drawing folded.
        narrow: one column.
        low: strips one line less high.
    """

    middle: bool = False
    narrow: bool = False
    low: bool = False


def fold_of(width: int, height: int, scale: float) -> Fold:
    """The fold for a window of this size; larger letters fold earlier rather than being cut."""
    wide, high = width / scale, height / scale
    return Fold(middle=wide < WIDE_PX, narrow=wide < MIDDLE_PX, low=high < LOW_PX)
