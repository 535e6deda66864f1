"""Making a data file: complete under another name first, so that no half-made file ever has the real one."""

from pathlib import Path

from kitlog.fault import SystemFault
from kitlog.store import disk
from kitlog.store.connection import connect, engine_on, settle
from kitlog.store.faults import told, told_by_system
from kitlog.store.marks import APPLICATION_ID, SCHEMA
from kitlog.store.tables import kit, log, outing
from kitlog.store.tables.base import METADATA

FILE_NAME = "kitlog.db"

TABLES = (kit, log, outing)
"""Named so that every table is in METADATA, whatever else was imported."""


def usual_path() -> Path:
    """The data file where nothing else is said: in the user's data folder."""
    from platformdirs import user_data_path

    return user_data_path("kitlog", appauthor=False) / FILE_NAME


def resolved(path: Path) -> Path:
    """The one true name of a file: two names (links) for one file are a cause of damage.

    Raises:
        SystemFault: ``data_file.cannot_open`` for links that go in a circle.
    """
    try:
        return path.expanduser().resolve()
    except (OSError, RuntimeError) as error:
        raise SystemFault("data_file.cannot_open", path=str(path), reason=str(error)) from error


def create(path: Path) -> None:
    """Make an empty data file; if another process made one meanwhile, that one stays.

    Raises:
        SystemFault: ``data_file.missing_folder``, ``.read_only``, ``.full`` and the like.
    """
    have_folder(path)
    with told_by_system(path), disk.unfinished(path) as temporary:
        disk.make_private(temporary)
        with told(path):
            _fill(temporary)
        disk.sync_file(temporary)
        try:
            disk.place_new(temporary, path)
        except FileExistsError:
            return


def have_folder(path: Path) -> None:
    """Make the folder of a data file if it is the usual one.

    Raises:
        SystemFault: ``data_file.missing_folder`` with ``folder``.
    """
    if path.parent.is_dir():
        return
    if path.parent != resolved(usual_path()).parent:
        raise SystemFault("data_file.missing_folder", path=str(path), folder=str(path.parent))
    with told_by_system(path):
        disk.make_private_folder(path.parent)


def _fill(path: Path) -> None:
    raw = connect(path)
    try:
        settle(raw, path)
        engine = engine_on(raw)
        with engine.connect().execution_options(begin="BEGIN IMMEDIATE") as connection, connection.begin():
            METADATA.create_all(connection, checkfirst=False)
            connection.exec_driver_sql(f"PRAGMA application_id={APPLICATION_ID}")
            connection.exec_driver_sql(f"PRAGMA user_version={SCHEMA}")
        engine.dispose()
    finally:
        raw.close()
