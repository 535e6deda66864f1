"""What the pages Outing and Repack ask the pilot: one question, or the reason for a stop."""

from PySide6.QtWidgets import QWidget

from kitlog.budget.result import Finding
from kitlog.desktop.desk import Desk
from kitlog.wording.findings import say
from kitlog.wording.words import first_upper


def ask(desk: Desk, question_id: str, parent: QWidget) -> None:
    """Ask one question of the outing being worked on; one that it does not have is not asked."""
    from kitlog.desktop.outing_page.answer_dialog import question_dialog

    assessment, outing = desk.judged(), desk.outing()
    if assessment is None or outing is None:
        return
    question = next((one for one in assessment.questions if one.id == question_id), None)
    if question is not None:
        question_dialog(desk, outing, question, parent).exec()


def ask_reason(desk: Desk, finding: Finding, parent: QWidget) -> None:
    """Ask why a stop does not keep the pilot at home."""
    from kitlog.desktop.outing_page.override_dialog import OverrideDialog

    outing, said = desk.outing(), say(finding, desk.names())
    if outing is not None:
        title, sentence = first_upper(said.title), first_upper(said.sentence)
        OverrideDialog(desk, outing.id, finding.key, title, sentence, parent).exec()
