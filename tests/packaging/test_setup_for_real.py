"""Environments really made, by the real venv and pip, from a wheel made here and without any network."""

import http.server
import os
import shutil
import signal
import subprocess
import threading

import pytest
import run_pip
import stamp
from stand_in_packages import locked, make_source_archive

pytestmark = pytest.mark.slow

NOWHERE = {"PIP_INDEX_URL": "http://127.0.0.1:9/simple", "PIP_RETRIES": "1"}  # the discard port: nobody answers


class SlowSource:
    """A package source on this machine that answers only when told to."""

    def __init__(self, wheel):
        self.asked, self.may_answer = threading.Event(), threading.Event()
        source = self

        class Handler(http.server.BaseHTTPRequestHandler):
            def do_GET(self):  # the library's own name
                source.asked.set()
                source.may_answer.wait(60)
                page = self.path.endswith("/")
                names = [one.name for one in wheel.parent.iterdir()]
                links = "".join(f'<a href="/{name}">{name}</a>' for name in names)
                body = links.encode() if page else (wheel.parent / self.path.strip("/")).read_bytes()
                try:
                    self.send_response(200)
                    self.send_header("Content-Type", "text/html" if page else "application/octet-stream")
                    self.send_header("Content-Length", str(len(body)))
                    self.end_headers()
                    self.wfile.write(body)
                except OSError:
                    self.close_connection = True  # whoever asked was killed, as the test wanted

            def log_message(self, *args):
                pass

        self.server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Handler)
        self.settings = {"PIP_INDEX_URL": f"http://127.0.0.1:{self.server.server_port}/simple", "NO_PROXY": "*"}

    def __enter__(self):
        self.thread = threading.Thread(target=self.server.serve_forever, kwargs={"poll_interval": 0.02})
        self.thread.start()
        return self

    def __exit__(self, *args):
        self.may_answer.set()
        self.server.shutdown()
        self.server.server_close()
        self.thread.join()


@pytest.fixture
def source(wheel):
    with SlowSource(wheel) as source:
        yield source


@pytest.fixture
def settings(wheel):
    return {"PIP_NO_INDEX": "1", "PIP_FIND_LINKS": str(wheel.parent)}


def test_a_first_start_installs_and_later_ones_need_no_network(checkout, settings):
    first = checkout.run("start.py", **settings)
    assert first.returncode == 0, first.stderr
    assert first.stdout.startswith("kitlog --data ")
    assert "Installing the packages" in first.stderr
    second = checkout.run("start.py", **NOWHERE)
    assert (second.returncode, "Installing" in second.stderr) == (0, False)

    (checkout.venv / "kitlog-run.json").unlink()  # as an environment made by hand: all is there, no stamp
    third = checkout.run("start.py", **NOWHERE)
    assert (third.returncode, "Installing" in third.stderr) == (0, False)
    assert stamp.trusted(str(checkout.venv), "run", str(checkout.root))

    moved = checkout.root.rename(checkout.root.with_name("anderswo & später"))
    checkout.root = moved
    assert checkout.run("start.py", **NOWHERE).returncode == 0


def test_an_environment_that_lost_a_package_is_completed_in_place(checkout, settings):
    checkout.run("start.py", **settings)
    (checkout.venv / "kitlog-run.json").unlink()
    kept = checkout.venv / "kept-by-a-developer"
    kept.touch()
    python = stamp.python_in(str(checkout.venv))
    subprocess.run([python, "-m", "pip", "uninstall", "-q", "-y", "grain"], check=True, capture_output=True)
    done = checkout.run("start.py", **settings)
    assert done.returncode == 0, done.stderr
    assert kept.exists()


def test_no_network_is_one_sentence_after_what_pip_said(checkout):
    done = checkout.run("start.py", **NOWHERE)
    assert done.returncode == 3
    assert "pip could not reach its package source" in done.stderr.splitlines()[-1]
    assert "Traceback" not in done.stderr
    assert len(done.stderr.splitlines()) <= 24


@pytest.mark.parametrize("name", ["requirements.lock", run_pip.BUILD_LOCK])
def test_a_package_that_is_not_the_one_locked_is_refused(checkout, settings, name):
    lock = checkout.root / "packaging" / name
    package = lock.read_text(encoding="utf-8").partition(" ")[0]
    lock.write_text(f"{package} --hash=sha256:{'0' * 64}\n", encoding="utf-8")
    done = checkout.run("start.py", **settings)
    assert (done.returncode, "was refused" in done.stderr) == (3, True)


def add_source_archive(checkout, wheel, name):
    """Lock a package that is there as source alone."""
    with (checkout.root / "packaging" / "requirements.lock").open("a", encoding="utf-8") as lock:
        lock.write(locked(make_source_archive(wheel.parent, name)))


@pytest.mark.parametrize("name", run_pip.FROM_SOURCE)
def test_what_is_given_as_source_alone_is_built_with_the_locked_tool(checkout, wheel, settings, name):
    add_source_archive(checkout, wheel, name)
    done = checkout.run("start.py", **settings)
    assert done.returncode == 0, done.stderr
    python = stamp.python_in(str(checkout.venv))
    subprocess.run([python, "-c", f"import grain, {name}"], check=True)


def test_any_other_source_archive_is_not_even_opened(checkout, wheel, settings):
    add_source_archive(checkout, wheel, "chaff")
    done = checkout.run("start.py", **settings)
    assert (done.returncode, "has no ready-built package" in done.stderr) == (3, True)


def test_the_second_of_two_starts_waits_and_says_so(checkout, source):
    first = checkout.begin("start.py", **source.settings)
    assert source.asked.wait(60)
    second = checkout.begin("start.py", **source.settings)
    assert "waiting for it to finish" in second.stderr.readline()
    source.may_answer.set()
    told = [process.communicate(timeout=60)[1] for process in (first, second)]
    assert (first.returncode, second.returncode) == (0, 0), told
    assert "Installing" not in told[1]


@pytest.mark.skipif(os.name == "nt", reason="kills a process by its number, as POSIX systems do")
def test_a_start_killed_half_way_is_repaired_by_the_next(checkout, source):
    killed = checkout.begin("start.py", **source.settings)
    assert source.asked.wait(60)
    os.kill(killed.pid, signal.SIGKILL)
    killed.communicate(timeout=60)
    assert not stamp.trusted(str(checkout.venv), "run", str(checkout.root))

    following = checkout.begin("start.py", **source.settings)
    # pip outlives its parent and must not be robbed of the folder it fills.
    assert "waiting for it to finish" in following.stderr.readline()
    source.may_answer.set()
    out, err = following.communicate(timeout=60)
    assert following.returncode == 0, err
    assert "left half-made" in err
    assert out.startswith("kitlog --data ")


def test_a_python_without_pip_parts_is_named_before_anything_is_made(checkout, settings, tmp_path):
    blocked = tmp_path / "blocked"
    blocked.mkdir()
    (blocked / "ensurepip.py").write_text("raise ImportError('split off')", encoding="utf-8")
    (blocked / "bin").mkdir()
    for name in ("apt-get", "apt-cache"):  # a root's apt-get must not really run
        (blocked / "bin" / name).write_text("#!/bin/sh\nexit 0\n", encoding="utf-8")
        (blocked / "bin" / name).chmod(0o755)
    path = f"{blocked / 'bin'}:{checkout.environment['PATH']}"
    done = checkout.run("start.py", PYTHONPATH=str(blocked), PATH=path, **settings)
    assert done.returncode == 3
    assert "sudo apt install python3" in done.stderr
    assert not checkout.venv.exists()


def read_only(checkout, script, settings):
    """Run the command while nobody can write the checkout; for root only a mount has that power."""
    if os.geteuid() != 0:
        folders = [checkout.root, *(path for path in checkout.root.rglob("*") if path.is_dir())]
        for folder in folders:
            folder.chmod(0o500)
        done = checkout.run(script, **settings)
        for folder in folders:
            folder.chmod(0o700)
        return done
    real = checkout.command
    mount = 'mount --bind "$1" "$1" && mount -o remount,bind,ro "$1" && shift && exec "$@"'
    checkout.command = lambda *args: [
        "unshare", "--mount", "sh", "-c", mount, "sh", str(checkout.root), *real(*args)
    ]  # fmt: skip
    return checkout.run(script, **settings)


def may_mount():
    if not shutil.which("unshare"):
        return False
    return subprocess.run(["unshare", "--mount", "true"], capture_output=True, check=False).returncode == 0


@pytest.mark.skipif(
    not may_mount() and os.geteuid() == 0, reason="root may not mount here, so nothing is read-only to it"
)
def test_a_read_only_checkout_is_served_from_the_cache(checkout, settings):
    before = sorted(checkout.root.rglob("*"))
    first = read_only(checkout, "start.py", settings)
    assert first.returncode == 0, first.stderr
    assert ".cache/kitlog/checkouts" in first.stderr
    assert first.stdout.startswith("kitlog --data ")
    assert sorted(checkout.root.rglob("*")) == before
