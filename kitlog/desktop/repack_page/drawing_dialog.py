"""The drawing over the page, where the window has no room for it."""

from PySide6.QtWidgets import QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.repack_page.zone_view import ZoneView
from kitlog.paint.zone_picture import ZonePicture
from kitlog.wording.translate import _


class DrawingDialog(Dialog):
    """Where everything rides."""

    def __init__(self, picture: ZonePicture, zone: str | None, parent: QWidget) -> None:
        super().__init__(_("Where it rides"), "", parent, wide=560)
        self.view = ZoneView(bars=False)
        self.view.show_zones(picture)
        self.view.select(zone)
        self.view.setMinimumHeight(look.px(440))
        self.body.addWidget(self.view, 1)
        self.view.setFocus()
