"""Run every check of kitlog from a fresh checkout, by `python3 packaging/check.py`.

Sets up what the checks need (system libraries, an environment with the test tools), then runs lint, types, floors and
tests. A failing step does not stop the others; the exit code is 0 only if all of them pass.
"""

from __future__ import annotations

import argparse
import os
import re
import subprocess
import sys
import tempfile
import time
from typing import NamedTuple

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))

from choose_python import ensure_python
from setup_fault import WORLD_AT_FAULT, SetupFault, disk_sentence, say
from setup_venv import ensure_venv, missing_venv_packages
from stamp import ROOT, python_in
from system_libraries import OFFSCREEN, ensure_libraries

STEPS = ("lint", "types", "floors", "tests")
OPTIONAL_MARKS = ("slow", "long", "bench")
NO_TESTS_FOUND = 5  # pytest's exit code
TESTS_FAILED = 1  # pytest's exit code
FEW = 3
FEW_FAILED = re.compile(rf"\b([1-{FEW}]) failed\b(?!.*\berrors?\b)")
CLOSING_LINE = re.compile(r"^=+ .* in [0-9.]+s.*=+$|^(no tests ran|\d+ \w+).* in [0-9.]+s.*$")


class Command(NamedTuple):
    """One command of a step, as arguments of the environment's Python."""

    step: str
    arguments: tuple[str, ...]
    may_be_empty: bool = False


class Outcome(NamedTuple):
    """How a command ended."""

    command: Command
    passed: bool
    seconds: float
    closing_line: str
    code: int = 0

    @property
    def word(self) -> str:
        """*second* where it passed, but only when its failed tests ran by themselves."""
        if not self.passed:
            return "FAILED"
        return "second" if self.code == TESTS_FAILED else "passed"

    @property
    def may_be_disturbed(self) -> bool:
        """Whether so few tests failed that the neighbours on a busy machine may have been the cause."""
        return self.code == TESTS_FAILED and FEW_FAILED.search(self.closing_line) is not None


def read_arguments(arguments: list[str]) -> argparse.Namespace:
    """What the person asked for."""
    parser = argparse.ArgumentParser(
        prog="check.py",
        allow_abbrev=False,
        description="Set up and run kitlog's checks: lint, types, floors (who imports whom) and tests.",
        epilog="Anything else is passed on to pytest, for example: check.py --only tests tests/budget -k water",
    )
    parser.add_argument("--slow", action="store_true", help="also the tests marked slow and bench")
    parser.add_argument("--long", action="store_true", help="also the tests marked long")
    parser.add_argument("--fast", action="store_true", help="stop at the first step, and the first test, that fails")
    parser.add_argument("--only", action="append", choices=STEPS, help="this step alone; may be given more than once")
    options, more = parser.parse_known_args(arguments)
    options.more = more
    return options


def mark_expressions(*, slow: bool, long: bool) -> tuple[str, str]:
    """For pytest's -m: the tests to run side by side, and the timings to run alone (empty: none)."""
    asked = {"slow": slow, "long": long}
    side_by_side = [f"not {mark}" for mark in OPTIONAL_MARKS if not asked.get(mark)]
    alone = [f"not {mark}" for mark in ("slow", "long") if not asked[mark]]
    return " and ".join(side_by_side), " and ".join(["bench", *alone]) if slow else ""


def test_commands(options: argparse.Namespace) -> list[Command]:
    """The timings first and alone, since neighbours would disturb them; then all other tests on two processes."""
    side_by_side, alone = mark_expressions(slow=options.slow, long=options.long)
    pytest = ("-m", "pytest", *(("-x", "--failed-first") if options.fast else ()), *options.more)
    commands = []
    if alone:
        commands.append(Command("tests", (*pytest, "-n", "0", "-m", alone), may_be_empty=True))
    commands.append(Command("tests", (*pytest, "-n", "2", "-m", side_by_side)))
    return commands


def commands(options: argparse.Namespace) -> list[Command]:
    """All that was asked for, in order, the tests last."""
    lint_imports = "import sys; from importlinter.cli import lint_imports_command as run; sys.exit(run())"
    every = [
        Command("lint", ("-m", "ruff", "check", ".")),
        Command("lint", ("-m", "ruff", "format", "--check", ".")),
        Command("types", ("-m", "mypy", "--strict")),
        Command("floors", ("-c", lint_imports, "--no-logo", "--no-cache")),
        *test_commands(options),
    ]
    return [command for command in every if command.step in (options.only or STEPS)]


def clean_environment(home: str) -> dict[str, str]:
    """The person's environment without anything that could reach their data or change a result."""
    dropped = ("QT_", "KITLOG_", "PYTEST_", "LC_")
    environment = {name: value for name, value in os.environ.items() if not name.startswith(dropped)}
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "LANGUAGE", "PYTHONHOME", "PYTHONSAFEPATH", "PYTHONWARNINGS"):
        environment.pop(name, None)
    keep_pip_settings(environment)
    for name in ("HOME", "USERPROFILE", "APPDATA", "LOCALAPPDATA"):
        environment[name] = home
    for name in ("DATA", "CONFIG", "CACHE", "STATE"):
        environment[f"XDG_{name}_HOME"] = os.path.join(home, name.lower())
    runtime = os.path.join(home, "runtime")
    os.makedirs(runtime, mode=0o700, exist_ok=True)
    environment.update(
        XDG_RUNTIME_DIR=runtime,
        QT_QPA_PLATFORM="offscreen",
        TZ="UTC",
        LANG="C.UTF-8",
        LC_ALL="C.UTF-8",
        PYTHONPATH=ROOT,
        PYTHONNOUSERSITE="1",
    )
    return environment


def keep_pip_settings(environment: dict[str, str]) -> None:
    """Tests of the set-up run pip under another HOME; it must still find the person's settings."""
    folder = environment.get("XDG_CONFIG_HOME") or os.path.join(os.path.expanduser("~"), ".config")
    settings = os.path.join(folder, "pip", "pip.conf")
    if os.path.exists(settings):
        environment.setdefault("PIP_CONFIG_FILE", settings)


def caches(venv: str, home: str) -> dict[str, str]:
    """Where the tools keep what they know from the last run: never in the checkout, which may be read-only."""
    folder = os.path.join(venv if os.access(venv, os.W_OK) else home, "kitlog-caches")
    return {
        "RUFF_CACHE_DIR": os.path.join(folder, "ruff"),
        "MYPY_CACHE_DIR": os.path.join(folder, "mypy"),
        "HYPOTHESIS_STORAGE_DIRECTORY": os.path.join(folder, "hypothesis"),
        "PYTEST_ADDOPTS": f"-o 'cache_dir={os.path.join(folder, 'pytest')}'",
    }


def spoken(command: Command) -> str:
    """The command as the person reads it."""
    if command.step == "floors":
        return "lint-imports"
    return " ".join(f"'{part}'" if " " in part else part for part in command.arguments[1:])


def run(command: Command, python: str, environment: dict[str, str]) -> Outcome:
    """Run one command, showing its output as it comes and keeping pytest's closing line."""
    print(f"\n--- {command.step}: {spoken(command)}", flush=True)
    began = time.monotonic()
    process = subprocess.Popen(
        [python, *command.arguments],
        cwd=ROOT,
        env=environment,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
    )
    closing_line = ""
    assert process.stdout is not None  # noqa: S101  # for the type checker; PIPE was asked for
    for raw in process.stdout:
        line = raw.decode("utf-8", "replace").rstrip("\r\n")
        write(line)
        if command.step == "tests" and CLOSING_LINE.match(line):
            closing_line = line
    code = process.wait()
    passed = code == 0 or (command.may_be_empty and code == NO_TESTS_FOUND)
    return Outcome(command, passed, time.monotonic() - began, closing_line, code)


def attempts(command: Command, python: str, environment: dict[str, str], *, once: bool) -> list[Outcome]:
    """Run a command; up to three tests that failed run once more, alone on the machine, unless `once`.

    Timings and the keyboard's focus hang on what else runs. A test that fails by itself as well, and it must say so
    twice, fails the check; one that passes then is named in the summary, to be looked at.
    """
    outcome = run(command, python, environment)
    if once or not outcome.may_be_disturbed:
        return [outcome]
    at = command.arguments.index("-n")
    alone = (*command.arguments[:at], "-n", "0", *command.arguments[at + 2 :], "--last-failed", "-v")
    again = run(Command(command.step, alone), python, environment)
    return [outcome._replace(passed=again.passed), again]


def write(line: str) -> None:
    """Print a line whatever the terminal can show."""
    encoding = sys.stdout.encoding or "ascii"
    print(line.encode(encoding, "backslashreplace").decode(encoding), flush=True)


def summarise(outcomes: list[Outcome]) -> None:
    """One line a command, and pytest's closing line last."""
    print("\n--- summary")
    for outcome in outcomes:
        write(f"{outcome.word}  {outcome.command.step:6}  {outcome.seconds:6.1f} s  {spoken(outcome.command)}")
    for outcome in outcomes:
        if outcome.closing_line:
            write(outcome.closing_line)


def check(arguments: list[str]) -> int:
    """Set up, run, sum up; the exit code."""
    options = read_arguments(arguments)
    ensure_libraries(OFFSCREEN if sys.platform.startswith("linux") else (), missing_venv_packages)
    venv = ensure_venv("test")
    outcomes = []
    with tempfile.TemporaryDirectory(prefix="kitlog-check-", ignore_cleanup_errors=True) as home:
        environment = dict(clean_environment(home), **caches(venv, home))
        for command in commands(options):
            outcomes += attempts(command, python_in(venv), environment, once=options.fast or command.step != "tests")
            if options.fast and not outcomes[-1].passed:
                break
    summarise(outcomes)
    return 0 if all(outcome.passed for outcome in outcomes) else 1


def main() -> int:
    """Run `check`; a fault of the system becomes a sentence."""
    try:
        ensure_python(os.path.abspath(__file__), sys.argv[1:])
        return check(sys.argv[1:])
    except SetupFault as fault:
        say(str(fault))
    except OSError as error:
        say(disk_sentence(error, ROOT))
    except KeyboardInterrupt:
        say("Stopped.")
        return 130
    return WORLD_AT_FAULT


if __name__ == "__main__":
    sys.exit(main())
