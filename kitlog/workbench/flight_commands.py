"""What can be done to the log by hand."""

from datetime import date

from kitlog.fault import InputFault
from kitlog.kit.flight_questions import questions
from kitlog.kit.flights import Flight
from kitlog.kit.kinds import Kind
from kitlog.workbench.kit_commands import KitCommands


def _alike(one: str, other: str) -> bool:
    """Whether two sites are called alike, whatever blanks and capitals are typed."""
    return " ".join(one.split()).casefold() == " ".join(other.split()).casefold()


class FlightCommands(KitCommands):
    """Writes to the log; each is one transaction and one undo step."""

    def add_flight(self, flight: Flight, *, sure: bool = False) -> str:
        """Add a flight to the log.

        Args:
            flight: the flight.
            sure: the pilot has been asked about what is unlikely, and said that it is so.

        Raises:
            InputFault: ``flight.in_future`` with ``day``; ``item.unknown``; ``flight.flown_and_carried`` with ``name``;
                what is asked about (unless `sure`), see `kitlog.kit.flight_questions`.
        """
        self._refuse_unlikely(flight, sure=sure)
        self._write("flight.add", lambda w: w.put(flight), {"day": flight.on})
        return flight.id

    def edit_flight(self, flight: Flight, *, sure: bool = False) -> None:
        """Change a flight of the log; what was unlikely before the change is not asked about again.

        Raises:
            InputFault: ``flight.unknown``; else as `add_flight`.
        """
        self._refuse_unlikely(flight, self._logged(flight.id), sure=sure)
        self._write("flight.edit", lambda w: w.put(flight), {"day": flight.on})

    def delete_flight(self, flight_id: str) -> None:
        """Take a flight out of the log."""
        flight = self._logged(flight_id)
        self._write("flight.delete", lambda w: w.remove(Flight, flight_id, now=self.now()), {"day": flight.on})

    def usual_set(self) -> tuple[str, ...]:
        """What was flown last: proposed for the next flight, never booked by itself."""
        last = max(self.flights(), key=lambda flight: flight.last_day, default=None)
        return last.flown if last else ()

    def zone_on(self, day: date, site: str = "") -> str:
        """Time zone of the flights of a day: of its outing, else of the site where a flight or an outing tells it.

        Empty where nothing tells it: then the clock of this computer counts, never the place of another flight.
        """
        outings = [one for one in self.outings() if one.time_zone]
        of_day = next((one.time_zone for one in outings if one.first_day <= day <= one.last_day), None)
        if of_day:
            return of_day
        flown = sorted(self.flights(), key=lambda flight: flight.on, reverse=True)
        told = [*((one.site, one.time_zone) for one in flown), *((one.site.name, one.time_zone) for one in outings)]
        return next((zone for name, zone in told if zone and name and _alike(name, site)), "")

    def _logged(self, flight_id: str) -> Flight:
        flight = next((f for f in self.flights() if f.id == flight_id), None)
        if flight is None:
            raise InputFault("flight.unknown", name=flight_id)
        return flight

    def _refuse_unlikely(self, flight: Flight, before: Flight | None = None, *, sure: bool) -> None:
        if flight.last_day > self.now().date():
            raise InputFault("flight.in_future", day=flight.last_day)
        self._refuse_both(flight)
        log, wings = self.flights(), self._wings()
        known = () if before is None or sure else tuple(questions(before, log, wings))
        for asked in () if sure else questions(flight, log, wings):
            if asked not in known:
                raise InputFault(asked.code, **asked.facts)

    def _refuse_both(self, flight: Flight) -> None:
        """Refuse items that are not there, and what was both flown and carried."""
        for item_id in (*flight.flown, *flight.carried):
            item = self._known(item_id)
            if item_id in flight.flown and item_id in flight.carried:
                raise InputFault("flight.flown_and_carried", name=item.name)

    def _wings(self) -> frozenset[str]:
        return frozenset(item.id for item in self.items() if item.kind is Kind.WING)
