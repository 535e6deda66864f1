"""Packages made on the spot, so that pip has something real to install without a network."""

import hashlib
import io
import tarfile
import zipfile
from pathlib import Path

MILL = """
import zipfile

def build_wheel(folder, *args, **more):
    name = open("PKG-INFO").read().split()[1]
    with zipfile.ZipFile(f"{folder}/{name}-1.0-py3-none-any.whl", "w") as wheel:
        wheel.writestr(f"{name}.py", "")
        info = f"{name}-1.0.dist-info/"
        wheel.writestr(info + "METADATA", f"Metadata-Version: 2.1\\nName: {name}\\nVersion: 1.0\\n")
        wheel.writestr(info + "WHEEL", "Wheel-Version: 1.0\\nGenerator: mill\\nRoot-Is-Purelib: true\\nTag: py3-none-any\\n")
        wheel.writestr(info + "RECORD", "")
    return f"{name}-1.0-py3-none-any.whl"
"""
"""A build tool (PEP 517), in a wheel of its own."""


def make_wheel(folder: Path, name: str = "grain", module: str = "") -> Path:
    """A wheel of one module, an empty one mostly."""
    folder.mkdir(exist_ok=True)
    wheel = folder / f"{name}-1.0-py3-none-any.whl"
    info = f"{name}-1.0.dist-info"
    files = {
        f"{name}.py": module,
        f"{info}/METADATA": f"Metadata-Version: 2.1\nName: {name}\nVersion: 1.0\n",
        f"{info}/WHEEL": "Wheel-Version: 1.0\nGenerator: test\nRoot-Is-Purelib: true\nTag: py3-none-any\n",
    }
    files[f"{info}/RECORD"] = "".join(f"{path},,\n" for path in [*files, f"{info}/RECORD"])
    with zipfile.ZipFile(wheel, "w") as archive:
        for path, text in files.items():
            archive.writestr(path, text)
    return wheel


def make_source_archive(folder: Path, name: str) -> Path:
    """A package as source alone, to be built with the mill."""
    project = '[build-system]\nrequires = ["mill"]\nbuild-backend = "mill"\n'
    archive = folder / f"{name}-1.0.tar.gz"
    with tarfile.open(archive, "w:gz") as tar:
        for file, text in {"pyproject.toml": project, "PKG-INFO": f"Name: {name}\n"}.items():
            entry = tarfile.TarInfo(f"{name}-1.0/{file}")
            entry.size = len(text)
            tar.addfile(entry, io.BytesIO(text.encode()))
    return archive


def locked(package: Path) -> str:
    """The line of a lock file for a wheel or a source archive of version 1.0."""
    digest = hashlib.sha256(package.read_bytes()).hexdigest()
    return f"{package.name.partition('-')[0]}==1.0 --hash=sha256:{digest}\n"
