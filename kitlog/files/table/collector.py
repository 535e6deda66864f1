"""Python's search for objects that only refer to each other, put off while a table is made into items."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def collector_paused() -> Iterator[None]:
    """No search meanwhile: rows and items hold no circles, and each search would go through all there are so far.

    Memory is given back as ever, by count of references. Whoever finds it paused leaves it so for the one who did it.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
