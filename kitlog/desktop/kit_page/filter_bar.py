"""The filters above the kit table: words, kind, zone, what is looked for; and the main act of the page."""

from collections.abc import Iterable
from datetime import date

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.kit_page.filtering import Haystack, KitFilter, Show
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.chip import FilterChip
from kitlog.desktop.parts.fields import ChoiceField, LineField
from kitlog.desktop.parts.text import Text
from kitlog.desktop.words import near_text
from kitlog.kit.kinds import Kind, Zone
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import kg_text
from kitlog.wording.translate import N_, _, ngettext
from kitlog.wording.words import first_upper, word
from kitlog.workbench.reads import KitRow

SHOW_WORDS = {
    Show.GUESSED: N_("Guessed masses"),
    Show.DUE: N_("Due soon or overdue"),
    Show.NO_RECORD: N_("No record"),
    Show.GONE: N_("Retired or lost"),
}


class FilterWords(LineField):
    """The words to filter by.

    Attributes:
        lines_pasted: several lines were to be pasted here: they are a table, and no words to filter by.
    """

    lines_pasted = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A table is not cut down to one line."""
        pastes = event.matches(QKeySequence.StandardKey.Paste)
        if pastes and len(QGuiApplication.clipboard().text().strip().splitlines()) > 1:
            self.lines_pasted.emit()
        else:
            super().keyPressEvent(event)


class FilterBar(QWidget):
    """The filters.

    Attributes:
        changed: other rows are wanted.
    """

    changed = Signal()

    def __init__(self, library: Library, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._library = library
        self.words = FilterWords(hint=_("Filter by any word"))
        self.words.setAccessibleName(_("Filter by any word"))
        self.words.setClearButtonEnabled(True)
        self.kind = ChoiceField([(None, _("All kinds"))])
        self.kind.setAccessibleName(_("Kind"))
        self.zone = ChoiceField([(None, _("All zones")), *((zone, first_upper(word(zone.value))) for zone in Zone)])
        self.zone.setAccessibleName(_("Zone"))
        self.add = Button(_("Add item"), Rank.MAIN)
        self.chips = {show: FilterChip(_(words)) for show, words in SHOW_WORDS.items()}
        self._assemble()
        self.words.textChanged.connect(lambda _text: self.changed.emit())
        for choice in (self.kind, self.zone):
            choice.currentIndexChanged.connect(lambda _index: self.changed.emit())
        for chip in self.chips.values():
            chip.toggled.connect(lambda _on: self.changed.emit())

    def wanted(self) -> KitFilter:
        """The filter as it stands."""
        kind, zone = self.kind.chosen(), self.zone.chosen()
        return KitFilter(
            words=self.words.text(),
            kind=kind if isinstance(kind, Kind) else None,
            zone=zone if isinstance(zone, Zone) else None,
            shows=frozenset(show for show, chip in self.chips.items() if chip.isChecked()),
        )

    def clear(self) -> None:
        """Show everything again."""
        with QSignalBlocker(self):
            self.words.clear()
            self.kind.setCurrentIndex(0)
            self.zone.setCurrentIndex(0)
            for chip in self.chips.values():
                chip.setChecked(False)  # Qt's name says it
        self.changed.emit()

    def know(self, haystack: Haystack) -> None:
        """Offer the kinds there are, and say how many rows each filter would leave."""
        names = sorted((first_upper(word(self._library.facts(kind).label)), kind) for kind in haystack.kinds)
        self.kind.offer([(None, _("All kinds")), *((kind, name) for name, kind in names)])
        for show, chip in self.chips.items():
            chip.count(haystack.count(show))

    def _assemble(self) -> None:
        px = look.px
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, px(10), 0)
        rows.setSpacing(px(8))
        first = QHBoxLayout()
        first.setSpacing(px(8))
        self.words.setMinimumWidth(px(96))
        self.words.setMaximumWidth(px(272))
        for choice in (self.kind, self.zone):
            choice.setMinimumWidth(px(118))
            choice.setMaximumWidth(px(136))
        first.addWidget(self.words, 3)
        first.addWidget(self.kind, 2)
        first.addWidget(self.zone, 2)
        first.addStretch(1)
        first.addWidget(self.add)
        second = QHBoxLayout()
        second.setSpacing(px(8))
        second.addSpacing(px(8))
        second.addWidget(Text(_("Show only"), Role.SMALL, "muted"))
        for chip in self.chips.values():
            second.addWidget(chip)
        second.addStretch()
        rows.addLayout(first)
        rows.addLayout(second)


def totals_text(rows: Iterable[KitRow]) -> tuple[str, str]:
    """What is shown taken together: number and mass, and how sure the mass is."""
    items = [row.item for row in rows]
    known = sum(item.all_mass_g or 0 for item in items)
    unknown = sum(item.mass_g is None for item in items)
    head = ngettext("{n} item, {mass}", "{n} items, {mass}", len(items)).format(n=len(items), mass=kg_text(known))
    makers = sum(item.mass_g is not None and item.mass_source == "maker's figure" for item in items)
    guesses = sum(item.mass_g is not None and item.mass_source == "guess" for item in items)
    parts = [
        ngettext("{n} maker’s figure", "{n} maker’s figures", makers).format(n=makers) if makers else "",
        ngettext("{n} guess", "{n} guesses", guesses).format(n=guesses) if guesses else "",
        ngettext("{n} mass not known", "{n} masses not known", unknown).format(n=unknown) if unknown else "",
    ]
    return head, ", ".join(part for part in parts if part)


def list_text(assessment: Assessment | None, today: date) -> str:
    """How much of the kit is on the list of the outing being worked on."""
    if assessment is None or not assessment.lines:
        return ""
    lines = [line for line in assessment.lines if not line.in_car]
    mass = kg_text(sum(line.mass_g or 0 for line in lines))
    near = near_text(assessment.outing.first_day, assessment.outing.last_day, today)
    return _("{n} on the list ({near}), {mass}").format(n=len(lines), near=near, mass=mass)
