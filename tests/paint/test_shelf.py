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
