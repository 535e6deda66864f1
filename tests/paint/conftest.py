import os

import pytest
from PySide6.QtGui import QGuiApplication

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


@pytest.fixture(scope="session", autouse=True)
def gui() -> QGuiApplication:
    """One application for all pictures; where the window's tests have made one already, that one is used."""
    running = QGuiApplication.instance()
    return running if isinstance(running, QGuiApplication) else QGuiApplication([])
