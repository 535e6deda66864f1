"""The picture of measured values as a widget, told in words to screen readers."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QApplication, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.canvas import Canvas
from kitlog.paint import measurement_lines
from kitlog.paint.measurement_picture import MeasurementPicture, picture_text
from kitlog.wording.translate import _

INSET = 8
"""Room for the ring of the focus."""


class MeasuredView(Canvas):
    """A lane for each series."""

    def __init__(self, picture: MeasurementPicture, parent: QWidget | None = None) -> None:
        super().__init__(_("Measured values over the years"), parent)
        self.picture = picture
        self.setAccessibleDescription(picture_text(picture))

    def measure(self, _width: float) -> float:
        """All lanes."""
        return measurement_lines.measure(self.picture, QApplication.font()) + 2 * look.px(INSET)

    def draw(self, painter: QPainter, rect: QRectF) -> None:
        """Draw the lanes."""
        inset = look.px(INSET)
        measurement_lines.paint(painter, rect.adjusted(inset, inset, -inset, -inset), self.picture, look.tokens())
