"""Headings that are about checks and packing: their days are records, and no field of an item holds them."""

from kitlog.files.table.vocabulary import Vocabulary


def is_of_service(heading: str, words: Vocabulary) -> bool:
    """Whether a heading is of a check, a repack or the like: a word for one, with nothing beside it but when it is."""
    said = set(words.key(heading).split())
    return not said.isdisjoint(words.service) and said <= words.service | words.service_beside | words.besides
