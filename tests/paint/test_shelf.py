from hypothesis import given
from hypothesis import strategies as st

from kitlog.paint.shelf import Shelf

WIDTHS = st.lists(st.tuples(st.floats(-50, 350), st.floats(1, 80)), max_size=12)


@given(WIDTHS, st.floats(0, 10))
def test_nothing_on_a_shelf_overlaps_or_sticks_out(wishes: list[tuple[float, float]], gap: float):
    shelf = Shelf(0.0, 300.0, gap)
    taken: list[tuple[float, float]] = []
    for wanted, width in wishes:
        left = shelf.place(wanted, width)
        if left is not None:
            assert left >= -1e-5
            assert left + width <= 300.0 + 1e-5
            assert all(left + width + gap <= a + 1e-5 or left >= b + gap - 1e-5 for a, b in taken)
            taken.append((left, left + width))


def test_a_free_wish_is_granted_and_a_taken_one_goes_to_the_nearest_place():
    shelf = Shelf(0.0, 100.0, 2.0)
    assert shelf.place(40.0, 20.0) == 40.0
    assert shelf.place(45.0, 10.0) == 62.0
    assert shelf.place(45.0, 10.0, reach=5.0) is None
    assert shelf.place(0.0, 99.0) is None


def test_what_is_blocked_stays_free():
    shelf = Shelf(0.0, 100.0)
    shelf.block(30.0, 60.0)
    assert shelf.place(35.0, 10.0) == 20.0


def test_words_beside_a_mark_never_go_past_the_next_one():
    shelf = Shelf(0.0, 200.0, 4.0)
    shelf.block(50.0, 60.0)
    shelf.block(100.0, 110.0)
    assert shelf.beside(66.0, 44.0, 20.0) == (66.0, 20.0)  # room at the right
    assert shelf.beside(116.0, 96.0, 90.0) == (116.0, 84.0)  # longer than both sides: cut at the longer one
    shelf = Shelf(0.0, 200.0, 4.0)
    shelf.block(150.0, 160.0)
    assert shelf.beside(166.0, 144.0, 60.0) == (84.0, 60.0)  # room at the left only


@given(st.lists(st.floats(0, 300), min_size=1, max_size=6), st.floats(1, 200))
def test_words_beside_marks_cover_no_mark(marks: list[float], width: float):
    shelf = Shelf(0.0, 300.0, 2.0)
    for mark in marks:
        shelf.block(mark - 4, mark + 4)
    for mark in marks:
        left, taken = shelf.beside(mark + 7, mark - 7, width)
        assert all(left + taken <= other - 4 + 1e-6 or left >= other + 4 - 1e-6 or taken == 0 for other in marks)
