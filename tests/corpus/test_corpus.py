"""Spreadsheets as ten pilots keep them, in three languages: nothing wrong, nothing made up, next to nothing missed.

The sheets and their truths were written by hand before the reader existed, by someone who had not seen it; the
program decides nothing about them. Makers, models and places are invented.
"""

import re
from pathlib import Path

import pytest
from calling import Kitlog, Said
from truths import Doubt, Outcome, Truth, compare, truth_in

HERE = Path(__file__).parent
FOLDERS = sorted(path.parent.name for path in HERE.glob("*/truth.json"))
LEAST_SHARE = 0.98
_NUMBERED = re.compile(r"\b(?:line|row) (\d+)\b")


@pytest.fixture(params=FOLDERS)
def truth(request: pytest.FixtureRequest) -> Truth:
    return truth_in(HERE / request.param)


def imported(kitlog: Kitlog, truth: Truth, *options: str) -> Said:
    said = kitlog("kit", "import", truth.path, *(options or truth.options))
    assert said.code == 0, said.err
    return said


def listed(kitlog: Kitlog, truth: Truth) -> Outcome:
    return compare(truth, kitlog("kit", "list", "--json").json)


def lines_of(said: Said) -> list[str]:
    return [line for line in said.err.splitlines() if _NUMBERED.search(line)]


def names(line: str, doubt: Doubt) -> bool:
    numbers = {int(number) for number in _NUMBERED.findall(line)}
    named = any(heading in line for heading in doubt.headings) and any(text in line for text in doubt.texts)
    return doubt.line in numbers and named


class TestTheCorpus:
    def test_holds_ten_pilots_and_three_kinds_of_file(self) -> None:
        assert len({name.split("_")[0] for name in FOLDERS}) >= 10
        assert {truth_in(HERE / name).path.suffix for name in FOLDERS} == {".csv", ".xlsx", ".ods"}


class TestEverySheet:
    def test_what_is_doubtful_is_refused_cell_by_cell_and_nothing_else_is(self, kitlog: Kitlog, truth: Truth) -> None:
        said = kitlog("kit", "import", truth.path)
        if not truth.doubts:
            assert said.code == 0, said.err
            return
        assert (said.code, said.out) == (2, "")
        lines = lines_of(said)
        unnamed = [doubt for doubt in truth.doubts if not any(names(line, doubt) for line in lines)]
        more = [line for line in lines if not any(names(line, doubt) for doubt in truth.doubts)]
        assert (unnamed, more) == ([], []), said.err
        assert "there is no" in kitlog("kit", "list", "--json").err  # not even a data file

    def test_what_came_in_is_what_the_sheet_says(self, kitlog: Kitlog, truth: Truth) -> None:
        imported(kitlog, truth)
        outcome = listed(kitlog, truth)
        assert "\n".join(outcome.wrong + outcome.made_up) == ""

    def test_what_is_doubtful_can_be_left_out_and_is_then_not_known(self, kitlog: Kitlog, truth: Truth) -> None:
        said = imported(kitlog, truth, "--doubtful", "empty")
        outcome = listed(kitlog, truth)
        assert "\n".join(outcome.wrong + outcome.made_up) == ""
        for doubt in truth.doubts:
            assert any(text in said.out + said.err for text in doubt.texts), (doubt, said)

    def test_what_is_not_understood_is_named(self, kitlog: Kitlog, truth: Truth) -> None:
        said = imported(kitlog, truth)
        told = said.out + said.err
        assert [word for word in truth.said["not_understood"] + truth.said["kinds_other"] if word not in told] == []

    def test_a_second_time_every_row_meets_its_item(self, kitlog: Kitlog, truth: Truth) -> None:
        imported(kitlog, truth)
        assert kitlog("kit", "import", truth.path, *truth.options).code == 2
        imported(kitlog, truth, *truth.options, "--existing", "skip")
        assert len(kitlog("kit", "list", "--json").json) == len(truth.items)


def test_at_least_98_of_100_plain_cells_are_read_right(kitlog: Kitlog, tmp_path: Path) -> None:
    whole = Outcome()
    for name in FOLDERS:
        truth = truth_in(HERE / name)
        data = tmp_path / "kit.kitlog"
        data.unlink(missing_ok=True)
        imported(kitlog, truth)
        whole.take(listed(kitlog, truth))
    listing = "\n".join(whole.wrong + whole.made_up + whole.missing)
    assert (whole.wrong, whole.made_up) == ([], []), listing
    assert whole.right / whole.plain >= LEAST_SHARE, f"{whole.right} of {whole.plain}\n{listing}"
