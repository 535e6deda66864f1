"""Room for what is wider, or higher, than a dialog can be: it is scrolled in one direction alone."""

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QScrollBar, QSizePolicy, QWidget

from kitlog.desktop import look

LEAST_PX, USUAL_PX = 120, 560
"""How low and how high a page is, in px of the design; one that asks for more gets it where there is room."""


class WideArea(QScrollArea):
    """Room for a wide table: scrolled sideways, as high as the table.

    Args:
        inside: the table.
        bar: one that stands elsewhere, in sight, and scrolls it; None for its own under the table.
    """

    def __init__(self, inside: QWidget, bar: QScrollBar | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidgetResizable(True)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._inside = inside
        self.setWidget(inside)
        inside.installEventFilter(self)
        self._bar = bar
        self.horizontalScrollBar().rangeChanged.connect(lambda _least, _most: self.updateGeometry())
        if bar is not None:
            self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
            self._hand_to(bar)

    def sizeHint(self) -> QSize:
        """As high as the table, and the bar where there is one."""
        bar = self.horizontalScrollBar()
        inside = self._inside.minimumSizeHint()
        own = self._bar is None and bar.maximum() > 0
        return QSize(inside.width(), inside.height() + (bar.sizeHint().height() if own else 0))

    def minimumSizeHint(self) -> QSize:
        """It can be narrow."""
        return QSize(1, self.sizeHint().height())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The table asks for another height."""
        if event.type() == QEvent.Type.LayoutRequest:
            self.updateGeometry()
        return super().eventFilter(watched, event)

    def _hand_to(self, bar: QScrollBar) -> None:
        """What its own bar would show and do, the other one does."""
        own = self.horizontalScrollBar()
        own.rangeChanged.connect(lambda _least, _most: self._follow(bar))
        own.valueChanged.connect(bar.setValue)
        bar.valueChanged.connect(own.setValue)
        bar.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._follow(bar)

    def _follow(self, bar: QScrollBar) -> None:
        own = self.horizontalScrollBar()
        bar.setRange(own.minimum(), own.maximum())
        bar.setPageStep(own.pageStep())
        bar.setSingleStep(own.singleStep())
        bar.setVisible(own.maximum() > 0)


class TallArea(QScrollArea):
    """Room for a high page: scrolled up and down, what stands beside and under it stays."""

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
