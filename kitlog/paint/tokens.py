"""The design's colours, spacing and type scale, for light and dark.

Eight colours are given; every tint, line and outline is a blend of two of them, so that a change of one
carries through. The tests compute the contrasts after WCAG 2.1, criteria 1.4.3 and 1.4.11.
"""

from dataclasses import dataclass

from PySide6.QtGui import QColor

from kitlog.paint.mark import Mark

SPACE_HALF, SPACE_1, SPACE_12, SPACE_2, SPACE_3, SPACE_4 = SPACING = (4, 8, 12, 16, 24, 32)
"""The spacing scale in pixels at a body size of 14 px; multiply by `type_scale.scale`."""

DARK_TINT_FACTOR = 1.5
"""How much stronger a tint must be on a dark ground to be seen as well."""


def blend(over: QColor, share: float, ground: QColor) -> QColor:
    """`over` laid on `ground` with an opacity of `share` (0 to 1), as one opaque colour."""

    def mixed(top: int, low: int) -> int:
        return round(low + (top - low) * share)

    return QColor(
        mixed(over.red(), ground.red()),
        mixed(over.green(), ground.green()),
        mixed(over.blue(), ground.blue()),
    )


@dataclass(frozen=True, slots=True)
class Tokens:
    """All colours of one theme.

    Attributes:
        dark: whether this is the dark theme.
        paper: the ground of the window.
        surface: the sheet, tiles, cards and fields.
        ink: text and outlines.
        muted: second lines, captions and *not known*.
        accent: here you are, here you can act, this much is there; never good or bad.
        fine: in date, fine.
        look: due soon, look.
        stop: overdue, stop.
    """

    dark: bool
    paper: QColor
    surface: QColor
    ink: QColor
    muted: QColor
    accent: QColor
    fine: QColor
    look: QColor
    stop: QColor

    def tint(self, colour: QColor, share: float, ground: QColor | None = None) -> QColor:
        """`colour` at `share` (1.5 times that in dark) on `ground`, or on the surface if none is given."""
        strength = min(1.0, share * (DARK_TINT_FACTOR if self.dark else 1.0))
        return blend(colour, strength, self.surface if ground is None else ground)

    @property
    def on_accent(self) -> QColor:
        """Text on a ground of full accent."""
        return self.paper if self.dark else self.surface

    @property
    def sunk(self) -> QColor:
        """A ground that lies a little deeper than the surface: strips, not known tiles, photo wells."""
        return blend(self.paper, 0.45 if self.dark else 0.6, self.surface)

    @property
    def hairline(self) -> QColor:
        """The thin line between rows and sections."""
        return blend(self.ink, 0.17 if self.dark else 0.13, self.paper)

    @property
    def strong_line(self) -> QColor:
        """The stronger line: edges of tiles, heads of tables."""
        return blend(self.ink, 0.28 if self.dark else 0.24, self.paper)

    @property
    def outline(self) -> QColor:
        """The outline of a control, at least 3:1 on every ground, the selected row included (WCAG 1.4.11)."""
        return blend(self.ink, 0.55, self.surface)

    @property
    def selection(self) -> QColor:
        """The ground of a selected row, of a filter that is on and of the open step."""
        return self.tint(self.accent, 0.10)

    @property
    def filled(self) -> QColor:
        """The solid part of a zone: this much is stowed."""
        return self.tint(self.accent, 0.34 if self.dark else 0.38)

    def state(self, mark: Mark | str) -> QColor:
        """The colour of a state's word and shape; *not known* and none are muted."""
        known = {Mark.FINE: self.fine, Mark.LOOK: self.look, Mark.STOP: self.stop}
        return known.get(Mark(mark), self.muted)

    def chip(self, mark: Mark | str) -> QColor:
        """The ground of a state chip; plain surface for *not known* and none."""
        return self._state_ground(mark, 0.10)

    def tile(self, mark: Mark | str) -> QColor:
        """The ground of a tile or exception row: tinted for *look* and *stop*, sunk for *not known*."""
        if Mark(mark) is Mark.NOT_KNOWN:
            return self.sunk
        return self.surface if Mark(mark) is Mark.FINE else self._state_ground(mark, 0.055)

    def _state_ground(self, mark: Mark | str, share: float) -> QColor:
        if Mark(mark) in {Mark.NOT_KNOWN, Mark.NONE}:
            return self.surface
        return self.tint(self.state(mark), share)


def _theme(dark: bool, colours: str) -> Tokens:  # noqa: FBT001  # private, called twice below
    return Tokens(dark, *(QColor(f"#{code}") for code in colours.split()))


LIGHT = _theme(False, "F6F3EC FFFFFF 1D2530 566070 0B6470 2F6B45 865600 A3322A")  # noqa: FBT003
DARK = _theme(True, "171B20 20262D E9E6DF A3ABB5 5CC3CF 7CC598 E0B354 F08A7E")  # noqa: FBT003
