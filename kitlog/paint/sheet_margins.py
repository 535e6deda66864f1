"""What stands around the room of each printed page: what it is of above, the stance, number and day of make below."""

from functools import cached_property

from PySide6.QtCore import QLineF, QRectF
from PySide6.QtGui import QPainter

from kitlog.paint.lettering import RIGHT
from kitlog.paint.sheet_block import Frame
from kitlog.paint.sheet_setting import Setting
from kitlog.paint.strokes import pen
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _
from kitlog.wording.words import STANCE

GUTTER, HEADER, FOOTER = 26.0, 30.0, 14.0
"""Between columns; height of the header; of the foot, beside its lines."""


class Margins:
    """Header and foot of the pages of one device.

    Args:
        setting: letters, colours and measures of the device.
        running: what stands above every page but the first.
        made: when it was made.

    Attributes:
        frame: the room on each page.
    """

    def __init__(self, setting: Setting, running: str, made: str) -> None:
        self._setting, self._running, self._made = setting, running, made
        room = setting.device.pageLayout().paintRectPixels(setting.device.logicalDpiX())
        self._width = float(room.width())
        high = setting.text.line(Role.SMALL) * max(2, len(self._stance)) + setting.px(FOOTER)
        self.frame = Frame(self._width, setting.px(GUTTER), 0.0, setting.px(HEADER), room.height() - high)

    def head(self, painter: QPainter) -> None:
        """Paint what stands above a page; before all else on it, for that is the order in which it is read."""
        setting = self._setting
        room = QRectF(0, 0, self._width, setting.text.line(Role.SMALL))
        setting.text.draw(painter, room, self._running, Role.SMALL, setting.tokens.muted)
        self._line(painter, room.bottom() + setting.px(3))

    def foot(self, painter: QPainter, number: int, count: int) -> None:
        """Paint what stands under one page of so many, counted from 0."""
        setting, right = self._setting, (_("page {n} of {m}").format(n=number + 1, m=count), self._made)
        line = setting.text.line(Role.SMALL)
        top = self.frame.bottom + setting.px(FOOTER - 2)
        self._line(painter, top - setting.px(5))
        for at, words in enumerate(self._stance):
            room = QRectF(0, top + at * line, self._width, line)
            setting.text.draw(painter, room, words, Role.SMALL, setting.tokens.muted)
        for at, words in enumerate(right):
            room = QRectF(0, top + at * line, self._width, line)
            setting.text.draw(painter, room, words, Role.SMALL, setting.tokens.muted, RIGHT)

    def _line(self, painter: QPainter, y: float) -> None:
        painter.setPen(pen(self._setting.tokens.outline, self._setting.px(0.8)))
        painter.drawLine(QLineF(0, y, self._width, y))

    @cached_property
    def _stance(self) -> list[str]:
        text = self._setting.text
        right = max(text.width(words, Role.SMALL) for words in (_("page 99 of 99"), self._made))
        return self._setting.broken(_(STANCE), Role.SMALL, self._width - right - self._setting.px(24))
