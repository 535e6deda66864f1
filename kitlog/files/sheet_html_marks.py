"""Pieces of HTML: text is always escaped, names keep their own direction, every box is tied to its label."""

from collections.abc import Iterable, Iterator
from html import escape
from itertools import count

from kitlog.wording.words import word


def text(words: str) -> str:
    """Words as they are, whatever they contain."""
    return escape(words, quote=True)


def name(words: str) -> str:
    """A name somebody typed: shown in its own direction without turning what stands beside it."""
    return f'<bdi dir="auto">{text(words)}</bdi>'


def heading(level: int, words: str, remark: str = "") -> str:
    """A heading with a remark at its right."""
    small = f" <small>{text(remark)}</small>" if remark else ""
    return f"<h{level}><span>{text(words)}</span>{small}</h{level}>"


def quiet(words: str) -> str:
    """A line in the second colour; nothing for no words."""
    return f'<span class="why" dir="auto">{text(words)}</span>' if words else ""


def state(value: str) -> str:
    """A state as shape and word; the colour comes on top."""
    css = value.replace(" ", "-")
    return f'<span class="state {css}"><span class="shape" aria-hidden="true"></span>{text(word(value))}</span>'


def section(parts: Iterable[str], css: str = "") -> str:
    """A section; nothing for no parts."""
    inside = "".join(parts)
    opening = f'<section class="{css}">' if css else "<section>"
    return f"{opening}{inside}</section>" if inside else ""


def listed(items: Iterable[str], opening: str = "<ul>") -> str:
    """A list, its opening tag given; nothing for no items."""
    inside = "".join(items)
    return f"{opening}{inside}</{opening[1:3]}>" if inside else ""


COLUMNS = '<ul class="columns">'
"""Opens a list that is set in two columns on paper."""


class Ids:
    """Ids that are used once."""

    def __init__(self) -> None:
        self._numbers: Iterator[int] = count(1)

    def new(self) -> str:
        """The next id."""
        return f"k{next(self._numbers)}"

    def tick(self, label: str, right: str = "") -> str:
        """A line with an empty box; a browser must not fill it in again by itself."""
        box = self.new()
        return (
            f'<li class="tick"><label for="{box}"><input type="checkbox" id="{box}" autocomplete="off">'
            f'<span>{label}</span><span class="mass">{text(right)}</span></label></li>'
        )

    def field(self, label: str) -> str:
        """A label and a line to write on."""
        box = self.new()
        return f'<div><label for="{box}">{label}</label> <input type="text" id="{box}" autocomplete="off"></div>'
