"""Keeps every piece of every course of a day, for samples, pictures and the longest phase."""

from bisect import bisect_right

from kitlog.budget.power.curve import Terms, value
from kitlog.budget.power.state import ON, BankState, DeviceState
from kitlog.budget.power.story import Run

Piece = tuple[float, float, float, float, Terms]
"""From (h), for (h), and soc over it: f0, f1 and terms of `curve`."""


class Recorder:
    """Pieces by device and by bank, in the order of time, without gaps from the start to the end of the day."""

    def __init__(self, devices: int, banks: int) -> None:
        self.devices: list[list[Piece]] = [[] for _ in range(devices)]
        self.banks: list[list[Piece]] = [[] for _ in range(banks)]

    def record(self, run: Run, for_h: float) -> None:
        """Keep what every course does from now until the next event."""
        for device in run.devices:
            self.devices[device.index].append(_piece(device, run.now_h, for_h))
        for bank in run.banks:
            moves = bank.state == ON
            piece = _piece(bank, run.now_h, for_h) if moves else (run.now_h, for_h, bank.soc, 0.0, ())
            self.banks[bank.index].append(piece)


def _piece(cell: DeviceState | BankState, now_h: float, for_h: float) -> Piece:
    return (now_h, for_h, cell.soc, cell.rate, cell.terms)


def soc_at(pieces: list[Piece], at_h: float, start: float) -> float:
    """State of charge at a time of the day; `start` if nothing has moved (a day without duration)."""
    index = bisect_right(pieces, at_h, key=_from_h) - 1
    if index < 0:
        return start
    from_h, for_h, soc, rate, terms = pieces[index]
    return min(1.0, max(0.0, value(soc, rate, terms, min(at_h - from_h, for_h))))


def _from_h(piece: Piece) -> float:
    return piece[0]
