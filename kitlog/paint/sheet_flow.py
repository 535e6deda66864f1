"""The flow of a sheet: blocks into columns, columns onto pages. Arithmetic alone; what a block shows is its own affair.

A block is never split, nor are blocks that keep together. A group is split where that saves a page, at the end of a
page rather than within it, with some of it on either side, and continued under its heading said again; what must be
read at one look stays whole if a page holds it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from enum import IntEnum

from kitlog.paint.sheet_block import Block, Frame, Group, Part, Spot, total

SLACK = 0.01
"""Sums of heights may be off by so much."""

HALVINGS = 14
"""Steps in which columns are evened out: to a hair's breadth on any paper."""


@dataclass(frozen=True, slots=True)
class _Room:
    """A column; `high` is what it could hold if nothing else limited it, `last`: the next one is on another page."""

    page: int
    x: float
    top: float
    bottom: float
    high: float
    last: bool


def laid(parts: Sequence[Part], frame: Frame) -> tuple[tuple[Spot, ...], ...]:
    """All blocks by page, in the order in which they are read."""
    spots: list[Spot] = []
    place = (0, frame.first_top)
    for part in parts:
        if part.groups:
            placed = _placed(part, frame, place)
            spots += placed
            page = placed[-1].page
            place = page, max(spot.y + spot.block.height for spot in placed if spot.page == page)
    count = spots[-1].page + 1 if spots else 0
    return tuple(tuple(spot for spot in spots if spot.page == page) for page in range(count))


def _placed(part: Part, frame: Frame, place: tuple[int, float]) -> list[Spot]:
    head = [] if part.head is None else _heading(part, part.head, frame, place)
    if head:
        place = head[-1].page, head[-1].y + head[-1].block.height
    elif place[1] > frame.page_top(place[0]):
        place = place[0], place[1] + part.groups[0].gap
    tried = [_poured(_Pour(part, frame, place, parting)) for parting in Parting]
    ends = [(spots[0].page, spots[-1].page) for spots in tried]
    chosen = ends.index(ends[-1])
    evened = _evened(_Pour(part, frame, place, Parting(chosen)), tried[chosen]) if part.columns > 1 else tried[chosen]
    return head + evened


def _heading(part: Part, head: Group, frame: Frame, place: tuple[int, float]) -> list[Spot]:
    """The heading, on a page where what comes first under it has room as well."""
    page, y = place
    y += head.gap if y > frame.page_top(page) else 0.0
    need = head.height + min(part.groups[0].least, frame.fresh - head.height)
    if y > frame.page_top(page) and y + need > frame.bottom + SLACK:
        page, y = page + 1, frame.page_top(page + 1)
    spots = []
    for block in head.blocks:
        spots.append(Spot(page, 0.0, y, block))
        y += block.height
    return spots


class Parting(IntEnum):
    """Where groups may be split; the first that takes no more pages than the last is taken."""

    NOWHERE = 0
    AT_PAGE_ENDS = 1
    IN_ALL_COLUMNS = 2


@dataclass(frozen=True, slots=True)
class _Pour:
    """A part to be poured from a place on."""

    part: Part
    frame: Frame
    place: tuple[int, float]
    parting: Parting


def _evened(pour: _Pour, poured: list[Spot]) -> list[Spot]:
    """The same with the columns of the last page about equally long."""
    last = poured[-1].page
    low, high = (pour.place[1] if pour.place[0] == last else pour.frame.page_top(last)), pour.frame.bottom
    for _step in range(HALVINGS):
        middle = (low + high) / 2
        tried = _poured(pour, (last, middle))
        if tried[-1].page == last:
            poured, high = tried, middle
        else:
            low = middle
    return poured


def _poured(pour: _Pour, limit: tuple[int, float] = (-1, 0.0)) -> list[Spot]:
    rooms = _rooms(pour.part.columns, pour.frame, pour.place, limit)
    under = 0.0 if pour.part.head is None else pour.part.head.height
    pouring = _Pouring(rooms, pour.frame.fresh - under, pour.parting)
    for group in pour.part.groups:
        pouring.pour(group)
    return pouring.spots


def _rooms(columns: int, frame: Frame, place: tuple[int, float], limit: tuple[int, float]) -> Iterator[_Room]:
    """One column after the other, without end; `limit` says of one page where its columns end."""
    page, top = place
    step = frame.column_width(columns) + frame.gutter
    while True:
        bottom = limit[1] if page == limit[0] else frame.bottom
        high, last = frame.bottom - top, columns - 1
        yield from (_Room(page, number * step, top, bottom, high, number == last) for number in range(columns))
        page += 1
        top = frame.page_top(page)


@dataclass
class _Pouring:
    """Fills one room after the other; a room of the height `fresh`, a page under its heading, is the best there is."""

    rooms: Iterator[_Room]
    fresh: float
    parting: Parting
    spots: list[Spot] = field(default_factory=list)

    def __post_init__(self) -> None:
        self._turn()

    def pour(self, group: Group) -> None:
        """Place a group."""
        self._y += 0.0 if self._at_top else group.gap
        if not self._fits(group.height) and group.height <= self.fresh + SLACK and not self._parts(group):
            self._find_room(group.height)
        if self._fits(group.height):
            self._put(group.blocks)
        else:
            self._split(group)

    def _parts(self, group: Group) -> bool:
        """Whether a group that does not fit is split here."""
        if group.whole or self.parting is Parting.NOWHERE or not self._fits(group.least):
            return False
        is_end = self._room.last or group.height > self._room.high + SLACK
        return is_end or self.parting is Parting.IN_ALL_COLUMNS

    def _split(self, group: Group) -> None:
        for number, piece in enumerate(group.pieces):
            if self._find_room(total(piece)) and number and group.again is not None:
                self._put((group.again,))
            for block in piece:
                self._find_room(block.height)
                self._put((block,))

    def _fits(self, high: float) -> bool:
        return high <= self._room.bottom - self._y + SLACK

    def _find_room(self, high: float) -> bool:
        """Go on to a room in which so much fits, or to a whole page if none has; whether it is another room."""
        turned = False
        while not (self._fits(high) or self._is_fresh):
            self._turn()
            turned = True
        return turned

    @property
    def _at_top(self) -> bool:
        return self._y <= self._room.top

    @property
    def _is_fresh(self) -> bool:
        return self._at_top and self._room.bottom - self._room.top >= self.fresh - SLACK

    def _turn(self) -> None:
        self._room = next(self.rooms)
        self._y = self._room.top

    def _put(self, blocks: Sequence[Block]) -> None:
        for block in blocks:
            self.spots.append(Spot(self._room.page, self._room.x, self._y, block))
            self._y += block.height
