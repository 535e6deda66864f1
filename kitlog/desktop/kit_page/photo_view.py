"""The photo of an item, read away from the window; the sketch of its kind until it is there, or where there is none."""

from PySide6.QtCore import QObject, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.desktop.background import Background, Tell
from kitlog.desktop.desk import Desk
from kitlog.fault import SystemFault
from kitlog.kit.paper import Paper
from kitlog.paint import item_sketch
from kitlog.paint.book_photo import photo, size_in
from kitlog.paint.type_scale import Role
from kitlog.wording.book_parts import is_photo
from kitlog.wording.translate import _

HIGH = 92
"""Height of the well, in px of the design."""

MOST_KEPT = 100
"""So many photos are kept as they are shown, each of about 0.4 MB."""

LONGEST_PX = 800
"""As large as a photo is shown, on a screen of twice the dots."""


class Photos(QObject):
    """Reads photos one at a time; the one asked for last is the one that comes.

    Attributes:
        came: a photo has been read, or cannot be; the hash of its bytes.
    """

    came = Signal(str)

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._known: dict[str, QImage | None] = {}
        self._background = Background(self)
        self._background.done.connect(self._keep)

    def known(self, paper: Paper) -> bool:
        """Whether it has been looked for."""
        return paper.sha256 in self._known

    def image(self, paper: Paper) -> QImage | None:
        """The photo, None as long as it is not there or where it cannot be shown."""
        return self._known.get(paper.sha256)

    def want(self, paper: Paper) -> None:
        """Read it, unless it is known."""
        bench = self._desk.bench

        def read(_tell: Tell) -> tuple[str, QImage | None]:
            try:
                return paper.sha256, photo(bench.paper_bytes(paper), LONGEST_PX)
            except SystemFault:
                return paper.sha256, None

        if not self.known(paper):
            self._background.ask(read)

    def _keep(self, result: object) -> None:
        if isinstance(result, tuple):
            sha256, image = result
            while len(self._known) >= MOST_KEPT:
                del self._known[next(iter(self._known))]
            self._known[sha256] = image
            self.came.emit(sha256)


class PhotoView(QWidget):
    """The first photo of an item in its well."""

    def __init__(self, kind: str, papers: tuple[Paper, ...], photos: Photos, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._kind, self._photos = kind, photos
        self._paper = next(filter(is_photo, papers), None)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        photos.came.connect(self._came)
        if self._paper is not None:
            photos.want(self._paper)
        self._name()

    def sizeHint(self) -> QSize:
        """As high as the well."""
        return QSize(look.px(240), look.px(HIGH))

    def image(self) -> QImage | None:
        """The photo that is shown, None for the sketch."""
        return None if self._paper is None else self._photos.image(self._paper)

    def _came(self, sha256: str) -> None:
        if self._paper is not None and sha256 == self._paper.sha256:
            self._name()
            self.update()

    @property
    def _lacking(self) -> bool:
        return self._paper is not None and self._photos.known(self._paper) and self.image() is None

    def _name(self) -> None:
        """What is seen, for those who do not see it."""
        if self._paper is None:
            return
        text = _("Photo not shown: {name}") if self._lacking else _("Photo: {name}")
        said = text.format(name=self._paper.name)
        self.setAccessibleName(said)
        self.setToolTip(said)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the well, and the photo or the sketch in it."""
        t, px, image = look.tokens(), look.px, self.image()
        box = QRectF(self.rect())
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(t.hairline, 1))
            painter.setBrush(t.sunk)
            painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), px(6), px(6))
            if image is None:
                item_sketch.paint(painter, box.adjusted(px(12), px(12), -px(12), -px(12)), self._kind, t)
            else:
                self._paint_photo(painter, box.adjusted(px(4), px(4), -px(4), -px(4)), image)
            if self._lacking:
                foot = box.adjusted(px(8), box.height() - px(22), -px(8), -px(4))
                look.lettering().draw(painter, foot, _("The photo is missing or cannot be read"), Role.SMALL, t.muted)

    def _paint_photo(self, painter: QPainter, box: QRectF, image: QImage) -> None:
        """In the middle of the box; made smaller with care first, which a painter does not."""
        wide, high = size_in(image, box.width(), box.height())
        room = QRectF(0, 0, wide, high)
        room.moveCenter(box.center())
        dots = QSize(round(wide * self.devicePixelRatioF()), round(high * self.devicePixelRatioF()))
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(room, image.scaled(dots, mode=Qt.TransformationMode.SmoothTransformation))
