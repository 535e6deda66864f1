"""What all parts of a printed sheet share: letters, colours, measures, and the breaking of text into lines."""

from dataclasses import dataclass, replace
from functools import cached_property

from PySide6.QtGui import QColor, QFont, QPagedPaintDevice, QTextLayout, QTextOption

from kitlog.paint.lettering import Lettering
from kitlog.paint.tokens import LIGHT, Tokens
from kitlog.paint.type_scale import TABULAR, Role, font

BODY_PT = 9.7
"""Size of the body in points; the smallest letters are then 8.3 pt, and 11 px (8.25 pt) is the least on paper."""

MARGIN_MM = 12.0
BOX_MM = 4.0
MM_PER_INCH = 25.4

PRINT: Tokens = replace(
    LIGHT,
    paper=QColor("#ffffff"),
    ink=QColor("#000000"),
    muted=QColor("#444c58"),
    accent=QColor("#084f59"),
    fine=QColor("#20553a"),
    look=QColor("#674200"),
    stop=QColor("#8a2019"),
)
"""Ink on white paper: all at least 7:1 (WCAG 2.1, 1.4.6), so that a printer without colours shows them as well."""

THIN, NO_BREAK = "\u2009", "\u00a0"
"""A thin space groups digits; lines do not break there."""

_LIGATURES = ("liga", "clig", "calt")


def paper_font(application: QFont) -> QFont:
    """The font of a sheet: that of the application, its size set for paper.

    No ligatures and no other forms of digits: in a PDF they would have no letters behind them, so that nothing could
    find, read out or copy them. In most fonts digits have one width as they are.
    """
    made = QFont(application)
    made.setPointSizeF(BODY_PT)
    made.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    for name in _LIGATURES:
        made.setFeature(QFont.Tag(name), 0)
    made.setFeature(TABULAR, 0)
    return made


@dataclass(frozen=True)
class Setting:
    """Letters and colours on one device.

    Attributes:
        base: the font of the body.
        device: what is painted on.
    """

    base: QFont
    device: QPagedPaintDevice
    tokens: Tokens = PRINT

    @cached_property
    def text(self) -> Lettering:
        """The letters in all their roles."""
        return Lettering(self.base, self.device)

    @cached_property
    def box(self) -> float:
        """Side of a box to tick, in units of the device."""
        return BOX_MM / MM_PER_INCH * self.device.logicalDpiX()

    def px(self, design_px: float) -> float:
        """A measure of the design in units of the device."""
        return self.text.px(design_px)

    def broken(self, words: str, role: Role, width: float) -> list[str]:
        """`words` in lines of at most `width`; nothing is ever cut, a word that is too long is broken."""
        return [line for part in words.split("\n") for line in self._broken(part.strip(), role, width)]

    def _broken(self, words: str, role: Role, width: float) -> list[str]:
        if self.text.width(words, role) <= width:
            return [words]
        layout = QTextLayout(words.replace(THIN, NO_BREAK), font(self.base, role), self.device)
        option = QTextOption()
        option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
        layout.setTextOption(option)
        layout.beginLayout()
        lines = []
        while (line := layout.createLine()).isValid():
            line.setLineWidth(max(width, 1.0))
            lines.append(_cut(words, line.textStart(), line.textLength()))
        layout.endLayout()
        return lines


def _cut(words: str, start: int, length: int) -> str:
    """A stretch of `words` counted in UTF-16, as Qt counts."""
    units = words.encode("utf-16-le")
    return units[2 * start : 2 * (start + length)].decode("utf-16-le", "replace").strip()
