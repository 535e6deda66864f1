"""The printed sheet, read back from the PDF file.

Paper: ISO 216 (A4, 210 x 297 mm), ANSI/ASME Y14.1 (letter, 8.5 x 11 in). Contrast: WCAG 2.1, 1.4.6. Least letters on
paper: 11 px of 1/96 in, the design's own measure.
"""

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime

import pytest
from paint_canvas import overlapping, words_drawn
from pdf_reading import Page, bare, flat, pages
from PySide6.QtCore import QBuffer, QIODevice, QMarginsF
from PySide6.QtGui import QColor, QFont, QGuiApplication, QPageLayout, QPageSize, QPainter, QPdfWriter
from scenario import EVENING, KIT, LIBRARY, NAMES, O1, O2, O3, answers, changed, judged

from kitlog.outing.outing import Outing
from kitlog.paint.sample_power import POWER, POWER_DAYS
from kitlog.paint.sample_weight import WEIGHT
from kitlog.paint.sheet_paint import Sheet, SheetPages, paint_sheet
from kitlog.paint.sheet_pictures import SheetPictures
from kitlog.paint.sheet_setting import PRINT, Setting, paper_font
from kitlog.wording.sheet_content import PackedLine, PackedZone, SheetContent, sheet_content
from kitlog.wording.words import ALARMS_NOBODY, STANCE

MADE = datetime(2026, 5, 8, 18, 41, tzinfo=UTC)
A4, LETTER = QPageSize.PageSizeId.A4, QPageSize.PageSizeId.Letter
SIZES = {A4: (210 / 25.4 * 72, 297 / 25.4 * 72), LETTER: (8.5 * 72, 11 * 72)}
MARGIN_PT = 12 / 25.4 * 72
PICTURES = SheetPictures(power=POWER_DAYS, power_said="Phone: lasts the likely day.", weight=WEIGHT)


def content(outing: Outing = O1) -> SheetContent:
    return sheet_content(judged(outing), NAMES, LIBRARY, MADE)


def writer(paper: QPageSize.PageSizeId = A4) -> tuple[QPdfWriter, QBuffer]:
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    made = QPdfWriter(buffer)
    margins = QMarginsF(12, 12, 12, 12)
    layout = QPageLayout(QPageSize(paper), QPageLayout.Orientation.Portrait, margins, QPageLayout.Unit.Millimeter)
    made.setPageLayout(layout)
    return made, buffer


def family(name: str = "") -> QFont:
    return paper_font(QFont(name) if name else QGuiApplication.font())


def printed(sheet: Sheet, paper: QPageSize.PageSizeId = A4, font: QFont | None = None) -> list[Page]:
    device, buffer = writer(paper)
    count = paint_sheet(device, sheet, font or family())
    read = pages(buffer.data().data())
    assert len(read) == count
    return read


def laid(sheet: Sheet, paper: QPageSize.PageSizeId = A4) -> SheetPages:
    device, _buffer = writer(paper)
    return SheetPages(sheet, Setting(family(), device))


def text_of(read: list[Page]) -> str:
    return " ".join(page.text for page in read)


@pytest.mark.parametrize("paper", [A4, LETTER])
@pytest.mark.parametrize("outing", [O1, O2, O3], ids=lambda outing: outing.name)
def test_pages_of_the_paper_with_letters_and_lines_alone(outing: Outing, paper: QPageSize.PageSizeId) -> None:
    read = printed(Sheet(content(outing), PICTURES), paper)
    assert len(read) > 1
    for page in read:
        assert page.box == pytest.approx(SIZES[paper], abs=0.5)
        assert page.images == 0
        assert page.text


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_nothing_lies_outside_the_margins(paper: QPageSize.PageSizeId) -> None:
    """The lines of a hatch are cut by a clip, up to the height of its bar on either side: they stay on the page."""
    for page in printed(Sheet(content(), PICTURES), paper):
        width, height = page.box
        assert all(MARGIN_PT - 20 < x < width - MARGIN_PT + 20 for x, _y in page.points)
        assert all(MARGIN_PT - 1 < y < height - MARGIN_PT + 1 for _x, y in page.points)
    for page in printed(Sheet(content()), paper):
        assert all(MARGIN_PT - 1 < x < page.box[0] - MARGIN_PT + 1 for x, _y in page.points)


@pytest.mark.parametrize("name", ["", "Inter", "DejaVu Sans", "Liberation Sans"])
def test_all_letters_can_be_found_again_whatever_the_font(name: str) -> None:
    """Ligatures and other forms of digits would have no letters behind them."""
    words = content()
    words = replace(words, name="0123456789 office fluffy \u221212", what="1x2 -> 34")
    text = text_of(printed(Sheet(words), font=family(name)))
    assert "0123456789 office fluffy \u221212" in text
    assert "1x2 -> 34" in text


@pytest.mark.parametrize("outing", [O1, O2, O3], ids=lambda outing: outing.name)
def test_every_word_of_the_sheet_is_there_and_in_its_order(outing: Outing) -> None:
    words = content(outing)
    text = bare(text_of(printed(Sheet(words, PICTURES))))
    place = 0
    for wanted in in_order(words):
        place = text.index(bare(wanted), place)
    for zone in words.zones:
        for line in zone.lines:
            assert bare(line.name) in text
            assert bare(line.stop or line.why) in text
    for what, figure, remark in words.masses:
        assert bare(what + remark + figure) in text or bare(what + figure + remark) in text
    for one in words.questions:
        assert bare(one.words) in text


def in_order(words: SheetContent) -> list[str]:
    found = [words.title, words.counts, words.name, words.what, words.valid]
    for finding in words.findings:
        title = f"{finding.title}: {finding.figure}" if finding.figure else finding.title
        found += [finding.state, title, finding.sentence, *finding.remedies]
    found += ["Charge over the day", "Phone: lasts the likely day.", "Take-off mass", "Packing list"]
    found += [name for zone in words.zones for name in (zone.title, *(line.name for line in zone.lines))]
    found += ["Full before leaving", *(name for name, _lasts in words.charging)]
    found += ["At launch", *(check.words for check in words.launch)]
    found += ["People", *(person.name for person in words.people)]
    return [*found, "Open questions", "What this sheet is", STANCE, ALARMS_NOBODY]


def test_each_page_says_which_it_is_when_it_was_made_and_what_it_is_not() -> None:
    read = printed(Sheet(content(), PICTURES))
    for number, page in enumerate(read, start=1):
        assert f"page {number} of {len(read)}" in page.text
        assert "made 8 May 2026, 18:41" in page.text
        assert flat(STANCE) in page.text
        assert page.text.startswith("Sheet for 9 May 2026")


def test_the_power_picture_is_on_it_with_the_fan_and_its_words() -> None:
    text = text_of(printed(Sheet(content(), PICTURES)))
    for words in ("5 to 95 % of days", "locked by cold", "off 17:24", "99.2 %", "10:00", "23:45"):
        assert words in text
    for lane in POWER_DAYS.lanes:
        assert lane.label in text
    plain = text_of(printed(Sheet(content(), replace(PICTURES, power=POWER))))
    assert "5 to 95 % of days" not in plain


def test_a_power_picture_higher_than_a_page_is_cut_between_lanes() -> None:
    lanes = tuple(replace(POWER.lanes[n % 5], label=f"Device {n}") for n in range(40))
    read = printed(Sheet(content(), SheetPictures(power=replace(POWER, lanes=lanes))))
    for n in range(40):
        assert sum(f"Device {n} " in page.text for page in read) == 1
    assert sum("locked by cold" in page.text for page in read) >= 3


def test_letters_are_large_enough_for_paper() -> None:
    for page in printed(Sheet(content(), PICTURES)):
        assert min(page.sizes) >= 11 * 72 / 96


def long_list(count: int, name: Callable[[int], str]) -> SheetContent:
    lines = tuple(PackedLine(name(n), "essential, why it goes", "", f"{n} g") for n in range(count))
    zones = (PackedZone("Worn", "30 lines", lines[:30]), PackedZone("Rucksack", "90 lines", lines[30:]))
    return replace(content(), zones=zones)


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_120_lines_break_between_lines_and_under_their_headings(paper: QPageSize.PageSizeId) -> None:
    sheet = Sheet(long_list(120, lambda n: f"Thing number {n:03d}"), PICTURES)
    read = printed(sheet, paper)
    for n in range(120):
        (page,) = (page for page in read if f"Thing number {n:03d}" in page.text)
        assert f"Thing number {n:03d} {n} g essential, why it goes" in page.text or (
            f"Thing number {n:03d} essential, why it goes {n} g" in page.text
        )
    assert any("Rucksack, continued" in page.text for page in read)
    assert len(read) <= 8


@pytest.mark.parametrize("outing", [O1, O2, O3], ids=lambda outing: outing.name)
@pytest.mark.parametrize("paper", [A4, LETTER])
def test_no_column_ends_with_what_belongs_to_the_next(outing: Outing, paper: QPageSize.PageSizeId) -> None:
    done = laid(Sheet(content(outing), PICTURES), paper)
    for page in done.pages:
        for x in {spot.x for spot in page}:
            last = max((spot for spot in page if spot.x == x), key=lambda spot: spot.y)
            assert not last.block.keep
            assert last.y + last.block.height <= done.frame.bottom + 1


def test_words_stand_clear_of_each_other(monkeypatch: pytest.MonkeyPatch) -> None:
    device, _buffer = writer()
    done = SheetPages(Sheet(content(O3)), Setting(family(), device))
    drawn = words_drawn(monkeypatch)
    with QPainter(device) as painter:
        for number in range(done.count):
            done.paint(painter, number)
            assert drawn
            assert overlapping(drawn) == []
            drawn.clear()
            device.newPage()


@pytest.mark.parametrize("name", ["long name " * 19, "x" * 200, "\u5f35\u529b" * 60, "wing " + "\U0001f4a7" * 40])
def test_long_names_are_broken_and_never_cut(name: str) -> None:
    name = name.strip()
    kit = replace(KIT, items=tuple(i.model_copy(update={"name": name}) if i.name == "Phone" else i for i in KIT.items))
    plan = changed(O1, name=name, people=[{"name": name, "role": "contact"}], own_lines=[{"text": name}])
    words = sheet_content(judged(plan, kit), {item.id: item.name for item in kit.items}, LIBRARY, MADE)
    done = laid(Sheet(words))
    assert done.count > 1
    setting = Setting(family(), writer()[0])
    for width in (50.0, 500.0, 3000.0):
        from kitlog.paint.type_scale import Role

        broken = setting.broken(name, Role.NAME, setting.px(width / 10))
        assert bare("".join(broken)) == bare(name)
    if name.isascii():
        assert bare(text_of(printed(Sheet(words)))).count(bare(name)) >= 5


def test_a_reason_of_many_lines_goes_over_pages() -> None:
    key = next(f.key for f in judged(O3).findings if f.items and "Life vest" in [NAMES[i] for i in f.items])
    reason = "\n".join(f"reason {n}" for n in range(150))
    plan = changed(O3, overrides=[{"finding": key, "reason": reason, "at": EVENING}])
    text = text_of(printed(Sheet(content(plan))))
    assert "closed by you with a reason: reason 0 reason 1 " in text
    assert text.count("reason 149") == 2  # at the finding and at the line


def test_an_answered_question_shows_the_answer_and_no_line() -> None:
    asked, told = content(), content(answers(O1, [("am.weather", "west 15")]))
    before, after = text_of(printed(Sheet(asked))), text_of(printed(Sheet(told)))
    assert "west 15, at 18:30" in after
    assert before.count("at what time") - after.count("at what time") == 1


def test_what_is_not_there_leaves_no_heading() -> None:
    words = replace(content(), findings=(), questions=(), zones=(), charging=(), launch=(), people=())
    text = text_of(printed(Sheet(words)))
    for head in ("Findings", "Open questions", "Packing list", "Full before leaving", "At launch", "Charge over"):
        assert head not in text
    assert "Nobody is named." in text


def luminance(colour: QColor) -> float:
    """WCAG 2.1, relative luminance."""
    parts = (colour.redF(), colour.greenF(), colour.blueF())
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


@pytest.mark.parametrize("name", ["ink", "muted", "accent", "fine", "look", "stop"])
def test_ink_is_dark_enough_for_a_printer_without_colours(name: str) -> None:
    assert 1.05 / (luminance(getattr(PRINT, name)) + 0.05) >= 7
    assert luminance(PRINT.paper) == luminance(PRINT.surface) == pytest.approx(1)
