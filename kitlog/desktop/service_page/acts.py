"""What can be done on the page Service."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from kitlog.desktop.service_page.page import ServicePage


class ServiceActs:
    """The acts of a page Service."""

    def __init__(self, page: "ServicePage") -> None:
        self._page = page
        self._desk = page.desk

    def record_service(self) -> None:
        """Record that a service was done."""
        from kitlog.desktop.service_page.record_dialog import RecordDialog

        line = self._page.line()
        RecordDialog(self._desk, line.item.id if line else "", line.rule.id if line else "", self._page).exec()

    def show_history(self) -> None:
        """Show all that was ever done or happened to the item of the selected rule."""
        from kitlog.desktop.service_page.history_dialog import HistoryDialog

        line = self._page.line()
        if line is not None:
            HistoryDialog(self._desk, line.item, self._page).exec()

    def log_event(self) -> None:
        """Log what happened to an item."""
        from kitlog.desktop.service_page.event_dialog import EventDialog

        line = self._page.line()
        EventDialog(self._desk, line.item.id if line else "", self._page).exec()

    def print_book(self) -> None:
        """The service book of the item of the selected rule."""
        from kitlog.desktop.book_dialog import BookDialog

        line = self._page.line()
        BookDialog(self._desk, line.item.id if line else "", self._page).exec()

    def add_rule(self) -> None:
        """Offer starter rules, or make an own one."""
        from kitlog.desktop.service_page.starters_dialog import StartersDialog

        line = self._page.line()
        StartersDialog(self._desk, line.item if line else None, self._page).exec()

    def show_model_rules(self) -> None:
        """Show the rules by model."""
        from kitlog.desktop.service_page.model_rules_dialog import ModelRulesDialog

        ModelRulesDialog(self._desk, self._page).exec()

    def look_for_notices(self) -> None:
        """Enter that the maker's safety notices were looked for, for all of a model."""
        from kitlog.desktop.service_page.notices_dialog import NoticesDialog

        line = self._page.line()
        NoticesDialog(self._desk, line.item.id if line else "", self._page).exec()

    def show_stops(self) -> None:
        """Show what stands in the way on a day."""
        from kitlog.desktop.service_page.stops_dialog import StopsDialog

        StopsDialog(self._desk, self._page).exec()

    def run_season(self) -> None:
        """Go through everything that nobody has looked at since the last season."""
        from kitlog.desktop.service_page.season_dialog import SeasonDialog

        SeasonDialog(self._desk, self._page).exec()

    def show_storage(self) -> None:
        """Show what lies unused, and to which charge it is brought."""
        from kitlog.desktop.service_page.storage_dialog import StorageDialog

        StorageDialog(self._desk, self._page).exec()

    def write_calendar(self) -> None:
        """Write all that falls due into a calendar file, where the pilot says."""
        from kitlog.desktop.service_page.calendar_saving import ask_calendar, write_calendar

        to = ask_calendar(self._desk, self._page)
        said = write_calendar(self._desk, to) if to is not None else ""
        if said:
            self._page.say(said)

    def edit_rule(self) -> None:
        """Edit the selected rule."""
        from kitlog.desktop.service_page.rule_editor import RuleEditor

        line = self._page.line()
        if line is not None:
            RuleEditor(self._desk, line.item, line.rule, None, self._page).exec()

    def delete_rule(self) -> None:
        """Delete the selected rule; one with records is refused in words."""
        rule_id = self._page.rule_id()
        if rule_id:
            self._desk.perform(lambda: self._desk.bench.delete_rule(rule_id))
