"""The flow of blocks onto pages: rules of the printer's trade (no heading alone at a foot), common practice, no source."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtGui import QPainter

from kitlog.paint.sheet_block import Block, Frame, Group, Part, Spot
from kitlog.paint.sheet_flow import laid

HIGH = 100.0
FRAME = Frame(width=210.0, gutter=10.0, first_top=0.0, top=10.0, bottom=110.0)


def block(height: float, *, keep: bool = False) -> Block:
    def paint(_painter: QPainter, _x: float, _y: float) -> None:
        return None

    return Block(height, paint, keep)


def group(*heights: float, keep: int = 0, gap: float = 0.0, whole: bool = False, again: Block | None = None) -> Group:
    """A group whose first `keep` blocks stay with the next."""
    blocks = tuple(block(height, keep=number < keep) for number, height in enumerate(heights))
    return Group(blocks, gap, again, whole)


def of(pages: tuple[tuple[Spot, ...], ...]) -> list[tuple[int, float, float]]:
    return [(spot.page, spot.x, spot.y) for page in pages for spot in page]


def test_blocks_follow_each_other_and_turn_the_page() -> None:
    pages = laid([Part((group(60), group(50), group(60)))], FRAME)
    assert of(pages) == [(0, 0, 0), (0, 0, 60), (1, 0, 10)]


def test_the_gap_is_left_out_at_the_head_of_a_column() -> None:
    pages = laid([Part((group(60, gap=5), group(40, gap=5), group(60, gap=5)))], FRAME)
    assert of(pages) == [(0, 0, 0), (0, 0, 65), (1, 0, 10)]


def test_a_heading_goes_with_what_comes_first_under_it() -> None:
    head = group(20, gap=4)
    stays = laid([Part((group(50),)), Part((group(30),), head)], FRAME)
    assert of(stays) == [(0, 0, 0), (0, 0, 54), (0, 0, 74)]
    turns = laid([Part((group(70),)), Part((group(30),), head)], FRAME)
    assert of(turns) == [(0, 0, 0), (1, 0, 10), (1, 0, 30)]


def test_columns_of_the_last_page_are_evened_out() -> None:
    pages = laid([Part(tuple(group(10) for _ in range(6)), columns=2)], FRAME)
    assert of(pages) == [(0, 0, 0), (0, 0, 10), (0, 0, 20), (0, 110, 0), (0, 110, 10), (0, 110, 20)]


def test_a_group_is_split_where_that_saves_a_page_and_says_its_heading_again() -> None:
    again = block(6, keep=True)
    parts = [Part((group(60),)), Part((group(8, 20, 20, 20, 20, 20, keep=1, again=again),))]
    (first, second) = laid(parts, FRAME)
    assert [spot.block.height for spot in first] == [60, 8, 20, 20]
    assert [spot.block.height for spot in second] == [6, 20, 20, 20]


def test_the_last_two_lines_of_a_group_stay_together() -> None:
    parts = [Part((group(50),)), Part((group(20, 20, 20, 20), group(60)))]
    assert [len(page) for page in laid(parts, FRAME)] == [3, 3]


def test_what_saves_no_page_is_not_split() -> None:
    parts = [Part((group(60), group(20, 20, 20, 20), group(20)))]
    assert [len(page) for page in laid(parts, FRAME)] == [1, 5]


def test_a_group_goes_to_the_next_column_of_its_page_rather_than_be_split() -> None:
    first, second = laid([Part((group(60), group(20, 20, 20), group(20, 20, 20, 20, 20, 20, 20)), columns=2)], FRAME)
    assert [spot.x for spot in first] == [0, 110, 110, 110, 110, 110]
    assert [spot.block.height for spot in second] == [20, 20, 20, 20, 20]


def test_what_is_read_at_one_look_is_not_split() -> None:
    parts = [Part((group(60),)), Part((group(20, 20, 20, 20, 20, whole=True), group(90)))]
    assert [len(page) for page in laid(parts, FRAME)] == [1, 5, 1]
    assert [len(page) for page in laid([Part((group(*[20.0] * 7, whole=True),))], FRAME)] == [5, 2]


def test_nothing_at_all() -> None:
    assert laid([], FRAME) == ()
    assert laid([Part((), group(10))], FRAME) == ()


HEIGHTS = st.lists(st.floats(1, 60), min_size=1, max_size=12)
GROUPS = st.builds(
    lambda heights, keep, gap, whole: group(*heights, keep=min(keep, len(heights) - 1), gap=gap, whole=whole),
    HEIGHTS,
    st.integers(0, 2),
    st.floats(0, 20),
    st.booleans(),
)
PARTS = st.lists(
    st.builds(
        lambda groups, head, columns: Part(tuple(groups), group(12, gap=8) if head else None, columns),
        st.lists(GROUPS, min_size=1, max_size=6),
        st.booleans(),
        st.sampled_from([1, 2]),
    ),
    min_size=1,
    max_size=4,
)


@given(PARTS)
def test_every_block_stands_once_in_its_order_and_on_its_page(parts: list[Part]) -> None:
    spots = [spot for page in laid(parts, FRAME) for spot in page]
    wanted = [b for part in parts for g in ((part.head,) if part.head else ()) + part.groups for b in g.blocks]
    assert [id(spot.block) for spot in spots] == [id(one) for one in wanted]
    places = [(spot.page, spot.x, spot.y) for spot in spots]
    for spot, (page, x, y) in zip(spots, places, strict=True):
        assert FRAME.page_top(page) <= y + 0.01
        assert y + spot.block.height <= FRAME.bottom + 0.02
        assert x + FRAME.column_width(2) <= FRAME.width
    assert [page for page, _x, _y in places] == sorted(page for page, _x, _y in places)


@given(PARTS)
def test_nothing_lies_on_anything_else(parts: list[Part]) -> None:
    wide = {id(b): FRAME.column_width(p.columns) for p in parts for g in p.groups for b in g.blocks}
    for page in laid(parts, FRAME):
        rooms = [(s.x, s.x + wide.get(id(s.block), FRAME.width), s.y, s.y + s.block.height) for s in page]
        for number, one in enumerate(rooms):
            for other in rooms[number + 1 :]:
                beside = one[1] <= other[0] + 0.01 or other[1] <= one[0] + 0.01
                assert beside or one[3] <= other[2] + 0.02 or other[3] <= one[2] + 0.02


@given(PARTS)
def test_what_keeps_together_is_never_parted(parts: list[Part]) -> None:
    """As far as a page can hold it."""
    places = {id(spot.block): (spot.page, spot.x) for page in laid(parts, FRAME) for spot in page}
    for part in parts:
        if part.head is not None:
            assert places[id(part.head.blocks[-1])][0] == places[id(part.groups[0].blocks[0])][0]
        for one in part.groups:
            for piece in one.pieces:
                if sum(b.height for b in piece) <= FRAME.fresh - 12 - 0.02:
                    assert len({places[id(b)] for b in piece}) == 1


@pytest.mark.parametrize("columns", [1, 2])
def test_a_list_of_120_lines_fills_its_pages(columns: int) -> None:
    zones = tuple(group(8, *[5.0] * 40, keep=1, gap=4) for _ in range(3))
    pages = laid([Part(zones, columns=columns)], FRAME)
    least = (3 * 208 + 10) / (columns * FRAME.fresh)
    assert least <= len(pages) <= least + 1.5
