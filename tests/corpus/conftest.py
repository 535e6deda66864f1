import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))  # for truths: importmode=importlib finds no neighbours
sys.path.insert(0, str(Path(__file__).parents[1] / "cli"))  # for calling

from calling import NOW, Kitlog, Said

from kitlog.__main__ import main
from kitlog.app import App


@pytest.fixture
def kitlog(tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Kitlog:
    """The real entry point, in this process, with a kit of its own that is empty at first."""
    home = tmp_path / "home"
    for name in ("HOME", "XDG_DATA_HOME", "LOCALAPPDATA"):
        monkeypatch.setenv(name, str(home))

    def call(*arguments: object) -> Said:
        code = main(["--data", str(tmp_path / "kit.kitlog"), *map(str, arguments)], App(clock=lambda: NOW))
        said = capsys.readouterr()
        assert "Traceback" not in said.err
        return Said(code, said.out, said.err)

    return call
