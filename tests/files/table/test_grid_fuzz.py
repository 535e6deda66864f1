"""Whatever is done to a file, it ends in a grid or in a sentence, soon."""

import random
import time
import zipfile
from functools import cache
from io import BytesIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from workbooks import day_cell, number_cell, ods_parts, ods_table, text_cell, xlsx, xlsx_parts, zipped

from kitlog.fault import InputFault
from kitlog.files.table.cells import Grid
from kitlog.files.table.open_grid import read_grid, read_pasted
from kitlog.wording.faults import SENTENCES

SOON_S = 4
ROWS = [["Größe", "mass", "note"], ["Wing", 4.5, "two\nlines"], ["Café", 420, 'say "hi"']]
TEXT = 'Größe;mass;note\r\nWing;4,5;"two\r\nlines"\r\nCafé;420;"say ""hi"""\r\n'


@cache
def files():
    """One of each kind."""
    sheet = '<cols><col min="2" max="2" hidden="1"/></cols><sheetData><row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" s="1">'
    sheet += '<f>1+1</f><v>2</v></c><c r="C1" t="inlineStr"><is><t>x</t></is></c></row></sheetData>'
    sheet += '<mergeCells count="1"><mergeCell ref="A1:B2"/></mergeCells>'
    table = ods_table(
        [text_cell("Größe"), number_cell("4.5", "4,5 kg"), day_cell("2018-06-01", "06.2018")],
        [text_cell("a", 'table:number-columns-repeated="3" table:formula="of:=A1"')],
    )
    return {
        "utf8": TEXT.encode(),
        "utf16": TEXT.encode("utf-16"),
        "cp1252": TEXT.encode("cp1252"),
        "xlsx": xlsx(*ROWS, formats={"B2": '0.0" kg"', "B3": "mmm yyyy"}),
        "raw": zipped(xlsx_parts(sheet)),
        "ods": zipped(ods_parts(table, active="Kit")),
    }


def outcome(read):
    """The grid or the fault."""
    try:
        return read()
    except InputFault as fault:
        return fault


def check(data):
    begin = time.perf_counter()
    found = outcome(lambda: read_grid(data, "f"))
    assert time.perf_counter() - begin < SOON_S
    if isinstance(found, InputFault):
        assert found.code in SENTENCES
        assert found.facts["file"] == "f"
    else:
        assert isinstance(found, Grid)
        assert found.rows
        assert all(any(cell != "" for cell in row.cells) for row in found.rows)


def damaged(data, chance):
    """The bytes with a few of them changed, cut out, doubled or torn off."""
    data = bytearray(data)
    for _ in range(chance.randint(1, 6)):
        at = chance.randrange(len(data) or 1)
        what = chance.randrange(5)
        if what == 0 and data:
            data[at % len(data)] = chance.randrange(256)
        elif what == 1:
            del data[at : at + chance.randint(1, 9)]
        elif what == 2:
            data[at:at] = data[at : at + chance.randint(1, 30)]
        elif what == 3:
            data[at:at] = chance.choice([b'"', b"\0", b"\xff", b"<", b"&", b"=", b"99999999999", b"\r", b'"\n"', b"-1"])
        elif chance.random() < 0.2:
            del data[at:]
    return bytes(data)


@pytest.mark.parametrize("kind", ["utf8", "utf16", "cp1252", "xlsx", "raw", "ods"])
def test_damaged_files(kind):
    chance = random.Random(kind)
    for _ in range(150):
        check(damaged(files()[kind], chance))


@pytest.mark.parametrize("kind", ["xlsx", "raw", "ods"])
def test_damaged_parts(kind):
    """The damage is inside the parts, where no checksum finds it."""
    chance = random.Random(kind)
    with zipfile.ZipFile(BytesIO(files()[kind])) as packed:
        parts = {name: packed.read(name) for name in packed.namelist()}
    names = sorted(name for name in parts if name.endswith((".xml", ".rels")) and "docProps" not in name)
    for _ in range(150):
        name = chance.choice(names)
        check(zipped({**parts, name: damaged(parts[name], chance)}, zipfile.ZIP_STORED))


@given(st.binary(max_size=400))
@settings(deadline=None)
def test_any_bytes(data):
    check(data)


@given(st.text(max_size=300), st.sampled_from(["utf-8", "utf-16", "utf-16-le"]))
@settings(deadline=None)
def test_any_text(text, encoding):
    check(text.encode(encoding, "surrogatepass"))


@given(st.text(alphabet='a1,;\t"\n\r=| é', max_size=80))
@settings(deadline=None)
def test_any_block_from_the_clipboard(text):
    found = outcome(lambda: read_pasted(text))
    assert found.code in SENTENCES if isinstance(found, InputFault) else found.rows
