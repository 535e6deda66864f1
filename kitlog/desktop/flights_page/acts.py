"""What can be done on the page Flights."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from kitlog.desktop.flights_page.page import FlightsPage


class FlightActs:
    """The acts of a page Flights."""

    def __init__(self, page: "FlightsPage") -> None:
        self._page = page
        self._desk = page.desk

    def read_recordings(self) -> None:
        """Choose recordings and read them."""
        from kitlog.desktop.flights_page.recordings_input import chosen_files

        self.read(chosen_files(self._page))

    def read_folder(self) -> None:
        """Choose a folder and read the recordings in it."""
        from kitlog.desktop.flights_page.recordings_input import chosen_folder

        self.read(chosen_folder(self._page))

    def read(self, paths: Sequence[Path]) -> None:
        """Read recordings and ask what of it was flown; the last of them is selected afterwards."""
        from kitlog.desktop.flights_page.recordings_dialog import RecordingsDialog

        if not paths or self._desk.writes:
            return
        dialog = RecordingsDialog(self._desk, paths, self._page)
        if dialog.exec() and dialog.written:
            self._page.show_this(max(dialog.written, key=lambda flight: (flight.on, str(flight.takeoff_at))).id)

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
