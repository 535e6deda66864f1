"""Long work that has to be over before the next step: done away from the window, which is painted meanwhile."""

from collections.abc import Callable
from typing import TypeVar

from PySide6.QtCore import QEventLoop

from kitlog.desktop.background import Background, Tell

T = TypeVar("T")

TYPING_WAITS = QEventLoop.ProcessEventsFlag.ExcludeUserInputEvents


def apart(work: Callable[[], T], flags: QEventLoop.ProcessEventsFlag = TYPING_WAITS) -> T:
    """What `work` gives; whatever it raises is raised here. What is typed meanwhile waits, if not said otherwise."""
    loop, background = QEventLoop(), Background()
    results: list[T] = []
    errors: list[Exception] = []

    def noted(_tell: Tell) -> None:
        try:
            results.append(work())
        except Exception as error:  # noqa: BLE001  # raised again below
            errors.append(error)

    background.done.connect(loop.quit)
    background.ask(noted)
    loop.exec(flags)
    if errors:
        raise errors[0]
    return results[0]
