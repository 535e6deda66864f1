"""A row of a printed list: a box to tick, a name, a remark, a figure, and a thin line under them."""

from dataclasses import dataclass

from kitlog.paint.sheet_block import Block, Paint
from kitlog.paint.sheet_lines import (
    NAME,
    QUIET,
    ROW,
    STRONG,
    Style,
    all_of,
    box,
    hairline,
    kept,
    lines,
    lower,
    write,
    write_right,
)
from kitlog.paint.sheet_setting import Setting

BETWEEN = 10.0
"""Room between one column of words and the next."""

BLANK = " "
"""Stands where somebody has typed no name, so that the line is there."""


@dataclass(frozen=True, slots=True)
class Look:
    """How a row looks: its name, its remark, and whether it has a box to tick."""

    name: Style = NAME
    remark: Style = QUIET
    ticked: bool = True

    def left(self, setting: Setting) -> float:
        """Where the words begin."""
        return setting.box + setting.px(BETWEEN) if self.ticked else 0.0


PLAIN = Look(ticked=False)


def row(setting: Setting, words: tuple[str, str, str], width: float, look: Look = Look()) -> tuple[Block, ...]:
    """Name, remark and figure on one line where there is room, else the remark under the name."""
    return closed(setting, named(setting, words, look, width), look, width)


def closed(setting: Setting, blocks: list[Block], look: Look, width: float) -> tuple[Block, ...]:
    """Blocks of a row with the line under them."""
    foot = Block(setting.px(4), hairline(setting, look.left(setting), width))
    return kept([*blocks, foot])


def named(setting: Setting, words: tuple[str, str, str], look: Look, width: float) -> list[Block]:
    """The same without the line under it."""
    name, remark, figure = words
    text, left = setting.text, look.left(setting)
    right = text.width(figure, STRONG.role) + setting.px(BETWEEN) if figure else 0.0
    first, *others = lines(setting, name or BLANK, look.name, width - right, left)
    high = setting.px(ROW)
    paints: list[Paint] = [box(setting, high)] if look.ticked else []
    paints.append(lower(first.paint, (high - first.height) / 2))
    beside = left + text.width(name, look.name.role) + setting.px(BETWEEN)
    fits = not others and remark and beside + text.width(remark, look.remark.role) <= width - right
    if fits:
        paints.append(write(setting, remark, look.remark, beside, high + setting.px(1)))
    if figure:
        paints.append(write_right(setting, figure, STRONG, width, high))
    rest = [] if fits else lines(setting, remark, look.remark, width, left)
    return [Block(high, all_of(paints)), *others, *rest]
