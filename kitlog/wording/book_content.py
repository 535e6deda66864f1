"""The service book of one item in words: what it is, its hours, what is due, all that was ever done or happened."""

from collections import defaultdict
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from datetime import datetime

from kitlog.kit.due import DueState
from kitlog.kit.item_book import Entry, ItemBook, Judged, Year
from kitlog.kit.kinds import SET_KINDS, Kind
from kitlog.kit.measured_series import measured_series
from kitlog.kit.service import Event, ServiceRecord
from kitlog.wording.book_parts import (
    BookContent,
    BookEntry,
    Chapter,
    Fact,
    Photo,
    given,
    made_text,
    money_text,
    papers_line,
    photos_of,
)
from kitlog.wording.due_sentence import due_sentence
from kitlog.wording.event_text import event_text, note_text
from kitlog.wording.figures import day_text, number_text, with_unit
from kitlog.wording.item_facts import identity, whereabouts
from kitlog.wording.measurement_text import NEVER_CONVERTED, measurement_text
from kitlog.wording.record_text import result_text
from kitlog.wording.rule_limits import limits_of
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import first_upper, word

_FLOWN = frozenset({*SET_KINDS, Kind.CARABINER})
"""Kinds that get hours by the rules of the log."""


@dataclass(frozen=True, slots=True)
class Shown:
    """What of a book is shown.

    Attributes:
        costs: value and costs: an insurer asks for them, a buyer need not know.
        photos: photos as pictures; they are listed in any case.
        currency: of the item's value, which has none of its own.
        lacking: hashes of papers whose bytes are missing or damaged.
    """

    costs: bool = False
    photos: bool = True
    currency: str = ""
    lacking: Collection[str] = ()


def book_content(book: ItemBook, made_at: datetime, shown: Shown) -> BookContent:
    """The words of the service book of one item.

    Args:
        book: what is on record.
        made_at: when it is made, aware.
        shown: what of it is shown.
    """
    chapters = (_item(book, shown), _use(book), _rules(book), _history(book, shown), _measured(book))
    photos = _photos(book, shown)
    return BookContent(
        title=_("Service book"),
        name=book.item.name,
        about=_about(book),
        made=made_text(made_at),
        chapters=(*(chapter for chapter in chapters if chapter), *photos, _signature()),
    )


def _about(book: ItemBook) -> str:
    kept = _("as kept by {owner}").format(owner=book.owner) if book.owner else _("as kept by its owner")
    text = _("{kept}, judged for {day}; what was struck through later stays and is marked")
    return first_upper(text.format(kept=kept, day=day_text(book.on)))


def _item(book: ItemBook, shown: Shown) -> Chapter:
    item = book.item
    value = money_text(item.value, shown.currency) if shown.costs and item.value is not None else ""
    facts = given(
        *identity(item),
        *whereabouts(item),
        (_("Fitted to"), book.host),
        (_("Carries"), ", ".join(book.guests)),
        (_("Value"), value),
        *(_costs(book) if shown.costs else ()),
    )
    papers = papers_line(item.papers, shown.lacking)
    said = tuple(text for text in (item.notes, first_upper(papers)) if text)
    return Chapter(_("The item"), facts=facts, said=said)


def _costs(book: ItemBook) -> Iterator[Fact]:
    spent: defaultdict[str, float] = defaultdict(float)
    for record in book.records:
        if record.cost is not None:
            spent[record.currency] += record.cost
    sums = ", ".join(money_text(amount, currency) for currency, amount in spent.items())
    yield _("Spent on service"), sums


def _use(book: ItemBook) -> Chapter | None:
    """Hours and launches; of what neither flies nor has any on record, nothing."""
    total, item = book.total, book.item
    if not book.flights and item.kind not in _FLOWN and (item.opening_h, item.opening_launches) == (None, None):
        return None
    facts = given(
        (_("Airtime"), _figure(total.airtime_h, with_unit(total.airtime_h, "h", 1), known=total.hours_known)),
        (_("Launches"), _figure(total.launches, number_text(total.launches), known=total.launches_known)),
        (_("Ground handling"), _ground(book)),
        (_("Before the log"), _before(book)),
        (_("In the log"), _in_log(book)),
    )
    entries = tuple(_year(year) for year in book.years)
    until = _("until {day}").format(day=day_text(book.on))
    return Chapter(_("Hours and launches"), until, facts, entries, _shared_out(book))


def _shared_out(book: ItemBook) -> tuple[str, ...]:
    """That typed totals over the turn of a year are shared out: the log holds no more than their sum."""
    if not any(year.shared for year in book.years):
        return ()
    return (_("A total entered over the turn of a year is shared out by days: the log does not say more."),)


def _figure(amount: float, words: str, *, known: bool) -> str:
    """What is known of a total: at least what the log holds, where that is anything."""
    if known:
        return words
    return _("at least {figure}").format(figure=words) if amount else _("not known")


def _ground(book: ItemBook) -> str:
    hours, known = book.total.ground_h, book.item.opening_ground_h is not None
    return _figure(hours, with_unit(hours, "h", 1), known=known) if hours or known else ""


def _before(book: ItemBook) -> str:
    item = book.item
    if item.opening_h is None and item.opening_launches is None:
        return _("not known")
    hours = _("hours not known") if item.opening_h is None else with_unit(item.opening_h, "h", 1)
    launches = _("launches not known") if item.opening_launches is None else _launches(item.opening_launches)
    return _("{hours}, {launches}, as entered").format(hours=hours, launches=launches)


def _in_log(book: ItemBook) -> str:
    if not book.flights or book.log_begins_on is None:
        return _("no flight")
    text = _("{entries} since {day}")
    if book.recorded:
        text = _("{entries} since {day}, {recorded} of them from flight recordings")
    day, recorded = day_text(book.log_begins_on), number_text(book.recorded)
    return text.format(entries=_log_entries(book.flights), day=day, recorded=recorded)


def _log_entries(count: int) -> str:
    return ngettext("{n} entry", "{n} entries", count).format(n=number_text(count))


def _launches(count: int) -> str:
    return ngettext("{n} launch", "{n} launches", count).format(n=number_text(count))


def _year(year: Year) -> BookEntry:
    used = year.used
    ground = _("{hours} on the ground").format(hours=with_unit(used.ground_h, "h", 1)) if used.ground_h else ""
    shared = ngettext("{n} of them a total shared out", "{n} of them totals shared out", year.shared)
    entries = _log_entries(year.flights)
    if year.shared:
        entries = _("{entries} ({shared})").format(entries=entries, shared=shared.format(n=number_text(year.shared)))
    parts = (entries, _launches(used.launches), ground)
    return BookEntry(", ".join(p for p in parts if p), str(year.year), with_unit(used.airtime_h, "h", 1))


def _rules(book: ItemBook) -> Chapter:
    nothing = _("No service rule is on record for it, so nothing is said about what is due.")
    return Chapter(
        _("What is due"),
        _("by the rules on record"),
        entries=tuple(_rule(judged) for judged in book.rules),
        said=(_("The maker’s manual of this very model stands over every interval here."),)
        if book.rules
        else (nothing,),
    )


def _rule(judged: Judged) -> BookEntry:
    due, rule = judged.due, judged.rule
    state = due.state
    said = [] if state is DueState.DOES_NOT_APPLY else [first_upper(due_sentence(due))]
    limits = ", ".join(limits_of(rule))
    source = rule.source or _("source not given")
    said.append(_("Rule: {limits}. Source: {source}").format(limits=limits, source=source))
    return BookEntry(first_upper(rule_text(rule.rule)), "", word(state.value), tuple(said), state)


def _history(book: ItemBook, shown: Shown) -> Chapter:
    nothing = _("Nothing is on record: no service, no event.")
    return Chapter(
        _("History"),
        _("services and events, the oldest first"),
        entries=history_entries(book, shown),
        said=() if book.history else (nothing,),
    )


def history_entries(book: ItemBook, shown: Shown) -> tuple[BookEntry, ...]:
    """The words of each entry of the history, in its order."""
    return tuple(_entry(entry, shown) for entry in book.history)


def _entry(entry: Entry, shown: Shown) -> BookEntry:
    what = entry.what
    said = (*(_of_event(what) if isinstance(what, Event) else _of_record(what, entry, shown)), _struck(entry))
    if isinstance(what, Event):
        title, figure = _("Event: {kind}").format(kind=event_text(what)), ""
    else:
        title = ", ".join(rule_text(rule) for rule in entry.rules) or _("looked at")
        figure = result_text(what.result)
    hours = _hours(entry)
    lines = tuple(line for line in (hours, *said) if line)
    return BookEntry(first_upper(title), day_text(entry.on), figure, lines, None, entry.struck)


def _hours(entry: Entry) -> str:
    if entry.hours is None:
        return ""
    text = _("at {hours} of airtime, by the log") if entry.by_log else _("at {hours} of airtime")
    return text.format(hours=with_unit(entry.hours, "h", 1))


def _of_event(event: Event) -> Iterator[str]:
    yield note_text(event)


def _of_record(record: ServiceRecord, entry: Entry, shown: Shown) -> Iterator[str]:
    if record.who:
        yield _("by {who}").format(who=record.who)
    if record.launches is not None:
        yield _("at {launches}").format(launches=_launches(record.launches))
    yield record.remarks
    yield from (measurement_text(one) for one in record.measurements)
    for event in entry.answered:
        yield _("answers: {event}, {day}").format(event=event_text(event), day=day_text(event.on))
    if record.next_due_on is not None:
        yield _("next due as set there: {day}").format(day=day_text(record.next_due_on))
    if record.next_within_h is not None:
        yield _("next due as set there: after {hours}").format(hours=with_unit(record.next_within_h, "h", 1))
    if shown.costs and record.cost is not None:
        yield _("cost: {amount}").format(amount=money_text(record.cost, record.currency))
    yield papers_line(record.papers, shown.lacking)


def _struck(entry: Entry) -> str:
    at = entry.what.struck_at
    return "" if at is None else _("struck through on {day}: counts for nothing").format(day=day_text(at.date()))


def _measured(book: ItemBook) -> Chapter | None:
    series = measured_series(book.records, [judged.rule for judged in book.rules])
    if not series:
        return None
    return Chapter(_("Measurements over the years"), measured=series, said=(_(NEVER_CONVERTED),))


def _photos(book: ItemBook, shown: Shown) -> tuple[Chapter, ...]:
    if not shown.photos:
        return ()
    photos: list[Photo] = [*photos_of(book.item.papers, shown.lacking)]
    for record in book.records:
        photos += photos_of(record.papers, shown.lacking, day_text(record.done_on))
    found = tuple({photo.paper.sha256: photo for photo in photos}.values())
    return (Chapter(_("Photos"), photos=found),) if found else ()


def _signature() -> Chapter:
    return Chapter(_("Signature"), to_write=(_("Place and day"), _("Owner"), _("Handed over to")))
