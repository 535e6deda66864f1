"""A packed file into a grid: which kind of workbook it is, by its parts."""

from collections.abc import Callable

from kitlog.fault import InputFault
from kitlog.files.table.archive import Parts
from kitlog.files.table.cells import Grid
from kitlog.files.table.ods_grid import ods_grid
from kitlog.files.table.xlsx_grid import xlsx_grid

_OPEN_DOCUMENT = "application/vnd.oasis.opendocument."


def workbook_grid(data: bytes, file: str, tell: Callable[[float], None], sheet: str = "") -> Grid:
    """The rows of an .xlsx or .ods workbook, of the sheet of that name if one is given.

    Raises:
        InputFault: ``table.is_numbers``, ``table.is_document``, ``table.is_slides``, ``table.is_binary_workbook``,
            ``table.is_packed``, and the codes of `Parts`, `xlsx_grid` and `ods_grid`.
    """
    parts = Parts(data, file)
    names = parts.names
    if "content.xml" in names:
        _refuse_other_documents(parts, file)
        return ods_grid(parts, file, tell, sheet)
    if "[Content_Types].xml" in names:
        _refuse_other_packages(names, file)
        return xlsx_grid(parts, file, tell, sheet)
    numbers = any(name.startswith("Index/") or name == "Index.zip" for name in names)
    raise InputFault("table.is_numbers" if numbers else "table.is_packed", file=file)


def _refuse_other_documents(parts: Parts, file: str) -> None:
    """OpenDocument of another kind, or with a password."""
    if "META-INF/manifest.xml" in parts.names and b"encryption-data" in parts.read("META-INF/manifest.xml"):
        raise InputFault("table.is_locked", file=file)
    kind = parts.read("mimetype").decode("ascii", "replace").strip() if "mimetype" in parts.names else ""
    rest = kind.removeprefix(_OPEN_DOCUMENT)
    if rest.startswith("text"):
        raise InputFault("table.is_document", file=file)
    if rest.startswith(("presentation", "graphics")):
        raise InputFault("table.is_slides", file=file)


def _refuse_other_packages(names: frozenset[str], file: str) -> None:
    folders = {name.partition("/")[0] for name in names}
    if "xl/workbook.bin" in names:
        raise InputFault("table.is_binary_workbook", file=file)
    if "xl" in folders:
        return
    if "word" in folders:
        raise InputFault("table.is_document", file=file)
    if folders & {"ppt", "visio"}:
        raise InputFault("table.is_slides", file=file)
