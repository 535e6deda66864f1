"""Find a Python that can run kitlog, whatever Python this was started with."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from typing import NoReturn

from setup_fault import SetupFault, say

OLDEST = (3, 11)
NEWEST = (3, 14)  # the newest one that the locks hold wheels for
# The C library the wheels of the window library are built for, from their file names; other machines: no wheel.
GLIBC_BY_MACHINE = {"x86_64": (2, 34), "aarch64": (2, 39)}


def dotted(version: tuple[int, ...]) -> str:
    """3.11 rather than (3, 11)."""
    return ".".join(str(part) for part in version)


def fits(version: tuple[int, ...]) -> bool:
    """Whether the locks hold packages for this Python, given as (major, minor)."""
    return OLDEST <= version[:2] <= NEWEST


def candidates(path: str) -> list[str]:
    """Every python3.N of a fitting version in the folders of PATH, the newest version first.

    All folders, not only the first hit: a launcher for a version that is not installed may hide a Python that is.
    """
    names = [f"python3.{minor}" for minor in range(NEWEST[1], OLDEST[1] - 1, -1)]
    files = [os.path.join(folder, name) for name in names for folder in path.split(os.pathsep) if folder]
    return [file for file in files if os.path.isfile(file) and os.access(file, os.X_OK)]


def version_of(python: str) -> tuple[int, ...] | None:
    """Run `python` and return its (major, minor); None when it does not run."""
    question = "import sys; print('%d.%d' % sys.version_info[:2])"
    try:
        # S603: the file came from PATH and is asked for nothing but its version.
        answer = subprocess.run(
            [python, "-c", question],
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
            timeout=30,
            check=True,
        )
    except (OSError, subprocess.SubprocessError):
        return None
    found = re.match(r"(\d+)\.(\d+)", answer.stdout)
    return (int(found.group(1)), int(found.group(2))) if found else None


def find_python(path: str) -> str | None:
    """The first candidate on PATH that runs and is of a fitting version."""
    for python in candidates(path):
        version = version_of(python)
        if version and fits(version):
            return python
    return None


def system_problem(platform: str, machine: str, libc: str, *, is_64_bit: bool) -> str | None:
    """Why the ready-built packages cannot work on this system, as a sentence; None when they can.

    Args:
        platform: as `sys.platform`.
        machine: as `platform.machine()`.
        libc: what the C library calls itself, "glibc 2.36"; empty when it does not say, as musl does.
        is_64_bit: whether this Python is.
    """
    if not is_64_bit:
        return "This Python is a 32-bit one; kitlog needs a 64-bit Python (the window library has no other)."
    if not platform.startswith("linux"):
        return None
    needed = dotted(GLIBC_BY_MACHINE.get(machine, GLIBC_BY_MACHINE["x86_64"]))
    found = re.match(r"glibc (\d+)\.(\d+)", libc)
    if not found:
        return (
            f"This Linux does not use the GNU C library (it may be built on musl); kitlog needs glibc {needed} or "
            f"newer, because the window library is built for nothing else. Use another distribution or a container."
        )
    if (int(found.group(1)), int(found.group(2))) < GLIBC_BY_MACHINE.get(machine, (0, 0)):
        return (
            f"The C library here is {libc}; kitlog needs glibc {needed} or newer, because the window library is "
            f"built for that. A newer release of the distribution brings it."
        )
    return None


def c_library() -> str:
    """What the C library calls itself; empty where it has no such name."""
    try:
        return os.confstr("CS_GNU_LIBC_VERSION") or ""
    except (AttributeError, OSError, ValueError):
        return ""


def replace_by(command: list[str], environment: dict[str, str]) -> NoReturn:
    """End this process in favour of `command`, so that signals and the exit code are the program's own."""
    if os.name == "posix":
        sys.stdout.flush()
        os.execve(command[0], command, environment)  # noqa: S606  # no shell is what is wanted
    sys.exit(subprocess.call(command, env=environment))


def ensure_python(script: str, arguments: list[str]) -> None:
    """Return when this Python fits; otherwise start `script` again under one that does.

    Raises:
        SetupFault: no Python that fits was found, or the system cannot run the packages.
    """
    version = (sys.version_info[0], sys.version_info[1])
    if not fits(version):
        other = find_python(os.environ.get("PATH", ""))
        wanted = f"This is Python {dotted(version)}; kitlog needs {dotted(OLDEST)} to {dotted(NEWEST)}."
        if not other:
            names = ", ".join(f"python3.{minor}" for minor in range(NEWEST[1], OLDEST[1] - 1, -1))
            raise SetupFault(
                f"{wanted} None of {names} was found to work on the PATH. Install one from your system's packages "
                f"(for example: apt install python3.12 python3.12-venv, or dnf install python3.12), then start again."
            )
        say(f"{wanted} Going on with {other}.")
        replace_by([other, script, *arguments], dict(os.environ))
    machine = os.uname().machine if hasattr(os, "uname") else ""
    problem = system_problem(sys.platform, machine, c_library(), is_64_bit=sys.maxsize > 2**32)
    if problem:
        raise SetupFault(problem)
