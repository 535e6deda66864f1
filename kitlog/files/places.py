"""Where the resources lie; light, for those who need the folder and nothing else."""

from pathlib import Path

import kitlog


def resources_folder() -> Path:
    """The folder of the resources: inside the package when installed, beside it in a checkout."""
    package = Path(kitlog.__file__).parent
    inside = package / "resources"
    return inside if inside.is_dir() else package.parent / "resources"
