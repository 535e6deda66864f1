"""What every form of a facet is to the editor: it shows a facet, gives it back, and says when it was changed."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from kitlog.kit.kinds import Kind
from kitlog.units.model import Frozen


class FacetPart(QWidget):
    """The base of the forms.

    Attributes:
        changed: a figure was changed; grown: fields came or went, and Tab has to find its way anew.
    """

    changed = Signal()
    grown = Signal()

    def put(self, model: Frozen | None, kind: Kind) -> None:
        """Show the figures of a facet."""
        raise NotImplementedError

    def model(self) -> Frozen | None:
        """The facet, None if no figure was given.

        Raises:
            pydantic.ValidationError, Fault: the figures contradict each other.
        """
        raise NotImplementedError

    def is_empty(self) -> bool:
        """Whether nothing was given."""
        raise NotImplementedError
