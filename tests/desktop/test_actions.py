from collections import Counter
from collections.abc import Callable

import pytest
from PySide6.QtGui import QAction, QKeySequence

from kitlog.desktop.actions import ACTIONS, MENUS, Action
from kitlog.desktop.keys_dialog import CommandSearch, KeysDialog
from kitlog.desktop.page import PAGES
from kitlog.desktop.page_list import page_class
from kitlog.desktop.rules import RULES, Standing
from kitlog.desktop.window import Window
from kitlog.desktop.window_acts import WindowActs
from kitlog.workbench.workbench import Workbench


def test_ids_are_unique() -> None:
    assert [i for i, n in Counter(action.id for action in ACTIONS).items() if n > 1] == []


def test_shortcuts_are_unique(styled) -> None:
    keys = Counter(key.toString() for action in ACTIONS for key in action.keys)
    assert [key for key, n in keys.items() if n > 1] == []


def test_no_shortcut_takes_an_access_key(styled) -> None:
    assert [a.id for a in ACTIONS if any(k.toString().startswith("Alt+") for k in a.keys)] == []


@pytest.mark.parametrize("action", ACTIONS, ids=lambda action: action.id)
def test_every_handler_exists(action: Action) -> None:
    page, _dot, method = action.handler.rpartition(".")
    owner = page_class(page).acts_class if page else WindowActs
    assert callable(getattr(owner, method))


def test_every_rule_and_menu_is_known() -> None:
    assert {action.needs for action in ACTIONS} <= set(RULES)
    assert {action.menu for action in ACTIONS} <= {menu for menu, _title in MENUS}


def test_bare_keys_work_in_lists_alone(styled) -> None:
    bare = {a.id for a in ACTIONS if isinstance(a.shortcut, str) and "+" not in a.shortcut}
    assert sorted(bare) == sorted(a.id for a in ACTIONS if a.in_list)


def test_nothing_that_needs_something_is_possible_with_nothing() -> None:
    possible = {action.id for action in ACTIONS if RULES[action.needs](Standing())}
    assert "item.edit" not in possible
    assert "edit.undo" not in possible
    assert "item.add" in possible


def test_every_action_is_in_the_menu_bar(window: Window) -> None:
    shown = {action.objectName() for menu in window.menuBar().actions() for action in menu.menu().actions()}
    assert {action.id for action in ACTIONS} <= shown


def test_the_menus_are_those_of_the_table(window: Window) -> None:
    assert [action.text() for action in window.menuBar().actions()] == [title for _menu, title in MENUS]


def test_keys_dialog_names_every_action_with_a_key(window: Window, qtbot) -> None:
    from kitlog.desktop.parts.text import Text

    dialog = KeysDialog(window)
    qtbot.addWidget(dialog)
    words = {label.text() for label in dialog.findChildren(Text)}
    assert {action.text.rstrip("…") for action in ACTIONS if action.keys} <= words


def test_command_search_finds_by_parts_and_does_it(window: Window, qtbot) -> None:
    search = CommandSearch(window.action_set.by_id, window)
    qtbot.addWidget(search)
    qtbot.keyClicks(search.field, "dark")
    assert search.found.count() == 1
    do = search.chosen()
    assert do is not None
    do()
    assert window.memory.scheme() == "dark"
    window.acts.choose_light()


def test_command_search_offers_only_what_is_possible(
    show: Callable[..., Window], empty_bench: Workbench, qtbot
) -> None:
    window = show(empty_bench)
    search = CommandSearch(window.action_set.by_id, window)
    qtbot.addWidget(search)
    qtbot.keyClicks(search.field, "edit item")
    assert search.found.count() == 0
    assert search.chosen() is None


def test_standard_keys_are_the_platforms(window: Window) -> None:
    undo: QAction = window.action_set.by_id["edit.undo"]
    assert undo.shortcut() in QKeySequence.keyBindings(QKeySequence.StandardKey.Undo)


def test_pages_have_an_action_each() -> None:
    assert {f"view.{page}" for page in PAGES} <= {action.id for action in ACTIONS}
