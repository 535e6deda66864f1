"""What is said of an import: how the table was read, what it brings, what was left open."""

from collections.abc import Iterator, Mapping, Sequence

from kitlog.wording.columns import WIDTH, wrapped
from kitlog.wording.figures import mass_text
from kitlog.wording.import_words import FIELDS, field_word
from kitlog.wording.translate import N_, _, ngettext

MOST_NAMED = 12
"""Rows, names or cells that are named in one sentence."""

_ORDERS = {"dmy": N_("day, month, year"), "mdy": N_("month, day, year"), "ymd": N_("year, month, day")}
_MARKS = {"comma": N_("a decimal comma"), "point": N_("a decimal point")}

_SEPARATORS = {";": N_("semicolons"), "\t": N_("tabs"), "|": N_("bars")}

_REASONS = {
    "title": N_("above the headings"),
    "units": N_("units, not an item"),
    "totals": N_("a total, not an item"),
    "section": N_("a heading between items, not an item"),
    "heading again": N_("the headings once more"),
    "note": N_("a note, not an item"),
    "other table": N_("another table of the sheet, which was not read; put it into a sheet of its own"),
}

_SENTENCES = {
    "table.utf16_unmarked": N_("read as UTF-16, though the file does not say so."),
    "table.windows_1252": N_(
        "its letters are read as Windows-1252: {examples}. If these look wrong, save it as UTF-8."
    ),
    "table.one_column": N_("the table has one column."),
    "table.separator": N_("cells are separated by {separator}."),
    "table.loose_quotes": N_("quotation marks inside cells were taken as they are ({rows}, {count} in all)."),
    "table.sheet_taken": N_(
        "the sheet “{sheet}” was read; not read: {others}. Each can be read on its own (kit import --sheet NAME)."
    ),
    "table.sheet_hidden": N_("the sheet “{sheet}” is hidden."),
    "table.hidden_rows": N_("hidden rows were read too ({rows}, {count} in all)."),
    "table.hidden_columns": N_("hidden columns were read too ({columns}, {count} in all)."),
    "table.no_value": N_("formulas without a stored value count as empty ({cells}, {count} in all)."),
    "table.error_cells": N_("cells that hold an error ({cells}, {count} in all)."),
    "table.digits_lost": N_("numbers of more digits than a spreadsheet keeps ({cells}, {count} in all): check them."),
    "table.merged": N_("of merged cells only the first holds the value ({cells}, {count} in all)."),
    "table.kind_other": N_("“{word}” is no kind that kitlog knows: taken as other ({rows})."),
    "table.word_unknown": N_("{heading}: “{word}” is not understood and was left open ({rows})."),
    "table.mass_of_all": N_(
        "{heading}: the total below shows that a mass is that of all pieces of its row; divided by the pieces ({rows})."
    ),
    "table.mass_divided": N_("{heading}: the mass of all pieces was divided by their number ({rows})."),
    "table.mass_of_pair": N_(
        "{heading}: the mass is said to be of the pair, so each of the two has half of it ({rows})."
    ),
    "table.mass_parts": N_("{heading} and {other}: added up to one mass."),
    "table.mass_two": N_("{heading} and {other} differ; {heading} was taken ({rows})."),
    "table.mass_from_second": N_("{heading} is empty there, so {other} was taken ({rows})."),
    "table.of_no_use": N_("the heading “{heading}” (column {letters}) is a running number and was not read."),
    "table.mass_taken_each": N_(
        "{heading}: a mass is taken as that of one piece, also where there are several ({rows})."
    ),
    "table.total_differs": N_(
        "{heading}: the total of the table is {total_g}, the rows give {sum_g}. Is a row missing?"
    ),
    "table.beside_read": N_("another table begins in column {letters}; its rows were read below those of the first."),
    "table.beside_not_read": N_(
        "another table begins in column {letters}; its headings are others, and it was not read. Save it on its own."
    ),
    "table.mass_differs": N_("row {row}: {pieces} pieces of {one_g} are not {all_g}; the mass of one piece was taken."),
    "table.rounded": N_("{heading}: rounded to whole grams, such as {example} (cells: {cells})."),
    "table.no_least_load": N_(
        "{heading}: of a harness only the greatest load is kept; the least was left out ({rows})."
    ),
    "table.usual_unit": N_("{heading}: no unit is given, so taken in {unit} (cells: {cells})."),
    "table.mixed_currencies": N_("{heading}: several currencies ({currencies}); the figures are kept as they are."),
    "table.name_made": N_("without a name, so maker, model or kind stand in, such as “{name}” ({rows})."),
    "table.kind_guessed": N_("kinds guessed from the names: {pairs}."),
    "table.kind_none": N_("no kind is given and the name does not say it, so taken as other: {named}."),
    "table.rows_left_out": N_("{rows}: {reason} (“{text}”)."),
    "table.rows_headed": N_(
        "{rows}: taken as headings between items, since nothing stands beside them and fuller rows below: {names}."
        " If one is a thing, give it a mass or a number of pieces in the table, and read it again."
    ),
    "table.title_unit": N_("the title says that masses are in {unit}."),
    "table.heading_unknown": N_(
        "the heading “{heading}” (column {letters}) is not understood; its {filled} cells were left out."
    ),
    "table.heading_of_service": N_(
        "the heading “{heading}” (column {letters}) is about checks or packing; its {filled} cells were left out, since"
        " kitlog keeps such days with rules and records: enter each in Service, as the last time that it was done or"
        " the day on which it is due."
    ),
    "table.rough_taken": N_("{heading}: “{text}” is rough, and was taken as it stands ({rows})."),
    "table.ditto": N_("{heading}: “{text}” repeats the cell above ({rows})."),
    "table.heading_double": N_(
        "the heading “{heading}” (column {letters}) says the same as another column; its {filled} cells were left out."
    ),
    "table.told_by_cells": N_(
        "the heading “{heading}” (column {letters}) is not understood, but its cells are: read as {field}."
    ),
    "table.remembered": N_("read as you chose for a table of the same headings: {headings}."),
    "table.decided_decimal": N_("{heading}: “{example}” shows {mark}; cells read that way: {cells}."),
    "service.changed": N_("service rules that were there and become others: {count}."),
    "service.unchanged": N_("rows of the service file that say nothing new of a rule that is there: {count}."),
    "service.skipped": N_("rows of the service file about a rule that is there, left out as you chose: {count}."),
    "table.days_ahead": N_(
        "days that have not been yet: {days} ({rows}). Is their order of day, month and year right?"
    ),
    "table.state_away": N_(
        "a state that kitlog does not know is taken as away, so that nothing counts on the thing: {words} ({rows})."
    ),
    "table.state_kept": N_("a state that kitlog does not know changes nothing at a known item: {words} ({rows})."),
    "table.serial_known": N_(
        "row {row}: “{name}” has the serial number {serial}, as “{other}” in the kit has. Is it the same thing?"
    ),
    "table.decided_dates": N_("{heading}: “{example}” shows dates as {order}; cells read that way: {cells}."),
}


_IN_WINDOW = {
    "table.sheet_taken": N_("the sheet “{sheet}” was read; not read: {others}. Above it another can be chosen."),
}
"""What is said otherwise where there is a field to choose with."""


def remark_text(code: str, facts: Mapping[str, object], *, in_window: bool = False) -> str:
    """One remark about how a table was read, as a sentence; of the window, or of the command line."""
    said = {name: _said(name, fact) for name, fact in facts.items()}
    if code == "table.heading_unknown" and not facts.get("heading"):
        return _("column {letters} has no heading; its {filled} cells were left out.").format(**said)
    if code == "table.kind_guessed":
        said["pairs"] = _listed([f"{name} ({kind})" for name, kind in dict.fromkeys(_pairs(facts))])
    if code == "table.sheet_taken":
        said["others"] = _listed(list(_sheets(facts)))
    if code == "table.kind_none":
        said["named"] = _listed(list(dict.fromkeys(name for name, _kind in _pairs(facts))))
    text = _IN_WINDOW[code] if in_window and code in _IN_WINDOW else _SENTENCES[code]
    return _(text).format(**said)


def _sheets(facts: Mapping[str, object]) -> Iterator[str]:
    """The sheets that were not read, the hidden ones named as such."""
    yield from map(str, _parts(facts.get("others")))
    for name in _parts(facts.get("hidden")):
        yield _("{sheet} (hidden)").format(sheet=name)


def _pairs(facts: Mapping[str, object]) -> Iterator[tuple[str, str]]:
    names, kinds = facts["names"], facts["kinds"]
    if isinstance(names, tuple) and isinstance(kinds, tuple):
        yield from zip(map(str, names), map(str, kinds), strict=True)


def _parts(fact: object) -> tuple[object, ...]:
    return fact if isinstance(fact, tuple) else ()


def _said(name: str, fact: object) -> str:
    if name == "rows" and isinstance(fact, tuple):
        return rows_text([int(row) for row in fact])
    if name == "field" and str(fact) in FIELDS:
        return field_word(str(fact))
    if name == "reason":
        return _(_REASONS.get(str(fact), str(fact)))
    if name == "order":
        return _(_ORDERS.get(str(fact), str(fact)))
    if name == "separator":
        return _(_SEPARATORS.get(str(fact), str(fact)))
    if name == "mark":
        return _(_MARKS.get(str(fact), str(fact)))
    if name.endswith("_g") and isinstance(fact, int):
        return mass_text(fact)
    return _listed([str(part) for part in fact]) if isinstance(fact, tuple) else str(fact)


def rows_text(rows: Sequence[int]) -> str:
    """Rows in words, the first few named."""
    return ngettext("row {rows}", "rows {rows}", len(rows)).format(rows=_listed([str(row) for row in rows]))


def _listed(parts: Sequence[str]) -> str:
    more = len(parts) - MOST_NAMED
    text = ", ".join(parts[:MOST_NAMED])
    return text + (ngettext(" and {n} more", " and {n} more", more).format(n=more) if more > 0 else "")


def counts_text(counts: Mapping[str, int]) -> str:
    """What an import brings, in figures: ``new``, ``changed``, ``unchanged``, ``skipped``, ``rules``, ``records``."""
    n = counts.get
    parts = [
        ngettext("{n} item", "{n} items", n("new", 0)).format(n=n("new", 0)),
        ngettext("{n} changed", "{n} changed", n("changed", 0)).format(n=n("changed", 0)) if n("changed") else "",
        ngettext("{n} as it was", "{n} as they were", n("unchanged", 0)).format(n=n("unchanged", 0))
        if n("unchanged")
        else "",
        ngettext("{n} skipped", "{n} skipped", n("skipped", 0)).format(n=n("skipped", 0)) if n("skipped") else "",
    ]
    if n("rules") or n("records"):
        parts.append(ngettext("{n} service rule", "{n} service rules", n("rules", 0)).format(n=n("rules", 0)))
        parts.append(ngettext("{n} record", "{n} records", n("records", 0)).format(n=n("records", 0)))
    return ", ".join(part for part in parts if part)


def import_line(counts: Mapping[str, int], *, written: bool) -> str:
    """The first line of the report."""
    text = _("imported: {parts}") if written else _("would import: {parts}; nothing was written")
    return text.format(parts=counts_text(counts))


def remark_lines(remarks: Sequence[tuple[str, Mapping[str, object]]]) -> Iterator[str]:
    """The remarks for a terminal, one below the other."""
    for code, facts in remarks:
        yield from wrapped(_capital(remark_text(code, facts)), WIDTH)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def left_open_line(row: int, heading: str, text: str, why: str) -> str:
    """A cell that was left not known by choice."""
    return _("row {row}, {heading}: “{text}” was left not known ({why}).").format(
        row=row, heading=heading, text=text, why=why
    )


REMARKS = frozenset(_SENTENCES)
"""Every remark that has a sentence."""
