"""Two dialogs made from the action table: all keys, and a search for a command."""

from collections.abc import Callable
from typing import ClassVar

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLineEdit, QListWidget, QListWidgetItem, QWidget

from kitlog.desktop import look
from kitlog.desktop.actions import ACTIONS, MENUS, Action
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.key_cap import KeyCap
from kitlog.desktop.parts.text import Text
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

NATIVE = QKeySequence.SequenceFormat.NativeText


def plain(text: str) -> str:
    """A menu text without its mark for the access key."""
    return text.replace("&", "")


class KeysDialog(Dialog):
    """Every action that has a key, by menu."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(_("Keys"), "", parent, wide=520)
        for menu_id, title in MENUS:
            keyed = [action for action in ACTIONS if action.menu == menu_id and action.keys]
            if keyed:
                self.body.addWidget(Text(plain(_(title)), Role.SECTION))
                self.body.addLayout(_grid(keyed))
        self.body.addStretch()


def _grid(actions: list[Action]) -> QGridLayout:
    grid = QGridLayout()
    grid.setColumnStretch(0, 1)
    grid.setVerticalSpacing(look.px(4))
    for row, action in enumerate(actions):
        grid.addWidget(Text(_(action.text).rstrip("…")), row, 0)
        caps = QHBoxLayout()
        caps.setSpacing(look.px(4))
        for part in action.keys[0].toString(NATIVE).split("+"):
            caps.addWidget(KeyCap(part))
        grid.addLayout(caps, row, 1, Qt.AlignmentFlag.AlignRight)
    return grid


class CommandSearch(Dialog):
    """Find a command by any part of its name and do it.

    Args:
        actions: the window's actions by id; only enabled ones are offered.
    """

    is_form: ClassVar[bool] = False

    def __init__(self, actions: dict[str, QAction], parent: QWidget) -> None:
        super().__init__(_("Find a command"), _("Do it"), parent, wide=520)
        self._actions = {key: made for key, made in actions.items() if made.isEnabled() and key != "help.search"}
        self.field = QLineEdit()
        self.field.setPlaceholderText(_("Part of its name"))
        self.field.setAccessibleName(_("Find a command"))
        self.found = QListWidget()
        self.found.setAccessibleName(_("Commands found"))
        self.found.setMinimumHeight(look.px(280))
        self.body.addWidget(self.field)
        self.body.addWidget(self.found)
        self.field.textChanged.connect(self._search)
        self.field.installEventFilter(self)
        self.found.itemActivated.connect(lambda _item: self.accept())
        self._search("")
        self.field.setFocus()

    def chosen(self) -> Callable[[], None] | None:
        """What to do, None if nothing was found."""
        if not self.found.count():
            return None
        return self._actions[self.found.currentItem().data(Qt.ItemDataRole.UserRole)].trigger

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Up and down in the field move through what was found."""
        if watched is self.field and isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            step = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}.get(Qt.Key(event.key()), 0)
            if step and self.found.count():
                self.found.setCurrentRow((self.found.currentRow() + step) % self.found.count())
                return True
        return super().eventFilter(watched, event)

    def _search(self, text: str) -> None:
        words = text.casefold().split()
        menus = {menu_id: plain(_(title)) for menu_id, title in MENUS}
        self.found.clear()
        for action in ACTIONS:
            name = f"{menus[action.menu]}: {_(action.text).rstrip('…')}"
            if action.id in self._actions and all(word in name.casefold() for word in words):
                item = QListWidgetItem(f"{name}    {_key_text(action)}".rstrip())
                item.setData(Qt.ItemDataRole.UserRole, action.id)
                self.found.addItem(item)
        self.found.setCurrentRow(0)
        self.main.setEnabled(self.found.count() > 0)


def _key_text(action: Action) -> str:
    return action.keys[0].toString(NATIVE) if action.keys else ""
