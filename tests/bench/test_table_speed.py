"""Reading a pilot's table against what Python's csv module needs for the same bytes, in one run.

The bare reader is `csv.reader` over the decoded text into a list. Processor time, the least of several turns in turn:
other work on the machine makes single figures larger, never smaller, so a ratio over the limit is measured on until more
turns would not change it.

The wide table is what the limit is for. Of a narrow one most of the time goes to what an item has whatever its row says,
so its figures are only printed.
"""

import csv
import io
import time
from collections.abc import Callable
from itertools import count

import pytest

from kitlog.files.resources import resources_folder
from kitlog.files.table.open_grid import read_grid
from kitlog.files.table.vocabulary import load_vocabulary
from kitlog.workbench.kit_preview import ImportChoices, KitSource, preview_kit

pytestmark = pytest.mark.bench

ROWS = 2_000
MOST_TIMES = 20
TURNS = 9
MOST_TURNS = 45

WIDE = (
    "Name;Art;Gewicht (g);Stück;Hersteller;Modell;Seriennummer;Gekauft am;Akku mAh;Spannung V;Farbe;Bemerkung;"
    "Nächster Check;Preis;Lagerort"
)
NARROW = "Name;Art;Gewicht (g);Hersteller;Bemerkung"


def _wide_row(n: int) -> str:
    return (
        f"Teil {n};Vario;{100 + n % 900};1;Hollin;Merlar {n % 7};S{n:05};{1 + n % 28}.05.2021;{1000 + n % 50};3,7;rot;"
        f"liegt im Fach {n % 9};{1 + n % 28:02}.11.2026;{n % 300},50;Regal {n % 5}"
    )


def _narrow_row(n: int) -> str:
    return f"Teil {n};Vario;{100 + n % 900};Hollin;liegt im Fach {n % 9}"


def _table(headings: str, row: Callable[[int], str]) -> bytes:
    return "\r\n".join([headings, *map(row, range(ROWS))]).encode("utf-8-sig")


def _seconds(work: Callable[[], object]) -> float:
    start = time.process_time()
    work()
    return time.process_time() - start


def _times_csv(data: bytes, which: str) -> float:
    """How many times as long as the bare reader it takes from the bytes to the items; the figures are printed."""
    ids = count()
    source = KitSource((), load_vocabulary(resources_folder()), lambda: str(next(ids)), {}, lambda _item: None)

    def with_csv() -> int:
        return len(list(csv.reader(io.StringIO(data.decode("utf-8-sig")), delimiter=";")))

    def with_kitlog() -> int:
        return len(preview_kit(source, read_grid(data, "kit.csv"), "kit.csv", ImportChoices()).new)

    assert with_csv() == 1 + with_kitlog() == 1 + ROWS
    own_s = bare_s = float("inf")
    for turn in range(1, MOST_TURNS + 1):
        own_s, bare_s = min(own_s, _seconds(with_kitlog)), min(bare_s, _seconds(with_csv))
        if turn >= TURNS and own_s < MOST_TIMES * bare_s:
            break
    figures = f"{own_s * 1000:.1f} ms, csv.reader {bare_s * 1000:.2f} ms, {own_s / bare_s:.1f} times"
    print(f"{which} table of {ROWS} rows: {figures}")  # noqa: T201  # looked at, beside what is asserted
    return own_s / bare_s


def test_two_thousand_rows_take_under_twenty_times_what_csv_needs() -> None:
    _times_csv(_table(NARROW, _narrow_row), "narrow")
    assert _times_csv(_table(WIDE, _wide_row), "wide") < MOST_TIMES
