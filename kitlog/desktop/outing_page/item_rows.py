"""Lists of items with one act each: what goes, what was passed over, what stays at home."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.section import Section
from kitlog.paint.lettering import RIGHT
from kitlog.paint.type_scale import Role

MASS_WIDE = 72
ROW = 28


@dataclass(frozen=True, slots=True)
class ItemLine:
    """An item of a list: its id, name, a reason, its mass in words."""

    id: str
    name: str
    why: str
    mass: str


class ItemRow(QWidget):
    """Name, reason and mass, painted; one act at the right."""

    def __init__(self, line: ItemLine, act: str, do: Callable[[str], object]) -> None:
        super().__init__()
        self._line = line
        self.setMinimumHeight(look.px(ROW))
        self.setAccessibleName(", ".join(part for part in (line.name, line.why, line.mass) if part))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addStretch()
        self.act = Button(act, Rank.ACT)
        self.act.setObjectName(f"{act}/{line.id}")
        self.act.setAccessibleName(f"{act}: {line.name}")
        self.act.clicked.connect(lambda _on=False: do(line.id))
        row.addWidget(self.act)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the words and the hairline below."""
        t, px, text = look.tokens(), look.px, look.lettering()
        box = QRectF(self.rect()).adjusted(0, 0, -self.act.width() - px(16), 0)
        with QPainter(self) as painter:
            painter.fillRect(0, self.height() - 1, self.width(), 1, t.hairline)
            text.draw(painter, box, self._line.mass, Role.NAME, t.ink, RIGHT)
            words = box.adjusted(0, 0, -px(MASS_WIDE), 0)
            name = text.draw(painter, words.adjusted(0, 0, -words.width() / 3, 0), self._line.name, Role.NAME, t.ink)
            words.setLeft(name.right() + px(8))
            text.draw(painter, words, self._line.why, Role.SMALL, t.muted)


def item_list(title: str, lines: list[ItemLine], act: str, do: Callable[[str], object]) -> QWidget:
    """A section with one row an item."""
    section = Section(title)
    rows = QVBoxLayout()
    rows.setSpacing(0)
    for line in lines:
        rows.addWidget(ItemRow(line, act, do))
    section.rows.addLayout(rows)
    return section
