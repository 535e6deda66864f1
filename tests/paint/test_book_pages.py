"""Printed books: photos as they are read from their bytes, and pages that lose nothing however much there is.

Orientation of a photo: Exif 2.3 (CIPA DC-008), tag 0x0112; value 6 = the top of the picture is at its right.
"""

import struct
from datetime import date
from random import Random

import pytest
from paint_canvas import overlapping, words_drawn
from pdf_reading import bare, pages
from PySide6.QtCore import QBuffer, QIODevice
from PySide6.QtGui import QColor, QFont, QGuiApplication, QImage, QPainter, QPdfWriter
from small_photo import png

from kitlog.desktop.pdf_writing import Paper as Sheet
from kitlog.desktop.pdf_writing import written
from kitlog.kit.due import DueState
from kitlog.kit.measured_series import MeasuredSeries
from kitlog.kit.measurement import Measured, Measurement
from kitlog.kit.paper import MediaType, Paper
from kitlog.paint.book_blocks import Album
from kitlog.paint.book_pages import BookPages, paint_book
from kitlog.paint.book_photo import photo
from kitlog.paint.sheet_setting import Setting, paper_font
from kitlog.wording.book_parts import BookContent, BookEntry, Chapter, Photo

MARGIN_PT = 12 / 25.4 * 72


def jpeg(width: int, height: int) -> bytes:
    image = QImage(width, height, QImage.Format.Format_RGB32)
    image.fill(QColor("#3a7ca5"))
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "JPEG")
    return bytes(buffer.data().data())


def turned(content: bytes, orientation: int) -> bytes:
    """The same photo with an Exif part that says how it was held."""
    tags = struct.pack(">HHHIHH", 1, 0x0112, 3, 1, orientation, 0) + b"\0\0\0\0"
    exif = b"Exif\0\0" + b"MM\0*" + struct.pack(">I", 8) + tags
    return content[:2] + b"\xff\xe1" + struct.pack(">H", len(exif) + 2) + exif + content[2:]


class TestPhoto:
    @pytest.mark.parametrize(("longest", "size"), [(1_000, (400, 300)), (100, (100, 75))])
    def test_no_larger_than_it_is_shown_and_never_enlarged(self, longest: int, size: tuple[int, int]) -> None:
        image = photo(jpeg(400, 300), longest)
        assert image is not None
        assert (image.width(), image.height()) == size

    def test_turned_upright(self) -> None:
        image = photo(turned(jpeg(400, 300), 6), 100)
        assert image is not None
        assert (image.width(), image.height()) == (75, 100)

    @pytest.mark.qt_log_ignore("JPEG", "libpng", "PNG")
    @pytest.mark.parametrize("content", [b"", b"\xff\xd8\xff", png()[:60], b"%PDF-1.4", png()[:8] + bytes(200)])
    def test_what_is_no_picture_is_none(self, content: bytes) -> None:
        assert photo(content, 100) is None


def paper(name: str) -> Paper:
    return Paper(sha256=name.encode().hex().rjust(64, "0")[-64:], name=name, media_type=MediaType.PNG, size=100)


def sentence(chance: Random, words: int) -> str:
    return " ".join("".join(chance.choices("abcdefgh", k=chance.randint(1, 12))) for _word in range(words))


def entry(chance: Random, number: int) -> BookEntry:
    shown = Photo(paper(f"{number}.png"), f"{number}.png", "" if number % 2 else "its file is missing")
    return BookEntry(
        title=sentence(chance, chance.choice((1, 5, 30))),
        when=chance.choice(("", "28 Sep 2026")),
        figure=chance.choice(("", "passed with remarks")),
        said=tuple(sentence(chance, 20) for _line in range(chance.randint(0, 4))),
        state=chance.choice((None, *DueState)),
        struck=chance.random() < 0.2,
        photos=(shown,) * chance.choice((0, 0, 1, 6)),
    )


def book(chance: Random, count: int) -> BookContent:
    of = Measurement(what=Measured.POROSITY, value=1, unit="s", gauge=sentence(chance, 3))
    series = tuple(
        MeasuredSeries(of, ((date(2024, 1, 1), 200.0), (date(2026, 1, 1), 90.0))) for _n in range(count // 2)
    )
    large = Photo(paper("1.png"), sentence(chance, 12))
    chapters = (
        Chapter("Facts", sentence(chance, 3), tuple((sentence(chance, 1), sentence(chance, 8)) for _n in range(9))),
        Chapter(
            "Entries", entries=tuple(entry(chance, number) for number in range(count)), said=(sentence(chance, 99),)
        ),
        Chapter("Measured", measured=series),
        Chapter("Photos", photos=(large,) * 3),
        Chapter("By hand", to_write=("Owner", "Place and day")),
    )
    return BookContent("Service book", sentence(chance, 9), sentence(chance, 25), "made 8 May 2026, 18:41", chapters)


def album() -> Album:
    return Album({paper(f"{number}.png").sha256: photo(png(), 100) for number in range(200)})


@pytest.mark.parametrize("sheet", list(Sheet))
@pytest.mark.parametrize("seed", range(6))
def test_all_of_it_is_on_the_pages_and_inside_their_margins(seed: int, sheet: Sheet) -> None:
    chance = Random(seed)  # no secret
    content = book(chance, chance.choice((0, 1, 12, 40)))
    data = written("book", sheet, lambda writer, font: paint_book(writer, content, album(), font))
    read = pages(data)
    text = bare(" ".join(page.text for page in read))
    for chapter in content.chapters:
        if chapter.entries or chapter.facts or chapter.photos or chapter.to_write:
            assert bare(chapter.title) in text
        for one in chapter.entries:
            for words in (one.title, one.when, one.figure, *one.said):
                assert bare(words) in text
        for words in (*chapter.said, *chapter.to_write, *(shown.caption for shown in chapter.photos)):
            assert bare(words) in text
    for page in read:
        across, down = page.box
        for x, y in page.points:
            assert MARGIN_PT - 1 <= x <= across - MARGIN_PT + 1
            assert MARGIN_PT - 1 <= y <= down - MARGIN_PT + 1


def test_words_stand_clear_of_each_other(monkeypatch: pytest.MonkeyPatch) -> None:
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    device, chance = QPdfWriter(buffer), Random(3)  # no secret
    laid = BookPages(book(chance, 12), album(), Setting(paper_font(QFont(QGuiApplication.font())), device))
    drawn = words_drawn(monkeypatch)
    with QPainter(device) as painter:
        for number in range(laid.count):
            laid.paint(painter, number)
            assert drawn
            assert overlapping(drawn) == []
            drawn.clear()
            device.newPage()
