"""Where things lie in the service band."""

from dataclasses import dataclass
from datetime import date
from functools import cached_property

from PySide6.QtCore import QPointF, QRectF

from kitlog.paint.lettering import Lettering
from kitlog.paint.service_picture import ServicePicture
from kitlog.paint.type_scale import Role

HEAD, LANE, FOOT = 44.0, 28.0, 30.0
ITEM_SHARE, RULE_SHARE = 0.19, 0.22
"""Most that the names of items and of rules may take of the width."""


@dataclass(frozen=True)
class ServiceLayout:
    """The band laid out in `rect`."""

    picture: ServicePicture
    rect: QRectF
    text: Lettering

    @cached_property
    def item_px(self) -> float:
        """Width of the column of items."""
        widths = [self.text.width(lane.item, Role.LABEL) for lane in self.picture.lanes]
        return min(max(widths, default=0.0) + self.text.px(12), self.rect.width() * ITEM_SHARE)

    @cached_property
    def rule_px(self) -> float:
        """Width of the column of rules."""
        widths = [self.text.width(lane.rule, Role.SMALL) for lane in self.picture.lanes]
        return min(max(widths, default=0.0) + self.text.px(16), self.rect.width() * RULE_SHARE)

    @cached_property
    def band(self) -> QRectF:
        """The months with all lanes, without their heads."""
        left = self.rect.left() + self.item_px + self.rule_px
        height = self.text.px(LANE * len(self.picture.lanes))
        return QRectF(left, self.rect.top() + self.text.px(HEAD), max(1.0, self.rect.right() - left), height)

    def lane(self, number: int) -> QRectF:
        """One lane over the whole width."""
        top = self.band.top() + self.text.px(number * LANE)
        return QRectF(self.rect.left(), top, self.rect.width(), self.text.px(LANE))

    def lane_at(self, point: QPointF) -> int | None:
        """Number of the lane under `point`."""
        numbers = range(len(self.picture.lanes))
        return next((number for number in numbers if self.lane(number).contains(point)), None)

    def x(self, day: date) -> float:
        """Pixels at which a day begins, held within the band."""
        return self.band.left() + min(max(self.picture.share(day), 0.0), 1.0) * self.band.width()

    def is_shown(self, day: date) -> bool:
        """Whether a day lies within the band."""
        return self.picture.first <= day < self.picture.end

    def starts_item(self, number: int) -> bool:
        """Whether a lane is the first of its item."""
        lanes = self.picture.lanes
        return number == 0 or lanes[number].item != lanes[number - 1].item

    @property
    def height(self) -> float:
        """Height of the whole picture."""
        return self.text.px(HEAD + LANE * len(self.picture.lanes) + FOOT)
