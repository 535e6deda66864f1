"""The composition root: finds the data file, builds the workbench, hands it to window or command line."""

import uuid
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from kitlog.files.resources import load_library, resources_folder
from kitlog.store.data_file import DataFile
from kitlog.workbench.workbench import Workbench

FILE_NAME = "kit.kitlog"


def default_data_file() -> Path:
    """The data file in the platform's data folder."""
    from platformdirs import user_data_path

    return user_data_path("kitlog", appauthor=False) / FILE_NAME


def local_now() -> datetime:
    """The present moment with the local offset."""
    return datetime.now().astimezone()


def new_id() -> str:
    """A fresh id: 16 random hexadecimal digits."""
    return uuid.uuid4().hex[:16]


def open_bench(path: Path, *, create: bool = True, clock: Callable[[], datetime] = local_now) -> Workbench:
    """Open a data file and put the workbench on it.

    Raises:
        SystemFault: the data file cannot be opened.
    """
    data = DataFile.open(path, now=clock(), create=create)
    return Workbench(data, load_library(resources_folder()), clock, new_id)
