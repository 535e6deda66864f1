"""Files that are to be written: the same slip is told in the same words and with the same code, whatever the verb."""

from pathlib import Path

import pytest
from calling import Kitlog, one_line

WRITING = (
    ("due", "--ics"),
    ("service", "book", "Wing A", "--pdf"),
    ("kit", "inventory", "--pdf"),
    ("pack", "--outing", "Skarnock cross-country", "--pdf"),
    ("pack", "--outing", "Skarnock cross-country", "--html"),
    ("kit", "export", "kit.csv", "--service"),
    ("kit", "export"),
    ("outing", "export", "Skarnock cross-country"),
    ("backup",),
)


@pytest.fixture
def before(demo: Path, monkeypatch: pytest.MonkeyPatch) -> set[Path]:
    monkeypatch.chdir(demo.parent)
    return set(demo.parent.iterdir())


@pytest.mark.parametrize("verb", WRITING, ids=" ".join)
@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("no/such.file", "no/such.file: its folder does not exist. Make the folder, or choose another file."),
        ("kit.kitlog/x", "kit.kitlog/x: its folder does not exist. Make the folder, or choose another file."),
        (".", "it is a folder. Name a file inside it."),
        ("", "the name is empty. Say where it is to be written."),
    ],
)
def test_what_cannot_be_written_to(
    kitlog: Kitlog, demo: Path, before: set[Path], verb: tuple[str, ...], name: str, told: str
) -> None:
    assert told in one_line(kitlog("--data", demo, *verb, name))
    assert set(demo.parent.iterdir()) == before


def test_papers_are_not_saved_into_no_name(kitlog: Kitlog, demo: Path, before: set[Path]) -> None:
    said = one_line(kitlog("--data", demo, "service", "papers", "--save", ""))
    assert said == "kitlog: --save: the name is empty. Say where it is to be written.\n"
    assert set(demo.parent.iterdir()) == before


def test_a_name_that_nothing_can_have_is_told_all_the_same(kitlog: Kitlog, demo: Path, before: set[Path]) -> None:
    one_line(kitlog("--data", demo, "due", "--ics", "x" * 300), 3)
    assert set(demo.parent.iterdir()) == before
