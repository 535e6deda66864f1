"""A checkout in a folder with a space and an umlaut, holding the real set-up scripts and a stand-in for the rest."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))  # for stand_in_packages: importmode=importlib finds no neighbours
sys.path.insert(0, str(Path(__file__).parents[2] / "packaging"))

import run_pip
import stamp
from stand_in_packages import MILL, locked, make_wheel

REAL = Path(stamp.__file__).parent

STAND_IN = """
import os, sys
import grain
print("kitlog", *sys.argv[1:])
if "--html" in sys.argv:
    with open(sys.argv[sys.argv.index("--html") + 1], "w", encoding="utf-8") as sheet:
        sheet.write("<p>sheet</p>")
"""


class Checkout:
    """The folder, and ways to run its two commands in processes of their own."""

    def __init__(self, root: Path, home: Path) -> None:
        self.root = root
        self.venv = root / ".venv"
        self.environment = {
            "PATH": os.environ["PATH"],
            "HOME": str(home),
            "LC_ALL": "C.UTF-8",
            "PIP_CONFIG_FILE": os.devnull,
            "PIP_RETRIES": "0",
            "PIP_DISABLE_PIP_VERSION_CHECK": "1",
        }

    def command(self, script: str, *arguments: str) -> list[str]:
        return [sys.executable, str(self.root / "packaging" / script), *arguments]

    def run(self, script: str, *arguments: str, **more: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            self.command(script, *arguments),
            env={**self.environment, **more},
            cwd=self.environment["HOME"],
            capture_output=True,
            text=True,
            encoding="utf-8",
            timeout=120,
            check=False,
        )

    def begin(self, script: str, *arguments: str, **more: str) -> subprocess.Popen[str]:
        return subprocess.Popen(
            self.command(script, *arguments),
            env={**self.environment, **more},
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            encoding="utf-8",
        )

    def put_python(self, body: str, *, stamped: bool = True) -> None:
        """Put a shell script where the environment's Python is looked for."""
        python = self.venv / "bin" / "python"
        python.parent.mkdir(parents=True, exist_ok=True)
        python.write_text(f"#!/bin/sh\n{body}\n", encoding="utf-8")
        python.chmod(0o755)
        for kind in ("run", "test") if stamped else ():
            self.put_stamp(kind)

    def put_stamp(self, kind: str, **other: str) -> None:
        words = {"lock": stamp.lock_hash(kind, str(self.root)), "python": stamp.own_tag(), **other}
        (self.venv / f"kitlog-{kind}.json").write_text(json.dumps(words), encoding="utf-8")


@pytest.fixture
def wheel(tmp_path: Path) -> Path:
    return make_wheel(tmp_path / "wheels")


@pytest.fixture
def checkout(tmp_path: Path, wheel: Path) -> Checkout:
    root = tmp_path / "kitlog für später"
    shutil.copytree(REAL, root / "packaging", ignore=shutil.ignore_patterns("__pycache__"))
    (root / "kitlog").mkdir()
    (root / "kitlog" / "__init__.py").touch()
    (root / "kitlog" / "__main__.py").write_text(STAND_IN, encoding="utf-8")
    locks = dict.fromkeys(stamp.LOCKS.values(), wheel) | {run_pip.BUILD_LOCK: make_wheel(wheel.parent, "mill", MILL)}
    for name, package in locks.items():
        (root / "packaging" / name).write_text(locked(package), encoding="utf-8")
    (tmp_path / "home").mkdir()
    return Checkout(root, tmp_path / "home")
