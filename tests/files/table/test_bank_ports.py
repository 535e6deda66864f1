"""mAh of banks at 5 V, moments, and a bank that contradicts itself, through the import of anybody's table."""

import itertools
from datetime import UTC, datetime

import pytest

from kitlog.files.resources import resources_folder
from kitlog.files.table.doubt import Answers, Question, Settled
from kitlog.files.table.open_grid import read_grid
from kitlog.files.table.vocabulary import load_vocabulary
from kitlog.kit.facets import Bank, Battery
from kitlog.packing.capacity import energy_wh
from kitlog.workbench.kit_preview import ImportChoices, KitPreview, KitSource, preview_kit

WORDS = load_vocabulary(resources_folder())


def looked_at(text: str, answers: dict[Question, str] | None = None) -> KitPreview:
    count = itertools.count(1)
    source = KitSource((), WORDS, lambda: str(next(count)), {}, lambda _item: None)
    choices = ImportChoices(settled=Settled(Answers(answers or {})))
    return preview_kit(source, read_grid(text.encode(), "list.csv"), "list.csv", choices)


BANKS = "Item;Kind;mAh;V\nLittle one;Power bank;10000;5\nBig one;Power bank;20000;3.7\nVario;Instrument;900;5\n"


def test_mah_of_a_bank_at_five_volts_go_to_its_ports() -> None:
    preview = looked_at(BANKS, {Question.MAH_AT: "5v"})
    assert (preview.doubts, preview.problems) == ((), ())
    little, big, vario = preview.new
    assert (little.battery, little.bank) == (None, Bank(rated_mah=10_000))
    assert (big.battery, big.bank) == (Battery(mah=20_000, v=3.7), None)
    assert (vario.battery, vario.bank) == (Battery(wh=4.5), None)


def test_5_v_beside_mah_are_asked_about_of_banks_and_devices() -> None:
    preview = looked_at(BANKS)
    assert [(doubt.question, doubt.spot.row) for doubt in preview.doubts] == [
        (Question.MAH_AT, 2),
        (Question.MAH_AT, 4),
    ]


def test_in_a_table_of_kitlog_5_v_beside_mah_leave_the_energy_unknown() -> None:
    (bank,) = looked_at("name,kind,battery_mah,battery_v\nBank,power bank,10000,5\n").new
    assert bank.battery == Battery(mah=10_000, v=5)
    assert energy_wh(bank) is None


def test_mah_of_the_cell_stay_with_the_battery() -> None:
    little = looked_at(BANKS, {Question.MAH_AT: "cell"}).new[0]
    assert (little.battery, little.bank) == (Battery(mah=10_000), None)


@pytest.mark.parametrize("wh", ["50", "49"])
def test_watt_hours_that_agree_leave_nothing_to_ask(wh: str) -> None:
    preview = looked_at(f"Item;Kind;Wh;mAh;V\nBank;Power bank;{wh};10000;5\n")
    assert preview.doubts == ()
    assert preview.new[0].battery == Battery(wh=float(wh), mah=10_000, v=5)


def test_a_moment_is_read_as_it_is_written_and_nothing_else_is() -> None:
    preview = looked_at("name,battery_on_hand_pct,battery_on_hand_at\nA,40,2026-05-08T20:30:00+02:00\nB,50,-\n", {})
    first, second = (item.battery for item in preview.new)
    assert first is not None
    assert first.on_hand_at == datetime(2026, 5, 8, 18, 30, tzinfo=UTC)
    assert second == Battery(on_hand_pct=50)
    open_ = looked_at("name,battery_on_hand_at\nA,last night\n")
    assert [doubt.question for doubt in open_.doubts] == [Question.UNREAD]


def test_a_bank_that_gives_more_than_it_holds_is_told_by_row() -> None:
    preview = looked_at("name,kind,battery_wh,bank_rated_mah\nGood,power bank,37,6000\nBad,power bank,37,10000\n")
    (problem,) = preview.problems
    assert (problem.row, problem.column, problem.code) == (3, "bank_rated_mah", "cell.gives_more")
