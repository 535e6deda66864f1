"""The word lists of the resources."""

import shutil
from pathlib import Path

import pytest

from kitlog.fault import SystemFault
from kitlog.files.resources import resources_folder
from kitlog.files.table.vocabulary import load_vocabulary
from kitlog.files.table.word_forms import form, forms


def test_the_lists_are_read_once() -> None:
    assert load_vocabulary(resources_folder()) is load_vocabulary(resources_folder())


@pytest.mark.parametrize("name", ["headings", "kinds", "words"])
@pytest.mark.parametrize("text", ["= not toml", 'strange = ["x"]', None])
def test_a_damaged_list_is_named(tmp_path: Path, name: str, text: str | None) -> None:
    shutil.copytree(resources_folder() / "tables", tmp_path / "tables")
    file = tmp_path / "tables" / f"{name}.toml"
    if text is None:
        file.unlink()
    else:
        file.write_text(text, encoding="utf-8")
    with pytest.raises(SystemFault) as caught:
        load_vocabulary(tmp_path)
    assert caught.value.code == "resources.broken"
    assert caught.value.facts["file"] == str(file)


def test_case_accents_and_signs_do_not_matter() -> None:
    assert form("  Numéro-de_Série (N°)\n") == "numero de serie n"
    assert form("Straße") == "strasse"


def test_sizes_are_no_masses() -> None:
    assert form("Maße") != form("Masse")


def test_umlauts_may_be_spelt_out() -> None:
    assert forms("Rückenfach") == ("ruckenfach", "rueckenfach")
    assert forms("pocket") == ("pocket",)
