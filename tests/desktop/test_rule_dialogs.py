"""Rules of one item and of a model in the window, on a real data file."""

from collections.abc import Callable
from typing import Any

import pytest
from desk_steps import Use, check_controls
from PySide6.QtWidgets import QDialog, QPushButton

from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.service_page.model_rules_dialog import ModelRulesDialog
from kitlog.desktop.service_page.notices_dialog import NoticesDialog
from kitlog.desktop.service_page.page import ServicePage
from kitlog.desktop.service_page.record_dialog import RecordDialog
from kitlog.desktop.service_page.rule_editor import RuleEditor
from kitlog.desktop.service_page.starters_dialog import StartersDialog
from kitlog.desktop.window import Window
from kitlog.kit.item import Item
from kitlog.kit.service import ServiceRule
from kitlog.workbench.rule_commands import NOTICES
from kitlog.workbench.workbench import Workbench


@pytest.fixture
def bench(empty_bench: Workbench) -> Workbench:
    """Two wings of one model, one of another, one without; a rule from a starter on the first."""
    for item_id, model in {"a": "Tarn 2", "b": "TARN 2", "c": "Merlar", "n": ""}.items():
        fields: dict[str, Any] = {"kind": "wing", "maker": "Hollin", "model": model, "opening_h": 0}
        empty_bench.add_item(Item.model_validate({"id": item_id, "name": f"Wing {item_id}", **fields}))
    empty_bench.take_starters("a", ["wing.full"])
    return empty_bench


@pytest.fixture
def page(show: Callable[..., Window], bench: Workbench) -> ServicePage:
    made = show(bench, "service").page("service")
    assert isinstance(made, ServicePage)
    return made


def rule_of(bench: Workbench, item_id: str, name: str = "wing.full") -> ServiceRule:
    return next(rule for rule in bench.rules() if (rule.item_id, rule.rule) == (item_id, name))


def editor(page: ServicePage, item_id: str, rule: ServiceRule | None, **more: Any) -> RuleEditor:
    item = page.desk.bench.item(item_id)
    assert item is not None
    return RuleEditor(page.desk, item, rule, None, page, **more)


def test_a_rule_of_one_item_becomes_that_of_its_model(page: ServicePage, bench: Workbench, in_dialog: Use) -> None:
    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RuleEditor)
        assert not dialog.scope.for_model
        dialog.scope.choose(for_model=True)
        assert "Wing a, Wing b" in dialog.scope.note.text()
        assert not dialog.scope.also.isVisible()
        dialog.months.put(36)
        dialog.source.setText("manual, page 31")
        check_controls(dialog)
        dialog.accept()

    in_dialog(lambda: editor(page, "a", rule_of(bench, "a")).exec(), enter)
    assert {(rule.item_id, rule.months, rule.source) for rule in bench.rules()} == {
        ("a", 36, "manual, page 31"),
        ("b", 36, "manual, page 31"),
    }
    page.desk.perform(bench.undo)
    assert {(rule.item_id, rule.months) for rule in bench.rules()} == {("a", 24)}


def test_figures_of_its_own_are_named_and_kept_unless_ticked(
    page: ServicePage, bench: Workbench, in_dialog: Use
) -> None:
    bench.save_rule(rule_of(bench, "a").model_copy(update={"id": "own", "item_id": "b", "months": 6}))

    def enter(dialog: QDialog, *, also: bool) -> None:
        assert isinstance(dialog, RuleEditor)
        dialog.scope.choose(for_model=True)
        assert "kept as they are: Wing b" in dialog.scope.note.text()
        assert dialog.scope.also.isVisible()
        assert "Wing b" in dialog.scope.also.accessibleDescription()
        dialog.scope.also.setChecked(also)
        dialog.accept()

    for also, months in ((False, 6), (True, 24)):
        act = lambda: editor(page, "a", rule_of(bench, "a")).exec()  # noqa: E731
        in_dialog(act, lambda dialog, also=also: enter(dialog, also=also))
        assert rule_of(bench, "b").months == months


def test_edited_by_itself_it_goes_its_own_way_and_can_come_back(
    page: ServicePage, bench: Workbench, in_dialog: Use
) -> None:
    bench.save_for_model(rule_of(bench, "a"))

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RuleEditor)
        assert dialog.scope.for_model
        dialog.scope.choose(for_model=False)
        assert "no longer follows" in dialog.scope.note.text()
        assert not dialog.follow.isVisible()
        dialog.months.put(12)
        dialog.accept()

    in_dialog(lambda: editor(page, "b", rule_of(bench, "b")).exec(), enter)
    assert (rule_of(bench, "b").months, rule_of(bench, "b").of_model) == (12, None)

    def come_back(dialog: QDialog) -> None:
        assert isinstance(dialog, RuleEditor)
        assert "24" in dialog.scope.note.text()
        assert dialog.follow.isVisible()
        dialog.follow.click()

    in_dialog(lambda: editor(page, "b", rule_of(bench, "b")).exec(), come_back)
    assert rule_of(bench, "b").months == 24
    assert rule_of(bench, "b").of_model is not None


def test_without_a_model_there_is_one_answer_and_its_reason(page: ServicePage, bench: Workbench, qtbot) -> None:
    dialog = editor(page, "n", None, for_model=True)
    qtbot.addWidget(dialog)
    assert not dialog.scope.choice.isEnabled()
    assert not dialog.scope.for_model
    assert "Enter maker and model" in dialog.scope.note.text()


def test_the_source_goes_with_its_figures(page: ServicePage, bench: Workbench, in_dialog: Use) -> None:
    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RuleEditor)
        assert not dialog.source_note.isVisible()
        dialog.months.put(30)
        assert dialog.source_note.isVisible()
        assert dialog.draft().source == ""
        dialog.months.put(24)
        assert dialog.draft().source == rule_of(bench, "a").source
        dialog.hours.put(150)
        dialog.source.setText("manual, page 31")
        assert not dialog.source_note.isVisible()
        dialog.accept()

    in_dialog(lambda: editor(page, "a", rule_of(bench, "a")).exec(), enter)
    assert (rule_of(bench, "a").hours, rule_of(bench, "a").source) == (150, "manual, page 31")


def test_days_after_an_event(page: ServicePage, bench: Workbench, in_dialog: Use) -> None:
    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RuleEditor)
        dialog.name.setText("aired")
        dialog.events.setText("damp, water")
        dialog.event_days.put(2)
        dialog.accept()

    in_dialog(lambda: editor(page, "c", None).exec(), enter)
    rule = rule_of(bench, "c", "aired")
    assert (rule.events, rule.event_days) == (("damp", "water"), 2)


class TestOffered:
    def test_the_rule_of_the_model_stands_before_the_starters(
        self, page: ServicePage, bench: Workbench, in_dialog: Use
    ) -> None:
        bench.save_for_model(rule_of(bench, "a").model_copy(update={"months": 36, "source": "manual, page 31"}))
        bench.add_item(
            Item.model_validate({"id": "d", "name": "Wing d", "kind": "wing", "maker": "hollin", "model": "tarn 2"})
        )

        def enter(dialog: QDialog) -> None:
            assert isinstance(dialog, StartersDialog)
            assert next(iter(dialog.ticks)) == "wing.full"
            assert "rule of its model" in dialog.ticks["wing.full"].accessibleDescription()
            assert "page 31" in dialog.ticks["wing.full"].accessibleDescription()
            dialog.ticks["wing.full"].setChecked(True)
            check_controls(dialog)
            dialog.accept()

        in_dialog(lambda: StartersDialog(page.desk, bench.item("d"), page).exec(), enter)
        assert (rule_of(bench, "d").months, rule_of(bench, "d").of_model) == (36, rule_of(bench, "a").of_model)

    def test_starters_for_all_of_the_model(self, page: ServicePage, bench: Workbench, in_dialog: Use) -> None:
        def enter(dialog: QDialog) -> None:
            assert isinstance(dialog, StartersDialog)
            dialog.scope.choose(for_model=True)
            dialog.ticks[NOTICES].setChecked(True)
            dialog.accept()

        in_dialog(lambda: StartersDialog(page.desk, bench.item("b"), page).exec(), enter)
        assert {rule.item_id for rule in bench.rules() if rule.rule == NOTICES} == {"a", "b"}

    def test_another_item_has_other_answers(self, page: ServicePage, bench: Workbench, qtbot) -> None:
        dialog = StartersDialog(page.desk, bench.item("b"), page)
        qtbot.addWidget(dialog)
        dialog.scope.choose(for_model=True)
        dialog.item.choose("n")
        assert not dialog.scope.for_model
        assert not dialog.scope.choice.isEnabled()


class TestByModel:
    def press(self, dialog: QDialog, words: str) -> None:
        button = next(b for b in dialog.findChildren(QPushButton) if b.accessibleName().startswith(words))
        assert button.isEnabled()
        button.click()

    def test_they_are_listed_with_who_follows(self, page: ServicePage, bench: Workbench, in_dialog: Use) -> None:
        bench.save_for_model(rule_of(bench, "a"))

        def look(dialog: QDialog) -> None:
            assert isinstance(dialog, ModelRulesDialog)
            said = [label.text() for label in dialog.findChildren(Paragraph)]
            assert "2 items follow it: Wing a, Wing b" in said
            check_controls(dialog)
            self.press(dialog, "Delete, items keep theirs")
            dialog.accept()

        in_dialog(page.acts.show_model_rules, look)
        assert bench.model_rules() == ()
        assert {(rule.item_id, rule.of_model) for rule in bench.rules()} == {("a", None), ("b", None)}

    def test_with_the_rules_of_the_items(self, page: ServicePage, bench: Workbench, in_dialog: Use) -> None:
        bench.save_for_model(rule_of(bench, "a"))

        def look(dialog: QDialog) -> None:
            self.press(dialog, "Delete, with theirs")
            dialog.accept()

        in_dialog(page.acts.show_model_rules, look)
        assert bench.rules() == ()

    def test_without_any_it_says_where_they_come_from(self, page: ServicePage, qtbot) -> None:
        dialog = ModelRulesDialog(page.desk, page)
        qtbot.addWidget(dialog)
        assert any("by model yet" in label.text() for label in dialog.findChildren(Paragraph))


class TestNotices:
    def test_one_look_is_entered_for_the_whole_model(self, page: ServicePage, bench: Workbench, in_dialog: Use) -> None:
        bench.take_starters("a", [NOTICES], for_model=True)
        bench.take_starters("c", [NOTICES])

        def enter(dialog: QDialog) -> None:
            assert isinstance(dialog, NoticesDialog)
            assert {dialog.model.itemText(n) for n in range(dialog.model.count())} == {"Hollin Tarn 2", "Hollin Merlar"}
            dialog.model.choose(next(n for n, one in enumerate(dialog.looked) if one.name == "Hollin Tarn 2"))
            assert "Wing a, Wing b; never looked" in dialog.state.text()
            dialog.found.setPlainText("maker's page: none")
            check_controls(dialog)
            dialog.accept()

        in_dialog(page.acts.look_for_notices, enter)
        assert {(record.item_id, record.remarks) for record in bench.records()} == {
            ("a", "maker's page: none"),
            ("b", "maker's page: none"),
        }

    def test_without_the_rule_it_says_what_to_do(self, page: ServicePage, in_dialog: Use) -> None:
        def look(dialog: QDialog) -> None:
            assert isinstance(dialog, NoticesDialog)
            assert not dialog.main.isEnabled()
            assert "add it" in dialog.reason.text()
            dialog.discard()

        in_dialog(page.acts.look_for_notices, look)

    @pytest.mark.parametrize("for_all", [True, False])
    def test_a_record_of_it_is_for_the_whole_model_unless_that_is_taken_off(
        self, page: ServicePage, bench: Workbench, in_dialog: Use, for_all: bool
    ) -> None:
        bench.take_starters("a", [NOTICES], for_model=True)

        def enter(dialog: QDialog) -> None:
            assert isinstance(dialog, RecordDialog)
            assert dialog.alike.isVisible()
            assert dialog.alike.words == "For all 2 items of this model"
            dialog.alike.setChecked(for_all)
            dialog.accept()

        rule = rule_of(bench, "a", NOTICES)
        in_dialog(lambda: RecordDialog(page.desk, "a", rule.id, page).exec(), enter)
        assert {record.item_id for record in bench.records()} == ({"a", "b"} if for_all else {"a"})

    def test_any_other_record_is_of_one_item(self, page: ServicePage, bench: Workbench, qtbot) -> None:
        bench.save_for_model(rule_of(bench, "a"))
        dialog = RecordDialog(page.desk, "a", rule_of(bench, "a").id, page)
        qtbot.addWidget(dialog)
        assert not dialog.alike.isVisibleTo(dialog)


def test_the_details_of_an_item_tell_what_its_model_offers(
    show: Callable[..., Window], bench: Workbench, in_dialog: Use, qtbot
) -> None:
    bench.save_for_model(rule_of(bench, "a"))
    bench.delete_rule(rule_of(bench, "b").id)
    window = show(bench, "kit")
    window.desk.show("kit", "b")

    def offers() -> list[QPushButton]:
        return [b for b in window.findChildren(QPushButton) if b.accessibleName().startswith("Take it")]

    qtbot.waitUntil(lambda: bool(offers()))
    (take,) = offers()
    assert "full inspection" in take.accessibleName()

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, StartersDialog)
        assert dialog.item.chosen() == "b"
        dialog.ticks["wing.full"].setChecked(True)
        dialog.accept()

    in_dialog(take.click, enter)
    assert rule_of(bench, "b").of_model is not None
