import pytest
from PySide6.QtCore import QPointF, QRectF

from kitlog.paint.outline import fitted, outline


def test_an_outline_is_drawn_as_written():
    path = outline("M 0,0 L 10,0 L 10,10 Z M 20,20 Q 25,15 30,20 C 30,25 25,30 20,30 Z")
    assert path.boundingRect() == QRectF(0, 0, 30, 30)
    assert path.contains(QPointF(9, 2))
    assert not path.contains(QPointF(2, 9))
    assert path.contains(QPointF(24, 24))


def test_what_is_no_command_is_refused():
    with pytest.raises(ValueError, match="'X'"):
        outline("M 0,0 X 3,3")
    with pytest.raises(ValueError, match="unpack"):
        outline("M 1 2")


def test_a_drawing_keeps_its_shape_in_the_middle_of_its_room():
    place = fitted(100, 50, QRectF(10, 10, 400, 100))
    assert place.map(QPointF(0, 0)) == QPointF(110, 10)
    assert place.map(QPointF(100, 50)) == QPointF(310, 110)
