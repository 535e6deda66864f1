import pytest
from paint_canvas import GROUND, changed, only_inside, painted
from PySide6.QtCore import QPointF, QRectF

from kitlog.paint import bench, item_sketch, luggage_tag, step_ring
from kitlog.paint.mark import Mark
from kitlog.paint.step_ring import StepRing
from kitlog.paint.tokens import DARK, LIGHT, Tokens

DRAWINGS = {
    "bench": bench.paint,
    "tag": luggage_tag.paint,
    "ring": lambda p, r, t: step_ring.paint(p, r, StepRing(2, 0.5), t),
    "wing": lambda p, r, t: item_sketch.paint(p, r, "wing", t),
    "harness": lambda p, r, t: item_sketch.paint(p, r, "harness", t),
    "helmet": lambda p, r, t: item_sketch.paint(p, r, "helmet", t),
    "box": lambda p, r, t: item_sketch.paint(p, r, "radio", t),
}


@pytest.mark.parametrize("name", DRAWINGS)
@pytest.mark.parametrize("theme", [LIGHT, DARK])
@pytest.mark.parametrize(("size", "ratio"), [((300, 90), 1.0), ((90, 60), 2.0), ((30, 120), 1.0)])
def test_a_drawing_stays_in_its_room_and_is_seen(name: str, theme: Tokens, size: tuple[float, float], ratio: float):
    rect = QRectF(20, 20, *size)
    image = painted((size[0] + 40, size[1] + 40), lambda p: DRAWINGS[name](p, rect, theme), ratio)
    assert only_inside(image, QRectF(rect.topLeft() * ratio, rect.size() * ratio), GROUND)
    assert changed(image, painted((size[0] + 40, size[1] + 40), lambda p: None, ratio)) > 60


@pytest.mark.parametrize("name", DRAWINGS)
def test_a_room_of_no_size_is_no_fault(name: str):
    image = painted((40, 40), lambda p: DRAWINGS[name](p, QRectF(10, 10, 0, 0), LIGHT))
    assert only_inside(image, QRectF(8, 8, 4, 4), GROUND)


def ring_image(ring: StepRing):
    return painted((48, 48), lambda p: step_ring.paint(p, QRectF(0, 0, 48, 48), ring, LIGHT))


def test_a_step_fills_with_what_is_done():
    accent = LIGHT.accent.rgba()

    def filled(done: float) -> int:
        image = ring_image(StepRing(3, done))
        return sum(image.pixel(x, y) == accent for x in range(48) for y in range(48))

    shares = [filled(done) for done in (0.0, 0.1, 0.4, 0.9)]
    assert shares == sorted(shares)
    assert len(set(shares)) == 4


def test_steps_in_different_states_look_different():
    rings = [
        StepRing(2),
        StepRing(2, 0.5),
        StepRing(2, 1.0),
        StepRing(2, 0.5, Mark.STOP),
        StepRing(2, 0.5, Mark.LOOK),
        StepRing(2, is_current=True),
        StepRing(3, is_current=True),
    ]
    images = [ring_image(ring) for ring in rings]
    for i, one in enumerate(images):
        assert all(changed(one, other) > 20 for other in images[i + 1 :])


def test_a_finished_step_with_something_wrong_shows_what_is_wrong():
    assert changed(ring_image(StepRing(2, 1.0, Mark.STOP)), ring_image(StepRing(2, 1.0))) > 100


@pytest.mark.parametrize("bad", [float("nan"), -0.1, 1.01])
def test_a_share_that_is_none_is_refused(bad: float):
    with pytest.raises(ValueError, match="done"):
        StepRing(1, bad)


def test_the_tag_has_cut_corners_and_a_hole():
    rect = QRectF(0, 0, 400, 40)
    edge = luggage_tag.outline_of(rect, 1.0)
    assert edge.contains(QPointF(200, 20))
    assert edge.contains(QPointF(398, 20))
    assert not edge.contains(QPointF(1, 1))
    assert not edge.contains(QPointF(1, 39))
    assert not edge.contains(QPointF(luggage_tag.HOLE_AT, 20))
    assert rect.contains(edge.boundingRect())


def test_kinds_have_sketches_of_their_own():
    images = [
        painted((240, 80), lambda p, kind=kind: item_sketch.paint(p, QRectF(0, 0, 240, 80), kind, LIGHT))
        for kind in ("wing", "harness", "helmet", "radio")
    ]
    for i, one in enumerate(images):
        assert all(changed(one, other) > 500 for other in images[i + 1 :])
    other_kind = painted((240, 80), lambda p: item_sketch.paint(p, QRectF(0, 0, 240, 80), "footwear", LIGHT))
    assert other_kind == images[-1]
