"""kitlog power: every question about the power of an outing; nothing is stored."""

from typing import TYPE_CHECKING

from kitlog.cli import arguments, documents
from kitlog.cli.call import DONE, STOPPED, Call
from kitlog.cli.outing import found
from kitlog.cli.parser import Verbs, json_option, strict_option
from kitlog.cli.streams import say
from kitlog.cli.working import Working
from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.packing.assessment import Assessment
    from kitlog.packing.power_answers import PowerAnswers
    from kitlog.workbench.workbench import Workbench

MOST_DAYS, MOST_SEED = 1_000_000, 2**63 - 1


def add(verbs: Verbs) -> None:
    """Add the verb."""
    text = _("whether the power of an outing lasts, how sure that is, what would help, how far it goes")
    parser = verbs.add("power", text, _power)
    outing = _("an outing of the data file (default: the one worked on), or FILE.json; - for standard input")
    parser.add_argument("outing", metavar=_("OUTING"), nargs="?", help=outing)
    keep = _("charge that the phone is to keep through the way home (default: 10)")
    parser.add_argument("--keep", metavar="PCT", type=arguments.figure("--keep", 0, 100), help=keep)
    seed = _("the same seed draws the same days (default: 1)")
    parser.add_argument("--seed", metavar="N", type=arguments.whole("--seed", 0, MOST_SEED), help=seed)
    days = _("days drawn for the chances (default: 10000); for each change a twentieth, but 500 at least")
    parser.add_argument("--days", metavar="N", type=arguments.whole("--days", 1, MOST_DAYS), help=days)
    json_option(parser)
    strict_option(parser)


def _power(call: Call) -> int:
    with call.reading() as bench:
        assessment = _assessed(call, bench)
        answers = _asked(call, bench, assessment)
        names = {item.id: item.name for item in bench.items()}
    if call.options.json:
        from kitlog.files.power_json import power_json

        documents.say_json(power_json(answers, names))
    else:
        from kitlog.wording.power_asked_lines import power_lines

        say(power_lines(answers, names))
    return STOPPED if call.options.strict and _has_stop(assessment) else DONE


def _asked(call: Call, bench: "Workbench", assessment: "Assessment") -> "PowerAnswers":
    from kitlog.packing.power_answers import power_answers
    from kitlog.workbench.power_question import power_asked

    asked, options = power_asked(bench, assessment), call.options
    typed = {"keep_pct": options.keep, "days": options.days, "seed": options.seed}
    with Working(_("asking about the power")) as working:
        return power_answers(asked, **{k: v for k, v in typed.items() if v is not None}, tell=working)


def _assessed(call: Call, bench: "Workbench") -> "Assessment":
    name = call.options.outing
    if name is None:
        current = bench.current_outing()
        if current is None:
            raise InputFault("outing.none")
        return bench.assess(current)
    if name != documents.STDIN and not name.endswith(".json"):
        return bench.assess(found(bench, name))
    from kitlog.files.outing_json import read_outing
    from kitlog.packing.naming import refuse_unknown

    data = documents.read(name)
    with documents.naming(name):
        outing = read_outing(data, documents.shown_name(name))
        refuse_unknown(outing, bench.library)
        return bench.assess(outing)


def _has_stop(assessment: "Assessment") -> bool:
    from kitlog.budget.result import State, Topic

    return any(finding.state is State.STOP for finding in assessment.of(Topic.POWER))
