"""The service file that lies beside a table cannot be taken: read on without it, or mend it."""

from collections.abc import Callable

from kitlog.desktop.import_page.card import Card
from kitlog.desktop.import_page.meeting_card import MOST_LISTED, problem_text
from kitlog.desktop.parts.button import Button
from kitlog.fault import Fault
from kitlog.files.csv_problems import TableFault
from kitlog.wording.faults import fault_text
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper


class ServiceCard(Card):
    """What is wrong with the service file."""

    def __init__(self, fault: Fault, without: Callable[[], object]) -> None:
        said = fault_text(fault)
        super().__init__(_("Service file"), first_upper(said.what))
        if isinstance(fault, TableFault):
            for problem in fault.problems[:MOST_LISTED]:
                self.note(problem_text(problem))
        self.note(said.remedy)
        self.act = Button(_("Read without the service file"))
        self.act.clicked.connect(lambda _on=False: without())
        self.rows.addWidget(self.act)
