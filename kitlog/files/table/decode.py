"""The bytes of a text file into text: UTF-8 and UTF-16 by mark and form, else Windows-1252 if that makes sense."""

import codecs
import re
from dataclasses import dataclass
from itertools import islice

from kitlog.fault import InputFault
from kitlog.files.table.letters import another_encoding
from kitlog.files.table.remark import Remark

_SAMPLE = 8_000
_EXAMPLES = 5
_LONGEST_WORD = 40
_LOOKED_AT = 400
_MARKS = (
    (codecs.BOM_UTF32_LE, "utf-32"),
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
_UTF8_LETTER = re.compile(rb"[\xc2\xc3][\x80-\xbf]|\xe2[\x80-\x82][\x80-\xbf]")
"""A letter or mark of western text in UTF-8; read as Windows-1252 it would be a pair that no language writes."""

_WORD = re.compile(r"[^\W\d_]+(?:[’'-][^\W\d_]+)*")


@dataclass(frozen=True, slots=True)
class Decoded:
    """Text, what is to be said of how it was read, and whether it was UTF-8."""

    text: str
    remarks: tuple[Remark, ...] = ()
    utf8: bool = False


def decoded(data: bytes, file: str) -> Decoded:
    """The text of a file.

    Remarks: ``table.utf16_unmarked``; ``table.windows_1252`` with ``examples``, up to five words that show it.

    Raises:
        InputFault: ``table.zero_bytes``, ``table.broken_utf16``, ``table.broken_utf8`` (`row`), ``table.not_text``,
            ``table.other_encoding`` (`found`, `examples`).
    """
    for mark, encoding in _MARKS:
        if data.startswith(mark):
            return Decoded(_wide(data, encoding, file))
    if b"\0" in data:
        return _unmarked_wide(data, file)
    try:
        return Decoded(data.removeprefix(codecs.BOM_UTF8).decode("utf-8"), utf8=True)
    except UnicodeDecodeError as error:
        return _eight_bits(data, error.start, file)


def _wide(data: bytes, encoding: str, file: str) -> str:
    try:
        text = data.decode(encoding)
    except UnicodeDecodeError as error:
        raise InputFault("table.broken_utf16", file=file) from error
    if "\0" in text:
        raise InputFault("table.zero_bytes", file=file)
    return text


def _unmarked_wide(data: bytes, file: str) -> Decoded:
    """UTF-16 without its mark: in western text every other byte is zero."""
    sample = data[:4000]
    half = max(len(sample) // 2, 1)
    even, odd = sample[::2].count(0) / half, sample[1::2].count(0) / half
    if max(even, odd) < 0.6 or min(even, odd) > 0.05:
        raise InputFault("table.zero_bytes", file=file)
    text = _wide(data, "utf-16-le" if odd > even else "utf-16-be", file)
    return Decoded(text, (Remark("table.utf16_unmarked"),))


def _eight_bits(data: bytes, at: int, file: str) -> Decoded:
    """Windows-1252, unless its letters come out as nobody writes them."""
    if _UTF8_LETTER.search(data):
        raise InputFault("table.broken_utf8", file=file, row=data.count(b"\n", 0, at) + 1)
    if _is_binary(data):
        raise InputFault("table.not_text", file=file)
    other = another_encoding(data)
    if other is not None:
        text = data.decode(other, errors="replace") if other else ""
        raise InputFault("table.other_encoding", file=file, found=other, examples=", ".join(examples(text)))
    text = data.decode("cp1252")
    return Decoded(text, (Remark("table.windows_1252", {"examples": examples(text)}),))


def examples(text: str) -> tuple[str, ...]:
    """Up to five different words of a text that hold letters beyond ASCII."""
    found: dict[str, None] = {}
    for match in islice(re.finditer(r"[^\x00-\x7f]", text), _LOOKED_AT):
        begin = max(0, match.start() - _LONGEST_WORD)
        near = text[begin : match.end() + _LONGEST_WORD]
        for word in _WORD.finditer(near):
            if word.start() <= match.start() - begin < word.end():
                found.setdefault(word.group())
        if len(found) >= _EXAMPLES:
            break
    return tuple(found)[:_EXAMPLES]


def _is_binary(data: bytes) -> bool:
    """More control characters than any text has."""
    sample = data[:_SAMPLE]
    return sum(byte < 32 and byte not in b"\t\r\n\f\v\x1a" for byte in sample) * 100 > len(sample)
