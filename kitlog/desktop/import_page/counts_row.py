"""What an import brings in figures: new, changed, in the kit already, as they were, skipped, doubtful, written."""

from PySide6.QtWidgets import QHBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.text import Text
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import number_text
from kitlog.wording.import_words import count_words
from kitlog.workbench.kit_preview import KitPreview

ALWAYS = frozenset({"new", "written"})
"""Shown also where there are none."""


def counts_of(preview: KitPreview) -> dict[str, int]:
    """The figures of a preview by their words; what becomes of rows that meet the kit is not told before it is said."""
    changed = () if preview.undecided else preview.changed
    return {
        "new": len(preview.new),
        "changed": len(changed),
        "met": len(preview.met) if preview.undecided else 0,
        "unchanged": 0 if preview.undecided else preview.unchanged,
        "skipped": preview.skipped,
        "doubtful": len(preview.doubts) + len(preview.problems),
        "empty": len(preview.emptied) + len(preview.dropped),
        "rules": len(preview.rules),
        "records": len(preview.records),
        "written": len(preview.new) + len(changed) + len(preview.rules) + len(preview.records),
    }


class CountsRow(QWidget):
    """The figures in one row, each with its word behind it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.px(5))
        self._pairs: dict[str, tuple[Text, Text]] = {}
        for name, words in count_words().items():
            if name == "written":
                row.addStretch()
            figure, label = Text("", Role.SECTION), Text(words, Role.SECOND, "muted")
            label.setContentsMargins(0, 0, 0 if name == "written" else look.px(14), 0)
            row.addWidget(figure)
            row.addWidget(label)
            self._pairs[name] = (figure, label)
        self.show_preview(None)

    def show_preview(self, preview: KitPreview | None) -> None:
        """Show the figures; none of a table that is still being read."""
        counts = counts_of(preview) if preview else {}
        for name, (figure, label) in self._pairs.items():
            n = counts.get(name, 0)
            figure.say(number_text(n), "look" if name == "doubtful" else "ink")
            for text in (figure, label):
                text.setVisible(bool(n) or (name in ALWAYS and preview is not None))
        self.setAccessibleName(self.said())

    def said(self) -> str:
        """The figures as one sentence."""
        shown = [f"{figure.text()} {label.text()}" for figure, label in self._pairs.values() if not figure.isHidden()]
        return ", ".join(shown)
