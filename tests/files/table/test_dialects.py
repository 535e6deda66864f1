"""What kitlog writes comes back the same through the reader of anybody's tables, in whatever dialect it was saved."""

import csv
import io
import itertools
import string
from collections.abc import Callable, Sequence
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from kit_tables import kits

from kitlog.files.csv_columns import KIT
from kitlog.files.csv_kit_export import write_kit
from kitlog.files.resources import resources_folder
from kitlog.files.table.doubt import Answers, Question, Settled
from kitlog.files.table.open_grid import read_grid, read_pasted
from kitlog.files.table.targets import TARGETS, Way
from kitlog.files.table.vocabulary import load_vocabulary
from kitlog.kit.item import FACETS, Item
from kitlog.workbench.kit_preview import ImportChoices, KitPreview, KitSource, preview_kit

WORDS = load_vocabulary(resources_folder())
PLAIN = string.ascii_letters + "123456789-"
PLAIN_NAMES = st.text(st.sampled_from(PLAIN), min_size=9, max_size=20).map(lambda text: f"Größe {text}")
"""Names that no word of a total, a section or a note could be."""


def looked_at(data: bytes | str, choices: ImportChoices = ImportChoices()) -> KitPreview:  # noqa: B008  # frozen
    count = itertools.count(1)
    source = KitSource((), WORDS, lambda: str(next(count)), {}, lambda _item: None)
    grid = read_pasted(data) if isinstance(data, str) else read_grid(data, "kit.csv")
    return preview_kit(source, grid, "kit.csv", choices)


def settled(answers: dict[Question, str]) -> ImportChoices:
    return ImportChoices(settled=Settled(Answers(answers)))


def same(items: Sequence[Item], preview: KitPreview) -> None:
    assert (preview.doubts, preview.problems) == ((), ())
    for item, read in zip(items, preview.new, strict=True):
        assert read.model_dump() == item.model_dump()


@given(kits())
@settings(max_examples=200)
def test_our_own_file_comes_back_whatever_it_holds(items: list[Item]) -> None:
    same(items, looked_at(write_kit(items).data))


@st.composite
def plain_kits(draw: st.DrawFn) -> list[Item]:
    """Kits whose texts survive any program: no formulas, no invisible characters, no marks at their ends."""
    fields = ("maker", "model", "serial", "belongs_to", "lent_to", "colour", "notes")
    texts = {field: draw(PLAIN_NAMES) for field in fields}
    items = draw(kits())
    names = draw(st.lists(PLAIN_NAMES, min_size=len(items), max_size=len(items), unique=True))
    return [
        _plain(item, {**texts, "name": name, "serves": (), "id": str(at)})
        for at, (item, name) in enumerate(zip(items, names, strict=True), 1)
    ]


def _plain(item: Item, texts: dict[str, Any]) -> Item:
    fields = item.model_dump() | texts
    if fields["battery"]:
        fields["battery"]["connector"] = ""
    shares = (
        ("battery", "health_pct"),
        ("battery", "cutoff_pct"),
        ("battery", "on_hand_pct"),
        ("bank", "efficiency_pct"),
    )
    for facet, name in shares:
        if fields[facet] and (fields[facet][name] or 2) <= 1:  # a bare 0.9 under % may be a share, and is asked about
            fields[facet][name] = 2
    for facet, name in (("battery", "mah"), ("bank", "rated_mah")):
        if fields[facet] and not 20 <= (fields[facet][name] or 20) <= 100_000:  # of two readings such a one is none
            fields[facet][name] = None
    if fields["garment"]:
        fields["garment"]["part"] = ""
    item = Item.model_validate(fields)
    bare = [name for name in FACETS if (facet := getattr(item, name)) is not None and facet == type(facet)()]
    return item.model_copy(update=dict.fromkeys(bare))


def rows_of(items: Sequence[Item]) -> list[list[str]]:
    return list(csv.reader(io.StringIO(write_kit(items).data.decode())))


def with_comma(rows: list[list[str]]) -> list[list[str]]:
    """The figures as a program with a decimal comma shows them."""
    figures = {at for at, name in enumerate(KIT.headings) if TARGETS[name].way in (Way.FIGURE, Way.MASS)}
    return [rows[0]] + [
        [cell.replace(".", ",") if at in figures else cell for at, cell in enumerate(row)] for row in rows[1:]
    ]


def text_of(rows: list[list[str]], mark: str) -> str:
    out = io.StringIO(newline="")
    csv.writer(out, delimiter=mark).writerows(rows)
    return out.getvalue()


DIALECTS: dict[str, Callable[[list[list[str]]], bytes | str]] = {
    "semicolon, UTF-8": lambda rows: text_of(rows, ";").encode(),
    "semicolon, UTF-8 with BOM": lambda rows: text_of(rows, ";").encode("utf-8-sig"),
    "semicolon, Windows-1252": lambda rows: text_of(rows, ";").encode("cp1252"),
    "tab, UTF-16": lambda rows: text_of(rows, "\t").encode("utf-16"),
    "comma, UTF-16": lambda rows: text_of(rows, ",").encode("utf-16"),
    "pasted": lambda rows: text_of(rows, "\t"),
}


@pytest.mark.parametrize("dialect", DIALECTS)
@pytest.mark.parametrize("decimal", ["point", "comma"])
@given(items=plain_kits())
@settings(max_examples=40)
def test_the_same_kit_in_any_dialect(items: list[Item], dialect: str, decimal: str) -> None:
    rows = rows_of(items)
    data = DIALECTS[dialect](with_comma(rows) if decimal == "comma" else rows)
    same(items, looked_at(data, settled({Question.DECIMAL: decimal, Question.MAH_AT: "5v"})))


def workbook(rows: list[list[str]]) -> bytes:
    """The rows in a workbook, figures as figures."""
    from openpyxl import Workbook

    book = Workbook()
    sheet = book.active
    assert sheet is not None
    figures = {at for at, name in enumerate(KIT.headings) if TARGETS[name].way in (Way.FIGURE, Way.MASS, Way.COUNT)}
    sheet.append(rows[0])
    for row in rows[1:]:
        sheet.append([float(cell) if cell and at in figures else cell or None for at, cell in enumerate(row)])
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def open_document(rows: list[list[str]]) -> bytes:
    """The same in the open format."""
    from odfdo import Document, Row, Table

    document = Document("spreadsheet")
    document.body.clear()
    table = Table("Kit")
    figures = {at for at, name in enumerate(KIT.headings) if TARGETS[name].way in (Way.FIGURE, Way.MASS, Way.COUNT)}
    for number, cells in enumerate(rows):
        row = Row()
        row.set_values([float(cell) if number and cell and at in figures else cell for at, cell in enumerate(cells)])
        table.append(row)
    document.body.append(table)
    out = io.BytesIO()
    document.save(out)
    return out.getvalue()


def keeps_all_digits(rows: list[list[str]]) -> bool:
    """Whether every figure has at most the 15 digits that a workbook keeps."""
    cells = [cell for row in rows[1:] for cell in row if cell and cell[0].isdigit()]
    return all(len(cell.replace(".", "").lstrip("0")) <= 15 for cell in cells)


@pytest.mark.parametrize("saved", [workbook, open_document])
@given(items=plain_kits())
@settings(max_examples=25)
def test_the_same_kit_in_a_workbook(items: list[Item], saved: Callable[[list[list[str]]], bytes]) -> None:
    rows = rows_of(items)
    if keeps_all_digits(rows):
        same(items, looked_at(saved(rows), settled({Question.MAH_AT: "5v"})))
