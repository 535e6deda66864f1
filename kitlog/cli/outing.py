"""kitlog outing: the planned days of the data file."""

from typing import TYPE_CHECKING

from kitlog.cli import arguments, documents
from kitlog.cli.call import DONE, Call
from kitlog.cli.parser import Verbs, json_option
from kitlog.cli.streams import say
from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.outing.outing import Outing
    from kitlog.workbench.workbench import Workbench


def add(verbs: Verbs) -> None:
    """Add the verb and its own."""
    own = Verbs(verbs.add("outing", _("list, save or export the outings of the data file")))
    json_option(own.add("list", _("list the outings"), _list))
    saving = own.add("save", _("put an outing into the data file; one of the same name is changed"), _save)
    saving.add_argument("file", metavar=_("OUTING.json"), help=_("the outing; - for standard input"))
    giving = own.add("export", _("write an outing as JSON, items by their names"), _export)
    giving.add_argument("name", metavar=_("NAME"), help=_("its name"))
    giving.add_argument("file", metavar=_("FILE.json"), type=arguments.target(_("FILE.json")), help=_("where to"))


def found(bench: "Workbench", name: str) -> "Outing":
    """The outing of a name, `called` as typed, or of an id.

    Raises:
        InputFault: ``outing.unknown`` with the ``known`` ones; ``outing.ambiguous`` with ``count``.
    """
    from kitlog.kit.called import called

    outing = _one(called(bench.outings(), name), name) or bench.outing(name)
    if outing is None:
        known = tuple(outing.name for outing in bench.outings()) or _("none is saved")
        raise InputFault("outing.unknown", name=_short(name), known=known)
    return outing


def _one(named: "tuple[Outing, ...]", name: str) -> "Outing | None":
    if len(named) > 1:
        raise InputFault("outing.ambiguous", name=_short(name), count=len(named))
    return named[0] if named else None


def _short(name: str) -> str:
    from kitlog.units.strict_json import shown

    return shown(name)


def _list(call: Call) -> int:
    with call.reading() as bench:
        outings = sorted(bench.outings(), key=lambda outing: outing.first_day)
        current = bench.current_outing()
    if call.options.json:
        return documents.say_json([_entry(outing, current) for outing in outings])
    from kitlog.wording.outing_text import outing_lines

    say(outing_lines(outings, current))
    return DONE


def _entry(outing: "Outing", current: "Outing | None") -> dict[str, object]:
    return {
        "name": outing.name,
        "id": outing.id,
        "first_day": str(outing.first_day),
        "last_day": str(outing.last_day),
        "flight_types": list(outing.flight_types),
        "site": outing.site.name,
        "worked_on": current is not None and outing.id == current.id,
    }


def _save(call: Call) -> int:
    from kitlog.files.outing_json import read_outing
    from kitlog.kit.called import spelled
    from kitlog.packing.naming import refuse_unknown

    data, file = documents.read(call.options.file), documents.shown_name(call.options.file)
    read = read_outing(data, file)

    def save(bench: "Workbench") -> bool:
        known = _one(spelled(bench.outings(), read.name), read.name)
        outing = read.model_copy(update={"id": known.id if known else bench.new_id()})
        with documents.naming(call.options.file):
            refuse_unknown(outing, bench.library)
            bench.assess(outing)  # what cannot be assessed later is refused now
        bench.save_outing(outing)
        return known is None

    text = _("saved as a new outing: {name}") if call.write(save) else _("changed: {name}")
    say([text.format(name=read.name)])
    return DONE


def _export(call: Call) -> int:
    from kitlog.files.outing_export import outing_json

    with call.reading() as bench:
        tree = outing_json(found(bench, call.options.name), bench.items())
    documents.write(call.options.file, (documents.as_json(tree) + "\n").encode("utf-8"))
    say([_("written: {file}").format(file=call.options.file)])
    return DONE
