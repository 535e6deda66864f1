"""What kitlog is, what it is not, and under which licences it stands."""

from PySide6.QtCore import qVersion
from PySide6.QtWidgets import QWidget

from kitlog import __version__
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.desktop.status_line import STANCE
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import N_, _

PARTS = (
    N_(
        "The evening before a long paragliding flight: what goes in the bag, what is out of date, what lasts, "
        "what it weighs."
    ),
    STANCE,
    N_("kitlog alarms nobody, sends nothing and keeps everything in one file on this computer."),
    N_(
        "kitlog is free software under the MIT licence. The window is drawn by Qt and Qt for Python, which are used "
        "under the LGPL, version 3, and lie beside the program as files of their own that can be replaced."
    ),
)


class AboutDialog(Dialog):
    """About kitlog."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(_("About kitlog"), "", parent)
        versions = _("Version {version}, Qt {qt}").format(version=__version__, qt=qVersion())
        self.body.addWidget(Text(versions, Role.NAME))
        for part in PARTS:
            self.body.addWidget(Paragraph(_(part)))
        self.body.addStretch()
