"""A small reader of the PDF files that Qt writes: text in the order in which it is painted, where it stands, and images.

After ISO 32000-1: cross-reference table 7.5.4, streams 7.3.8, matrices 8.3.4, text operators 9.4, ToUnicode 9.10.3.
"""

import re
import zlib
from collections.abc import Iterator
from dataclasses import dataclass, field

Matrix = tuple[float, float, float, float, float, float]

NUMBER = re.compile(rb"^[+-]?(\d+\.?\d*|\.\d+)$")
TOKEN = re.compile(rb"<[0-9A-Fa-f]*>|\[|\]|/[^\s\[\]<>/]+|[^\s\[\]<>/]+")
STRAIGHT = {b"m": 1, b"l": 1, b"c": 3}


def times(one: Matrix, other: Matrix) -> Matrix:
    a, b, c, d, e, f = one
    g, h, i, j, k, l = other  # noqa: E741  # the letters of the standard, 8.3.4, go on
    return (a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + l)


@dataclass
class Page:
    """One page: its box in points, its text by piece, its points of ink, sizes of its letters, number of its images."""

    box: tuple[float, float]
    pieces: list[str] = field(default_factory=list)
    points: list[tuple[float, float]] = field(default_factory=list)
    sizes: set[float] = field(default_factory=set)
    images: int = 0

    @property
    def text(self) -> str:
        """All text, with one plain space for any space."""
        return flat(" ".join(self.pieces))


def flat(text: str) -> str:
    """Any space, broken lines too, as one plain space."""
    return " ".join(text.split())


def bare(text: str) -> str:
    """Without any space: what was broken within a word is whole again."""
    return "".join(text.split())


def pages(data: bytes) -> list[Page]:
    """The pages of a PDF file."""
    return list(_File(data).pages())


def all_text(data: bytes) -> str:
    """The text of all pages."""
    return " ".join(page.text for page in pages(data))


class _File:
    def __init__(self, data: bytes) -> None:
        assert data.startswith(b"%PDF-")
        assert data.rstrip().endswith(b"%%EOF")
        self._data = data
        start = int(re.findall(rb"startxref\s+(\d+)", data)[-1])
        rows = re.findall(rb"(\d{10}) \d{5} ([nf])", data[start:])
        self._offsets = {number: int(offset) for number, (offset, kind) in enumerate(rows) if kind == b"n"}

    def pages(self) -> Iterator[Page]:
        root = self._head(int(re.findall(rb"/Root (\d+) 0 R", self._data)[-1]))
        kids = self._head(_reference(root, b"Pages"))
        for number in re.findall(rb"(\d+) 0 R", kids[kids.index(b"/Kids") : kids.index(b"]")]):
            yield self._page(self._head(int(number)))

    def _page(self, head: bytes) -> Page:
        box = re.search(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", head)
        assert box is not None
        resources = self._head(_reference(head, b"Resources"))
        fonts = {
            b"/F" + name: self._letters(int(number)) for name, number in re.findall(rb"/F(\d+) (\d+) 0 R", resources)
        }
        page = Page((float(box[1]), float(box[2])))
        page.images = sum(b"/Image" in self._head(int(n)) for n in re.findall(rb"/Im\d+ (\d+) 0 R", resources))
        _Content(page, fonts).run(self._stream(_reference(head, b"Contents")))
        return page

    def _head(self, number: int) -> bytes:
        """An object as far as its dictionary goes."""
        at = self._offsets[number]
        return re.split(rb"\bstream\r?\n|endobj", self._data[at:], maxsplit=1)[0]

    def _stream(self, number: int) -> bytes:
        at = self._offsets[number]
        head = self._head(number)
        length = re.search(rb"/Length (\d+)( 0 R)?", head)
        assert length is not None
        size = int(length[1])
        if length[2]:
            size = int(self._head(size).split(b"obj")[1])
        begin = self._data.index(b"stream", at + len(head)) + len(b"stream")
        begin += 2 if self._data[begin : begin + 2] == b"\r\n" else 1
        content = self._data[begin : begin + size]
        return zlib.decompress(content) if b"FlateDecode" in head else content

    def _letters(self, font: int) -> dict[int, str]:
        """What each code of a font stands for."""
        cmap = self._stream(_reference(self._head(font), b"ToUnicode"))
        letters: dict[int, str] = {}
        for low, high, listed, first in re.findall(
            rb"<([0-9A-F]{4})> <([0-9A-F]{4})> (?:\[([^\]]*)\]|<([0-9A-F]+)>)", cmap
        ):
            codes = range(int(low, 16), int(high, 16) + 1)
            if first:
                letters |= {code: chr(int(first, 16) + number) for number, code in enumerate(codes)}
            else:
                given = re.findall(rb"<([0-9A-F]+)>", listed)
                letters |= {
                    code: bytes.fromhex(text.decode()).decode("utf-16-be")
                    for code, text in zip(codes, given, strict=True)
                }
        return letters


def _reference(head: bytes, name: bytes) -> int:
    found = re.search(rb"/" + name + rb" (\d+) 0 R", head)
    assert found is not None, (name, head)
    return int(found[1])


class _Content:
    """Runs the operators that say what stands where; colours and clips are passed over."""

    def __init__(self, page: Page, fonts: dict[bytes, dict[int, str]]) -> None:
        self._page, self._fonts = page, fonts
        self._matrix: Matrix = (1, 0, 0, 1, 0, 0)
        self._kept: list[Matrix] = []
        self._text: Matrix = self._matrix
        self._size, self._letters = 0.0, dict[int, str]()
        self._path: list[tuple[float, float]] = []

    def run(self, content: bytes) -> None:
        waiting: list[bytes] = []
        for token in TOKEN.findall(content):
            if NUMBER.match(token) or token[:1] in b"</[]":
                waiting.append(token)
            else:
                self._do(token, waiting)
                waiting = []

    def _do(self, operator: bytes, given: list[bytes]) -> None:
        if operator == b"q":
            self._kept.append(self._matrix)
        elif operator == b"Q":
            self._matrix = self._kept.pop() if self._kept else self._matrix
        elif operator == b"cm":
            self._matrix = times(_numbers(given), self._matrix)
        elif operator in {b"BT", b"Tf", b"Tm", b"Td", b"Tj"}:
            self._write(operator, given)
        else:
            self._draw(operator, given)

    def _write(self, operator: bytes, given: list[bytes]) -> None:
        if operator == b"BT":
            self._page.pieces.append("")
        elif operator == b"Tf":
            self._letters, self._size = self._fonts[given[0]], float(given[1])
        elif operator == b"Tm":
            self._text = _numbers(given)
        elif operator == b"Td":
            self._text = times((1, 0, 0, 1, float(given[0]), float(given[1])), self._text)
        else:
            self._show(given[0])

    def _show(self, codes: bytes) -> None:
        digits = codes.strip(b"<>").decode()
        at = times(self._text, self._matrix)
        self._page.pieces[-1] += "".join(
            self._letters[int(digits[place : place + 4], 16)] for place in range(0, len(digits), 4)
        )
        self._page.points.append((at[4], at[5]))
        self._page.sizes.add(round(self._size * abs(at[3]), 2))

    def _draw(self, operator: bytes, given: list[bytes]) -> None:
        if operator in STRAIGHT:
            numbers = [float(number) for number in given]
            self._path += [self._at(*numbers[place : place + 2]) for place in range(0, 2 * STRAIGHT[operator], 2)]
        elif operator == b"re":
            x, y, width, height = map(float, given)
            self._path += [self._at(x, y), self._at(x + width, y + height)]
        elif operator in {b"S", b"s", b"f", b"f*", b"B", b"B*", b"b", b"b*"}:
            self._page.points += self._path
            self._path = []
        elif operator == b"n":
            self._path = []

    def _at(self, x: float, y: float) -> tuple[float, float]:
        a, b, c, d, e, f = self._matrix
        return a * x + c * y + e, b * x + d * y + f


def _numbers(given: list[bytes]) -> Matrix:
    a, b, c, d, e, f = (float(number) for number in given[-6:])
    return a, b, c, d, e, f
