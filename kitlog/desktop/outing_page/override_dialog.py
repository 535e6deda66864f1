"""Closing a stop with a written reason; it stays on record and on the sheet."""

from PySide6.QtWidgets import QWidget

from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.note_field import NoteField
from kitlog.desktop.parts.text import Paragraph
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _


class OverrideDialog(Dialog):
    """Asks why a stop does not keep the pilot at home.

    Args:
        desk: where it is written.
        outing_id: the outing.
        key: of the finding.
        title, sentence: the stop in words.
        place: "1 of 2", where several are asked one after the other.
    """

    def __init__(
        self, desk: Desk, outing_id: str, key: str, title: str, sentence: str, parent: QWidget, place: str = ""
    ) -> None:
        head = _("Reason for: {title}").format(title=title)
        super().__init__(f"{head} ({place})" if place else head, _("Keep the reason"), parent, wide=480)
        self._desk, self._outing_id, self._key = desk, outing_id, key
        self.body.addWidget(Paragraph(sentence, Role.BODY, "stop"))
        self.reason_field = NoteField(88)
        self.reason_field.setAccessibleName(_("Reason"))
        self.body.addWidget(self.reason_field)
        said = _("The stop stays a stop. Your reason stays on record, stands at its line and on the sheet.")
        self.body.addWidget(Paragraph(said, Role.SMALL))
        self.reason_field.textChanged.connect(self._look)
        self._look()
        self.reason_field.setFocus()

    def accept(self) -> None:
        """Write the reason."""
        if self.attempt(self._save):
            super().accept()

    def _save(self) -> None:
        self._desk.bench.override(self._outing_id, self._key, self.reason_field.toPlainText())

    def _look(self) -> None:
        self.want("" if self.reason_field.toPlainText().strip() else _("It needs a reason."))
