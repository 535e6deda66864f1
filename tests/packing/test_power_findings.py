"""Power of an outing: what is simulated, what is not known, and what is a look or a stop.

Margins to keep (phone 30 % likely and 20 % high at the landing, 10 % at the end; radio 20 % at the end): common practice,
no source. Figures by hand where the cell is at 25 deg C, at which the label energy holds whole.
"""

from datetime import timedelta
from typing import Any

import pytest
from scenario import EVENING, judged, of_code, stops, the
from small_kit import NEW, but, item, other, outing

from kitlog.budget.result import Finding, State, Sure
from kitlog.fault import InputFault
from kitlog.kit.item import Item
from kitlog.kit.service import ServiceRule
from kitlog.packing.assessment import Assessment
from kitlog.packing.kit import Kit
from kitlog.packing.power_chance import how_sure
from kitlog.wording.figures import NO_BREAK, THIN
from kitlog.wording.findings import say
from kitlog.wording.remedies import remedy_text

FLIGHT = {"name": "flight", "way": "flight", "low_h": 2, "likely_h": 4, "high_h": 6, "air_c": 25}
RIDE = {"name": "ride", "way": "ride home", "low_h": 1, "likely_h": 1, "high_h": 1, "air_c": 25}

FULL = [{"item": "phone", "low_pct": 100, "likely_pct": 100, "high_pct": 100}]


def device(name: str, kind: str, wh: float | None, watts: float | None, **battery: Any) -> Item:
    ways = [] if watts is None else [{"name": "on", "power_w": watts, "basis": "measured"}]
    cell = {"wh": wh, "ways": ways, "cutoff_pct": 0, "offset_k": 0, **battery}
    return item(name, kind, 200, battery=cell)


def bank(**fields: Any) -> Item:
    cell = {"wh": 40, "fixed_c": 25, "cutoff_pct": 0}
    return item("bank", "power bank", 200, battery=cell, bank={"efficiency_pct": 100, "quiescent_w": 0, **fields})


def assessed(phone: Item | None, *more: Item, **fields: Any) -> Assessment:
    kit = but("phone", "radio", instead=[one for one in (phone, *more) if one is not None])
    plan = {"phases": [FLIGHT], "pinned": [one.id for one in more], "plugs": [], **fields}
    return judged(outing(**plan), kit, NEW)


def landing(assessment: Assessment) -> Finding:
    return the(assessment, "power.phone_at_landing")


class TestPhoneAtTheLanding:
    @pytest.mark.parametrize(
        ("watts", "likely", "high", "state"),
        [
            (1.0, 60, 40, State.FINE),
            (1.3, 48, 22, State.FINE),
            (1.4, 44, 16, State.LOOK),
            (1.7, 32, 0, State.LOOK),
            (1.8, 28, 0, State.STOP),
            (3.0, 0, 0, State.STOP),
        ],
    )
    def test_thirty_likely_and_twenty_on_a_high_day(
        self, watts: float, likely: float, high: float, state: State
    ) -> None:
        """10 Wh, 4 h likely, 6 h high."""
        found = landing(assessed(device("phone", "phone", 10, watts)))
        assert found.state is state
        assert found.figure == pytest.approx(likely, abs=0.01)
        assert found.facts["high_pct"] == pytest.approx(high, abs=0.01)

    def test_of_several_phones_the_fuller_one_counts(self) -> None:
        found = landing(assessed(device("phone", "phone", 10, 3.0), device("second", "phone", 10, 0.5)))
        assert (found.state, found.figure) == (State.FINE, pytest.approx(80))

    def test_a_phone_that_draws_nothing_stays_full(self) -> None:
        found = landing(assessed(device("phone", "phone", 10, 0.0), device("radio", "radio", 10, 0.5)))
        assert (found.state, found.figure) == (State.FINE, 100)

    def test_without_a_flight_there_is_no_landing(self) -> None:
        assert not of_code(assessed(device("phone", "phone", 10, 1.0), phases=[RIDE]), "power.phone_at_landing")


class TestDevice:
    @pytest.mark.parametrize(
        ("kind", "watts", "state"),
        [
            ("instrument", 1.6, State.FINE),
            ("instrument", 1.7, State.LOOK),
            ("radio", 1.3, State.FINE),
            ("radio", 1.4, State.LOOK),
            ("phone", 1.4, State.FINE),
            ("phone", 1.6, State.LOOK),
        ],
    )
    def test_fine_is_what_holds_on_a_high_day_with_the_margin_of_its_kind(
        self, kind: str, watts: float, state: State
    ) -> None:
        """10 Wh over 6 h: 1.6 W leave 4 %, 1.3 W 22 %, 1.4 W 16 %."""
        phone = device("phone", "phone", 10, 0.1) if kind != "phone" else None
        found = the(assessed(phone, device("thing", kind, 10, watts)), "power.device", "thing")
        assert found.state is state

    def test_a_device_that_goes_off_is_never_a_stop_by_itself(self) -> None:
        found = the(
            assessed(device("phone", "phone", 20, 0.1), device("vario", "instrument", 1, 5.0)), "power.device", "vario"
        )
        assert found.state is State.LOOK
        assert found.facts["off_h_likely"] == pytest.approx(0.2)
        assert found.facts["short_h_likely"] == pytest.approx(3.8)
        assert (found.phase, found.margin) == ("flight", pytest.approx(-3.8))

    def test_off_on_a_high_day_only_names_the_phase_of_that_day(self) -> None:
        found = the(assessed(device("phone", "phone", 10, 1.8), phases=[FLIGHT, RIDE]), "power.device", "phone")
        assert found.facts["off_h_likely"] is None
        assert found.facts["off_h_high"] == pytest.approx(10 / 1.8)
        assert found.phase == "flight"

    def test_measured_draws_are_surer_than_guesses(self) -> None:
        guessed = other(device("phone", "phone", 10, 1.0), battery={"wh": 10, "ways": [{"name": "on", "power_w": 1.0}]})
        for phone, sure in ((device("phone", "phone", 10, 1.0), Sure.MEASURED), (guessed, Sure.GUESS)):
            assert the(assessed(phone, starts=FULL), "power.device", "phone").sure is sure
            assert landing(assessed(phone, starts=FULL)).sure is sure

    def test_hours_without_a_range_are_an_estimate(self) -> None:
        fixed = {**FLIGHT, "low_h": 4, "high_h": 4}
        found = the(assessed(device("phone", "phone", 10, 1.0), phases=[fixed], starts=FULL), "power.device", "phone")
        assert found.sure is Sure.ESTIMATE

    def test_as_sure_as_the_chance_of_the_same_device(self) -> None:
        for starts in ((), FULL):
            day = assessed(device("phone", "phone", 10, 1.0), starts=starts)
            assert the(day, "power.device", "phone").sure is how_sure(["phone"], day)

    def test_without_an_air_temperature_the_day_is_a_guess_and_says_so(self) -> None:
        mild = {**FLIGHT, "air_c": None}
        for phases, assumed in (([FLIGHT], False), ([mild], True)):
            found = the(assessed(device("phone", "phone", 10, 1.0), phases=phases), "power.device", "phone")
            assert found.facts["air_assumed"] is assumed
            assert (found.sure is Sure.GUESS) is assumed


class TestStartThatIsNotEntered:
    """It is taken as full, which is no measurement, and said; more so where less was seen within a day."""

    PHONE = device("phone", "phone", 10, 1.0)

    def seen(self, pct: float, hours_ago: float) -> Item:
        at = EVENING - timedelta(hours=hours_ago)
        battery = {**self.PHONE.battery.model_dump(), "on_hand_pct": pct, "on_hand_at": at}  # type: ignore[union-attr]
        return other(self.PHONE, battery=battery)

    def words(self, assessment: Assessment) -> str:
        names = {"phone": "Phone", "bank": "Bank"}
        return say(the(assessment, "power.device", "phone"), names).sentence.replace(NO_BREAK, " ").replace(THIN, " ")

    def test_it_is_said_and_makes_an_estimate(self) -> None:
        found = the(assessed(self.PHONE), "power.device", "phone")
        assert (found.sure, found.state) == (Sure.ESTIMATE, State.FINE)
        assert (found.facts["start_assumed"], found.facts["begin_full"]) == (True, ("phone",))
        assert self.words(assessed(self.PHONE)) == "lasts the high day too, with 40 % left; begins full, assumed"

    def test_entered_it_is_not(self) -> None:
        found = the(assessed(self.PHONE, starts=FULL), "power.device", "phone")
        assert (found.facts["start_assumed"], found.facts["begin_full"], found.facts["seen"]) == (False, (), ())
        assert "assumed" not in self.words(assessed(self.seen(55, 1), starts=FULL))

    def test_last_seen_with_less(self) -> None:
        day = assessed(self.seen(55, 23))
        assert the(day, "power.device", "phone").facts["seen"] == (("phone", 55),)
        told = "last seen with 55 %: full by the start is assumed; plan the charging"
        assert self.words(day).endswith(f"left; {told}")
        assert told in say(landing(day), {"phone": "Phone"}).sentence.replace(NO_BREAK, " ").replace(THIN, " ")
        assert the(day, "power.device", "phone").state is State.FINE

    def test_with_an_evening_the_charging_is_planned(self) -> None:
        evening = {"from_at": "19:00", "bed_at": "22:00", "up_at": "06:00", "leave_at": "07:00"}
        words = self.words(assessed(self.seen(55, 1), evening=evening))
        assert words.endswith("; last seen with 55 %: full by the start is assumed")

    @pytest.mark.parametrize(("pct", "hours_ago"), [(100, 1), (99.6, 1), (55, 25)])
    def test_seen_full_or_long_ago_it_says_nothing(self, pct: float, hours_ago: float) -> None:
        assert self.words(assessed(self.seen(pct, hours_ago))).endswith("; begins full, assumed")

    def test_the_bank_it_hangs_on(self) -> None:
        plugs = [{"phase": "flight", "device": "phone", "bank": "bank"}]
        day = assessed(device("phone", "phone", 10, 1.0, charge_max_w=5), bank(), plugs=plugs, starts=FULL)
        assert the(day, "power.device", "phone").facts["begin_full"] == ("bank",)
        assert self.words(day).endswith("; full at the start, assumed: Bank")
        assert the(day, "power.device", "phone").sure is Sure.ESTIMATE


class TestNotKnown:
    @pytest.mark.parametrize(
        "battery",
        [
            None,
            {},
            {"mah": 4_000, "ways": [{"name": "on", "power_w": 1.0}]},
            {"wh": 15},
        ],
        ids=["no battery", "empty", "mAh without volts", "no draw"],
    )
    def test_lacking_figures(self, battery: dict[str, object] | None) -> None:
        assessment = assessed(item("phone", "phone", 200, battery=battery))
        unknown = the(assessment, "power.not_known", "phone")
        assert unknown.state is State.NOT_KNOWN
        assert [remedy.code for remedy in unknown.remedies] == ["enter_battery"]
        assert not of_code(assessment, "power.phone_at_landing")

    def test_volts_make_milliampere_hours_known(self) -> None:
        cell = {"mah": 4_000, "v": 3.85, "ways": [{"name": "on", "power_w": 1.0}]}
        assert not of_code(assessed(item("phone", "phone", 200, battery=cell)), "power.not_known")

    def test_a_way_of_use_that_the_device_does_not_have(self) -> None:
        use = [{"item": "phone", "phase": "flight", "way": "screen on", "share": 1.0}]
        assert of_code(assessed(device("phone", "phone", 10, 1.0), uses=use), "power.not_known", "phone")

    def test_a_flight_of_which_nobody_said_what_the_phone_does(self) -> None:
        shares = [{"during": "ride home", "share": 1.0}]
        ways = [{"name": "on", "power_w": 1.0, "shares": shares}]
        assessment = assessed(device("phone", "phone", 10, 1.0, ways=ways), phases=[FLIGHT, RIDE])
        unknown = the(assessment, "power.not_known", "phone")
        assert "no way of use has a share of the time in flight" in say(unknown, {}).sentence
        assert [remedy.code for remedy in unknown.remedies] == ["enter_use"]
        assert remedy_text(unknown.remedies[0], {"phone": "Phone"}).startswith("Say what Phone does in flight")
        assert not of_code(assessment, "power.phone_at_landing")
        assert the(assessment, "power.caller").state is State.NOT_KNOWN

    def test_a_phone_that_is_off_in_flight_is_known(self) -> None:
        shares = [{"during": "flight", "share": 0.0}, {"during": "ride home", "share": 1.0}]
        ways = [{"name": "on", "power_w": 1.0, "shares": shares}]
        assessment = assessed(device("phone", "phone", 10, 1.0, ways=ways), phases=[FLIGHT, RIDE])
        assert not of_code(assessment, "power.not_known")
        assert the(assessment, "power.device", "phone").figure == pytest.approx(90)  # by hand: 10 Wh less 1 h of 1 W

    def test_what_goes_off_is_headed_by_what_it_is_short_as_in_its_lane(self) -> None:
        """3 W from 10 Wh: off after 3.33 of 4 h. The cold locks charge, which is still there when it is off."""
        assessment = assessed(device("phone", "phone", 10, 3.0), phases=[FLIGHT])
        figure = say(the(assessment, "power.device", "phone"), {}).figure
        assert figure.replace(NO_BREAK, " ").replace(THIN, " ") == "−40 min"

    def test_a_bank_without_energy(self) -> None:
        unlabelled = item("bank", "power bank", 200)
        assert of_code(assessed(device("phone", "phone", 10, 1.0), unlabelled), "power.not_known", "bank")

    @pytest.mark.parametrize("phases", [[], [{**FLIGHT, "low_h": 0, "likely_h": 0, "high_h": 0}]])
    def test_without_durations(self, phases: list[dict[str, object]]) -> None:
        assessment = assessed(device("phone", "phone", 10, 1.0), phases=phases)
        assert the(assessment, "power.no_phases").state is State.NOT_KNOWN
        assert the(assessment, "power.caller").state is State.NOT_KNOWN

    @pytest.mark.parametrize(
        "more",
        [item("locator", "beacon", 150), item("flares", "signal", 200, serves=("call for help",))],
        ids=["beacon", "flares"],
    )
    def test_without_durations_nothing_is_alive_at_an_end_that_is_not_there(self, more: Item) -> None:
        found = the(assessed(None, more, phases=[]), "power.caller")
        assert (found.state, found.facts["likely"], found.sure) == (State.NOT_KNOWN, (), Sure.NOT_KNOWN)
        assert [remedy.code for remedy in found.remedies] == ["enter_phases"]
        assert "no phases with durations" in say(found, {}).sentence

    def test_without_durations_phases_are_asked_for_before_a_battery_is(self) -> None:
        found = the(assessed(item("phone", "phone", 200), phases=[]), "power.caller")
        assert [remedy.code for remedy in found.remedies] == ["enter_phases"]

    def test_none_at_all_is_a_stop_without_durations_too(self) -> None:
        assert "power.caller" in stops(assessed(None, phases=[]))

    def test_what_lacks_figures_is_named(self) -> None:
        found = the(assessed(item("phone", "phone", 200)), "power.caller")
        assert say(found, {"phone": "Phone"}).sentence == "not known: energy or draw not on record: Phone"

    def test_a_flight_without_a_duration_has_no_charge_at_the_landing(self) -> None:
        """Nothing flown yet, the phone is as it was: that is no good news of a landing."""
        still = {**FLIGHT, "low_h": 0, "likely_h": 0, "high_h": 0}
        assessment = assessed(device("phone", "phone", 10, 1.0), phases=[still, RIDE])
        assert the(assessment, "power.no_flight").state is State.NOT_KNOWN
        assert not of_code(assessment, "power.phone_at_landing")
        assert "the flight has no duration yet" in say(the(assessment, "power.no_flight"), {}).sentence


class TestCallers:
    """No device that can call for help alive to the end is a stop; a beacon sleeps until it is used."""

    def test_dead_phone_and_nothing_else_is_a_stop(self) -> None:
        assessment = assessed(device("phone", "phone", 1, 1.0))
        assert {"power.caller", "power.phone_at_landing"} <= stops(assessment)

    def test_alive_in_the_likely_case_only_is_a_look(self) -> None:
        assert the(assessed(device("phone", "phone", 10, 2.0)), "power.caller").state is State.LOOK

    @pytest.mark.parametrize(
        "more",
        [
            item("locator", "beacon", 150),
            device("messenger", "tracker", 5, 0.05),
            device("messenger", "tracker", 5, 0.0),
            item("flares", "signal", 200, serves=("call for help",)),
        ],
        ids=["beacon", "messenger", "messenger switched off", "flares"],
    )
    def test_another_caller_is_enough(self, more: Item) -> None:
        found = the(assessed(device("phone", "phone", 1, 1.0), more), "power.caller")
        assert (found.state, found.facts["likely"]) == (State.FINE, (more.id,))

    def test_a_caller_that_cannot_be_reckoned_with_is_not_known(self) -> None:
        messenger = item("messenger", "tracker", 100)
        found = the(assessed(device("phone", "phone", 1, 1.0), messenger), "power.caller")
        assert (found.state, found.facts["unknown"]) == (State.NOT_KNOWN, ("messenger",))

    def test_none_at_all_is_a_stop(self) -> None:
        assert "power.caller" in stops(assessed(None))

    def test_a_caller_grounded_by_its_service_does_not_count(self) -> None:
        messenger = device("messenger", "tracker", 5, 0.05)
        lapsed = ServiceRule.model_validate(
            {"id": "r", "item_id": "messenger", "rule": "paid to", "due_on": "2026-05-01", "grounds": "yes"}
        )
        kit = but("phone", instead=[device("phone", "phone", 1, 1.0), messenger])
        plan = outing(phases=[FLIGHT], pinned=["messenger"], plugs=[])
        assert the(judged(plan, kit, NEW), "power.caller").state is State.FINE
        assert "power.caller" in stops(judged(plan, Kit(kit.pilot, kit.items, (lapsed,)), NEW))

    def test_left_in_the_car_does_not_count(self) -> None:
        kit = but("phone", "beacon", instead=[device("phone", "phone", 1, 1.0), item("locator", "beacon", 150)])
        in_car = outing(phases=[FLIGHT], pinned=[{"item": "locator", "zone": "left in the car"}])
        assert "power.caller" in stops(judged(in_car, kit, NEW))


class TestPlugs:
    PHONE = device("phone", "phone", 10, 1.0, charge_max_w=5)

    def at_end(self, assessment: Assessment) -> float:
        day = assessment.power.likely
        assert day is not None
        return 100 * (day.devices["phone"].soc_end or 0)

    def test_by_default_the_phone_is_on_the_bank_after_the_flight(self) -> None:
        charged = assessed(self.PHONE, bank(), phases=[FLIGHT, RIDE], plugs=None)
        idle = assessed(self.PHONE, bank(), phases=[FLIGHT, RIDE], plugs=[])
        assert self.at_end(idle) == pytest.approx(50)
        assert self.at_end(charged) > 80
        assert landing(charged).figure == pytest.approx(60)

    def test_by_default_nothing_is_plugged_in_between_two_flights(self) -> None:
        between = {**RIDE, "name": "back up"}
        second = {**FLIGHT, "name": "second flight"}
        phases = [FLIGHT, between, second]
        assert self.at_end(assessed(self.PHONE, bank(), phases=phases, plugs=None)) == pytest.approx(10)

    def test_by_default_nothing_is_plugged_into_a_bank_without_ports(self) -> None:
        assessment = assessed(self.PHONE, bank(ports=0), phases=[FLIGHT, RIDE], plugs=None)
        assert self.at_end(assessment) == pytest.approx(50)

    def test_a_bank_that_stays_at_home_charges_nothing(self) -> None:
        plug = [{"phase": "ride", "device": "phone", "bank": "bank"}]
        kit = but("phone", "radio", instead=[self.PHONE, bank()])
        left = outing(phases=[FLIGHT, RIDE], plugs=plug, left_out=["bank"])
        assert self.at_end(judged(left, kit, NEW)) == pytest.approx(50)

    @pytest.mark.parametrize(
        ("plugs", "code"),
        [
            ([{"phase": "lunch", "device": "phone", "bank": "bank"}], "id.unknown"),
            ([{"phase": "ride", "device": "phone", "bank": "bank"}] * 2, "plug.twice"),
        ],
    )
    def test_a_plan_that_contradicts_itself_is_refused(self, plugs: list[dict[str, object]], code: str) -> None:
        vario = device("vario", "instrument", 5, 0.5)
        with pytest.raises(InputFault) as refused:
            assessed(self.PHONE, vario, bank(ports=1), phases=[FLIGHT, RIDE], plugs=plugs)
        assert refused.value.code == code

    def test_a_refusal_names_items_as_the_pilot_does(self) -> None:
        named = [other(one, id=f"{one.id} id") for one in (self.PHONE, bank())]
        plan = {"phase": "lunch", "device": "phone", "bank": "bank"}
        with pytest.raises(InputFault) as refused:
            judged(outing(phases=[FLIGHT], plugs=[plan], pinned=["bank"]), but("phone", instead=named), NEW)
        assert refused.value.facts["owner"] == "phone"


class TestBankThatFallsAsleep:
    def test_too_small_a_load(self) -> None:
        vario = device("vario", "instrument", 5, 0.15)
        plug = [{"phase": "flight", "device": "vario", "bank": "bank"}]
        sleepy = bank(min_w=0.25, off_s=32)
        found = the(assessed(device("phone", "phone", 10, 0.5), vario, sleepy, plugs=plug), "power.bank_sleeps")
        assert (found.state, found.figure) == (State.LOOK, pytest.approx(32 / 3_600))

    def test_asleep_because_all_is_full_is_no_trouble(self) -> None:
        phone = device("phone", "phone", 10, 0.5, charge_max_w=5)
        plug = [{"phase": "ride", "device": "phone", "bank": "bank"}]
        long_ride = {**RIDE, "low_h": 6, "likely_h": 6, "high_h": 6}
        sleepy = bank(min_w=0.6, off_s=32)
        assessment = assessed(phone, sleepy, phases=[FLIGHT, long_ride], plugs=plug)
        assert not of_code(assessment, "power.bank_sleeps")


def test_health_of_the_cell_counts() -> None:
    old = assessed(device("phone", "phone", 10, 1.0, health_pct=80))
    assert landing(old).figure == pytest.approx(50)


def test_a_cell_with_nothing_left_is_off_from_the_beginning() -> None:
    dead = assessed(device("phone", "phone", 10, 1.0, health_pct=0))
    assert landing(dead).state is State.STOP
