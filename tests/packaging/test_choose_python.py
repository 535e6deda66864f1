import ast
import sys
from pathlib import Path

import choose_python
import pytest

SCRIPTS = sorted(Path(choose_python.__file__).parent.glob("*.py"))
PRETEND = "import runpy, sys; sys.version_info = (3, 8, 18); sys.argv = sys.argv[1:]; runpy.run_path(sys.argv[0], run_name='__main__')"


def program(folder: Path, name: str, body: str) -> None:
    folder.mkdir(exist_ok=True)
    (folder / name).write_text(f"#!/bin/sh\n{body}\n", encoding="utf-8")
    (folder / name).chmod(0o755)


@pytest.mark.parametrize("script", SCRIPTS, ids=lambda script: script.name)
def test_an_old_python_can_read_the_scripts(script):
    ast.parse(script.read_text(encoding="utf-8"), feature_version=(3, 8))


def test_the_folder_is_no_package_since_a_library_of_the_same_name_is_needed():
    assert not (Path(choose_python.__file__).parent / "__init__.py").exists()


@pytest.mark.parametrize(
    ("version", "fitting"), [((3, 8), False), ((3, 10), False), ((3, 11), True), ((3, 14), True), ((3, 15), False)]
)
def test_which_pythons_fit(version, fitting):
    assert choose_python.fits(version) is fitting


def test_the_newest_python_that_really_runs_is_found_behind_launchers_that_do_not(tmp_path):
    program(tmp_path / "shims", "python3.13", "echo no such version >&2; exit 127")
    program(tmp_path / "shims", "python3.12", "echo no such version >&2; exit 127")
    program(tmp_path / "old", "python3.11", "echo 3.11")
    program(tmp_path / "real", "python3.12", "echo 3.12")
    path = f"{tmp_path / 'shims'}:{tmp_path / 'old'}:{tmp_path / 'real'}"
    assert choose_python.find_python(path) == str(tmp_path / "real" / "python3.12")


def test_a_name_is_not_believed(tmp_path):
    program(tmp_path / "bin", "python3.12", "echo 3.9")
    assert choose_python.find_python(str(tmp_path / "bin")) is None


@pytest.mark.parametrize("script", ["start.py", "check.py"])
def test_an_old_python_hands_over_to_a_newer_one(checkout, tmp_path, script):
    program(tmp_path / "bin", "python3.12", 'if [ "$1" = -c ]; then echo 3.12; else echo handed over "$@"; fi')
    checkout.environment["PATH"] = str(tmp_path / "bin")
    command = checkout.command(script, "--only", "lint")
    checkout.command = lambda *_: [sys.executable, "-c", PRETEND, *command[1:]]
    done = checkout.run(script)
    assert done.returncode == 0
    assert done.stdout.strip() == f"handed over {' '.join(command[1:])}"
    assert "This is Python 3.8; kitlog needs 3.11 to 3.14. Going on with" in done.stderr


def test_an_old_python_alone_gets_a_sentence(checkout, tmp_path):
    checkout.environment["PATH"] = str(tmp_path)
    command = checkout.command("start.py")
    checkout.command = lambda *_: [sys.executable, "-c", PRETEND, *command[1:]]
    done = checkout.run("start.py")
    assert done.returncode == 3
    assert "This is Python 3.8; kitlog needs 3.11 to 3.14. None of python3.14, python3.13" in done.stderr
    assert "Traceback" not in done.stderr


# PySide6-Essentials 6.11 and 6.12: the names of the wheels on offer are manylinux_2_34_x86_64 and
# manylinux_2_39_aarch64, none for musl. PEP 600 says what the numbers mean.
@pytest.mark.parametrize(
    ("machine", "libc", "word"),
    [
        ("x86_64", "glibc 2.36", None),
        ("x86_64", "glibc 2.34", None),
        ("x86_64", "glibc 2.31", "glibc 2.34 or newer"),
        ("aarch64", "glibc 2.36", "glibc 2.39 or newer"),
        ("aarch64", "glibc 2.41", None),
        ("x86_64", "", "musl"),
    ],
)
def test_the_c_library_is_named_when_it_is_too_old_or_another(machine, libc, word):
    sentence = choose_python.system_problem("linux", machine, libc, is_64_bit=True)
    assert (sentence is None) if word is None else (word in sentence)


def test_a_32_bit_python_gets_a_sentence():
    assert "64-bit" in choose_python.system_problem("win32", "", "", is_64_bit=False)


def test_other_systems_have_no_c_library_to_ask_for():
    assert choose_python.system_problem("darwin", "arm64", "", is_64_bit=True) is None


def test_this_system_runs_the_tests_so_it_must_be_accepted():
    assert choose_python.system_problem(sys.platform, "", choose_python.c_library(), is_64_bit=True) is None
