from pathlib import Path

import pytest
from calling import Kitlog, one_line


def test_text_and_sheet_of_the_first_outing(kitlog: Kitlog, nothing: Path, tmp_path: Path) -> None:
    sheet = tmp_path / "sheet.html"
    said = kitlog("--data", nothing, "demo", "--text", "--html", sheet)
    assert (said.code, said.err) == (0, "")
    assert said.out.startswith("Skarnock cross-country, 9\u00a0May\u00a02026\n")
    assert "96.2\u00a0kg" in said.out
    assert "Sheet for 9\u00a0May\u00a02026" in sheet.read_text(encoding="utf-8")
    assert len(kitlog("--data", nothing, "kit", "list", "--json").json) == 49


def test_an_existing_file_is_refused_and_left_as_it_is(kitlog: Kitlog, tmp_path: Path) -> None:
    for content in (b"", b"mine", b"SQLite format 3\0"):
        file = tmp_path / "mine"
        file.write_bytes(content)
        assert f"Open it with: kitlog --data {file}" in one_line(kitlog("--data", file, "demo", "--text"))
        assert file.read_bytes() == content


def test_without_a_name_it_never_takes_the_pilots_own_file(kitlog: Kitlog, home: Path) -> None:
    said = kitlog("demo", "--text")
    (made,) = home.rglob("*.kitlog")
    assert made.name == "demo.kitlog"
    assert str(made) in said.err
    assert kitlog("kit", "list").code == 3
    assert kitlog("demo", "--text").code == 2


def test_a_folder_that_is_not_there(kitlog: Kitlog, tmp_path: Path) -> None:
    line = one_line(kitlog("--data", tmp_path / "no" / "demo.kitlog", "demo", "--text"), 3)
    assert "its folder does not exist" in line


@pytest.mark.parametrize("target", ["no/such/sheet.html", "."])
def test_a_sheet_that_cannot_be_written(kitlog: Kitlog, nothing: Path, target: str) -> None:
    said = kitlog("--data", nothing, "demo", "--text", "--html", nothing.parent / target)
    assert (said.code, said.out) == (2, "")
    assert "folder" in said.err
    assert not nothing.exists()
