"""kitlog power on the command line: every answer is that of the pure functions, and the same again for a seed."""

import json
import sys
from pathlib import Path
from typing import Any

import pytest
from calling import NOW, Kitlog, one_line
from small_kit import PILOT, but, item, outing

from kitlog.app import App
from kitlog.files.outing_export import outing_json
from kitlog.packing.lightest import my_lightest_bank
from kitlog.packing.power_chance import chance_findings
from kitlog.packing.power_changes import change_odds, weighed_changes
from kitlog.packing.power_inverse import longest_retrieve, lowest_start_pct, smallest_bank_wh
from kitlog.packing.power_question import day_forecasts
from kitlog.wording.figures import NO_BREAK, THIN
from kitlog.workbench.workbench import Workbench

SHARES = [{"during": "flight", "share": 1}, {"during": "ride home", "share": 1}]
PHONE = item(
    "phone",
    "phone",
    200,
    battery={
        "wh": 10,
        "cutoff_pct": 0,
        "offset_k": 0,
        "charge_max_w": 5,
        "connector": "USB-C",
        "ways": [{"name": "on", "power_w": 2, "shares": SHARES}],
    },
)
"""10 Wh, 2 W."""

FLIGHT = {"name": "flight", "way": "flight", "low_h": 2, "likely_h": 4, "high_h": 5, "air_c": 25}
RIDE = {"name": "ride", "way": "ride home", "low_h": 1, "likely_h": 2, "high_h": 3, "air_c": 25}
ON_BIG = [{"phase": phase, "device": "phone", "bank": "big"} for phase in ("flight", "ride")]
FEW = ("--days", "400")


def bank(name: str, wh: float, mass_g: int | None) -> Any:
    cell = {"wh": wh, "fixed_c": 25, "cutoff_pct": 0, "connector": "USB-C"}
    return item(name, "power bank", mass_g, battery=cell, bank={"efficiency_pct": 100, "quiescent_w": 0, "ports": 1})


CABLE = item("cable", "cable", 20, battery={"connector": "USB-C to USB-C"})


@pytest.fixture
def small(nothing: Path) -> Path:
    """A phone at 2 W, two banks at home and a cable; four plans of the day."""
    bench = App(clock=lambda: NOW).bench(nothing, create=True)
    bench.save_pilot(PILOT)
    for one in but("phone", "radio", instead=(PHONE, bank("big", 20, 200), bank("unweighed", 30, None), CABLE)).items:
        bench.add_item(one)
    short = {"low_h": 0.5, "likely_h": 1, "high_h": 1.5}
    plans: dict[str, dict[str, Any]] = {
        "plain": {"plugs": []},
        "on big": {"plugs": ON_BIG, "pinned": ["big"]},
        "short": {"plugs": [], "phases": [FLIGHT | short, RIDE | short]},
        "flight alone": {"plugs": [], "phases": [FLIGHT]},
    }
    for name, plan in plans.items():
        made = {"id": name, "name": name, "phases": [FLIGHT, RIDE], **plan}
        bench.save_outing(outing(**made))
    bench.work_on("plain")
    bench.close()
    return nothing


def opened(path: Path) -> Workbench:
    return App(clock=lambda: NOW).bench(path, create=False)


def named(entries: list[dict[str, Any]], name: str, key: str = "subject") -> dict[str, Any]:
    return next(entry for entry in entries if entry[key] == name)


class TestAgreesWithThePureFunctions:
    @pytest.fixture
    def asked(self, kitlog: Kitlog, demo: Path) -> dict[str, Any]:
        """The cross-country day of the demo."""
        said = kitlog("--data", demo, "power", "--json", "--keep", "15", "--seed", "7", *FEW)
        assert (said.code, said.err) == (0, "")
        return {"path": demo, **said.json}

    def test_chances_and_hours_off(self, asked: dict[str, Any]) -> None:
        bench = opened(asked["path"])
        assessment = bench.assess(bench.current_outing())  # type: ignore[arg-type]
        *_rest, forecast = day_forecasts(assessment, bench.library, days=400, seed=7) or ()
        names = {one.id: one.name for one in bench.items()}
        bench.close()
        assert asked["all_last"]["chance_pct"] == pytest.approx(100 * forecast.all_last.probability)
        for name, device in forecast.devices.items():
            entry = named(asked["devices"], names[name], "device")
            assert entry["lasts"]["chance_pct"] == pytest.approx(100 * device.lasts.probability)
            assert entry["lasts"]["standard_error_pct"] == pytest.approx(100 * device.lasts.standard_error)
            assert entry["off_by_5_pct_of_days_h"] == device.off.by_5_pct_h
            assert entry["off_by_50_pct_of_days_h"] == device.off.by_50_pct_h
            assert entry["off_by_95_pct_of_days_h"] == device.off.by_95_pct_h
        called = chance_findings(assessment, forecast)
        assert [one["state"] for one in asked["can_call"]] == [finding.state.value for finding in called]
        assert asked["can_call"][0]["title"] == "Phone can still call at the end of the retrieve"

    def test_limits(self, asked: dict[str, Any]) -> None:
        bench = opened(asked["path"])
        assessment, items = bench.assess(bench.current_outing()), bench.items()  # type: ignore[arg-type]
        bench.close()
        for case, high in (("likely", False), ("high", True)):
            assert asked["longest_retrieve"][case]["h"] == longest_retrieve(assessment, 15, high=high).figure
            for entry in asked["lowest_start"]:
                device = next(one.id for one in items if one.name == entry["subject"])
                assert entry[case]["pct"] == lowest_start_pct(assessment, items, device, high=high).figure
            for entry in asked["smallest_bank"]:
                of = next(one.id for one in items if one.name == entry["subject"])
                assert entry[case]["Wh"] == smallest_bank_wh(assessment, items, of, high=high).figure

    def test_changes(self, asked: dict[str, Any]) -> None:
        bench = opened(asked["path"])
        assessment = bench.assess(bench.current_outing())  # type: ignore[arg-type]
        weighed = weighed_changes(assessment, bench.items(), bench.library)
        gains = list(change_odds(assessment, bench.library, weighed, days=400, seed=7))
        bench.close()
        shown = {(one["gain_pct"], one["gain_standard_error_pct"], one["mass_g"]) for one in asked["changes"]["found"]}
        assert shown <= {(100 * gain.gain, 100 * gain.gain_error, gain.candidate.mass_g) for gain in gains}
        assert asked["changes"]["found"]
        assert not asked["changes"]["nothing_to_mend"]


class TestAnswers:
    """On the small kit, by hand: 10 Wh at 2 W are 5 h; 8 Wh are gone at the landing."""

    def test_outcomes_are_told_apart(self, kitlog: Kitlog, small: Path) -> None:
        found = kitlog("--data", small, "power", "--json", *FEW).json
        assert found["outing"] == "plain"
        assert found["longest_retrieve"]["likely"]["outcome"] == "found"
        assert found["longest_retrieve"]["likely"]["h"] == pytest.approx(0.5)
        assert found["longest_retrieve"]["high"]["h"] == 0
        assert found["longest_retrieve"]["high"]["said"] == "never, it cannot even begin"
        assert found["lowest_start"][0]["likely"]["outcome"] == "never"
        assert found["lightest_bank"]["outcome"] == "found"
        alone = kitlog("--data", small, "power", "flight alone", "--json", *FEW).json
        assert alone["longest_retrieve"]["likely"]["outcome"] == "not_asked"
        assert "does not end on a way home" in alone["longest_retrieve"]["sentence"]

    def test_hours_to_spare_are_those_of_the_last_phase_as_in_the_repack(self, kitlog: Kitlog, small: Path) -> None:
        """Phone 1 W in flight only, 10 Wh: 6 Wh left, but on the ride it draws nothing, so there are no hours to tell.
        On the flight alone 6 Wh at 1 W are 6 h."""
        shares = [SHARES[0], {"during": "ride home", "share": 0.0}]
        bench = App(clock=lambda: NOW).bench(small, create=False)
        battery = {**PHONE.battery.model_dump(), "ways": [{"name": "on", "power_w": 1, "shares": shares}]}
        bench.edit_items([PHONE.model_validate({**PHONE.model_dump(), "battery": battery})])
        bench.close()
        for plan, more_h in (("plain", None), ("flight alone", 6.0)):
            power = kitlog("--data", small, "power", plan, "--json", *FEW).json
            packed = kitlog("--data", small, "pack", "--outing", plan, "--json").json
            asked = named(power["devices"], "phone", "device")["likely"]["margin_h"]
            assert asked == named(packed["power"]["devices"], "phone", "item")["likely"]["hours_more"] == more_h
        text = kitlog("--data", small, "power", "plain", *FEW).out.replace(NO_BREAK, " ").replace(THIN, " ")
        assert "lasts, 60 %  lasts, 50 %  >9" in text

    def test_a_start_that_is_not_entered_is_said_and_as_sure_as_in_the_repack(self, kitlog: Kitlog, demo: Path) -> None:
        power = kitlog("--data", demo, "power", "--json", *FEW).json
        packed = kitlog("--data", demo, "pack", "--outing", power["outing"], "--json").json
        sure = {one["item_ids"][0]: one["sure"] for one in packed["findings"] if one["code"] == "power.device"}
        assumed = {one["item_id"]: one["start_assumed"] for one in packed["power"]["devices"]}
        for device in power["devices"]:
            assert device["start_assumed"] is assumed[device["device_id"]] is True
            assert device["sure"] == sure[device["device_id"]] != "measured"
        text = " ".join(kitlog("--data", demo, "power", *FEW).out.replace(NO_BREAK, " ").replace(THIN, " ").split())
        assert "Begin full, assumed: " in text
        assert ", Phone (last seen with 40 %)" in text
        said = [one["sentence"] for one in packed["findings"] if one["code"] == "power.device"]
        assert all("begins full, assumed" in one or "full by the start is assumed" in one for one in said)

    def test_a_chance_on_all_days_drawn_has_its_bound(self, kitlog: Kitlog, small: Path) -> None:
        """Wilson's lower bound of 400 of 400: 400 / (400 + 1.96^2) = 99.05 %; as the words have it, >99.0 %."""
        said = kitlog("--data", small, "power", "short", "--json", *FEW).json
        lasts = named(said["devices"], "phone", "device")["lasts"]
        assert (lasts["chance_pct"], lasts["standard_error_pct"]) == (100, 0)
        assert (lasts["chance_least_pct"], lasts["chance_most_pct"]) == (99.0, 100)
        assert ">99.0" in kitlog("--data", small, "power", "short", *FEW).out

    def test_keep(self, kitlog: Kitlog, small: Path) -> None:
        found = kitlog("--data", small, "power", "--keep", "0", "--json", *FEW).json
        assert found["longest_retrieve"]["likely"]["h"] == pytest.approx(1)

    def test_changes_gain_hours_chance_and_grams(self, kitlog: Kitlog, small: Path) -> None:
        found = kitlog("--data", small, "power", "--json", *FEW).json["changes"]["found"]
        big = next(one for one in found if one["items"] == ["phone", "big"] and one["code"] == "add_bank")
        assert (big["less_short_likely_h"], big["less_short_high_h"]) == (pytest.approx(1), pytest.approx(3))
        assert big["mass_g"] == 220
        assert big["gain_pct"] > 0
        assert big["gain_standard_error_pct"] > 0
        assert big["offered"]
        unweighed = next(one for one in found if "unweighed" in one["items"])
        assert unweighed["mass_g"] is None

    def test_nothing_to_mend(self, kitlog: Kitlog, small: Path) -> None:
        found = kitlog("--data", small, "power", "short", "--json", *FEW).json
        assert found["changes"]["nothing_to_mend"]
        assert found["changes"]["found"] == []
        assert "Nothing to mend" in kitlog("--data", small, "power", "short", *FEW).out

    def test_lightest_bank(self, kitlog: Kitlog, small: Path) -> None:
        found = kitlog("--data", small, "power", "on big", "--json", *FEW).json
        bench = opened(small)
        expected = my_lightest_bank(bench.assess(bench.outing("on big")), bench.items(), bench.library)  # type: ignore[arg-type]
        bench.close()
        assert expected is not None
        assert expected.lightest is not None
        assert found["lightest_bank"]["lightest"]["bank"] == expected.lightest.bank == "big"
        tried = found["lightest_bank"]["tried"]
        assert [one["bank"] for one in tried] == [None, "big", "unweighed"]
        assert (tried[0]["why_not"], tried[2]["mass_g"]) == ("off", None)
        assert "never called the lightest" in found["lightest_bank"]["sentence"]
        least = found["smallest_bank"][0]["likely"]
        assert (least["outcome"], least["Wh"] > 0) == ("found", True)

    def test_a_device_that_is_not_described_is_said(self, kitlog: Kitlog, small: Path) -> None:
        bench = opened(small)
        phone = bench.item("phone")
        assert phone is not None
        assert phone.battery is not None
        bench.edit_items([phone.model_copy(update={"battery": phone.battery.model_copy(update={"wh": None})})])
        bench.close()
        found = kitlog("--data", small, "power", "--json", *FEW).json
        assert found["not_known"] == ["phone"]
        assert not found["changes"]["nothing_to_mend"]
        assert found["longest_retrieve"]["likely"]["outcome"] == "not_asked"
        assert "phone" in kitlog("--data", small, "power", *FEW).out

    def test_without_phases(self, kitlog: Kitlog, nothing: Path, tmp_path: Path) -> None:
        file = tmp_path / "bare.json"
        file.write_text(json.dumps({"name": "bare", "flight_types": ["ridge"], "first_day": "2026-05-09"}))
        kitlog("--data", nothing, "pilot", "--name", "Ines")
        said = kitlog("--data", nothing, "power", file)
        assert (said.code, said.err) == (0, "")
        text = " ".join(said.out.split())
        assert "The outing has no phases with durations yet: nothing can be simulated." in text
        assert "The way home: not asked, the outing has no phases with durations yet" in text
        assert "Not asked: nothing could be simulated." in text
        assert "plugged" not in text
        told = kitlog("--data", nothing, "power", file, "--json").json
        assert told["why_not_simulated"] == "no phases"
        assert "no phases" in told["longest_retrieve"]["sentence"]

    def test_what_is_swollen_is_named_and_asked_of_nothing(self, kitlog: Kitlog, small: Path, tmp_path: Path) -> None:
        bench = opened(small)
        bench.note_swollen("phone")
        plan = outing_json(bench.outing("plain"), bench.items())  # type: ignore[arg-type]
        bench.close()
        file = tmp_path / "plan.json"
        file.write_text(json.dumps({**plan, "pinned": ["phone"]}))
        found = kitlog("--data", small, "power", file, "--json", *FEW).json
        assert (found["swollen"], found["not_known"]) == (["phone"], [])
        assert "phone" not in [one["device"] for one in found["devices"]]
        text = " ".join(kitlog("--data", small, "power", file, *FEW).out.split())
        assert "Swollen, not to be taken, and in none of these answers: phone." in text


class TestCalls:
    def test_the_same_seed_gives_the_same_answers(self, kitlog: Kitlog, small: Path) -> None:
        first, again, other = (
            kitlog("--data", small, "power", "--seed", seed, "--json", *FEW).json for seed in ("3", "3", "4")
        )
        assert first == again
        assert first["devices"][0]["lasts"] != other["devices"][0]["lasts"] or first["changes"] != other["changes"]
        assert first["longest_retrieve"] == other["longest_retrieve"]

    def test_a_file_is_asked_like_the_outing_of_the_data_file(
        self, kitlog: Kitlog, small: Path, tmp_path: Path
    ) -> None:
        bench = opened(small)
        plan = outing_json(bench.outing("on big"), bench.items())  # type: ignore[arg-type]
        bench.close()
        file = tmp_path / "plan.json"
        file.write_text(json.dumps(plan))
        of_file = kitlog("--data", small, "power", file, "--json", *FEW).json
        piped = kitlog("--data", small, "power", "-", "--json", *FEW, stdin=json.dumps(plan).encode()).json
        assert of_file == piped == kitlog("--data", small, "power", "on big", "--json", *FEW).json

    def test_in_words_no_wider_than_a_terminal(self, kitlog: Kitlog, demo: Path) -> None:
        said = kitlog("--data", demo, "power", *FEW)
        assert (said.code, said.err) == (0, "")
        for part in ("Will it last", "What would help", "How far it goes", "likely day", "high day", "±", "seed 1"):
            assert part in said.out
        assert max(map(len, said.out.splitlines())) <= 80

    def test_strict(self, kitlog: Kitlog, small: Path) -> None:
        """The phone goes off and nothing else calls: a stop."""
        said = kitlog("--data", small, "power", "--json", *FEW)
        assert said.json["stops"] > 0
        assert said.code == 0
        assert kitlog("--data", small, "power", "--strict", *FEW).code == 1
        assert kitlog("--data", small, "power", "short", "--strict", *FEW).code == 0

    def test_progress_on_a_terminal_that_has_to_wait(
        self, kitlog: Kitlog, small: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        monkeypatch.setattr("kitlog.cli.working.AFTER_S", -1.0)
        monkeypatch.setattr(sys.stderr, "isatty", lambda: True)
        said = kitlog("--data", small, "power", "--json", *FEW)
        assert "asking about the power: " in said.err
        assert said.err.endswith("\r\x1b[K")
        assert said.json

    @pytest.mark.parametrize(
        ("option", "value"),
        [("--keep", "101"), ("--keep", "full"), ("--days", "0"), ("--days", "1.5"), ("--seed", "-1"), ("--seed", "x")],
    )
    def test_refused_figures(self, kitlog: Kitlog, small: Path, option: str, value: str) -> None:
        assert option in one_line(kitlog("--data", small, "power", option, value))

    def test_refused_plans(self, kitlog: Kitlog, small: Path, tmp_path: Path) -> None:
        assert "no outing is called" in one_line(kitlog("--data", small, "power", "nowhere"))
        file = tmp_path / "twice.json"
        bench = opened(small)
        plan = outing_json(bench.outing("on big"), bench.items())  # type: ignore[arg-type]
        bench.close()
        file.write_text(json.dumps(plan | {"plugs": [*plan["plugs"], plan["plugs"][0]]}))
        assert "plugged in twice" in one_line(kitlog("--data", small, "power", file))
        assert "twice.json" in one_line(kitlog("--data", small, "power", file))

    def test_none_at_all(self, kitlog: Kitlog, nothing: Path) -> None:
        kitlog("--data", nothing, "pilot", "--name", "Ines")
        assert "no outing is saved" in one_line(kitlog("--data", nothing, "power"))
