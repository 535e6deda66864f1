"""Things found by a name as somebody types it: no keyboard has the blanks that hold a date together."""

from collections.abc import Iterable
from typing import Protocol, TypeVar


class Named(Protocol):
    """What has a name of its own: an item, an outing."""

    @property
    def name(self) -> str:
        """The name."""


T = TypeVar("T", bound=Named)


def called(things: Iterable[T], name: str) -> tuple[T, ...]:
    """The things of a name: written like that, else `spelled` like it, else whatever the capitals.

    More than one only where several are alike in the first of these ways that finds any.
    """
    known = tuple(things)
    return spelled(known, name) or _alike(known, name)


def spelled(things: Iterable[T], name: str) -> tuple[T, ...]:
    """The things of a name: written like that, else whatever kind of blank stands between its words, and how many."""
    known = tuple(things)
    same = tuple(thing for thing in known if thing.name == name)
    return same or tuple(thing for thing in known if plain_blanks(thing.name) == plain_blanks(name))


def plain_blanks(text: str) -> str:
    """The text with one plain blank between its words, and none around them."""
    return " ".join(text.split())


def _alike(things: Iterable[T], name: str) -> tuple[T, ...]:
    typed = plain_blanks(name).casefold()
    return tuple(thing for thing in things if plain_blanks(thing.name).casefold() == typed)
