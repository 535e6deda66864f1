"""The actions of one window as Qt has them, made from the table."""

from collections.abc import Callable
from itertools import groupby

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QActionGroup
from PySide6.QtWidgets import QMenuBar, QWidget

from kitlog.desktop.actions import ACTIONS, MENUS, Action
from kitlog.desktop.rules import RULES, Standing
from kitlog.wording.translate import _


class ActionSet:
    """All actions of a window.

    Args:
        owner: the window they belong to.
        do: does the action that was triggered.
    """

    def __init__(self, owner: QWidget, do: Callable[[Action], None]) -> None:
        self._owner = owner
        self._do = do
        self._choices: dict[str, QActionGroup] = {}
        self.by_id = {action.id: self._made(action) for action in ACTIONS}

    def fill(self, bar: QMenuBar) -> None:
        """Build the menus."""
        for menu_id, title in MENUS:
            menu = bar.addMenu(_(title))
            menu.setObjectName(menu_id)
            mine = sorted((a for a in ACTIONS if a.menu == menu_id), key=lambda a: a.group)
            for number, (_group, actions) in enumerate(groupby(mine, key=lambda a: a.group)):
                if number:
                    menu.addSeparator()
                menu.addActions([self.by_id[action.id] for action in actions])

    def look_again(self, standing: Standing) -> None:
        """Enable what can be done now."""
        for action in ACTIONS:
            self.by_id[action.id].setEnabled(RULES[action.needs](standing))

    def choose(self, action_id: str) -> None:
        """Mark one answer of a choice."""
        self.by_id[action_id].setChecked(True)

    def _made(self, action: Action) -> QAction:
        made = QAction(_(action.text), self._owner)
        made.setObjectName(action.id)
        made.setShortcuts(list(action.keys))
        if action.in_list:
            made.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        else:
            self._owner.addAction(made)
        if action.choice:
            made.setCheckable(True)
            self._group(action.choice).addAction(made)
        made.triggered.connect(lambda _on=False, done=action: self._do(done))
        return made

    def _group(self, choice: str) -> QActionGroup:
        if choice not in self._choices:
            self._choices[choice] = QActionGroup(self._owner)
        return self._choices[choice]
