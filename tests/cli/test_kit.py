from pathlib import Path

import pytest
from calling import Kitlog, one_line

EIGHT = """name,kind,mass_g
My wing,wing,4800
Harness,harness,3600
Reserve,reserve,1500
Helmet,helmet,420
Phone,phone,210
Vario,instrument,180
Radio,radio,200
Water bottle,vessel,120
"""


@pytest.fixture
def eight(tmp_path: Path) -> Path:
    file = tmp_path / "kit.csv"
    file.write_text(EIGHT)
    return file


def test_import_makes_the_data_file_and_list_shows_it(kitlog: Kitlog, nothing: Path, eight: Path) -> None:
    said = kitlog("--data", nothing, "kit", "import", eight)
    assert (said.code, said.out, said.err) == (0, "imported: 8 items\n", "")
    listed = kitlog("--data", nothing, "kit", "list")
    assert "My wing" in listed.out
    assert "8 items, 11.03\u00a0kg" in listed.out
    items = kitlog("--data", nothing, "kit", "list", "--json").json
    assert [item["name"] for item in items][:3] == ["My wing", "Harness", "Reserve"]
    assert items[0]["mass_g"] == 4800
    assert items[0]["rides_in"] == "overhead"
    assert items[0]["zone"] is None
    assert items[0]["due_state"] == "no rule"


def test_the_sum_leaves_out_what_is_retired_or_lost_as_the_window_does(kitlog: Kitlog, nothing: Path) -> None:
    table = "name,kind,mass_g,state\nMy wing,wing,4800,\nOld bank,power bank,250,retired\nCap,garment,,lost\n"
    kitlog("--data", nothing, "kit", "import", "-", stdin=table.encode())
    said = kitlog("--data", nothing, "kit", "list").out.splitlines()
    assert said[-2:] == ["1 item, 4.80\u00a0kg", "retired or lost: 2 items, 0.25\u00a0kg; mass of 1 not known"]


def test_a_dry_run_writes_nothing(kitlog: Kitlog, demo: Path, nothing: Path, eight: Path) -> None:
    before = demo.read_bytes()
    said = kitlog("--data", demo, "kit", "import", eight, "--dry-run", "--existing", "add")
    assert (said.code, said.out.splitlines()[0]) == (0, "would import: 8 items; nothing was written")
    assert demo.read_bytes() == before
    assert kitlog("--data", nothing, "kit", "import", eight, "--dry-run", "--json").json["written"] is False
    assert sorted(path.name for path in demo.parent.iterdir()) == ["kit.csv", "kit.kitlog"]


def test_import_is_all_or_nothing(kitlog: Kitlog, demo: Path, nothing: Path, eight: Path) -> None:
    eight.write_text(EIGHT + "Rope,tool,light\nLamp,light,-40\n")
    before = demo.read_bytes()
    said = kitlog("--data", demo, "kit", "import", eight, "--existing", "add")
    assert (said.code, said.out) == (2, "")
    head, *cells = said.err.splitlines()
    assert head == f"kitlog: {eight}: 2 problems; nothing was imported. Settle or mend them, and import again."
    assert cells[0].startswith(f"  {eight}, row 10, mass_g: “light” says nothing that fits here.")
    assert cells[1].startswith(f"  {eight}, row 11, mass_g: “-40”")
    assert demo.read_bytes() == before
    assert kitlog("--data", nothing, "kit", "import", eight).code == 2
    assert not nothing.exists()


def test_a_kind_that_is_none_is_other_and_said(kitlog: Kitlog, nothing: Path, eight: Path) -> None:
    eight.write_text(EIGHT + "Rope,rigging,120\n")
    said = kitlog("--data", nothing, "kit", "import", eight)
    assert said.code == 0
    assert "“rigging” is no kind that kitlog knows: taken as other (row 10)" in said.out
    assert kitlog("--data", nothing, "kit", "list", "--json").json[-1]["kind"] == "other"


def test_a_bad_service_file_keeps_the_items_out_too(kitlog: Kitlog, nothing: Path, eight: Path, tmp_path: Path) -> None:
    service = tmp_path / "service.csv"
    service.write_text("item,rule,months\nNo such thing,wing.full,24\n")
    said = kitlog("--data", nothing, "kit", "import", eight, "--service", service)
    assert said.code == 2
    assert f"{service}, row 2, item: no item is called “No such thing”" in said.err
    assert not nothing.exists()


def test_import_with_service(kitlog: Kitlog, nothing: Path, eight: Path, tmp_path: Path) -> None:
    service = tmp_path / "service.csv"
    service.write_text("item,rule,months,last_on\nReserve,reserve.repack,12,2025-05-08\n")
    said = kitlog("--data", nothing, "kit", "import", eight, "--service", service, "--json")
    assert said.code == 0
    assert [said.json[name] for name in ("written", "new", "rules", "records", "twins")] == [True, 8, 1, 1, []]
    (due,) = kitlog("--data", nothing, "due", "--json").json
    assert (due["item"], due["due_on"], due["days_left"]) == ("Reserve", "2026-05-08", 0)


def test_what_is_unusual_is_taken_and_asked_about(kitlog: Kitlog, nothing: Path) -> None:
    rows = b"name,kind,mass_g\nWing,wing,48\nHarness,,3600\nBar,food,50\nBar,food,50\n"
    said = kitlog("--data", nothing, "kit", "import", "-", stdin=rows)
    assert said.code == 0
    assert said.out.startswith("imported: 4 items\n")
    assert "row 2, Wing: 48\u00a0g is unusual for its kind" in said.out
    assert "rows 4, 5 are the same throughout" in said.out
    assert "of kind other, so hardly any need counts on it: Harness (harness?)" in said.out
    assert all(len(line) <= 80 for line in said.out.splitlines()[2:])


def test_a_file_read_twice_is_refused_until_the_pilot_decides(kitlog: Kitlog, nothing: Path, eight: Path) -> None:
    kitlog("--data", nothing, "kit", "import", eight)
    before = nothing.read_bytes()
    looked = kitlog("--data", nothing, "kit", "import", eight, "--dry-run", "--json")
    assert looked.code == 2
    assert [one["item"] for one in looked.json["meets"]] == [line.split(",")[0] for line in EIGHT.splitlines()[1:]]
    said = kitlog("--data", nothing, "kit", "import", eight)
    assert said.code == 2
    assert "row 2: “My wing” is in the kit already. Say --existing skip, update or add" in said.err
    assert nothing.read_bytes() == before
    assert kitlog("--data", nothing, "kit", "import", eight, "--existing", "skip").out.startswith(
        "imported: 0 items, 8 skipped"
    )
    assert kitlog("--data", nothing, "kit", "import", eight, "--existing", "update").out.startswith(
        "imported: 0 items, 8 as they were"
    )
    assert kitlog("--data", nothing, "kit", "import", eight, "--existing", "add").out.startswith("imported: 8 items")
    assert len(kitlog("--data", nothing, "kit", "list", "--json").json) == 16


def test_export_and_import_again(kitlog: Kitlog, demo: Path, nothing: Path, tmp_path: Path) -> None:
    kit, service = tmp_path / "k.csv", tmp_path / "s.csv"
    said = kitlog("--data", demo, "kit", "export", kit, "--service", service)
    assert said.out == f"written: {kit}\nwritten: {service}\n"
    assert "has no columns for: Flight computer, battery.ways" in said.err
    assert kitlog("--data", nothing, "kit", "import", kit, "--service", service).code == 0
    old, new = (
        [(i["name"], i["kind"], i["mass_g"]) for i in kitlog("--data", f, "kit", "list", "--json").json]
        for f in (demo, nothing)
    )
    assert old == new
    assert kit.stat().st_mode & 0o777 == 0o600


@pytest.mark.parametrize("second", ["kit.csv", "./kit.csv", "sub/../kit.csv", "link.csv"])
def test_items_and_service_never_share_a_file(kitlog: Kitlog, demo: Path, tmp_path: Path, second: str) -> None:
    kit = tmp_path / "kit.csv"
    (tmp_path / "sub").mkdir()
    if second == "link.csv":
        kit.write_text("before", encoding="utf-8")
        (tmp_path / second).symlink_to(kit)
    line = one_line(kitlog("--data", demo, "kit", "export", kit, "--service", f"{tmp_path}/{second}"))
    assert "--service: the service rules would take the place of the items. Name two different files." in line
    assert not kit.exists() or kit.read_text(encoding="utf-8") == "before"


def test_an_export_never_lands_on_a_data_file(kitlog: Kitlog, demo: Path) -> None:
    before = demo.read_bytes()
    link = demo.with_name("link.csv")
    link.symlink_to(demo)
    for target in (demo, link):
        assert "a data file lies there" in one_line(kitlog("--data", demo, "kit", "export", target))
    assert demo.read_bytes() == before


def test_an_export_into_no_folder_is_told(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    line = one_line(kitlog("--data", demo, "kit", "export", tmp_path / "no" / "k.csv"))
    assert "its folder does not exist" in line


def test_an_empty_kit_says_how_to_begin(kitlog: Kitlog, nothing: Path) -> None:
    assert kitlog("--data", nothing, "pilot", "--body-mass", "70").code == 0
    assert "Begin with: kitlog kit import FILE.csv" in kitlog("--data", nothing, "kit", "list").out


@pytest.mark.parametrize("file", ["missing.csv", "."])
def test_a_file_that_cannot_be_read_is_named(kitlog: Kitlog, nothing: Path, file: str) -> None:
    line = one_line(kitlog("--data", nothing, "kit", "import", file))
    assert line.startswith(f"kitlog: {file}: the file cannot be read: ")


def test_a_service_file_read_again_doubles_nothing(kitlog: Kitlog, nothing: Path, tmp_path: Path) -> None:
    kit, service = tmp_path / "k.csv", tmp_path / "s.csv"
    kit.write_text("name,kind\nWing,wing\n", encoding="utf-8")
    service.write_text("item,rule,months,last_on\nWing,check,24,2025-05-01\n", encoding="utf-8")
    call = ("--data", nothing, "kit", "import", kit, "--service", service)
    assert kitlog(*call).code == 0
    again = kitlog(*call, "--existing", "skip")
    assert again.code == 0
    assert "say nothing new of a rule that is there: 1" in again.out
    service.write_text("item,rule,months,last_on\nWing,check,12,2025-05-01\n", encoding="utf-8")
    kit.write_text("name,kind\nOther,wing\n", encoding="utf-8")
    said = kitlog(*call)
    assert (said.code, said.out) == (2, "")
    assert "s.csv: one problem" in said.err
    assert "Wing has the rule “check” already, and the row would change months" in said.err
    assert kitlog(*call, "--existing", "update").code == 0
    rules = kitlog("--data", nothing, "service", "rules", "--json").json
    assert "'months': 12" in str(rules)
    assert "'months': 24" not in str(rules)
    service.write_text("item,rule,months,last_on\nWing,check,12,2030-01-01\n", encoding="utf-8")
    said = kitlog(*call, "--existing", "update")
    assert said.code == 2
    assert "row 2, last_on: 2030-01-01 has not been yet" in said.err


def test_an_export_names_the_log_and_what_is_open(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    assert kitlog("--data", demo, "service", "event", "helmet blow", "Helmet A").code == 0
    said = kitlog("--data", demo, "kit", "export", tmp_path / "k.csv", "--service", tmp_path / "s.csv")
    assert "A kit that is read from them has more hours left than there are, and nothing open" in said.err
    assert "of airtime" in next(line for line in said.err.splitlines() if "Wing A: " in line and "in the log" in line)
    assert "open since" in next(line for line in said.err.splitlines() if "Helmet A, " in line and "a stop" in line)


def test_an_export_without_a_log_says_nothing_of_one(kitlog: Kitlog, nothing: Path, tmp_path: Path) -> None:
    table = tmp_path / "k.csv"
    table.write_text("name,kind\nWing,wing\n", encoding="utf-8")
    assert kitlog("--data", nothing, "kit", "import", table).code == 0
    assert kitlog("--data", nothing, "kit", "export", tmp_path / "out.csv").err == ""
