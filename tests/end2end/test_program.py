"""The program itself, as a process of its own: what only a process can show."""

import os
import select
import shutil
import signal
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from pdf_reading import pages

ROOT = Path(__file__).parents[2]
O1 = "Skarnock cross-country"


def environment(home: Path, **more: str) -> dict[str, str]:
    kept = {name: os.environ[name] for name in ("PATH", "SYSTEMROOT", "TMPDIR") if name in os.environ}
    return {**kept, "HOME": str(home), "XDG_DATA_HOME": str(home), "PYTHONPATH": str(ROOT), **more}


def kitlog(
    home: Path, *arguments: object, python: tuple[str, ...] = (), stdin: bytes = b"", **more: str
) -> subprocess.CompletedProcess[bytes]:
    command = [sys.executable, "-P", *python, "-m", "kitlog", *map(str, arguments)]
    return subprocess.run(command, env=environment(home, **more), input=stdin, capture_output=True, check=False)


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    file = tmp_path_factory.mktemp("demo") / "demo.kitlog"
    made = kitlog(file.parent, "--data", file, "demo", "--text", "--html", file.with_name("sheet.html"))
    assert (made.returncode, made.stderr) == (0, b"")
    assert file.with_name("sheet.html").read_text(encoding="utf-8").startswith("<!DOCTYPE html>")
    return file


def imported(run: subprocess.CompletedProcess[bytes]) -> set[str]:
    """Top-level names of what was imported, as -X importtime tells."""
    rows = (line.rsplit("|", 1)[1].strip() for line in run.stderr.decode().splitlines() if "|" in line)
    return {name.split(".")[0] for name in rows}


@pytest.mark.parametrize("arguments", [("--help",), ("--version",), ("pack", "--help"), ("due", "--foo")])
def test_nothing_heavy_for_help(tmp_path: Path, arguments: tuple[str, ...]) -> None:
    run = kitlog(tmp_path, *arguments, python=("-X", "importtime"))
    assert imported(run).isdisjoint({"sqlalchemy", "pydantic", "alembic", "PySide6", "astral"})


@pytest.mark.parametrize("arguments", [("due",), ("pack", "--outing", O1), ("kit", "list"), ("verify",)])
def test_no_window_library_and_no_migrations_on_the_command_line(demo: Path, arguments: tuple[str, ...]) -> None:
    run = kitlog(demo.parent, "--data", demo, *arguments, python=("-X", "importtime"))
    assert run.returncode == 0
    assert imported(run).isdisjoint({"PySide6", "alembic"})


def test_utf8_whatever_the_locale(demo: Path) -> None:
    plain = {"LC_ALL": "C", "PYTHONCOERCECLOCALE": "0", "PYTHONUTF8": "0"}
    run = kitlog(demo.parent, "--data", demo, "pack", "--outing", O1, **plain)
    assert run.returncode == 0
    assert "◆ look" in run.stdout.decode("utf-8")
    wrong = kitlog(demo.parent, "--data", demo, "pack", "--outing", "Würzel", **plain)
    assert wrong.returncode == 2
    wrong.stderr.decode("utf-8")


def test_a_page_is_painted_without_a_screen(demo: Path, tmp_path: Path) -> None:
    to = tmp_path / "sheet.pdf"
    run = kitlog(demo.parent, "--data", demo, "pack", "--outing", O1, "--pdf", to)
    assert (run.returncode, run.stderr) == (0, b"")
    read = pages(to.read_bytes())
    assert len(read) > 1
    assert read[0].text.startswith("Sheet for 9 May 2026")


def test_bytes_that_are_no_text(tmp_path: Path) -> None:
    command = [sys.executable, "-P", "-m", "kitlog", "due", "--on", b"\xff"]
    run = subprocess.run(command, env=environment(tmp_path), capture_output=True, check=False)
    assert run.returncode == 2
    assert b"Traceback" not in run.stderr
    missing = [sys.executable, "-P", "-m", "kitlog", "--data", b"\xff.kitlog", "due"]
    run = subprocess.run(missing, env=environment(tmp_path), cwd=tmp_path, capture_output=True, check=False)
    assert run.returncode == 3
    assert run.stderr.startswith(b"kitlog: ")
    assert run.stderr.count(b"\n") == 1


def test_a_reader_that_leaves(demo: Path) -> None:
    command = [sys.executable, "-P", "-m", "kitlog", "--data", str(demo), "kit", "list", "--json"]
    with subprocess.Popen(command, env=environment(demo.parent), stdout=subprocess.PIPE, stderr=subprocess.PIPE) as run:
        assert run.stdout is not None
        assert run.stderr is not None
        run.stdout.close()
        assert run.stderr.read() == b""
    assert run.returncode == 141


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full here")
def test_output_onto_a_full_disk(demo: Path) -> None:
    command = [sys.executable, "-P", "-m", "kitlog", "--data", str(demo), "pack", "--outing", O1]
    with Path("/dev/full").open("wb") as full:
        run = subprocess.run(command, env=environment(demo.parent), stdout=full, stderr=subprocess.PIPE, check=False)
    assert run.returncode == 3
    assert run.stderr.startswith(b"kitlog: the output cannot be written: No space left on device.")
    assert run.stderr.count(b"\n") == 1


QUIET_S = 1.0
"""Seconds without a word after which the program has loaded what it needs and waits."""


@pytest.fixture
def interruptible() -> Iterator[None]:
    """What runs in the background of a script ignores Ctrl-C, and what it starts inherits that: not here."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is another thing there")
def test_ctrl_c_is_quiet(tmp_path: Path, interruptible: None) -> None:
    command = [sys.executable, "-P", "-m", "kitlog", "budget", "weight", "-"]
    with subprocess.Popen(
        command,
        env=environment(tmp_path, PYTHONVERBOSE="1"),
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        bufsize=0,
    ) as run:
        assert run.stderr is not None
        said = b""
        while b"kitlog.units.strict_json" not in said:  # the last import before it waits for its input
            said += run.stderr.read(4096)
        while select.select([run.stderr], [], [], QUIET_S)[0]:  # an interrupt within an import may be swallowed there
            more = run.stderr.read(4096)
            assert more, said
            said += more
        run.send_signal(signal.SIGINT)
        said += run.stderr.read()
    assert run.returncode == 130
    assert b"Traceback" not in said
    assert b"KeyboardInterrupt" not in said


READ_ONLY = """
import os, sys
from kitlog.__main__ import main
verb = sys.argv[3:]
assert main(["--data", sys.argv[1], *verb]) == 0  # imports all it needs, while it may read the environment
if os.getuid() == 0:
    os.setuid(65534)
sys.exit(main(["--data", sys.argv[2], *verb]))
"""


@pytest.mark.skipif(os.name == "nt", reason="modes are POSIX")
@pytest.mark.parametrize("verb", [("kit", "list"), ("pilot", "--body-mass", "74")])
def test_a_read_only_data_file(demo: Path, verb: tuple[str, ...]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        place = Path(shutil.copy(demo, Path(folder) / "kit.kitlog"))
        before = place.read_bytes()
        other = shutil.copy(demo, Path(folder) / "other.kitlog")
        place.chmod(0o444)
        Path(folder).chmod(0o755)
        run = subprocess.run(
            [sys.executable, "-P", "-c", READ_ONLY, other, place, *verb],
            env=environment(Path(folder)),
            capture_output=True,
            check=False,
        )
        assert run.returncode == 3
        assert b"it may not be written" in run.stderr
        assert run.stderr.count(b"\n") == 1
        assert place.read_bytes() == before


def test_no_screen_is_said_in_words(tmp_path: Path) -> None:
    if sys.platform in {"win32", "darwin"}:
        pytest.skip("there is always a screen")
    run = kitlog(tmp_path, "--data", tmp_path / "new.kitlog")
    assert run.returncode == 3
    assert run.stderr.startswith(b"kitlog: there is no screen to open a window on.")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("verb", [(), ("demo",)])
def test_the_window_opens_and_closes(tmp_path: Path, verb: tuple[str, ...]) -> None:
    file = tmp_path / "new.kitlog"
    run = kitlog(tmp_path, "--data", file, *verb, QT_QPA_PLATFORM="offscreen", KITLOG_FIRST_PAINT="1")
    assert (run.returncode, run.stdout) == (0, b"first paint\n"), run.stderr
    listed = kitlog(tmp_path, "--data", file, "kit", "list", "--json")
    assert listed.stdout.count(b'"mass_g"') >= (48 if verb else 0)


NO_WINDOW = """
import sys
sys.modules["PySide6"] = None
from kitlog.__main__ import main
sys.exit(main(sys.argv[1:]))
"""


def test_a_window_library_that_cannot_be_loaded(tmp_path: Path) -> None:
    command = [sys.executable, "-P", "-c", NO_WINDOW, "--data", str(tmp_path / "new.kitlog")]
    run = subprocess.run(
        command, env=environment(tmp_path, QT_QPA_PLATFORM="offscreen"), capture_output=True, check=False
    )
    assert run.returncode == 3
    assert run.stderr.startswith(b"kitlog: the window library cannot be loaded: ")
    assert run.stderr.count(b"\n") == 1


def test_from_standard_input_to_a_sheet(demo: Path, tmp_path: Path) -> None:
    outing = (ROOT / "resources" / "demo" / "outings" / "sample.json").read_bytes()
    sheet = tmp_path / "sheet.html"
    run = kitlog(demo.parent, "--data", demo, "pack", "-", "--html", sheet, stdin=outing)
    assert run.returncode == 0
    assert run.stdout.decode().startswith("An hour on the ridge, 16\u00a0May\u00a02026\n")
    assert sheet.stat().st_size < 200_000


def test_without_a_data_folder_of_its_own_a_first_import_makes_it(tmp_path: Path) -> None:
    home = tmp_path / "not yet"
    run = kitlog(home, "kit", "import", "-", stdin=b"name,kind,mass_g\nWing,wing,4800\n")
    assert (run.returncode, run.stdout) == (0, b"imported: 1 item\n")
    (made,) = list(home.rglob("*.kitlog"))
    assert made.name == "kit.kitlog"
    assert made.stat().st_mode & 0o077 == 0
    assert b"Wing" in kitlog(home, "kit", "list").stdout
