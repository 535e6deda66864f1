"""How candidates are made, sorted and what they say of harm: small days at 25 deg C, worked by hand."""

import sys
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kitlog.budget.power.changes import edits
from kitlog.budget.power.changes.candidate import Candidate
from kitlog.budget.power.changes.generate import MOST_CANDIDATES, candidates
from kitlog.budget.power.changes.given import ToHand
from kitlog.budget.power.changes.outcome import outcome
from kitlog.budget.power.changes.weigh import plan, remedies, weigh
from kitlog.budget.power.day import Bank, Day
from kitlog.budget.power.question import Target
from kitlog.fault import InputFault

sys.path.insert(0, str(Path(__file__).parents[3] / "reference"))  # importmode=importlib finds no neighbours
from power_days import random_day

raw_days = st.randoms(use_true_random=False).map(random_day)
quick = settings(max_examples=100, deadline=None)

PHASES = [{"id": "flight", "hours": 4, "ambient_C": 25}, {"id": "ride", "hours": 2, "ambient_C": 25}]
SPARE = {"id": "spare", "cell_Wh": 20, "eff": 1}


def device(name, wh, watts, **more):
    draw = {"flight": watts, "ride": watts}
    return {"id": name, "cell_Wh": wh, "draw_W": draw, "charge_max_W": 5, "charge_eff": 1, "knee": 1, **more}


def bank(name="bank", wh=10, **more):
    return {"id": name, "cell_Wh": wh, "eff": 1, **more}


def on(device, *phases, bank="bank", **more):
    return [{"phase": phase, "device": device, "bank": bank, **more} for phase in phases]


def day(*devices, banks=(), plugs=()):
    fields = {"phases": PHASES, "devices": devices, "banks": banks, "plugs": plugs}
    return Day.model_validate(fields)


def found(plain, **fields):
    return remedies(plan(plain), ToHand.model_validate(fields))


def by_code(weighed):
    return {one.candidate.code: one for one in weighed}


class TestSorting:
    def test_what_saves_all_then_hours_then_grams(self):
        """Phone 4 Wh at 1 W for 6 h: 2 h short. 2 Wh from a bank are enough; a half-empty bank of 1 Wh gives 1 h."""
        plain = day(device("phone", 4, 1.0))
        spares = [
            {"bank": {**SPARE, "id": "heavy"}, "mass_g": 400},
            {"bank": {**SPARE, "id": "small", "cell_Wh": 1}, "mass_g": 30},
            {"bank": {**SPARE, "id": "unknown"}},
            {"bank": {**SPARE, "id": "light"}, "mass_g": 100},
        ]
        order = [one.candidate.ids[1] for one in found(plain, spare_banks=spares, cable_g={"phone": 20})]
        assert order == ["light", "heavy", "unknown", "small"]

    def test_masses(self):
        plain = day(device("phone", 4, 1.0), banks=[bank(wh=1)], plugs=on("phone", "flight"))
        spares = [{"bank": SPARE, "mass_g": 300}]
        codes = by_code(found(plain, spare_banks=spares, mass_g={"bank": 90}, cable_g={"phone": 20}))
        assert codes["bank_instead"].candidate.mass_g == 210
        assert codes["add_bank"].candidate.mass_g == 320
        assert codes["plug_too"].candidate.mass_g == 20
        assert by_code(found(plain, spare_banks=spares))["bank_instead"].candidate.mass_g is None
        assert by_code(found(plain, spare_banks=spares))["plug_too"].candidate.mass_g is None

    def test_the_high_case_decides_first(self):
        plain, cases = day(device("phone", 5, 1.0)), []
        long = plain.model_copy(update={"phases": tuple(p.model_copy(update={"hours": 6.0}) for p in plain.phases)})
        uses = [
            {"device": "phone", "name": name, "draw_W": {"flight": watts, "ride": watts}}
            for name, watts in (("some", 0.8), ("much", 0.4))
        ]
        cases = remedies(plan(plain, long), ToHand.model_validate({"other_uses": uses}))
        assert [one.candidate.facts["use"] for one in cases] == ["much", "some"]
        assert [(one.all_last, one.all_last_high) for one in cases] == [(True, True), (True, False)]
        assert cases[0].cut_high_h == pytest.approx(12 - 5)


class TestHours:
    def test_gain_is_the_later_switch_off(self):
        (one,) = found(day(device("phone", 4, 1.0)), spare_banks=[{"bank": {**SPARE, "cell_Wh": 1}}])
        assert one.devices["phone"].gain_h == pytest.approx(1)
        assert one.cut_h == pytest.approx(1)
        assert one.devices["phone"].likely.short_h == pytest.approx(1)

    def test_gain_goes_on_past_the_end(self):
        """Half the draw: 4 Wh at .5 W would last 8 h, 4 h were planned to work."""
        (one,) = found(
            day(device("phone", 4, 1.0)),
            other_uses=[{"device": "phone", "name": "dark", "draw_W": {"flight": 0.5, "ride": 0.5}}],
        )
        assert one.devices["phone"].gain_h == pytest.approx(8 - 4)
        assert one.devices["phone"].likely.hours_more == pytest.approx(2)
        assert one.all_last

    def test_a_start_that_was_not_full(self):
        (one,) = found(day(device("phone", 8, 1.0, start=0.5)))
        assert (one.candidate.code, one.all_last) == ("start_full", True)
        assert one.devices["phone"].gain_h == pytest.approx(8 - 4)

    def test_a_charge_that_must_be_left_counts(self):
        plain = day(device("phone", 8, 1.0, start=0.9))
        planned = plan(plain, targets=[Target(device="phone", min_soc=0.2)])
        assert planned.trouble == {"phone"}
        assert planned.likely.fares["phone"].short_h == 0
        (one,) = remedies(planned, ToHand())
        assert one.all_last


class TestHarm:
    """Radio and phone share a bank of 10 Wh with two ports."""

    def test_the_bank_runs_empty_sooner_and_the_other_one_dies(self):
        """The radio (1 Wh, 2 W: 12 Wh in 6 h) lives off the bank: 1 + 10 Wh, off at 5.5 h. The phone takes 1 W of it."""
        plain = day(
            device("radio", 1, 2.0, charge_max_W=0),
            device("phone", 4, 1.0, charge_max_W=0.001),
            banks=[bank(ports=2)],
            plugs=on("radio", "flight", "ride"),
        )
        one = next(w for w in found(plain) if w.candidate.ids == ("phone", "bank"))
        harms = {harm.code: harm for harm in one.harms}
        assert plan(plain).likely.fares["radio"].first_off_h == pytest.approx(5.5)
        assert harms["empty"].at_h == pytest.approx(10 / 3, abs=0.01)
        assert harms["empty"].sooner_h == pytest.approx(5 - 10 / 3, abs=0.01)
        assert harms["off"].id == "radio"
        assert harms["off"].at_h == pytest.approx(10 / 3 + 0.5, abs=0.01)
        assert one.devices["radio"].gain_h < 0

    def test_what_was_well_and_then_dies_is_told_even_if_it_does_not_matter(self):
        plain = day(
            device("radio", 3, 2.0, charge_max_W=0),
            device("phone", 4, 1.0),
            banks=[bank(ports=2)],
            plugs=on("radio", "flight", "ride"),
        )
        planned = plan(plain, targets=[Target(device="phone")])
        one = by_code(remedies(planned, ToHand()))["plug_too"]
        assert one.all_last
        assert [(harm.id, harm.sooner_h) for harm in one.harms if harm.code == "off"] == [("radio", None)]

    def test_a_phone_that_starts_full_can_let_its_bank_fall_asleep(self):
        """Phone of 4 Wh, idle on the bank in the first phase, then 2 W for 3 h. From .5 it charges at 1 W for 2 h and
        keeps the bank awake (.5 W at least); full it takes nothing, the bank is off after 36 s, and 4 Wh last 2 h."""
        phone = device("phone", 4, 2.0, charge_max_W=1, start=0.5)
        phone["draw_W"] = {"ride": 2.0}
        banks, plugs = [bank(wh=20, min_out_W=0.5, auto_off_s=36)], on("phone", "flight", "ride")
        phases = [{**PHASES[0], "hours": 2}, {**PHASES[1], "hours": 3}]
        fields = {"phases": phases, "devices": [phone], "banks": banks, "plugs": plugs}
        plain = Day.model_validate(fields)
        (one,) = weigh(plan(plain), [c for c in candidates(plain, ToHand()) if c.code == "start_full"])
        assert plan(plain).likely.fares["phone"].lasts
        assert not one.all_last
        assert {(harm.code, harm.id) for harm in one.harms} >= {("off", "phone"), ("asleep", "bank")}
        assert one.devices["phone"].likely.first_off_h == pytest.approx(4)

    def test_leaving_off_what_drains_the_bank_mends_it(self):
        plain = day(
            device("gloves", 1, 3.0),
            device("phone", 4, 1.0),
            banks=[bank(ports=2)],
            plugs=[*on("gloves", "flight"), *on("phone", "flight", "ride")],
        )
        one = by_code(found(plain, may_be_off=["gloves"]))["leave_off"]
        assert one.all_last
        assert ("empty", "bank") in {(mend.code, mend.id) for mend in one.mends}
        assert one.harms == ()


class TestCandidates:
    def test_never_more_than_sixty_runs(self):
        """Four devices and two banks with everything to hand that there could be."""
        devices = [device(f"d{k}", 1, 1.0, start=0.5) for k in range(4)]
        plain = day(
            *devices,
            banks=[bank("a", ports=4, start=0.5), bank("b", ports=4, start=0.5)],
            plugs=on("d0", "flight", bank="a"),
        )
        names = [f"d{k}" for k in range(4)]
        flight_mode = [
            {"device": name, "code": "flight_mode", "name": "flight mode", "draw_W": {"flight": 0.1}} for name in names
        ]
        made = candidates(
            plain,
            ToHand.model_validate(
                {
                    "spare_banks": [{"bank": {**SPARE, "id": name}} for name in ("x", "y", "z")],
                    "may_be_off": names,
                    "other_uses": flight_mode,
                    "warmer_places": [{"id": name, "place": "p", "temp_offset_C": 12} for name in [*names, "a", "b"]],
                }
            ),
        )
        assert len(made) == MOST_CANDIDATES
        assert 2 + 2 * MOST_CANDIDATES == 60

    def test_no_free_port_no_plug(self):
        plain = day(device("phone", 4, 1.0), device("radio", 9, 1.0), banks=[bank()], plugs=on("radio", "flight"))
        made = [c for c in candidates(plain, ToHand(), {"phone"}) if c.code == "plug_too"]
        assert [(c.ids, c.facts["phases"]) for c in made] == [(("phone", "bank"), ("ride",))]

    def test_a_bank_with_too_few_ports_is_not_taken_instead(self):
        plugs = [*on("phone", "flight"), *on("radio", "flight")]
        plain = day(device("phone", 4, 1.0), device("radio", 4, 1.0), banks=[bank(ports=2)], plugs=plugs)
        spare = {"spare_banks": [{"bank": SPARE}]}
        assert "bank_instead" not in {c.code for c in candidates(plain, ToHand.model_validate(spare))}

    def test_warmth_is_not_offered_where_it_frees_nothing(self):
        hand = ToHand.model_validate({"warmer_places": [{"id": "phone", "place": "p", "temp_offset_C": 12}]})
        assert candidates(day(device("phone", 4, 1.0)), hand) == ()

    def test_a_candidate_that_contradicts_the_day_is_refused(self):
        plain = day(device("phone", 4, 1.0))
        ghost = Candidate("plug_too", ("phone", "ghost"), lambda one: edits.plugged(one, "phone", "ghost", ["ride"]))
        with pytest.raises(InputFault, match=r"id\.unknown"):
            weigh(plan(plain), [ghost])

    def test_a_target_that_is_no_device_is_refused(self):
        with pytest.raises(InputFault, match=r"id\.unknown"):
            plan(day(device("phone", 4, 1.0)), targets=[Target(device="ghost")])


def everything(plain):
    """All that can be made of a random day."""
    spares = [{"bank": {"id": "spare", "cell_Wh": 15, "ports": 4}, "mass_g": 200}]
    places = [{"id": cell.id, "place": "p", "temp_offset_C": 20} for cell in (*plain.devices, *plain.banks)]
    names = [one.id for one in plain.devices]
    fields = {"spare_banks": spares, "warmer_places": places, "may_be_off": names}
    return candidates(plain, ToHand.model_validate(fields))


@quick
@given(raw_days)
def test_each_candidate_makes_a_day_that_can_be_run_and_owns_up_to_what_goes_off_sooner_or_for_longer(raw):
    plain = Day.model_validate(raw)
    planned = plan(plain)
    made = everything(plain)
    assert len(made) <= MOST_CANDIDATES
    for one in weigh(planned, made):
        after = outcome(one.candidate.make(plain), planned.targets)
        told = {harm.id for harm in one.harms if harm.code == "off"} | one.candidate.gives_up
        for name, was_h in planned.likely.first_off_h.items():
            is_h = after.first_off_h[name]
            if is_h is not None and (was_h is None or is_h < was_h - 1e-6):
                assert name in told
            was, now = planned.likely.result.devices[name], after.result.devices[name]
            if (was.on_at_end and not now.on_at_end) or now.off_h > was.off_h + 0.02:
                assert name in told | {harm.id for harm in one.harms if harm.code in ("off_at_end", "off_longer")}


@quick
@given(raw_days, st.floats(0, 60))
def test_a_bank_taken_along_never_shortens_a_life(raw, energy_wh):
    """It adds energy alone: one device that hung on nothing hangs on it, all others go on as before."""
    raw["plugs"] = [plug for plug in raw["plugs"] if plug["device"] != raw["devices"][0]["id"]]
    plain = Day.model_validate(raw)
    first = plain.devices[0].id
    extra = Bank(id="extra", cell_Wh=energy_wh)
    added = edits.plugged(edits.bank_added(plain, extra), first, "extra", [phase.id for phase in plain.phases])
    lives(plain, added)


@quick
@given(raw_days)
def test_a_full_start_never_shortens_a_life(raw):
    """Of one device by itself, on banks that stay awake and without a threshold: else a fuller device is plugged later,
    or takes too little to keep its bank awake, and may do worse (`TestHarm`)."""
    raw = {**raw, "devices": raw["devices"][:1], "banks": [{**one, "min_out_W": 0} for one in raw["banks"]]}
    name = raw["devices"][0]["id"]
    raw["plugs"] = [{**plug, "connect_below": None} for plug in raw["plugs"] if plug["device"] == name]
    plain = Day.model_validate(raw)
    for cell in (name, *(one["id"] for one in raw["banks"])):
        lives(plain, edits.started_full(plain, cell))


@quick
@given(raw_days)
def test_switching_off_what_hangs_on_nothing_leaves_the_others_alone(raw):
    raw["plugs"] = [plug for plug in raw["plugs"] if plug["device"] != raw["devices"][0]["id"]]
    plain = Day.model_validate(raw)
    off = edits.left_off(plain, raw["devices"][0]["id"])
    planned = plan(plain)
    after = outcome(off, planned.targets)
    for one in plain.devices[1:]:  # an event less moves times by a rounding
        was, now = planned.likely.fares[one.id], after.fares[one.id]
        assert (was.first_off_h is None) == (now.first_off_h is None)
        assert now.life_h == pytest.approx(was.life_h)


def lives(plain, changed):
    planned = plan(plain)
    after = outcome(changed, planned.targets)
    for name, fare in planned.likely.fares.items():
        if fare.first_off_h is None:
            assert after.fares[name].first_off_h is None
        else:
            assert after.fares[name].life_h >= fare.life_h - 1e-9


@pytest.mark.parametrize(
    ("where", "phases"),
    [
        ({}, ("ride",)),
        ({"phone": ["flight"]}, ("flight", "ride")),
        ({"bank": ["flight"]}, ("flight", "ride")),
        ({"radio": ["flight"]}, ("ride",)),
    ],
)
def test_in_flight_only_what_lies_where_hands_reach_it(where, phases):
    day = Day.model_validate({"phases": PHASES, "devices": [device("phone", 4, 1)], "banks": [bank()]})
    hand = ToHand.model_validate({"plug_phases": ["ride"], "also_plugged": where})
    (plugging,) = (one for one in candidates(day, hand) if one.code == "plug_too")
    assert plugging.facts["phases"] == phases


@pytest.mark.parametrize(("start", "phases"), [(1.0, ("flight", "ride")), (0.5, ("wait", "flight", "ride"))])
def test_what_is_full_is_not_plugged_before_its_first_use(start, phases):
    """The bank would fall asleep, and wake only for a new plug."""
    day = Day.model_validate(
        {
            "phases": [{"id": "wait", "hours": 1, "ambient_C": 25}, *PHASES],
            "devices": [device("phone", 4, 1, start=start)],
            "banks": [bank(min_out_W=0.2)],
        }
    )
    (plugging,) = (one for one in candidates(day, ToHand()) if one.code == "plug_too")
    assert plugging.facts["phases"] == phases
