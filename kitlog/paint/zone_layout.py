"""Where things lie in the zone drawing: how large it is drawn, and where the words stand that never shrink with it."""

from dataclasses import dataclass
from functools import cached_property

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QTransform

from kitlog.paint.lettering import Lettering
from kitlog.paint.type_scale import Role
from kitlog.paint.zone_outlines import PILOT_HEIGHT, PILOT_WIDTH, RUCKSACK_HEIGHT, RUCKSACK_WIDTH
from kitlog.paint.zone_picture import ZoneFill, ZonePicture

HEAD, BETWEEN = 32.0, 24.0
SMALLEST, LARGEST, STEPS = 0.1, 1.5, 12
TITLE_LINE, NOTE_LINE = 18.0, 16.0


@dataclass(frozen=True, slots=True)
class Spot:
    """Where the words of a zone stand, in units of the drawing, and from which side of them the leader starts."""

    x: float
    y: float
    width: float
    side: str
    dot: tuple[float, float]


SPOTS = {
    "worn": Spot(0, 40, 100, "right", (112, 54)),
    "cockpit": Spot(336, 64, 128, "left", (288, 112)),
    "front container": Spot(336, 108, 128, "left", (297, 155)),
    "side pocket": Spot(318, 222, 146, "left", (198, 188)),
    "under seat": Spot(142, 276, 170, "top", (188, 242)),
    "back pocket": Spot(0, 230, 136, "top", (52, 176)),
    "harness": Spot(318, 264, 146, "left", (296, 208)),
}
"""Words around the pilot; those further down the same column give way downwards."""

COLUMNS = (("worn", "back pocket"), ("under seat",), ("cockpit", "front container", "side pocket", "harness"))
FLAG = Spot(222, 64, 104, "left", (208, 126))

TIGHT = 0.86
"""Drawn smaller than this share of its size in the design, the words stand in a list under the pilot instead."""

LIST_COLUMN = 150.0


@dataclass(frozen=True)
class ZoneLayout:
    """The drawing laid out in `rect` with `scale` pixels per unit of the drawing."""

    picture: ZonePicture
    rect: QRectF
    text: Lettering
    scale: float

    @classmethod
    def fitting(cls, picture: ZonePicture, rect: QRectF, text: Lettering) -> "ZoneLayout":
        """As large as `rect` allows; only the width counts where it has no height."""
        widest = max(SMALLEST, min(rect.width() / PILOT_WIDTH, text.px(LARGEST)))
        made = cls(picture, rect, text, widest)
        if rect.height() <= 0 or made.height <= rect.height():
            return made
        low, high = SMALLEST, widest
        for _ in range(STEPS):
            middle = (low + high) / 2
            fits = cls(picture, rect, text, middle).height <= rect.height()
            low, high = (middle, high) if fits else (low, middle)
        return cls(picture, rect, text, low)

    @cached_property
    def head_px(self) -> float:
        """Height of title and legend."""
        words = (self.picture.title, self.picture.stowed, self.picture.to_stow)
        return self.text.px(HEAD) if any(words) else 0.0

    @property
    def pilot(self) -> QTransform:
        """From units of the drawing to pixels, for the pilot."""
        left = self.rect.center().x() - PILOT_WIDTH * self.scale / 2
        return QTransform(self.scale, 0, 0, self.scale, left, self.rect.top() + self.head_px)

    @property
    def is_tight(self) -> bool:
        """Whether the words have no room around the pilot."""
        return self.scale < TIGHT * self.text.scale

    @property
    def pilot_foot(self) -> float:
        """Where the pilot ends, without words."""
        return self.pilot.map(QPointF(0, PILOT_HEIGHT)).y()

    @property
    def rule_y(self) -> float:
        """The hairline between pilot and rucksack."""
        labels = [room.bottom() for room in self.labels.values()]
        return max([self.pilot_foot, *labels]) + self.text.px(10)

    @property
    def rucksack(self) -> QTransform:
        """From units of the drawing to pixels, for the rucksack."""
        left = self.pilot.map(QPointF(0, 0)).x()
        return QTransform(self.scale, 0, 0, self.scale, left, self.rule_y + self.text.px(14))

    @cached_property
    def labels(self) -> dict[str, QRectF]:
        """Room of the words of each zone on the pilot that is shown."""
        if self.is_tight:
            return self._listed()
        rooms: dict[str, QRectF] = {}
        for column in COLUMNS:
            free = float("-inf")
            for zone in column:
                fill = self.picture.fill(zone)
                if fill is not None:
                    rooms[zone] = self._label(fill, SPOTS[zone], free)
                    free = rooms[zone].bottom() + self.text.px(4)
        return rooms

    def _label(self, fill: ZoneFill, spot: Spot, free: float) -> QRectF:
        corner = self.pilot.map(QPointF(spot.x, spot.y))
        width = min(spot.width * self.scale, self.rect.right() - corner.x())
        height = self.text.px(TITLE_LINE + NOTE_LINE * len(self.note_lines(fill, width)))
        return QRectF(corner.x(), max(corner.y(), free), max(0.0, width), height)

    def _listed(self) -> dict[str, QRectF]:
        """Words in rows under the pilot, in the order of the picture."""
        gap = self.text.px(12)
        columns = max(1, int((self.rect.width() + gap) // (self.text.px(LIST_COLUMN) + gap)))
        width = (self.rect.width() - gap * (columns - 1)) / columns
        rooms: dict[str, QRectF] = {}
        top = self.pilot_foot + gap
        shown = [fill for fill in self.picture.zones if fill.zone in SPOTS]
        for first in range(0, len(shown), columns):
            row = shown[first : first + columns]
            lines = max(len(self.note_lines(fill, width)) for fill in row)
            height = self.text.px(TITLE_LINE + NOTE_LINE * lines)
            for number, fill in enumerate(row):
                rooms[fill.zone] = QRectF(self.rect.left() + number * (width + gap), top, width, height)
            top += height + gap / 2
        return rooms

    def note_lines(self, fill: ZoneFill, width: float) -> list[str]:
        """The note of a zone, wrapped into its room."""
        return self.text.wrap(fill.note, Role.SMALL, width, 2) if fill.note else []

    @property
    def words(self) -> QRectF:
        """The room beside the rucksack."""
        corner = self.rucksack.map(QPointF(RUCKSACK_WIDTH, 0))
        left = corner.x() + self.text.px(BETWEEN)
        return QRectF(left, corner.y(), max(0.0, self.rect.right() - left), RUCKSACK_HEIGHT * self.scale)

    @property
    def height(self) -> float:
        """Height of the whole drawing without the words beside the rucksack."""
        return self.rucksack.map(QPointF(0, RUCKSACK_HEIGHT)).y() - self.rect.top() + self.text.px(4)
