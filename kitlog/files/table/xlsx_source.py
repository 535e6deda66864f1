"""The parts of an .xlsx workbook as openpyxl gets them: those with cells, mended, and read under the eyes of `tell`."""

import io
import re
from collections.abc import Callable

from kitlog.files.table.archive import Parts

_IDLE = re.compile(
    r"(docProps|customXml|xl/(theme|drawings|charts|chartsheets|media|comments|threadedComments|persons|tables"
    r"|queryTables|pivot\w*|externalLinks|embeddings|ctrlProps|printerSettings|worksheets/_rels|calcChain))"
)
"""Parts that hold no cells: what is wrong in them is not looked for."""
_STRICT = b"http://purl.oclc.org/ooxml/"
_NAMES = (
    (b"spreadsheetml/main", b"spreadsheetml/2006/main"),
    (b"officeDocument/relationships", b"officeDocument/2006/relationships"),
)
"""Names of ECMA-376 part 1 (strict) and of part 4 (transitional)."""
_DATA = b"<sheetData"
_EXTENT = b'<dimension ref="A1"/>'


class ToldSource(io.BytesIO):
    """An archive that tells how far it is read; `stopped` is what `tell` raised, for the library may hide it."""

    def __init__(self, data: bytes, tell: Callable[[float], None]) -> None:
        super().__init__(data)
        self._tell = tell
        self._size = max(len(data), 1)
        self._far = 0
        self.stopped: Exception | None = None

    def read(self, size: int | None = -1, /) -> bytes:
        """As of any file, and tells the share that has been reached."""
        data = super().read(size)
        self._far = max(self._far, self.tell())
        try:
            self._tell(min(0.1 + 0.9 * self._far / self._size, 1.0))
        except Exception as stopped:
            self.stopped = stopped
            raise
        return data


def told_source(parts: Parts, tell: Callable[[float], None]) -> ToldSource:
    """The parts that the library is to see, as an archive that is not packed."""
    packed = parts.stored(lambda name: name.endswith((".xml", ".rels")) and not _IDLE.match(name), _mended)
    return ToldSource(packed.getvalue(), tell)


def _mended(part: bytes) -> bytes:
    """A part under usual names, a sheet with an extent: the library knows no others, and seeks an extent to the end."""
    if _STRICT in part:
        for strict, usual in _NAMES:
            part = part.replace(_STRICT + strict, b"http://schemas.openxmlformats.org/" + usual)
    if _DATA in part and b"<dimension" not in part:
        part = part.replace(_DATA, _EXTENT + _DATA, 1)
    return part


def active_name(parts: Parts) -> str:
    """The name of the sheet in front; the library counts wrong behind a sheet that is a chart, which is left out."""
    from lxml import etree

    xml = parts.read("xl/workbook.xml") if "xl/workbook.xml" in parts.names else b""
    safe = etree.XMLParser(resolve_entities=False, no_network=True, load_dtd=False, huge_tree=False, recover=True)
    try:
        root = etree.fromstring(xml, safe)
    except (etree.LxmlError, SyntaxError, ValueError):
        return ""
    if root is None:
        return ""
    names = [str(sheet.get("name")) for sheet in root.iterfind(".//{*}sheets/{*}sheet")]
    front = next((view.get("activeTab", "0") for view in root.iterfind(".//{*}workbookView")), "0")
    return names[int(front)] if front.isdecimal() and len(front) < 6 and int(front) < len(names) else ""
