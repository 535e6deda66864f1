"""Reading a pilot's table against what Python's csv module needs for the same bytes, in one run."""

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

ROWS = 2_000
MOST_TIMES = 20
HEADINGS = (
    "Name;Art;Gewicht (g);Stück;Hersteller;Modell;Seriennummer;Gekauft am;Akku mAh;Spannung V;Farbe;Bemerkung;"
    "Nächster Check;Preis;Lagerort"
)


def _table() -> bytes:
    rows = [HEADINGS]
    rows += [
        f"Teil {n};Vario;{100 + n % 900};1;Hollin;Merlar {n % 7};S{n:05};{1 + n % 28}.05.2021;{1000 + n % 50};3,7;rot;"
        f"liegt im Fach {n % 9};{1 + n % 28:02}.11.2026;{n % 300},50;Regal {n % 5}"
        for n in range(ROWS)
    ]
    return "\r\n".join(rows).encode("utf-8-sig")


def _best(work: Callable[[], object], times: int) -> float:
    took = []
    for _ in range(times):
        start = time.process_time()
        work()
        took.append(time.process_time() - start)
    return min(took)


@pytest.mark.bench
def test_two_thousand_rows_take_under_twenty_times_what_csv_needs(capsys: pytest.CaptureFixture[str]) -> None:
    data = _table()
    ids = count()
    source = KitSource((), load_vocabulary(resources_folder()), lambda: str(next(ids)), {}, lambda _item: None)

    def with_csv() -> int:
        rows = list(csv.DictReader(io.StringIO(data.decode("utf-8-sig")), delimiter=";"))
        return len(rows)

    def with_kitlog() -> int:
        return len(preview_kit(source, read_grid(data, "kit.csv"), "kit.csv", ImportChoices()).new)

    assert with_csv() == with_kitlog() == ROWS
    reader, ours = _best(with_csv, 9), _best(with_kitlog, 5)
    with capsys.disabled():
        pass
    assert ours < MOST_TIMES * reader
