"""Every action of the window as data: menus, keys page and command search are built from this one table."""

from dataclasses import dataclass

from PySide6.QtGui import QKeySequence

from kitlog.wording.translate import N_

StandardKey = QKeySequence.StandardKey
Keys = QKeySequence.StandardKey | str | None

MENUS = (
    ("file", N_("&File")),
    ("edit", N_("&Edit")),
    ("kit", N_("&Kit")),
    ("outing", N_("&Outing")),
    ("repack", N_("&Repack")),
    ("view", N_("&View")),
    ("help", N_("&Help")),
)
"""Id and title of each menu, in the order of the menu bar."""


@dataclass(frozen=True, slots=True)
class Action:
    """One thing that can be done.

    Attributes:
        id: stable name, ``item.add``.
        text: what it is called in the menu; an ellipsis says that it asks something first.
        menu: id of its menu.
        handler: ``method`` of the window, or ``page.method`` of a page, which is shown first.
        shortcut: the platform's own key where there is one, else written out.
        needs: name of the rule of `kitlog.desktop.rules` that must hold; empty = always possible.
        group: actions of one menu stand together by group, with a line between groups.
        choice: name of the exclusive choice that it is one answer of (``scheme``); it is then shown with a mark.
        in_list: the key works in the list of the page alone, because it is a bare letter or Space.
    """

    id: str
    text: str
    menu: str
    handler: str
    shortcut: Keys = None
    needs: str = ""
    group: int = 0
    choice: str = ""
    in_list: bool = False

    @property
    def keys(self) -> tuple[QKeySequence, ...]:
        """The key sequences on this platform."""
        if self.shortcut is None:
            return ()
        if isinstance(self.shortcut, str):
            return (QKeySequence(self.shortcut),)
        bound = QKeySequence.keyBindings(self.shortcut)
        return tuple(key for key in bound if "Alt" not in key.toString() or "+" not in key.toString())


_FILE = (
    Action("kit.import", N_("Read a table…"), "file", "kit.import_table", "Ctrl+I"),
    Action("kit.export", N_("Export items to CSV…"), "file", "kit.export_csv", "Ctrl+Shift+E", "items"),
    Action("kit.inventory", N_("Inventory for an insurer…"), "file", "kit.print_inventory", None, "items"),
    Action("file.backup", N_("Back up the data file…"), "file", "back_up", None, group=1),
    Action("file.demo", N_("Open the demo kit"), "file", "open_demo", None, "demo", 1),
    Action("file.quit", N_("Quit"), "file", "quit", StandardKey.Quit, group=2),
)

_EDIT = (
    Action("edit.undo", N_("Undo"), "edit", "undo", StandardKey.Undo, "undoable"),
    Action("edit.redo", N_("Redo"), "edit", "redo", StandardKey.Redo, "redoable"),
    Action("kit.paste", N_("Paste a table"), "edit", "kit.paste_table", StandardKey.Paste, group=1),
    Action("edit.find", N_("Find"), "edit", "kit.find", StandardKey.Find, group=1),
    Action("edit.select_all", N_("Select all items"), "edit", "kit.select_all", StandardKey.SelectAll, "items", 1),
    Action("edit.pilot", N_("Pilot and body mass…"), "edit", "edit_pilot", "Ctrl+Shift+B", group=2),
)

_KIT = (
    Action("item.add", N_("Add item…"), "kit", "kit.add_item", StandardKey.New),
    Action("item.edit", N_("Edit item…"), "kit", "kit.edit_item", "Ctrl+E", "one item"),
    Action("item.duplicate", N_("Duplicate item"), "kit", "kit.duplicate_item", "Ctrl+D", "one item"),
    Action("item.bulk", N_("Set state and zone…"), "kit", "kit.bulk_edit", "Ctrl+B", "some items"),
    Action("item.retire", N_("Retire"), "kit", "kit.retire_items", "Ctrl+Shift+R", "some items"),
    Action("item.delete", N_("Delete item"), "kit", "kit.delete_items", "Ctrl+Del", "some items"),
    Action("filter.guessed", N_("Show only guessed masses"), "kit", "kit.show_guessed", None, "items", 1),
    Action("filter.due", N_("Show only due soon or overdue"), "kit", "kit.show_due", None, "items", 1),
    Action("filter.no_record", N_("Show only no record"), "kit", "kit.show_no_record", None, "items", 1),
    Action("filter.clear", N_("Clear filter"), "kit", "kit.clear_filter", "Ctrl+Shift+F", "items", 1),
    Action("service.record", N_("Record a service…"), "kit", "service.record_service", "Ctrl+R", "rules", 2),
    Action("service.stops", N_("What stops me?"), "kit", "service.show_stops", "Ctrl+Shift+T", "items", 2),
    Action("service.season", N_("Before the season…"), "kit", "service.run_season", "Ctrl+Shift+S", "items", 2),
    Action(
        "service.record_now",
        N_("Record the selected service…"),
        "kit",
        "service.record_service",
        "R",
        "one rule",
        2,
        in_list=True,
    ),
    Action("service.history", N_("History of the item…"), "kit", "service.show_history", "Ctrl+H", "one rule", 2),
    Action("service.book", N_("Service book as PDF…"), "kit", "service.print_book", StandardKey.Print, "items", 2),
    Action("service.storage", N_("Storage charge…"), "kit", "service.show_storage", None, "items", 2),
    Action("service.event", N_("Log an event…"), "kit", "service.log_event", "Ctrl+Shift+L", "items", 2),
    Action("service.calendar", N_("Calendar file…"), "kit", "service.write_calendar", None, "rules", 2),
    Action("service.rule", N_("Add a service rule…"), "kit", "service.add_rule", "Ctrl+Shift+A", "items", 2),
    Action("service.edit_rule", N_("Edit service rule…"), "kit", "service.edit_rule", None, "one rule", 2),
    Action("service.model_rules", N_("Rules by model…"), "kit", "service.show_model_rules", None, "items", 2),
    Action("service.notices", N_("Maker’s safety notices…"), "kit", "service.look_for_notices", None, "items", 2),
    Action("service.delete_rule", N_("Delete service rule"), "kit", "service.delete_rule", None, "one rule", 2),
)

_OUTING = (
    Action("outing.new", N_("New outing…"), "outing", "outing.new_outing", "Ctrl+Shift+N"),
    Action("outing.edit", N_("Edit plan…"), "outing", "outing.edit_plan", "Ctrl+Shift+P", "outing"),
    Action("outing.power_plan", N_("Power plan…"), "outing", "outing.edit_power", "Ctrl+Shift+D", "outing"),
    Action("outing.other", N_("Other outing…"), "outing", "choose_outing", "Ctrl+Shift+O", "outings"),
    Action("outing.delete", N_("Delete outing"), "outing", "outing.delete_outing", None, "outing"),
    Action(
        "outing.answer", N_("Answer the open questions…"), "outing", "outing.answer_first", "Ctrl+Shift+Q", "outing", 1
    ),
    Action("outing.findings", N_("Show the findings"), "outing", "outing.show_findings", "Ctrl+Shift+W", "outing", 1),
    Action("outing.kit", N_("Show the kit of the outing"), "outing", "outing.show_kit", None, "outing", 1),
    Action("outing.power", N_("Show power"), "outing", "outing.show_power", None, "outing", 1),
    Action("outing.weight", N_("Show weight"), "outing", "outing.show_weight", None, "outing", 1),
    Action("outing.people", N_("Show people"), "outing", "outing.show_people", None, "outing", 1),
    Action("flight.read", N_("Read recordings…"), "outing", "flights.read_recordings", "Ctrl+Shift+I", group=2),
    Action("flight.read_folder", N_("Read a folder of recordings…"), "outing", "flights.read_folder", None, group=2),
    Action("flight.add", N_("Add flight…"), "outing", "flights.add_flight", "Ctrl+Shift+G", group=2),
    Action("flight.edit", N_("Edit flight…"), "outing", "flights.edit_flight", None, "one flight", 2),
    Action("flight.delete", N_("Delete flight"), "outing", "flights.delete_flight", None, "one flight", 2),
)

_REPACK = (
    Action("repack.tick", N_("Tick"), "repack", "repack.tick", "Space", "repack line", in_list=True),
    Action("repack.missing", N_("Missing"), "repack", "repack.mark_missing", "M", "repack line", in_list=True),
    Action("repack.swap", N_("Swap…"), "repack", "repack.swap", "S", "repack line", in_list=True),
    Action("repack.next", N_("Next step"), "repack", "repack.next_step", "Ctrl+PgDown", "outing", 1),
    Action("repack.previous", N_("Step before"), "repack", "repack.previous_step", "Ctrl+PgUp", "outing", 1),
    Action("repack.drawing", N_("Show where it rides"), "repack", "repack.show_drawing", None, "outing", 1),
    Action("repack.close", N_("Close repack…"), "repack", "repack.close_repack", "Ctrl+Return", "outing", 2),
    Action("repack.reopen", N_("Open the repack again"), "repack", "repack.open_again", None, "outing", 2),
    Action("repack.evening", N_("Evening of charging…"), "repack", "repack.edit_evening", None, "outing", 3),
    Action("repack.on_hand", N_("Charge on hand"), "repack", "repack.enter_on_hand", None, "outing", 3),
    Action(
        "repack.swollen",
        N_("Battery swollen, or not after all"),
        "repack",
        "repack.mark_swollen",
        None,
        "repack line",
        3,
    ),
    Action(
        "repack.start", N_("Start with the planned charges"), "repack", "repack.start_as_planned", None, "outing", 3
    ),
    Action("repack.sheet", N_("Save the sheet…"), "repack", "repack.save_sheet", None, "outing", 4),
    Action("repack.sheet_pdf", N_("Save the sheet as PDF…"), "repack", "repack.save_sheet_pdf", None, "outing", 4),
)

_VIEW = (
    Action("view.kit", N_("Kit"), "view", "show_kit", "Ctrl+1", choice="page"),
    Action("view.service", N_("Service"), "view", "show_service", "Ctrl+2", choice="page"),
    Action("view.outing", N_("Outing"), "view", "show_outing", "Ctrl+3", choice="page"),
    Action("view.repack", N_("Repack"), "view", "show_repack", "Ctrl+4", choice="page"),
    Action("view.flights", N_("Flights"), "view", "show_flights", "Ctrl+5", choice="page"),
    Action("view.light", N_("Light"), "view", "choose_light", None, group=1, choice="scheme"),
    Action("view.dark", N_("Dark"), "view", "choose_dark", None, group=1, choice="scheme"),
    Action("view.system", N_("As the system"), "view", "choose_system", None, group=1, choice="scheme"),
)

_HELP = (
    Action("help.search", N_("Find a command…"), "help", "find_command", "Ctrl+K"),
    Action("help.keys", N_("Keys"), "help", "show_keys", StandardKey.HelpContents),
    Action("help.about", N_("About kitlog"), "help", "show_about", None, group=1),
)

ACTIONS: tuple[Action, ...] = (*_FILE, *_EDIT, *_KIT, *_OUTING, *_REPACK, *_VIEW, *_HELP)
"""The table."""
