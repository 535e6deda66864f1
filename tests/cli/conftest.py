import io
import shutil
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))  # for calling: importmode=importlib finds no neighbours

from calling import NOW, Kitlog, Said

from kitlog.__main__ import main
from kitlog.app import App


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A user's data folder of our own, so that a mistake never reaches a real one."""
    folder = tmp_path / "home"
    for name in ("HOME", "XDG_DATA_HOME", "LOCALAPPDATA"):
        monkeypatch.setenv(name, str(folder))
    return folder


@pytest.fixture
def kitlog(home: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Kitlog:
    """The real entry point, in this process, on the evening of 8 May 2026."""

    def call(*arguments: object, stdin: bytes = b"") -> Said:
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(stdin)))
        code = main([str(argument) for argument in arguments], App(clock=lambda: NOW))
        said = capsys.readouterr()
        assert "Traceback" not in said.err
        return Said(code, said.out, said.err)

    return call


@pytest.fixture(scope="session")
def filled(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A closed data file with the demo scenario; tests take copies."""
    path = tmp_path_factory.mktemp("filled") / "demo.kitlog"
    App(clock=lambda: NOW).demo(path).close()
    return path


@pytest.fixture
def demo(filled: Path, tmp_path: Path) -> Path:
    """The demo scenario in a data file of the test's own."""
    return Path(shutil.copy(filled, tmp_path / "kit.kitlog"))


@pytest.fixture
def nothing(tmp_path: Path) -> Path:
    """A data file that is not there."""
    return tmp_path / "new.kitlog"
