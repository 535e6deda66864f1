"""Better and better answers about one plan at a time, worked out beside the window; of another none is shown."""

from collections.abc import Callable, Generator
from contextlib import closing
from typing import Generic, Protocol, TypeVar

from PySide6.QtCore import QObject, Signal

from kitlog.desktop.background import Background, Tell
from kitlog.desktop.turns import Turns


class Final(Protocol):
    """An answer that may be the last one."""

    @property
    def is_final(self) -> bool:
        """Whether nothing better comes."""


Answer = TypeVar("Answer", bound=Final)
Steps = Generator[Answer | None, None, None]
"""Work in slices of a few ms: after each an answer, None where it has brought none worth showing."""


class Beside(QObject, Generic[Answer]):
    """Answers one question at a time.

    Attributes:
        refined: there is a better answer in `latest`.
        latest: to what was asked last; None before the first answer.
    """

    refined = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.latest: Answer | None = None
        self._asked: object = None
        self._made: list[Answer] = []
        self._background, self._turns = Background(self), Turns(self)
        self._background.going.connect(lambda _seconds, _share: self._look())
        self._background.done.connect(lambda _result: self._look())
        self._background.done.connect(lambda _result: self._turns.end())
        self._background.broke.connect(self._turns.end)

    @property
    def busy(self) -> bool:
        """Whether answers are being worked out."""
        return self._background.busy

    def ask(self, asked: object, steps: Callable[[], Steps[Answer] | None]) -> None:
        """Have something answered; what was found of anything else is dropped at once.

        Args:
            asked: all that the answers depend on; the same again is not worked out again.
            steps: begins the work; None where there is nothing to work out.
        """
        if asked != self._asked:
            self.drop()
            self._asked = asked
        if self.busy or (self.latest is not None and self.latest.is_final):
            return
        work = steps()
        if work is not None:
            self._made = []
            self._turns.begin()
            self._background.ask(_work(work, self._made, self._turns))

    def pause(self) -> None:
        """Work no more for now; what there is stays."""
        self._background.stop()
        self._turns.end()

    def drop(self) -> None:
        """Work no more, and forget what was found."""
        self.pause()
        self._made, self._asked, self.latest = [], None, None

    def is_better(self, answer: Answer) -> bool:
        """Whether an answer is to take the place of the latest: after a pause the first ones come again."""
        return answer is not self.latest

    def _look(self) -> None:
        if self._made and self.is_better(self._made[-1]):
            self.latest = self._made[-1]
            self.refined.emit()


def _work(steps: Steps[Answer], made: list[Answer], turns: Turns) -> Callable[[Tell], None]:
    """The work of the thread: answers go into the list, the steps end as soon as nobody wants them."""

    def work(tell: Tell) -> None:
        with closing(steps):
            for answer in steps:
                if answer is not None:
                    made.append(answer)
                tell(0.0)
                turns.wait()

    return work
