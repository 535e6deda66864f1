import os
import sys
from pathlib import Path

import pytest
from PySide6.QtGui import QGuiApplication

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).parent))  # for paint_canvas: importmode=importlib finds no neighbours


@pytest.fixture(scope="session", autouse=True)
def gui() -> QGuiApplication:
    """One application for all pictures; where the window's tests have made one already, that one is used."""
    running = QGuiApplication.instance()
    return running if isinstance(running, QGuiApplication) else QGuiApplication([])
