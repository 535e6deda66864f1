"""Room for what is wider, or higher, than a dialog can be: it is scrolled in one direction alone."""

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QSizePolicy, QWidget

from kitlog.desktop import look

LEAST_PX, USUAL_PX = 120, 560
"""How low and how high a page is, in px of the design; one that asks for more gets it where there is room."""


class WideArea(QScrollArea):
    """Room for a wide table: scrolled sideways, as high as the table."""

    def __init__(self, inside: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidgetResizable(True)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._inside = inside
        self.setWidget(inside)
        inside.installEventFilter(self)
        self.horizontalScrollBar().rangeChanged.connect(lambda _least, _most: self.updateGeometry())

    def sizeHint(self) -> QSize:
        """As high as the table, and the bar where there is one."""
        bar = self.horizontalScrollBar()
        inside = self._inside.minimumSizeHint()
        return QSize(inside.width(), inside.height() + (bar.sizeHint().height() if bar.maximum() > 0 else 0))

    def minimumSizeHint(self) -> QSize:
        """It can be narrow."""
        return QSize(1, self.sizeHint().height())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The table asks for another height."""
        if event.type() == QEvent.Type.LayoutRequest:
            self.updateGeometry()
        return super().eventFilter(watched, event)


class TallArea(QScrollArea):
    """Room for a high page: scrolled up and down, what stands beside it stays."""

    def __init__(self, inside: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._inside = inside
        self.setWidget(inside)

    def sizeHint(self) -> QSize:
        """As high as the page."""
        return QSize(self._inside.sizeHint().width(), max(self._inside.sizeHint().height(), look.px(USUAL_PX)))

    def minimumSizeHint(self) -> QSize:
        """Lower, it scrolls."""
        return QSize(1, look.px(LEAST_PX))
