"""The system's own libraries that the window library loads: which are missing, and how to get them."""

from __future__ import annotations

import ctypes
import os
import re
import shutil
import subprocess
import sys
from typing import Callable, Mapping, NamedTuple, Sequence

from setup_fault import SetupFault, last_lines, say


class Library(NamedTuple):
    """A shared library by the name the loader knows, and the packages that bring it.

    The `apt` names were found by installing one at a time on a bare Debian 12; where a newer release renamed the
    package both names stand, the newer first. The `dnf` and `pacman` names are from memory, not tried.
    """

    soname: str
    apt: tuple[str, ...]
    dnf: str
    pacman: str


# In the order in which a bare system misses them. These seven are enough without a screen.
OFFSCREEN = (
    Library("libglib-2.0.so.0", ("libglib2.0-0t64", "libglib2.0-0"), "glib2", "glib2"),
    Library("libGL.so.1", ("libgl1",), "libglvnd-glx", "libglvnd"),
    Library("libxkbcommon.so.0", ("libxkbcommon0",), "libxkbcommon", "libxkbcommon"),
    Library("libEGL.so.1", ("libegl1",), "libglvnd-egl", "libglvnd"),
    Library("libfreetype.so.6", ("libfreetype6",), "freetype", "freetype2"),
    Library("libfontconfig.so.1", ("libfontconfig1",), "fontconfig", "fontconfig"),
    Library("libdbus-1.so.3", ("libdbus-1-3",), "dbus-libs", "dbus"),
)
X11 = (
    Library("libxkbcommon-x11.so.0", ("libxkbcommon-x11-0",), "libxkbcommon-x11", "libxkbcommon-x11"),
    Library("libxcb-cursor.so.0", ("libxcb-cursor0",), "xcb-util-cursor", "xcb-util-cursor"),
    Library("libxcb-icccm.so.4", ("libxcb-icccm4",), "xcb-util-wm", "xcb-util-wm"),
    Library("libxcb-keysyms.so.1", ("libxcb-keysyms1",), "xcb-util-keysyms", "xcb-util-keysyms"),
    Library("libxcb-shape.so.0", ("libxcb-shape0",), "libxcb", "libxcb"),
)
WAYLAND = (
    Library("libwayland-cursor.so.0", ("libwayland-cursor0",), "libwayland-cursor", "wayland"),
    Library("libwayland-egl.so.1", ("libwayland-egl1",), "libwayland-egl", "wayland"),
)

# The first of these that a system calls itself, or says it is like, decides.
FAMILIES = {
    "debian": "apt", "ubuntu": "apt", "fedora": "dnf", "rhel": "dnf", "centos": "dnf", "arch": "pacman",
}  # fmt: skip
INSTALL = {"apt": "apt install", "dnf": "dnf install", "pacman": "pacman -S"}


def has_screen(environment: Mapping[str, str], platform: str = sys.platform) -> bool:
    """Whether a window can be opened: a display is named, or the person chose a Qt platform themselves."""
    if not platform.startswith("linux"):
        return True
    return any(environment.get(name) for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"))


def wanted(environment: Mapping[str, str], platform: str = sys.platform) -> tuple[Library, ...]:
    """The libraries needed for the screen that the environment speaks of."""
    if not platform.startswith("linux"):
        return ()
    chosen = environment.get("QT_QPA_PLATFORM", "")
    x11 = "xcb" in chosen if chosen else bool(environment.get("DISPLAY"))
    wayland = "wayland" in chosen if chosen else bool(environment.get("WAYLAND_DISPLAY"))
    return OFFSCREEN + (X11 if x11 else ()) + (WAYLAND if wayland else ())


def missing(libraries: Sequence[Library], load: Callable[[str], object] = ctypes.CDLL) -> list[Library]:
    """Those that the loader cannot load, all of them, so that one command mends everything."""
    absent = []
    for library in libraries:
        try:
            load(library.soname)
        except OSError:
            absent.append(library)
    return absent


def package_family(os_release: str) -> str | None:
    """apt, dnf or pacman by the text of /etc/os-release; None when it speaks of none of them."""
    fields = dict(re.findall(r'^(ID|ID_LIKE)="?([^"\n]*)"?$', os_release, flags=re.MULTILINE))
    names = f"{fields.get('ID', '')} {fields.get('ID_LIKE', '')}".split()
    return next((FAMILIES[name] for name in names if name in FAMILIES), None)


def read_os_release(path: str = "/etc/os-release") -> str:
    """The text of the file by which a Linux says what it is; empty where there is none."""
    try:
        with open(path, encoding="utf-8", errors="replace") as file:
            return file.read()
    except OSError:
        return ""


def apt_knows(name: str) -> bool:
    """Whether apt has a package of this very name (not one that only provides it)."""
    if not shutil.which("apt-cache"):
        return False
    command = ["apt-cache", "show", "--no-all-versions", name]
    return subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False).returncode == 0


def packages_for(libraries: Sequence[Library], family: str, knows: Callable[[str], bool] = apt_knows) -> list[str]:
    """The packages that bring `libraries`, each once, in order.

    Where a package was renamed, the first name that `knows` accepts; else the old name, which new releases provide.
    """
    names = []
    for library in libraries:
        if family == "apt":
            known = [name for name in library.apt[:-1] if knows(name)]
            names.append((known or [library.apt[-1]])[0])
        else:
            names.append(library.dnf if family == "dnf" else library.pacman)
    return list(dict.fromkeys(names))


def remedy(libraries: Sequence[Library], family: str | None, *, root: bool, also_apt: Sequence[str] = ()) -> str:
    """One line, ready to be typed, that installs `libraries`; for an unknown system the names of the files.

    Args:
        libraries: what is missing.
        family: apt, dnf, pacman or None.
        root: whether `sudo` is not needed.
        also_apt: packages that apt shall bring in the same run.
    """
    if family is None:
        return f"install the packages that bring {', '.join(library.soname for library in libraries)}"
    names = packages_for(libraries, family) + (list(also_apt) if family == "apt" else [])
    return " ".join([*([] if root else ["sudo"]), INSTALL[family], *names])


def run_apt(*arguments: str) -> subprocess.CompletedProcess[str]:
    """Run apt-get without questions, waiting for another apt to finish; its output is kept, not shown."""
    command = ["apt-get", "-q", "-y", "-o", "DPkg::Lock::Timeout=300", *arguments]
    environment = dict(os.environ, DEBIAN_FRONTEND="noninteractive", LC_ALL="C")
    return subprocess.run(
        command,
        env=environment,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        errors="replace",
        check=False,
    )


def has_package_lists(folder: str = "/var/lib/apt/lists") -> bool:
    """Whether apt was ever told what there is; images made small have these lists removed."""
    try:
        return any("_Packages" in name for name in os.listdir(folder))
    except OSError:
        return False


def apt_install(names: Callable[[], list[str]]) -> None:
    """Install packages as root; the lists are fetched first where there are none, and once more on failure.

    Args:
        names: asked anew after the lists were fetched, since a name may only then be known.

    Raises:
        SetupFault: apt-get failed twice; its last lines are in the message.
    """
    fresh = not has_package_lists()
    if fresh:
        say("Fetching the package lists first: apt-get update")
        run_apt("update")
    say(f"As root on a Debian-like system, so installing now: apt-get install {' '.join(names())}")
    result = run_apt("install", "--no-install-recommends", *names())
    if result.returncode and not fresh:
        say("That failed; the package lists may be old: apt-get update, then once more")
        run_apt("update")
        result = run_apt("install", "--no-install-recommends", *names())
    if result.returncode:
        raise SetupFault(
            f"{last_lines(result.stdout)}\n"
            f"apt-get could not install {' '.join(names())} (its last lines stand above). "
            f"Look at the network and the package sources, then start again."
        )


def can_install() -> bool:
    """Whether this is root on a Debian-like system with apt-get."""
    root = hasattr(os, "geteuid") and os.geteuid() == 0
    return root and package_family(read_os_release()) == "apt" and shutil.which("apt-get") is not None


def ensure_libraries(libraries: Sequence[Library], also_apt: Callable[[], Sequence[str]] = list) -> None:
    """Return when all `libraries` can be loaded; as root on a Debian-like system install what is missing.

    Args:
        libraries: what must be there.
        also_apt: asked, when something is missing, for packages to install in the same run.

    Raises:
        SetupFault: something is missing; the message holds one line that installs it.
    """
    absent = missing(libraries)
    if absent and can_install():
        say(f"Missing system libraries: {', '.join(library.soname for library in absent)}")
        apt_install(lambda: [*packages_for(absent, "apt"), *also_apt()])
        absent = missing(libraries)
    if absent:
        root = hasattr(os, "geteuid") and os.geteuid() == 0
        line = remedy(absent, package_family(read_os_release()), root=root, also_apt=also_apt())
        raise SetupFault(
            f"The window library needs system libraries that are not here: "
            f"{', '.join(library.soname for library in absent)}. To get them:\n\n    {line}\n\nthen start again."
        )
