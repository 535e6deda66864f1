"""kitlog budget: one calculation from JSON; no data file is needed."""

from kitlog.cli import documents
from kitlog.cli.call import DONE, Call
from kitlog.cli.parser import Verbs, json_option
from kitlog.cli.streams import say
from kitlog.fault import InputFault
from kitlog.wording.translate import _


def add(verbs: Verbs) -> None:
    """Add the verb."""
    parser = verbs.add("budget", _("calculate power or weight from a JSON file, without a data file"), _budget)
    parser.add_argument("budget", metavar=_("NAME"), help=_("power or weight"))
    parser.add_argument("file", metavar=_("FILE"), nargs="?", help=_("the JSON file, - for standard input"))
    json_option(parser)
    parser.add_argument("--schema", action="store_true", help=_("print the JSON Schema of the file"))


def _budget(call: Call) -> int:
    from kitlog.workbench.calculate import calculate, schema

    budget, file = call.options.budget, call.options.file
    form = schema(budget)  # a wrong name is said before a missing file
    if call.options.schema:
        return documents.say_json(form)
    if file is None:
        raise InputFault("usage.missing", verb="kitlog budget", names=_("FILE"))
    text = documents.text(file)
    with documents.naming(file):
        calculated = calculate(budget, text)
    if call.options.json:
        return documents.say_json(calculated.as_json)
    from kitlog.wording.budget_text import budget_lines

    say(budget_lines(calculated.found))
    return DONE
