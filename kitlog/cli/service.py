"""kitlog service: what was done to the kit, what happened to it, and what is to be looked at."""

from kitlog.cli import service_book, service_event, service_papers, service_record, service_rules, service_season
from kitlog.cli.parser import Verbs
from kitlog.wording.translate import _


def add(verbs: Verbs) -> None:
    """Add the verb; its own live in files of their own."""
    own = Verbs(verbs.add("service", _("the service book: what was done, what happened, what stops you on a day")))
    for module in (service_record, service_event, service_papers, service_book, service_rules, service_season):
        module.add(own)
