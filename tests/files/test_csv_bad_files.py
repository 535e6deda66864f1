"""Whatever the bytes: a table or a refusal with its problems, never another exception."""

import itertools
import random
import time
from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kitlog.files.csv_columns import KIT, SERVICE
from kitlog.files.csv_kit import KitTable, read_kit
from kitlog.files.csv_problems import TableFault
from kitlog.files.csv_service import ServiceTable, read_service
from kitlog.kit.item import Item

HEAD = b"name,kind,quantity,mass_g,notes,fitted_to\n"
ALL = ",".join(KIT.headings)
NOISE = random.Random(7).randbytes(4_096)

BAD_FILES: dict[str, bytes] = {
    "nothing": b"",
    "one blank": b" ",
    "only line ends": b"\n" * 1_000,
    "only a byte order mark": b"\xef\xbb\xbf",
    "two byte order marks": b"\xef\xbb\xbf\xef\xbb\xbfname\nA\n",
    "utf-16 with mark": "name\nA\n".encode("utf-16"),
    "utf-16 big endian without mark": "name\nA\n".encode("utf-16-be"),
    "utf-16 little endian without mark": "name\nA\n".encode("utf-16-le"),
    "utf-32": "name\nA\n".encode("utf-32"),
    "latin-1": "name\nÖse\n".encode("latin-1"),
    "windows-1252": "name\nx €\n".encode("cp1252"),
    "shift-jis": "name\n翼\n".encode("shift-jis"),
    "overlong utf-8": b"name\nA\xc0\xaf\n",
    "surrogate in utf-8": b"name\nA\xed\xa0\x80\n",
    "utf-8 cut in the middle": "name\nÖ".encode()[:-1],
    "noise": NOISE,
    "noise below headings": HEAD + NOISE,
    "nul bytes": b"\0" * 1_000,
    "nul in a cell": b"name\nA\0B\n",
    "nul in a number": b"name,mass_g\nA,5\0\n",
    "escape sequence": b"name\n\x1b[2J\n",
    "bidi override": "name\nA\u202eB\n".encode(),
    "carriage returns alone": b"name\rA\r",
    "carriage return doubled": b"name\r\r\nA\r\r\n",
    "semicolons": b"name;kind\nA;wing\n",
    "tabs": b"name\tkind\nA\twing\n",
    "bars": b"name|kind\nA|wing\n",
    "no headings": b"Wing A,wing,1\n",
    "headings in another case": b"Name\nA\n",
    "unknown heading": b"name,price\nA,5\n",
    "heading twice": b"name,name\nA,B\n",
    "empty heading": b"name,\nA,\n",
    "name missing": b"kind\nwing\n",
    "name empty": b"name,kind\n,wing\n",
    "name of a megabyte": b"name\n" + b"A" * 1_000_000,
    "notes of a megabyte in lines": HEAD + b'A,wing,1,5,"' + b"x\n" * 500_000 + b'",\n',
    "notes just too long": HEAD + b"A,wing,1,5," + b"x" * 10_001 + b",\n",
    "a million commas": b"name" + b"," * 1_000_000,
    "twenty-one megabytes": b"name\n" + b"A\n" * 10_500_000,
    "too many rows": b"name\n" + b"A\n" * 25_000,
    "too many empty rows": b"name\n" + b"\n" * 1_000_000,
    "quote not closed": HEAD + b'A,wing,1,5,"open,\nB,wing,1,5,,\n',
    "quote not closed at the end": b'name\n"',
    "text behind a quote": b'name\n"A"B\n',
    "quote closed in the headings only": b'"name\nA\n',
    "cells missing": HEAD + b"A,wing\n",
    "cells too many": HEAD + b"A,wing,1,420,5,,\n",
    "decimal comma": HEAD + b'A,wing,1,"420,5",,\n',
    "decimal point in grams": HEAD + b"A,wing,1,420.5,,\n",
    "not a number": HEAD + b"A,wing,1,nan,,\n",
    "infinity": b"name,value\nA,inf\n",
    "exponent": b"name,value\nA,1e999\n",
    "negative mass": HEAD + b"A,wing,1,-5,,\n",
    "absurd mass": HEAD + b"A,wing,1,200001,,\n",
    "beyond 64 bits": HEAD + b"A,wing,9223372036854775808,5,,\n",
    "five thousand digits": HEAD + b"A,wing," + b"9" * 5_000 + b",5,,\n",
    "digits of another script": HEAD + "A,wing,٣,5,,\n".encode(),
    "underscored digits": HEAD + b"A,wing,1_0,5,,\n",
    "unknown kind": HEAD + b"A,aeroplane,1,5,,\n",
    "fitted to nobody": HEAD + b"A,wing,1,5,,B\n",
    "fitted to itself": HEAD + b"A,wing,1,5,,A\n",
    "fitted in a circle": HEAD + b"A,wing,1,5,,B\nB,wing,1,5,,A\n",
    "fitted to namesakes": HEAD + b"A,wing,1,5,,\nA,wing,1,5,,\nB,wing,1,5,,A\n",
    "twenty thousand namesakes fitted to themselves": b"name,fitted_to\n" + b"A,A\n" * 20_000,
    "a circle of twenty thousand": b"name,fitted_to\n"
    + "".join(f"{n},{(n + 1) % 20_000}\n" for n in range(20_000)).encode(),
    "thirty-first of february": b"name,made_on\nA,2024-02-31\n",
    "day in another order": b"name,made_on\nA,31.01.2024\n",
    "year of two digits": b"name,made_on\nA,24-01-31\n",
    "contradicting energies": b"name,battery_wh,battery_mah,battery_v\nA,50,10000,3.7\n",
    "limits reversed": b"name,wing_min_kg,wing_max_kg\nA,100,80\n",
    "every cell bad": f"{ALL}\n".encode() + (",".join(["\\x"] * len(KIT.headings)) + "\n").encode() * 20_000,
    "a web page": b"<!DOCTYPE html>\n<html><body><table><tr><td>name</td></tr></table></body></html>\n",
    "an archive": b"PK\x03\x04\x14\x00\x00\x00\x08\x00" + NOISE,
    "a database": b"SQLite format 3\x00" + NOISE,
    "json": b'[{"name": "A"}]\n',
    "a picture": b"\x89PNG\r\n\x1a\n" + NOISE,
}


def ids() -> Callable[[], str]:
    count = itertools.count(1)
    return lambda: f"i{next(count)}"


@pytest.mark.parametrize("name", BAD_FILES)
def test_a_bad_file_is_refused_with_its_problems(name: str) -> None:
    began = time.process_time()
    with pytest.raises(TableFault) as caught:
        read_kit(BAD_FILES[name], f"{name}.csv", (), ids())
    assert time.process_time() - began < 2.0  # the time each refusal may take
    fault = caught.value
    assert fault.problems
    for problem in fault.problems:
        assert problem.file == f"{name}.csv"
        assert problem.column in {*KIT.headings, ""} or "heading" in problem.code
        assert str(problem.facts.get("value", "")).isprintable()
        assert (problem.row >= 1) == (problem.record >= 1)


@pytest.mark.parametrize("name", BAD_FILES)
def test_a_bad_file_is_refused_as_service_table_too(name: str) -> None:
    with pytest.raises(TableFault):
        read_service(BAD_FILES[name], f"{name}.csv", (), ids())


KNOWN = (Item(id="old", name="A"),)


def kit_or_refusal(data: bytes) -> KitTable | TableFault:
    try:
        return read_kit(data, "x.csv", KNOWN, ids())
    except TableFault as fault:
        return fault


def service_or_refusal(data: bytes) -> ServiceTable | TableFault:
    try:
        return read_service(data, "x.csv", KNOWN, ids())
    except TableFault as fault:
        return fault


def told(outcome: KitTable | ServiceTable | TableFault) -> bool:
    """Whether a refusal says why; any other exception has ended the test before."""
    return not isinstance(outcome, TableFault) or bool(outcome.problems)


@given(st.binary(max_size=400))
@settings(max_examples=500)
def test_any_bytes_give_a_table_or_a_refusal(data: bytes) -> None:
    assert told(kit_or_refusal(data))
    assert told(kit_or_refusal(b"name\n" + data))
    assert told(service_or_refusal(data))


CELLS = st.sampled_from(
    ["", "A", "5", "-1", "420,5", "nan", "2024-02-31", "2024-01-31", "wing", "a+b", "'=1", '"', "\0", "\n"]
) | st.text(max_size=12)


@given(st.data())
@settings(max_examples=500)
def test_any_cells_under_true_headings_give_a_table_or_a_refusal(data: st.DataObject) -> None:
    headings = data.draw(
        st.lists(st.sampled_from(KIT.headings[1:]), min_size=1, max_size=6, unique=True).map(lambda h: ["name", *h])
    )
    quote = data.draw(st.booleans())
    rows = data.draw(st.lists(st.lists(CELLS, min_size=len(headings), max_size=len(headings)), max_size=4))
    lines = [",".join(f'"{cell}"' if quote else cell for cell in row) for row in rows]
    assert told(kit_or_refusal("\n".join([",".join(headings), *lines]).encode("utf-8", "surrogatepass")))


@given(st.lists(st.lists(CELLS, min_size=16, max_size=16), max_size=3))
@settings(max_examples=300)
def test_any_service_cells_give_a_table_or_a_refusal(rows: list[list[str]]) -> None:
    lines = [",".join(f'"{cell}"' for cell in row) for row in rows]
    data = "\n".join([",".join(SERVICE.headings), *lines])
    assert told(service_or_refusal(data.encode("utf-8", "surrogatepass")))
