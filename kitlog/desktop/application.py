"""The Qt application: style and font."""

from collections.abc import Sequence

from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication

from kitlog.desktop import look


def prepared(arguments: Sequence[str]) -> QApplication:
    """The application: Fusion, and letters no smaller than 14 px in the body."""
    QApplication.setDesktopFileName("kitlog")
    running = QApplication.instance()
    application = running if isinstance(running, QApplication) else QApplication(list(arguments))
    application.setApplicationName("kitlog")
    application.setApplicationDisplayName("kitlog")
    application.setStyle("Fusion")
    application.setFont(look.least_body(QFont(application.font())))
    return application
