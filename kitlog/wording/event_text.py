"""What happened to an item, as the pilot entered it."""

from kitlog.kit.event_words import entered
from kitlog.kit.service import Event
from kitlog.wording.words import word


def event_text(event: Event) -> str:
    """What was entered: a tree landing, though it is an impact to the harness."""
    return word(entered(event)[0])


def note_text(event: Event) -> str:
    """The pilot's own note."""
    return entered(event)[1]
