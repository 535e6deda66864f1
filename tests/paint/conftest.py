import os
import sys
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).parent))  # for paint_canvas: importmode=importlib finds no neighbours


@pytest.fixture(scope="session", autouse=True)
def gui() -> QApplication:
    """One application for all pictures; one with widgets, since the window's tests may run in the same process."""
    running = QApplication.instance()
    return running if isinstance(running, QApplication) else QApplication([])
