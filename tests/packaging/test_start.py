"""What start.py runs, with a shell script standing in for the environment's Python."""

import os
import subprocess
from pathlib import Path

import pytest

ECHO = 'for part in "$@"; do printf "%s|" "$part"; done; exit 7'
WRITES_SHEET = 'for last in "$@"; do :; done; echo "the repack"; echo "<p>sheet</p>" > "$last"'


def demo_of(checkout):
    return f"{checkout.environment['HOME']}/.local/share/kitlog/demo.kitlog"


def test_without_a_screen_the_repack_is_printed_and_the_sheet_stays(checkout):
    checkout.put_python(WRITES_SHEET)
    done = checkout.run("start.py")
    sheet = demo_of(checkout).replace(".kitlog", "-repack.html")
    assert (done.returncode, done.stdout) == (0, "the repack\n")
    assert f"its sheet is {sheet}" in done.stderr
    assert Path(sheet).read_text(encoding="utf-8") == "<p>sheet</p>\n"


def test_without_a_screen_the_demo_goes_to_a_new_file_each_time(checkout):
    checkout.put_python(ECHO)
    first, second = checkout.run("start.py"), checkout.run("start.py")
    parts = first.stdout.split("|")
    assert parts[:4] == ["-P", "-m", "kitlog", "--data"]
    assert parts[5:8] == ["demo", "--text", "--html"]
    assert parts[4] != second.stdout.split("|")[4]
    assert first.returncode == 7


def test_the_sheet_lies_beside_the_data_file_that_was_named(checkout, tmp_path):
    checkout.put_python(WRITES_SHEET)
    checkout.run("start.py", "--data", str(tmp_path / "ä b" / "mine.kitlog"))
    assert (tmp_path / "ä b" / "mine-repack.html").exists()


def test_with_a_screen_the_first_start_makes_the_demo_and_the_next_opens_it(checkout, tmp_path):
    checkout.put_python(ECHO)
    data = tmp_path / "data"
    where = {"QT_QPA_PLATFORM": "offscreen", "XDG_DATA_HOME": str(data)}
    first = checkout.run("start.py", **where)
    assert first.stdout == f"-P|-m|kitlog|--data|{data}/kitlog/demo.kitlog|demo|"
    assert first.returncode == 7
    (data / "kitlog" / "demo.kitlog").touch()
    assert checkout.run("start.py", **where).stdout == f"-P|-m|kitlog|--data|{data}/kitlog/demo.kitlog|"


def test_a_verb_works_on_the_demo_file_which_is_made_quietly_first(checkout):
    checkout.put_python('case "$*" in *demo\\ --text*) touch "$5"; echo noise;; *) echo "$@";; esac')
    done = checkout.run("start.py", "due", "--within", "90")
    assert done.stdout == f"-P -m kitlog --data {demo_of(checkout)} due --within 90\n"


def test_the_sentences_go_to_stderr_and_there_is_help(checkout):
    done = checkout.run("start.py", "--help")
    assert "--data FILE" in done.stdout
    assert done.returncode == 0


@pytest.mark.bench
def test_setting_up_costs_a_second_start_less_than_a_fifth_of_a_second(checkout):
    checkout.put_python("exit 0")

    def seconds(command):
        before = os.times()
        subprocess.run(command, env=checkout.environment, check=True, capture_output=True)
        after = os.times()
        return after.children_user - before.children_user + after.children_system - before.children_system

    # Processor time, and the best of several, so that a busy machine does not decide.
    plain = min(seconds([str(checkout.venv / "bin" / "python"), "-m", "kitlog"]) for _ in range(5))
    through = min(seconds(checkout.command("start.py")) for _ in range(5))
    assert through - plain < 0.2
