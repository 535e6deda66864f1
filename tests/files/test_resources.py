"""The starter library is read from TOML files; a broken one says which file and where."""

import shutil
from pathlib import Path

import pytest

import kitlog
from kitlog.fault import SystemFault
from kitlog.files.resources import load_library, resources_folder
from kitlog.kit.kinds import Kind, Place, Zone
from kitlog.outing.library import Library


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A copy of the resources that a test may damage."""
    shutil.copytree(resources_folder() / "library", tmp_path / "library")
    return tmp_path


def refusal(folder: Path) -> SystemFault:
    with pytest.raises(SystemFault) as caught:
        load_library(folder)
    assert caught.value.code == "resources.broken"
    return caught.value


def put(folder: Path, file: str, old: str, new: str) -> None:
    path = folder / "library" / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def test_in_a_checkout_the_resources_lie_beside_the_package() -> None:
    assert resources_folder() == Path(kitlog.__file__).parents[1] / "resources"
    assert (resources_folder() / "library").is_dir()


def test_installed_they_lie_inside_the_package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    inside = tmp_path / "kitlog" / "resources"
    inside.mkdir(parents=True)
    monkeypatch.setattr(kitlog, "__file__", str(tmp_path / "kitlog" / "__init__.py"))
    assert resources_folder() == inside


def test_the_whole_library_loads_and_every_part_has_rows() -> None:
    library = load_library(resources_folder())
    assert all(getattr(library, field) for field in Library.model_fields)


def test_it_is_the_same_each_time() -> None:
    assert load_library(resources_folder()) == load_library(resources_folder())


def test_flight_types_come_in_the_order_of_their_files() -> None:
    names = [flight_type.name for flight_type in load_library(resources_folder()).flight_types]
    assert names == [
        "ridge",
        "coast",
        "local thermals",
        "cross-country",
        "hike and fly",
        "bivouac",
        "tandem",
        "over-water course",
        "competition",
    ]


def test_the_library_answers_by_name() -> None:
    library = load_library(resources_folder())
    coast = library.flight_type("coast")
    assert coast is not None
    assert coast.label == "Coast"
    assert library.flight_type("moon") is None
    assert library.facts(Kind.WING).zone is Zone.OVERHEAD
    assert library.place(Place.UNDER_SHELL).most_c == 30
    assert library.served_by_name()["whistle"].label == "is a whistle"


def test_a_check_list_names_its_moment_once(folder: Path) -> None:
    put(folder, "checks/6_in_flight.toml", 'moment = "in flight"', 'moment = "aloft"')
    moments = {check.id: check.moment for check in load_library(folder).checks}
    assert moments["fly.when"] == "aloft"
    assert moments["land.ok"] == "landing"


def test_text_that_is_no_toml_is_named_with_its_line(folder: Path) -> None:
    put(folder, "kinds.toml", 'kind = "wing"', "kind = wing")
    fault = refusal(folder)
    assert str(fault.facts["file"]).endswith("kinds.toml")
    assert "line" in str(fault.facts["problem"])


@pytest.mark.parametrize(
    ("file", "old", "new", "where"),
    [
        ("kinds.toml", "least_g = 900", "least_g = -1", "kinds.0.least_g"),
        ("kinds.toml", "least_g = 900", "lightest = 900", "kinds.0.least_g"),
        ("needs.toml", 'strength = "essential"', 'strength = "vital"', "base.0.strength"),
        ("serves.toml", 'label = "is a whistle"', 'label = "is a whistle"\ncolour = "red"', "served.1.colour"),
        ("flight_types/2_coast.toml", 'strength = "advised"', 'strength = "x"', "needs.0.strength"),
        ("checks/1_plan.toml", "text = ", "txt = ", "checks.0.text"),
        ("places.toml", 'place = "cockpit"', 'place = "moon"', "places.0.place"),
    ],
)
def test_a_wrong_field_is_named(folder: Path, file: str, old: str, new: str, where: str) -> None:
    put(folder, file, old, new)
    fault = refusal(folder)
    assert Path(str(fault.facts["file"])) == folder / "library" / file
    assert fault.facts["where"] == where
    assert fault.facts["problem"]


def test_a_reason_of_more_than_twelve_words_is_refused(folder: Path) -> None:
    put(folder, "needs.toml", 'why = "No wing, no flight."', f'why = "{"word " * 13}"')
    assert refusal(folder).facts["where"] == "base.0.why"


def test_rows_that_are_no_tables_are_refused(folder: Path) -> None:
    (folder / "library" / "checks" / "1_plan.toml").write_text('moment = "plan"\nchecks = [1]\n', encoding="utf-8")
    assert str(refusal(folder).facts["file"]).endswith("1_plan.toml")


def test_bytes_that_are_no_utf_8_are_refused(folder: Path) -> None:
    (folder / "library" / "serves.toml").write_bytes(b'name = "\xff"')
    assert str(refusal(folder).facts["file"]).endswith("serves.toml")


@pytest.mark.parametrize("file", ["kinds.toml", "flight_types", "checks"])
def test_what_is_not_there_is_named(folder: Path, file: str) -> None:
    path = folder / "library" / file
    shutil.rmtree(path) if path.is_dir() else path.unlink()
    assert Path(str(refusal(folder).facts["file"])) == path
