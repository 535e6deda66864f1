from pathlib import Path

import pytest
from desk_steps import Use, check_controls, item_named
from import_steps import DOUBTFUL, ORDER, PLAIN, UNIT, answer, choose_field, heads, kit, seen, using, written
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from kitlog.desktop.desk import MANY
from kitlog.desktop.import_page.dialog import ImportDialog
from kitlog.desktop.import_page.leaves import Leaf
from kitlog.desktop.import_page.table_input import of_file
from kitlog.desktop.window import Window
from kitlog.files.table.doubt import Question
from kitlog.files.table.kit_items import Existing
from kitlog.workbench.workbench import Workbench


def bytes_of_kit(bench: Workbench) -> bytes:
    return bench.export_kit().data


class TestPlainTable:
    def test_it_is_shown_before_anything_is_written_and_undone_in_one_step(
        self, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        before, kept = bytes_of_kit(demo_bench), demo_bench.items()

        def use(dialog: ImportDialog) -> None:
            assert dialog.leaves.shown == Leaf.ITEMS
            assert dialog.counts.said() == "2 new, 2 to be written"
            assert [entry.item.name for entry in dialog.leaves.items.model.entries] == ["Spare whistle", "Head torch"]
            assert demo_bench.items() == kept
            assert dialog.main.isEnabled()
            dialog.main.click()

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, PLAIN)), using(qtbot, use))
        assert item_named(demo_bench, "Spare whistle").mass_g == 14
        assert kit(window).selected_ids() == tuple(
            item_named(demo_bench, name).id for name in ("Head torch", "Spare whistle")
        )
        window.acts.undo()
        assert bytes_of_kit(demo_bench) == before
        window.acts.redo()
        assert item_named(demo_bench, "Head torch").mass_g == 86

    def test_while_many_items_are_written_it_says_so_and_takes_no_second_import(
        self, window: Window, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        text = "name,kind,mass_g\n" + "".join(f"Bar {n},food,{40 + n % 9}\n" for n in range(MANY))
        said: list[tuple[str, bool]] = []

        def use(dialog: ImportDialog) -> None:
            def hear(_change: object) -> None:
                assert dialog.reason.width() >= dialog.reason.sizeHint().width()  # laid out, so it is seen
                said.append((dialog.reason.text(), dialog.main.isEnabled()))

            kit(window).desk.changed.connect(hear)
            dialog.main.click()
            assert not dialog.isVisible()

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, text)), using(qtbot, use))
        assert said == [("The items are being written.", False)]

    def test_esc_leaves_everything_as_it_was(
        self, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        before = bytes_of_kit(demo_bench)

        def use(dialog: ImportDialog) -> None:
            qtbot.keyClick(dialog, Qt.Key.Key_Escape)
            assert not dialog.isVisible()

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, PLAIN)), using(qtbot, use))
        assert bytes_of_kit(demo_bench) == before
        assert demo_bench.undoable is None

    def test_rows_that_are_the_same_and_masses_beyond_the_usual_are_named(
        self, window: Window, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        text = "name,kind,mass_g\nWhistle X,signal,14\nWhistle X,signal,14\nWing X,wing,45\n"

        def use(dialog: ImportDialog) -> None:
            said = [dialog.leaves.items.model.said(number) for number in range(3)]
            assert "row 3" in said[0]
            assert "row 2" in said[1]
            assert said[2].startswith("Sure? Wing is usually")
            assert dialog.leaves.items.asking() == 3
            assert dialog.main.isEnabled()

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, text)), using(qtbot, use))

    def test_an_item_of_kind_other_is_named_in_its_row(
        self, window: Window, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        """Nobody should look for a wing in the packing list that came in as a thing of no kind."""

        def use(dialog: ImportDialog) -> None:
            said = [dialog.leaves.items.model.said(number) for number in range(2)]
            assert said == ["Of kind other: hardly any need counts on it.", ""]
            assert dialog.leaves.items.asking() == 0

        table = written(tmp_path, "Name,Mass (g)\nZibbel,14\nWhistle,14\n")
        in_dialog(lambda: kit(window).acts.look_at(table), using(qtbot, use))


class TestQuestions:
    def test_each_stands_once_with_what_every_answer_makes_of_the_cells(
        self, window: Window, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        def use(dialog: ImportDialog) -> None:
            assert dialog.leaves.shown == Leaf.QUESTIONS
            assert list(dialog.leaves.asked.columns) == [UNIT, ORDER]
            card = dialog.leaves.asked.columns[ORDER]
            assert [cell.text for cell in card.asked.examples()] == ["03/04/2025", "05/06/2024", "11/12/2023"]
            assert set(card.radios) == {"dmy", "mdy", "empty"}
            assert "03/04/2025: " in card.radios["dmy"].accessibleDescription()
            assert card.is_open
            assert not dialog.main.isEnabled()
            assert dialog.reason.text() == "2 questions are open."

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), using(qtbot, use))

    def test_masses_without_a_unit_are_shown_in_grams_for_each_answer(
        self, window: Window, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        """14 oz and 14 lb: 28.349523125 g and 453.59237 g each (NIST SP 811, appendix B)."""

        def use(dialog: ImportDialog) -> None:
            radios = dialog.leaves.asked.columns[0, Question.MASS_UNIT].radios
            said = {name: " ".join(radio.accessibleDescription().split()) for name, radio in radios.items()}
            assert said == {
                "g": "14: 14 g, 5,62: 6 g",
                "kg": "14: 14 000 g, 5,62: 5 620 g",
                "oz": "14: 397 g, 5,62: 159 g",
                "lb": "14: 6 350 g, 5,62: 2 549 g",
                "empty": "",
            }

        table = written(tmp_path, "Gewicht;Name\n14;Whistle X\n5,62;Wing X\n")
        in_dialog(lambda: kit(window).acts.look_at(table), using(qtbot, use))

    def test_answers_can_be_changed_and_the_last_ones_are_written(
        self, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        def use(dialog: ImportDialog) -> None:
            answer(dialog, qtbot, UNIT, "g")
            answer(dialog, qtbot, ORDER, "mdy")
            assert dialog.leaves.asked.open_count() == 0
            assert dialog.main.isEnabled()
            answer(dialog, qtbot, ORDER, "dmy")
            assert dialog.leaves.asked.columns[ORDER].radios["dmy"].isChecked()
            assert not dialog.leaves.asked.columns[ORDER].radios["mdy"].isChecked()
            dialog.main.click()

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), using(qtbot, use))
        torch = item_named(demo_bench, "Stirnlampe")
        assert (torch.mass_g, str(torch.bought_on)) == (86, "2025-04-03")

    def test_what_is_left_not_known_is_listed_and_stays_a_question(
        self, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        def use(dialog: ImportDialog) -> None:
            answer(dialog, qtbot, UNIT, "empty")
            answer(dialog, qtbot, ORDER, "empty")
            assert [row[2] for row in dialog.leaves.notes.left.rows] == [
                "86",
                "03/04/2025",
                "14",
                "05/06/2024",
                "61",
                "11/12/2023",
            ]
            assert dialog.leaves.asked.columns[UNIT].radios["empty"].isChecked()
            dialog.main.click()

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), using(qtbot, use))
        assert item_named(demo_bench, "Stirnlampe").mass_g is None

    def test_a_cell_that_says_nothing_can_only_be_left_or_mended(
        self, window: Window, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        table = written(tmp_path, "name,mass_g\nWhistle X,heavy\n")

        def use(dialog: ImportDialog) -> None:
            card = dialog.leaves.asked.columns[1, Question.UNREAD]
            assert set(card.radios) == {"empty"}
            assert table.path is not None
            table.path.write_text("name,mass_g\nWhistle X,14\n", encoding="utf-8")
            dialog.head.again.click()
            seen(dialog, qtbot)
            assert dialog.leaves.asked.cards() == []
            assert dialog.main.isEnabled()

        in_dialog(lambda: kit(window).acts.look_at(table), using(qtbot, use))

    def test_leaving_with_answers_is_asked_about(self, window: Window, tmp_path: Path, in_dialog: Use, qtbot) -> None:
        def use(dialog: ImportDialog) -> None:
            answer(dialog, qtbot, UNIT, "g")
            qtbot.keyClick(dialog, Qt.Key.Key_Escape)
            assert dialog.isVisible()
            assert dialog.question.isVisible()
            dialog.discard()

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), using(qtbot, use))


class TestProblems:
    def test_what_no_item_can_take_is_named_and_left_out_by_choice_alone(
        self, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        text = "name,kind,wing_min_kg,wing_max_kg\nWing X,wing,105,85\nWing Y,wing,85,105\n"

        def use(dialog: ImportDialog) -> None:
            assert dialog.leaves.asked.problem is not None
            assert not dialog.main.isEnabled()
            dialog.leaves.asked.problem.tick.click()
            seen(dialog, qtbot)
            assert dialog.main.isEnabled()
            assert [row[0] for row in dialog.leaves.notes.left.rows] == ["2"]
            dialog.main.click()

        before = len(demo_bench.items())
        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, text)), using(qtbot, use))
        assert len(demo_bench.items()) == before + 2


class TestHeadings:
    def test_each_heading_says_what_it_stands_for_and_how_that_was_found(
        self, window: Window, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        def use(dialog: ImportDialog) -> None:
            found = heads(dialog)
            assert found["Bezeichnung"] == ("name", "word")
            assert found["Gewicht"] == ("mass_g", "word")
            assert found["Zzz"] == ("", "")
            assert dialog.leaves.headings.row_of(3).lost.isVisibleTo(dialog.leaves.headings)
            assert "1 not understood" in dialog.leaves.strip.tabs[Leaf.HEADINGS].accessibleName()

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), using(qtbot, use))

    def test_a_heading_can_stand_for_something_else(
        self, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        def use(dialog: ImportDialog) -> None:
            answer(dialog, qtbot, UNIT, "g")
            choose_field(dialog, qtbot, 2, "notes")
            assert list(dialog.leaves.asked.columns) == [UNIT]
            choose_field(dialog, qtbot, 3, "colour")
            assert heads(dialog)["Zzz"] == ("colour", "chosen")
            dialog.main.click()

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), using(qtbot, use))
        torch = item_named(demo_bench, "Stirnlampe")
        assert (torch.notes, torch.colour) == ("03/04/2025", "A1")

    def test_a_unit_of_the_heading_answers_what_was_asked(
        self, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        def use(dialog: ImportDialog) -> None:
            unit = dialog.leaves.headings.row_of(1).unit
            unit.choose("oz")
            unit.activated.emit(unit.currentIndex())
            seen(dialog, qtbot)
            assert list(dialog.leaves.asked.columns) == [ORDER]
            answer(dialog, qtbot, ORDER, "dmy")
            dialog.main.click()

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), using(qtbot, use))
        assert item_named(demo_bench, "Trillerpfeife").mass_g == 397  # 14 oz of 28.349523125 g (NIST SP 811, app. B)

    def test_words_that_are_no_field_give_way_to_what_was_there(
        self, window: Window, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        def use(dialog: ImportDialog) -> None:
            dialog.leaves.open(Leaf.HEADINGS)
            field = dialog.leaves.headings.row_of(0).field
            field.setFocus()
            qtbot.keyClicks(field.line, "zzz")
            qtbot.keyClick(field, Qt.Key.Key_Return)
            assert (field.held, field.line.text()) == ("name", "name")
            assert dialog.isVisible()

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, PLAIN)), using(qtbot, use))

    def test_the_choice_is_remembered_for_the_next_table_of_the_same_headings(
        self, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        def first(dialog: ImportDialog) -> None:
            choose_field(dialog, qtbot, 3, "colour")
            answer(dialog, qtbot, UNIT, "g")
            answer(dialog, qtbot, ORDER, "dmy")
            dialog.main.click()

        def second(dialog: ImportDialog) -> None:
            assert heads(dialog)["Zzz"] == ("colour", "remembered")

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), using(qtbot, first))
        other = DOUBTFUL.replace("Stirnlampe", "Zweite Lampe")
        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, other, "b.csv")), using(qtbot, second))

    def test_a_table_without_headings_asks_for_their_row(
        self, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        text = "qwx,zzt\nWhistle X,rrv\nTorch X,rrw\n"

        def use(dialog: ImportDialog) -> None:
            assert dialog.leaves.shown == Leaf.CHOICE
            assert not dialog.main.isEnabled()
            dialog.leaves.choice.table.select(0)
            dialog.leaves.choice.take.click()
            seen(dialog, qtbot)
            choose_field(dialog, qtbot, 0, "name")
            assert dialog.counts.said() == "2 new, 2 to be written"
            dialog.main.click()

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, text)), using(qtbot, use))
        assert item_named(demo_bench, "Torch X")

    def test_a_table_may_have_no_headings_at_all(
        self, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        text = "Whistle X,Tolve,14 g\nTorch X,Tolve,86 g\n"

        def first(dialog: ImportDialog) -> None:
            assert dialog.leaves.shown == Leaf.CHOICE
            dialog.leaves.choice.none.click()
            seen(dialog, qtbot)
            assert dialog.leaves.shown == Leaf.HEADINGS
            choose_field(dialog, qtbot, 0, "name")
            choose_field(dialog, qtbot, 2, "mass_g")
            dialog.head.again.click()
            seen(dialog, qtbot)
            assert dialog.counts.said() == "2 new, 2 to be written"
            dialog.main.click()

        def second(dialog: ImportDialog) -> None:
            dialog.leaves.choice.none.click()
            seen(dialog, qtbot)
            assert "remembered" not in [how for _target, how in heads(dialog).values()]  # another table, other columns

        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, text)), using(qtbot, first))
        assert (item_named(demo_bench, "Whistle X").mass_g, item_named(demo_bench, "Torch X").mass_g) == (14, 86)
        other = "14 g,Whistle Y,Tolve\n86 g,Torch Y,Tolve\n"
        in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, other, "b.csv")), using(qtbot, second))


class TestBadTables:
    @pytest.mark.parametrize(
        ("name", "data", "said"),
        [
            ("empty.csv", b"", "nothing in it"),
            ("picture.csv", b"\x89PNG\r\n\x1a\n" + bytes(64), "picture"),
            ("paper.csv", b"%PDF-1.7\n" + b"x" * 64, "PDF"),
        ],
    )
    def test_they_end_in_a_sentence(
        self, name: str, data: bytes, said: str, window: Window, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        (tmp_path / name).write_bytes(data)

        def use(dialog: ImportDialog) -> None:
            assert dialog.leaves.shown == Leaf.FAULT
            assert said in dialog.leaves.fault.what.text()
            assert dialog.leaves.fault.remedy.text()
            assert not dialog.main.isEnabled()

        in_dialog(lambda: kit(window).acts.look_at(of_file(tmp_path / name)), using(qtbot, use))

    def test_a_file_that_is_gone_is_said(self, window: Window, tmp_path: Path, in_dialog: Use, qtbot) -> None:
        def use(dialog: ImportDialog) -> None:
            assert "cannot be read" in dialog.leaves.fault.what.text()

        in_dialog(lambda: kit(window).acts.look_at(of_file(tmp_path / "none.csv")), using(qtbot, use))


class TestServiceFile:
    def test_one_beside_the_table_comes_along(
        self, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        table = written(tmp_path, "name,kind\nWing Z,wing\n", "kit.csv")
        (tmp_path / "service.csv").write_text(
            "item,rule,months,last_on\nWing Z,wing.full,24,2025-05-01\n", encoding="utf-8"
        )

        def use(dialog: ImportDialog) -> None:
            assert "1 service rules, 1 service records" in dialog.counts.said()
            assert "service.csv" in dialog.head.service.words
            dialog.main.click()

        before = len(demo_bench.rules())
        in_dialog(lambda: kit(window).acts.look_at(table), using(qtbot, use))
        assert len(demo_bench.rules()) == before + 1

    def test_a_rule_that_is_there_is_asked_about(
        self, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        table = written(tmp_path, "name,kind\nWing Z,wing\n", "kit.csv")
        (tmp_path / "service.csv").write_text("item,rule,months\nWing A,wing.full,7\n", encoding="utf-8")

        def use(dialog: ImportDialog) -> None:
            meeting = dialog.leaves.asked.meeting
            assert meeting is not None
            assert not dialog.main.isEnabled()
            meeting.radios[Existing.ADD].click()
            seen(dialog, qtbot)
            assert dialog.leaves.asked.open_count() == 1
            assert not dialog.main.isEnabled()
            meeting.radios[Existing.UPDATE].click()
            seen(dialog, qtbot)
            dialog.main.click()

        before = len(demo_bench.rules())
        in_dialog(lambda: kit(window).acts.look_at(table), using(qtbot, use))
        assert len(demo_bench.rules()) == before
        wing = item_named(demo_bench, "Wing A").id
        assert [r.months for r in demo_bench.rules() if (r.item_id, r.rule) == (wing, "wing.full")] == [7]

    def test_one_that_is_wrong_is_told_and_can_be_left_out(
        self, window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
    ) -> None:
        table = written(tmp_path, "name,kind\nWing Z,wing\n", "kit.csv")
        (tmp_path / "service.csv").write_text("item,rule,months\nNobody,wing.full,24\n", encoding="utf-8")

        def use(dialog: ImportDialog) -> None:
            assert dialog.leaves.asked.service is not None
            assert not dialog.main.isEnabled()
            dialog.leaves.asked.service.act.click()
            seen(dialog, qtbot)
            dialog.main.click()

        in_dialog(lambda: kit(window).acts.look_at(table), using(qtbot, use))
        assert item_named(demo_bench, "Wing Z")


def test_it_can_be_used_by_keys_alone(
    window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
) -> None:
    def use(dialog: ImportDialog) -> None:
        qtbot.waitUntil(lambda: QApplication.focusWidget() is dialog.leaves.asked.columns[UNIT].radios["g"])
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Space)
        seen(dialog, qtbot)
        for _step in range(8):
            if QApplication.focusWidget() is dialog.leaves.asked.columns[ORDER].radios["dmy"]:
                break
            qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
        seen(dialog, qtbot)
        for _step in range(12):
            if QApplication.focusWidget() is dialog.main:
                break
            qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
        assert not dialog.isVisible()

    in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), using(qtbot, use))
    assert str(item_named(demo_bench, "Stirnlampe").bought_on) == "2025-04-03"


@pytest.mark.parametrize("leaf", [Leaf.QUESTIONS, Leaf.HEADINGS, Leaf.ITEMS, Leaf.NOTES])
def test_every_control_has_a_name_and_can_be_hit(
    leaf: Leaf, window: Window, tmp_path: Path, in_dialog: Use, qtbot
) -> None:
    def use(dialog: ImportDialog) -> None:
        dialog.leaves.open(leaf)
        QApplication.processEvents()
        check_controls(dialog)
        assert dialog.minimumSizeHint().height() <= 600

    in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, DOUBTFUL)), using(qtbot, use))
