"""The workbench: one door for every read and every write."""

from kitlog.workbench.book_reads import BookReads
from kitlog.workbench.exchange import Exchange
from kitlog.workbench.incident_commands import IncidentCommands
from kitlog.workbench.paper_commands import PaperCommands
from kitlog.workbench.reminder_commands import ReminderCommands
from kitlog.workbench.rule_commands import RuleCommands
from kitlog.workbench.season_commands import SeasonCommands


class Workbench(RuleCommands, Exchange, SeasonCommands, IncidentCommands, ReminderCommands, PaperCommands, BookReads):
    """All that a person can do, on one data file.

    The reads are in `reads` and `book_reads`, the writes in `kit_commands`, `service_commands`, `incident_commands`,
    `outing_commands`, `evening_commands`, `rule_commands`, `season_commands`, `reminder_commands`,
    `paper_commands` and `exchange`.
    """
