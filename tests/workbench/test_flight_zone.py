"""Where a flight by hand takes the zone of its clocks from."""

from datetime import date

from kitlog.kit.flights import Flight
from kitlog.workbench.workbench import Workbench

LATE = date(2026, 5, 7)


def flight(name: str, site: str, zone: str) -> Flight:
    return Flight.model_validate({"id": name, "on": LATE, "airtime_min": 30, "site": site, "time_zone": zone})


def test_never_from_a_flight_elsewhere(bench: Workbench) -> None:
    bench.add_flight(flight("far", "Far Hill", "Pacific/Auckland"))
    assert bench.zone_on(date(2026, 5, 6)) == ""
    assert bench.zone_on(date(2026, 5, 6), "Near Hill") == ""
    assert bench.zone_on(date(2026, 5, 6), " far  HILL") == "Pacific/Auckland"


def test_the_outing_of_the_day_comes_before_the_site(bench: Workbench) -> None:
    bench.add_flight(flight("far", "Far Hill", "Pacific/Auckland"))
    outing = next(one for one in bench.outings() if one.time_zone)
    assert bench.zone_on(outing.first_day, "Far Hill") == outing.time_zone
    assert bench.zone_on(date(2026, 5, 6), outing.site.name) == outing.time_zone
