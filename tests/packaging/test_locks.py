"""The lock files against the project file, for every Python they are meant for."""

import re
import tomllib
from pathlib import Path

import choose_python
import pytest
import run_pip
from packaging.requirements import Requirement

ROOT = Path(__file__).parents[2]
PYTHONS = [f"3.{minor}.{patch}" for minor in range(11, choose_python.NEWEST[1] + 1) for patch in (0, 7)]
LOCKS = ["requirements.lock", "requirements-test.lock", run_pip.BUILD_LOCK]
SYSTEMS = {"linux": ("Linux", "posix"), "win32": ("Windows", "nt"), "darwin": ("Darwin", "posix")}


def entries(name):
    text = (ROOT / "packaging" / name).read_text(encoding="utf-8")
    joined = re.sub(r"#.*", "", text).replace("\\\n", " ")
    return [line.split() for line in joined.splitlines() if line.strip()]


def pins(name, python, system="linux"):
    """Package and version of each entry that applies to this Python on this system."""
    platform, os_name = SYSTEMS[system]
    marker = {
        "python_full_version": python, "python_version": python.rpartition(".")[0], "sys_platform": system,
        "platform_system": platform, "os_name": os_name, "platform_python_implementation": "CPython",
    }  # fmt: skip
    wanted = [Requirement(" ".join(part for part in entry if not part.startswith("--hash"))) for entry in entries(name)]
    return [(one.name, one.specifier) for one in wanted if one.marker is None or one.marker.evaluate(marker)]


def project():
    return tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def version(specifier):
    (one,) = specifier
    assert one.operator == "=="
    return one.version


@pytest.mark.parametrize("name", LOCKS)
def test_every_entry_is_pinned_and_hashed(name):
    for entry in entries(name):
        assert re.fullmatch(r"[a-z0-9-]+==[0-9][0-9a-z.]*", entry[0]), entry[0]
        assert [part for part in entry if re.fullmatch(r"--hash=sha256:[0-9a-f]{64}", part)], entry[0]


@pytest.mark.parametrize("name", LOCKS)
def test_no_package_source_is_named(name):
    text = (ROOT / "packaging" / name).read_text(encoding="utf-8")
    assert not re.search(r"https?:|file:|--index|--extra-index|--find-links|--trusted", text)


@pytest.mark.parametrize("python", PYTHONS)
@pytest.mark.parametrize("system", SYSTEMS)
def test_one_version_a_package_and_the_tests_run_on_what_the_program_runs_on(python, system):
    run = pins("requirements.lock", python, system)
    test = pins("requirements-test.lock", python, system)
    for found in (run, test):
        assert len({name for name, _ in found}) == len(found)
    assert set(run) <= set(test)


@pytest.mark.parametrize("python", PYTHONS)
@pytest.mark.parametrize(("lock", "extra"), [("requirements.lock", None), ("requirements-test.lock", "test")])
def test_the_lock_holds_what_the_project_asks_for(python, lock, extra):
    found = {name: version(specifier) for name, specifier in pins(lock, python)}
    asked = project()["dependencies"] + (project()["optional-dependencies"][extra] if extra else [])
    for text in asked:
        one = Requirement(text)
        if one.marker is None or one.marker.evaluate({"python_version": python.rpartition(".")[0]}):
            assert found[one.name.lower()] in one.specifier, text


def test_what_is_built_from_source_is_locked_as_one_archive_and_can_be_built():
    lines = {entry[0].partition("==")[0]: entry for name in LOCKS for entry in entries(name)}
    for name in run_pip.FROM_SOURCE:
        assert len([part for part in lines[name] if part.startswith("--hash")]) == 1
    assert "setuptools" in lines  # what builds an archive that names no build tool of its own (PEP 517)


def test_no_qt_that_loses_references_on_3_11():
    # PySide6 6.12.0 on CPython 3.11 lowers the reference count of None in every call that returns nothing:
    # measured for this project with QPainterPath.lineTo, -500 in 500 calls; 6.11.3 and CPython 3.12.1: 0.
    found = dict(pins("requirements.lock", "3.11.7"))
    assert version(found["pyside6-essentials"]).startswith("6.11.")


def test_the_scripts_and_the_project_agree_on_the_oldest_python():
    assert project()["requires-python"] == f">={choose_python.dotted(choose_python.OLDEST)}"
