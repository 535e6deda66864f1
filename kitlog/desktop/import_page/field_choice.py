"""What a column stands for: a list of all fields in groups, found by typing any part of a word."""

from PySide6.QtCore import QObject, QPointF, QSignalBlocker, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter, QPaintEvent, QStandardItem, QStandardItemModel, QWheelEvent
from PySide6.QtWidgets import QComboBox, QCompleter, QLineEdit, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.fields import draw_chevron
from kitlog.paint.type_scale import Role
from kitlog.wording.import_words import FIELD_GROUPS, field_word
from kitlog.wording.translate import _

TARGET = Qt.ItemDataRole.UserRole
BARE = "QLineEdit { border: none; padding: 0; min-height: 0; max-height: 9999px; background: transparent; }"
"""The line inside of a field has no frame of its own."""


class FieldList(QStandardItemModel):
    """All fields under the heads of their groups, the first one being none; one list serves all choices."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.rows: dict[str, int] = {}
        self._add(field_word(""), "")
        for group, fields in FIELD_GROUPS:
            head = QStandardItem(_(group))
            head.setFlags(Qt.ItemFlag.NoItemFlags)
            head.setFont(look.font(Role.CHIP))
            self.appendRow(head)
            for target, _words in fields:
                self._add(field_word(target), target)

    def _add(self, words: str, target: str) -> None:
        item = QStandardItem(words)
        item.setData(target, TARGET)
        self.rows[target] = self.rowCount()
        self.appendRow(item)

    def target_of(self, words: str) -> str | None:
        """The field that these words stand for, None if it is none."""
        plain = _plain(words)
        return next((name for name in self.rows if field_word(name).casefold() == plain), None)

    def holding(self, part: str) -> list[str]:
        """The fields whose words hold this, in the order of the list; none for an empty text."""
        plain = _plain(part)
        return [name for name in self.rows if plain in field_word(name).casefold()] if plain else []


def _plain(words: str) -> str:
    return " ".join(words.split()).casefold()


class FieldChoice(QComboBox):
    """One of the fields.

    Attributes:
        picked: the pilot chose a field, by the name of its target.
    """

    picked = Signal(str)

    def __init__(self, fields: FieldList, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._fields = fields
        self._held = ""
        self.setFont(look.font(Role.BODY))
        self.setModel(fields)
        self.line = QLineEdit()
        self.line.setStyleSheet(BARE)
        self.setEditable(True)
        self.setLineEdit(self.line)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.setMaxVisibleItems(14)
        self.setAccessibleName(name)
        self._complete()
        self.activated.connect(self._chosen)
        self.line.editingFinished.connect(self._left)

    def hold(self, target: str) -> None:
        """Show a field; nobody is told."""
        self._held = target
        with QSignalBlocker(self):
            self.setCurrentIndex(self._fields.rows[target])
        self.line.setCursorPosition(0)

    @property
    def held(self) -> str:
        """The field that is chosen."""
        return self._held

    def sizeHint(self) -> QSize:
        """As wide as most words."""
        return QSize(look.px(236), look.px(32))

    def minimumSizeHint(self) -> QSize:
        """Narrower, its words are cut."""
        return QSize(look.px(160), look.px(32))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return takes the first field that is offered, and is not meant for the dialog."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            if (offered := self._words.popup()) is not None:
                offered.hide()  # Qt leaves it open where the key is taken here
            self._typed()
            event.accept()
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """What is typed replaces what stands there; a list that closes interrupts no typing."""
        super().focusInEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.line.selectAll()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel scrolls the page."""
        event.ignore()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the field and the sign that it opens."""
        super().paintEvent(event)
        with QPainter(self) as painter:
            draw_chevron(painter, QPointF(self.width() - look.px(16), self.height() / 2), look.tokens().ink)

    def _complete(self) -> None:
        words = QCompleter([field_word(target) for target in self._fields.rows], self)
        words.setFilterMode(Qt.MatchFlag.MatchContains)
        words.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        words.setCompletionMode(QCompleter.CompletionMode.PopupCompletion)
        words.activated.connect(lambda text: self._take(self._fields.target_of(str(text))))
        self.setCompleter(words)
        self._words = words

    def _chosen(self, row: int) -> None:
        self._take(self._fields.index(row, 0).data(TARGET))

    def _typed(self) -> None:
        """Take the field of these words, else the first one that holds them."""
        words = self.line.text()
        exact = self._fields.target_of(words)
        self._take(next(iter(self._fields.holding(words)), None) if exact is None else exact)

    def _left(self) -> None:
        """Take what can only be one field: whoever goes elsewhere has not chosen among several."""
        words = self.line.text()
        exact, holding = self._fields.target_of(words), self._fields.holding(words)
        self._take(holding[0] if exact is None and len(holding) == 1 else exact)

    def _take(self, target: str | None) -> None:
        """Tell of another field; what is none gives way to what was there."""
        changed = target is not None and target != self._held
        self.hold(self._held if target is None else target)
        if changed:
            self.picked.emit(self._held)
