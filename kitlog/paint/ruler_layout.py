"""Where things lie in the weight picture."""

from dataclasses import dataclass
from functools import cached_property

from PySide6.QtCore import QRectF

from kitlog.paint.heading import Heading
from kitlog.paint.lettering import Lettering
from kitlog.paint.rule import Rule, rule_for
from kitlog.paint.weight_picture import WeightPicture

ABOVE, BAR, BELOW = 64.0, 40.0, 58.0


@dataclass(frozen=True)
class RulerLayout:
    """The ruler laid out in `rect`."""

    picture: WeightPicture
    rect: QRectF
    text: Lettering

    @cached_property
    def bar(self) -> QRectF:
        """The bar of the rule."""
        px, rect = self.text.px, self.rect
        top = rect.top() + px(8) + self.heading.height(rect.width(), self.text) + px(ABOVE)
        return QRectF(rect.left() + px(16), top, max(1.0, rect.width() - px(32)), px(BAR))

    @property
    def heading(self) -> Heading:
        """Title and caption."""
        return Heading(self.picture.title, self.picture.caption)

    @cached_property
    def rule(self) -> Rule:
        """Where a mass lies on the bar."""
        return rule_for(self.picture.range.limits, self.picture.masses_kg, self.bar.left(), self.bar.right())

    @property
    def foot(self) -> float:
        """Where what stands below the ruler begins."""
        return self.bar.bottom() + self.text.px(BELOW)
