"""A tile of the board: topic, state, one figure, two lines, and an act under a hairline."""

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QGridLayout, QSizePolicy, QWidget

from kitlog.budget.result import Topic
from kitlog.desktop import look
from kitlog.desktop.outing_page.outdated import grey
from kitlog.desktop.outing_page.tile_words import TileWords
from kitlog.desktop.parts.chip import draw_mark_and_word
from kitlog.desktop.parts.pressable import Pressable
from kitlog.paint.lettering import LEFT
from kitlog.paint.mark import Mark
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

HIGH, SIDE, SHAPE_ROOM = 112, 12, 20
RING = 4
"""Room around the tiles for the focus ring."""
DASHES = (3.0, 3.0)


class TileAct(Pressable):
    """What would help, in small accent letters, cut to the tile."""

    ring_radius = 3.0

    def __init__(self, parent: QWidget) -> None:
        super().__init__("", parent)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the words, underlined under the pointer."""
        t = look.tokens()
        with QPainter(self) as painter:
            room = look.lettering().draw(painter, QRectF(self.rect()), self.words, Role.CHIP, t.accent, LEFT)
            if self.underMouse():
                painter.setPen(QPen(t.accent, 1))
                painter.drawLine(round(room.left()), round(room.bottom()), round(room.right()), round(room.bottom()))


class Tile(Pressable):
    """One tile; pressed, it opens what belongs to it.

    Attributes:
        topic: what it is about.
        acted: its act was pressed.
    """

    acted = Signal()

    def __init__(self, topic: Topic, parent: QWidget | None = None) -> None:
        super().__init__("", parent)
        self.topic = topic
        self.shown: TileWords | None = None
        self._open = False
        self.setFixedHeight(look.px(HIGH))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.act = TileAct(self)
        self.act.clicked.connect(self.acted)

    def show_words(self, words: TileWords) -> None:
        """Show what there is to say."""
        self.shown = words
        self.say(words.title)
        self.setAccessibleName(words.spoken)
        self.act.say(words.act)
        self.act.setAccessibleName(f"{words.title}: {words.act}")
        self.act.setToolTip(words.act)
        self.act.setVisible(bool(words.act))
        self.update()

    def show_open(self, *, is_open: bool) -> None:
        """Show whether its picture stands under the board."""
        self._open = is_open
        self.setAccessibleDescription(_("open") if is_open else "")
        self.update()

    def sizeHint(self) -> QSize:
        """188 by 112."""
        return QSize(look.px(188), look.px(HIGH))

    def minimumSizeHint(self) -> QSize:
        """Narrower, its lines are cut."""
        return QSize(look.px(132), look.px(HIGH))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The act lies at the foot."""
        super().resizeEvent(event)
        px = look.px
        self.act.setGeometry(px(SIDE), self.height() - px(25), self.width() - px(2 * SIDE), px(24))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint ground, words and figure."""
        if self.shown is None:
            return
        t = look.tokens()
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self._paint_ground(painter, t)
            self._paint_words(painter, t, self.shown)

    def _paint_ground(self, painter: QPainter, t: Tokens) -> None:
        mark = self.shown.mark if self.shown else Mark.NONE
        inset = 1.0 if self._open else 0.5
        box = QRectF(self.rect()).adjusted(inset, inset, -inset, -inset)
        if self._open:
            painter.setPen(QPen(t.accent, 2))
        elif self.underMouse():
            painter.setPen(QPen(t.accent, 1))
        elif mark is Mark.NOT_KNOWN:
            painter.setPen(pen(t.outline, 1, DASHES))
        else:
            painter.setPen(QPen(t.strong_line, 1))
        painter.setBrush(t.tile(mark))
        painter.drawRoundedRect(box, look.px(6), look.px(6))

    def _paint_words(self, painter: QPainter, t: Tokens, words: TileWords) -> None:
        px, text = look.px, look.lettering()
        inside = QRectF(self.rect()).adjusted(px(SIDE), px(5), -px(SIDE), 0)
        head = QRectF(inside.left(), inside.top(), inside.width(), px(20))
        taken = text.width(words.state, Role.CHIP) + px(SHAPE_ROOM)
        draw_mark_and_word(painter, head.adjusted(head.width() - taken, 0, px(2), 0), words.state, words.mark, t)
        text.draw(painter, head.adjusted(0, 0, -taken - px(8), 0), words.title, Role.GROUP, t.ink)
        figure = QRectF(inside.left(), head.bottom() + px(1), inside.width(), px(28))
        unknown = words.mark is Mark.NOT_KNOWN
        text.draw(painter, figure, words.figure, Role.TITLE, t.muted if unknown else t.ink)
        for number, line in enumerate(words.lines):
            row = QRectF(inside.left(), figure.bottom() + number * px(16), inside.width(), px(16))
            text.draw(painter, row, line, Role.SMALL, t.muted)
        if words.act:
            painter.fillRect(QRectF(inside.left(), self.height() - px(24), inside.width(), 1), t.hairline)


class Board(QWidget):
    """The tiles in four columns, two where it is narrow.

    Attributes:
        pressed: a tile was pressed; acted: the act of a tile was pressed. Both tell the topic's word.
    """

    pressed = Signal(str)
    acted = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._columns = 4
        self.tiles: dict[Topic, Tile] = {}
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(*(look.px(RING) for _side in range(4)))
        self._grid.setHorizontalSpacing(look.px(16))
        self._grid.setVerticalSpacing(look.px(8))

    def show_tiles(self, words: list[TileWords]) -> None:
        """Show these tiles; those that stay keep focus and place."""
        wanted = [one.topic for one in words]
        if wanted != list(self.tiles):
            self._make(wanted)
        for one in words:
            self.tiles[one.topic].show_words(one)

    def show_open(self, topic: Topic | None) -> None:
        """Mark the tile whose picture is shown, none for None."""
        for tile in self.tiles.values():
            tile.show_open(is_open=tile.topic is topic)

    def grey_others(self, topic: Topic, *, is_old: bool) -> None:
        """Grey all tiles but one while a plan is tried that they do not follow."""
        for tile in self.tiles.values():
            if tile.topic is not topic:
                grey(tile, is_old=is_old, why=_("of the plan before the move"))

    def columns(self, number: int) -> None:
        """Lay the tiles in so many columns."""
        if number != self._columns:
            self._columns = number
            self._lay()

    def _make(self, topics: list[Topic]) -> None:
        for tile in self.tiles.values():
            tile.hide()
            tile.deleteLater()
        self.tiles = {topic: Tile(topic, self) for topic in topics}
        for topic, tile in self.tiles.items():
            tile.clicked.connect(lambda _on=False, name=topic.value: self.pressed.emit(name))
            tile.acted.connect(lambda name=topic.value: self.acted.emit(name))
            tile.show()
        self._lay()

    def _lay(self) -> None:
        for number, tile in enumerate(self.tiles.values()):
            self._grid.addWidget(tile, number // self._columns, number % self._columns)
        for column in range(4):
            self._grid.setColumnStretch(column, 1 if column < self._columns else 0)
