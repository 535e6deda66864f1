"""The worked season lived through from an empty data file: recordings read, a larch logged and answered, states asked.

Source: the tables of flights, service records and due states of the worked example, summed by hand from their dates and
minutes; time zones and the change of clocks on 2026-03-29 from the IANA time zone database. The intervals are makers' or
common practice, as the starter rules name them.
"""

from collections.abc import Iterator
from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from recordings import Day, flight, utc
from scenario import LIBRARY, numbered

from kitlog.kit.due import Due, DueState
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.service import Grounds, ServiceRecord, ServiceRule
from kitlog.store.data_file import DataFile
from kitlog.workbench.flight_import import Confirmed, read_flights
from kitlog.workbench.workbench import Workbench

TONIGHT, O1, O2, O3 = date(2026, 5, 8), date(2026, 5, 9), date(2026, 6, 20), date(2026, 9, 5)
SETS = {
    "A": ("Wing A", "Harness A", "Reserve A", "Carabiners A", "Speed bar A", "Helmet A"),
    "B": ("Wing B", "Harness B", "Reserve B", "Carabiners B", "Helmet B"),
}
KIT = {
    "Wing A": {"kind": "wing", "opening_h": 112},
    "Wing B": {"kind": "wing", "opening_h": 0},
    "Harness A": {"kind": "harness"},
    "Harness B": {"kind": "harness"},
    "Reserve A": {"kind": "reserve", "made_on": "2018-06-01", "fitted_to": "Harness A"},
    "Reserve B": {"kind": "reserve", "made_on": "2022-03-01", "fitted_to": "Harness B"},
    "Helmet A": {"kind": "helmet", "first_used_on": "2023-05-01"},
    "Helmet B": {"kind": "helmet", "first_used_on": "2025-03-15"},
    "Carabiners A": {"kind": "carabiner", "quantity": 2, "first_used_on": "2024-06-15"},
    "Carabiners B": {"kind": "carabiner", "quantity": 2, "first_used_on": "2021-09-01"},
    "Speed bar A": {"kind": "speed system", "opening_launches": 91},  # 96 with the five launches of the season
    "Life vest": {"kind": "buoyancy"},
    "First aid kit": {"kind": "first aid"},
    "Power bank": {"kind": "power bank"},
    "Messenger": {"kind": "tracker"},
    "Beacon": {"kind": "beacon"},
    "Papers": {"kind": "papers"},
}
RULES = (
    ("Wing A", "wing.full", {}, "2024-05-20"),
    ("Wing A", "wing.trim", {}, None),
    ("Wing B", "wing.full", {}, "2024-11-02"),
    ("Harness A", "harness.protector", {}, "2023-03-10"),
    ("Harness B", "harness.visual", {"events": ()}, None),
    ("Reserve A", "reserve.repack", {}, "2025-08-31"),
    ("Reserve B", "reserve.repack", {}, "2025-11-30"),
    ("Helmet A", "helmet.age", {}, None),
    ("Helmet B", "helmet.age", {}, None),
    ("Carabiners A", "carabiner.age", {}, None),
    ("Carabiners B", "carabiner.age", {"months": 60}, None),
    ("Speed bar A", "speed.line", {"months": None}, None),
    ("Life vest", "buoyancy.service", {}, "2025-07-04"),
    ("First aid kit", "firstaid.check", {}, "2025-05-08"),
    ("Power bank", "any.capacity", {}, "2025-04-20"),
)
TYPED = (
    ("Messenger", "tracker.subscription", "2026-06-15"),
    ("Beacon", "beacon.battery", "2029-11-30"),
    ("Papers", "papers.expiry", "2026-12-31"),
)
FLOWN = (
    ("2026-01-10T23:40", (-36.7, 147.0), "A", 255, "2026-01-11", "Australia/Melbourne", "10:40", "14:55"),
    ("2026-03-14T12:05", (47.0, 12.0), "A", 85, "2026-03-14", None, "13:05", "14:30"),
    ("2026-03-29T10:20", (47.0, 12.0), "A", 160, "2026-03-29", None, "12:20", "15:00"),
    ("2026-04-05T09:50", (47.0, 12.0), "A", 255, "2026-04-05", None, "11:50", "16:05"),
    ("2026-04-12T07:10", (47.4, 13.4), "B", 35, "2026-04-12", "Europe/Vienna", "09:10", "09:45"),
    ("2026-04-18T10:00", (47.0, 12.0), "A", 230, "2026-04-18", None, "12:00", "15:50"),
)


class Season:
    """The data file, and a clock that goes along."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.at = datetime(2026, 1, 1, 18, 0, tzinfo=UTC)
        data = DataFile.open(folder / "season.kitlog", now=self.at)
        self.bench = Workbench(data, LIBRARY, lambda: self.at, numbered())
        self.ids: dict[str, str] = {}
        self.found: list[Flight] = []

    def begin(self) -> None:
        for name, fields in KIT.items():
            to = self.ids.get(str(fields.get("fitted_to")))
            given = {"id": self.bench.new_id(), "name": name, **fields, "fitted_to": to}
            self.ids[name] = self.bench.add_item(Item.model_validate(given))
        for name, rule, changes, last in RULES:
            self.bench.take_starters(self.ids[name], [rule])
            taken = self.rule(name, rule)
            if changes:
                self.bench.save_rule(taken.model_copy(update=changes))
            if last:
                hours = KIT[name].get("opening_h")
                self.done(name, (rule,), date.fromisoformat(last), hours=hours)
        for name, rule, day in TYPED:
            fields = {"id": self.bench.new_id(), "item_id": self.ids[name], "rule": rule, "due_on": day}
            self.bench.save_rule(ServiceRule.model_validate({**fields, "grounds": LIBRARY.starter(rule).grounds}))
        self.total("Wing A", "2024-05-21", "2025-05-08", 1_625, 290, 44)
        self.total("Wing A", "2025-05-09", "2025-12-31", 1_495, 250, 39)
        self.total("Wing B", "2024-11-03", "2025-12-31", 360, 0, 8)

    def total(self, name: str, on: str, until: str, air: int, ground: int, launches: int) -> None:
        typed = {"id": self.bench.new_id(), "on": on, "until": until, "airtime_min": air, "launches": launches}
        flown = {"ground_handling_min": ground, "flown": [self.ids[name]]}
        self.bench.add_flight(Flight.model_validate({**typed, **flown}))

    def rule(self, name: str, rule: str) -> ServiceRule:
        return next(r for r in self.bench.rules() if (r.item_id, r.rule) == (self.ids[name], rule))

    def done(self, name: str, rules: tuple[str, ...], on: date, **fields: object) -> None:
        ids = [self.rule(name, rule).id for rule in rules]
        record = {"id": self.bench.new_id(), "item_id": self.ids[name], "rules": ids, "done_on": on, **fields}
        self.bench.add_record(ServiceRecord.model_validate(record))

    def fly(self, begins: str, place: tuple[float, float], wing: str, minutes: int) -> None:
        """Read a recording of that flight; the pilot confirms it with the minutes of the table."""
        day = Day(datetime.fromtimestamp(utc(begins).timestamp() - 200, UTC), lat=place[0], lon=place[1])
        path = self.folder / f"{begins[:10]}.igc"
        path.write_bytes(flight(day.stand(200), minutes).stand(200).igc(every=4))
        self.at = datetime.fromtimestamp(utc(begins).timestamp() + 8 * 3_600, UTC)
        flown = tuple(self.ids[name] for name in SETS[wing])
        proposals = list(read_flights(self.bench.flight_source(), [path], flown=flown))
        (written,) = self.bench.import_flights([Confirmed(one, airtime_min=minutes) for one in proposals], proposals)
        self.found.append(written)

    def live(self) -> None:
        self.begin()
        for begins, place, wing, minutes, *_ in FLOWN:
            self.fly(begins, place, wing, minutes)
        handled = {"id": "ground", "on": "2026-03-14", "launches": 0, "ground_handling_min": 30}
        self.bench.add_flight(Flight.model_validate({**handled, "flown": [self.ids["Wing A"]]}))
        larch = date(2026, 4, 18)
        for what, names in (("tree", ("Wing A", "Harness A")), ("helmet blow", ("Helmet A",))):
            self.bench.log_incident(self.bench.incident(what), [self.ids[name] for name in names], larch, "a larch")
        self.at = datetime(2026, 4, 27, 18, 0, tzinfo=UTC)
        self.done("Wing A", ("wing.event", "wing.trim"), self.at.date(), who="workshop", result="passed")
        self.done("Harness A", ("harness.event",), self.at.date(), who="myself", result="passed")
        self.at = datetime(2026, 5, 8, 18, 30, tzinfo=UTC)

    def due(self, name: str, rule: str, on: date = TONIGHT) -> Due:
        return next(l.due for l in self.bench.due(on) if (l.item.name, l.rule.rule) == (name, rule))  # noqa: E741


@pytest.fixture(scope="module")
def season(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Season]:
    lived = Season(tmp_path_factory.mktemp("season"))
    lived.live()
    yield lived
    lived.bench.close()


def test_local_days_and_times(season: Season) -> None:
    """Midnight UTC lies inside the first flight; the clocks changed in the morning of the third."""
    from zoneinfo import ZoneInfo

    for written, (_, _, _, minutes, day, zone, takeoff, landing) in zip(season.found, FLOWN, strict=True):
        assert written.on.isoformat() == day
        assert zone is None or written.time_zone == zone
        assert written.found_airtime_min == pytest.approx(minutes, abs=0.5)
        assert written.takeoff_at is not None
        assert written.landing_at is not None
        local = ZoneInfo(written.time_zone)
        for at, told in ((written.takeoff_at, takeoff), (written.landing_at, landing)):
            wanted = datetime.fromisoformat(f"{day}T{told}").replace(tzinfo=local)
            assert abs((at - wanted).total_seconds()) <= 15


@pytest.mark.parametrize(("letter", "minutes", "launches"), [("A", 985, 5), ("B", 35, 1)])
def test_airtime_and_launches_of_the_sets(season: Season, letter: str, minutes: int, launches: int) -> None:
    for name in SETS[letter]:
        typed = {"Wing A": (1_625 + 1_495, 44 + 39), "Wing B": (360, 8)}.get(name, (0, 0))
        use = season.bench.usage(season.ids[name], TONIGHT)
        assert (use.airtime_h * 60 - typed[0], use.launches - typed[1]) == (pytest.approx(minutes), launches)


def test_hours_of_wing_a_and_the_day_they_run_out(season: Season) -> None:
    """52.0 h and 9.0 h on the ground, 16.417 h and 0.5 h: 77.917 of 100; 22.083 / 46.0 x 365 = 175.2 days."""
    full = season.due("Wing A", "wing.full")
    assert full.hours_left == pytest.approx(22.083, abs=5e-4)
    assert (full.predicted_on, full.due_on) == (date(2026, 10, 30), date(2026, 5, 20))
    assert full.book_by == date(2026, 4, 29)


def test_hours_of_wing_b_and_launches_of_the_speed_bar(season: Season) -> None:
    assert season.due("Wing B", "wing.full").hours_left == pytest.approx(100 - 6.583, abs=5e-4)
    line = season.due("Speed bar A", "speed.line")
    assert (line.state, line.launches_left) == (DueState.DUE_SOON, 4)


S = DueState
STATES = [
    ("Wing A", "wing.full", "2026-05-20", (S.DUE_SOON, S.DUE_SOON, S.OVERDUE, S.OVERDUE), (12, 11, -31, -108)),
    ("Wing A", "wing.trim", "2027-04-27", (S.IN_DATE,) * 2, ()),
    ("Wing B", "wing.full", "2026-11-02", (S.IN_DATE,) * 3, ()),
    ("Harness A", "harness.protector", "2026-03-10", (S.OVERDUE,) * 4, (-59,)),
    (
        "Reserve A",
        "reserve.repack",
        "2026-08-31",
        (S.RECOMMENDED_PASSED, S.RECOMMENDED_PASSED, S.RECOMMENDED_PASSED, S.OVERDUE),
        (115, 114, 72, -5),
    ),
    ("Reserve B", "reserve.repack", "2026-11-30", (S.IN_DATE, S.IN_DATE, S.RECOMMENDED_PASSED), ()),
    ("Helmet A", "helmet.age", "2027-05-01", (S.IN_DATE,), ()),
    ("Helmet B", "helmet.age", "2029-03-15", (S.IN_DATE,), ()),
    ("Carabiners A", "carabiner.age", "2026-06-15", (S.DUE_SOON, S.DUE_SOON, S.OVERDUE, S.OVERDUE), (38, 37, -5, -82)),
    ("Carabiners B", "carabiner.age", "2026-09-01", (S.IN_DATE, S.IN_DATE, S.IN_DATE, S.OVERDUE), (116, 115, 73, -4)),
    ("Life vest", "buoyancy.service", "2026-07-04", (S.IN_DATE, S.IN_DATE, S.DUE_SOON, S.OVERDUE), (57, 56, 14, -63)),
    ("First aid kit", "firstaid.check", "2026-05-08", (S.DUE_SOON, S.OVERDUE, S.OVERDUE, S.OVERDUE), (0, -1, -43, -120)),
    ("Power bank", "any.capacity", "2026-04-20", (S.OVERDUE,) * 3, (-18,)),
    ("Messenger", "tracker.subscription", "2026-06-15", (S.DUE_SOON, S.DUE_SOON, S.OVERDUE, S.OVERDUE), (38, 37, -5, -82)),
    ("Beacon", "beacon.battery", "2029-11-30", (S.IN_DATE,), ()),
    ("Papers", "papers.expiry", "2026-12-31", (S.IN_DATE,), ()),
]  # fmt: skip


@pytest.mark.parametrize(("name", "rule", "due_on", "states", "days"), STATES)
def test_due_states_of_tonight_and_the_three_outings(
    season: Season, name: str, rule: str, due_on: str, states: tuple[DueState, ...], days: tuple[int, ...]
) -> None:
    found = [season.due(name, rule, on) for on in (TONIGHT, O1, O2, O3)]
    assert {due.due_on for due in found} == {date.fromisoformat(due_on)}
    assert tuple(due.state for due in found[: len(states)]) == states
    assert tuple(due.days_left for due in found[: len(days)]) == days


def test_month_ends_of_the_reserves(season: Season) -> None:
    assert season.due("Reserve A", "reserve.repack").recommended_on == date(2026, 2, 28)
    assert season.due("Reserve B", "reserve.repack").recommended_on == date(2026, 5, 30)


def test_harness_b_was_never_looked_at(season: Season) -> None:
    assert {season.due("Harness B", "harness.visual", on).state for on in (TONIGHT, O2)} == {S.NO_RECORD}


def test_the_larch_opened_three_rules_and_nothing_else(season: Season) -> None:
    """None of the three things had such a rule before; the record answered two, the helmet is replaced."""
    opened = {"Wing A": "wing.event", "Harness A": "harness.event", "Helmet A": "helmet.event"}
    for name, rule in opened.items():
        due = season.due(name, rule, date(2026, 4, 18))
        assert (due.state, due.grounds, due.due_on) == (S.OVERDUE, Grounds.YES, date(2026, 4, 18))
    assert len(season.bench.rules()) == len(RULES) + len(TYPED) + len(opened)
    assert {name: season.due(name, rule).state for name, rule in opened.items()} == {
        "Wing A": S.IN_DATE,
        "Harness A": S.IN_DATE,
        "Helmet A": S.OVERDUE,
    }
    stops = {line.item.name for line in season.bench.what_stops(O1) if line.state.value == "stop"}
    assert stops == {"Helmet A"}


def test_the_check_after_the_larch_reset_the_trim_and_not_the_full_inspection(season: Season) -> None:
    trim, full = season.due("Wing A", "wing.trim"), season.due("Wing A", "wing.full")
    assert trim.last is not None
    assert full.last is not None
    assert (trim.last.done_on, full.last.done_on) == (date(2026, 4, 27), date(2024, 5, 20))
