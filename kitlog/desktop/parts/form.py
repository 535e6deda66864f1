"""A form: labels and fields in two columns; each field is named by its label for screen readers."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.paint.type_scale import Role


class Form(QWidget):
    """Rows of label and field."""

    def __init__(self, label_px: int = 136, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(look.px(12))
        self._grid.setVerticalSpacing(look.px(8))
        self._grid.setColumnMinimumWidth(0, look.px(label_px))
        self._grid.setColumnStretch(1, 1)
        self._row = 0
        self.fields: dict[str, QWidget] = {}

    def add(self, label: str, field: QWidget, *more: QWidget, name: str = "") -> QLabel:
        """A row; further fields stand beside the first and keep their own names."""
        text = Text(label, Role.SECOND, "muted")
        text.setBuddy(field)
        if not field.accessibleName():
            field.setAccessibleName(label)
        self._grid.addWidget(text, self._row, 0, Qt.AlignmentFlag.AlignVCenter)
        if more:
            row = QHBoxLayout()
            row.setSpacing(look.px(8))
            for widget in (field, *more):
                row.addWidget(widget)
            row.addStretch()
            self._grid.addLayout(row, self._row, 1)
        else:
            self._grid.addWidget(field, self._row, 1)
        if name:
            self.fields[name] = field
        self._row += 1
        return text

    def add_wide(self, widget: QWidget) -> None:
        """A row of one widget over both columns."""
        self._grid.addWidget(widget, self._row, 0, 1, 2)
        self._row += 1

    def add_note(self, text: str = "", tone: str = "muted") -> Paragraph:
        """A remark under the field above, beside its column."""
        note = Paragraph(text, Role.SMALL, tone)
        note.setVisible(bool(text))
        self._grid.addWidget(note, self._row, 1)
        self._row += 1
        return note
