"""The guard at the door of every picture: figures must be numbers that can be drawn."""

import math


def finite(**figures: float | None) -> None:
    """Refuse NaN and infinity; None stands for *not known* and passes.

    Raises:
        ValueError: one of `figures` is not finite; its name is in the message.
    """
    for name, figure in figures.items():
        if figure is not None and not math.isfinite(figure):
            raise ValueError(f"{name} is {figure}: a picture draws finite figures only")


def share(**figures: float) -> None:
    """Refuse what is not between 0 and 1.

    Raises:
        ValueError: one of `figures` is not a share; its name is in the message.
    """
    finite(**figures)
    for name, figure in figures.items():
        if not 0.0 <= figure <= 1.0:
            raise ValueError(f"{name} is {figure}: a share lies between 0 and 1")
