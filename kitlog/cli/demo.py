"""kitlog demo: a new data file with the invented pilot of the demo."""

from kitlog.cli import arguments
from kitlog.cli.call import DONE, Call
from kitlog.cli.pack import give
from kitlog.cli.parser import Verbs
from kitlog.cli.streams import note
from kitlog.wording.translate import _


def add(verbs: Verbs) -> None:
    """Add the verb."""
    text = _("fill a new data file with an invented pilot's kit and open it; an existing file is refused")
    parser = verbs.add("demo", text, _demo)
    parser.add_argument(
        "--text", action="store_true", help=_("print the repack of its first outing instead of opening")
    )
    parser.add_argument(
        "--html", metavar=_("FILE"), type=arguments.target("--html"), help=_("write the sheet of its first outing")
    )


def _demo(call: Call) -> int:
    path = call.doors.demo_file() if call.options.data is None else call.data_file
    if not call.options.text:
        call.doors.refuse_no_screen()
    bench = call.doors.demo(path)
    try:
        if call.options.text or call.options.html:
            first = min(bench.outings(), key=lambda outing: outing.first_day)
            give(call, bench, bench.assess(first), text=call.options.text)
    finally:
        bench.close()
    if call.options.data is None:
        note(_("the demo lies in {file}; go on with: kitlog --data {file} --help").format(file=path))
    return DONE if call.options.text else call.doors.window(path)
