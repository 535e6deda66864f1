"""Let the environment's own pip install what a lock file names, and say in a sentence what its failures mean."""

from __future__ import annotations

import os
import re
import subprocess
import sys

from setup_fault import SetupFault, disk_full_sentence, last_lines
from stamp import python_in

FROM_SOURCE = ("aerofiles",)
"""What its makers give as a source archive alone: pure Python, built in a second."""
BUILD_LOCK = "requirements-build.lock"
"""What these are built with."""

NO_TRUST = re.compile(r"CERTIFICATE_VERIFY_FAILED|certificate verify failed")
NO_NETWORK = re.compile(
    r"Failed to establish a new connection|NewConnectionError|name resolution|getaddrinfo|Network is unreachable|"
    r"Max retries exceeded|ConnectTimeout|ReadTimeout|ProxyError|Connection (refused|reset|broken)|ConnectionError"
)
FULL_DISK = re.compile(r"No space left on device|Errno 28\b|Disk quota exceeded")
WRONG_HASH = re.compile(r"DO NOT MATCH THE HASHES|Hashes are required")
NO_WHEEL = re.compile(r"No matching distribution|not a supported wheel|Failed (to build|building)|metadata-generation")


def run_kept(command: list[str], environment: dict[str, str]) -> subprocess.CompletedProcess[str]:
    """Run a step of the set-up without a word; its output is kept for when it fails, and it inherits the lock."""
    return subprocess.run(
        command,
        env=environment,
        close_fds=False,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        encoding="utf-8",
        errors="replace",
        check=False,
    )


def pip(venv: str, *arguments: str, own_settings: bool = True) -> subprocess.CompletedProcess[str]:
    """Run the environment's pip, with or without the person's own settings.

    Args:
        venv: the environment.
        arguments: what pip is to do.
        own_settings: false for a question that no setting may change the answer to.
    """
    environment = dict(os.environ)
    if not own_settings:
        environment = {name: value for name, value in environment.items() if not name.startswith("PIP_")}
        environment["PIP_CONFIG_FILE"] = os.devnull
    environment.update(LC_ALL="C", PIP_DISABLE_PIP_VERSION_CHECK="1", PIP_NO_INPUT="1")
    for name in ("PYTHONPATH", "PIP_TARGET", "PIP_PREFIX", "PIP_USER"):  # these install elsewhere
        environment.pop(name, None)
    return run_kept([python_in(venv), "-P", "-m", "pip", *arguments], environment)


def holds_all(venv: str, lock: str) -> bool:
    """Whether every package of the lock is there in its version; asks no network and changes nothing."""
    question = ("install", "--dry-run", "--no-index", "--no-deps", "--require-hashes", "-r", lock)
    return pip(venv, *question, own_settings=False).returncode == 0


def pip_sentence(output: str, venv: str) -> str:
    """What pip's failure means, in one sentence with a remedy."""
    if FULL_DISK.search(output):
        return disk_full_sentence(venv)
    if WRONG_HASH.search(output):
        return (
            "A package differs from the one the lock file was made for, so it was refused: the download was damaged, "
            "or the package source serves something else. Try again, or from another network."
        )
    if NO_TRUST.search(output):
        return (
            "pip does not trust the certificate of its package source: look at the clock of this computer; in a "
            "network with a certificate of its own, name that in pip's `cert` setting."
        )
    if NO_NETWORK.search(output):
        return "pip could not reach its package source: look at the network, or at pip's proxy and index settings."
    if NO_WHEEL.search(output):
        return (
            f"The package source that pip uses has no ready-built package for this system ({sys.platform}, Python "
            f"{sys.version.split()[0]}), or could not be reached: look at the network and pip's settings, or try "
            f"another Python from 3.11 to 3.14."
        )
    return "pip could not install the packages; its last lines above say why."


def install(venv: str, lock: str) -> None:
    """Bring the packages to what the lock file says, in two steps: what the second one builds with, then all.

    Packages come ready-built, but for those `FROM_SOURCE`. These are built outside pip's isolation, which would fetch
    build tools of any version and without a hash: so nothing runs here that no lock names.

    Raises:
        SetupFault: pip failed; the message holds its last 20 lines and one sentence.
    """
    ready_built = ("install", "--require-hashes", "--only-binary", ":all:")
    # Behind :all:, which would undo it.
    from_source = ("--no-binary", ",".join(FROM_SOURCE), "--no-build-isolation", "--use-pep517")
    tools = os.path.join(os.path.dirname(lock), BUILD_LOCK)
    for step in ((*ready_built, "-r", tools), (*ready_built, *from_source, "-r", lock)):
        done = pip(venv, *step)
        if done.returncode:
            raise SetupFault(f"{last_lines(done.stdout)}\n\n{pip_sentence(done.stdout, venv)}")
