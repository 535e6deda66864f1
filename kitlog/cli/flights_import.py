"""kitlog flights import: recordings into the log, what the pilot confirms with --yes."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from kitlog.cli import arguments, documents
from kitlog.cli.call import DONE, WRONG_USE, Call
from kitlog.cli.item_names import ids_of
from kitlog.cli.parser import Verbs, json_option
from kitlog.cli.streams import note, say
from kitlog.cli.working import Working
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.workbench.flight_import import Proposal


def add(verbs: Verbs) -> None:
    """Add the verb."""
    text = _("read recordings (IGC) and enter the flights in them, once confirmed with --yes")
    parser = verbs.add("import", text, _import)
    parser.add_argument("files", metavar=_("FILE"), nargs="+", help=_("recordings, or folders that hold some"))
    names = _("what gets airtime and launches, names with commas between them (the set of that day's outing, else ")
    parser.add_argument("--flown", metavar=_("NAMES"), help=names + _("what was flown last)"))
    day = arguments.day("--date")
    parser.add_argument("--date", metavar=_("DATE"), type=day, help=_("local day of recordings without a date"))
    parser.add_argument("--yes", action="store_true", help=_("they are flights: enter them"))
    sure = _("with --yes: those too that are asked about (cable car, car ride, ground handling, overlaps)")
    parser.add_argument("--sure", action="store_true", help=sure)
    parser.add_argument("--dry-run", action="store_true", help=_("say what was found, enter nothing"))
    json_option(parser)


def _import(call: Call) -> int:
    from kitlog.kit.recordings.outcome import Status

    read, names = _read(call)
    judged = [_confirmed(call, one, kit_is_empty=kit_is_empty) for one, kit_is_empty in read]
    written = judged if call.options.dry_run else _written(call, judged)
    if call.options.json:
        documents.say_json([_row(one) for one in written])
    else:
        shown = written if call.options.yes or call.options.dry_run else [one for one, _kit_is_empty in read]
        _report(call, shown, names)
    return WRONG_USE if any(one.outcome.status is Status.REFUSED for one in written) else DONE


def _read(call: Call) -> "tuple[list[tuple[Proposal, bool]], dict[str, str]]":
    """All files, and the names of the items; nothing is written."""
    from kitlog.workbench.flight_import import read_flights

    options = call.options
    with call.reading() as bench:
        flown = None if options.flown is None else ids_of(options.flown, bench, "--flown")
        source, names = bench.flight_source(), {item.id: item.name for item in bench.items()}
        paths = [Path(name) for name in options.files]
        with Working(_("recordings")) as tell:
            batch = read_flights(
                source, paths, flown=flown, local_day=options.date, progress=lambda done, of: tell(done / max(of, 1))
            )
            return [(one, source.sets.is_empty or flown is not None) for one in batch], names


def _confirmed(call: Call, one: "Proposal", *, kit_is_empty: bool) -> "Proposal":
    """A proposal as the options decide about it; hours that are booked nowhere need a word of the pilot."""
    from kitlog.kit.recordings.outcome import Reason

    if one.flight is None:
        return one
    if not one.booked.flown and not kit_is_empty:
        return one.declined(Reason("flight.nothing_flown", {"last": _("none")}))
    if call.options.dry_run or (call.options.yes and (one.is_plain or call.options.sure)):
        return one
    return one.declined()


def _written(call: Call, judged: "Sequence[Proposal]") -> "list[Proposal]":
    """Write what is confirmed and remember second recordings; what the log cannot hold is refused by its file."""
    from kitlog.kit.flights import DAY_MIN
    from kitlog.kit.recordings.outcome import Reason, Status
    from kitlog.workbench.flight_import import Confirmed, settled

    fit = []
    for one in judged:
        over = one.flight is not None and one.flight.airtime_min > DAY_MIN
        minutes = round(one.flight.airtime_min) if one.flight else 0
        fit.append(one.declined(Reason("flight.longer_than_a_day", {"minutes": minutes})) if over else one)
    fit = settled(fit)
    confirmed = [Confirmed(one) for one in fit if one.flight is not None]
    is_second = any(one.outcome.status is Status.DUPLICATE for one in fit)
    if confirmed or (is_second and call.options.yes):
        call.write(lambda bench: bench.import_flights(confirmed, fit))
    return [replace(one, outcome=one.outcome.confirmed()) for one in fit]


def _report(call: Call, shown: "Sequence[Proposal]", names: dict[str, str]) -> None:
    from kitlog.wording.recording_report import counts_line, outcome_lines

    for one in shown:
        say(outcome_lines(one.outcome, one.booked, one.notes, names))
    say(["", counts_line(one.outcome for one in shown)])
    if call.options.dry_run:
        note(_("nothing was entered: a dry run"))
    elif not call.options.yes:
        if any(one.outcome.flight is not None for one in shown):
            note(_("nothing was entered: look at what was found, and say --yes if it was flown"))
    elif any(reason.code == "recording.not_confirmed" for one in shown for reason in one.outcome.reasons):
        note(_("what is asked about was not entered: say --sure too if it was flown"))


def _row(one: "Proposal") -> dict[str, object]:
    """One row a file; ``reason`` is all that is said of it, None where there is nothing to say."""
    from kitlog.wording.recording_report import told_text

    outcome, flight = one.outcome, one.outcome.flight
    return {
        "file": outcome.file,
        "date": outcome.local_day.isoformat() if outcome.local_day else None,
        "takeoff_utc": _utc(flight.takeoff_at) if flight else None,
        "landing_utc": _utc(flight.landing_at) if flight else None,
        "airtime_min": round(flight.airtime_min, 2) if flight else None,
        "launches": flight.launches if flight else None,
        "max_altitude_m": flight.max_altitude_m if flight else None,
        "status": outcome.status.value,
        "reason": told_text(outcome, one.notes) or None,
    }


def _utc(at: datetime) -> str:
    return f"{at:%Y-%m-%dT%H:%M:%SZ}"
