"""What can be done on the page Flights."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from kitlog.desktop.flights_page.page import FlightsPage


class FlightActs:
    """The acts of a page Flights."""

    def __init__(self, page: "FlightsPage") -> None:
        self._page = page
        self._desk = page.desk

    def add_flight(self) -> None:
        """Add a flight by hand."""
        from kitlog.desktop.flights_page.flight_editor import FlightEditor

        editor = FlightEditor(self._desk, None, self._page)
        if editor.exec():
            self._page.show_this(editor.flight_id)

    def edit_flight(self) -> None:
        """Edit the selected flight."""
        from kitlog.desktop.flights_page.flight_editor import FlightEditor

        flight = self._page.flight()
        if flight is not None:
            FlightEditor(self._desk, flight, self._page).exec()

    def delete_flight(self) -> None:
        """Take the selected flight out of the log; undo brings it back."""
        flight_id = self._page.flight_id()
        if flight_id:
            self._desk.perform(lambda: self._desk.bench.delete_flight(flight_id))
