"""Rules on the command line: of an item, of every item of a model, and the look for a maker's notices."""

import json
from pathlib import Path

import pytest
from calling import Kitlog

KIT = """name,kind,maker,model,opening_h
Wing old,wing,Hollin,Tarn 2,100
Wing new,wing,hollin,TARN 2,0
Wing other,wing,Hollin,Merlar,0
Wing nameless,wing,,,0
"""


@pytest.fixture
def kit(kitlog: Kitlog, nothing: Path, tmp_path: Path) -> Path:
    table = tmp_path / "kit.csv"
    table.write_text(KIT, encoding="utf-8")
    assert kitlog("--data", nothing, "kit", "import", table).code == 0
    return nothing


def rules(kitlog: Kitlog, kit: Path, *more: str) -> dict[str, list[dict[str, object]]]:
    said = kitlog("--data", kit, "service", "rules", "--json", *more)
    assert said.code == 0
    found: dict[str, list[dict[str, object]]] = json.loads(said.out)
    return found


def of_items(kitlog: Kitlog, kit: Path) -> dict[tuple[object, object], object]:
    return {(rule["item"], rule["rule"]): rule["months"] for rule in rules(kitlog, kit)["rules"]}


def test_nothing_is_on_record_until_it_is_taken(kitlog: Kitlog, kit: Path) -> None:
    said = kitlog("--data", kit, "service", "rules")
    assert "nothing is known about service" in said.out
    offered = kitlog("--data", kit, "service", "rules", "--item", "Wing old").out
    assert "wing.full (starter)" in offered
    assert "manual of the very model" in " ".join(offered.split())
    assert rules(kitlog, kit)["rules"] == []


def test_a_starter_is_taken_and_changed_and_its_source_goes_with_its_figures(kitlog: Kitlog, kit: Path) -> None:
    assert kitlog("--data", kit, "service", "rule", "take", "Wing old", "wing.full").code == 0
    (rule,) = rules(kitlog, kit)["rules"]
    assert (rule["months"], rule["hours"], rule["ground_handling"]) == (24, 100, True)
    assert rule["source"]
    said = kitlog("--data", kit, "service", "rule", "set", "Wing old", "wing.full", "--months", "36", "--hours", "none")
    assert said.code == 0
    assert "no source given" in said.out
    (rule,) = rules(kitlog, kit)["rules"]
    assert (rule["months"], rule["hours"], rule["source"], rule["ground_handling"]) == (36, None, "", True)
    kitlog("--data", kit, "service", "rule", "set", "Wing old", "wing.full", "--source", "manual, page 31")
    (rule,) = rules(kitlog, kit)["rules"]
    assert (rule["months"], rule["source"]) == (36, "manual, page 31")


def test_for_every_item_of_the_model(kitlog: Kitlog, kit: Path) -> None:
    kitlog("--data", kit, "service", "rule", "set", "Wing new", "wing.full", "--months", "12", "--source", "school")
    said = kitlog(
        "--data", kit, "service", "rule", "set", "Wing old", "wing.full",
        "--months", "36", "--hours", "200", "--source", "manual, page 31", "--model",
    )  # fmt: skip
    assert said.code == 0
    assert "For 1 item: Wing old." in said.out
    assert "Figures of its own, kept as they are: Wing new." in said.out
    assert of_items(kitlog, kit) == {("Wing old", "wing.full"): 36, ("Wing new", "wing.full"): 12}
    said = kitlog(
        "--data", kit, "service", "rule", "set", "Wing old", "wing.full", "--months", "30", "--model", "--all", "--json"
    )
    assert {rule["item_id"] for rule in json.loads(said.out)["of_model"]} == {
        rule["item_id"] for rule in rules(kitlog, kit)["rules"]
    }
    assert of_items(kitlog, kit) == {("Wing old", "wing.full"): 30, ("Wing new", "wing.full"): 30}
    (model,) = rules(kitlog, kit)["models"]
    assert (model["model"], model["months"]) == ("Tarn 2", 30)


def test_one_goes_its_own_way_and_back(kitlog: Kitlog, kit: Path) -> None:
    kitlog("--data", kit, "service", "rule", "take", "Wing old", "wing.trim", "--model")
    assert of_items(kitlog, kit) == {("Wing old", "wing.trim"): 12, ("Wing new", "wing.trim"): 12}
    kitlog("--data", kit, "service", "rule", "set", "Wing new", "wing.trim", "--months", "6")
    assert of_items(kitlog, kit)["Wing new", "wing.trim"] == 6
    assert kitlog("--data", kit, "service", "rule", "follow", "Wing new", "wing.trim").code == 0
    assert of_items(kitlog, kit)["Wing new", "wing.trim"] == 12


def test_the_rule_of_the_model_is_deleted_and_its_items_keep_theirs(kitlog: Kitlog, kit: Path) -> None:
    kitlog("--data", kit, "service", "rule", "take", "Wing old", "wing.trim", "--model")
    said = kitlog("--data", kit, "service", "rule", "delete", "Wing new", "wing.trim", "--model")
    assert "2 rules of items stay" in said.out
    assert len(of_items(kitlog, kit)) == 2
    assert kitlog("--data", kit, "service", "rule", "delete", "Wing new", "wing.trim").code == 0
    assert of_items(kitlog, kit) == {("Wing old", "wing.trim"): 12}


def test_an_event_rule_of_ones_own(kitlog: Kitlog, kit: Path) -> None:
    said = kitlog(
        "--data",
        kit,
        "service",
        "rule",
        "set",
        "Wing old",
        "aired",
        "--after",
        "damp",
        "--event-days",
        "2",
        "--open",
        "yes",
    )
    assert said.code == 0
    assert "within 2 days after damp" in said.out
    (rule,) = rules(kitlog, kit)["rules"]
    assert (rule["rule"], rule["events"], rule["event_days"], rule["grounds"]) == ("aired", ["damp"], 2, "yes")


def test_one_look_for_notices_serves_the_model(kitlog: Kitlog, kit: Path) -> None:
    refused = kitlog("--data", kit, "service", "notices", "Wing old")
    assert refused.code == 2
    assert "service rule take ITEM maker.notices" in refused.err
    kitlog("--data", kit, "service", "rule", "take", "Wing old", "maker.notices", "--model")
    said = kitlog("--data", kit, "service", "notices", "Wing new", "--who", "I", "--found", "maker's page: none")
    assert said.code == 0
    assert "Entered for 2 items: Wing new, Wing old." in said.out
    due = json.loads(kitlog("--data", kit, "due", "--json").out)
    assert {line["state"] for line in due} == {"in date"}


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("rule", "set", "Wing old", "mine"), "has no limit"),
        (("rule", "set", "Wing old", "mine", "--months", "0"), "--months"),
        (("rule", "set", "Wing old", "mine", "--months", "12", "--advised", "24"), "recommended interval"),
        (("rule", "set", "Wing old", "mine", "--months", "12", "--all"), "--model"),
        (("rule", "set", "Wing nameless", "mine", "--months", "12", "--model"), "names no model"),
        (("rule", "take", "Wing old", "helmet.age"), "no rule helmet.age is offered"),
        (("rule", "follow", "Wing old", "wing.full"), "no rule wing.full"),
        (("rule", "delete", "Wing old", "wing.full", "--model"), "has no rule wing.full"),
        (("rule", "delete", "Wing old", "wing.full", "--items-too"), "--model"),
        (("rule", "set", "Nobody", "mine", "--months", "12"), "Nobody"),
        (("notices", "Wing old", "--on", "2030-01-01"), "notices"),
    ],
)
def test_what_cannot_be_is_told_and_nothing_is_written(
    kitlog: Kitlog, kit: Path, words: tuple[str, ...], told: str
) -> None:
    said = kitlog("--data", kit, "service", *words)
    assert said.code == 2
    assert told in said.err
    assert rules(kitlog, kit) == {"rules": [], "models": []}


def test_an_event_is_one_that_can_be_logged(kitlog: Kitlog, kit: Path) -> None:
    call = ("--data", kit, "service", "rule", "set", "Wing old", "own look")
    said = kitlog(*call, "--after", "fnord")
    assert said.code == 2
    assert "“fnord” is no event that can be logged" in said.err
    assert "tree" in said.err
    assert kitlog(*call, "--after", "Tree landing", "--json").json["rule"]["events"] == ["tree"]
    assert kitlog(*call, "--after", "fnord", "--sure", "--json").json["rule"]["events"] == ["fnord"]
    assert kitlog(*call, "--after", "Fnord", "--json").json["rule"]["events"] == ["fnord"]


def test_the_help_says_what_becomes_of_the_source(kitlog: Kitlog) -> None:
    said = kitlog("service", "rule", "set", "--help")
    assert "a source is taken off where figures change" in " ".join(said.out.split())
