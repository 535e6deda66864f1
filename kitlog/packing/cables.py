"""Cables between a bank's ports and a device's socket, over the connectors that are named.

A connector is known where its text names one of the plugs below. The two ends of a cable are read from a text such as
"USB-C to micro-USB"; "USB-C cable" names one end only, and the other one is not guessed.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum


class Connector(StrEnum):
    """A plug or socket."""

    USB_C = "USB-C"
    USB_A = "USB-A"
    MICRO_USB = "micro-USB"
    MINI_USB = "mini-USB"
    BARREL = "barrel"


_WORDS = {
    Connector.MICRO_USB: r"micro[\s-]?usb|usb[\s-]?micro|micro[\s-]?b",
    Connector.MINI_USB: r"mini[\s-]?usb|usb[\s-]?mini|mini[\s-]?b",
    Connector.USB_C: r"usb[\s-]?(?:type[\s-]?)?c|type[\s-]?c",
    Connector.USB_A: r"usb[\s-]?(?:type[\s-]?)?a|type[\s-]?a",
    Connector.BARREL: r"barrel|dc plug",
}
_CONNECTOR = re.compile(
    r"(?<![a-z0-9])(?:" + "|".join(f"(?P<{name.name}>{words})" for name, words in _WORDS.items()) + r")(?![a-z0-9])"
)
_BETWEEN = re.compile(r"\s*(?:plug|male)?\s*(?:to|-|–|->|→)\s*")


def connectors(text: str) -> tuple[Connector, ...]:
    """The connectors a text names, in its order; none: not known."""
    return tuple(Connector[match.lastgroup] for match in _CONNECTOR.finditer(text.casefold()) if match.lastgroup)


Ends = tuple[Connector, Connector]


def ends(text: str) -> Ends | None:
    """The two ends of a cable; None unless just two are named, one right after the other with a "to" between."""
    low = text.casefold()
    found = list(_CONNECTOR.finditer(low))
    if len(found) != 2 or not _BETWEEN.fullmatch(low[found[0].end() : found[1].start()]):
        return None
    first, second = connectors(text)
    return first, second


class Fit(StrEnum):
    """Whether there is a cable for a plug."""

    FITS = "fits"
    TAKEN = "taken"
    MISSING = "missing"
    NOT_KNOWN = "not known"


@dataclass(frozen=True, slots=True)
class Wanted:
    """A device that is to hang on a bank: the bank's ports and the device's sockets; empty: not known."""

    device: str
    bank: str
    ports: frozenset[Connector]
    sockets: frozenset[Connector]

    def takes(self, cable: Ends) -> bool:
        """Whether a cable joins the two, either way round."""
        one, other = cable
        return (one in self.ports and other in self.sockets) or (other in self.ports and one in self.sockets)


def fits(wanted: Sequence[Wanted], cables: Sequence[Ends | None]) -> Mapping[str, Fit]:
    """By device: is there a cable for each of those that hang on banks at the same time?

    Cables are dealt so that as many as possible get one. A cable whose ends are not known (None) may fit anything, so
    what gets no other is not known; without a cable of any sort even an unknown connector misses one.

    Args:
        wanted: those that hang on banks at the same time, each device once.
        cables: one entry a piece.
    """
    known = [cable for cable in cables if cable is not None]
    holder: dict[int, int] = {}
    for index in range(len(wanted)):
        _deal(index, wanted, known, holder, set())
    served = set(holder.values())
    some_unknown = len(known) < len(cables)
    return {
        one.device: Fit.FITS if index in served else _unserved(one, known, some_unknown=some_unknown)
        for index, one in enumerate(wanted)
    }


def _deal(index: int, wanted: Sequence[Wanted], cables: Sequence[Ends], holder: dict[int, int], seen: set[int]) -> bool:
    """Find a cable for one device; those who hold one move on to another where they can (augmenting paths)."""
    for number, cable in enumerate(cables):
        if number in seen or not wanted[index].takes(cable):
            continue
        seen.add(number)
        if number not in holder or _deal(holder[number], wanted, cables, holder, seen):
            holder[number] = index
            return True
    return False


def _unserved(one: Wanted, known: Sequence[Ends], *, some_unknown: bool) -> Fit:
    if some_unknown or (known and not (one.ports and one.sockets)):
        return Fit.NOT_KNOWN
    return Fit.TAKEN if any(one.takes(cable) for cable in known) else Fit.MISSING
