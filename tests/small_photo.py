"""A small PNG picture of one colour, made by hand after the PNG specification (W3C, sections 5 and 11)."""

import struct
import zlib


def _chunk(name: bytes, content: bytes) -> bytes:
    return struct.pack(">I", len(content)) + name + content + struct.pack(">I", zlib.crc32(name + content))


def png(width: int = 40, height: int = 30, colour: tuple[int, int, int] = (58, 124, 165)) -> bytes:
    """The bytes of a picture; 8 bits a colour, no transparency."""
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    rows = (b"\0" + bytes(colour) * width) * height
    return b"\x89PNG\r\n\x1a\n" + _chunk(b"IHDR", head) + _chunk(b"IDAT", zlib.compress(rows)) + _chunk(b"IEND", b"")
