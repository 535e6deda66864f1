"""What a file is that is no table, told by how it begins, so that a person learns what to do with it."""

import re

from kitlog.fault import InputFault

_BEGINNINGS: tuple[tuple[bytes, str], ...] = (
    (b"%PDF-", "table.is_pdf"),
    (b"\x89PNG\r\n", "table.is_picture"),
    (b"\xff\xd8\xff", "table.is_picture"),
    (b"GIF8", "table.is_picture"),
    (b"II*\0", "table.is_picture"),
    (b"MM\0*", "table.is_picture"),
    (b"SQLite format 3\0", "table.is_database"),
    (b"\x1f\x8b", "table.is_packed"),
    (b"7z\xbc\xaf\x27\x1c", "table.is_packed"),
    (b"Rar!\x1a\x07", "table.is_packed"),
    (b"\xfd7zXZ\0", "table.is_packed"),
    (b"{\\rtf", "table.is_document"),
)
"""First bytes as the formats' own specifications give them."""

_OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
"""Compound file (MS-CFB 2.2): .xls and .doc of before 2007, and every workbook with a password."""
_OLE_PARTS = (
    ("EncryptedPackage", "table.is_locked"),
    ("Workbook", "table.is_old_workbook"),
    ("Book", "table.is_old_workbook"),
)
_WEB_PAGE = re.compile(r"<(!doctype\s+html|html|head|body|table|meta)\b", re.IGNORECASE)
_XML = re.compile(r"<(\?xml|[A-Za-z][\w:.-]*[\s>/])")
_JSON = re.compile(r'[\[{]\s*(["{\[]|[\]}]\s*$)')


def refuse_other_files(data: bytes, file: str) -> None:
    """Refuse what is known to be no table.

    Raises:
        InputFault: ``table.is_pdf``, ``table.is_picture``, ``table.is_database``, ``table.is_packed``,
            ``table.is_document``, ``table.is_old_workbook``, ``table.is_locked``.
    """
    for beginning, code in _BEGINNINGS:
        if data.startswith(beginning):
            raise InputFault(code, file=file)
    if data[4:8] == b"ftyp" or (data.startswith(b"RIFF") and data[8:12] == b"WEBP"):
        raise InputFault("table.is_picture", file=file)
    if data.startswith(_OLE):
        raise InputFault(_inside_ole(data), file=file)


def _inside_ole(data: bytes) -> str:
    """What a compound file holds, by the names in its directory, which are UTF-16."""
    for name, code in _OLE_PARTS:
        if name.encode("utf-16-le") in data:
            return code
    return "table.is_document"


def refuse_other_text(text: str, file: str) -> None:
    """Refuse text that is written in some other language.

    Raises:
        InputFault: ``table.is_web_page``, ``table.is_markup``, ``table.is_json``.
    """
    start = text[:400].lstrip()
    if _WEB_PAGE.match(start):
        raise InputFault("table.is_web_page", file=file)
    if _XML.match(start):
        code = "table.is_web_page" if _WEB_PAGE.search(start) else "table.is_markup"
        raise InputFault(code, file=file)
    if _JSON.match(start):
        raise InputFault("table.is_json", file=file)
