"""What an import says of cells that it leaves not known, of columns it does not read, and of wrong options."""

import pytest
from calling import Kitlog


@pytest.fixture
def table(tmp_path):
    def write(text: str) -> str:
        path = tmp_path / "kit.csv"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return write


def test_a_cell_left_not_known_is_told_with_all_it_can_mean(kitlog: Kitlog, table) -> None:
    file = table("Name;Gewicht (g);Gekauft;Akku;Volt\nRetter;1.250;Mai 2020;;\nBank;360;;10000 mAh;5 V\n")
    said = " ".join(kitlog("kit", "import", file, "--doubtful", "empty").out.split())
    assert "“1.250” can be 1250 g, 1.25 g" in said
    assert "“Mai 2020” names no day (2020-05-01, 2020-05-31)" in said
    assert "no single cell has 5 V: 10000 mAh, ? V, 10000 mAh × 5 V = 50 Wh" in said


def test_every_cell_of_a_doubt_about_several_is_named(kitlog: Kitlog, table) -> None:
    file = table("Name,Wh,Capacity,Volts\nBank,,10000 mAh,5 V\nLamp,50,10000 mAh,3.7 V\n")
    refused = kitlog("kit", "import", file).err
    assert "row 2, Capacity | Volts: 5 V stands beside mAh" in refused
    assert "row 3, Wh | Capacity | Volts: Wh and mAh x V disagree" in refused
    said = " ".join(kitlog("kit", "import", file, "--doubtful", "empty").out.split())
    assert "row 2, Capacity | Volts: “10000 mAh | 5 V” was left not known" in said
    assert "row 3, Wh | Capacity | Volts: “50 | 10000 mAh | 3.7 V” was left not known" in said
