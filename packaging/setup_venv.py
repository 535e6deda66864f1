"""The virtual environment of a checkout: where it stands, made once, mended when it was left half-made.

It is built where it stays, since its own scripts hold its path, and everything in it is called as `python -m ...`.
kitlog itself is not installed: it runs from the checkout, by PYTHONPATH.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import sys

import system_libraries
from one_at_a_time import alone
from run_pip import FULL_DISK, holds_all, install, run_kept
from setup_fault import SetupFault, disk_full_sentence, disk_sentence, last_lines, say
from stamp import (
    MARK,
    ROOT,
    answer,
    lock_path,
    python_in,
    remove_stamps,
    set_mark,
    trusted,
    unfinished,
    write_stamp,
)


def cache_folder() -> str:
    """Where this user's programs keep what can be made again."""
    home = os.path.expanduser("~")
    if sys.platform == "darwin":
        return os.path.join(home, "Library", "Caches")
    if os.name == "nt":
        return os.environ.get("LOCALAPPDATA") or os.path.join(home, "AppData", "Local")
    return os.environ.get("XDG_CACHE_HOME") or os.path.join(home, ".cache")


def places(root: str = ROOT) -> list[str]:
    """Where the environment may stand: in the checkout, or in the user's cache when that is read-only."""
    name = f"{os.path.basename(root)}-{hashlib.sha256(os.fsencode(root)).hexdigest()[:12]}"
    beside = os.path.realpath(os.path.join(root, ".venv"))
    return [beside, os.path.join(cache_folder(), "kitlog", "checkouts", name, ".venv")]


def missing_venv_packages() -> list[str]:
    """The Debian package that lets this Python make environments, when it cannot: Debian splits that off."""
    if answer([sys.executable, "-c", "import venv, ensurepip"]) is not None:
        return []
    default = answer(["/usr/bin/python3", "-c", "import sys; print(sys.version_info[:2])"])
    return ["python3-venv" if default == str(sys.version_info[:2]) else f"python3.{sys.version_info[1]}-venv"]


def require_venv_module() -> None:
    """Return when this Python can make environments; as root on a Debian-like system install what it lacks.

    Raises:
        SetupFault: it cannot; the message holds the line that mends it.
    """
    packages = missing_venv_packages()
    if packages and system_libraries.can_install():
        say("This Python comes without the venv and ensurepip modules.")
        system_libraries.apt_install(lambda: packages)
        packages = missing_venv_packages()
    if packages:
        raise SetupFault(
            f"This Python ({sys.executable}) comes without the venv or the ensurepip module, so no packages can be "
            f"installed for kitlog. On Debian and Ubuntu: sudo apt install {packages[0]}; then start again."
        )


def make_venv(venv: str) -> None:
    """Make the environment from nothing, with pip and no packages, marked as unfinished.

    Raises:
        SetupFault: Python could not make it.
    """
    require_venv_module()
    if os.path.isdir(venv):
        shutil.rmtree(venv)
    os.makedirs(venv)
    set_mark(venv)
    done = run_kept([sys.executable, "-P", "-m", "venv", venv], dict(os.environ, LC_ALL="C"))
    if done.returncode:
        # venv hides what its own pip said, so the disk itself is asked too: less than pip alone needs is full.
        full = FULL_DISK.search(done.stdout) or shutil.disk_usage(venv).free < 50_000_000
        why = disk_full_sentence(venv) if full else f"Python could not make an environment in {venv} (see above)."
        raise SetupFault(f"{last_lines(done.stdout)}\n\n{why}")


def usable(venv: str) -> bool:
    """Whether the environment can be brought up to date where it is: it runs, fits, has pip, and is not half-made."""
    question = "import pip, sys; print(int((3, 11) <= sys.version_info[:2] <= (3, 14)))"
    return not unfinished(venv) and answer([python_in(venv), "-I", "-c", question]) == "1"


def bring_up_to_date(venv: str, kind: str, root: str = ROOT) -> None:
    """Make, mend or refresh the environment; the caller holds its lock."""
    lock = lock_path(kind, root)
    if not usable(venv):
        if os.path.isdir(venv) and os.listdir(venv):
            say(f"{venv} was left half-made or is of another Python; making it anew.")
        make_venv(venv)
    elif holds_all(venv, lock):
        write_stamp(venv, kind, root)
        return
    say(f"Installing the packages kitlog needs into {venv} (once; up to 150 MB to download) ...")
    set_mark(venv)
    remove_stamps(venv)
    install(venv, lock)
    os.remove(os.path.join(venv, MARK))
    write_stamp(venv, kind, root)
    say("Packages are ready.")


def can_write(venv: str) -> bool:
    """Whether the environment can be made or changed at this place."""
    folder = venv
    while not os.path.isdir(folder):
        folder = os.path.dirname(folder)
    beside = os.path.dirname(venv)
    return os.access(folder, os.W_OK) and (not os.path.isdir(beside) or os.access(beside, os.W_OK))


def ensure_venv(kind: str, root: str = ROOT) -> str:
    """The folder of an environment that holds what `kind` (run or test) needs, set up if it has to be.

    Raises:
        SetupFault: it could not be set up.
    """
    for venv in places(root):
        if trusted(venv, kind, root):
            return venv
    venv = next(filter(can_write, places(root)), places(root)[-1])
    try:
        with alone(venv):
            if not trusted(venv, kind, root):
                bring_up_to_date(venv, kind, root)
    except OSError as error:
        raise SetupFault(disk_sentence(error, venv)) from error
    return venv
