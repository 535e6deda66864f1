"""What a pilot does on the page Outing, through the window and on a real data file: the open questions."""

from desk_steps import Key, Use, item_named, outing_of, outing_page, work_on
from PySide6.QtWidgets import QApplication, QDialog

from kitlog.desktop.outing_page.answer_dialog import DayDialog, PickDialog, SetDialog
from kitlog.desktop.window import Window
from kitlog.kit.kinds import Kind
from kitlog.outing.conditions import Condition


def test_answering_a_question_of_the_day(window: Window, in_dialog: Use, qtbot) -> None:
    page, bench = outing_page(window), window.desk.bench
    segment = next(s for s in page.band.segments if s.question.id == "am.weather")

    def answer(dialog: QDialog) -> None:
        assert isinstance(dialog, DayDialog)
        assert not dialog.main.isEnabled()
        qtbot.keyClicks(QApplication.focusWidget(), "light north, base 2400")
        qtbot.keyClick(QApplication.focusWidget(), Key.Key_Tab)
        qtbot.keyClicks(QApplication.focusWidget(), "station")
        qtbot.keyClick(dialog, Key.Key_Return)

    in_dialog(segment.click, answer)
    answers = {a.check: (a.value, a.source, a.at) for a in outing_of(bench).answers}
    assert answers["am.weather"] == ("light north, base 2400", "station", bench.now())
    again = next(s for s in page.band.segments if s.question.id == "am.weather")
    assert "light north, base 2400" in again.accessibleName()
    assert again.act == "Change"
    bench.undo()
    assert next(s for s in page.band.segments if s.question.id == "am.weather").act == "Answer"


def test_answering_a_condition_with_one_press(window: Window, in_dialog: Use, qtbot) -> None:
    bench = window.desk.bench
    outing = work_on(bench, "on foot")
    page = outing_page(window)
    segment = next(s for s in page.band.segments if s.question.id == "condition.cold")

    def yes(dialog: QDialog) -> None:
        assert isinstance(dialog, PickDialog)
        qtbot.keyClick(dialog.picks[0], Key.Key_Space)

    in_dialog(segment.click, yes)
    after = bench.outing(outing.id)
    assert after is not None
    assert after.conditions[Condition.COLD] is True
    assert "condition.cold" not in {s.question.id for s in page.band.segments}


def test_choosing_the_set_is_the_pilots_own_choice(window: Window, in_dialog: Use, qtbot) -> None:
    bench = window.desk.bench
    outing = outing_of(bench)
    open_set = outing.set.model_copy(update={"wing": None})
    wings = {item.id for item in bench.items() if item.kind is Kind.WING}
    bench.save_outing(
        outing.model_copy(
            update={
                "set": open_set,
                "flight_types": ("ridge",),
                "pinned": tuple(pin for pin in outing.pinned if pin.item not in wings),
                "left_out": tuple(name for name in outing.left_out if name not in wings),
            }
        )
    )
    page = outing_page(window)
    segment = next(s for s in page.band.segments if s.question.id == "set.wing")
    wing_b = item_named(bench, "Wing B")

    def choose(dialog: QDialog) -> None:
        assert isinstance(dialog, SetDialog)
        dialog.choice.choose(wing_b.id)
        qtbot.keyClick(dialog, Key.Key_Return)

    in_dialog(segment.click, choose)
    assert outing_of(bench).set.wing == wing_b.id
