"""What check.py runs and says, with a shell script standing in for the environment's Python and its tools."""

import check
import pytest

TOOLS = """
case "$*" in
  *"ruff check"*) exit {lint};;
  *"ruff format"*) exit 0;;
  *mypy*) exit {types};;
  *importlinter*) exit {floors};;
  *bench\\ and*) echo "===== 9 deselected in 0.10s ====="; exit {bench};;
  *pytest*) echo "$PYTEST_ADDOPTS"; env | sort; echo "===== 3 passed, 2 deselected in 0.12s ====="; exit {tests};;
esac
"""


def tools(**codes):
    return TOOLS.format(**{"lint": 0, "types": 0, "floors": 0, "bench": 5, "tests": 0, **codes})


def begun(done):
    return [line.partition("--- ")[2] for line in done.stdout.splitlines() if line.startswith("--- ")]


def test_all_steps_run_and_pytest_has_the_last_word(checkout):
    checkout.put_python(tools())
    done = checkout.run("check.py", "--slow")
    assert done.returncode == 0, done.stdout
    assert begun(done) == [
        "lint: ruff check .",
        "lint: ruff format --check .",
        "types: mypy --strict",
        "floors: lint-imports",
        "tests: pytest -n 0 -m 'bench and not long'",
        "tests: pytest -n 2 -m 'not long and not bench'",
        "summary",
    ]
    assert done.stdout.splitlines()[-1] == "===== 3 passed, 2 deselected in 0.12s ====="


@pytest.mark.parametrize("step", ["lint", "types", "floors", "tests", "bench"])
def test_a_failing_step_fails_all_but_stops_none(checkout, step):
    checkout.put_python(tools(**{step: 1}))
    done = checkout.run("check.py", "--slow")
    assert done.returncode == 1
    assert len(begun(done)) == 7
    assert done.stdout.count("\nFAILED") == 1
    assert done.stdout.count("\npassed") == 5


FEW_FAIL = """
case "$*" in
  *--last-failed*) echo "===== {second} in 0.10s ====="; exit {code};;
  *pytest*) echo "===== {first}, 900 passed in 0.12s ====="; exit 1;;
esac
"""


@pytest.mark.parametrize(("first", "tries"), [("1 failed", 2), ("3 failed", 2), ("4 failed", 1), ("12 failed", 1)])
def test_a_few_tests_that_fail_run_once_more_by_themselves(checkout, first, tries):
    checkout.put_python(FEW_FAIL.format(first=first, second="1 failed", code=1))
    done = checkout.run("check.py", "--only", "tests")
    assert done.returncode == 1
    assert len(begun(done)) == tries + 1
    assert done.stdout.count("\nFAILED") == tries


def test_what_passes_by_itself_is_let_through_and_named(checkout):
    checkout.put_python(FEW_FAIL.format(first="2 failed", second="2 passed", code=0))
    done = checkout.run("check.py", "--only", "tests")
    assert done.returncode == 0
    assert begun(done)[1].endswith("-n 0 -m 'not slow and not long and not bench' --last-failed -v")
    assert "\nsecond  tests" in done.stdout
    assert done.stdout.splitlines()[-2:] == [
        "===== 2 failed, 900 passed in 0.12s =====",
        "===== 2 passed in 0.10s =====",
    ]


def test_errors_and_fast_runs_get_no_second_try(checkout):
    checkout.put_python(FEW_FAIL.format(first="1 failed, 1 error", second="1 passed", code=0))
    assert checkout.run("check.py", "--only", "tests").returncode == 1
    checkout.put_python(FEW_FAIL.format(first="1 failed", second="1 passed", code=0))
    assert checkout.run("check.py", "--only", "tests", "--fast").returncode == 1


def test_no_test_at_all_is_a_failure(checkout):
    checkout.put_python(tools(tests=5))
    assert checkout.run("check.py").returncode == 1


def test_fast_stops_at_the_first_that_fails(checkout):
    checkout.put_python(tools(types=1))
    assert begun(checkout.run("check.py", "--fast")) == [
        "lint: ruff check .",
        "lint: ruff format --check .",
        "types: mypy --strict",
        "summary",
    ]


def test_steps_are_chosen_and_the_rest_is_passed_to_pytest(checkout):
    checkout.put_python(tools())
    done = checkout.run("check.py", "--only", "tests", "--only", "floors", "tests/budget", "-k", "water")
    assert begun(done) == [
        "floors: lint-imports",
        "tests: pytest tests/budget -k water -n 2 -m 'not slow and not long and not bench'",
        "summary",
    ]


@pytest.mark.parametrize(
    ("slow", "long", "expressions"),
    [
        (False, False, ("not slow and not long and not bench", "")),
        (True, False, ("not long and not bench", "bench and not long")),
        (False, True, ("not slow and not bench", "")),
        (True, True, ("not bench", "bench")),
    ],
)
def test_which_marks_run(slow, long, expressions):
    assert check.mark_expressions(slow=slow, long=long) == expressions


def test_no_test_can_reach_the_persons_data_or_settings(checkout):
    checkout.put_python(tools())
    done = checkout.run(
        "check.py", "--only", "tests", DISPLAY=":7", QT_STYLE_OVERRIDE="x", KITLOG_DATA="x", LC_TIME="de_DE", XDG_DATA_HOME="/x"
    )  # fmt: skip
    seen = dict(line.split("=", 1) for line in done.stdout.splitlines() if "=" in line)
    home = seen["HOME"]
    assert home != checkout.environment["HOME"]
    assert seen["XDG_DATA_HOME"] == f"{home}/data"
    assert seen["APPDATA"] == home
    assert (seen["TZ"], seen["LC_ALL"], seen["QT_QPA_PLATFORM"]) == ("UTC", "C.UTF-8", "offscreen")
    assert seen["PYTHONPATH"] == str(checkout.root)
    assert not {"DISPLAY", "QT_STYLE_OVERRIDE", "KITLOG_DATA", "LC_TIME"} & set(seen)


def test_pip_still_finds_the_persons_settings(checkout):
    checkout.put_python(tools())
    del checkout.environment["PIP_CONFIG_FILE"]
    settings = checkout.root.parent / "home" / ".config" / "pip" / "pip.conf"
    settings.parent.mkdir(parents=True)
    settings.touch()
    assert f"PIP_CONFIG_FILE={settings}\n" in checkout.run("check.py", "--only", "tests").stdout


@pytest.mark.parametrize(
    ("line", "closing"),
    [
        ("============ 812 passed, 3 deselected in 44.10s ============", True),
        ("===== 1 failed, 2 passed, 1 warning in 61.20s (0:01:01) =====", True),
        ("============ no tests ran in 0.01s ============", True),
        ("64 passed in 2.05s", True),
        ("============ short test summary info ============", False),
        ("two things came in 3 boxes", False),
    ],
)
def test_the_closing_line_is_known_by_its_form(line, closing):
    assert bool(check.CLOSING_LINE.match(line)) is closing
