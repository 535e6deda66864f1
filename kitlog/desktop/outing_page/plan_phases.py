"""The phases of a plan as a table, and when one is home; the hours follow while an edge is dragged."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.plan_words import home_texts, phase_rows
from kitlog.desktop.parts.line import Hairline
from kitlog.desktop.parts.section import RIGHT
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.outing.outing import Outing
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

STYLES = ((Role.BODY, "muted"), (Role.GROUP, "ink"), (Role.BODY, "ink"))
"""Of low, likely and high."""


class PlanPhases(QGridLayout):
    """Low, likely and high of each phase and of the whole, and the air's temperature.

    Attributes:
        hours: the three durations of each phase, and last when one is home.
    """

    def __init__(self, outing: Outing, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setHorizontalSpacing(look.px(8))
        self.setVerticalSpacing(look.px(4))
        self.setColumnStretch(0, 1)
        self.hours: list[tuple[Text, ...]] = []
        self._heads()
        rows = phase_rows(outing)
        for number, row in enumerate(rows, start=1):
            self._add(number, Paragraph(row.name, Role.BODY, "ink"))
            self._put(Text(row.air), number, 4)
        if rows:
            self.addWidget(Hairline(), len(rows) + 1, 0, 1, 5)
            self._add(len(rows) + 2, Text(_("Home at") if outing.starts_at else _("In all")))
        else:
            self.addWidget(Paragraph(_("No phases yet: how long, how cold?")), 1, 0, 1, 5)
        self.show_hours(outing)

    def show_hours(self, outing: Outing) -> None:
        """Show the hours of a plan with the same phases; of one with others nothing."""
        home = home_texts(outing)
        wanted = [*(row.hours for row in phase_rows(outing)), *([] if home is None else [home])]
        if len(wanted) != len(self.hours):
            return
        for texts, words in zip(self.hours, wanted, strict=True):
            for text, said in zip(texts, words, strict=True):
                if said != text.text():
                    text.setText(said)

    def _heads(self) -> None:
        self.addWidget(Text(_("Phases"), Role.GROUP), 0, 0)
        for column, label in enumerate((_("low"), _("likely"), _("high"), _("°C")), start=1):
            head = Text(label, Role.SMALL, "muted")
            head.setAlignment(RIGHT)
            self.addWidget(head, 0, column)

    def _add(self, row: int, name: QWidget) -> None:
        self.addWidget(name, row, 0)
        self.hours.append(tuple(Text("", role, tone) for role, tone in STYLES))
        for column, text in enumerate(self.hours[-1], start=1):
            self._put(text, row, column)

    def _put(self, text: Text, row: int, column: int) -> None:
        text.setAlignment(RIGHT)
        self.addWidget(text, row, column, Qt.AlignmentFlag.AlignTop)
