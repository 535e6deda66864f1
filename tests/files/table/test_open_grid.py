"""What is no table is named for what it is; what is packed to harm ends in a sentence, soon."""

import io
import struct
import subprocess
import sys
import time
import zipfile
import zlib

import pytest
from workbooks import ods_parts, ods_table, raw_xlsx, sheet_data, text_cell, xlsx, xlsx_parts, zipped

from kitlog.fault import InputFault
from kitlog.files.table.archive import MAX_PARTS
from kitlog.files.table.open_grid import read_grid
from kitlog.wording.faults import fault_text

OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 504
SOON_S = 3


def refused(data):
    begin = time.perf_counter()
    with pytest.raises(InputFault) as fault:
        read_grid(data, "kit.xlsx")
    assert time.perf_counter() - begin < SOON_S
    told = fault_text(fault.value)
    assert told.where.startswith("kit.xlsx")
    assert told.what
    assert told.remedy
    assert told.what != fault.value.code
    return fault.value.code


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b"%PDF-1.7\n...", "table.is_pdf"),
        (b"\x89PNG\r\n\x1a\n", "table.is_picture"),
        (b"\xff\xd8\xff\xe0\0\x10JFIF", "table.is_picture"),
        (b"\0\0\0\x18ftypheic", "table.is_picture"),
        (b"RIFF\0\0\0\0WEBPVP8 ", "table.is_picture"),
        (b"SQLite format 3\0", "table.is_database"),
        (b"\x1f\x8b\x08\0", "table.is_packed"),
        (b"{\\rtf1 x}", "table.is_document"),
        (OLE + "Workbook".encode("utf-16-le"), "table.is_old_workbook"),
        (OLE + "EncryptedPackage".encode("utf-16-le"), "table.is_locked"),
        (OLE + "WordDocument".encode("utf-16-le"), "table.is_document"),
        (b"<!DOCTYPE html><html><table><tr><td>a</td></tr></table>", "table.is_web_page"),
        (b"\xef\xbb\xbf\r\n <html xmlns='x'>", "table.is_web_page"),
        (b"<?xml version='1.0'?>\n<html>", "table.is_web_page"),
        (b"<?xml version='1.0'?>\n<Workbook>", "table.is_markup"),
        (b'{"name": "Wing"}', "table.is_json"),
        (b'[\n  {"name": 1}]', "table.is_json"),
        (b"\x7fELF\x02\x01\x01\0\0\0\0", "table.zero_bytes"),
        (zipped({"Index/Document.iwa": "x"}), "table.is_numbers"),
        (zipped({"[Content_Types].xml": "<x/>", "word/document.xml": "<x/>"}), "table.is_document"),
        (zipped({"[Content_Types].xml": "<x/>", "ppt/presentation.xml": "<x/>"}), "table.is_slides"),
        (zipped({"[Content_Types].xml": "<x/>", "xl/workbook.bin": "x"}), "table.is_binary_workbook"),
        (zipped({"kit.csv": "a,b"}), "table.is_packed"),
        (zipped({}), "table.is_packed"),
        (b"PK\x03\x04 and no more", "table.broken_archive"),
        (xlsx(["a"])[:-40], "table.broken_archive"),
        (zipped({"[Content_Types].xml": "<x/>", "xl/workbook.xml": "<x/>"}), "table.broken_workbook"),
    ],
)  # fmt: skip
def test_what_is_no_table(data, code):
    assert refused(data) == code


@pytest.mark.parametrize(
    "text", ["[kg],name\n1,a\n", "<1 kg,name\n1,a\n", "{a},b\n1,2\n", "PK,name\n1,2\n", "%PDF,b\n1,2"]
)
def test_a_table_that_only_begins_like_something_else(text):
    assert len(read_grid(text.encode(), "kit.csv").rows) == 2


class TestBombs:
    def test_more_than_a_table_unpacks_to(self):
        parts = xlsx_parts("")
        parts["xl/media/a.bin"] = b"\0" * 60_000_000
        parts["xl/media/b.bin"] = b"\0" * 60_000_000
        assert refused(zipped(parts)) == "table.unpacked_too_large"

    def test_a_sheet_of_blanks(self):
        assert refused(raw_xlsx(" " * 30_000_000)) == "table.unpacked_too_large"

    def test_a_content_of_blanks(self):
        assert refused(zipped(ods_parts(" " * 30_000_000))) == "table.unpacked_too_large"

    def test_a_part_that_says_it_is_small(self):
        """The entry says 100 bytes, the packed data hold 50 million."""
        data = self._lying(b"<x>" + b" " * 50_000_000, 100)
        assert refused(data) in {"table.broken_archive", "table.broken_workbook"}

    @staticmethod
    def _lying(content, said):
        parts = dict(xlsx_parts(""))
        name = "xl/worksheets/sheet1.xml"
        parts[name] = content
        data = bytearray(zipped(parts))
        checksum = struct.pack("<I", zlib.crc32(content))
        true, false = struct.pack("<I", len(content)), struct.pack("<I", said)
        for at in range(len(data) - 4):
            if data[at : at + 4] == true:
                data[at : at + 4] = false
            elif data[at : at + 4] == checksum:
                data[at : at + 4] = struct.pack("<I", zlib.crc32(content[:said]))
        return bytes(data)

    def test_many_parts(self):
        assert refused(zipped({f"p{n}": "" for n in range(MAX_PARTS + 1)})) == "table.too_many_parts"

    def test_a_packing_that_no_workbook_has(self):
        assert refused(zipped(xlsx_parts(""), zipfile.ZIP_LZMA)) == "table.broken_archive"

    def test_a_locked_part(self):
        data = bytearray(zipped(xlsx_parts("")))
        for at, offset in ((data.index(b"PK\x03\x04"), 6), (data.index(b"PK\x01\x02"), 8)):
            data[at + offset] |= 1
        assert refused(bytes(data)) == "table.is_locked"


def test_two_entries_of_one_name():
    target = io.BytesIO()
    content = ods_parts(ods_table([text_cell("a")]))["content.xml"]
    with zipfile.ZipFile(target, "w") as packed:
        packed.writestr("content.xml", content)
        with pytest.warns(UserWarning, match="Duplicate"):
            packed.writestr("content.xml", content)
    assert len(read_grid(target.getvalue(), "kit.ods").rows) == 1


@pytest.mark.parametrize(
    ("data", "loads"),
    [(b"name;mass\nA;1\n", set()), (raw_xlsx(sheet_data('<row><c t="str"><v>a</v></c></row>')), {"openpyxl", "lxml"})],
)
def test_heavy_libraries_are_loaded_when_they_are_used(data, loads):
    code = (
        "import sys; from kitlog.files.table.open_grid import read_grid; "
        f"read_grid({data!r}, 'f'); print('\\n'.join(sys.modules))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    heavy = {"openpyxl", "lxml", "charset_normalizer", "babel", "defusedxml"}
    assert set(done.stdout.split()) & heavy >= loads
    assert loads or not set(done.stdout.split()) & heavy


def test_a_text_has_no_sheets() -> None:
    with pytest.raises(InputFault) as fault:
        read_grid(b"Name,Weight\nVario,120 g\n", "kit.csv", sheet="Kit")
    assert (fault.value.code, fault.value.facts["value"]) == ("table.no_sheets", "Kit")


@pytest.mark.parametrize(
    "data", ["Item;Ort\nSto\u0308cke;E\u0301tui\n".encode(), xlsx(["Item", "Ort"], ["Sto\u0308cke", "E\u0301tui"])]
)
def test_letters_come_in_composed(data):
    """Unicode Standard Annex 15: what is canonically equivalent has one composed form."""
    assert list(read_grid(data, "kit").rows[1].cells) == ["Stöcke", "Étui"]
