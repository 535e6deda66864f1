"""The evening before an outing, from kit and assessment.

By hand, with the taper of the power model (straight from the knee at 80 % to nothing at full; full = 99.5 %) and 0.9 of
the power reaching the cell (common practice, no source): 20 Wh from 20 % at 10 W. To the knee 12 Wh / 9 W = 1 h 20 min;
from there 0.2 x 20 / 9 x ln(0.2 / 0.005) = 1.6395 h; full after 2.9728 h.
"""

import math
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from types import MappingProxyType

import pytest
from scenario import EVENING, LIBRARY, judged
from small_kit import NEW, but, item, other, outing

from kitlog.files.charge_json import charge_json
from kitlog.outing.outing import Evening, StartCharge
from kitlog.packing.evening_asked import asked_evening, hours_of, months_old
from kitlog.packing.evening_plan import OtherStart, evening_plan, other_starts, planned, start_charges
from kitlog.wording.charge_lines import charge_lines
from kitlog.wording.charge_text import help_text, plan_tried_texts, summary_text

FULL_H = 12 / 9 + 0.2 * 20 / 9 * math.log(0.2 / 0.005)
TIMES = {"from_at": "19:00", "bed_at": "22:30", "up_at": "06:30", "leave_at": "07:30", "place_c": 20}
HOUR = timedelta(hours=1)


def thing(name, kind, wh=20, watts=10, pct=20, at=EVENING, serves=(), **battery):
    cell = {"wh": wh, "charge_max_w": watts, "connector": "USB-C", "on_hand_pct": pct, "on_hand_at": at, **battery}
    named = {"serves": list(serves)} if serves else {}
    return item(name, kind, 200, battery={**cell, "ways": [{"name": "on", "power_w": 0.5}]}, **named)


def charger(*watts, total=None, name="charger", connector="USB-C", n=1):
    ports = [{"power_w": each, "connector": connector} for each in watts]
    return item(name, "charger", 100, quantity=n, charger={"total_w": total, "ports": ports})


def cable(name="USB-C to USB-C", n=3):
    return item("cable", "cable", 30, quantity=n).model_copy(update={"name": name})


def planned_with(*items, taken=None, evening=TIMES, now=EVENING, **fields):
    kit = but("phone", "radio", instead=items)
    pinned = [one.id for one in items if one.kind not in {"charger", "cable"}] if taken is None else taken
    assessment = judged(outing(pinned=pinned, evening=evening, **fields), kit, NEW)
    return evening_plan(replace(assessment, now=now), kit.items, LIBRARY)


def line(plan, name, number=0):
    return next(one for one in plan.lines if (one.thing.item.id, one.thing.number) == (name, number))


def note(plan, code):
    return next(one for one in plan.notes if one.code == code)


PHONE, RADIO = thing("phone", "phone"), thing("radio", "radio")


class TestPlan:
    def test_one_phone_on_one_port_by_hand(self):
        plan = planned_with(PHONE, charger(10), cable())
        got = line(plan, "phone")
        assert got.full_h == pytest.approx(19 + FULL_H, abs=1e-6)
        assert (plan.all_full, plan.full_by_h) == (True, got.full_h)
        (hang,) = got.hangs
        assert (hang.charger.item.id, hang.port, hang.from_h) == ("charger", 0, 19)
        assert plan.day == date(2026, 5, 8)
        assert plan.helps == ()

    def test_ports_are_numbered_where_there_are_several(self):
        plan = planned_with(PHONE, RADIO, charger(10, 10), cable())
        assert {hang.port for one in plan.lines for hang in one.hangs} == {1, 2}

    def test_steps_name_what_comes_off_and_what_goes_on(self):
        plan = planned_with(PHONE, RADIO, charger(10), cable())
        first, *_, last = plan.steps
        assert (first.at_h, first.take_off, first.put_on.item.id) == (19, None, "phone")
        assert last.put_on is None or last.put_on.item.id == "radio"
        assert all(step.at_h <= 22.5 or step.at_h >= 30.5 for step in plan.steps)

    def test_what_ends_short_is_told_with_what_would_help(self):
        short = {**TIMES, "from_at": "22:00", "up_at": "22:30", "leave_at": "22:30"}
        plan = planned_with(PHONE, RADIO, charger(10), cable(), evening=short)
        phone = line(plan, "phone")
        assert phone.full_h is None
        assert phone.missing_wh == pytest.approx(0.995 * 20 - (0.2 * 20 + 0.5 * 9), abs=1e-6)
        assert line(plan, "radio").end_pct == 20
        assert not plan.all_full
        assert plan.full_by_h is None
        assert {one.kind for one in plan.helps} >= {"one_more_port", "start_earlier"}
        assert plan.bottleneck.item.id == "charger"

    def test_pieces_are_things_of_their_own(self):
        spare = other(thing("spare", "camera"), quantity=2)
        plan = planned_with(spare, charger(10, 10), cable())
        assert [one.thing.number for one in plan.lines] == [1, 2]

    def test_like_chargers_are_pieces_too(self):
        plan = planned_with(PHONE, RADIO, charger(10, n=2), cable(n=2))
        assert {hang.charger.number for one in plan.lines for hang in one.hangs} == {1, 2}


class TestOrder:
    BANK = other(thing("bank", "power bank"), bank={"ports": 1})
    VARIO = thing("vario", "instrument")
    LAMP = thing("lamp", "light")

    def names(self, **evening):
        everything = (self.LAMP, self.VARIO, RADIO, self.BANK, PHONE)
        plan = planned_with(*everything, charger(10, 10), cable(n=5), evening={**TIMES, **evening})
        return [one.thing.item.id for one in plan.lines]

    def test_usual(self):
        assert self.names() == ["phone", "bank", "radio", "vario", "lamp"]

    def test_what_calls_for_help_comes_before_the_rest_and_the_camera_last(self):
        """Trade, 4.2: the phone is at 100 % at leaving, a critical check; 6.1: one caller independent of it."""
        camera, strobe = thing("camera", "camera"), thing("strobe", "tracker", serves=["live position"])
        messenger = thing("messenger", "tracker", serves=["call for help"])
        everything = (camera, self.LAMP, strobe, RADIO, self.BANK, messenger, PHONE)
        plan = planned_with(*everything, charger(10), cable(n=5))
        assert [one.thing.item.id for one in plan.lines] == [
            "phone", "messenger", "bank", "radio", "lamp", "strobe", "camera",
        ]  # fmt: skip

    def test_where_only_one_can_be_full_it_is_the_phone_and_not_the_camera(self):
        short = {**TIMES, "from_at": "19:00", "bed_at": "22:00", "up_at": "22:00", "leave_at": "22:00"}
        plan = planned_with(thing("camera", "camera"), PHONE, charger(10), cable(), evening=short)
        assert line(plan, "phone").full
        assert not line(plan, "camera").full

    def test_the_pilots_own_comes_first(self):
        assert self.names(priority=["lamp", "radio"]) == ["lamp", "radio", "phone", "bank", "vario"]

    def test_a_bank_that_feeds_no_caller_comes_last(self):
        phases = [{"way": "flight", "likely_h": 2, "air_c": 20}]
        plugs = [{"phase": "flight", "device": "vario", "bank": "bank"}]
        everything = (self.BANK, self.VARIO, PHONE)
        plan = planned_with(*everything, charger(10, 10), cable(n=5), phases=phases, plugs=plugs)
        assert [one.thing.item.id for one in plan.lines] == ["phone", "vario", "bank"]


class TestNotKnown:
    def test_without_a_charging_power_nothing_is_planned_and_nothing_is_full(self):
        plan = planned_with(PHONE, thing("radio", "radio", watts=None, pct=100), charger(10), cable())
        assert [one.id for one in plan.not_planned] == ["radio"]
        assert note(plan, "power_not_known").items == ("radio",)
        assert not plan.all_full
        assert plan.full_by_h is None

    def test_without_energy(self):
        plan = planned_with(thing("phone", "phone", wh=None, mah=3000), charger(10), cable())
        assert note(plan, "energy_not_known").items == ("phone",)
        assert plan.lines == ()
        assert not plan.all_full

    @pytest.mark.parametrize(
        ("pct", "at", "known"),
        [
            (60, EVENING - 24 * HOUR, True),
            (60, EVENING - 25 * HOUR, False),
            (60, None, False),
            (None, None, False),
        ],
    )
    def test_a_charge_seen_more_than_a_day_ago_is_reckoned_as_empty(self, pct, at, known):
        plan = planned_with(thing("phone", "phone", pct=pct, at=at), charger(10), cable())
        assert line(plan, "phone").on_hand.reckoned_pct == (60 if known else 0)
        assert plan.has("charge_not_known") is not known

    def test_no_charger(self):
        plan = planned_with(PHONE, cable())
        assert plan.has("no_charger")
        assert line(plan, "phone").left_out == "no_charger"
        assert not plan.all_full
        assert plan.helps == ()

    def test_a_charger_without_ports_on_record(self):
        plan = planned_with(PHONE, item("block", "charger"), cable())
        assert note(plan, "charger_not_described").items == ("block",)

    def test_cables_that_are_not_named_are_said(self):
        assert note(planned_with(PHONE, charger(10), cable("Cables")), "cables_not_known").items == ("cable",)
        assert note(planned_with(PHONE, charger(10)), "cables_not_known").items == ()
        assert not planned_with(PHONE, charger(10), cable()).has("cables_not_known")

    def test_hours_that_nobody_told_are_the_usual_ones_and_said(self):
        plan = planned_with(PHONE, charger(10), cable(), evening=None)
        assert plan.assumed
        assert plan.has("evening_assumed")
        assert plan.times.bed_at == time(22, 30)

    @pytest.mark.parametrize(
        ("now", "times"),
        [
            (datetime(2026, 5, 8, 18, 59, tzinfo=UTC), (19, 22.5, 30.5, 31.5)),
            (datetime(2026, 5, 8, 21, 38, tzinfo=UTC), (21 + 40 / 60, 22.5, 30.5, 31.5)),
            (datetime(2026, 5, 8, 23, 58, tzinfo=UTC), (24, 24, 30.5, 31.5)),
            (datetime(2026, 5, 9, 6, 45, tzinfo=UTC), (30.75, 30.75, 30.75, 31.5)),
            (datetime(2026, 5, 9, 7, 30, tzinfo=UTC), (19, 22.5, 30.5, 31.5)),
            (datetime(2026, 5, 7, 21, 38, tzinfo=UTC), (19, 22.5, 30.5, 31.5)),
        ],
    )
    def test_hours_that_nobody_told_begin_at_the_next_five_minutes_once_the_evening_has_begun(self, now, times):
        kit = but("phone", "radio", instead=(PHONE, charger(10), cable()))
        assessment = replace(judged(outing(evening=None), kit, NEW), now=now)
        asked = asked_evening(assessment, kit.items, LIBRARY)
        evening = asked.evening
        assert (evening.from_h, evening.bed_h, evening.up_h, evening.leave_h) == pytest.approx(times)
        assert hours_of(asked.times)[0] == pytest.approx(times[0] % 24)
        assert [one.code for one in asked.notes if one.code in {"late_h", "evening_assumed"}] == ["evening_assumed"]
        assert planned(asked).lines

    @pytest.mark.parametrize(
        ("seen", "known"),
        [
            (EVENING - HOUR, True),
            (datetime(2026, 5, 7, 19, 0, tzinfo=UTC), True),
            (datetime(2026, 5, 7, 18, 59, tzinfo=UTC), False),
            (datetime(2026, 5, 9, 7, 30, tzinfo=UTC), True),
            (datetime(2026, 5, 10, tzinfo=UTC), False),
            (datetime(2026, 11, 25, 12, tzinfo=UTC), True),
        ],
    )
    def test_for_an_evening_that_is_over_a_charge_is_judged_by_its_own_hours(self, seen, known):
        """Its plan stays what it was; what is seen today counts too, for a day that is planned on an older one."""
        now = datetime(2026, 11, 25, 21, 30, tzinfo=UTC)
        plan = planned_with(thing("phone", "phone", pct=55, at=seen), charger(10), cable(), now=now)
        assert line(plan, "phone").on_hand.reckoned_pct == (55 if known else 0)

    def test_an_evening_that_has_begun_says_by_how_much(self):
        plan = planned_with(PHONE, charger(10), cable(), time_zone="Europe/Vienna")
        assert note(plan, "late_h").value == pytest.approx(1.5)  # 18:30 UTC is 20:30 there

    def test_forty_things_are_planned_and_the_rest_is_named(self):
        things = [thing(f"lamp {n}", "light") for n in range(42)]
        assessment = judged(outing(pinned=[one.id for one in things], evening=TIMES), but(instead=things), NEW)
        asked = asked_evening(assessment, things, LIBRARY)
        assert len(asked.evening.things) == 40
        assert len(asked.not_planned) == 4  # two lamps, and phone and radio of the plain kit without figures
        assert next(one for one in asked.notes if one.code == "too_many_things").limit == 40

    def test_past_twelve_things_the_rest_gets_what_is_left_and_that_is_said(self):
        things = [thing(f"lamp {n}", "light", wh=2) for n in range(14)]
        assessment = judged(outing(pinned=[one.id for one in things], evening=TIMES), but(instead=things), NEW)
        plan = planned(asked_evening(assessment, [*things, charger(10, 10), cable(n=9)], LIBRARY))
        assert [len(plan.lines), len(plan.by_turns), plan.complete] == [14, 2, False]
        assert all(line.full for line in plan.lines)
        assert any("got what the others left" in text for text in plan_tried_texts(plan))


class TestSockets:
    def test_without_a_free_socket_a_socket_helps_and_the_short_are_named(self):
        plan = planned_with(PHONE, RADIO, charger(10), cable(), evening={**TIMES, "sockets": 0})
        assert [one.left_out for one in plan.lines] == ["no_socket", "no_socket"]
        assert (plan.steps, plan.all_full, plan.bottleneck) == ((), False, None)
        assert summary_text(plan) == "No socket is free. Not full at leaving: phone, radio."
        assert [help_text(one) for one in plan.helps] == [
            "1 more free socket, from a multi-socket perhaps: then all of it is full"
        ]

    def test_a_second_charger_wants_a_second_socket(self):
        short = {**TIMES, "from_at": "21:30", "up_at": "22:30", "leave_at": "22:30", "sockets": 1}
        plan = planned_with(PHONE, RADIO, charger(10), cable(), evening=short)
        assert any("and a free socket for it" in help_text(one) for one in plan.helps)


class TestMoves:
    def test_unequal_ports_say_that_not_all_moves_were_compared(self):
        short = {**TIMES, "from_at": "20:30", "up_at": "22:30", "leave_at": "22:30"}
        plan = planned_with(PHONE, RADIO, charger(10, 5), cable(), evening=short)
        assert (plan.complete, plan.moves_compared) == (False, False)
        assert "something might be fuller" in "".join(plan_tried_texts(plan))
        assert charge_json(plan, {}, outing())["tried"] == list(plan_tried_texts(plan))
        assert "Moving half-charged things" in " ".join(charge_lines(plan, {}, EVENING, outing()))
        equal = planned_with(PHONE, RADIO, charger(10, 10), cable(), evening=short)
        assert (equal.complete, plan_tried_texts(equal)) == (True, ())


class TestPlugs:
    def test_no_cable_between_port_and_socket(self):
        plan = planned_with(PHONE, charger(10), cable("USB-A to micro-USB"))
        assert line(plan, "phone").left_out == "no_cable"
        assert not plan.all_full
        assert [one.connectors for one in plan.helps] == [("USB-C", "USB-C")]

    def test_one_cable_for_two(self):
        both = planned_with(PHONE, RADIO, charger(10, 10), cable(n=2))
        one = planned_with(PHONE, RADIO, charger(10, 10), cable(n=1))
        assert line(both, "radio").full_h < line(one, "radio").full_h

    def test_a_bank_is_charged_through_the_socket_that_takes(self):
        bank = other(thing("bank", "power bank", connector="USB-A, micro-USB"), bank={"ports": 1})
        assert line(planned_with(bank, charger(10, connector="USB-A"), cable("USB-A to micro-USB")), "bank").full_h
        barred = planned_with(bank, charger(10, connector="USB-C"), cable("USB-C to USB-A"))
        assert line(barred, "bank").left_out == "no_cable"

    def test_barrel_with_a_fixed_cable(self):
        plug = item("base", "charger", charger={"ports": [{"power_w": 6, "connector": "barrel", "fixed_cable": True}]})
        radio = thing("radio", "radio", connector="barrel")
        assert line(planned_with(radio, PHONE, plug, cable()), "radio").full_h
        assert line(planned_with(radio, PHONE, plug, cable()), "phone").left_out == "no_port"


class TestCautions:
    def test_a_swollen_one_is_not_charged(self):
        plan = planned_with(thing("phone", "phone", swollen_on="2026-05-08"), charger(10), cable(), taken=["phone"])
        assert line(plan, "phone").left_out == "swollen"
        assert note(plan, "swollen").items == ("phone",)
        assert (plan.all_full, plan.full_by_h, plan.helps) == (False, None, ())

    def test_a_swollen_one_is_never_full_even_if_it_was_seen_so(self):
        swollen = thing("phone", "phone", pct=100, swollen_on="2026-05-08")
        plan = planned_with(swollen, charger(10), cable(), taken=["phone"])
        assert not plan.all_full
        assert not line(plan, "phone").full

    def test_below_freezing(self):
        plan = planned_with(PHONE, charger(10), cable(), evening={**TIMES, "place_c": -1})
        assert line(plan, "phone").left_out == "too_cold"

    def test_age_from_making_else_buying(self):
        thing = item("a", made_on="2020-03-15", bought_on="2024-01-01")
        assert months_old(thing, date(2026, 3, 14)) == 71
        assert months_old(thing, date(2026, 3, 15)) == 72
        assert months_old(other(thing, made_on=None), date(2026, 3, 15)) == 26
        assert months_old(item("b"), date(2026, 3, 15)) is None


class TestStart:
    def test_full_needs_none_and_short_begins_as_planned(self):
        short = {**TIMES, "from_at": "22:00", "up_at": "22:30", "leave_at": "22:30"}
        plan = planned_with(PHONE, RADIO, charger(10), cable(), evening=short)
        day = outing(starts=[{"item": "vario", "likely_pct": 50}, {"item": "phone", "likely_pct": 5}])
        found = {start.item: start for start in start_charges(plan, day)}
        assert found.keys() == {"vario", "phone", "radio"}
        assert found["phone"] == StartCharge(item="phone", low_pct=42.5, likely_pct=42.5, high_pct=42.5)
        assert start_charges(planned_with(PHONE, charger(10), cable()), outing()) == ()

    def test_reckoned_as_empty_it_may_be_anything_above(self):
        unknown = replace_charge(PHONE)
        short = {**TIMES, "from_at": "22:00", "up_at": "22:30", "leave_at": "22:30"}
        (start,) = start_charges(planned_with(unknown, charger(10), cable(), evening=short), outing())
        assert (start.low_pct, start.likely_pct, start.high_pct) == (22.5, 22.5, 100)

    SHORT = MappingProxyType({**TIMES, "from_at": "22:00", "up_at": "22:30", "leave_at": "22:30"})

    def test_before_any_is_entered_it_is_told_what_does_not_end_full(self):
        """The power budget begins full where nothing is entered: the plan of the night says otherwise."""
        plan = planned_with(PHONE, RADIO, charger(10), cable(), evening=self.SHORT)
        assert other_starts(plan, outing()) == (OtherStart("phone", 100, 42.5), OtherStart("radio", 100, 20))
        assert other_starts(plan, outing(starts=start_charges(plan, outing()))) == ()
        assert other_starts(planned_with(PHONE, charger(10), cable()), outing()) == ()

    def test_without_a_socket_too(self):
        plan = planned_with(PHONE, charger(10), cable(), evening={**TIMES, "sockets": 0})
        assert plan.has_charger
        assert other_starts(plan, outing()) == (OtherStart("phone", 100, 20),)
        text = " ".join(" ".join(charge_lines(plan, {"phone": "Phone"}, EVENING, outing())).split())
        assert "The outing begins otherwise, reckoned / planned: Phone 100 / 20 %" in text
        told = charge_json(plan, {"phone": "Phone"}, outing())["other_starts"]
        assert told == [{"item": "Phone", "begins_pct": 100, "planned_pct": 20}]

    def test_what_is_swollen_answers_for_nothing_and_without_a_charger_nothing_is_planned(self):
        swollen = thing("phone", "phone", swollen_on=date(2026, 5, 1))
        assert other_starts(planned_with(swollen, charger(10), cable()), outing()) == ()
        bare = planned_with(PHONE)
        assert not bare.has_charger
        assert other_starts(bare, outing(starts=[{"item": "phone", "likely_pct": 5}])) == ()

    def test_without_its_charging_power_a_thing_keeps_what_was_set(self):
        plan = planned_with(thing("phone", "phone", watts=None), charger(10), cable())
        day = outing(starts=[{"item": "phone", "likely_pct": 40}])
        assert start_charges(plan, day) == day.starts


def replace_charge(one):
    return other(one, battery={**one.battery.model_dump(), "on_hand_pct": None, "on_hand_at": None})


def test_hours_run_on_one_axis():
    late = Evening(from_at=time(21), bed_at=time(0, 30), up_at=time(7), leave_at=time(8))
    assert hours_of(late) == (21, 24.5, 31, 32)
    day = Evening(from_at=time(9), bed_at=time(9), up_at=time(9), leave_at=time(12))
    assert hours_of(day) == (9, 9, 9, 12)


def test_the_plan_without_help_says_that_it_is_not_computed():
    kit = but("phone", "radio", instead=(PHONE, charger(10), cable()))
    asked = asked_evening(judged(outing(evening=TIMES), kit, NEW), kit.items, LIBRARY)
    assert planned(asked).helps is None
    assert replace(planned(asked), helps=()) == evening_plan(
        judged(outing(evening=TIMES), kit, NEW), kit.items, LIBRARY
    )
