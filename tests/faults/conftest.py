import sys
from datetime import datetime
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))  # for neighbours: importmode=importlib finds none

from filled_files import NOW


@pytest.fixture
def now() -> datetime:
    return NOW


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "kitlog.db"
