"""The rules of the environment, with a shell script standing in for its Python and pip."""

import json
import os

import pytest
import setup_venv
import stamp
import system_libraries
from setup_fault import SetupFault, disk_sentence

# Answers the questions of the set-up as a sound environment does; pip fails as the last part says.
FAILING_PIP = """
case "$*" in
  *"import pip"*) echo 1;;
  *--dry-run*) exit 1;;
  *install*) seq 1 40; echo "{output}"; exit 1;;
esac
"""
PROGRAM = 'echo "$@"; echo "PYTHONPATH=$PYTHONPATH"'


@pytest.mark.parametrize(
    ("output", "word"),
    [
        (
            "NewConnectionError: Failed to establish a new connection: [Errno 101] Network is unreachable",
            "look at the network",
        ),
        ("Max retries exceeded (Caused by SSLError(SSLCertVerificationError('certificate verify failed')))", "trust"),
        ("ProxyError('Cannot connect to proxy.')", "look at the network"),
        ("ERROR: Could not install packages due to an OSError: [Errno 28] No space left on device", "disk is full"),
        ("ERROR: THESE PACKAGES DO NOT MATCH THE HASHES FROM THE REQUIREMENTS FILE", "was refused"),
        ("ERROR: No matching distribution found for grain==1.0", "has no ready-built package"),
        ("ERROR: something nobody thought of", "last lines above say why"),
    ],
)
def test_a_failing_pip_shows_its_last_lines_and_one_sentence(checkout, output, word):
    checkout.put_python(FAILING_PIP.format(output=output), stamped=False)
    done = checkout.run("start.py")
    assert done.returncode == 3
    lines = [line for line in done.stderr.splitlines() if line]
    assert lines[1:22] == [str(number) for number in range(22, 41)] + [output, lines[21]]
    assert word in lines[21]
    assert len(lines) == 22
    assert "Traceback" not in done.stderr


def test_a_failed_install_is_not_trusted_afterwards(checkout):
    checkout.put_python(FAILING_PIP.format(output="x"), stamped=False)
    checkout.put_stamp("run", lock="of another day")
    checkout.run("start.py")
    assert not stamp.trusted(str(checkout.venv), "run", str(checkout.root))
    assert stamp.unfinished(str(checkout.venv))


def test_a_stamped_environment_is_used_as_it_is(checkout):
    checkout.put_python(PROGRAM)
    done = checkout.run("start.py", "due", "--within", "9", QT_QPA_PLATFORM="offscreen")
    assert done.returncode == 0, done.stderr
    assert "-P -m kitlog --data" in done.stdout
    assert f"PYTHONPATH={checkout.root}\n" in done.stdout
    assert not (checkout.root / ".venv.lock").exists()


def test_an_environment_that_holds_all_is_only_stamped(checkout):
    checkout.put_python(
        'case "$*" in *"import pip"*) echo 1;; *abiflags*) echo tag;; *kitlog*) echo ran;; esac', stamped=False
    )
    done = checkout.run("start.py")
    assert (done.returncode, done.stdout) == (0, "ran\n")
    assert json.loads((checkout.venv / "kitlog-run.json").read_text(encoding="utf-8"))["python"] == "tag"
    assert not (checkout.venv / "kitlog-test.json").exists()
    assert "Installing" not in done.stderr


def test_a_stamp_for_the_tests_serves_the_program_too(checkout):
    checkout.put_python("echo tag", stamped=False)
    stamp.write_stamp(str(checkout.venv), "test", str(checkout.root))
    assert stamp.trusted(str(checkout.venv), "run", str(checkout.root))


@pytest.mark.parametrize(
    "spoil",
    [
        lambda venv: (venv / "kitlog-run.json").write_text("{", encoding="utf-8"),
        lambda venv: (venv / "kitlog-run.json").write_text("[]", encoding="utf-8"),
        lambda venv: (venv / "kitlog-run.json").unlink(),
        lambda venv: (venv / "bin" / "python").unlink(),
        lambda venv: stamp.set_mark(str(venv)),
        lambda venv: (venv.parent / "packaging" / "requirements.lock").write_text("grain==2.0", encoding="utf-8"),
    ],
    ids=["torn stamp", "strange stamp", "no stamp", "no python", "unfinished", "new lock"],
)
def test_what_takes_the_trust_away(checkout, spoil):
    checkout.put_python(PROGRAM)
    assert stamp.trusted(str(checkout.venv), "run", str(checkout.root))
    spoil(checkout.venv)
    assert not stamp.trusted(str(checkout.venv), "run", str(checkout.root))


def test_an_environment_of_another_python_says_itself_what_it_is(checkout):
    checkout.put_python("echo cpython-399")
    checkout.put_stamp("run", python="cpython-399")
    assert stamp.trusted(str(checkout.venv), "run", str(checkout.root))
    checkout.put_stamp("run", python="cpython-398")
    assert not stamp.trusted(str(checkout.venv), "run", str(checkout.root))


def test_line_ends_do_not_change_what_the_stamp_says(checkout):
    lock = checkout.root / "packaging" / "requirements.lock"
    before = stamp.lock_hash("run", str(checkout.root))
    lock.write_bytes(lock.read_bytes().replace(b"\n", b"\r\n"))
    assert stamp.lock_hash("run", str(checkout.root)) == before


def test_a_read_only_folder_sends_the_environment_to_the_cache(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    root = tmp_path / "checkout"
    root.mkdir()
    beside, cached = setup_venv.places(str(root))
    assert beside == str(root / ".venv")
    assert cached.startswith(str(tmp_path / "cache" / "kitlog"))
    allowed = os.access
    monkeypatch.setattr(os, "access", lambda path, mode: path != str(root) and allowed(path, mode))
    assert not setup_venv.can_write(beside)
    assert setup_venv.can_write(cached)


def test_two_checkouts_of_one_name_do_not_share_a_cache(tmp_path):
    assert setup_venv.places(str(tmp_path / "a" / "kitlog"))[1] != setup_venv.places(str(tmp_path / "b" / "kitlog"))[1]


@pytest.mark.parametrize(("of_system", "package"), [(True, "python3-venv"), (False, r"python3\.\d+-venv")])
def test_a_python_without_venv_gets_the_line_that_mends_it(monkeypatch, of_system, package):
    version = str(setup_venv.sys.version_info[:2]) if of_system else "(3, 2)"
    monkeypatch.setattr(setup_venv, "answer", lambda command: version if command[0] == "/usr/bin/python3" else None)
    monkeypatch.setattr(system_libraries, "can_install", lambda: False)
    with pytest.raises(SetupFault, match=f"sudo apt install {package};"):
        setup_venv.require_venv_module()


def test_root_on_a_debian_like_system_gets_venv_installed(monkeypatch):
    asked = []
    monkeypatch.setattr(setup_venv, "answer", lambda command: "" if asked else None)
    monkeypatch.setattr(system_libraries, "can_install", lambda: True)
    monkeypatch.setattr(system_libraries, "apt_install", lambda names: asked.extend(names()))
    setup_venv.require_venv_module()
    assert len(asked) == 1
    assert asked[0].endswith("-venv")


@pytest.mark.parametrize(
    ("number", "word"), [(28, "disk is full"), (13, "cannot be written"), (30, "cannot be written"), (5, "put/error")]
)
def test_what_the_system_says_about_writing_becomes_a_sentence(number, word):
    assert word in disk_sentence(OSError(number, "in/put/error", "/somewhere"), "/somewhere")
