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

    @property
    def side_px(self) -> int:
        """Room at the sides of a page, in px of the design."""
        return 16 if self.middle else 24

    def head_px(self, usual: int) -> int:
        """Room above a page, in px of the design: the usual, or less where it is low."""
        return 12 if self.low else usual


def fold_of(width: int, height: int, scale: float) -> Fold:
    """The fold for a window of this size; larger letters fold earlier rather than being cut."""
    wide, high = width / scale, height / scale
    return Fold(middle=wide < WIDE_PX, narrow=wide < MIDDLE_PX, low=high < LOW_PX)
