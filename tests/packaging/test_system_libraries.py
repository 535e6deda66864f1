import pytest
import system_libraries as libraries
from setup_fault import SetupFault

DEBIAN = 'PRETTY_NAME="Debian GNU/Linux 12 (bookworm)"\nID=debian\n'
GLIB, GL = libraries.OFFSCREEN[:2]

# A stand-in for apt-get and apt-cache: writes down what it was asked and does what `apt.says` holds.
APT = """#!/bin/sh
while [ "$#" -gt 0 ] && [ "$1" != update ] && [ "$1" != install ]; do shift; done
echo "$*" >> '{folder}/asked'
[ "$1" = install ] || exit 0
{says}
"""


@pytest.fixture
def apt(tmp_path, monkeypatch):
    """Make this a Debian-like system seen by root, whose apt-get does what it is told here."""

    def prepare(says, *, lists=True, knows=()):
        cache = "\n".join(f'[ "$3" = {name} ] && exit 0' for name in knows)
        for name, body in (
            ("apt-get", APT.format(folder=tmp_path, says=says)),
            ("apt-cache", f"#!/bin/sh\n{cache}\nexit 100\n"),
        ):
            (tmp_path / name).write_text(body, encoding="utf-8")
            (tmp_path / name).chmod(0o755)
        monkeypatch.setenv("PATH", f"{tmp_path}:/usr/bin:/bin")
        monkeypatch.setattr(libraries.os, "geteuid", lambda: 0)
        monkeypatch.setattr(libraries, "read_os_release", lambda: DEBIAN)
        monkeypatch.setattr(libraries, "has_package_lists", lambda: lists)
        return lambda: (tmp_path / "asked").read_text(encoding="utf-8").splitlines()

    return prepare


def absent(*gone):
    """A loader for which the libraries of these names are not there."""

    def load(soname):
        if soname in gone:
            raise OSError(soname)

    return load


def test_all_that_is_missing_is_named_at_once():
    assert libraries.missing(libraries.OFFSCREEN, absent(GLIB.soname, GL.soname)) == [GLIB, GL]
    assert libraries.missing(libraries.OFFSCREEN, absent()) == []


def test_the_real_loader_finds_what_is_there_and_misses_what_is_not():
    nowhere = libraries.Library("libkitlog-nowhere.so.9", ("x",), "x", "x")
    assert libraries.missing([nowhere]) == [nowhere]
    assert libraries.missing(libraries.OFFSCREEN) == []


# os-release(5): ID, ID_LIKE with quotes optional; the texts are from memory of these systems.
@pytest.mark.parametrize(
    ("text", "family"),
    [
        (DEBIAN, "apt"),
        ("ID=ubuntu\nID_LIKE=debian\n", "apt"),
        ('ID=linuxmint\nID_LIKE="ubuntu debian"\n', "apt"),
        ("ID=fedora\nVARIANT_ID=workstation\n", "dnf"),
        ('ID="rocky"\nID_LIKE="rhel centos fedora"\n', "dnf"),
        ("ID=arch\n", "pacman"),
        ("ID=manjaro\nID_LIKE=arch\n", "pacman"),
        ("ID=alpine\n", None),
        ("", None),
    ],
)
def test_the_family_is_read_from_os_release(text, family):
    assert libraries.package_family(text) == family


def test_a_renamed_package_is_called_what_this_system_calls_it():
    assert libraries.packages_for([GLIB, GL], "apt", lambda name: name.endswith("t64")) == ["libglib2.0-0t64", "libgl1"]
    assert libraries.packages_for([GLIB, GL], "apt", lambda name: False) == ["libglib2.0-0", "libgl1"]


@pytest.mark.parametrize(
    ("family", "root", "line"),
    [
        ("apt", False, "sudo apt install libgl1"),
        ("apt", True, "apt install libgl1"),
        ("dnf", False, "sudo dnf install libglvnd-glx"),
        ("pacman", False, "sudo pacman -S libglvnd"),
        (None, False, "install the packages that bring libGL.so.1"),
    ],
)
def test_one_ready_line_installs_what_is_missing(family, root, line):
    assert libraries.remedy([GL], family, root=root) == line


def test_a_package_that_brings_several_libraries_is_named_once():
    assert libraries.remedy(libraries.WAYLAND, "pacman", root=True) == "pacman -S wayland"


@pytest.mark.parametrize(
    ("environment", "screen", "count"),
    [
        ({}, False, 7),
        ({"DISPLAY": ":0"}, True, 12),
        ({"WAYLAND_DISPLAY": "wayland-0"}, True, 9),
        ({"DISPLAY": ":0", "WAYLAND_DISPLAY": "wayland-0"}, True, 14),
        ({"QT_QPA_PLATFORM": "offscreen"}, True, 7),
        ({"QT_QPA_PLATFORM": "offscreen", "DISPLAY": ":0"}, True, 7),
        ({"QT_QPA_PLATFORM": "wayland;xcb"}, True, 14),
        ({"DISPLAY": ""}, False, 7),
    ],
)
def test_what_is_needed_follows_the_screen(environment, screen, count):
    assert libraries.has_screen(environment, "linux") is screen
    assert len(libraries.wanted(environment, "linux")) == count


def test_other_systems_bring_all_libraries_and_a_screen():
    assert libraries.has_screen({}, "darwin")
    assert libraries.wanted({}, "win32") == ()


def gone_until(tmp_path, monkeypatch, installed):
    real = libraries.missing
    load = lambda soname: absent()(soname) if (tmp_path / installed).exists() else absent(GLIB.soname)(soname)  # noqa: E731
    monkeypatch.setattr(libraries, "missing", lambda wanted: real(wanted, load))


def test_root_on_a_debian_like_system_gets_it_installed_and_told(apt, tmp_path, monkeypatch, capsys):
    asked = apt(f"touch '{tmp_path}/done'", knows=["libglib2.0-0t64"])
    gone_until(tmp_path, monkeypatch, "done")
    libraries.ensure_libraries(libraries.OFFSCREEN)
    assert asked() == ["install --no-install-recommends libglib2.0-0t64"]
    told = capsys.readouterr().err
    assert "Missing system libraries: libglib-2.0.so.0" in told
    assert "apt-get install libglib2.0-0t64" in told


def test_the_lists_are_fetched_first_where_there_are_none(apt):
    asked = apt("exit 0", lists=False)
    libraries.apt_install(lambda: ["libgl1"])
    assert asked() == ["update", "install --no-install-recommends libgl1"]


def test_old_lists_are_fetched_anew_when_the_install_fails(apt, tmp_path):
    asked = apt(f"[ $(wc -l < '{tmp_path}/asked') -ge 3 ]")
    libraries.apt_install(lambda: ["libgl1"])
    assert asked() == ["install --no-install-recommends libgl1", "update", "install --no-install-recommends libgl1"]


def test_what_apt_said_last_is_shown_when_it_cannot(apt):
    apt("seq 1 50; echo E: no route; exit 100")
    with pytest.raises(SetupFault) as fault:
        libraries.apt_install(lambda: ["libgl1"])
    text = str(fault.value)
    assert text.startswith("32\n33\n")
    assert "50\nE: no route\napt-get could not install libgl1" in text


def test_what_else_is_lacking_comes_in_the_same_run(apt, tmp_path, monkeypatch):
    asked = apt(f"touch '{tmp_path}/done'")
    gone_until(tmp_path, monkeypatch, "done")
    libraries.ensure_libraries(libraries.OFFSCREEN, lambda: ["python3-venv"])
    assert asked() == ["install --no-install-recommends libglib2.0-0 python3-venv"]
    assert libraries.remedy([GL], "apt", root=False, also_apt=["a"]) == "sudo apt install libgl1 a"
    assert libraries.remedy([GL], "dnf", root=False, also_apt=["a"]) == "sudo dnf install libglvnd-glx"


def test_everyone_else_gets_the_line(apt, tmp_path, monkeypatch):
    apt("exit 0")
    monkeypatch.setattr(libraries.os, "geteuid", lambda: 1000)
    gone_until(tmp_path, monkeypatch, "never")
    with pytest.raises(SetupFault, match=r"libglib-2\.0\.so\.0\. To get them:\n\n    sudo apt install libglib2\.0-0\n"):
        libraries.ensure_libraries(libraries.OFFSCREEN)
