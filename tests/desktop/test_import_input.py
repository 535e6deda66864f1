import os
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QUrl

from kitlog.desktop.import_page.table_input import bytes_of, dropped, of_file, pasted
from kitlog.fault import InputFault


def refused(do) -> str:
    with pytest.raises(InputFault) as caught:
        do()
    return caught.value.code


def test_one_file_of_any_name_can_be_dropped(tmp_path: Path) -> None:
    file = tmp_path / "Ausrüstung, neu.xlsx"
    table = dropped([QUrl.fromLocalFile(str(file))])
    assert (table.name, table.path) == ("Ausrüstung, neu.xlsx", file)


def test_what_is_no_one_file_is_refused_by_name(tmp_path: Path) -> None:
    file = QUrl.fromLocalFile(str(tmp_path / "a.csv"))
    assert refused(lambda: dropped([file, file])) == "drop.several"
    assert refused(lambda: dropped([])) == "drop.several"
    assert refused(lambda: dropped([QUrl.fromLocalFile(str(tmp_path))])) == "drop.folder"
    assert refused(lambda: dropped([QUrl("https://example.org/kit.csv")])) == "drop.elsewhere"
    assert refused(lambda: dropped([QUrl("odd:thing")])) == "drop.elsewhere"


@pytest.mark.parametrize("text", [None, "", "  \n\t "])
def test_a_clipboard_without_text_is_refused(text: str | None) -> None:
    data = QMimeData()
    if text is not None:
        data.setText(text)
    assert refused(lambda: pasted(data)) == "paste.nothing"
    assert refused(lambda: pasted(None)) == "paste.nothing"


def test_what_is_pasted_is_taken_as_it_is() -> None:
    data = QMimeData()
    data.setText("name\tmass\nWhistle\t14 g")
    assert pasted(data).text == "name\tmass\nWhistle\t14 g"


def test_files_that_cannot_be_read_are_refused(tmp_path: Path) -> None:
    assert refused(lambda: bytes_of(tmp_path / "none.csv")) == "file.cannot_read"
    os.mkfifo(tmp_path / "pipe")
    assert refused(lambda: bytes_of(tmp_path / "pipe")) == "file.cannot_read"
    assert refused(lambda: bytes_of(tmp_path)) == "file.cannot_read"


def test_a_service_file_is_found_beside_a_csv_file(tmp_path: Path) -> None:
    beside = tmp_path / "service.csv"
    beside.write_text("x", encoding="utf-8")
    assert of_file(tmp_path / "kit.csv").service() == beside
    assert of_file(beside).service() is None
    assert of_file(tmp_path / "kit.xlsx").service() is None
    own = tmp_path / "kit-service.csv"
    own.write_text("x", encoding="utf-8")
    assert of_file(tmp_path / "kit.csv").service() == own
    assert of_file(tmp_path / "kit.xlsx").service() == own
    assert pasted_service() is None


def pasted_service() -> Path | None:
    data = QMimeData()
    data.setText("name\nWhistle")
    return pasted(data).service()
