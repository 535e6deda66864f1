"""Start kitlog with the demo scenario from a fresh checkout, by `python3 packaging/start.py`.

Sets up on the first start all it needs: the system's libraries and an environment of its own. With a screen it opens
the window on the demo data file; without one it prints the repack of the demo outing and writes its HTML sheet.
"""

from __future__ import annotations

import argparse
import os
import shutil
import subprocess
import sys
import tempfile
from typing import NoReturn

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))

from choose_python import ensure_python, replace_by
from setup_fault import WORLD_AT_FAULT, SetupFault, disk_sentence, say
from setup_venv import ensure_venv, missing_venv_packages
from stamp import ROOT, python_in
from system_libraries import ensure_libraries, has_screen, wanted


def data_folder() -> str:
    """Where this user's programs keep their data, for kitlog."""
    home = os.path.expanduser("~")
    if sys.platform == "darwin":
        return os.path.join(home, "Library", "Application Support", "kitlog")
    if os.name == "nt":
        return os.path.join(os.environ.get("LOCALAPPDATA") or os.path.join(home, "AppData", "Local"), "kitlog")
    return os.path.join(os.environ.get("XDG_DATA_HOME") or os.path.join(home, ".local", "share"), "kitlog")


def read_arguments(arguments: list[str]) -> tuple[str, list[str]]:
    """The demo data file, and what is passed on to kitlog."""
    parser = argparse.ArgumentParser(
        prog="start.py",
        allow_abbrev=False,
        description="Start kitlog with the demo scenario, setting up first what it needs.",
        epilog="Anything else is passed on to kitlog, working on the demo data file: start.py due --within 90",
    )
    parser.add_argument("--data", metavar="FILE", help="the demo data file (default: demo.kitlog in your data folder)")
    known, verb = parser.parse_known_args(arguments)
    return os.path.abspath(known.data or os.path.join(data_folder(), "demo.kitlog")), verb


def environment() -> dict[str, str]:
    """The person's own, with kitlog found in the checkout."""
    return dict(os.environ, PYTHONPATH=ROOT, PYTHONNOUSERSITE="1")


def kitlog(venv: str, *arguments: str) -> list[str]:
    """The command line of kitlog; -P keeps files of the current folder from being taken for modules."""
    return [python_in(venv), "-P", "-m", "kitlog", *arguments]


def show_without_screen(venv: str, demo: str) -> int:
    """Print the demo outing's repack, write its sheet beside the demo data file, and return the exit code."""
    sheet = os.path.splitext(demo)[0] + "-repack.html"
    with tempfile.TemporaryDirectory(prefix="kitlog-demo-") as folder:
        fresh = os.path.join(folder, "sheet.html")
        command = kitlog(venv, "--data", os.path.join(folder, "demo.kitlog"), "demo", "--text", "--html", fresh)
        code = subprocess.call(command, env=environment())
        if os.path.exists(fresh):
            os.makedirs(os.path.dirname(sheet), exist_ok=True)
            shutil.copyfile(fresh, sheet)
            say(f"No screen here, so this was the repack of the demo outing as text; its sheet is {sheet}")
    return code


def prepare_demo(venv: str, demo: str) -> None:
    """Fill the demo data file, for a verb that needs one."""
    os.makedirs(os.path.dirname(demo), exist_ok=True)
    command = kitlog(venv, "--data", demo, "demo", "--text")
    code = subprocess.call(command, env=environment(), stdout=subprocess.DEVNULL)
    if code:
        sys.exit(code)


def start(arguments: list[str]) -> NoReturn:
    """Set up, then run; with a window or a verb this process becomes kitlog."""
    demo, verb = read_arguments(arguments)
    screen = has_screen(os.environ)
    try:
        ensure_libraries(wanted(os.environ), missing_venv_packages)
    except SetupFault as fault:
        if screen:
            raise
        say(str(fault))  # the text needs no window library; drawings on the sheet may
    venv = ensure_venv("run")
    if not screen and not verb:
        sys.exit(show_without_screen(venv, demo))
    exists = os.path.exists(demo)
    if verb and not exists:
        prepare_demo(venv, demo)
    elif not exists:
        os.makedirs(os.path.dirname(demo), exist_ok=True)
        verb = ["demo"]
    replace_by(kitlog(venv, "--data", demo, *verb), environment())


def main() -> int:
    """Run `start`; a fault of the system becomes a sentence."""
    try:
        ensure_python(os.path.abspath(__file__), sys.argv[1:])
        start(sys.argv[1:])
    except SetupFault as fault:
        say(str(fault))
    except OSError as error:
        say(disk_sentence(error, ROOT))
    except KeyboardInterrupt:
        say("Stopped. The next start goes on from here.")
        return 130
    return WORLD_AT_FAULT


if __name__ == "__main__":
    sys.exit(main())
