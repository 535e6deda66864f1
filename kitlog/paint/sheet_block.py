"""What a sheet is made of: blocks in groups, groups in parts, and the room that pages have for them."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtGui import QPainter

Paint = Callable[[QPainter, float, float], None]
"""Paints a block with its upper left corner at x, y."""


@dataclass(frozen=True, slots=True)
class Block:
    """One line, or one picture; with `keep` it is never the last of its column while another of its group follows."""

    height: float
    paint: Paint
    keep: bool = False


@dataclass(frozen=True, slots=True)
class Group:
    """Blocks that belong together.

    Attributes:
        gap: room above, left out at the head of a column.
        again: heading of what is continued in another column.
        whole: it is not split unless it is higher than a page.
    """

    blocks: tuple[Block, ...]
    gap: float = 0.0
    again: Block | None = None
    whole: bool = False

    @property
    def height(self) -> float:
        """Height of all blocks, without the gap."""
        return sum(block.height for block in self.blocks)

    @property
    def pieces(self) -> list[tuple[Block, ...]]:
        """What may be parted: blocks that keep together are one piece, and so are the last two, to stay in company."""
        pieces: list[tuple[Block, ...]] = []
        kept = False
        for block in self.blocks:
            pieces = [*pieces[:-1], (*pieces[-1], block)] if kept else [*pieces, (block,)]
            kept = block.keep
        return [*pieces[:-2], pieces[-2] + pieces[-1]] if len(pieces) > 1 else pieces

    @property
    def least(self) -> float:
        """The height that must be free where it begins: two pieces, or all of it."""
        return self.height if self.whole else total(sum(self.pieces[:2], ()))


@dataclass(frozen=True, slots=True)
class Part:
    """Groups under one heading that runs over all columns."""

    groups: tuple[Group, ...]
    head: Group | None = None
    columns: int = 1


@dataclass(frozen=True, slots=True)
class Frame:
    """The room on the pages: width, the gap between columns, tops of the first and of other pages, bottom of all."""

    width: float
    gutter: float
    first_top: float
    top: float
    bottom: float

    def column_width(self, columns: int) -> float:
        """Width of one column."""
        return (self.width - (columns - 1) * self.gutter) / columns

    def page_top(self, page: int) -> float:
        """Where a page begins; pages count from 0."""
        return self.top if page else self.first_top

    @property
    def fresh(self) -> float:
        """The room that every page but the first has."""
        return self.bottom - self.top


@dataclass(frozen=True, slots=True)
class Spot:
    """A block at its place."""

    page: int
    x: float
    y: float
    block: Block


def total(blocks: Sequence[Block]) -> float:
    """Height of all blocks."""
    return sum(block.height for block in blocks)
