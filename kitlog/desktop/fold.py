"""Where the layout folds: by the width and height there are, measured in the scale of the font."""

from dataclasses import dataclass

WIDE_PX, MIDDLE_PX, LOW_PX, TIGHT_PX, THIN_PX = 1200, 1000, 700, 480, 720


@dataclass(frozen=True, slots=True)
class Fold:
    """How much room the window gives.

    Attributes:
        middle: rail of icons only, plan and drawing folded.
        narrow: one column.
        thin: no room for the widest column of a table.
        low: strips one line less high.
        tight: lower still, as large letters on a small screen make it: second lines go into tool tips.
    """

    middle: bool = False
    narrow: bool = False
    thin: bool = False
    low: bool = False
    tight: bool = False

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
    return Fold(
        middle=wide < WIDE_PX, narrow=wide < MIDDLE_PX, thin=wide < THIN_PX, low=high < LOW_PX, tight=high < TIGHT_PX
    )
