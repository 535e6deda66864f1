"""The HTML sheet, read by Python's own HTML parser.

Contrast: WCAG 2.1, relative luminance and success criterion 1.4.6 (7:1 for text). Targets of 44 px: WCAG 2.1, 2.5.5.
"""

import re
from collections import Counter
from dataclasses import replace
from datetime import UTC, datetime
from html.parser import HTMLParser
from typing import Any

import pytest
from scenario import EVENING, KIT, LIBRARY, NAMES, O1, O2, O3, answers, changed, judged

from kitlog.budget.result import State
from kitlog.files.sheet_html import sheet_html
from kitlog.files.sheet_html_style import DARK, LIGHT, style
from kitlog.packing.assessment import Assessment
from kitlog.packing.kit import Kit

VOID = {"meta", "input", "br", "hr", "link", "img"}
PRINTED = datetime(2026, 5, 8, 18, 41, tzinfo=UTC)


class Page(HTMLParser):
    """The tree as flat lists: elements with their attributes, text, open tags that were never closed.

    A part of a page may close what was opened before it.
    """

    def __init__(self, text: str, *, part: bool = False) -> None:
        super().__init__(convert_charrefs=True)
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.words: list[str] = []
        self.open: list[str] = []
        self.part = part
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: Any) -> None:
        assert len({name for name, _ in attrs}) == len(attrs), f"an attribute twice in {tag}"
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        if self.open or not self.part:
            assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if not self.open or self.open[-1] != "style":
            self.words.append(data)

    def of(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.elements if name == tag]

    @property
    def text(self) -> str:
        return " ".join(" ".join(self.words).split(" "))


def sheet(assessment: Assessment, names: dict[str, str] = NAMES) -> str:
    return sheet_html(assessment, names, LIBRARY, PRINTED)


@pytest.fixture(params=[O1, O2, O3], ids=lambda outing: outing.name)
def assessment(request: pytest.FixtureRequest) -> Assessment:
    return judged(request.param)


def test_well_formed_small_and_alone(assessment: Assessment) -> None:
    text = sheet(assessment)
    page = Page(text)
    assert page.open == []
    assert len(text.encode()) < 200_000
    assert page.of("html")[0]["lang"] == "en"
    tags = {tag for tag, _ in page.elements}
    assert tags.isdisjoint({"script", "link", "img", "iframe", "object", "a", "form", "base"})
    assert not re.search(r"https?:|//|url\(|@import|javascript:|file:", text.split("</head>")[0].replace("<!", ""))
    for _tag, attributes in page.elements:
        assert not {"href", "src", "srcset", "action", "style"} & attributes.keys()
        assert not [name for name in attributes if name.startswith("on")]
    policy = [m.get("content") for m in page.of("meta") if m.get("http-equiv") == "Content-Security-Policy"]
    assert policy == ["default-src 'none'; style-src 'unsafe-inline'"]


def test_ids_are_unique_and_every_field_has_its_label(assessment: Assessment) -> None:
    page = Page(sheet(assessment))
    ids = Counter(a["id"] for _, a in page.elements if "id" in a)
    assert max(ids.values()) == 1
    fields = [a["id"] for a in page.of("input")]
    assert Counter(a["for"] for a in page.of("label")) == Counter(fields)


def test_nothing_is_ticked_or_filled_in_beforehand(assessment: Assessment) -> None:
    for field in Page(sheet(assessment)).of("input"):
        assert field["type"] in {"checkbox", "text"}
        assert field["autocomplete"] == "off"
        assert "checked" not in field
        assert "value" not in field


def test_one_box_for_each_line_of_the_list(assessment: Assessment) -> None:
    text = sheet(assessment)
    listed = text[text.index("Packing list") : text.index("Full before leaving")]
    assert len(Page(listed, part=True).of("input")) == len(assessment.lines)
    for line in assessment.lines:
        assert line.item.name in listed


def test_order_of_the_parts(assessment: Assessment) -> None:
    words = Page(sheet(assessment)).text
    parts = (
        *("Sheet for", "look", "Valid for", "made 8\u00a0May\u00a02026, 18:41", "Findings, worst first"),
        *("Open questions", "Packing list", "Full before leaving", "At launch", "any delay: again"),
        *("Ten minutes of watching", "Both leg straps", "Standing, last seconds", "Take-off mass", "People"),
        *("Jorun Maravel", "not told yet", "have the last word.", "kitlog alarms nobody"),
    )
    place = 0
    for part in parts:
        place = words.index(part, place)


def test_findings_worst_first_by_word_and_shape() -> None:
    text = sheet(judged(O3))
    part = text[text.index("Findings, worst first") : text.index("Open questions")]
    states = [a["class"] for a in Page(part, part=True).of("span") if (a.get("class") or "").startswith("state ")]
    assert states == sorted(states, key=["state stop", "state look", "state not-known"].index)
    assert Counter(states) == {"state stop": 2, "state look": 11, "state not-known": 9}
    assert part.count('class="shape" aria-hidden="true"') == len(states)
    assert "fine" not in Page(part, part=True).text.split()


def test_a_stop_is_marked_at_its_line_and_shows_the_reason_that_closes_it() -> None:
    key = next(f.key for f in judged(O3).findings if f.items and "Life vest" in [NAMES[i] for i in f.items])
    closed = changed(O3, overrides=[{"finding": key, "reason": "Boat has a <second> one", "at": EVENING}])
    text = sheet(judged(closed))
    listed = text[text.index("Packing list") : text.index("Full before leaving")]
    assert 'class="state stop"' in listed
    assert text.count("closed by you with a reason: Boat has a &lt;second&gt; one") == 2


def test_an_answered_question_needs_no_line() -> None:
    before, after = Page(sheet(judged(O1))), Page(sheet(judged(answers(O1, [("am.weather", "west 15")]))))
    assert "west 15, at 18:30" in after.text
    assert len(before.of("input")) - len(after.of("input")) == 2  # the answer and its time


def test_who_was_told_and_when() -> None:
    people = [{"name": "Jo", "role": "contact", "told_at": EVENING, "phone": "+00 123"}, *O1.people[2:]]
    words = Page(sheet(judged(changed(O1, people=people)))).text
    assert "Jo  +00 123" in words
    assert "told 8\u00a0May\u00a02026, 18:30" in words
    assert "Nobody is named." in Page(sheet(judged(changed(O1, people=[])))).text


def renamed(old: str, new: str) -> Kit:
    items = tuple(i.model_copy(update={"name": new}) if i.name == old else i for i in KIT.items)
    return replace(KIT, items=items)


NASTY = (
    "<script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    '" onfocus="alert(1)',
    "' autofocus x='",
    "</style></head>",
    "&lt;b&gt; & &amp;",
    "<!-- ",
    "]]>",
)


@pytest.mark.parametrize("nasty", NASTY)
def test_whatever_is_typed_stays_text(nasty: str) -> None:
    plan = changed(
        O1,
        name=nasty,
        site={"name": nasty},
        people=[{"name": nasty, "role": "contact", "phone": nasty}],
        own_lines=[{"text": nasty}],
        answers=[{"check": "am.weather", "value": nasty, "at": EVENING}],
        overrides=[{"finding": "people.nobody_told", "reason": nasty, "at": EVENING}],
    )
    kit = renamed("Phone", nasty)
    text = sheet(judged(plan, kit), {item.id: item.name for item in kit.items})
    page, plain = Page(text), Page(sheet(judged(O1)))
    assert page.open == []
    assert {tag for tag, _ in page.elements} == {tag for tag, _ in plain.elements}
    assert {name for _, a in page.elements for name in a} == {name for _, a in plain.elements for name in a}
    assert page.text.count(nasty) >= 7


def test_right_to_left_names_do_not_turn_their_neighbours() -> None:
    name = "\u05de\u05e6\u05e0\u05d7 1"
    text = sheet(judged(O1, renamed("Reserve A", name)))
    assert f'<bdi dir="auto">{name}</bdi>' in text


def luminance(colour: str) -> float:
    """WCAG 2.1, relative luminance."""
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("scheme", [LIGHT, DARK])
@pytest.mark.parametrize("colour", ["ink", "muted", "stop", "look"])
def test_text_can_be_read_in_the_sun(scheme: dict[str, str], colour: str) -> None:
    assert contrast(scheme[colour], scheme["ground"]) >= 7


def test_measure_of_contrast() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)  # WCAG 2.1: the greatest there is


def test_style_has_large_targets_a_dark_scheme_and_paper() -> None:
    css = style('A "quoted" \\ line </style>')
    assert "</style>" not in css
    assert r"\"quoted\"" in css
    assert "min-height:44px" in css
    assert "prefers-color-scheme:dark" in css
    assert "size:A4;margin:12mm" in css
    colours = set(re.findall(r"#[0-9a-f]{3,6}\b", css))
    assert colours <= {*LIGHT.values(), *DARK.values(), "#000"}


def test_no_findings_and_no_lines_leave_no_empty_heading() -> None:
    bare = judged(O1)
    fine = tuple(f for f in bare.findings if f.state is State.FINE)
    text = sheet(replace(bare, findings=fine, lines=(), questions=()))
    assert "Findings" not in text
    assert "Open questions" not in text
    assert "Packing list" not in text
    assert "<ul></ul>" not in text
