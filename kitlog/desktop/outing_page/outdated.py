"""What stands over figures that are not of the plan as it is: why there are no new ones, and the old ones greyed."""

from collections.abc import Iterable

from PySide6.QtWidgets import QGraphicsOpacityEffect, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.text import Paragraph
from kitlog.paint.type_scale import Role
from kitlog.wording.faults import FaultText
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper

GREYED = 0.4
"""How much of what is out of date is still seen."""


def grey(widget: QWidget, *, is_old: bool, why: str = "") -> None:
    """Grey what is not of the plan that is shown and say why, or take that back."""
    effect = QGraphicsOpacityEffect(widget) if is_old else None
    if effect is not None:
        effect.setOpacity(GREYED)
    widget.setGraphicsEffect(effect)  # type: ignore[arg-type]  # Qt takes none, its stubs do not say so
    widget.setAccessibleDescription(why if is_old else "")


class Outdated(QWidget):
    """The words over what is out of date; hidden while nothing is."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.what, self.why = Paragraph("", Role.NAME, "stop"), Paragraph("", Role.SECOND, "muted")
        rows = QVBoxLayout(self)
        rows.setContentsMargins(look.px(4), look.px(4), look.px(4), look.px(8))
        rows.setSpacing(look.px(2))
        rows.addWidget(self.what)
        rows.addWidget(self.why)
        self.hide()

    @property
    def is_shown(self) -> bool:
        """Whether anything is out of date."""
        return not self.isHidden()

    def lay_over(self, old: Iterable[QWidget], text: FaultText, *, keep: bool) -> None:
        """Say why there is nothing new; grey what was found before, or hide it if it is of something else."""
        head = (
            _("Out of date: the plan as it stands cannot be reckoned.") if keep else _("This plan cannot be reckoned.")
        )
        self.what.say(head)
        self.why.say(first_upper(f"{text.what}. {text.remedy}"))
        self.show()
        for widget in old:
            widget.setEnabled(False)
            widget.setVisible(keep)
            grey(widget, is_old=True, why=head)

    def take_away(self, fresh: Iterable[QWidget]) -> None:
        """Everything is of the plan as it stands again."""
        if not self.is_shown:
            return
        self.hide()
        for widget in fresh:
            widget.setEnabled(True)
            grey(widget, is_old=False)
            widget.show()
