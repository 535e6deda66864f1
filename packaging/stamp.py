"""What makes an environment trusted: a stamp, written last, and no mark of unfinished work.

The stamp holds the hash of the lock file and the Python the packages were installed for. While packages are being
changed a mark stands in the environment; whoever finds the mark later knows that the work was cut short.
"""

from __future__ import annotations

import hashlib
import json
import os
import subprocess
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
LOCKS = {"run": "requirements.lock", "test": "requirements-test.lock"}
MARK = "kitlog-unfinished"
TAG = "import sys; print(sys.implementation.cache_tag + getattr(sys, 'abiflags', ''))"


def own_tag() -> str:
    """What the running Python answers to TAG; packages are tied to it."""
    return str(sys.implementation.cache_tag) + str(getattr(sys, "abiflags", ""))


def python_in(venv: str) -> str:
    """The environment's own Python."""
    return os.path.join(venv, "Scripts", "python.exe") if os.name == "nt" else os.path.join(venv, "bin", "python")


def answer(command: list[str]) -> str | None:
    """What `command` prints; None when it does not run or fails."""
    try:
        done = subprocess.run(
            command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True, timeout=60, check=True
        )
    except (OSError, subprocess.SubprocessError):
        return None
    return done.stdout.strip()


def lock_path(kind: str, root: str = ROOT) -> str:
    """The lock file for `kind`, run or test."""
    return os.path.join(root, "packaging", LOCKS[kind])


def lock_hash(kind: str, root: str = ROOT) -> str:
    """What the stamp says about the lock file; the same whatever the line ends of the checkout."""
    with open(lock_path(kind, root), encoding="utf-8") as file:
        return hashlib.sha256(file.read().encode("utf-8")).hexdigest()


def stamp_path(venv: str, kind: str) -> str:
    """The file that makes the environment trusted for `kind`."""
    return os.path.join(venv, f"kitlog-{kind}.json")


def trusted(venv: str, kind: str, root: str = ROOT) -> bool:
    """Whether the environment was finished for this very lock file and its Python is still the same."""
    try:
        with open(stamp_path(venv, kind), encoding="utf-8") as file:
            stamp = json.load(file)
        same = stamp["lock"] == lock_hash(kind, root) and os.path.exists(python_in(venv))
        tag = stamp["python"]
    except (OSError, ValueError, KeyError, TypeError):
        return False
    if not isinstance(tag, str):
        return False
    # The environment may belong to another Python than the one that asks; then it says itself what it is.
    return same and not unfinished(venv) and tag in (own_tag(), answer([python_in(venv), "-I", "-c", TAG]))


def write_stamp(venv: str, kind: str, root: str = ROOT) -> None:
    """Say that the environment is whole; what serves the tests serves the program too."""
    tag = answer([python_in(venv), "-I", "-c", TAG])
    for name in ("run", "test") if kind == "test" else ("run",):
        path = stamp_path(venv, name)
        with open(path + ".new", "w", encoding="utf-8") as file:
            json.dump({"lock": lock_hash(name, root), "python": tag}, file)
        os.replace(path + ".new", path)


def remove_stamps(venv: str) -> None:
    """From here on the environment is not trusted."""
    for kind in LOCKS:
        if os.path.exists(stamp_path(venv, kind)):
            os.remove(stamp_path(venv, kind))


def unfinished(venv: str) -> bool:
    """Whether work on the environment began and did not end."""
    return os.path.exists(os.path.join(venv, MARK))


def set_mark(venv: str) -> None:
    """Say that work on the environment began."""
    with open(os.path.join(venv, MARK), "w", encoding="utf-8") as file:
        file.write("Packages are being changed. If nothing runs any more, the next start makes this folder anew.\n")
