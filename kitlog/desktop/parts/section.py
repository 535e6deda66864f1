"""A section of a panel: its title, an act at the right, a hairline, and rows under it."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.line import Hairline
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.paint.type_scale import Role

RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


class Section(QWidget):
    """One section; rows are added below its line."""

    def __init__(
        self, title: str, act: str = "", do: Callable[[], object] | None = None, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        px = look.px
        self.rows = QVBoxLayout(self)
        self.rows.setContentsMargins(0, 0, 0, 0)
        self.rows.setSpacing(px(4))
        head = QHBoxLayout()
        head.addWidget(Text(title, Role.GROUP))
        head.addStretch()
        if act and do is not None:
            button = Button(act, Rank.ACT)
            button.setAccessibleName(f"{act}: {title}")
            button.clicked.connect(lambda _on=False: do())
            head.addWidget(button)
        self.rows.addLayout(head)
        self.rows.addWidget(Hairline())

    def add_figures(self, figures: list[tuple[str, str, str]], label_px: int = 104) -> None:
        """Rows of label, figure and what stands behind it, or under it where it is long."""
        for label, figure, note in figures:
            row = WrapRow(gap=8, under=0, top=True)
            name = Text(label, Role.SECOND, "muted")
            name.setMinimumWidth(look.px(label_px) - look.px(8))
            row.add(name)
            row.add(Paragraph(figure, Role.NAME, "ink"), wide=True)
            if note:
                behind = Paragraph(note, Role.SMALL, "muted")
                behind.setAlignment(RIGHT)
                row.add(behind, pushed=True)
            self.rows.addWidget(row)


def clear(layout: QLayout) -> None:
    """Take everything out of a layout and let it go."""
    while (item := layout.takeAt(0)) is not None:
        widget, inner = item.widget(), item.layout()
        if widget is not None:
            widget.hide()
            widget.deleteLater()
        elif inner is not None:
            clear(inner)
            inner.deleteLater()
