"""What is printed, read through the workbench; what an item like another does not have."""

from datetime import date
from pathlib import Path

import pytest
from small_kit import item
from small_photo import png

from kitlog.fault import InputFault
from kitlog.files.papers import place_of
from kitlog.kit.kinds import ItemState
from kitlog.wording.book_content import Shown, book_content
from kitlog.workbench.workbench import Workbench


@pytest.fixture
def kept(empty: Workbench, tmp_path: Path) -> Workbench:
    file = tmp_path / "front.png"
    file.write_bytes(png())
    lent = {"lent_to": "Jorun", "back_by": date(2026, 6, 1), "state": "lent", "serial": "7"}
    empty.add_item(item("wing", "wing", papers=(empty.attach(file),), **lent))
    empty.add_item(item("socks", "garment", state="retired"))
    return empty


def test_papers_that_lie_there_are_told_from_those_that_do_not(kept: Workbench) -> None:
    papers = kept.item_book("wing").papers
    assert kept.lacking(papers) == frozenset()
    place_of(kept.path, papers[0].sha256).write_bytes(b"\x89PNG\r\n\x1a\n spoilt")
    assert kept.lacking(papers) == {papers[0].sha256}
    assert kept.lacking(()) == frozenset()


def test_an_unknown_item_has_no_book(kept: Workbench) -> None:
    with pytest.raises(InputFault, match=r"item\.unknown"):
        kept.item_book("nobody")


def test_what_does_not_fly_has_no_chapter_of_hours(kept: Workbench) -> None:
    titles = {
        name: [part.title for part in book_content(kept.item_book(name), kept.now(), Shown()).chapters]
        for name in ("wing", "socks")
    }
    assert "Hours and launches" in titles["wing"]
    assert "Hours and launches" not in titles["socks"]
    assert [one.name for one in kept.inventory().items] == ["wing"]


def test_an_item_like_one_that_is_lent_is_at_hand_and_has_none_of_its_papers(kept: Workbench) -> None:
    twin = kept.item(kept.duplicate_item("wing"))
    assert twin is not None
    assert (twin.state, twin.lent_to, twin.back_by, twin.papers) == (ItemState.IN_SERVICE, "", None, ())
