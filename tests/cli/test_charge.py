"""kitlog charge on the command line."""

import json
from pathlib import Path
from typing import Any

import pytest
from calling import NOW, Kitlog, one_line

from kitlog.app import App
from kitlog.kit.item import Item


def enter_charger(path: Path) -> None:
    """A charger of two ports, and a charging power for everything that lacks one."""
    bench = App(clock=lambda: NOW).bench(path, create=False)
    ports = [{"power_w": 20.0, "connector": "USB-C"}, {"power_w": 12.0, "connector": "USB-C"}]
    block = {"id": "block", "name": "Block", "kind": "charger", "charger": {"ports": ports}}
    bench.delete_items([item.id for item in bench.items() if item.charger])
    bench.add_item(Item.model_validate(block))
    bench.edit_items(
        [
            item.model_copy(update={"battery": item.battery.model_copy(update={"charge_max_w": 5.0})})
            for item in bench.items()
            if item.battery is not None and item.battery.charge_max_w is None
        ]
    )
    bench.close()


def item_of(kitlog: Kitlog, path: Path, name: str) -> dict[str, Any]:
    return next(item for item in kitlog("--data", path, "kit", "list", "--json").json if item["name"] == name)


class TestTonight:
    def test_the_outing_worked_on_is_the_default(self, kitlog: Kitlog, demo: Path) -> None:
        enter_charger(demo)
        said = kitlog("--data", demo, "charge", "--json")
        named = kitlog("--data", demo, "charge", said.json["outing"], "--json")
        assert (said.code, said.err) == (0, "")
        assert named.json == said.json
        assert said.json["evening_of"] == "2026-05-08"
        phone = next(thing for thing in said.json["things"] if thing["item"] == "Phone")
        assert phone["full_at"] is not None
        assert {hang["charger"] for hang in phone["hangs"]} == {"Block"}
        assert all(step["at"] for step in said.json["steps"])

    def test_in_words(self, kitlog: Kitlog, demo: Path) -> None:
        enter_charger(demo)
        said = kitlog("--data", demo, "charge")
        assert said.code == 0
        for part in ("By the clock", "plug ", "To know", "Block, port 1", "Planning figures"):
            assert part in said.out
        assert max(map(len, said.out.splitlines())) <= 80

    def test_an_unknown_outing(self, kitlog: Kitlog, demo: Path) -> None:
        assert "no outing is called" in one_line(kitlog("--data", demo, "charge", "nowhere"))

    def test_none_at_all(self, kitlog: Kitlog, nothing: Path) -> None:
        kitlog("--data", nothing, "pilot", "--name", "Ines")
        assert "no outing is saved" in one_line(kitlog("--data", nothing, "charge"))

    def test_without_a_charger_it_says_so_and_what_to_enter(
        self, kitlog: Kitlog, nothing: Path, tmp_path: Path
    ) -> None:
        outing = {"name": "bare", "flight_types": ["ridge"], "first_day": "2026-05-09"}
        file = tmp_path / "o.json"
        file.write_text(json.dumps(outing))
        kitlog("--data", nothing, "outing", "save", file)
        said = kitlog("--data", nothing, "charge", "--json").json
        assert not said["all_full"]
        assert [caution["code"] for caution in said["cautions"]] >= ["no_charger"]
        assert said["summary"] == "No charger is on record, so nothing can be planned."
        assert said["to_enter"]


class TestOnHand:
    def test_several_at_once(self, kitlog: Kitlog, demo: Path) -> None:
        said = kitlog("--data", demo, "charge", "--on-hand", "Phone=63", "Power bank=40.5 %", "--json")
        assert said.json == [{"item": "Phone", "on_hand_pct": 63}, {"item": "Power bank", "on_hand_pct": 40.5}]
        assert item_of(kitlog, demo, "Phone")["battery"]["on_hand_pct"] == 63
        assert item_of(kitlog, demo, "Power bank")["battery"]["on_hand_pct"] == 40.5

    @pytest.mark.parametrize("wrong", ["Phone", "Phone=full", "=50", "Phone=101", "Phone=-1", "Phone=nan"])
    def test_what_is_no_charge_is_refused_and_nothing_written(self, kitlog: Kitlog, demo: Path, wrong: str) -> None:
        before = item_of(kitlog, demo, "Power bank")
        assert "--on-hand" in one_line(kitlog("--data", demo, "charge", "--on-hand", "Power bank=12", wrong))
        assert item_of(kitlog, demo, "Power bank") == before

    @pytest.mark.parametrize("second", ["Phone=50", "Phone=63", "id"])
    def test_one_thing_named_twice(self, kitlog: Kitlog, demo: Path, second: str) -> None:
        before = item_of(kitlog, demo, "Phone")
        again = f"{before['id']}=50" if second == "id" else second
        refused = one_line(kitlog("--data", demo, "charge", "--on-hand", "Phone=63", again))
        assert "--on-hand: “Phone” is named twice" in refused
        assert item_of(kitlog, demo, "Phone") == before

    def test_unknown_names_and_things_without_a_battery(self, kitlog: Kitlog, demo: Path) -> None:
        assert "no item is called" in one_line(kitlog("--data", demo, "charge", "--on-hand", "Kite=50"))
        assert "no battery" in one_line(kitlog("--data", demo, "charge", "--on-hand", "Helmet A=50"))

    def test_excludes(self, kitlog: Kitlog, demo: Path) -> None:
        one_line(kitlog("--data", demo, "charge", "--storage", "--on-hand", "Phone=1"))
        one_line(kitlog("--data", demo, "charge", "--season-over"))
        one_line(kitlog("--data", demo, "charge", "somewhere", "--storage"))


class TestStorage:
    def test_lists_what_lies(self, kitlog: Kitlog, demo: Path) -> None:
        lines = kitlog("--data", demo, "charge", "--storage", "--season-over", "--json").json
        phone = next(line for line in lines if line["item"] == "Phone")
        assert phone.keys() >= {"act", "why", "from_pct", "to_pct", "last_used", "on_hand_pct", "on_hand_age_h"}

    def test_in_words_with_its_source(self, kitlog: Kitlog, demo: Path) -> None:
        kitlog("--data", demo, "charge", "--on-hand", "Phone=95")
        said = kitlog("--data", demo, "charge", "--storage", "--season-over")
        assert "use down to 50" in said.out
        assert "trade practice" in said.out
        assert max(map(len, said.out.splitlines())) <= 80
